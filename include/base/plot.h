/* plot.h - a map drawn with characters: metres to cells and back. A cell is twice as
 * high as it is wide. */
#ifndef BASE_PLOT_H
#define BASE_PLOT_H

#include <stdbool.h>
#include <stddef.h>

struct plot {
	int rows, cols;
	double metres;      /* per column; a row is twice that */
	double west, north; /* of the upper left cell's middle */
	int bar_cols;       /* of the scale bar, exactly bar_metres long */
	double bar_metres;  /* 1, 2 or 5 times a power of ten */
};

/* Fits all n points (metres east, north) into rows x cols with a cell's margin, at the
 * finest scale at which the bar is whole columns, 1 m a column at the finest: the wider
 * the map, the less is left over. n >= 1, rows and cols >= 3. One point, or all at one,
 * is drawn in the middle at 10 m a column. */
struct plot plot_fit(const double *x, const double *y, size_t n, int rows, int cols);
/* The cell of a point; false: outside. */
bool plot_cell(const struct plot *p, double x, double y, int *row, int *col);
/* False for a point so far from the n >= 1 points that these would be a heap in a
 * corner of a map that has it too: farther outside them than twice their longer extent,
 * and than 500 m. */
bool plot_is_near(const double *x, const double *y, size_t n, double at_x, double at_y);
/* Calls `mark` for each cell from one point to another, ends included (an outline's
 * edge). */
void plot_line(const struct plot *p, const double from[static 2],
	const double to[static 2], void (*mark)(void *arg, int row, int col),
	void *arg);

#endif
