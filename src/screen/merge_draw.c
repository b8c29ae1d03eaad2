/* merge_draw.c - the Merge page drawn. */
#include "screen/merge_page.h"

#include "base/text.h"
#include "base/words.h"
#include "prose.h"
#include "screen/frame.h"
#include "screen/line.h"
#include "screen/list.h"

#include <stdio.h>

enum { TITLE_AT = 3 };

static void draw_row(const struct merge_page *p, struct canvas *c, int row, size_t i)
{
	bool here = i == p->picked;
	enum ink ink = here ? INK_PICKED : INK_PLAIN;
	const char *title = p->open->items[i].title;

	if (here) {
		canvas_text(c, row, 0, c->cols, ink, " >");
		canvas_cursor(c, row, 1);
	}
	canvas_textf(c, row, TITLE_AT, 0, ink, "%.*s",
		(int)reader_cut(title, c->cols - TITLE_AT - 1), title);
}

static void draw_list(struct merge_page *p, struct canvas *c, const struct frame *f)
{
	p->rows = f->last - f->first + 1;
	page_scroll_near(p->open->n, p->rows, &p->picked, &p->top);
	for (int i = 0; i < p->rows && p->top + (size_t)i < p->open->n; i++)
		draw_row(p, c, f->first + i, p->top + (size_t)i);
	frame_more(c, f, p->top > 0, p->top + (size_t)p->rows < p->open->n);
}

static void draw_prose(struct merge_page *p, struct canvas *c, const struct frame *f,
	struct prose *text)
{
	p->rows = f->last - f->first + 1;
	size_t all = reader_draw(c, f->first, f->last, &p->read, text->items, text->n);
	frame_more(c, f, p->read > 0, p->read + (size_t)p->rows < all);
	canvas_cursor(c, f->first, 0);
	prose_free(text);
}

static void draw_nothing(struct merge_page *p, struct canvas *c, const struct frame *f)
{
	struct prose text = { 0 };

	prose_add(&text, INK_PLAIN, 0,
		_("Two scouts, two books: f or + brings the other one's into this one. "
		  "It can be done in any order and as often as you like; nothing is "
		  "entered twice, and nothing is lost."));
	prose_gap(&text);
	prose_add(&text, INK_PLAIN, 0,
		_("What only a person can settle stands here afterwards. There is "
		  "nothing to settle now."));
	draw_prose(p, c, f, &text);
}

static void draw_matter(struct merge_page *p, struct canvas *c, const struct frame *f)
{
	const struct open_matter *m = &p->open->items[p->picked];
	struct prose text = { 0 };
	char line[SAY_LINE + 8];

	prose_add(&text, INK_UNSURE, 0, m->title);
	prose_gap(&text);
	for (int i = 0; i < m->n_choices; i++) {
		snprintf(line, sizeof line, "%d  %s", i + 1, m->choices[i]);
		prose_add(&text, INK_PLAIN, 2, line);
	}
	if (m->takes_count)
		prose_add(&text, INK_PLAIN, 2, _("c or *  another count holds"));
	draw_prose(p, c, f, &text);
}

static void draw_look(struct merge_page *p, struct canvas *c, const struct frame *f)
{
	struct prose text = { 0 };

	for (size_t i = 0; p->look && i < p->look->n; i++)
		prose_add(&text, list_ink(p->look->lines[i].tone),
			p->look->lines[i].indent, p->look->lines[i].text);
	draw_prose(p, c, f, &text);
}

static void draw_content(struct merge_page *p, struct canvas *c, const struct frame *f)
{
	bool any = p->open && p->picked < p->open->n;

	if (p->stage == MERGE_SHOWN)
		draw_look(p, c, f);
	else if ((p->stage == MERGE_MATTER || p->stage == MERGE_COUNT) && any)
		draw_matter(p, c, f);
	else if (p->open && p->open->n > 0)
		draw_list(p, c, f);
	else
		draw_nothing(p, c, f);
}

/* What is typed, behind its prompt. */
static void draw_typing(struct merge_page *p, struct canvas *c, int row)
{
	bool path = p->stage == MERGE_PATH;
	const char *prompt = path ? _("other book: ") : _("count: ");
	struct line l = { path ? p->path : p->count,
		path ? sizeof p->path : sizeof p->count, p->cursor, false };

	line_ask(&l, c, row, prompt);
}

/* All of a title that its row has no room for. */
static const char *whole_title(const struct merge_page *p, int cols)
{
	const char *title = p->open && p->picked < p->open->n
				    ? p->open->items[p->picked].title
				    : "";

	return text_cols(title) > cols - TITLE_AT - 1 ? title : NULL;
}

static const char *hint(const struct merge_page *p, int cols)
{
	if (p->stage == MERGE_SHOWN && p->look && p->look->nothing_new)
		return _("There is nothing to merge; Esc goes back.");
	if (p->stage == MERGE_SHOWN)
		return _("Nothing is changed yet. Enter merges, Esc leaves it.");
	if (p->stage == MERGE_MATTER)
		return _("A number settles it, under your name; Esc leaves it open.");
	if (p->stage == MERGE_LIST && p->sure)
		return _("u once more goes back to before the merge, Esc leaves it.");
	return p->stage == MERGE_LIST ? whole_title(p, cols) : NULL;
}

void merge_page_draw(struct merge_page *p, struct canvas *c)
{
	struct message m = p->message;
	struct frame f = {
		.title = _("Merging"), .message = &m, .keys = merge_page_keys_now(p)
	};
	bool typing = p->stage == MERGE_PATH || p->stage == MERGE_COUNT;
	char status[SAY_LINE];

	if (p->stage == MERGE_PATH && p->n_found > 1 && merge_page_found(p) &&
		!m.text[0]) {
		snprintf(status, sizeof status, _("book %zu of %zu found; + the next"),
			merge_page_found(p), p->n_found);
		f.status = status;
	} else if (typing && !m.text[0])
		f.status = _("Enter goes on, Esc leaves it.");
	else if (!m.text[0] && hint(p, c->cols))
		message_set(&m, false, "%s", hint(p, c->cols));
	if (!frame_draw(c, &f))
		return;
	draw_content(p, c, &f);
	if (typing)
		draw_typing(p, c, f.message_row);
}
