#include "screen/book_page.h"

#include "base/text.h"
#include "base/words.h"
#include "screen/frame.h"
#include "screen/list.h"
#include "screen/reader.h"

enum { BOOK_OPEN = LIST_OTHERS, BOOK_UNDO, BOOK_BACK, BOOK_HELP };

static const struct key_row rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, BOOK_OPEN, "Enter", NC_("key", "open"),
		N_("opens the picked list") },
	LIST_KEYS,
	{ { INPUT_CHAR, 'u' }, { INPUT_NONE, 0 }, BOOK_UNDO, "u", N_("undo"),
		N_("takes back the latest change since the pages were opened; one made "
		   "on another page is named first, u again takes it back") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, BOOK_BACK, "Esc", N_("back"),
		N_("to the page before") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, BOOK_HELP, "?", N_("keys"),
		N_("this page") },
};

enum { NAME, COUNT, HELP, COLUMNS };

static const struct list_column column[COLUMNS] = {
	[NAME] = { "", .least = 8, .whole = COLUMN_NUMBER },
	[COUNT] = { "", .least = 8 },
	[HELP] = { "", .least = 20, .drop = 1 },
};

struct key_rows book_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

static struct wish open_picked(const struct book_page *p)
{
	struct wish w = page_wish(WANT_NOTHING);

	if (p->picked < p->n) {
		w.want = p->lines[p->picked].want;
		w.kind = p->lines[p->picked].kind;
	}
	return w;
}

struct wish book_page_key(struct book_page *p, struct input in)
{
	int action = keys_find(book_page_keys(), in);

	if (!input_is_key(in))
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	if (list_move(action, p->n, p->rows, &p->picked))
		return page_wish(WANT_NOTHING);
	switch (action) {
	case BOOK_OPEN:
		return open_picked(p);
	case BOOK_UNDO:
		return page_wish(WANT_UNDO_STEP);
	case BOOK_BACK:
		return page_wish(WANT_BACK);
	case BOOK_HELP:
		return page_wish(WANT_HELP);
	default:
		page_no_key(&p->message, in);
	}
	return page_wish(WANT_NOTHING);
}

static void fit(struct columns *s, const struct book_page *p, int cols)
{
	*s = (struct columns){ .col = column, .n = COLUMNS };
	for (size_t i = 0; i < p->n; i++) {
		columns_want(s, NAME, p->lines[i].name);
		columns_want(s, COUNT, p->lines[i].count);
		columns_want(s, HELP, p->lines[i].help);
	}
	columns_fit(s, 3, cols - 1);
}

static void draw_line(const struct book_page *p, const struct columns *s,
	struct canvas *c, int row, size_t i)
{
	const struct book_line *l = &p->lines[i];
	bool here = i == p->picked;
	enum ink ink = here ? INK_PICKED : INK_PLAIN;

	if (here) {
		canvas_text(c, row, 0, c->cols, ink, " >");
		canvas_cursor(c, row, 1);
	}
	columns_cell(s, c, row, NAME, ink, l->name);
	columns_cell(s, c, row, COUNT, ink, l->count);
	if (s->width[HELP])
		canvas_textf(c, row, s->at[HELP], s->width[HELP],
			here ? ink : INK_QUIET, "%.*s",
			(int)reader_wrap(l->help, s->width[HELP]), l->help);
}

void book_page_draw(struct book_page *p, struct canvas *c)
{
	struct message m = p->message;
	struct frame f = { .title = _("Book"),
		.right = p->right,
		.message = &m,
		.keys = book_page_keys() };
	struct columns s;

	fit(&s, p, c->cols);
	if (!m.text[0] && s.dropped && p->picked < p->n)
		message_set(&m, false, "%s", p->lines[p->picked].help);
	if (!frame_draw(c, &f))
		return;
	p->rows = f.last - f.first + 1;
	page_scroll_near(p->n, p->rows, &p->picked, &p->top);
	for (int i = 0; i < p->rows && p->top + (size_t)i < p->n; i++)
		draw_line(p, &s, c, f.first + i, p->top + (size_t)i);
	frame_more(c, &f, p->top > 0, p->top + (size_t)p->rows < p->n);
}
