/* sheet_blank.c - the sheet to carry round the traps and write on, as text. */
#include "base/text.h"
#include "base/words.h"
#include "grid.h"
#include "paper/ascii.h"
#include "parts.h"

#include <string.h>

enum {
	CELL_LABEL,
	CELL_BLOCK,
	CELL_PEST,
	CELL_MARKS,
	CELL_LAST,
	CELL_COUNT,
	LEFT_COLS = 38, /* what is printed; right of it the boxes */
	LEFT_INDENT = 1,
	LAST_COLS = 3, /* of a catch; a longer one pushes the others on */
};

static const char boxes[] = "[        ] [    ] [    ]";
static const char note_line[] = "______________";

/* The cells of a trap; its last four catches in *last. */
static void cells_of(const struct sheet_trap *t, struct buf *last, const char **cells)
{
	buf_clear(last);
	for (int k = 0; k < RUN_LAST; k++) {
		buf_add(last, k ? " " : "");
		buf_add_field(last, t->last[k], -LAST_COLS);
	}
	cells[CELL_LABEL] = t->label;
	cells[CELL_BLOCK] = t->block;
	cells[CELL_PEST] = t->pest;
	cells[CELL_MARKS] = sheet_marks(t);
	cells[CELL_LAST] = last->text;
}

static void lay_out(const struct sheet *s, struct grid *g)
{
	struct buf last = { 0 };

	grid_column(g, _("trap"), GRID_TEXT, 5);
	grid_column(g, _("block"), GRID_TEXT, 8);
	grid_column(g, _("pest"), GRID_TEXT, 3);
	grid_column(g, "", GRID_MARK, 2);
	grid_column(g, _("last four"), GRID_NUMBER, 9);
	for (size_t i = 0; i < s->n; i++) {
		const char *cells[CELL_COUNT];

		cells_of(&s->traps[i], &last, cells);
		grid_note(g, cells);
	}
	grid_fit(g, LEFT_COLS);
	buf_free(&last);
}

static void add_left(const struct grid *g, const char *const *cells, struct buf *out)
{
	grid_row(g, cells, out);
	buf_add_field(out, "", LEFT_COLS - grid_cols(g) + 1);
}

static void add_titles(const struct grid *g, struct buf *out)
{
	add_left(g, NULL, out);
	paper_cell(out, _("count"), 11);
	paper_cell(out, _("card"), 7);
	paper_cell(out, C_("column", "lure"), 7);
	paper_cell(out, _("note"), 14);
	grid_end_line(out);
	sheet_rule(out);
}

/* How the last reading stands to the threshold, and the lure that hangs there. */
static void say_standing(const struct sheet_trap *t, struct buf *out)
{
	sheet_say_verdict(t, out);
	if (out->n && t->lure[0])
		buf_add(out, "; ");
	sheet_say_lure(t, out);
}

/* What is due there, then the verdict and the lure, on lines of LEFT_COLS. */
static void add_due(const struct sheet_trap *t, struct buf *out)
{
	struct buf text = { 0 };

	paper_wrap(out, t->barred, LEFT_INDENT, LEFT_COLS);
	if (t->service[0]) {
		buf_addf(&text, _("to do: %s"), t->service);
		paper_wrap(out, text.text, LEFT_INDENT, LEFT_COLS);
		buf_clear(&text);
	}
	say_standing(t, &text);
	paper_wrap(out, text.text, LEFT_INDENT, LEFT_COLS);
	if (out->n == 0)
		buf_add(out, "\n");
	buf_free(&text);
}

/* The boxes are two lines high: a wet pencil needs room. */
static void add_trap(const struct grid *g, const struct sheet_trap *t, struct buf *out)
{
	const char *cells[CELL_COUNT], *end;
	struct buf due = { 0 }, line = { 0 };

	cells_of(t, &line, cells);
	add_left(g, cells, out);
	buf_addf(out, "%s\n", boxes);
	grid_whole(g, cells, LEFT_INDENT, LEFT_COLS, &due);
	add_due(t, &due);
	for (const char *at = due.text; (end = strchr(at, '\n')); at = end + 1) {
		buf_clear(&line);
		buf_add_n(&line, at, (size_t)(end - at));
		buf_add_field(out, line.text, LEFT_COLS + 1);
		if (at == due.text)
			buf_addf(out, "%s %s", boxes, note_line);
		grid_end_line(out);
	}
	sheet_rule(out);
	buf_free(&due);
	buf_free(&line);
}

/* A word and a line to write on, `cols` together, and a blank. */
static void add_field(const char *word, int cols, struct buf *out)
{
	int used = text_cols(word) < cols / 2 ? text_cols(word) : cols / 2;

	paper_cell(out, word, used);
	buf_add(out, " ");
	for (; used < cols - 2; used++)
		buf_add(out, "_");
	buf_add(out, " ");
}

static void add_form(struct pager *p)
{
	struct buf chunk = { 0 };

	add_field(_("Scout"), 22, &chunk);
	add_field(_("Date"), 19, &chunk);
	add_field(_("Start"), 17, &chunk);
	add_field(_("Finish"), 17, &chunk);
	grid_end_line(&chunk);
	buf_add(&chunk, "\n");
	add_field(_("Weather"), 38, &chunk);
	add_field(_("Growth stage"), 38, &chunk);
	grid_end_line(&chunk);
	buf_add(&chunk, "\n");
	pager_add(p, &chunk);
	buf_free(&chunk);
}

void sheet_blank(const struct sheet *s, struct pager *p)
{
	struct grid g = { 0 };
	struct buf chunk = { 0 }, titles = { 0 };

	lay_out(s, &g);
	add_titles(&g, &titles);
	add_form(p);
	sheet_clocks(s, p);
	sheet_needs(s, false, p);
	sheet_bring(s, p);
	if (s->n > 0)
		buf_add(&chunk, titles.text);
	else
		sheet_none(p);
	for (size_t i = 0; i < s->n; i++) {
		add_trap(&g, &s->traps[i], &chunk);
		pager_add(p, &chunk);
		pager_titles(p, titles.text);
	}
	pager_titles(p, NULL);
	buf_add(&chunk, "\n");
	pager_add(p, &chunk);
	buf_free(&chunk);
	buf_free(&titles);
}
