#include "screen/week_rows.h"

#include "base/mem.h"
#include "base/words.h"
#include "screen/list.h"
#include "screen/reader.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { NAME, MARKS, PEST, CATCH, HIGH, NIGHTS, RULE, VERDICT, FLIGHT, SAYS, COLUMNS };

static const struct list_column column[COLUMNS] = {
	[NAME] = { N_("block, trap"), .least = 12 },
	[MARKS] = { "", .least = 1, .drop = 5, .whole = COLUMN_NUMBER },
	[PEST] = { N_("pest"), .least = 4, .drop = 6 },
	[CATCH] = { N_("catch"), .whole = COLUMN_NUMBER, .right = true },
	[HIGH] = { N_("high"), .drop = 7, .whole = COLUMN_NUMBER, .right = true },
	[NIGHTS] = { N_("read"), .drop = 3, .whole = COLUMN_NUMBER, .right = true },
	[RULE] = { N_("thr."), .drop = 4, .whole = COLUMN_NUMBER },
	[VERDICT] = { N_("verdict"), .least = 8 },
	[FLIGHT] = { N_("flight"), .least = 8, .drop = 2 },
	[SAYS] = { N_("remark"), .least = 20, .drop = 1 },
};

enum { LEFT = 3, NAME_TEXT = NAME_BYTES + 8 };

static bool is_open(const struct week_row *r)
{
	return r->verdict == VERDICT_OVER || r->verdict == VERDICT_UNKNOWN ||
	       r->verdict == VERDICT_NEAR || r->is_doubted;
}

static bool has_text(const struct week_page *p, const struct week_row *r)
{
	return narrow_contains(r->name, p->sift.narrow.text) ||
	       narrow_contains(r->pest_code, p->sift.narrow.text);
}

enum { LEVELS = WEEK_TRAP + 1 };

/* Marks the rows that are wanted themselves: what is looked for stands in the row, or
 * in one above it in the tree. */
static void mark_wanted(const struct week_page *p, bool *wanted)
{
	bool has[LEVELS] = { false };

	for (size_t i = 0; i < p->week->n; i++) {
		const struct week_row *r = &p->week->rows[i];
		enum week_level level = r->level;

		has[level] = has_text(p, r) || (level > WEEK_FARM && has[level - 1]);
		wanted[i] = has[level] && (!p->only_open || is_open(r));
	}
}

/* And those that have a wanted row below them in the tree. */
static void mark_above(const struct week_page *p, bool *wanted)
{
	bool below[LEVELS + 1] = { false };

	for (size_t i = p->week->n; i-- > 0;) {
		enum week_level level = p->week->rows[i].level;

		wanted[i] = wanted[i] || below[level + 1];
		for (int k = (int)level + 1; k <= LEVELS; k++)
			below[k] = false;
		for (int k = (int)level; k >= 0 && wanted[i]; k--)
			below[k] = true;
	}
}

void week_find(struct week_page *p)
{
	struct sift *s = &p->sift;
	size_t n = p->week->n;
	bool *wanted = NULL;

	if (s->is_found && s->all == n)
		return;
	wanted = mem_new(n, sizeof *wanted);
	mark_wanted(p, wanted);
	mark_above(p, wanted);
	s->rows = mem_grow(s->rows, &s->cap, n + 1, sizeof *s->rows);
	s->n = 0;
	for (size_t i = 0; i < n; i++)
		if (wanted[i])
			s->rows[s->n++] = i;
	s->all = n;
	s->is_found = true;
	free(wanted);
}

void week_page_show(struct week_page *p, const struct week *week)
{
	p->week = week;
	p->is_measured = false;
	sift_forget(&p->sift);
}

void week_page_free(struct week_page *p)
{
	sift_free(&p->sift);
	free(p->scales);
	*p = (struct week_page){ 0 };
}

const char *week_mark(const struct mark *m, int32_t highest_x10)
{
	static const char *const block[] = { "\u2581", "\u2582", "\u2583", "\u2584",
		"\u2585", "\u2586", "\u2587", "\u2588" };
	int64_t step = 0;

	switch (m->kind) {
	case MARK_NOTHING:
		return " ";
	case MARK_NOT_READ:
		return "\u00b7";
	case MARK_ZERO:
		return "_";
	case MARK_FLOOR:
		return "+";
	case MARK_CATCH:
		break;
	}
	if (highest_x10 > 0)
		step = ((int64_t)m->x10 * 8 + highest_x10 - 1) / highest_x10 - 1;
	return block[step < 0 ? 0 : step > 7 ? 7 : step];
}

static struct week_scale *scale_of(struct week_page *p, int64_t pest)
{
	for (size_t i = 0; i < p->n_scales; i++)
		if (p->scales[i].pest == pest)
			return &p->scales[i];
	p->scales =
		mem_grow(p->scales, &p->cap_scales, p->n_scales + 1, sizeof *p->scales);
	p->scales[p->n_scales] = (struct week_scale){ pest, 0 };
	return &p->scales[p->n_scales++];
}

/* A full card says no more than "at least": only counted weeks set the scale. */
static void scale_row(struct week_page *p, const struct week_row *r)
{
	struct week_scale *scale = r->line ? scale_of(p, r->pest) : NULL;

	for (size_t k = 0; scale && k < p->week->n_weeks; k++)
		if (r->line[k].kind == MARK_CATCH &&
			r->line[k].x10 > scale->highest_x10)
			scale->highest_x10 = r->line[k].x10;
}

