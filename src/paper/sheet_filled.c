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
	BELOW_INDENT = 4,
	NOTE_LINES = 5,
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
	grid_column(g, _("verdict"), GRID_TEXT, 7);
	for (size_t i = 0; i < s->n; i++) {
		cells_of(&s->traps[i], c);
		grid_note(g, c->text);
	}
	grid_fit(g, SHEET_COLS);
}

static void join(struct buf *out, const char *text)
{
	if (*text)
		buf_addf(out, "%s%s", out->n ? "; " : "", text);
}

/* What is amiss, then what is due. */
static void add_concerns(const struct sheet_trap *t, struct buf *out)
{
	join(out, t->says);
	join(out, t->service);
}

enum { NEED_CELLS = 6 };

static void need_cells_of(const struct sheet_trap *t, const char **cells)
{
	cells[0] = t->label;
	cells[1] = t->block;
	cells[2] = t->pest;
	cells[3] = t->week;
	cells[4] = t->rule;
	cells[5] = t->verdict;
}

static void lay_out_needs(const struct sheet *s, struct grid *g)
{
	const char *cells[NEED_CELLS];

	grid_column(g, _("trap"), GRID_TEXT, 5);
	grid_column(g, _("block"), GRID_TEXT, 8);
	grid_column(g, _("pest"), GRID_TEXT, 3);
	grid_column(g, _("a week"), GRID_NUMBER, 6);
	grid_column(g, _("thr."), GRID_TEXT, 4);
	grid_column(g, _("verdict"), GRID_TEXT, 7);
	for (size_t i = 0; i < s->n; i++) {
		need_cells_of(&s->traps[i], cells);
		grid_note(g, cells);
	}
	grid_fit(g, SHEET_COLS);
}

static void add_need(const struct grid *g, const struct sheet_trap *t, struct buf *out)
{
	const char *cells[NEED_CELLS];
	struct buf text = { 0 };

	need_cells_of(t, cells);
	grid_line(g, cells, out);
	buf_add(&text, "");
	add_concerns(t, &text);
	paper_wrap(out, text.text, BELOW_INDENT, SHEET_COLS);
	buf_free(&text);
}

static void add_attention(const struct sheet *s, struct pager *p)
{
	struct grid g = { 0 };
	struct buf chunk = { 0 };
	int n = 0;

	lay_out_needs(s, &g);
	buf_addf(&chunk, "%s\n", _("Traps needing attention"));
	for (size_t i = 0; i < s->n; i++) {
		if (!s->traps[i].needs_attention)
			continue;
		if (n == 0)
			grid_line(&g, NULL, &chunk);
		add_need(&g, &s->traps[i], &chunk);
		pager_add(p, &chunk);
		n++;
	}
	if (n == 0)
		paper_wrap(&chunk, _("none"), BELOW_INDENT, SHEET_COLS);
	buf_add(&chunk, "\n");
	pager_add(p, &chunk);
	buf_free(&chunk);
}

static void add_trap(const struct sheet_trap *t, struct buf *out)
{
	struct buf text = { 0 };

	buf_add(&text, "");
	if (t->lure[0])
		buf_addf(&text, _("lure %s"), t->lure);
	if (t->lure_since[0])
		buf_addf(&text, _(" since %s"), t->lure_since);
	if (t->card_since[0])
		buf_addf(
			&text, _("%scard since %s"), text.n ? ", " : "", t->card_since);
	if (t->total[0])
		buf_addf(&text, _("%sseason %s"), text.n ? ", " : "", t->total);
	if (!t->needs_attention) /* else they stand further up */
		add_concerns(t, &text);
	paper_wrap(out, text.text, BELOW_INDENT, SHEET_COLS);
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

static void lay_out_blocks(const struct sheet *s, struct grid *g)
{
	grid_column(g, _("block"), GRID_TEXT, 8);
	grid_column(g, _("pest"), GRID_TEXT, 3);
	grid_column(g, _("mean"), GRID_NUMBER, 6);
	grid_column(g, _("highest"), GRID_NUMBER, 7);
	grid_column(g, _("read"), GRID_MARK, 8);
	grid_column(g, _("thr."), GRID_TEXT, 4);
	grid_column(g, _("verdict"), GRID_TEXT, 7);
	for (size_t i = 0; i < s->n_blocks; i++) {
		const struct sheet_block *b = &s->blocks[i];
		const char *cells[] = { b->name, b->pest, b->mean, b->highest, b->read,
			b->rule, b->verdict };

		grid_note(g, cells);
	}
	grid_fit(g, SHEET_COLS);
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
		const struct sheet_block *b = &s->blocks[i];
		const char *cells[] = { b->name, b->pest, b->mean, b->highest, b->read,
			b->rule, b->verdict };

		grid_line(&g, cells, &chunk);
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

	buf_addf(&text,
		_("Totals of this run: %d of %d traps counted, %d moths; %d OVER, %d "
		  "unknown"),
		s->counted, (int)s->n, (int)s->moths, s->over, s->unknown);
	paper_wrap(&chunk, text.text, 0, SHEET_COLS);
	pager_add(p, &chunk);
	buf_free(&chunk);
	buf_free(&text);
}

void sheet_filled(const struct sheet *s, struct pager *p)
{
	add_attention(s, p);
	add_traps(s, p);
	add_blocks(s, p);
	add_totals(s, p);
	sheet_bring(s, p);
	sheet_notes(NOTE_LINES, p);
}
