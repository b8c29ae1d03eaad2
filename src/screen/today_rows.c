#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "screen/list.h"
#include "screen/reader.h"
#include "today_parts.h"

#include <stdio.h>
#include <stdlib.h>

enum { NAME, TRAPS, LAST, BRING, RUN_COLUMNS };

static const struct column run_column[RUN_COLUMNS] = {
	[NAME] = { "", .least = 10 },
	[TRAPS] = { "", .drop = 2, .whole = COLUMN_NUMBER },
	[LAST] = { "", .drop = 1, .whole = COLUMN_NUMBER },
	[BRING] = { "", .least = 12, .whole = 24 },
};

enum { FARM, BLOCK, PEST, WHERE, SAYS, VERDICT_COLUMNS };

static const struct column verdict_column[VERDICT_COLUMNS] = {
	[FARM] = { "", .least = 8, .drop = 1 },
	[BLOCK] = { "", .least = 8 },
	[PEST] = { "", .drop = 2, .whole = COLUMN_NUMBER },
	[WHERE] = { "", .least = 7, .whole = COLUMN_LABEL },
	[SAYS] = { "", .least = 24 },
};

enum { NEXT_FARM, NEXT_PEST, NEXT_SAYS, NEXT_COLUMNS };
enum { NEXT_SAYS_COLS = 48 }; /* it runs on to the edge, whatever it wants */

static const struct column next_column[NEXT_COLUMNS] = {
	[NEXT_FARM] = { "", .least = 8, .drop = 1 },
	[NEXT_PEST] = { "", .whole = COLUMN_NUMBER },
	[NEXT_SAYS] = { "", .least = 24 },
};

/* What stands on one row of the page. Those that can be picked come last. */
enum line_kind { LINE_BLANK, LINE_HEAD, LINE_TEXT, LINE_RUN, LINE_VERDICT, LINE_NEXT };
struct line {
	enum line_kind kind;
	size_t index;     /* of the run, verdict or what comes next */
	const char *text; /* of the others, translated */
};
struct lines {
	struct line *items;
	size_t n, cap;
};

size_t today_count(const struct today *t)
{
	return t->n_runs + t->n_lines + t->n_nexts;
}

const struct today_run *today_picked_run(const struct today_page *p)
{
	return p->picked < p->today->n_runs ? &p->today->runs[p->picked] : NULL;
}

const struct today_line *today_picked_line(const struct today_page *p)
{
	size_t at = p->picked - p->today->n_runs;

	if (p->picked < p->today->n_runs || at >= p->today->n_lines)
		return NULL;
	return &p->today->lines[at];
}

const struct today_next *today_picked_next(const struct today_page *p)
{
	size_t before = p->today->n_runs + p->today->n_lines;

	if (p->picked < before || p->picked - before >= p->today->n_nexts)
		return NULL;
	return &p->today->nexts[p->picked - before];
}

static void add_line(
	struct lines *l, enum line_kind kind, size_t index, const char *text)
{
	l->items = mem_grow(l->items, &l->cap, l->n + 1, sizeof *l->items);
	l->items[l->n++] = (struct line){ kind, index, text };
}

static void add_runs(struct lines *l, const struct today *t)
{
	size_t due = 0;

	while (due < t->n_runs && t->runs[due].due)
		due++;
	add_line(l, LINE_HEAD, 0, _("To run"));
	if (due == 0)
		add_line(l, LINE_TEXT, 0, _("nothing is due today"));
	for (size_t i = 0; i < t->n_runs; i++) {
		if (i == due)
			add_line(l, LINE_HEAD, 0, _("Later"));
		add_line(l, LINE_RUN, i, NULL);
	}
}

static void add_verdicts(struct lines *l, const struct today *t)
{
	if (!t->no_rules)
		add_line(l, LINE_HEAD, 0, _("Over threshold"));
	if (t->n_over == 0 && !t->no_rules)
		add_line(l, LINE_TEXT, 0, _("none"));
	for (size_t i = 0; i < t->n_lines; i++) {
		if (i == t->n_over)
			add_line(l, LINE_HEAD, 0, _("Unknown"));
		add_line(l, LINE_VERDICT, i, NULL);
	}
}

