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

/* A list on the page: rows `first` .. first + n - 1 of all. */
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
	source_id(own->rule.source, c->id);
	c->text[PEST] = own->pest;
	c->text[RULE] = own->brief;
	c->text[WHERE] = own->where;
	c->text[MARK] = own->changed[0] ? _("changed") : "";
	if (!own->never[0])
		return;
	c->text[MARK] = _("never");
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

static void fit(const struct thresholds_page *p, struct part *part)
{
	struct cells cells;

	part->s = (struct columns){ .col = column, .n = COLUMNS };
	for (size_t k = 0; k < COLUMNS; k++)
		columns_want(&part->s, k, _(column[k].head));
	for (size_t i = 0; i < part->n; i++) {
		cells_of(p, part->first + i, &cells);
		for (size_t k = 0; k < COLUMNS; k++)
			columns_want(&part->s, k, cells.text[k]);
	}
	columns_fit(&part->s, part->from + 2, part->to);
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
	bool here = p->picked >= part->first && p->picked < part->first + part->n;
	size_t at = here ? p->picked - part->first : *top;
	int first = f->first, rows = f->last - f->first;

	fit(p, part);
	canvas_text(
		c, first++, part->from, part->to - part->from, INK_TITLE, part->head);
	page_scroll(part->n, rows, &at, top);
	for (int i = 0; i < rows && *top + (size_t)i < part->n; i++)
		draw_row(p, part, c, first + i, part->first + *top + (size_t)i);
	if (part->n == 0 && rows > 0)
		canvas_text(c, first, part->from + 2, part->to - part->from - 2,
			INK_QUIET, part->empty);
}

static void draw_wide(
	struct thresholds_page *p, struct canvas *c, const struct frame *f)
{
	int middle = c->cols / 2;
	struct part own = { .head = _("Yours"),
		.empty = _("none yet: t takes a published one"),
		.n = p->list->n_own,
		.from = 1,
		.to = middle - 1 };
	struct part published = { .head = _("Published"),
		.empty = _("none for this pest"),
		.first = p->list->n_own,
		.n = p->list->published.n,
		.from = middle + 1,
		.to = c->cols - 1 };

	p->rows = f->last - f->first;
	draw_part(p, &own, c, f, &p->top);
	draw_part(p, &published, c, f, &p->top_published);
}

/* Line i of the one long list: a heading (SIZE_MAX, text), else a row. */
static size_t row_of_line(const struct thresholds_page *p, size_t i, const char **text)
{
	size_t own = p->list->n_own, shown = own ? own : 1;

	*text = "";
	if (i == 0)
		*text = _("Yours");
	else if (i <= shown)
		*text = own ? NULL : _("  none yet: t takes a published one");
	else if (i == shown + 2)
		*text = _("Published");
	else if (i > shown + 2)
		*text = NULL;
	if (*text)
		return SIZE_MAX;
	return i <= shown ? i - 1 : own + i - shown - 3;
}

static void draw_narrow(
	struct thresholds_page *p, struct canvas *c, const struct frame *f)
{
	size_t own = p->list->n_own, shown = own ? own : 1;
	size_t n = shown + 3 + p->list->published.n;
	size_t at = p->picked < own ? p->picked + 1 : p->picked - own + shown + 3;
	struct part all = { .n = thresholds_count(p),
		.from = c->cols < FRAME_WIDE ? 0 : 1,
		.to = c->cols - 1 };

	fit(p, &all);
	p->rows = f->last - f->first + 1;
	page_scroll_near(n, p->rows, &at, &p->top);
	if (p->picked == 0 && own > 0 && p->rows > 1)
		p->top = 0; /* with its heading */
	for (int i = 0; i < p->rows && p->top + (size_t)i < n; i++) {
		const char *text = NULL;
		size_t row = row_of_line(p, p->top + (size_t)i, &text);

		if (text)
			canvas_text(c, f->first + i, 1, 0,
				text[0] == ' ' ? INK_QUIET : INK_TITLE, text);
		else
			draw_row(p, &all, c, f->first + i, row);
	}
	frame_more(c, f, p->top > 0, false);
}

enum { DETAILS_MAX = 6, DETAIL = 3 * SAY_LINE };

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
	}
	if (own && own->changed[0])
		text_copy(text[n++], DETAIL, own->changed);
	if (r->note[0])
		snprintf(text[n++], DETAIL, _("note: %s"), r->note);
	snprintf(text[n++], DETAIL, _("source: %s"),
		r->source[0] ? r->source : _("your own number"));
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

void thresholds_page_draw(struct thresholds_page *p, struct canvas *c)
{
	char title[SAY_LINE + 16];
	struct message m = p->message;
	struct frame f = {
		.title = title, .message = &m, .keys = thresholds_page_keys()
	};

	if (!p->list) {
		canvas_clear(c);
		return;
	}
	snprintf(title, sizeof title, _("Thresholds  %s"), p->list->filter);
	f.right = p->right;
	if (p->picked >= thresholds_count(p))
		p->picked = thresholds_count(p) ? thresholds_count(p) - 1 : 0;
	say_trial(p, c->rows, &m);
	if (!frame_draw(c, &f))
		return;
	f.last = draw_details(p, c, &f);
	if (c->cols >= THRESHOLDS_WIDE)
		draw_wide(p, c, &f);
	else
		draw_narrow(p, c, &f);
}
