/* A book damaged on the disk, or in its rows by somebody else's hand: opened or refused
 * with a clean sentence, looked over, given out, and every page of it shown. The bits
 * of the first byte: 1 its rows are damaged, not its file; 2 it is of the version
 * before; 4 no pages are shown, which take most of the time. The rest: see damage.h. */
#include "damage.h"
#include "fuzz.h"
#include "terminal.h"

#include "command/command.h"

#include <stdio.h>
#include <string.h>
#include <unistd.h>

/* Every page from Today on, moving about a little, one change on the way. */
static const char tour[] = "w\002\r\033\033"
			   "f\004\002\033"
			   "h\002\r\tm\033"
			   "s\002\033"
			   "a\002\r\033\033"
			   "\r7\r\002\ru\033"
			   "b\r\002\r\033\033\002\r\r\033\033\002\r\033\002\r\033"
			   "\002\r\033\002\r\033\002\r\033\002\r\033\033\033p";

static void note(void *arg, const char *text)
{
	(void)arg;
	must(*text != '\0');
}

static bool to_nowhere(void *arg, struct buf *text, struct err *e)
{
	(void)arg, (void)e;
	buf_clear(text);
	return true;
}

static void read_all(struct book *b)
{
	struct err e = { 0 };
	int found;

	fuzz_said(book_check(b, fuzz_today(), note, NULL, &found, &e), &e);
	for (size_t i = 0; kinds[i]; i++) {
		e = (struct err){ 0 };
		fuzz_said(exchange_export(b, kinds[i], to_nowhere, NULL, &e), &e);
	}
}

static void show_pages(const char *path)
{
	const struct context ctx = { .book_path = path,
		.today = fuzz_today(),
		.today_given = true,
		.minute = 450,
		.who = "QX",
		.out_is_terminal = true,
		.utf8 = true };
	struct err e = { 0 };

	terminal_type((const uint8_t *)tour, sizeof tour - 1);
	fuzz_enter();
	bool ok = pages_run(&ctx, NULL, &e);
	fuzz_leave();
	fuzz_said(ok, &e);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t n)
{
	char path[FUZZ_PATH], journal[FUZZ_PATH];
	struct err e = { 0 };

	if (n == 0)
		return 0;
	fuzz_path(path, "damaged.db");
	fuzz_path(journal, "damaged.db-journal");
	unlink(journal);
	fuzz_copy(fuzz_dump(*data & 2 ? 1 : 2), path);
	(*data & 1 ? damage_rows : damage_file)(path, data + 1, n - 1);
	struct book *b = book_open(path, BOOK_EXISTING, "QX", &e);
	fuzz_said(b != NULL, &e);
	if (b) {
		read_all(b);
		book_close(b);
		if (!(*data & 4))
			show_pages(path);
	}
	return 0;
}
