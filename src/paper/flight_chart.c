/* flight_chart.c - the chart of a season: weeks from left to right, moths per trap and
 * week upwards. */
#include "flight_parts.h"

#include "base/text.h"
#include "base/words.h"
#include "grid.h"
#include "paper/ascii.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { ROWS = 8, LABEL = 6, CELL_MOST = 3 };

struct chart {
	const struct flight_view *v;
	const struct flight_line *last_year; /* NULL: none */
	int from, to;                        /* weeks from..to-1 */
	int cell;                            /* columns a week */
	int room;                            /* columns beside the labels */
	double unit;                         /* moths in a row of the chart */
	struct buf *out;
};

/* -1: nobody looked, or no week of the season. */
static double rate_of(const struct flight_line *l, int week)
{
	return week >= 0 && week < (int)l->n ? l->rate[week] : -1;
}

/* Widens from..to to the weeks in which somebody looked. */
static void span(const struct flight_line *l, struct chart *c)
{
	for (int week = 0; week < (int)l->n; week++) {
		if (l->rate[week] < 0)
			continue;
		c->from = week < c->from ? week : c->from;
		c->to = week >= c->to ? week + 1 : c->to;
	}
}

/* A small number times a power of ten, so that the axis has round numbers. */
static double round_up(double value)
{
	static const double steps[] = { 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10 };
	double power = pow(10, floor(log10(value)));
	size_t i = 0;

	while (i + 1 < sizeof steps / sizeof *steps &&
		steps[i] * power < value * (1 - 1e-9))
		i++;
	return steps[i] * power;
}

static double highest(const struct flight_line *l)
{
	double top = 0;

	for (size_t week = 0; week < l->n; week++)
		top = fmax(top, l->rate[week]);
	return top;
}

static bool lay_out(struct chart *c, int cols)
{
	double top = fmax(highest(&c->v->now), c->v->threshold);

	c->from = FLIGHT_WEEKS_MAX;
	span(&c->v->now, c);
	if (c->from < c->to) /* its latest weeks, read or not */
		c->to = (int)c->v->now.n;
	if (c->last_year) {
		span(c->last_year, c);
		top = fmax(top, highest(c->last_year));
	}
	if (c->from >= c->to)
		return false;
	c->room = cols - LABEL;
	c->cell = c->room / (c->to - c->from);
	c->cell = c->cell > CELL_MOST ? CELL_MOST : c->cell < 1 ? 1 : c->cell;
	if (c->to - c->from > c->room) /* the latest weeks */
		c->from = c->to - c->room;
	c->unit = round_up((top > 0 ? top : 1) / ROWS);
	return true;
}

/* Eighths of a row, rounded up: a moth always shows. */
static int eighths(double rate, double unit)
{
	return rate <= 0 ? 0 : (int)ceil(rate / unit * 8 - 1e-9);
}

static void block(int n, char out[static 5])
{
	text_encode((uint32_t)(0x2580 + (n > 8 ? 8 : n)), out);
}

/* What stands `up` rows above the foot in a week; empty: nothing. */
static void bar_cell(const struct chart *c, int week, int up, char out[static 5])
{
	double rate = rate_of(&c->v->now, week);
	int n = eighths(rate, c->unit);
	int above = (n + 7) / 8 < ROWS ? (n + 7) / 8 : ROWS - 1;

	out[0] = '\0';
	if (rate >= 0 && c->v->now.at_least[week] && up == above)
		text_copy(out, 5, "+");
	else if (n > 8 * up)
		block(n - 8 * up, out);
	else if (up == 0 && rate >= 0)
		text_copy(out, 5, "_");
	else if (up == 0 && week < (int)c->v->now.n)
		text_copy(out, 5, "\u00b7");
}

static int threshold_row(const struct chart *c)
{
	return c->v->threshold > 0 ? (eighths(c->v->threshold, c->unit) - 1) / 8 : -1;
}

static void add_label(const struct chart *c, const char *text, const char *end)
{
	buf_add_field(c->out, text, -(LABEL - 1));
	buf_add(c->out, end);
}

static void add_bar_row(const struct chart *c, int up)
{
	bool at_threshold = up == threshold_row(c);
	int bar = c->cell < CELL_MOST ? c->cell : c->cell - 1;
	char label[SAY_SHORT] = "", cell[5];

	if (at_threshold)
		words_print(label, sizeof label, "%.4g", c->v->threshold);
	else if ((up + 1) % (ROWS / 2) == 0)
		words_print(label, sizeof label, "%.4g", c->unit * (up + 1));
	add_label(c, label, "|");
	for (int week = c->from; week < c->to; week++) {
		bar_cell(c, week, up, cell);
		for (int x = 0; x < c->cell; x++)
			buf_add(c->out, *cell && x < bar ? cell
					: at_threshold   ? "-"
							 : " ");
	}
	grid_end_line(c->out);
}

