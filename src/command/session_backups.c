/* session_backups.c - the Backups page: what is in each, and going back to one. */
#include "session_book.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/steps.h"
#include "contents.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { KEPT_BYTES = 1024 };

static void copy_buf(char *out, size_t size, struct buf *text)
{
	text_copy(out, size, text->text ? text->text : "");
	buf_free(text);
}

/* One that cannot be read says why in the place of what it holds. */
static void fill_line(struct backup_line *line, const struct backup *b)
{
	struct book_contents c = { 0 };
	struct err e = { 0 };
	struct buf holds = { 0 }, changed = { 0 };
	char day[DAY_TEXT_SIZE];

	day_short(b->day, day, sizeof day);
	snprintf(line->day, sizeof line->day,
		b->is_replaced ? _("%.30s replaced") : "%.30s", day);
	if (!book_look_into(b->path, &c, &e)) {
		text_copy(line->holds, sizeof line->holds, e.text);
		return;
	}
	contents_say(&c, &holds);
	contents_say_change(&c, &changed);
	copy_buf(line->holds, sizeof line->holds, &holds);
	copy_buf(line->changed, sizeof line->changed, &changed);
}

bool session_read_backups(struct session *s, struct err *e)
{
	struct backups_page *p = &s->backups.page;

	if (!book_backups(s->ctx->book_path, &s->backups.found, e))
		return false;
	free(s->backups.lines);
	s->backups.lines = mem_new(s->backups.found.n, sizeof *s->backups.lines);
	for (size_t i = 0; i < s->backups.found.n; i++)
		fill_line(&s->backups.lines[i], &s->backups.found.items[i]);
	p->lines = s->backups.lines;
	p->n = s->backups.found.n;
	p->shown = p->sure = false;
	return true;
}

void session_backups(struct session *s, const struct wish *w)
{
	(void)w;
	s->backups.page.picked = s->backups.page.top = 0;
	session_open(s, PAGE_BACKUPS);
}

static bool say_book(
	const char *what, const char *path, char out[static SAY_LINE], struct err *e)
{
	struct book_contents c = { 0 };
	struct buf text = { 0 };

	if (!book_look_into(path, &c, e))
		return false;
	buf_add(&text, what);
	contents_say(&c, &text);
	buf_add(&text, "; ");
	contents_say_change(&c, &text);
	copy_buf(out, SAY_LINE, &text);
	return true;
}

static void ask(struct session *s, const struct backup *b)
{
	struct backups_page *p = &s->backups.page;
	struct err e = { 0 };

	p->shown = say_book(_("The backup holds "), b->path, p->about[0], &e) &&
		   say_book(_("The present book holds "), s->ctx->book_path,
			   p->about[1], &e);
	text_copy(p->about[2], sizeof p->about[2],
		_("The present book is kept beside it, and the backup stays."));
	if (!p->shown)
		message_set(&p->message, true, "%s", e.text);
}

static const char *name_in(const char *path)
{
	const char *slash = strrchr(path, '/');

	return slash ? slash + 1 : path;
}

/* The book is closed meanwhile. When it cannot be opened again the pages end. */
static bool go_to(struct session *s, const struct backup *b, char *kept, struct err *e)
{
	bool ok;

	book_close(s->book);
	ok = book_restore(s->ctx->book_path, b->path, kept, KEPT_BYTES, e);
	if (!session_open_book(s, &s->lost))
		return false;
	return ok;
}

void session_restore(struct session *s, const struct wish *w)
{
	char kept[KEPT_BYTES] = "", day[DAY_TEXT_SIZE];
	struct err e = { 0 };

	if ((size_t)w->id >= s->backups.found.n)
		return;
	const struct backup *b = &s->backups.found.items[w->id];
	if (w->by == 0) {
		ask(s, b);
		return;
	}
	day_long(b->day, day, sizeof day);
	if (go_to(s, b, kept, &e)) {
		session_take_scout(s);
		session_home(s);
		message_set(session_message(s), false,
			b->is_replaced
				? _("The book that was replaced on %s is back; the one "
				    "before is kept as %.80s.")
				: _("The book is that of %s again; the one before is "
				    "kept as %.80s."),
			day, name_in(kept));
	} else
		message_set(session_message(s), true, "%s", e.text);
}
