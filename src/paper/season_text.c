/* season_text.c - the season page as plain text. */
#include "season_text.h"

#include "base/text.h"
#include "base/words.h"
#include "grid.h"
#include "hotspots_parts.h"
#include "paper/ascii.h"
#include "season_words.h"

enum { COLS_MOST = 78, BELOW = 2, DAY = 12 };
enum { MAP_LEAST = 3 }; /* traps: of fewer a map in characters tells nothing */

static void end_line(struct buf *text, int indent, int cols, struct buf *out)
{
	paper_wrap(out, text->text, indent, cols);
	buf_clear(text);
}

/* A heading with a blank line before it. */
static void add_heading(const char *text, int cols, struct buf *out)
{
	buf_add(out, "\n");
	paper_wrap(out, text, 0, cols);
}

/* The day in a column of its own, the text beside it. */
static void add_dated(const char *day, struct buf *text, int cols, struct buf *out)
{
	struct buf lines = { 0 };

	paper_wrap(&lines, text->text, BELOW + DAY, cols);
	buf_add_field(out, "", BELOW);
	paper_cell(out, day, DAY);
	buf_add(out, lines.n > BELOW + DAY ? lines.text + BELOW + DAY : "\n");
	buf_free(&lines);
	buf_clear(text);
}

static void add_named(const char *name, const char *says, int cols, struct buf *out)
{
	struct buf text = { 0 };

	if (!*says)
		return;
	buf_addf(&text, "%s: %s", name, says);
	end_line(&text, BELOW, cols, out);
	buf_free(&text);
}

static void lay_out_glance(const struct season_page *p, struct grid *g)
{
	static const bool is_text[SEASON_GLANCE] = { true, true, [4] = true };
	const char *cells[SEASON_GLANCE];

	season_glance_cells(NULL, cells);
	for (size_t i = 0; i < SEASON_GLANCE; i++)
		grid_column(g, cells[i], is_text[i] ? GRID_TEXT : GRID_NUMBER, 4);
	for (size_t i = 0; i < p->n_charts; i++) {
		season_glance_cells(&p->charts[i], cells);
		grid_note(g, cells);
	}
}

/* True if the blocks' names stand above their rows, since beside them there is no
 * room. */
static bool fit_glance(struct grid *g, int cols)
{
	bool is_apart = grid_cols(g) > cols;

	if (is_apart)
		g->column[0].cols = 0;
	grid_fit(g, is_apart ? cols - BELOW : cols);
	return is_apart;
}

static void add_glance_row(const struct grid *g, const char **cells, bool is_apart,
	int cols, struct buf *out)
{
	if (is_apart) {
		paper_wrap(out, cells[0], 0, cols);
		buf_add_field(out, "", BELOW);
		cells[0] = "";
	}
	grid_line(g, cells, out);
	grid_whole(g, cells, 2 * BELOW, cols, out);
}

static void add_glance(const struct season_page *p, int cols, struct buf *out)
{
	const char *cells[SEASON_GLANCE];
	struct grid g = { 0 };

	lay_out_glance(p, &g);
	bool is_apart = fit_glance(&g, cols);
	buf_add(out, "\n");
	season_glance_cells(NULL, cells);
	add_glance_row(&g, cells, is_apart, cols, out);
	for (size_t i = 0; i < p->n_charts; i++) {
		season_glance_cells(&p->charts[i], cells);
		add_glance_row(&g, cells, is_apart, cols, out);
	}
	paper_wrap(out, season_glance_note(), BELOW, cols);
}

/* What each pest did, in a paragraph or two. */
static void add_pests(const struct season_page *p, int cols, struct buf *out)
{
	struct buf text = { 0 };

	for (size_t i = 0; i < p->n_pests; i++) {
		const struct flight_view *v = &p->pests[i].all;

		buf_add(out, "\n");
		season_say_hot(&p->pests[i], &text);
		end_line(&text, 0, cols, out);
		paper_wrap(out, v->biofix.set, BELOW, cols);
		if (v->heat.state != HEAT_NO_BIOFIX)
			add_named(_("since biofix"), v->heat_text, cols, out);
	}
	buf_free(&text);
}

static void add_head(const struct season_page *p, const struct season_form *form,
	int cols, struct buf *out)
{
	struct buf text = { 0 };

	season_say_title(p, &text);
	end_line(&text, 0, cols, out);
	season_say_days(p, form, &text);
	end_line(&text, 0, cols, out);
	paper_wrap(out, p->says, 0, cols);
	if (p->n_charts > 0)
		add_glance(p, cols, out);
	add_pests(p, cols, out);
	if (p->bare)
		add_heading(p->bare, cols, out);
	buf_free(&text);
}

static void add_flights(const struct flight_view *v, int cols, struct buf *out)
{
	const char *cells[SEASON_FLIGHT];
	struct grid g = { 0 };
	struct buf flags = { 0 };

	if (v->n_rows == 0)
		return;
	season_flight_cells(NULL, cells);
	for (size_t i = 0; i < season_flight_columns(v); i++)
		grid_column(&g, cells[i], i == 0 ? GRID_TEXT : GRID_NUMBER, 4);
	for (size_t i = 0; i < v->n_rows; i++) {
		season_flight_cells(&v->rows[i], cells);
		grid_note(&g, cells);
	}
	grid_fit(&g, cols);
	grid_line(&g, NULL, out);
	for (size_t i = 0; i < v->n_rows; i++) {
		season_flight_cells(&v->rows[i], cells);
		grid_line(&g, cells, out);
	}
	season_say_flags(v, &flags);
	end_line(&flags, BELOW, cols, out);
	buf_free(&flags);
}