/* A text under a week, if it keeps a blank from the one before; *x is the column after
 * that one. */
static void add_tick(const struct chart *c, int week, const char *text, int *x)
{
	int at = (week - c->from) * c->cell, cols = text_cols(text);

	if ((*x > 0 && at <= *x) || at + cols > c->room)
		return;
	buf_add_field(c->out, "", at - *x);
	buf_add_field(c->out, text, cols);
	*x = at + cols;
}

/* The letters of a week's marks; `*` where they do not fit. */
static void add_week_marks(const struct chart *c, int week)
{
	static const char *const letters[] = { [FLIGHT_BIOFIX] = NC_("chart", "B"),
		[FLIGHT_PEAK] = NC_("chart", "P"),
		[FLIGHT_LURE] = NC_("chart", "L"),
		[FLIGHT_TREATMENT] = NC_("chart", "T") };
	char text[FLIGHT_TREATMENT + 2] = "";
	int n = 0;

	for (size_t i = 0; i < c->v->n_marks && n <= FLIGHT_TREATMENT; i++)
		if (c->v->marks[i].week == week)
			text[n++] = words_in(letters[c->v->marks[i].kind])[0];
	buf_add_field(c->out, n > c->cell ? "*" : text, c->cell);
}

static void add_marks(const struct chart *c)
{
	if (c->v->n_marks == 0)
		return;
	add_label(c, "", " ");
	for (int week = c->from; week < c->to; week++)
		add_week_marks(c, week);
	grid_end_line(c->out);
}

/* "Jul" if a month begins in the week; false: none does. */
static bool month_in(const struct chart *c, int week, char out[static SAY_SHORT])
{
	int32_t last = c->v->now.first_day + 7 * week + 6;
	struct ymd d = day_to_ymd(last);

	if (d.day > 7)
		return false;
	text_copy(out, SAY_SHORT, day_month_short(d.month));
	return true;
}

static void add_months(const struct chart *c)
{
	char text[SAY_SHORT];
	int x = 0;

	add_label(c, "", " ");
	for (int week = c->from; week < c->to; week++)
		if (month_in(c, week, text))
			add_tick(c, week, text, &x);
	grid_end_line(c->out);
}

/* Degree-days since biofix when a month begins. */
static void add_heat(const struct chart *c)
{
	const struct flight_line *l = &c->v->now;
	char text[SAY_SHORT];
	int x = 0;

	if (c->v->heat.state != HEAT_SUM && c->v->heat.state != HEAT_AT_LEAST)
		return;
	snprintf(text, sizeof text, _("dd %c"), c->v->heat.unit);
	add_label(c, text, " ");
	for (int week = c->from; week < c->to; week++) {
		if (week < 1 || week > (int)l->n || l->dd[week - 1] < 0 ||
			!month_in(c, week, text))
			continue;
		snprintf(text, sizeof text, "%.0f%s", l->dd[week - 1],
			l->dd_at_least[week - 1] ? "+" : "");
		add_tick(c, week, text, &x);
	}
	grid_end_line(c->out);
}

/* One row; a full block is the top of the chart. */
static void add_last_year(const struct chart *c)
{
	const struct flight_line *l = c->last_year;
	int bar = c->cell < CELL_MOST ? c->cell : c->cell - 1;
	char label[SAY_SHORT], cell[5];

	snprintf(label, sizeof label, "%d", l->season);
	add_label(c, label, " ");
	for (int week = c->from; week < c->to; week++) {
		double rate = rate_of(l, week);

		text_copy(cell, sizeof cell, week < (int)l->n ? "\u00b7" : " ");
		if (rate >= 0)
			text_copy(cell, sizeof cell, l->at_least[week] ? "+" : "_");
		if (rate > 0 && !l->at_least[week])
			block(eighths(rate, c->unit * ROWS), cell);
		for (int x = 0; x < c->cell; x++)
			buf_add(c->out, x < bar ? cell : " ");
	}
	grid_end_line(c->out);
}

void flight_chart(const struct flight_view *v, int cols, struct buf *out)
{
	struct chart c = { .v = v, .out = out };

	c.last_year = v->n_earlier > 0 ? &v->earlier[0] : NULL;
	if (!lay_out(&c, cols))
		return;
	for (int up = ROWS - 1; up >= 0; up--)
		add_bar_row(&c, up);
	add_marks(&c);
	add_months(&c);
	add_heat(&c);
	if (c.last_year)
		add_last_year(&c);
	buf_add(out, "\n");
	paper_wrap(out,
		_("Moths per trap and week; _ counted none, \u00b7 nobody looked, + at "
		  "least (a full card, counts not settled); B biofix, P peak, L lure "
		  "changed, T treatment, * several; a line of - is the threshold."),
		0, cols);
}
