/* grid.h - rows of cells under titles, as wide as their contents while there is
 * room. */
#ifndef PAPER_GRID_H
#define PAPER_GRID_H

#include "base/buf.h"

#include <stdbool.h>
#include <stddef.h>

enum { GRID_COLUMNS_MAX = 12 };

enum grid_kind {
	GRID_TEXT,   /* shrinks, down to `least` columns */
	GRID_NUMBER, /* set to the right; shrinks only when no text can */
	GRID_MARK,   /* as a number, set to the left */
};

struct grid {
	struct {
		const char *title; /* borrowed */
		enum grid_kind kind;
		int least, cols; /* cols = 0: left out */
	} column[GRID_COLUMNS_MAX];
	size_t n;
};

void grid_column(struct grid *g, const char *title, enum grid_kind kind, int least);
/* Widens the columns to what a row of cells wants. */
void grid_note(struct grid *g, const char *const *cells);
/* Columns and the blanks between them. */
int grid_cols(const struct grid *g);
/* Shrinks the columns, the widest first, until the grid has at most `cols`. */
void grid_fit(struct grid *g, int cols);
/* Adds a row without a newline; grid_line adds it with one and drops blanks at the
 * end. cells = NULL: the titles. */
void grid_row(const struct grid *g, const char *const *cells, struct buf *out);
void grid_line(const struct grid *g, const char *const *cells, struct buf *out);
/* Adds whole, a line each `indent` blanks in, the texts that a row of these cells cuts;
 * no line wider than `cols`. */
void grid_whole(const struct grid *g, const char *const *cells, int indent, int cols,
	struct buf *out);
/* Drops blanks at the end of *out and adds a newline. */
void grid_end_line(struct buf *out);

#endif
