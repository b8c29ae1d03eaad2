#include "paper/hotspots.h"

#include "base/text.h"
#include "base/words.h"
#include "grid.h"
#include "hotspots_parts.h"
#include "paper/ascii.h"

#include <math.h>

enum { COLS_MOST = 78, COLUMNS = 4 };

static void add_head(const struct hot_view *v, int cols, struct buf *out)
{
	struct buf line = { 0 };

	buf_addf(&line, _("Hot spots  %s"), v->title);
	paper_wrap(out, line.text, 0, cols);
	buf_free(&line);
	paper_wrap(out, v->window, 0, cols);
	if (v->n_alikes > 0)
		paper_wrap(out, v->alikes[v->alike].text, 0, cols);
	paper_wrap(out, v->left_out, 0, cols);
	buf_add(out, "\n");
	paper_wrap(out, v->says, 0, cols);
	paper_wrap(out, v->clumping, 0, cols);
}

/* Neighbourhoods and single traps are many; most say nothing new. */
static bool is_told(const struct hot_row *r)
{
	return r->what == HOT_OF_BLOCK || r->what == HOT_OF_BORDER ||
	       r->grade >= HOT_HIGHER;
}

/* Borders of single blocks stand in the table: a sentence each would bury the rest. */
static bool has_sentence(const struct hot_row *r)
{
	return r->what == HOT_OF_BLOCK || r->grade >= HOT_HIGHER ||
	       (r->what == HOT_OF_BORDER && r->block == 0);
}

static void cells_of(const struct hot_row *r, const char *cells[static COLUMNS])
{
	cells[0] = r->name;
	cells[1] = r->grade_text;
	cells[2] = r->rate_text;
	cells[3] = r->ratio_text;
}

static void lay_out(const struct hot_view *v, int cols, struct grid *g)
{
	const char *cells[COLUMNS];

	grid_column(g, _("where"), GRID_TEXT, 12);
	grid_column(g, _("answer"), GRID_TEXT, 14);
	grid_column(g, _("a week"), GRID_NUMBER, 4);
	grid_column(g, _("times the rest"), GRID_TEXT, 4);
	for (size_t i = 0; i < v->n; i++) {
		cells_of(&v->rows[i], cells);
		if (is_told(&v->rows[i]))
			grid_note(g, cells);
	}
	grid_fit(g, cols);
}

static void add_table(const struct hot_view *v, int cols, struct buf *out)
{
	const char *cells[COLUMNS];
	struct grid g = { 0 };

	lay_out(v, cols, &g);
	buf_add(out, "\n");
	grid_line(&g, NULL, out);
	for (size_t i = 0; i < v->n; i++) {
		if (!is_told(&v->rows[i]))
			continue;
		cells_of(&v->rows[i], cells);
		grid_line(&g, cells, out);
	}
}

static void add_row(const struct hot_row *r, int cols, struct buf *out)
{
	struct buf line = { 0 };

	buf_add(out, "\n");
	buf_addf(&line, "%s: %s", r->name, r->says);
	paper_wrap(out, line.text, 0, cols);
	buf_clear(&line);
	paper_wrap(out, r->earlier, 2, cols);
	paper_wrap(out, r->numbers, 2, cols);
	if (!isnan(r->gi_star))
		words_addf(&line, _("Gi* of Getis and Ord: %.2f."),
			text_hundredths(r->gi_star));
	if (line.n)
		paper_wrap(out, line.text, 2, cols);
	buf_free(&line);
	paper_wrap(out, r->power, 2, cols);
	paper_wrap(out, r->next, 2, cols);
}

static void add_rows(const struct hot_view *v, int cols, struct buf *out)
{
	struct buf line = { 0 };
	int others = 0;

	if (v->n == 0)
		return;
	add_table(v, cols, out);
	for (size_t i = 0; i < v->n; i++)
		if (has_sentence(&v->rows[i]))
			add_row(&v->rows[i], cols, out);
		else
			others += !is_told(&v->rows[i]);
	if (others == 0)
		return;
	buf_addf(&line,
		ngettext(
			"%d trap or neighbourhood more is not above what luck explains, "
			"or too little to tell.",
			"%d traps and neighbourhoods more are not above what luck "
			"explains, or too little to tell.",
			(unsigned)others),
		others);
	buf_add(out, "\n");
	paper_wrap(out, line.text, 0, cols);
	buf_free(&line);
}

static void add_sources(const struct hot_view *v, int cols, struct buf *out)
{
	for (size_t i = 0; i < v->n_sources; i++) {
		const struct hot_source *s = &v->sources[i];

		buf_add(out, "\n");
		paper_wrap(out, s->says, 0, cols);
		paper_wrap(out, s->numbers, 2, cols);
		paper_wrap(out, s->note, 2, cols);
	}
}

void paper_hotspots(
	const struct hot_view *v, const char *caution, int cols, struct buf *out)
{
	cols = cols < COLS_MOST ? cols : COLS_MOST;
	add_head(v, cols, out);
	add_rows(v, cols, out);
	hotspots_map(v, cols, out);
	add_sources(v, cols, out);
	if (v->missing[0])
		buf_add(out, "\n");
	paper_wrap(out, v->missing, 0, cols);
	buf_add(out, "\n");
	paper_wrap(out,
		_("A hot spot says where to look, not what to do. Not shown does not "
		  "mean not there."),
		0, cols);
	paper_wrap(out, caution, 0, cols);
}
