/* thresholds_draw.c - the Thresholds page on its canvas. */
#include "base/text.h"
#include "base/words.h"
#include "screen/frame.h"
#include "screen/list.h"
#include "screen/reader.h"
#include "thresholds_parts.h"

#include <stdio.h>
#include <string.h>

enum { PEST, RULE, WHERE, SOURCE, MARK, COLUMNS };

static const struct list_column column[COLUMNS] = {
	[PEST] = { N_("pest"), .least = 4, .whole = COLUMN_NUMBER },
	[RULE] = { N_("rule"), .least = 6, .whole = COLUMN_NUMBER },
	[WHERE] = { N_("where and when"), .least = 8 },
	[SOURCE] = { N_("source"), .least = 4, .drop = 1 },
	[MARK] = { "", .least = 7, .drop = 2 },
};

/* A list on the page: rows `first` .. first + n - 1 of those that are shown. */
struct part {
	const char *head, *empty; /* translated */
	size_t first, n;
	int from, to; /* columns: from included, to excluded */
	struct columns s;
};

struct cells {
	const char *text[COLUMNS];
	char id[SAY_SHORT];
	enum ink ink; /* of the mark */
};

/* "CM2" of "CM2: who says so" */
static void source_id(const char *source, char out[static SAY_SHORT])
{
	size_t n = strcspn(source, ":");

	snprintf(out, SAY_SHORT, "%.*s", n < SAY_SHORT - 1 ? (int)n : SAY_SHORT - 1,
		source);
}

static void own_cells(const struct own_row *own, struct cells *c)
{
	source_id(words_shipped(own->rule.source), c->id);
	c->text[PEST] = own->pest;
	c->text[RULE] = own->brief;
	c->text[WHERE] = own->where;
	c->text[MARK] = own->changed[0] ? _("changed") : "";
	if (!own->never[0] && !own->replaced[0])
		return;
	c->text[MARK] = own->never[0] ? _("never") : _("replaced");
	c->ink = INK_UNSURE;
}

static void published_cells(const struct published_row *row, struct cells *c)
{
	source_id(row->rule.source, c->id);
	c->text[PEST] = row->pest;
	c->text[RULE] = row->brief;
	c->text[WHERE] = row->where;
	c->text[MARK] = row->is_taken ? _("yours") : row->changed ? _("changed") : "";
}

static void cells_of(const struct thresholds_page *p, size_t i, struct cells *c)
{
	const struct own_row *own = thresholds_own(p, i);
	const struct published_row *row = thresholds_published(p, i);

	*c = (struct cells){ .ink = INK_PLAIN };
	c->text[SOURCE] = c->id;
	if (own)
		own_cells(own, c);
	else if (row)
		published_cells(row, c);
}

bool thresholds_has(const void *page, size_t i, const char *text)
{
	const struct thresholds_page *p = page;
	const struct own_row *own = thresholds_own(p, i);
	const struct published_row *row = thresholds_published(p, i);
	const struct rule *r = own ? &own->rule : row ? &row->rule : NULL;
	struct cells cells;

	if (!r)
		return false;
	cells_of(p, i, &cells);
	for (size_t k = 0; k < COLUMNS; k++)
		if (narrow_contains(cells.text[k], text))
			return true;
	return narrow_contains(own ? own->rule_text : row->rule_text, text) ||
	       narrow_contains(words_shipped(r->note), text) ||
	       narrow_contains(words_shipped(r->source), text);
}

static void want(
	const struct thresholds_page *p, size_t first, size_t n, struct columns *s)
{
	struct cells cells;

	*s = (struct columns){ .col = column, .n = COLUMNS };
	for (size_t k = 0; k < COLUMNS; k++)
		columns_want(s, k, _(column[k].head));
	for (size_t i = 0; i < n; i++) {
		cells_of(p, first + i, &cells);
		for (size_t k = 0; k < COLUMNS; k++)
			columns_want(s, k, cells.text[k]);
	}
}

/* Once a list: it may be long, and every key draws it. */
static void measure(struct thresholds_page *p)
{
	if (p->is_measured)
		return;
	want(p, 0, p->list->n_own, &p->own);
	want(p, p->list->n_own, p->list->published.n, &p->published);
	p->is_measured = true;
}

static void draw_row(const struct thresholds_page *p, const struct part *part,
	struct canvas *c, int row, size_t i)
{
	bool picked = i == p->picked;
	struct cells cells;

	cells_of(p, i, &cells);
	if (picked) {
		canvas_text(c, row, part->from, part->to - part->from, INK_PICKED, ">");
		canvas_cursor(c, row, part->from + 2);
	}
	for (size_t k = 0; k < COLUMNS; k++)
		columns_cell(&part->s, c, row, k,
			picked      ? INK_PICKED
			: k == MARK ? cells.ink
				    : INK_PLAIN,
			cells.text[k]);
}

