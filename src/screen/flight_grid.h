/* flight_grid.h - where the weeks of the flight chart stand, and how high. */
#ifndef SCREEN_FLIGHT_GRID_H
#define SCREEN_FLIGHT_GRID_H

#include "screen/flight_page.h"

enum { LABEL_COLS = 4 }; /* of the numbers left of the chart */

/* A season and its weeks that are shown, first..end-1; first = end: none. */
struct grid_line {
	const struct flight_line *line;
	int first, end;
};

struct grid {
	const struct flight_view *v;
	struct canvas *c;
	int top;                  /* row of the window */
	int rows;                 /* of bars; even */
	int left, cols;           /* of bars, in the window */
	double unit;              /* moths per trap and week in a row */
	bool by_heat;             /* columns are degree-days, not weeks */
	double step;              /* degree-days a column */
	int from, to;             /* weeks from..to-1, not by_heat */
	int cell;                 /* columns a week */
	bool has_marks, has_heat; /* rows under the chart */
	struct grid_line now, earlier[FLIGHT_SEASONS];
	size_t n_earlier;
};

/* False: there is nothing to draw or no room for it. room: rows for chart and text. */
bool grid_lay_out(struct grid *g, const struct flight_page *p, int room);

struct grid_place {
	int x, cols; /* columns from g->left */
};
/* Where a week stands; false: not on the chart. */
bool grid_place(const struct grid *g, const struct flight_line *l, int week,
	struct grid_place *out);
/* The week in a column, the highest where several meet; -1: none. */
int grid_week_at(const struct grid *g, const struct grid_line *l, int x);

/* Height in eighths of a row of `unit`, rounded up; 0 for none and for -1. */
int grid_eighths(double rate, double unit);
/* The block of so many eighths, 1 and up. */
const char *grid_block(int eighths);
/* A week in one cell: block, `_` counted zero, `+` at least, middle dot: nobody
 * looked. */
const char *grid_mark(const struct flight_line *l, int week, double highest);

/* The next round number: 1, 1.5, 2, 2.5, 3, 4, 5, 6 or 8 times a power of ten. */
double grid_round_up(double value);

#endif
