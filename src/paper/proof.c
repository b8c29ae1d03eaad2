#include "paper/proof.h"

#include "base/text.h"
#include "base/words.h"
#include "grid.h"
#include "paper/ascii.h"

#include <string.h>

enum { COL_RULE, COL_INPUT, COL_PRINTED, COL_OURS, COL_HOLDS, COL_COUNT, INDENT = 4 };

static void cells_of(const struct proof_case *c, const char **cells)
{
	cells[COL_RULE] = c->rule;
	cells[COL_INPUT] = c->input;
	cells[COL_PRINTED] = c->expected;
	cells[COL_OURS] = c->ours;
	cells[COL_HOLDS] = c->holds ? _("holds") : _("DOES NOT HOLD");
}

static void lay_out(const struct proof_case *cases, size_t n, int cols, struct grid *g)
{
	grid_column(g, _("rule"), GRID_TEXT, 8);
	grid_column(g, _("input"), GRID_TEXT, 8);
	grid_column(g, _("printed"), GRID_TEXT, 5);
	grid_column(g, _("ours"), GRID_TEXT, 5);
	grid_column(g, "", GRID_MARK, 5);
	for (size_t i = 0; i < n; i++) {
		const char *cells[COL_COUNT];

		cells_of(&cases[i], cells);
		grid_note(g, cells);
	}
	grid_fit(g, cols - INDENT);
}

static void add_source(const struct proof_case *c, int cols, struct buf *out)
{
	struct buf text = { 0 };

	buf_addf(&text, "%s%s%s", c->id, *c->source ? ": " : "", c->source);
	paper_wrap(out, text.text, 0, cols);
	paper_wrap(out, c->printed, 2, cols);
	if (c->remark[0]) {
		buf_clear(&text);
		buf_addf(&text, "(%s)", c->remark);
		paper_wrap(out, text.text, 2, cols);
	}
	buf_free(&text);
}

/* How many cases from the first on are of the same source and are read the same way. */
static size_t group_of(const struct proof_case *cases, size_t n)
{
	size_t i = 1;

	while (i < n && strcmp(cases[i].id, cases[0].id) == 0 &&
		strcmp(cases[i].printed, cases[0].printed) == 0 &&
		strcmp(cases[i].remark, cases[0].remark) == 0)
		i++;
	return i;
}

static void add_cells(const struct grid *g, const char *const *cells, struct buf *out)
{
	buf_add_field(out, "", INDENT);
	grid_line(g, cells, out);
}

/* An input that its column would cut stands whole on lines of its own. */
static void add_case(
	const struct grid *g, const struct proof_case *c, int cols, struct buf *out)
{
	const char *cells[COL_COUNT];

	cells_of(c, cells);
	if (text_cols(c->input) > g->column[COL_INPUT].cols) {
		paper_wrap(out, c->input, INDENT, cols);
		cells[COL_INPUT] = "";
	}
	add_cells(g, cells, out);
}

static void add_group(
	const struct proof_case *cases, size_t n, int cols, struct buf *out)
{
	struct grid g = { 0 };

	add_source(cases, cols, out);
	lay_out(cases, n, cols, &g);
	add_cells(&g, NULL, out);
	for (size_t i = 0; i < n; i++)
		add_case(&g, &cases[i], cols, out);
	buf_add(out, "\n");
}

static void add_sum(const struct proof_text *p, int cols, struct buf *out)
{
	struct buf text = { 0 };
	size_t held = 0;

	for (size_t i = 0; i < p->n; i++)
		held += p->cases[i].holds;
	if (held == p->n)
		buf_addf(&text, _("All %zu cases hold."), p->n);
	else
		buf_addf(&text, _("%zu of %zu cases DO NOT HOLD."), p->n - held, p->n);
	paper_wrap(out, text.text, 0, cols);
	buf_free(&text);
}

void paper_proof(const struct proof_text *p, int cols, struct buf *out)
{
	paper_wrap(out, p->legend, 0, cols);
	buf_add(out, "\n");
	for (size_t i = 0, n; i < p->n; i += n) {
		n = group_of(p->cases + i, p->n - i);
		add_group(p->cases + i, n, cols, out);
	}
	add_sum(p, cols, out);
}