/* One list under its heading in rows first..last. */
static void draw_part(struct thresholds_page *p, struct part *part, struct canvas *c,
	const struct frame *f, size_t *top)
{
	size_t picked = sift_place(&p->sift, p->picked);
	bool here = picked >= part->first && picked < part->first + part->n;
	size_t at = here ? picked - part->first : *top;
	int first = f->first, rows = f->last - f->first;

	columns_fit(&part->s, part->from + 2, part->to);
	canvas_text(
		c, first++, part->from, part->to - part->from, INK_TITLE, part->head);
	page_scroll(part->n, rows, &at, top);
	for (int i = 0; i < rows && *top + (size_t)i < part->n; i++)
		draw_row(p, part, c, first + i,
			p->sift.rows[part->first + *top + (size_t)i]);
	if (part->n == 0 && rows > 0)
		canvas_text(c, first, part->from + 2, part->to - part->from - 2,
			INK_QUIET, part->empty);
}

static const char *none_own(const struct thresholds_page *p)
{
	return p->sift.narrow.text[0] && p->list->n_own > 0
		       ? _("none contains it")
		       : _("none yet: t takes a published one");
}

static void draw_wide(
	struct thresholds_page *p, struct canvas *c, const struct frame *f)
{
	int middle = c->cols / 2;
	size_t n = thresholds_shown_own(p);
	struct part own = { .head = _("Yours"),
		.empty = none_own(p),
		.n = n,
		.from = 1,
		.to = middle - 1,
		.s = p->own };
	struct part published = { .head = _("Published"),
		.empty = p->sift.narrow.text[0] ? _("none contains it")
						: _("none for this pest"),
		.first = n,
		.n = p->sift.n - n,
		.from = middle + 1,
		.to = c->cols - 1,
		.s = p->published };

	p->rows = f->last - f->first;
	draw_part(p, &own, c, f, &p->top);
	draw_part(p, &published, c, f, &p->top_published);
}

/* The lines of the one long list: each part has a heading, and own ones at least one
 * line. */
struct long_list {
	size_t own, lines_own, published, n;
};

static struct long_list long_list_of(const struct thresholds_page *p)
{
	size_t own = thresholds_shown_own(p), lines = own ? own : 1;

	return (struct long_list){ own, lines, p->sift.n - own,
		lines + 3 + p->sift.n - own };
}

/* Line i: where it stands in p->sift; SIZE_MAX: it is a text. */
static size_t place_of_line(const struct long_list *l, size_t i, const char **text)
{
	*text = "";
	if (i == 0)
		*text = _("Yours");
	else if (i == l->lines_own + 2)
		*text = _("Published");
	else if (i > l->lines_own + 2)
		return l->own + i - l->lines_own - 3;
	else if (i <= l->lines_own && l->own > 0)
		return i - 1;
	return SIZE_MAX;
}

static void draw_line(struct thresholds_page *p, struct canvas *c, int row,
	const struct part *all, const struct long_list *l, size_t i)
{
	const char *text = NULL;
	size_t at = place_of_line(l, i, &text);

	if (at != SIZE_MAX)
		draw_row(p, all, c, row, p->sift.rows[at]);
	else if (i == 1)
		canvas_text(c, row, 3, 0, INK_QUIET, none_own(p));
	else
		canvas_text(c, row, 1, 0, INK_TITLE, text);
}

/* Wide enough for both kinds of rows. */
static struct columns columns_of_both(const struct thresholds_page *p)
{
	struct columns s = p->own;

	for (size_t k = 0; k < COLUMNS; k++)
		if (p->published.want[k] > s.want[k])
			s.want[k] = p->published.want[k];
	return s;
}

static void draw_narrow(
	struct thresholds_page *p, struct canvas *c, const struct frame *f)
{
	const struct long_list l = long_list_of(p);
	size_t at = sift_place(&p->sift, p->picked);
	struct part all = { .from = c->cols < FRAME_WIDE ? 0 : 1,
		.to = c->cols - 1,
		.s = columns_of_both(p) };

	at = at < l.own ? at + 1 : at - l.own + l.lines_own + 3;
	columns_fit(&all.s, all.from + 2, all.to);
	p->rows = f->last - f->first + 1;
	page_scroll_near(l.n, p->rows, &at, &p->top);
	if (p->sift.n > 0 && p->picked == p->sift.rows[0] && l.own > 0 && p->rows > 1)
		p->top = 0; /* with its heading */
	for (int i = 0; i < p->rows && p->top + (size_t)i < l.n; i++)
		draw_line(p, c, f->first + i, &all, &l, p->top + (size_t)i);
	frame_more(c, f, p->top > 0, false);
}

