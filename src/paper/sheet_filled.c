/* sheet_filled.c - the sheet filled in with this run's counts, as text. */
#include "base/text.h"
#include "base/words.h"
#include "grid.h"
#include "paper/ascii.h"
#include "parts.h"

enum {
	TRAP_LABEL,
	TRAP_BLOCK,
	TRAP_PEST,
	TRAP_MARKS,
	TRAP_LAST,
	TRAP_COUNT,
	TRAP_WEEK,
	TRAP_NIGHTS,
	TRAP_RULE,
	TRAP_VERDICT,
	TRAP_CELLS,
};

struct trap_cells {
	int last_cols;   /* of each of the last four catches */
	struct buf last; /* all four */
	const char *text[TRAP_CELLS];
};

static int last_cols(const struct sheet *s)
{
	int cols = 3;

	for (size_t i = 0; i < s->n; i++)
		for (int k = 0; k < RUN_LAST; k++)
			if (text_cols(s->traps[i].last[k]) > cols)
				cols = text_cols(s->traps[i].last[k]);
	return cols;
}

static void cells_of(const struct sheet_trap *t, struct trap_cells *c)
{
	buf_clear(&c->last);
	for (int k = 0; k < RUN_LAST; k++) {
		buf_add(&c->last, k ? " " : "");
		buf_add_field(&c->last, t->last[k], -c->last_cols);
	}
	c->text[TRAP_LABEL] = t->label;
	c->text[TRAP_BLOCK] = t->block;
	c->text[TRAP_PEST] = t->pest;
	c->text[TRAP_MARKS] = sheet_marks(t);
	c->text[TRAP_LAST] = c->last.text;
	c->text[TRAP_COUNT] = t->count;
	c->text[TRAP_WEEK] = t->week;
	c->text[TRAP_NIGHTS] = t->nights;
	c->text[TRAP_RULE] = t->rule;
	c->text[TRAP_VERDICT] = t->verdict;
}

static void lay_out_traps(const struct sheet *s, struct grid *g, struct trap_cells *c)
{
	grid_column(g, _("trap"), GRID_TEXT, 5);
	grid_column(g, _("block"), GRID_TEXT, 8);
	grid_column(g, _("pest"), GRID_TEXT, 3);
	grid_column(g, "", GRID_MARK, 2);
	grid_column(g, _("last four"), GRID_MARK, 15);
	grid_column(g, _("count"), GRID_MARK, 5);
	grid_column(g, _("a week"), GRID_NUMBER, 6);
	grid_column(g, _("nights"), GRID_NUMBER, 6);
	grid_column(g, _("thr."), GRID_TEXT, 4);
	grid_column(g, _("verdict"), GRID_TEXT, text_cols(_("unknown")));
	for (size_t i = 0; i < s->n; i++) {
		cells_of(&s->traps[i], c);
		grid_note(g, c->text);
	}
	grid_fit(g, SHEET_COLS);
}

static void add_trap(const struct sheet_trap *t, struct buf *out)
{
	struct buf text = { 0 };

	sheet_say_trap(t, &text);
	paper_wrap(out, text.text, SHEET_BELOW, SHEET_COLS);
	buf_free(&text);
}

static void add_traps(const struct sheet *s, struct pager *p)
{
	struct grid g = { 0 };
	struct trap_cells c = { .last_cols = last_cols(s) };
	struct buf chunk = { 0 }, titles = { 0 };

	lay_out_traps(s, &g, &c);
	grid_line(&g, NULL, &titles);
	sheet_rule(&titles);
	buf_addf(&chunk, "%s\n%s", _("All traps in driving order"), titles.text);
	for (size_t i = 0; i < s->n; i++) {
		cells_of(&s->traps[i], &c);
		grid_line(&g, c.text, &chunk);
		grid_whole(&g, c.text, SHEET_BELOW, SHEET_COLS, &chunk);
		add_trap(&s->traps[i], &chunk);
		pager_add(p, &chunk);
		pager_titles(p, titles.text);
	}
	pager_titles(p, NULL);
	buf_add(&chunk, "\n");
	pager_add(p, &chunk);
	buf_free(&c.last);
	buf_free(&chunk);
	buf_free(&titles);
}

enum { BLOCK_CELLS = 7, BLOCK_GAP = 2 };

static void lay_out_blocks(const struct sheet *s, struct grid *g)
{
	grid_column(g, _("block"), GRID_TEXT, 8);
	grid_column(g, _("pest"), GRID_TEXT, 3);
	grid_column(g, _("mean"), GRID_NUMBER, 6);
	grid_column(g, _("highest"), GRID_NUMBER, 7);
	grid_column(g, _("read"), GRID_MARK, 8);
	grid_column(g, _("thr."), GRID_TEXT, 4);
	grid_column(g, _("verdict"), GRID_TEXT, text_cols(_("unknown")));
	for (size_t i = 0; i < s->n_blocks; i++) {
		const char *cells[BLOCK_CELLS];

		sheet_block_cells(&s->blocks[i], cells);
		grid_note(g, cells);
	}
	grid_fit(g, SHEET_COLS);
}

/* What the block says stands behind its row where it fits, else below. */
static void add_block(
	const struct grid *g, const struct sheet_block *b, struct buf *out)
{
	const char *cells[BLOCK_CELLS];
	int cols = text_cols(b->says);
	bool fits = grid_cols(g) + BLOCK_GAP + cols <= SHEET_COLS;

	sheet_block_cells(b, cells);
	grid_row(g, cells, out);
	if (fits) {
		buf_add_field(out, "", BLOCK_GAP);
		buf_add_field(out, b->says, cols);
	}
	grid_end_line(out);
	grid_whole(g, cells, SHEET_BELOW, SHEET_COLS, out);
	if (!fits)
		paper_wrap(out, b->says, SHEET_BELOW, SHEET_COLS);
}

static void add_blocks(const struct sheet *s, struct pager *p)
{
	struct grid g = { 0 };
	struct buf chunk = { 0 }, titles = { 0 };

	if (s->n_blocks == 0)
		return;
	lay_out_blocks(s, &g);
	grid_line(&g, NULL, &titles);
	sheet_rule(&titles);
	buf_addf(&chunk, "%s\n%s", _("Blocks"), titles.text);
	for (size_t i = 0; i < s->n_blocks; i++) {
		add_block(&g, &s->blocks[i], &chunk);
		pager_add(p, &chunk);
		pager_titles(p, titles.text);
	}
	pager_titles(p, NULL);
	buf_add(&chunk, "\n");
	pager_add(p, &chunk);
	buf_free(&chunk);
	buf_free(&titles);
}

static void add_totals(const struct sheet *s, struct pager *p)
{
	struct buf chunk = { 0 }, text = { 0 };

	sheet_say_counted(s, &text);
	paper_wrap(&chunk, text.text, 0, SHEET_COLS);
	buf_clear(&text);
	sheet_say_standing(s, &text);
	paper_wrap(&chunk, text.text, 0, SHEET_COLS);
	pager_add(p, &chunk);
	buf_free(&chunk);
	buf_free(&text);
}

void sheet_filled(const struct sheet *s, struct pager *p)
{
	sheet_clocks(s, p);
	sheet_needs(s, true, p);
	if (s->n > 0)
		add_traps(s, p);
	else
		sheet_none(p);
	add_blocks(s, p);
	add_totals(s, p);
	sheet_bring(s, p);
}