static void add_nexts(struct lines *l, const struct today *t)
{
	if (t->n_nexts > 0)
		add_line(l, LINE_HEAD, 0, _("Next"));
	for (size_t i = 0; i < t->n_nexts; i++)
		add_line(l, LINE_NEXT, i, NULL);
}

/* Columns of each kind of row. */
struct today_columns {
	struct columns runs, verdicts, nexts;
};

static void want_runs(struct columns *s, const struct today *t)
{
	*s = (struct columns){ .col = run_column, .n = RUN_COLUMNS };
	for (size_t i = 0; i < t->n_runs; i++) {
		columns_want(s, NAME, t->runs[i].name);
		columns_want(s, TRAPS, t->runs[i].traps_text);
		columns_want(s, LAST, t->runs[i].last_text);
		columns_want(s, BRING, t->runs[i].bring);
	}
}

static void want_verdicts(struct columns *s, const struct today *t)
{
	*s = (struct columns){ .col = verdict_column, .n = VERDICT_COLUMNS };
	for (size_t i = 0; i < t->n_lines; i++) {
		columns_want(s, FARM, t->lines[i].farm_name);
		columns_want(s, BLOCK, t->lines[i].block_name);
		columns_want(s, PEST, t->lines[i].pest_code);
		columns_want(s, WHERE, t->lines[i].where);
		columns_want(s, SAYS, t->lines[i].says);
	}
}

static void want_nexts(struct columns *s, const struct today *t)
{
	*s = (struct columns){ .col = next_column, .n = NEXT_COLUMNS };
	for (size_t i = 0; i < t->n_nexts; i++) {
		columns_want(s, NEXT_FARM, t->nexts[i].name);
		columns_want(s, NEXT_PEST, t->nexts[i].pest_code);
		columns_want(s, NEXT_SAYS, t->nexts[i].says);
		if (s->want[NEXT_SAYS] > NEXT_SAYS_COLS)
			s->want[NEXT_SAYS] = NEXT_SAYS_COLS;
	}
}

static void columns_of(const struct today *t, struct today_columns *s, int cols)
{
	want_runs(&s->runs, t);
	want_verdicts(&s->verdicts, t);
	want_nexts(&s->nexts, t);
	columns_fit(&s->runs, 3, cols - 1);
	columns_fit(&s->verdicts, 3, cols - 1);
	columns_fit(&s->nexts, 3, cols - 1);
}

static void draw_run(const struct columns *s, struct canvas *c, int row, enum ink ink,
	const struct today_run *r)
{
	columns_cell(s, c, row, NAME, ink, r->name);
	columns_cell(s, c, row, TRAPS, ink, r->traps_text);
	columns_cell(s, c, row, LAST, ink, r->last_text);
	columns_cell(s, c, row, BRING, ink, r->bring);
}

static void draw_verdict(const struct columns *s, struct canvas *c, int row,
	enum ink ink, const struct today_line *v)
{
	enum ink says = ink;

	if (ink == INK_PLAIN)
		says = v->verdict == VERDICT_OVER ? INK_OVER : INK_UNSURE;
	columns_cell(s, c, row, FARM, ink, v->farm_name);
	columns_cell(s, c, row, BLOCK, ink, v->block_name);
	columns_cell(s, c, row, PEST, ink, v->pest_code);
	columns_cell(s, c, row, WHERE, ink, v->where);
	canvas_textf(c, row, s->at[SAYS], 0, says, "%.*s",
		(int)reader_cut(v->says, c->cols - s->at[SAYS]), v->says);
}

/* Bytes that fit, without a parenthesis that does not. */
static size_t cut_next(const char *says, int cols)
{
	size_t n = reader_wrap(says, cols), open = n;

	if (says[n] == '\0')
		return n;
	for (size_t i = 0; i < n; i++)
		if (says[i] == '(')
			open = i;
		else if (says[i] == ')')
			open = n;
	return open;
}

static void draw_next(const struct columns *s, struct canvas *c, int row, enum ink ink,
	const struct today_next *n)
{
	columns_cell(s, c, row, NEXT_FARM, ink, n->name);
	columns_cell(s, c, row, NEXT_PEST, ink, n->pest_code);
	canvas_textf(c, row, s->at[NEXT_SAYS], 0, ink, "%.*s",
		(int)cut_next(n->says, c->cols - s->at[NEXT_SAYS]), n->says);
}