enum { DETAILS_MAX = 7, DETAIL = 3 * SAY_LINE };

/* What is known of the picked one, a paragraph each. */
static size_t details(const struct thresholds_page *p,
	char text[static DETAILS_MAX][DETAIL], enum ink ink[static DETAILS_MAX])
{
	const struct own_row *own = thresholds_own(p, p->picked);
	const struct published_row *row = thresholds_published(p, p->picked);
	const struct rule *r = thresholds_page_picked(p);
	size_t n = 0;

	if (!r)
		return 0;
	for (size_t i = 0; i < DETAILS_MAX; i++)
		ink[i] = INK_PLAIN;
	snprintf(text[n++], DETAIL, "%s, %s; %s", own ? own->pest : row->pest,
		own ? own->rule_text : row->rule_text, own ? own->where : row->where);
	if (p->trial && p->trial->never[0]) {
		ink[n] = INK_UNSURE;
		snprintf(text[n++], DETAIL, _("can never apply: %s"), p->trial->never);
	} else if (p->trial) {
		ink[n] = INK_TITLE;
		text_copy(text[n++], DETAIL, p->trial->says);
	} else {
		ink[n] = INK_QUIET;
		text_copy(text[n++], DETAIL,
			_("this season: told when no key is pressed"));
	}
	if (own && own->replaced[0]) {
		ink[n] = INK_UNSURE;
		snprintf(text[n++], DETAIL,
			_("off where these hold, which are judged in its place: "
			  "%s"),
			own->replaced);
	}
	if (own && own->changed[0])
		text_copy(text[n++], DETAIL, own->changed);
	if (r->note[0])
		snprintf(text[n++], DETAIL, _("note: %s"), words_shipped(r->note));
	snprintf(text[n++], DETAIL, _("source: %s"),
		r->source[0] ? words_shipped(r->source) : _("your own number"));
	return n;
}

/* Below the list, as far as half of the page goes; returns the last row above it. */
static int draw_details(
	const struct thresholds_page *p, struct canvas *c, const struct frame *f)
{
	enum { ROWS_LEAST = 6 };
	char text[DETAILS_MAX][DETAIL];
	enum ink ink[DETAILS_MAX];
	size_t n = details(p, text, ink), lines = 0;
	int room = (f->last - f->first + 1) / 2, row = 0;

	if (f->last - f->first + 1 < ROWS_LEAST || n == 0)
		return f->last;
	for (size_t i = 0; i < n; i++)
		lines += reader_lines(text[i], c->cols - 2);
	if (lines < (size_t)room)
		room = (int)lines;
	row = f->last - room + 1;
	for (size_t i = 0; i < n && row <= f->last; i++)
		row += reader_text(c,
			(struct reader_box){
				row, 1, c->cols - 2, f->last - row + 1, 0 },
			ink[i], text[i]);
	canvas_line(c, f->last - room);
	return f->last - room - 1;
}

/* On a page too low for the details. */
static void say_trial(const struct thresholds_page *p, int rows, struct message *m)
{
	enum { ROWS_DETAILS = 12 };

	if (m->text[0] || !p->trial || rows >= ROWS_DETAILS)
		return;
	if (p->trial->never[0])
		message_set(m, false, _("can never apply: %s"), p->trial->never);
	else
		message_set(m, false, "%s", p->trial->says);
}

static void draw_none(struct canvas *c, const struct frame *f)
{
	canvas_text(
		c, f->first, 1, 0, INK_PLAIN, _("Nothing contains it: Esc shows all."));
	canvas_cursor(c, f->first, 0);
}

void thresholds_page_draw(struct thresholds_page *p, struct canvas *c)
{
	char title[SAY_LINE + 64];
	int cursor = -1;
	struct message m = p->message;
	struct frame f = { .title = title,
		.message = &m,
		.keys = sift_keys(&p->sift, thresholds_page_keys()) };

	if (!p->list) {
		canvas_clear(c);
		return;
	}
	snprintf(title, sizeof title, _("Thresholds  %s"), p->list->filter);
	f.right = p->right;
	thresholds_find(p);
	measure(p);
	sift_title(&p->sift, title, sizeof title);
	if (!m.text[0])
		cursor = sift_say(&p->sift, &m);
	say_trial(p, c->rows, &m);
	if (!frame_draw(c, &f))
		return;
	f.last = draw_details(p, c, &f);
	if (p->sift.n == 0 && p->sift.narrow.text[0])
		draw_none(c, &f);
	else if (c->cols >= THRESHOLDS_WIDE)
		draw_wide(p, c, &f);
	else
		draw_narrow(p, c, &f);
	if (cursor >= 0)
		canvas_cursor(c, f.message_row, cursor);
}
