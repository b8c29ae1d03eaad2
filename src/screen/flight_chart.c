/* flight_chart.c - the chart of the Flight page: weeks as bars, months, degree-days. */
#include "base/text.h"
#include "base/words.h"
#include "flight_grid.h"
#include "flight_parts.h"

#include <stdio.h>

static void draw_label(const struct grid *g, int row, enum ink ink, const char *text)
{
	canvas_text(g->c, row, 1, -LABEL_COLS, ink, text);
}

/* Cells of a bar from the foot up, and what stands at the foot of none. NULL: free. */
static const char *bar_cell(
	const struct grid *g, const struct flight_line *l, int week, int up)
{
	int eighths = grid_eighths(l->rate[week], g->unit);
	int above = (eighths + 7) / 8;

	if (l->at_least[week] && up == (above < g->rows ? above : g->rows - 1))
		return "+";
	if (up == 0 && eighths == 0)
		return grid_mark(l, week, g->unit);
	return eighths > 8 * up ? grid_block(eighths - 8 * up) : NULL;
}

/* Rows above the foot in which the threshold lies; -1: none. */
static int threshold_row(const struct grid *g)
{
	int eighths = grid_eighths(g->v->threshold, g->unit);

	return g->v->threshold <= 0 ? -1 : (eighths - 1) / 8;
}

static void draw_bar_row(const struct grid *g, int up)
{
	int row = g->top + g->rows - 1 - up;
	bool is_threshold = up == threshold_row(g);

	for (int x = 0; x < g->cols; x++) {
		int week = grid_week_at(g, &g->now, x);
		const char *cell = week < 0 ? NULL : bar_cell(g, g->now.line, week, up);

		if (cell)
			canvas_text(g->c, row, g->left + x, 1,
				cell[0] == '+' ? INK_UNSURE : INK_PLAIN, cell);
		else if (is_threshold)
			canvas_text(g->c, row, g->left + x, 1, INK_QUIET, "-");
	}
}

static void draw_axis_row(const struct grid *g, int up)
{
	int row = g->top + g->rows - 1 - up;
	char label[SAY_SHORT] = "";

	canvas_text(g->c, row, g->left - 1, 1, INK_QUIET, "\u2502");
	if (up == threshold_row(g)) {
		words_print(label, sizeof label, "%.4g", g->v->threshold);
		draw_label(g, row, INK_TITLE, label);
	} else if ((up + 1) % (g->rows / 2) == 0) {
		words_print(label, sizeof label, "%.4g", g->unit * (up + 1));
		draw_label(g, row, INK_QUIET, label);
	}
}

/* All marks that begin in a column, a bit each. */
static unsigned marks_at(const struct grid *g, int x)
{
	unsigned bits = 0;

	for (size_t i = 0; i < g->v->n_marks; i++) {
		struct grid_place at;

		if (grid_place(g, g->now.line, g->v->marks[i].week, &at) && at.x == x)
			bits |= 1U << g->v->marks[i].kind;
	}
	return bits;
}

static void draw_marks(const struct grid *g, int row)
{
	static const char *const letters[] = { [FLIGHT_BIOFIX] = NC_("chart", "B"),
		[FLIGHT_PEAK] = NC_("chart", "P"),
		[FLIGHT_LURE] = NC_("chart", "L"),
		[FLIGHT_TREATMENT] = NC_("chart", "T") };

	for (int x = 0; x < g->cols; x++) {
		unsigned bits = marks_at(g, x);
		char text[8];
		int n = 0;

		for (unsigned kind = 0; kind <= FLIGHT_TREATMENT; kind++)
			if (bits & 1U << kind)
				text[n++] = words_in(letters[kind])[0];
		text[n] = '\0';
		if (n > 0)
			canvas_text(g->c, row, g->left + x, n > g->cell ? 1 : n,
				INK_TITLE, n > g->cell ? "*" : text);
	}
}

/* A text under a column, if it keeps a blank from the one before; *free_x is the first
 * column that may be used. */
