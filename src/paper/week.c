#include "paper/week.h"

#include "base/text.h"
#include "base/words.h"
#include "grid.h"
#include "paper/ascii.h"

#include <string.h>

enum {
	COL_NAME,
	COL_PEST,
	COL_MARKS,
	COL_CATCH,
	COL_HIGHEST,
	COL_NIGHTS,
	COL_RULE,
	COL_VERDICT,
	COL_COUNT,
	LINE_LEAST = 6,
	LINE_USUAL = 12,
};

struct cells {
	char name[2 * WEEK_TRAP + NAME_BYTES];
	const char *text[COL_COUNT];
};

static void cells_of(const struct week_row *r, struct cells *c)
{
	static const char *const marks[] = { "", " d", "b", "bd" };

	memset(c->name, ' ', sizeof c->name);
	text_copy(
		c->name + 2 * r->level, sizeof c->name - 2 * (size_t)r->level, r->name);
	c->text[COL_NAME] = c->name;
	c->text[COL_PEST] = r->pest_code;
	c->text[COL_MARKS] = marks[r->is_border * 2 + r->is_disrupted];
	c->text[COL_CATCH] = r->catch_text;
	c->text[COL_HIGHEST] = r->highest_text;
	c->text[COL_NIGHTS] = r->nights_text;
	c->text[COL_RULE] = r->rule_text;
	c->text[COL_VERDICT] = r->verdict_text;
}

/* Leaves out columns until the rest can be read; the flight line went before. */
static void lay_out(const struct week *w, struct grid *g, int cols)
{
	struct cells c;

	grid_column(g, _("trap"), GRID_TEXT, 12);
	grid_column(g, _("pest"), GRID_TEXT, 4);
	grid_column(g, "", GRID_MARK, 2);
	grid_column(g, _("a week"), GRID_NUMBER, 6);
	grid_column(g, _("highest"), GRID_NUMBER, 7);
	grid_column(g, _("read"), GRID_MARK, 6);
	grid_column(g, _("threshold"), GRID_TEXT, 7);
	grid_column(g, _("verdict"), GRID_TEXT, 7);
	for (size_t i = 0; i < w->n; i++) {
		cells_of(&w->rows[i], &c);
		grid_note(g, c.text);
	}
	if (cols < 60)
		g->column[COL_HIGHEST].cols = 0;
	if (cols < 52)
		g->column[COL_MARKS].cols = 0;
}

static int line_cols(const struct week *w, int cols)
{
	int weeks = w->n_weeks < LINE_USUAL ? (int)w->n_weeks : LINE_USUAL;

	return cols < 72 || weeks < LINE_LEAST ? 0 : weeks;
}

/* The highest bar of a pest in the rows shown: its lines share this scale. */
static int32_t highest_x10(const struct week *w, int64_t pest)
{
	int32_t top = 1;

	for (size_t i = 0; i < w->n; i++) {
		const struct week_row *r = &w->rows[i];

		for (size_t k = 0; r->line && r->pest == pest && k < w->n_weeks; k++)
			if (r->line[k].kind == MARK_CATCH && r->line[k].x10 > top)
				top = r->line[k].x10;
	}
	return top;
}

static void add_mark(struct buf *out, struct mark m, int32_t top)
{
	char block[5];

	switch (m.kind) {
	case MARK_NOTHING:
		buf_add(out, " ");
		return;
	case MARK_NOT_READ:
		buf_add(out, "\u00b7");
		return;
	case MARK_ZERO:
		buf_add(out, "_");
		return;
	case MARK_FLOOR:
		buf_add(out, "+");
		return;
	case MARK_CATCH:
		break;
	}
	int64_t eighths = ((int64_t)m.x10 * 8 + top - 1) / top;
	eighths = eighths < 1 ? 1 : eighths > 8 ? 8 : eighths;
	text_encode((uint32_t)(0x2580 + eighths), block);
	buf_add(out, block);
}

/* The latest `cols` weeks. */
static void add_line(
	const struct week *w, const struct week_row *r, int cols, struct buf *out)
{
	size_t n = w->n_weeks < (size_t)cols ? w->n_weeks : (size_t)cols;
	int32_t top = highest_x10(w, r->pest);

	buf_add(out, " ");
	for (size_t k = w->n_weeks - n; r->line && k < w->n_weeks; k++)
		add_mark(out, r->line[k], top);
}

static void add_rows(const struct week *w, int cols, struct buf *out)
{
	struct grid g = { 0 };
	struct cells c;
	int line = line_cols(w, cols);

	lay_out(w, &g, cols);
	grid_fit(&g, line ? cols - line - 1 : cols);
	if (line) /* what the columns leave over is the line's */
		line = cols - grid_cols(&g) - 1;
	grid_row(&g, NULL, out);
	if (line)
		buf_add_field(out, _(" flight"), line + 1);
	grid_end_line(out);
	for (size_t i = 0; i < w->n; i++) {
		cells_of(&w->rows[i], &c);
		if (w->rows[i].level == WEEK_FARM && i)
			buf_add(out, "\n");
		grid_row(&g, c.text, out);
		if (line)
			add_line(w, &w->rows[i], line, out);
		grid_end_line(out);
		paper_wrap(out, w->rows[i].says, 2 * (int)w->rows[i].level + 2, cols);
	}
}

static void add_sums(const struct week *w, int cols, struct buf *out)
{
	struct buf text = { 0 };

	buf_addf(&text, _("%d OVER, %d unknown, %d near, %d under%s"), w->n_over,
		w->n_unknown, w->n_near, w->n_under, w->doubted_text);
	if (w->n_none)
		buf_addf(&text,
			ngettext("; %d trap without a threshold",
				"; %d traps without a threshold",
				(unsigned long)w->n_none),
			w->n_none);
	paper_wrap(out, text.text, 0, cols);
	buf_free(&text);
}

static void add_all(const struct week *w, int cols, struct buf *out)
{
	struct buf title = { 0 };

	buf_addf(&title, _("Week  %s"), w->title_day);
	paper_wrap(out, title.text, 0, cols);
	buf_free(&title);
	if (w->n == 0) {
		paper_wrap(out, _("No such trap hung this season."), 0, cols);
		return;
	}
	add_sums(w, cols, out);
	buf_add(out, "\n");
	add_rows(w, cols, out);
	buf_add(out, "\n");
	paper_wrap(out,
		_("a week: moths per trap per week, of a block the mean; b border, d "
		  "disrupted: 0 there does not mean no moths. Flight: _ counted none, "
		  "\u00b7 not read, + at least (card full); the lines of one pest have "
		  "one scale."),
		0, cols);
}

void paper_week(const struct week *w, int cols, bool utf8, struct buf *out)
{
	struct buf text = { 0 };

	add_all(w, cols, &text);
	if (utf8)
		buf_add(out, text.text);
	else
		paper_ascii(text.text, out);
	buf_free(&text);
}
