/* today_cells.c - the rows of the Today page that can be picked, cell by cell. */
#include "screen/list.h"
#include "screen/reader.h"
#include "today_parts.h"

enum { NAME, TRAPS, LAST, BRING, RUN_COLUMNS };

static const struct list_column run_column[RUN_COLUMNS] = {
	[NAME] = { "", .least = 10 },
	[TRAPS] = { "", .drop = 2, .whole = COLUMN_NUMBER },
	[LAST] = { "", .drop = 1, .whole = COLUMN_NUMBER },
	[BRING] = { "", .least = 12, .whole = 24 },
};

enum { FARM, BLOCK, PEST, WHERE, SAYS, VERDICT_COLUMNS };

static const struct list_column verdict_column[VERDICT_COLUMNS] = {
	[FARM] = { "", .least = 8, .drop = 1 },
	[BLOCK] = { "", .least = 8 },
	[PEST] = { "", .drop = 2, .whole = COLUMN_NUMBER },
	[WHERE] = { "", .least = 7, .whole = COLUMN_LABEL },
	[SAYS] = { "", .least = 24 },
};

static const struct list_column hot_column[SPOT_COLUMNS] = {
	[SPOT_FARM] = { "", .least = 8, .drop = 1 },
	[SPOT_SAYS] = { "", .least = 32 }, /* the grade must not be cut off */
};

enum { NEXT_SAYS_COLS = 48 }; /* it runs on to the edge, whatever it wants */

static const struct list_column next_column[NEXT_COLUMNS] = {
	[NEXT_FARM] = { "", .least = 8, .drop = 1 },
	[NEXT_PEST] = { "", .whole = COLUMN_NUMBER },
	[NEXT_SAYS] = { "", .least = 24 },
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

static void want_hots(struct columns *s, const struct today *t)
{
	*s = (struct columns){ .col = hot_column, .n = SPOT_COLUMNS };
	for (size_t i = 0; i < t->n_hots; i++) {
		columns_want(s, SPOT_FARM, t->hots[i].name);
		columns_want(s, SPOT_SAYS, t->hots[i].says);
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

/* Once for what was read: the lists may be long, and every key draws them. */
static void measure(struct today_page *p)
{
	if (p->is_measured)
		return;
	want_runs(&p->columns.runs, p->today);
	want_verdicts(&p->columns.verdicts, p->today);
	want_hots(&p->columns.hots, p->today);
	want_nexts(&p->columns.nexts, p->today);
	p->is_measured = true;
}

struct today_columns today_columns_of(struct today_page *p, int cols)
{
	struct today_columns s;

	measure(p);
	s = p->columns;
	columns_fit(&s.runs, 3, cols - 1);
	columns_fit(&s.verdicts, 3, cols - 1);
	columns_fit(&s.hots, 3, cols - 1);
	columns_fit(&s.nexts, 3, cols - 1);
	return s;
}

void today_draw_run(const struct columns *s, struct canvas *c, int row, enum ink ink,
	const struct today_run *r)
{
	columns_cell(s, c, row, NAME, ink, r->name);
	columns_cell(s, c, row, TRAPS, ink, r->traps_text);
	columns_cell(s, c, row, LAST, ink, r->last_text);
	columns_cell(s, c, row, BRING, ink, r->bring);
}

void today_draw_verdict(const struct columns *s, struct canvas *c, int row,
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

void today_draw_hot(const struct columns *s, struct canvas *c, int row, enum ink ink,
	const struct today_hot *h)
{
	columns_cell(s, c, row, SPOT_FARM, ink, h->name);
	canvas_textf(c, row, s->at[SPOT_SAYS], 0, ink, "%.*s",
		(int)reader_cut(h->says, c->cols - s->at[SPOT_SAYS]), h->says);
}

void today_draw_next(const struct columns *s, struct canvas *c, int row, enum ink ink,
	const struct today_next *n)
{
	columns_cell(s, c, row, NEXT_FARM, ink, n->name);
	columns_cell(s, c, row, NEXT_PEST, ink, n->pest_code);
	canvas_textf(c, row, s->at[NEXT_SAYS], 0, ink, "%.*s",
		(int)cut_next(n->says, c->cols - s->at[NEXT_SAYS]), n->says);
}