static void draw_tick(
	const struct grid *g, int row, int x, int *free_x, const char *text)
{
	int cols = text_cols(text);

	if (x < *free_x || x + cols > g->cols)
		return;
	canvas_text(g->c, row, g->left + x, cols, INK_QUIET, text);
	*free_x = x + cols + 1;
}

/* 1..12 if a month begins in the week, else 0. */
static int month_in(const struct grid *g, int week)
{
	const struct flight_line *l = g->now.line;
	struct ymd d;

	if (l->n == 0)
		return 0;
	d = day_to_ymd(l->first_day + 7 * week + 6);
	return d.day <= 7 ? d.month : 0;
}

static void draw_months(const struct grid *g, int row)
{
	int free_x = 0;

	for (int week = g->from; week < g->to; week++) {
		int month = month_in(g, week);
		int32_t last = g->now.line->first_day + 7 * week + 6;
		char text[SAY_SHORT];

		if (month == 0)
			continue;
		if (g->cell > 1)
			snprintf(text, sizeof text, _("%s w%d"), day_month_short(month),
				day_week(last, NULL));
		else
			text_copy(text, sizeof text, day_month_short(month));
		draw_tick(g, row, (week - g->from) * g->cell, &free_x, text);
	}
}

static void draw_heat_label(const struct grid *g, int row)
{
	char label[SAY_SHORT];

	snprintf(label, sizeof label, _("dd %c"),
		g->v->heat.unit ? g->v->heat.unit : ' ');
	draw_label(g, row, INK_QUIET, label);
}

/* Degree-days at the end of the week before a month begins. */
static void draw_heat_at_months(const struct grid *g, int row)
{
	const struct flight_line *l = g->now.line;
	int free_x = 0;

	draw_heat_label(g, row);
	for (int week = g->from; week < g->to; week++) {
		char text[SAY_SHORT];

		if (week < 1 || week > (int)l->n || !month_in(g, week) ||
			l->dd[week - 1] < 0)
			continue;
		snprintf(text, sizeof text, "%.0f%s", l->dd[week - 1],
			l->dd_at_least[week - 1] ? "+" : "");
		draw_tick(g, row, (week - g->from) * g->cell, &free_x, text);
	}
}

static void draw_heat_ruler(const struct grid *g, int row)
{
	double tick = grid_round_up(g->step * 8);
	int free_x = 0;

	draw_heat_label(g, row);
	for (int i = 0; i * tick <= g->step * g->cols; i++) {
		char text[SAY_SHORT];

		snprintf(text, sizeof text, "%.0f", i * tick);
		draw_tick(g, row, (int)(i * tick / g->step), &free_x, text);
	}
}

/* A season in one row: a full block is the top of the chart. */
static void draw_line(const struct grid *g, int row, const struct grid_line *l)
{
	char label[SAY_SHORT];

	snprintf(label, sizeof label, "%d", l->line->season);
	draw_label(g, row, INK_QUIET, label);
	for (int x = 0; x < g->cols; x++) {
		int week = grid_week_at(g, l, x);

		if (week >= 0)
			canvas_text(g->c, row, g->left + x, 1,
				l->line->at_least[week] ? INK_UNSURE : INK_PLAIN,
				grid_mark(l->line, week, g->unit * g->rows));
	}
}

static int draw_under(const struct grid *g)
{
	int row = g->top + g->rows;

	if (g->has_marks)
		draw_marks(g, row++);
	if (g->by_heat)
		draw_heat_ruler(g, row++);
	else
		draw_months(g, row++);
	if (g->has_heat)
		draw_heat_at_months(g, row++);
	for (size_t i = 0; i < g->n_earlier; i++)
		draw_line(g, row++, &g->earlier[i]);
	return row;
}

int flight_chart_draw(
	const struct flight_page *p, struct canvas *c, int first, int last)
{
	struct grid g = { .v = p->view, .c = c, .top = first };

	if (!grid_lay_out(&g, p, last - first + 1))
		return first;
	for (int up = 0; up < g.rows; up++) {
		draw_axis_row(&g, up);
		draw_bar_row(&g, up);
	}
	return draw_under(&g);
}