static void name_text(const struct week_row *r, char out[static NAME_TEXT])
{
	snprintf(out, NAME_TEXT, "%*s%s", (int)r->level * 2, "", r->name);
}

static const char *marks(const struct week_row *r)
{
	if (r->is_border)
		return r->is_disrupted ? "bd" : "b";
	return r->is_disrupted ? "d" : "";
}

static void want_row(struct columns *s, const struct week_row *r)
{
	char name[NAME_TEXT];

	name_text(r, name);
	columns_want(s, NAME, name);
	columns_want(s, MARKS, marks(r));
	columns_want(s, PEST, r->pest_code);
	columns_want(s, CATCH, r->catch_text);
	columns_want(s, HIGH, r->highest_text);
	columns_want(s, NIGHTS, r->nights_text);
	columns_want(s, RULE, r->rule_text);
	columns_want(s, VERDICT, r->verdict_text);
	columns_want(s, SAYS, r->says);
}

/* Once a week: it may be long, and every key draws it. */
static void measure(struct week_page *p)
{
	const struct week *w = p->week;
	struct columns *s = &p->columns;

	if (p->is_measured)
		return;
	*s = (struct columns){ .col = column, .n = COLUMNS };
	for (size_t i = NAME; i <= VERDICT; i++)
		if (column[i].head[0])
			columns_want(s, i, _(column[i].head));
	s->want[FLIGHT] = w->n_weeks > 1000 ? 1000 : (int)w->n_weeks;
	p->n_scales = 0;
	for (size_t i = 0; i < w->n; i++) {
		want_row(s, &w->rows[i]);
		scale_row(p, &w->rows[i]);
	}
	p->is_measured = true;
}

/* The latest weeks that fit. */
static void draw_flight(const struct columns *s, struct canvas *c, int row,
	struct week_page *p, const struct week_row *r)
{
	const struct week *w = p->week;
	size_t room = (size_t)s->width[FLIGHT];
	size_t from = w->n_weeks > room ? w->n_weeks - room : 0;
	int32_t highest = r->line ? scale_of(p, r->pest)->highest_x10 : 0;

	for (size_t i = from; r->line && i < w->n_weeks; i++)
		canvas_text(c, row, s->at[FLIGHT] + (int)(i - from), 1,
			r->line[i].kind == MARK_FLOOR ? INK_UNSURE : INK_PLAIN,
			week_mark(&r->line[i], highest));
}

static void draw_row(const struct columns *s, struct canvas *c, int row,
	const struct week_row *r, enum ink ink)
{
	enum ink tone = list_ink(r->tone);
	char name[NAME_TEXT];

	name_text(r, name);
	columns_cell(s, c, row, NAME, ink, name);
	columns_cell(s, c, row, MARKS, ink, marks(r));
	columns_cell(s, c, row, PEST, ink, r->pest_code);
	columns_cell(s, c, row, CATCH, ink, r->catch_text);
	columns_cell(s, c, row, HIGH, ink, r->highest_text);
	columns_cell(s, c, row, NIGHTS, ink, r->nights_text);
	columns_cell(s, c, row, RULE, ink, r->rule_text);
	columns_cell(s, c, row, SAYS, ink, r->says);
	columns_cell(s, c, row, VERDICT, ink, "");
	canvas_text(c, row, s->at[VERDICT],
		(int)strlen(r->verdict_text) > s->width[VERDICT] ? s->width[VERDICT]
								 : 0,
		tone == INK_PLAIN || tone == INK_QUIET ? ink : tone, r->verdict_text);
}

static void draw_one(struct week_page *p, struct canvas *c, const struct columns *s,
	int row, const struct week_row *r)
{
	draw_row(s, c, row, r, r->level == WEEK_FARM ? INK_TITLE : INK_PLAIN);
	draw_flight(s, c, row, p, r);
}

static void draw_picked(struct week_page *p, struct canvas *c, const struct columns *s,
	int row, const struct week_row *r)
{
	canvas_text(c, row, 0, c->cols, INK_PICKED, " >");
	draw_row(s, c, row, r, INK_PICKED);
	canvas_text(c, row, s->at[FLIGHT], s->width[FLIGHT], INK_PLAIN, "");
	draw_flight(s, c, row, p, r);
	canvas_cursor(c, row, 1);
}

const char *week_says_none(const struct week_page *p)
{
	return p->sift.narrow.text[0] ? _("Nothing contains it: Esc shows all.")
	       : p->only_open         ? _("Nothing is over, unknown, near or in doubt.")
				      : _("No trap hangs here.");
}

void week_draw_rows(struct week_page *p, struct canvas *c, int first, int last)
{
	struct columns s;
	size_t n = 0;

	week_find(p);
	measure(p);
	s = p->columns;
	columns_fit(&s, LEFT, c->cols - 1);
	n = p->sift.n;
	if (last - first >= 3)
		columns_heads(&s, c, first++);
	p->rows = last - first + 1;
	page_scroll_near(n, p->rows, &p->picked, &p->top);
	for (int i = 0; i < p->rows && p->top + (size_t)i < n; i++) {
		size_t at = p->top + (size_t)i;
		const struct week_row *r = &p->week->rows[p->sift.rows[at]];

		if (at == p->picked)
			draw_picked(p, c, &s, first + i, r);
		else
			draw_one(p, c, &s, first + i, r);
	}
	if (n == 0)
		reader_text(c,
			(struct reader_box){
				first, 1, c->cols - 2, last - first + 1, 0 },
			INK_PLAIN, week_says_none(p));
}