static bool is_picked(const struct today_page *p, const struct line *l)
{
	size_t before = l->kind == LINE_RUN ? 0 : p->today->n_runs;

	if (l->kind == LINE_NEXT)
		before += p->today->n_lines;
	return l->kind >= LINE_RUN && l->index + before == p->picked;
}

static void draw_line(const struct today_page *p, struct canvas *c, int row,
	const struct line *l, const struct today_columns *s)
{
	enum ink ink = is_picked(p, l) ? INK_PICKED : INK_PLAIN;

	if (ink == INK_PICKED) {
		canvas_text(c, row, 0, c->cols, ink, " >");
		canvas_cursor(c, row, 1);
	}
	if (l->kind == LINE_RUN)
		draw_run(&s->runs, c, row, ink, &p->today->runs[l->index]);
	else if (l->kind == LINE_VERDICT)
		draw_verdict(&s->verdicts, c, row, ink, &p->today->lines[l->index]);
	else if (l->kind == LINE_NEXT)
		draw_next(&s->nexts, c, row, ink, &p->today->nexts[l->index]);
	else if (l->kind == LINE_HEAD)
		canvas_text(c, row, 1, 0, INK_TITLE, l->text);
	else if (l->kind == LINE_TEXT)
		canvas_text(c, row, 3, 0, INK_PLAIN, l->text);
}

/* Scrolls to the picked line; with the first one to what stands above it, with the
 * last one to what stands below. */
static void scroll(struct today_page *p, const struct lines *l)
{
	size_t at = 0, top = 0, end = l->n - 1;

	while (at < l->n && !is_picked(p, &l->items[at]))
		at++;
	if (p->picked == 0)
		page_scroll(l->n, p->rows, &top, &p->top);
	else if (p->picked + 1 == today_count(p->today))
		page_scroll(l->n, p->rows, &end, &p->top);
	page_scroll_near(l->n, p->rows, &at, &p->top);
}

static void say_rest(const struct today *t, char *out, size_t size)
{
	if (t->no_rules)
		snprintf(out, size, "%s",
			_("no threshold set: mothtally import thresholds FILE sets "
			  "yours"));
	else
		snprintf(out, size, _("others: %d near, %d under"), t->n_near,
			t->n_under);
}

/* A head in the last row would look as if nothing stood below it: it is left out. */
void today_draw_rows(struct today_page *p, struct canvas *c, const struct frame *f)
{
	char rest[SAY_LINE];
	struct lines l = { 0 };
	struct today_columns s;

	add_runs(&l, p->today);
	add_verdicts(&l, p->today);
	say_rest(p->today, rest, sizeof rest);
	add_line(&l, LINE_BLANK, 0, NULL);
	add_line(&l, LINE_TEXT, 0, rest);
	add_nexts(&l, p->today);
	columns_of(p->today, &s, c->cols);
	p->rows = f->last - f->first + 1;
	scroll(p, &l);
	for (int i = 0; i < p->rows && p->top + (size_t)i < l.n; i++) {
		const struct line *line = &l.items[p->top + (size_t)i];

		if (line->kind != LINE_HEAD || i + 1 < p->rows)
			draw_line(p, c, f->first + i, line, &s);
	}
	frame_more(c, f, p->top > 0, p->top + (size_t)p->rows < l.n);
	free(l.items);
}

void today_say_picked(const struct today_page *p, int cols, struct message *m)
{
	const struct today_run *r = today_picked_run(p);
	const struct today_line *v = today_picked_line(p);
	const struct today_next *n = today_picked_next(p);
	struct today_columns s;

	columns_of(p->today, &s, cols);
	if (r && s.runs.dropped)
		message_set(m, false, "%s: %s, %s, %s", r->name, r->traps_text,
			r->last_text, r->bring);
	else if (v && s.verdicts.dropped)
		message_set(m, false, "%s, %s, %s, %s: %s", v->farm_name, v->block_name,
			v->pest_code, v->where, v->says);
	else if (n &&
		 (s.nexts.dropped || text_cols(n->says) > cols - s.nexts.at[NEXT_SAYS]))
		message_set(m, false, "%s, %s: %s", n->name, n->pest_code, n->says);
}
