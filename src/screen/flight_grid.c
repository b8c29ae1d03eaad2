#include "flight_grid.h"
#include "flight_parts.h"

#include <math.h>

enum { ROWS_LEAST = 4, ROWS_FEWEST = 2, ROWS_MOST = 14, TEXT_LEAST = 3 };
enum { ROOM_FEWEST = 5 };             /* two rows of bars, the ruler, two of text */
enum { CELL_MOST = 4, CELL_GAP = 3 }; /* from 3 columns a week one stays free */

static const double nothing = 1e-9; /* what rounding errors may add */

double grid_round_up(double value)
{
	static const double steps[] = { 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10 };
	double power = value > 0 ? pow(10, floor(log10(value))) : 1;
	size_t i = 0;

	while (i + 1 < sizeof steps / sizeof *steps &&
		steps[i] * power < value * (1 - nothing))
		i++;
	return steps[i] * power;
}

int grid_eighths(double rate, double unit)
{
	return rate <= 0 ? 0 : (int)ceil(rate / unit * 8 - nothing);
}

const char *grid_block(int eighths)
{
	static const char *const block[] = { "\u2581", "\u2582", "\u2583", "\u2584",
		"\u2585", "\u2586", "\u2587", "\u2588" };

	return block[eighths < 1 ? 0 : eighths > 8 ? 7 : eighths - 1];
}

const char *grid_mark(const struct flight_line *l, int week, double highest)
{
	double rate = l->rate[week];

	if (rate < 0)
		return "\u00b7";
	if (l->at_least[week])
		return "+";
	return rate > 0 ? grid_block(grid_eighths(rate, highest)) : "_";
}

/* From the first week that anybody looked at; up to the last such week of a season that
 * is over. */
static struct grid_line line_of(const struct flight_line *l, bool is_over)
{
	struct grid_line out = { l, 0, (int)l->n };

	while (out.first < out.end && l->rate[out.first] < 0)
		out.first++;
	while (is_over && out.end > out.first && l->rate[out.end - 1] < 0)
		out.end--;
	return out;
}

static bool line_has_heat(const struct flight_line *l)
{
	for (size_t i = 0; i < l->n; i++)
		if (l->dd[i] > 0)
			return true;
	return false;
}

/* Along degree-days only seasons that have them. */
static void lines_of(struct grid *g, bool several)
{
	size_t most = several ? FLIGHT_SEASONS : 1;

	g->now = line_of(&g->v->now, false);
	for (size_t i = 0; i < g->v->n_earlier && g->n_earlier < most; i++) {
		struct grid_line l = line_of(&g->v->earlier[i], true);

		if (l.first < l.end && (!g->by_heat || line_has_heat(l.line)))
			g->earlier[g->n_earlier++] = l;
	}
}

static int rows_under(const struct grid *g)
{
	return 1 + g->has_marks + g->has_heat + (int)g->n_earlier;
}

/* Gives rows up in the order of the header. False: no room for a chart. */
static bool share_rows(struct grid *g, int room)
{
	int least = ROWS_LEAST + TEXT_LEAST;

	if (room < ROOM_FEWEST)
		return false;
	if (room - rows_under(g) < least)
		g->has_heat = false;
	while (g->n_earlier > 0 && room - rows_under(g) < least)
		g->n_earlier--;
	if (room - rows_under(g) < least)
		g->has_marks = false;
	g->rows = ROWS_FEWEST;
	if (room - rows_under(g) >= least)
		g->rows = (room - rows_under(g) + TEXT_LEAST) / 4 * 2;
	if (g->rows > ROWS_MOST)
		g->rows = ROWS_MOST;
	return true;
}

static double highest_of(const struct grid_line *l, const double *values)
{
	double highest = 0;

	for (int week = l->first; week < l->end; week++)
		highest = fmax(highest, values[week]);
	return highest;
}

