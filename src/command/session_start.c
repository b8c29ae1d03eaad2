/* session_start.c - beginning a book: typed in, taken in from a file, or looking at the
 * demo first. */
#include "session_book.h"

#include "base/text.h"
#include "base/words.h"
#include "book/steps.h"
#include "exchange/exchange.h"
#include "import_ghcn.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Until something is saved the pages stand on a book in memory, which has the pests,
 * lures and cards that come with the program. */
static bool open_memory(struct session *s, struct err *e)
{
	s->book = book_open(":memory:", BOOK_CREATE, s->ctx->who, e);
	s->unmade = s->book != NULL;
	return s->book != NULL;
}

bool session_open_book(struct session *s, struct err *e)
{
	struct err none = { 0 };

	s->book = book_open(s->ctx->book_path, BOOK_EXISTING, s->ctx->who, &none);
	s->unmade = false;
	if (s->book)
		return true;
	if (none.kind == ERR_NOT_FOUND)
		return open_memory(s, e);
	return err_set(e, none.kind, "%s", none.text);
}

bool session_make_book(struct session *s, struct err *e)
{
	struct book *b = NULL;

	if (!s->unmade)
		return true;
	b = book_open(s->ctx->book_path, BOOK_CREATE, s->ctx->who, e);
	if (!b)
		return false;
	book_close(s->book);
	s->book = b;
	s->unmade = false;
	return session_read_log(s, e);
}

void session_unmake_book(struct session *s)
{
	if (!s->unmade)
		import_drop_new(s->ctx, s->book);
	book_close(s->book);
	if (session_open_book(s, &s->lost))
		session_read_log(s, &s->lost);
}

bool session_is_empty(const struct session *s)
{
	return s->unmade || (s->log.farms.n == 0 && s->log.traps.n == 0);
}

bool session_read_start(struct session *s, struct err *e)
{
	s->start_page.book = s->ctx->book_path;
	if (!session_read_log(s, e))
		return false;
	s->start_page.begun = s->log.farms.n > 0;
	return true;
}

/* Out of season all traps are taken down: they are hung again from their list. */
void session_start(struct session *s, const struct wish *w)
{
	struct wish traps = *w;

	traps.kind = ENTRY_TRAPS;
	if (s->log.traps.n > 0)
		session_entries(s, &traps);
	else
		session_open(s, PAGE_START);
}

/* Goes on where it was left: a farm, its first block, its traps. */
void session_start_typing(struct session *s, const struct wish *w)
{
	struct wish form = *w;

	form.kind = ENTRY_FARMS;
	if (s->log.farms.n > 0)
		form.kind = s->log.blocks.n > 0 ? ENTRY_TRAPS : ENTRY_BLOCKS;
	form.farm = s->log.farms.n > 0 ? s->log.farms.items[0].id : 0;
	session_form(s, &form);
	s->form.beginning = s->form.then_traps = true;
}

/* "~/traps.csv" as a shell takes it. */
void session_expand(const char *path, char *out, size_t size)
{
	const char *home = getenv("HOME");

	if (strncmp(path, "~/", 2) == 0 && home && *home)
		snprintf(out, size, "%s%s", home, path + 1);
	else
		text_copy(out, size, path);
}

static void add_all(struct buf *text, const struct sentences *s, int64_t all)
{
	for (size_t i = 0; i < s->n; i++)
		buf_addf(text, "%s\n", s->items[i]);
	if (all > (int64_t)s->n)
		buf_addf(text, _("and %lld more\n"), (long long)(all - (int64_t)s->n));
}

/* What came in, or every complaint. */
static void tell(struct session *s, const struct imported *i, const char *path,
	const struct err *e)
{
	buf_clear(&s->text.written);
	if (e->kind == ERR_NONE) {
		buf_add(&s->text.written, _("traps: "));
		imported_say(i, &s->text.written);
		buf_add(&s->text.written, "\n");
	} else
		buf_addf(&s->text.written, "%s\n\n", e->text);
	add_all(&s->text.written, &i->problems, i->n_problems);
	add_all(&s->text.written, &i->warnings, i->n_warnings);
	add_all(&s->text.written, &i->notes, (int64_t)i->notes.n);
	s->text.page = (struct text_page){ .text = s->text.written.text };
	snprintf(s->text.page.title, sizeof s->text.page.title,
		e->kind ? _("Not taken in: %s") : _("Taken in: %s"), path);
}

static bool take_in(struct session *s, FILE *file, const char *path,
	struct imported *done, struct err *e)
{
	const struct import_from from = {
		.file = file, .name = path, .today = s->day, .zone = &s->log.zone
	};
	const struct kind *traps = kind_find("traps", e);
	bool was_unmade = s->unmade;

	if (!traps || !session_make_book(s, e))
		return false;
	session_before_change(s);
	if (exchange_import(s->book, traps, &from, done, e))
		return true;
	if (was_unmade)
		session_unmake_book(s);
	return false;
}

void session_start_file(struct session *s, const struct wish *w)
{
	char path[PATH_MAX];
	struct imported done = { 0 };
	struct err e = { 0 };
	FILE *file = NULL;

	session_expand(w->words.note, path, sizeof path);
	file = fopen(path, "rbe");
	if (!file) {
		message_set(session_message(s), true, _("%s cannot be read: %s"), path,
			strerror(errno));
		return;
	}
	bool ok = take_in(s, file, path, &done, &e);
	fclose(file);
	tell(s, &done, path, &e);
	imported_free(&done);
	if (ok)
		session_home(s);
	session_open(s, PAGE_TEXT);
}

void session_start_demo(struct session *s, const struct wish *w)
{
	struct err e = { 0 };

	(void)w;
	if (!demo_open(s->ctx, pages_within, &e))
		message_set(session_message(s), true, "%s", e.text);
	else
		message_set(session_message(s), false,
			_("That was the demo; nothing of it is kept."));
}
