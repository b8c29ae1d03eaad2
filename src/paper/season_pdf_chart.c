/* A block's part of the season page: the plot, its flights, what it was judged by, what
 * was over. */
#include "ruled.h"
#include "season_parts.h"
#include "season_words.h"

#include "base/words.h"

#include <stdio.h>

static const double indent = 4, day_w = 22;

static void lay_out_flights(
	struct ruled *r, const struct leaf *l, const struct flight_view *v)
{
	const char *cells[SEASON_FLIGHT];

	season_flight_cells(NULL, cells);
	for (size_t i = 0; i < season_flight_columns(v); i++)
		ruled_column(r, cells[i], i == 0 ? PDF_LEFT : PDF_RIGHT);
	for (size_t i = 0; i < v->n_rows; i++) {
		season_flight_cells(&v->rows[i], cells);
		ruled_note(r, l->pdf, cells);
	}
	ruled_fit(r, l);
}

void season_flights(struct leaf *l, const struct flight_view *v)
{
	const char *cells[SEASON_FLIGHT];
	struct ruled r = { 0 };

	if (v->n_rows == 0)
		return;
	lay_out_flights(&r, l, v);
	ruled_begin(&r, l, 2 * ruled_row_height(l));
	for (size_t i = 0; i < v->n_rows; i++) {
		season_flight_cells(&v->rows[i], cells);
		leaf_need(l, 2 * ruled_row_height(l));
		ruled_row(&r, l, false, cells);
		leaf_words(l, indent, &leaf_small, v->rows[i].flags);
	}
	ruled_end(l);
}

/* The day, and beside it what was over on it; below that what was answered. */
static size_t set_alerts_of_day(
	struct leaf *l, const struct season_chart *c, size_t first)
{
	struct buf text = { 0 };
	size_t end = season_say_alerts(c, first, &text);

	leaf_need(l, pdf_text_height(l->pdf, l->body.w - day_w, &leaf_plain,
			     text.n ? text.text : "1"));
	pdf_text(l->pdf, (struct pdf_box){ l->body.x, l->y, day_w, 0 }, &leaf_plain,
		c->alerts[first].day_text);
	season_set(l, day_w, &leaf_plain, &text);
	for (size_t i = first; i < end; i++) {
		if (!c->alerts[i].is_answered)
			continue;
		season_say_answer(&c->alerts[i], &text);
		season_set(l, day_w, &leaf_plain, &text);
	}
	buf_free(&text);
	return end;
}

static void set_judged(struct leaf *l, const struct season_chart *c)
{
	struct buf text = { 0 };

	season_say_limits(c, &text);
	season_set(l, 0, &leaf_small, &text);
	season_say_lures(c, &text);
	season_set(l, 0, &leaf_small, &text);
	leaf_need(l, 2 * ruled_row_height(l));
	season_say_over(c, &text);
	season_set(l, 0, c->n_alerts > 0 ? &leaf_bold : &leaf_plain, &text);
	buf_free(&text);
	for (size_t i = 0; i < c->n_alerts;)
		i = set_alerts_of_day(l, c, i);
}

void season_chart_part(
	struct leaf *l, const struct season_page *p, const struct season_chart *c)
{
	char name[NAME_BYTES + CODE_BYTES + 4];
	double rows = ruled_row_height(l) * (double)(2 * c->flight.n_rows + 3);

	snprintf(name, sizeof name, "%s \302\267 %s", c->block_name, c->pest_code);
	leaf_heading(l, name, season_plot_height + rows);
	leaf_words(l, 0, &leaf_small, c->about);
	leaf_words(l, 0, &leaf_plain, c->flight.says);
	if (p->from != DAY_NONE && c->first_day != DAY_NONE)
		season_plot(l, p, c);
	season_flights(l, &c->flight);
	set_judged(l, c);
}
