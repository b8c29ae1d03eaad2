/* sheet_needs.c - the first table of the sheet: traps and block means needing
 * attention. */
#include "base/text.h"
#include "base/words.h"
#include "grid.h"
#include "paper/ascii.h"
#include "parts.h"

enum { NEED_CELLS = 6 };

static void lay_out(const struct sheet *s, bool traps, struct grid *g)
{
	const char *cells[NEED_CELLS];

	grid_column(g, _("trap"), GRID_TEXT, 5);
	grid_column(g, _("block"), GRID_TEXT, 8);
	grid_column(g, _("pest"), GRID_TEXT, 3);
	grid_column(g, _("a week"), GRID_NUMBER, 6);
	grid_column(g, _("thr."), GRID_TEXT, 4);
	grid_column(g, _("verdict"), GRID_TEXT, text_cols(_("unknown")));
	for (size_t i = 0; traps && i < s->n; i++) {
		sheet_need_trap(&s->traps[i], cells);
		grid_note(g, cells);
	}
	for (size_t i = 0; i < s->n_blocks; i++) {
		sheet_need_block(&s->blocks[i], cells);
		if (s->blocks[i].needs_attention)
			grid_note(g, cells);
	}
	grid_fit(g, SHEET_COLS);
}

struct needs {
	struct pager *to;
	struct grid grid;
	struct buf chunk, titles;
	struct buf below; /* what is said below a row */
	int rows;
};

static void add_row(struct needs *n, const char *const *cells)
{
	if (n->rows++ == 0)
		buf_add(&n->chunk, n->titles.text);
	grid_line(&n->grid, cells, &n->chunk);
	grid_whole(&n->grid, cells, SHEET_BELOW, SHEET_COLS, &n->chunk);
	if (n->below.n)
		paper_wrap(&n->chunk, n->below.text, SHEET_BELOW, SHEET_COLS);
	buf_clear(&n->below);
	pager_add(n->to, &n->chunk);
	pager_titles(n->to, n->titles.text);
}

static void add_trap(const struct sheet_trap *t, struct needs *n)
{
	const char *cells[NEED_CELLS];

	if (!t->needs_attention)
		return;
	sheet_need_trap(t, cells);
	sheet_concerns(t, true, &n->below);
	add_row(n, cells);
}

static void add_block(const struct sheet_block *b, struct needs *n)
{
	const char *cells[NEED_CELLS];

	if (!b->needs_attention)
		return;
	sheet_need_block(b, cells);
	sheet_say_block(b, &n->below);
	add_row(n, cells);
}

/* Weeks do not show what a season does: which blocks stand out. */
static void add_hot(const struct sheet *s, struct needs *n)
{
	struct buf line = { 0 };

	for (size_t i = 0; i < s->hot.n; i++) {
		buf_clear(&line);
		sheet_say_hot(&s->hot.items[i], &line);
		paper_wrap(&n->chunk, line.text, 0, SHEET_COLS);
		pager_add(n->to, &n->chunk);
	}
	buf_free(&line);
}

static bool has_any(const struct sheet *s)
{
	for (size_t i = 0; i < s->n_blocks; i++)
		if (s->blocks[i].needs_attention)
			return true;
	return s->hot.n > 0;
}

void sheet_needs(const struct sheet *s, bool traps, struct pager *p)
{
	struct needs n = { .to = p };

	if (!traps && !has_any(s))
		return;
	lay_out(s, traps, &n.grid);
	grid_line(&n.grid, NULL, &n.titles);
	buf_addf(&n.chunk, "%s\n", _("Needing attention"));
	for (size_t i = 0; traps && i < s->n; i++)
		add_trap(&s->traps[i], &n);
	for (size_t i = 0; i < s->n_blocks; i++)
		add_block(&s->blocks[i], &n);
	if (n.rows == 0 && s->hot.n == 0)
		paper_wrap(&n.chunk, _("none"), SHEET_BELOW, SHEET_COLS);
	pager_titles(p, NULL);
	add_hot(s, &n);
	buf_add(&n.chunk, "\n");
	pager_add(p, &n.chunk);
	buf_free(&n.chunk);
	buf_free(&n.titles);
	buf_free(&n.below);
}
