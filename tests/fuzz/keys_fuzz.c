/* Any keys at any sizes on every page of the real page loop: the frames can be shown,
 * the book is sound afterwards. The first byte says where they are typed: "0" where
 * there is no book yet, else in a season. The rest: see terminal.h. */
#include "fuzz.h"
#include "terminal.h"

#include "command/command.h"

#include <unistd.h>

static void look_over(const char *path)
{
	struct err e = { 0 };
	struct book *b = book_open(path, BOOK_EXISTING, "QX", &e);

	fuzz_said(b != NULL, &e);
	must(b || e.kind == ERR_NOT_FOUND);
	if (b)
		fuzz_sound(b);
	book_close(b);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t n)
{
	static char path[FUZZ_PATH];
	struct context ctx = { .book_path = path,
		.today = fuzz_today(),
		.today_given = true,
		.minute = 450,
		.who = "QX",
		.out_is_terminal = true,
		.utf8 = true };
	struct err e = { 0 };

	if (n == 0)
		return 0;
	fuzz_path(path, "keys.db");
	if (*data == '0')
		unlink(path);
	else
		fuzz_copy(fuzz_season(FUZZ_WHOLE), path);
	terminal_type(data + 1, n - 1);
	fuzz_enter();
	bool ok = pages_run(&ctx, NULL, &e);
	fuzz_leave();
	fuzz_said(ok, &e);
	if (*data == '0' || !fuzz_same(path, fuzz_season(FUZZ_WHOLE)))
		look_over(path);
	return 0;
}
