/* season_text_chart.c - a season of a block as two flight lines, one over the other,
 * under a ruler of months. */
#include "season_text.h"

#include "base/text.h"
#include "base/words.h"
#include "grid.h"

#include <math.h>
#include <stdio.h>

enum { A_WEEK = 7, LABEL = 7, CELL_MOST = 3, BLOCK = 0x2580, STEPS = 8 };

struct lines {
	const struct season_page *page;
	const struct season_chart *chart;
	int32_t first; /* day that the first column's week begins with */
	int weeks, cell;
	double top; /* moths a week of a full block */
	struct buf *out;
};

/* Where week k of the chart stands. */
static int column_of(const struct lines *s, size_t k)
{
	int32_t day = s->chart->first_day + A_WEEK * (int32_t)k;

	return day < s->first ? -1 : (int)((day - s->first) / A_WEEK);
}

/* The latest weeks, where not all have room. */
static void lay_out(struct lines *s, int cols)
{
	const struct season_page *p = s->page;
	int room = cols - LABEL;

	s->first = p->from;
	s->weeks = (p->to - p->from + A_WEEK - 1) / A_WEEK;
	if (s->weeks > room) {
		s->first += A_WEEK * (s->weeks - room);
		s->weeks = room;
	}
	s->cell = room / s->weeks;
	s->cell = s->cell > CELL_MOST ? CELL_MOST : s->cell;
}

static double highest(const struct flight_line *line, double top)
{
	for (size_t k = 0; k < line->n; k++)
		top = fmax(top, line->rate[k]);
	return top;
}

static void mark_of(const struct lines *s, const struct flight_line *line, size_t k,
	char out[static 5])
{
	double rate = line->rate[k];
	int n = (int)ceil(STEPS * rate / s->top - 1e-9);

	if (rate < 0)
		text_copy(out, 5, "\u00b7");
	else if (line->at_least[k])
		text_copy(out, 5, "+");
	else if (rate <= 0)
		text_copy(out, 5, "_");
	else
		text_encode((uint32_t)(BLOCK + (n < 1 ? 1 : n)), out);
}

/* Blanks where the line has no week. */
static void add_line(const struct lines *s, const struct flight_line *line)
{
	int bar = s->cell < CELL_MOST ? s->cell : s->cell - 1;
	char label[SAY_SHORT], mark[5];
	size_t k = 0;

	snprintf(label, sizeof label, "%d", line->season);
	buf_add_field(s->out, label, LABEL);
	for (int col = 0; col < s->weeks; col++) {
		while (k < line->n && column_of(s, k) < col)
			k++;
		text_copy(mark, sizeof mark, " ");
		if (k < line->n && column_of(s, k) == col)
			mark_of(s, line, k, mark);
		for (int x = 0; x < s->cell; x++)
			buf_add(s->out, x < bar ? mark : " ");
	}
	grid_end_line(s->out);
}

/* A month's name over the week that it begins in. */
static void add_months(const struct lines *s)
{
	int x = 0;

	buf_add_field(s->out, "", LABEL);
	for (int col = 0; col < s->weeks; col++) {
		struct ymd d = day_to_ymd(s->first + A_WEEK * col + A_WEEK - 1);
		const char *name = day_month_short(d.month);
		int at = col * s->cell;
		if (d.day > A_WEEK || (x > 0 && at <= x))
			continue;
		buf_add_field(s->out, "", at - x);
		buf_add(s->out, name);
		x = at + text_cols(name);
	}
	grid_end_line(s->out);
}

void season_text_lines(const struct season_page *p, const struct season_chart *c,
	int cols, struct buf *out)
{
	const struct flight_view *v = &c->flight;
	struct lines s = { .page = p, .chart = c, .out = out };

	if (p->from == DAY_NONE || c->first_day == DAY_NONE)
		return;
	lay_out(&s, cols);
	s.top = highest(&v->now, 0);
	if (v->n_earlier > 0)
		s.top = highest(&v->earlier[0], s.top);
	s.top = s.top > 0 ? s.top : 1;
	add_months(&s);
	add_line(&s, &v->now);
	if (v->n_earlier > 0)
		add_line(&s, &v->earlier[0]);
}