/* The top and the half of it, which have labels, are round numbers. */
static void scale(struct grid *g)
{
	double highest = fmax(g->v->threshold, highest_of(&g->now, g->now.line->rate));

	for (size_t i = 0; i < g->n_earlier; i++)
		highest = fmax(
			highest, highest_of(&g->earlier[i], g->earlier[i].line->rate));
	g->unit = 2 * grid_round_up((highest > 0 ? highest : 1) / 2) / g->rows;
}

static void span_weeks(struct grid *g)
{
	g->from = g->now.first < g->now.end ? g->now.first : FLIGHT_WEEKS_MAX;
	g->to = g->now.first < g->now.end ? g->now.end : 0;
	for (size_t i = 0; i < g->n_earlier; i++) {
		if (g->earlier[i].first < g->from)
			g->from = g->earlier[i].first;
		if (g->earlier[i].end > g->to)
			g->to = g->earlier[i].end;
	}
	for (size_t i = 0; i < g->v->n_marks && g->from < g->to; i++)
		if (g->v->marks[i].week >= 0 && g->v->marks[i].week < g->from)
			g->from = g->v->marks[i].week;
}

static void share_columns(struct grid *g)
{
	span_weeks(g);
	g->cell = g->to > g->from ? g->cols / (g->to - g->from) : 1;
	if (g->cell > CELL_MOST)
		g->cell = CELL_MOST;
	if (g->cell < 1) {
		g->cell = 1;
		g->from = g->to - g->cols;
	}
}

static void share_heat(struct grid *g)
{
	double highest = highest_of(&g->now, g->now.line->dd);

	for (size_t i = 0; i < g->n_earlier; i++)
		highest = fmax(
			highest, highest_of(&g->earlier[i], g->earlier[i].line->dd));
	g->cell = 1;
	g->step = grid_round_up((highest + 1) / g->cols);
}

bool flight_has_heat(const struct flight_view *v)
{
	return line_has_heat(&v->now);
}

bool grid_lay_out(struct grid *g, const struct flight_page *p, int room)
{
	bool has_heat = flight_has_heat(g->v);

	g->by_heat = has_heat && p->ruler == RULER_HEAT;
	g->has_heat = has_heat && !g->by_heat;
	g->has_marks = g->v->n_marks > 0;
	g->left = LABEL_COLS + 2;
	g->cols = g->c->cols - 1 - g->left;
	lines_of(g, p->several);
	if (g->cols < 1 || !share_rows(g, room))
		return false;
	if (g->now.first == g->now.end && g->n_earlier == 0)
		return false;
	scale(g);
	if (g->by_heat)
		share_heat(g);
	else
		share_columns(g);
	return true;
}

/* From the degree-days at its start, which are those of the last week that has any, to
 * those at its end. */
static bool place_by_heat(const struct grid *g, const struct flight_line *l, int week,
	struct grid_place *out)
{
	double end = l->dd[week], start = 0;

	if (end < 0)
		return false;
	for (int before = week - 1; before >= 0 && start <= 0; before--)
		start = fmax(l->dd[before], 0);
	out->x = (int)(start / g->step);
	out->cols = (int)(end / g->step) - out->x;
	if (out->cols < 1)
		out->cols = 1;
	return out->x < g->cols;
}

bool grid_place(const struct grid *g, const struct flight_line *l, int week,
	struct grid_place *out)
{
	if (week < 0 || week >= FLIGHT_WEEKS_MAX)
		return false;
	if (g->by_heat)
		return week < (int)l->n && place_by_heat(g, l, week, out);
	out->x = (week - g->from) * g->cell;
	out->cols = g->cell < CELL_GAP ? g->cell : g->cell - 1;
	return week >= g->from && week < g->to;
}

int grid_week_at(const struct grid *g, const struct grid_line *l, int x)
{
	int best = -1;

	for (int week = l->first; week < l->end; week++) {
		struct grid_place at;

		if (!grid_place(g, l->line, week, &at) || x < at.x ||
			x >= at.x + at.cols)
			continue;
		if (best < 0 || l->line->rate[week] > l->line->rate[best])
			best = week;
	}
	return best;
}
