#include "grid.h"

#include "base/text.h"
#include "paper/ascii.h"

#include <assert.h>

enum { LEAST_OF_ALL = 2 };

void grid_column(struct grid *g, const char *title, enum grid_kind kind, int least)
{
	assert(g->n < GRID_COLUMNS_MAX);
	g->column[g->n].title = title;
	g->column[g->n].kind = kind;
	g->column[g->n].least = least;
	g->column[g->n++].cols = text_cols(title);
}

void grid_note(struct grid *g, const char *const *cells)
{
	for (size_t i = 0; i < g->n; i++)
		if (text_cols(cells[i]) > g->column[i].cols)
			g->column[i].cols = text_cols(cells[i]);
}

int grid_cols(const struct grid *g)
{
	int sum = 0;

	for (size_t i = 0; i < g->n; i++)
		if (g->column[i].cols)
			sum += g->column[i].cols + 1;
	return sum ? sum - 1 : 0;
}

/* Takes one column from the widest that can give it; false when none can. */
static bool shrink(struct grid *g, bool texts_only)
{
	size_t widest = g->n;

	for (size_t i = 0; i < g->n; i++) {
		bool text = g->column[i].kind == GRID_TEXT;
		int least = texts_only ? g->column[i].least : LEAST_OF_ALL;

		if ((texts_only && !text) || g->column[i].cols <= least)
			continue;
		if (widest == g->n || g->column[i].cols > g->column[widest].cols)
			widest = i;
	}
	if (widest == g->n)
		return false;
	g->column[widest].cols--;
	return true;
}

void grid_fit(struct grid *g, int cols)
{
	while (grid_cols(g) > cols && (shrink(g, true) || shrink(g, false)))
		;
}

void grid_row(const struct grid *g, const char *const *cells, struct buf *out)
{
	bool first = true;

	for (size_t i = 0; i < g->n; i++) {
		int cols = g->column[i].cols;

		if (!cols)
			continue;
		if (!first)
			buf_add(out, " ");
		first = false;
		paper_cell(out, cells ? cells[i] : g->column[i].title,
			g->column[i].kind == GRID_NUMBER ? -cols : cols);
	}
}

void grid_end_line(struct buf *out)
{
	while (out->n && out->text[out->n - 1] == ' ')
		out->text[--out->n] = '\0';
	buf_add(out, "\n");
}

void grid_line(const struct grid *g, const char *const *cells, struct buf *out)
{
	grid_row(g, cells, out);
	grid_end_line(out);
}

void grid_whole(const struct grid *g, const char *const *cells, int indent, int cols,
	struct buf *out)
{
	for (size_t i = 0; i < g->n; i++)
		if (g->column[i].kind == GRID_TEXT &&
			text_cols(cells[i]) > g->column[i].cols)
			paper_wrap(out, cells[i], indent, cols);
}
