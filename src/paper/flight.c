#include "paper/flight.h"

#include "base/text.h"
#include "base/words.h"
#include "flight_parts.h"
#include "grid.h"
#include "paper/ascii.h"

#include <stdio.h>
#include <string.h>

static void add_head(const struct flight_view *v, int cols, struct buf *out)
{
	int right = text_cols(v->right);

	if (text_cols(v->title) + right + 2 <= cols) {
		buf_add_field(out, v->title, cols - right);
		buf_addf(out, "%s\n", v->right);
	} else {
		paper_wrap(out, v->title, 0, cols);
		paper_wrap(out, v->right, 0, cols);
	}
	paper_wrap(out, v->says, 0, cols);
	buf_add(out, "\n");
}

static void add_named(struct buf *out, const char *name, const char *text, int cols)
{
	struct buf line = { 0 };

	if (!*text)
		return;
	buf_addf(&line, "%s: %s", name, text);
	paper_wrap(out, line.text, 2, cols);
	buf_free(&line);
}

static void add_biofix(const struct flight_view *v, int cols, struct buf *out)
{
	const struct flight_biofix *b = &v->biofix;

	if (v->ask.farm == 0) /* a biofix is a farm's */
		return;
	buf_add(out, "\n");
	paper_wrap(out, b->set, 0, cols);
	add_named(out, _("suggested"), b->suggested, cols);
	if (b->rule && *b->rule->source)
		add_named(out, _("that rule's source"), b->rule->source, cols);
	add_named(out, _("earlier seasons"), b->earlier, cols);
	if (v->heat.state != HEAT_NO_BIOFIX)
		add_named(out, _("since biofix"), v->heat_text, cols);
}

enum { COLUMNS = 9, COLS_MOST = 78 };

static void cells_of(const struct flight_row *r, const char *cells[static COLUMNS])
{
	const char *const all[COLUMNS] = { r->name, r->first, r->peak, r->peak_rate,
		r->d10, r->d50, r->d90, r->moths, r->dd50 };

	for (size_t i = 0; i < COLUMNS; i++)
		cells[i] = all[i];
}

/* A column that no row needs, and on a narrow page those that others stand for, are
 * left out. */
static void lay_out(const struct flight_view *v, int cols, struct grid *g)
{
	static const char *const titles[COLUMNS] = { N_("flight"), N_("first"),
		N_("peak"), N_("a week"), N_("10 %"), N_("50 %"), N_("90 %"),
		N_("moths"), N_("dd 50 %") };
	const char *cells[COLUMNS];
	bool has_heat = false;

	for (size_t i = 0; i < COLUMNS; i++)
		grid_column(g, _(titles[i]), i == 0 ? GRID_TEXT : GRID_NUMBER, 4);
	for (size_t i = 0; i < v->n_rows; i++) {
		cells_of(&v->rows[i], cells);
		grid_note(g, cells);
		has_heat = has_heat || *v->rows[i].dd50;
	}
	if (!has_heat)
		g->column[8].cols = 0;
	if (cols < 64)
		g->column[4].cols = g->column[6].cols = 0;
	if (cols < 52)
		g->column[1].cols = g->column[8].cols = 0;
	grid_fit(g, cols);
}

static void add_flights(const struct flight_view *v, int cols, struct buf *out)
{
	struct grid g = { 0 };
	const char *cells[COLUMNS];

	if (v->n_rows == 0)
		return;
	buf_add(out, "\n");
	lay_out(v, cols, &g);
	grid_line(&g, NULL, out);
	for (size_t i = 0; i < v->n_rows; i++) {
		cells_of(&v->rows[i], cells);
		grid_line(&g, cells, out);
		paper_wrap(out, v->rows[i].flags, 4, cols);
	}
	paper_wrap(out,
		_("first, peak: first day of the week; 10, 50, 90 %: the day by which "
		  "that share of the flight was caught"),
		0, cols);
}

static void add_event(const struct event *ev, int cols, struct buf *out)
{
	struct buf line = { 0 };

	buf_addf(&line, "%s, %s: %s", ev->text, ev->at, ev->when);
	paper_wrap(out, line.text, 2, cols);
	buf_free(&line);
}

/* Events that have passed, or have not. A source is said once for those in a row that
 * have it. */
static void add_events(
	const struct flight_view *v, bool passed, int cols, struct buf *out)
{
	const struct event *last = NULL;

	for (size_t i = 0; i < v->events.n; i++) {
		const struct event *ev = &v->events.items[i];

		if (ev->passed != passed)
			continue;
		if (!last)
			buf_addf(out, "\n%s\n", passed ? _("Passed") : _("Next"));
		else if (strcmp(last->source, ev->source) != 0)
			paper_wrap(out, last->source, 4, cols);
		add_event(ev, cols, out);
		last = ev;
	}
	if (last)
		paper_wrap(out, last->source, 4, cols);
}

static void say_unknown(const struct flight_view *v, int cols, struct buf *out)
{
	struct buf line = { 0 };

	buf_addf(&line, _("What comes next is not known: %s"), v->events.none);
	buf_add(out, "\n");
	paper_wrap(out, line.text, 0, cols);
	buf_free(&line);
}

static void add_next(const struct flight_view *v, int cols, struct buf *out)
{
	if (v->ask.farm == 0)
		return;
	if (v->events.n == 0) {
		say_unknown(v, cols, out);
		return;
	}
	add_events(v, false, cols, out);
	add_events(v, true, cols, out);
	paper_wrap(out,
		_("These sums were published for their own places. Timing is local: ask "
		  "the extension service; the product label is the law."),
		0, cols);
}

void paper_flight(const struct flight_view *v, int cols, struct buf *out)
{
	cols = cols < COLS_MOST ? cols : COLS_MOST;
	add_head(v, cols, out);
	flight_chart(v, cols, out);
	add_flights(v, cols, out);
	add_biofix(v, cols, out);
	add_next(v, cols, out);
}