/* Those that nobody answered in one paragraph, then each that was with its answer. */
static void add_alerts(const struct season_chart *c, int cols, struct buf *out)
{
	struct buf text = { 0 }, piece = { 0 };

	for (size_t i = 0; i < c->n_alerts; i++) {
		buf_clear(&piece);
		season_say_open(c, i, &piece);
		if (piece.n)
			buf_addf(&text, "%s%s", text.n ? " " : "", piece.text);
	}
	if (text.n)
		end_line(&text, BELOW, cols, out);
	for (size_t i = 0; i < c->n_alerts; i++) {
		if (!c->alerts[i].is_answered)
			continue;
		season_say_answer(&c->alerts[i], &text);
		add_dated(c->alerts[i].day_text, &text, cols, out);
	}
	buf_free(&text);
	buf_free(&piece);
}

static void add_chart(const struct season_page *p, const struct season_chart *c,
	int cols, struct buf *out)
{
	struct buf text = { 0 };

	buf_addf(&text, "%s \302\267 %s", c->block_name, c->pest_code);
	add_heading(text.text, cols, out);
	buf_clear(&text);
	paper_wrap(out, c->about, BELOW, cols);
	paper_wrap(out, c->flight.says, BELOW, cols);
	season_text_lines(p, c, cols, out);
	add_flights(&c->flight, cols, out);
	season_say_limits(c, &text);
	end_line(&text, BELOW, cols, out);
	season_say_lures(c, &text);
	end_line(&text, BELOW, cols, out);
	season_say_over(c, &text);
	end_line(&text, BELOW, cols, out);
	add_alerts(c, cols, out);
	buf_free(&text);
}

static void add_pest(const struct season_page *p, const struct season_pest *s, int cols,
	struct buf *out)
{
	const struct flight_view *v = &s->all;

	add_heading(s->name, cols, out);
	add_named(_("suggested"), v->biofix.suggested, cols, out);
	add_named(_("earlier seasons"), v->biofix.earlier, cols, out);
	if (s->n > 1 && v->n_rows > 0) {
		paper_wrap(out, _("All blocks together"), BELOW, cols);
		add_flights(v, cols, out);
	}
	for (size_t i = 0; i < s->n; i++)
		add_chart(p, &p->charts[s->first + i], cols, out);
}

static void add_hot(const struct season_pest *s, int cols, struct buf *out)
{
	const struct hot_view *v = &s->hot;
	struct buf text = { 0 };

	buf_addf(&text, _("Where it is hot: %s"), s->name);
	add_heading(text.text, cols, out);
	buf_free(&text);
	paper_wrap(out, v->window, BELOW, cols);
	paper_wrap(out, v->left_out, BELOW, cols);
	paper_wrap(out, v->says, BELOW, cols);
	for (size_t i = 0; i < v->n; i++) {
		if (v->rows[i].what != HOT_OF_BLOCK)
			continue;
		add_named(v->rows[i].name, v->rows[i].says, cols, out);
		if (v->rows[i].grade >= HOT_WATCH)
			paper_wrap(out, v->rows[i].earlier, 2 * BELOW, cols);
	}
	if (v->n_traps >= MAP_LEAST)
		hotspots_map(v, cols, out);
	for (size_t i = 0; i < v->n_sources; i++)
		paper_wrap(out, v->sources[i].says, BELOW, cols);
}

static void add_acts(const struct season_page *p, int cols, struct buf *out)
{
	struct buf text = { 0 };

	add_heading(_("What was done"), cols, out);
	for (size_t i = 0; i < p->n_acts; i++) {
		season_say_act(&p->acts[i], &text);
		add_dated(p->acts[i].day_text, &text, cols, out);
	}
	if (p->n_acts == 0)
		paper_wrap(out, season_no_acts(), BELOW, cols);
	buf_free(&text);
}

static void add_end(const struct season_page *p, const struct season_form *form,
	int cols, struct buf *out)
{
	struct buf text = { 0 };

	if (p->n_sources > 0) {
		add_heading(_("Sources"), cols, out);
		paper_wrap(out, season_as_of_now(), BELOW, cols);
	}
	for (size_t i = 0; i < p->n_sources; i++) {
		season_say_source(p, i, &text);
		end_line(&text, BELOW, cols, out);
	}
	buf_free(&text);
	add_heading(_("Cautions"), cols, out);
	for (const char *const *c = form->cautions; *c; c++)
		paper_wrap(out, *c, BELOW, cols);
}

void paper_season(const struct season_page *p, const struct season_form *form, int cols,
	struct buf *out)
{
	cols = cols < COLS_MOST ? cols : COLS_MOST;
	add_head(p, form, cols, out);
	add_acts(p, cols, out);
	for (size_t i = 0; i < p->n_pests; i++)
		add_pest(p, &p->pests[i], cols, out);
	if (p->n_charts > 0)
		add_heading(
			_("Flight lines: a mark for each week, the mean of the block's "
			  "traps, both seasons on one scale; _ counted none, \u00b7 "
			  "nobody looked, + at least (a full card, counts not "
			  "settled)."),
			cols, out);
	for (size_t i = 0; i < p->n_pests; i++)
		add_hot(&p->pests[i], cols, out);
	if (p->n_pests > 0)
		paper_wrap(out, season_hot_caution(), BELOW, cols);
	add_end(p, form, cols, out);
}
