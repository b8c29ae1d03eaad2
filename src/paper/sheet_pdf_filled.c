/* sheet_pdf_filled.c - the sheet filled in with this run's counts, as a PDF. */
#include "base/words.h"
#include "parts.h"
#include "sheet_pdf.h"

enum {
	TRAP_LABEL,
	TRAP_BLOCK,
	TRAP_PEST,
	TRAP_MARKS,
	TRAP_LAST,
	TRAP_COUNT = TRAP_LAST + RUN_LAST,
	TRAP_WEEK,
	TRAP_NIGHTS,
	TRAP_RULE,
	TRAP_VERDICT,
	TRAP_CELLS,
	BLOCK_CELLS = 7,
};

static const double whole_entry = 14;

static void trap_cells(const struct sheet_trap *t, const char **cells)
{
	cells[TRAP_LABEL] = t->label;
	cells[TRAP_BLOCK] = t->block;
	cells[TRAP_PEST] = t->pest;
	cells[TRAP_MARKS] = sheet_marks(t);
	for (int i = 0; i < RUN_LAST; i++)
		cells[TRAP_LAST + i] = t->last[i];
	cells[TRAP_COUNT] = t->count;
	cells[TRAP_WEEK] = t->week;
	cells[TRAP_NIGHTS] = t->nights;
	cells[TRAP_RULE] = t->rule;
	cells[TRAP_VERDICT] = t->verdict;
}

static void lay_out_traps(const struct sheet *s, struct leaf *l, struct ruled *r)
{
	ruled_column(r, _("trap"), PDF_LEFT);
	ruled_column(r, _("block"), PDF_LEFT);
	ruled_column(r, _("pest"), PDF_LEFT);
	ruled_column(r, "", PDF_LEFT);
	ruled_columns(r, _("last four"), RUN_LAST);
	ruled_column(r, _("count"), PDF_LEFT);
	ruled_column(r, _("a week"), PDF_RIGHT);
	ruled_column(r, _("nights"), PDF_RIGHT);
	ruled_column(r, _("thr."), PDF_LEFT);
	ruled_column(r, _("verdict"), PDF_LEFT);
	for (size_t i = 0; i < s->n; i++) {
		const char *cells[TRAP_CELLS];

		trap_cells(&s->traps[i], cells);
		ruled_note(r, l->pdf, cells);
	}
	ruled_fit(r, l);
}

static void set_traps(const struct sheet *s, struct leaf *l)
{
	const char *cells[TRAP_CELLS];
	struct ruled r = { 0 };
	struct buf below = { 0 };

	if (s->n == 0) {
		leaf_gap(l, 2);
		leaf_words(l, 0, &leaf_plain, sheet_no_traps());
		return;
	}
	lay_out_traps(s, l, &r);
	leaf_heading(l, _("All traps in driving order"), 2 * whole_entry);
	ruled_begin(&r, l, whole_entry);
	for (size_t i = 0; i < s->n; i++) {
		const struct sheet_trap *t = &s->traps[i];

		trap_cells(t, cells);
		buf_clear(&below);
		sheet_say_trap(t, &below);
		sheet_pdf_entry(
			&r, l, &(struct pdf_entry){ cells, below.text, t->is_over });
	}
	ruled_end(l);
	buf_free(&below);
}

static void lay_out_blocks(const struct sheet *s, struct leaf *l, struct ruled *r)
{
	ruled_column(r, _("block"), PDF_LEFT);
	ruled_column(r, _("pest"), PDF_LEFT);
	ruled_column(r, _("mean"), PDF_RIGHT);
	ruled_column(r, _("highest"), PDF_RIGHT);
	ruled_column(r, _("read"), PDF_LEFT);
	ruled_column(r, _("thr."), PDF_LEFT);
	ruled_column(r, _("verdict"), PDF_LEFT);
	for (size_t i = 0; i < s->n_blocks; i++) {
		const char *cells[BLOCK_CELLS];

		sheet_block_cells(&s->blocks[i], cells);
		ruled_note(r, l->pdf, cells);
	}
	ruled_fit(r, l);
}

static void set_blocks(const struct sheet *s, struct leaf *l)
{
	const char *cells[BLOCK_CELLS];
	struct ruled r = { 0 };

	if (s->n_blocks == 0)
		return;
	lay_out_blocks(s, l, &r);
	leaf_heading(l, _("Blocks"), 2 * whole_entry);
	ruled_begin(&r, l, whole_entry);
	for (size_t i = 0; i < s->n_blocks; i++) {
		const struct sheet_block *b = &s->blocks[i];

		sheet_block_cells(b, cells);
		sheet_pdf_entry(
			&r, l, &(struct pdf_entry){ cells, b->says, b->is_over });
	}
	ruled_end(l);
}

static void set_totals(const struct sheet *s, struct leaf *l)
{
	struct buf text = { 0 };

	leaf_gap(l, 2);
	sheet_say_counted(s, &text);
	leaf_words(l, 0, &leaf_plain, text.text);
	buf_clear(&text);
	sheet_say_standing(s, &text);
	leaf_words(l, 0, &leaf_plain, text.text);
	buf_free(&text);
}

void sheet_pdf_filled(const struct sheet *s, struct leaf *l)
{
	sheet_pdf_clocks(s, l);
	sheet_pdf_needs(s, true, l);
	set_traps(s, l);
	set_blocks(s, l);
	set_totals(s, l);
	sheet_pdf_bring(s, l);
}
