/* book_backups.c - the Backups page. */
#include "base/text.h"
#include "base/words.h"
#include "screen/book_page.h"
#include "screen/frame.h"
#include "screen/list.h"
#include "screen/reader.h"

enum { BACKUPS_SHOW = LIST_OTHERS, BACKUPS_RESTORE, BACKUPS_BACK, BACKUPS_HELP };

static const struct key_row rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, BACKUPS_SHOW, "Enter", N_("look"),
		N_("shows what is in the picked copy and in the present book") },
	{ { INPUT_CHAR, 'r' }, { INPUT_NONE, 0 }, BACKUPS_RESTORE, "r",
		N_("go back to"),
		N_("once that is shown, asks; r again puts the copy in place of the "
		   "book, which is kept beside it and stands first in this list") },
	LIST_KEYS,
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, BACKUPS_BACK, "Esc", N_("back"),
		N_("to the page before; asked whether to go back to a copy: no") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, BACKUPS_HELP, "?", N_("keys"),
		N_("this page") },
};

/* While it is asked whether to go back to the one that is shown. */
static const struct key_row sure_rows[] = {
	{ { INPUT_CHAR, 'r' }, { INPUT_NONE, 0 }, BACKUPS_RESTORE, "r",
		N_("go back to"), "" },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, BACKUPS_BACK, "Esc", N_("leave it"),
		"" },
};

enum { DAY, HOLDS, CHANGED, COLUMNS };

static const struct list_column column[COLUMNS] = {
	[DAY] = { "", .whole = COLUMN_NUMBER },
	[HOLDS] = { "", .least = 16, .whole = 60 },
	[CHANGED] = { "", .least = 20, .drop = 1 },
};

struct key_rows backups_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

/* Of one that is shown there is nothing more to look at; of none nothing at all. */
static struct key_rows keys_now(const struct backups_page *p)
{
	size_t skip = p->n == 0 ? 2 : p->shown ? 1 : 0;

	if (p->sure)
		return (struct key_rows){ sure_rows,
			sizeof sure_rows / sizeof *sure_rows };
	return (struct key_rows){ rows + skip, sizeof rows / sizeof *rows - skip };
}

static const char *none_yet(void)
{
	return _("No backup yet: one is taken before the first change of a day.");
}

static struct wish wish_of(const struct backups_page *p, bool sure)
{
	struct wish w = page_wish(p->picked < p->n ? WANT_RESTORE : WANT_NOTHING);

	w.id = (int64_t)p->picked;
	w.by = sure;
	return w;
}

/* Three presses from the list, and none of them Enter, which a thumb gives twice. */
static struct wish restore(struct backups_page *p, bool shown, bool sure)
{
	if (!shown || sure)
		return wish_of(p, sure);
	p->shown = p->sure = true;
	return page_wish(WANT_NOTHING);
}

static struct wish look(struct backups_page *p, bool shown)
{
	if (!shown)
		return wish_of(p, false);
	p->shown = true;
	return page_wish(WANT_NOTHING);
}

struct wish backups_page_key(struct backups_page *p, struct input in)
{
	int action = keys_find(backups_page_keys(), in);
	bool shown = p->shown, sure = p->sure;

	if (!input_is_key(in))
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	p->shown = p->sure = false;
	if (p->n == 0 && (action == BACKUPS_SHOW || action == BACKUPS_RESTORE))
		message_set(&p->message, false, "%s", none_yet());
	if (list_move(action, p->n, p->rows, &p->picked))
		return page_wish(WANT_NOTHING);
	switch (action) {
	case BACKUPS_SHOW:
		return look(p, shown);
	case BACKUPS_RESTORE:
		return restore(p, shown, sure);
	case BACKUPS_BACK:
		return page_wish(shown ? WANT_NOTHING : WANT_BACK);
	case BACKUPS_HELP:
		return page_wish(WANT_HELP);
	default:
		page_no_key(&p->message, in);
	}
	return page_wish(WANT_NOTHING);
}

static void fit(struct columns *s, const struct backups_page *p, int cols)
{
	*s = (struct columns){ .col = column, .n = COLUMNS };
	for (size_t i = 0; i < p->n; i++) {
		columns_want(s, DAY, p->lines[i].day);
		columns_want(s, HOLDS, p->lines[i].holds);
		columns_want(s, CHANGED, p->lines[i].changed);
	}
	columns_fit(s, 3, cols - 1);
}

static void draw_line(const struct backups_page *p, const struct columns *s,
	struct canvas *c, int row, size_t i)
{
	enum ink ink = i == p->picked ? INK_PICKED : INK_PLAIN;

	if (i == p->picked) {
		canvas_text(c, row, 0, c->cols, ink, " >");
		canvas_cursor(c, row, 1);
	}
	columns_cell(s, c, row, DAY, ink, p->lines[i].day);
	columns_cell(s, c, row, HOLDS, ink, p->lines[i].holds);
	columns_cell(s, c, row, CHANGED, ink, p->lines[i].changed);
}

static void draw_list(struct backups_page *p, struct canvas *c, const struct frame *f)
{
	struct columns s;

	fit(&s, p, c->cols);
	p->rows = f->last - f->first + 1;
	page_scroll_near(p->n, p->rows, &p->picked, &p->top);
	for (int i = 0; i < p->rows && p->top + (size_t)i < p->n; i++)
		draw_line(p, &s, c, f->first + i, p->top + (size_t)i);
	frame_more(c, f, p->top > 0, p->top + (size_t)p->rows < p->n);
}

static void draw_text(
	const struct backups_page *p, struct canvas *c, const struct frame *f)
{
	const struct paragraph text[] = {
		{ INK_PLAIN, 0, NULL, p->about[0] },
		{ INK_PLAIN, 0, NULL, "" },
		{ INK_PLAIN, 0, NULL, p->about[1] },
		{ INK_PLAIN, 0, NULL, "" },
		{ INK_PLAIN, 0, NULL, p->about[2] },
	};
	const struct paragraph none[] = { { INK_PLAIN, 0, NULL, none_yet() } };
	size_t top = 0;

	if (p->shown)
		reader_draw(c, f->first, f->last, &top, text, 5);
	else
		reader_draw(c, f->first, f->last, &top, none, 1);
	canvas_cursor(c, f->first, 0);
}

void backups_page_draw(struct backups_page *p, struct canvas *c)
{
	struct message m = p->message;
	struct frame f = { .title = _("Backups"), .message = &m, .keys = keys_now(p) };

	if (!m.text[0] && p->sure)
		message_set(&m, false,
			_("r once more puts it in place of the book, Esc leaves it."));
	else if (!m.text[0] && p->shown)
		message_set(
			&m, false, _("r goes back to this one, Esc back to the list."));
	else if (!m.text[0] && p->picked < p->n)
		message_set(&m, false, "%s", p->lines[p->picked].changed);
	if (!frame_draw(c, &f))
		return;
	if (p->shown || p->n == 0)
		draw_text(p, c, &f);
	else
		draw_list(p, c, &f);
}
