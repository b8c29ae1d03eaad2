#include "base/plot.h"

#include <math.h>

enum { MARGIN = 1, FEWEST_METRES = 1, ALONE_METRES = 10, BAR_SHARE = 3 };
enum { NEAR_METRES = 500, NEAR_TIMES = 2 };

/* Of a cell: a point on the very edge of the margin must not round into it. */
static const double slack = 1e-6;

/* 1, 2, 5, 10, 20 .. : item i of that row. */
static double round_number(int i)
{
	static const double of[] = { 1, 2, 5 };

	return of[i % 3] * pow(10, (double)(i / 3));
}

struct span {
	double lo, hi;
};

static struct span span_of(const double *v, size_t n)
{
	struct span s = { v[0], v[0] };

	for (size_t i = 1; i < n; i++) {
		s.lo = fmin(s.lo, v[i]);
		s.hi = fmax(s.hi, v[i]);
	}
	return s;
}

static double middle(struct span s)
{
	return s.lo + (s.hi - s.lo) / 2;
}

static double room(int cells)
{
	return cells - 2 * MARGIN - slack;
}

/* The finest scale that shows `need` metres in a column and of which some round length
 * is whole columns, a third of the width at most; of the lengths that do, the longest.
 * So the map fills its window and the bar is exact. */
static void fit_scale(struct plot *p, double need)
{
	int most = p->cols / BAR_SHARE;

	p->metres = (double)INFINITY;
	for (int i = 0; round_number(i) <= most * p->metres; i++) {
		double bar = round_number(i);
		int cols = (int)fmin(most, floor(bar / need));
		if (cols < 1 || bar / cols > p->metres)
			continue;
		p->metres = bar / cols;
		p->bar_cols = cols;
		p->bar_metres = bar;
	}
}

struct plot plot_fit(const double *x, const double *y, size_t n, int rows, int cols)
{
	struct plot p = { .rows = rows, .cols = cols };
	struct span wide = span_of(x, n), high = span_of(y, n);
	double need = fmax(
		(wide.hi - wide.lo) / room(cols), (high.hi - high.lo) / room(rows) / 2);

	fit_scale(&p, need > 0 ? fmax(need, FEWEST_METRES) : ALONE_METRES);
	p.west = middle(wide) - (cols - 1) / 2.0 * p.metres;
	p.north = middle(high) + (rows - 1) * p.metres;
	return p;
}

static bool is_within(struct span s, double beside, double at)
{
	return at >= s.lo - beside && at <= s.hi + beside;
}

bool plot_is_near(const double *x, const double *y, size_t n, double at_x, double at_y)
{
	struct span wide = span_of(x, n), high = span_of(y, n);
	double beside = NEAR_TIMES * fmax(wide.hi - wide.lo, high.hi - high.lo);

	beside = fmax(beside, NEAR_METRES);
	return is_within(wide, beside, at_x) && is_within(high, beside, at_y);
}

/* A place in columns and rows, fractions; the middle of cell 0, 0 is 0, 0. */
struct spot {
	double col, row;
};

static struct spot spot_of(const struct plot *p, double x, double y)
{
	return (struct spot){ (x - p->west) / p->metres,
		(p->north - y) / (2 * p->metres) };
}

static bool cell_of(const struct plot *p, struct spot s, int *row, int *col)
{
	double c = floor(s.col + 0.5), r = floor(s.row + 0.5);

	/* NAN fails these too */
	if (!(c >= 0 && c < p->cols && r >= 0 && r < p->rows))
		return false;
	*row = (int)r;
	*col = (int)c;
	return true;
}

bool plot_cell(const struct plot *p, double x, double y, int *row, int *col)
{
	return cell_of(p, spot_of(p, x, y), row, col);
}

/* Narrows the part t.lo..t.hi of a line from `at` on by `by` to where it lies within
 * -1..cells. False: nothing is left. */
static bool clip(struct span *t, double at, double by, int cells)
{
	if (by == 0)
		return at >= -1 && at <= cells;
	double one = (-1 - at) / by, other = (cells - at) / by;
	t->lo = fmax(t->lo, fmin(one, other));
	t->hi = fmin(t->hi, fmax(one, other));
	return t->lo <= t->hi;
}

/* A line that leaves the map is cut first: its length off the map costs nothing. */
void plot_line(const struct plot *p, const double from[static 2],
	const double to[static 2], void (*mark)(void *arg, int row, int col), void *arg)
{
	struct spot a = spot_of(p, from[0], from[1]), b = spot_of(p, to[0], to[1]);
	struct spot by = { b.col - a.col, b.row - a.row };
	struct span t = { 0, 1 };
	int row, col;

	if (!isfinite(by.col) || !isfinite(by.row) ||
		!clip(&t, a.col, by.col, p->cols) || !clip(&t, a.row, by.row, p->rows))
		return;
	double part = t.hi - t.lo;
	int steps = (int)ceil(part * fmax(fabs(by.col), fabs(by.row)));
	for (int i = 0; i <= steps; i++) {
		double k = t.lo + (steps ? part * i / steps : 0);
		struct spot s = { a.col + k * by.col, a.row + k * by.row };
		if (cell_of(p, s, &row, &col))
			mark(arg, row, col);
	}
}
