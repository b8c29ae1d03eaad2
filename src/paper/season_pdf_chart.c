/* season_pdf_chart.c - a block's part of the season page: the plot, beside it its
 * flights and thresholds, below them what was over. */
#include "ruled.h"
#include "season_parts.h"
#include "season_words.h"

#include "base/words.h"

#include <stdio.h>

/* Millimetres, and how much of the width the plot has. */
static const double plot_share = 0.6, between = 3, day_w = 22, piece_gap = 1.6;
static const double label_w = 13, cell_w_most = 17, cell_gap = 0.8, row_h = 3.1;

static const struct pdf_type name_type = { .points = 10.5, .bold = true };
static const struct pdf_type about_type = {
	.points = 8, .align = PDF_RIGHT, .fit = PDF_SHRINK
};
static const struct pdf_type piece_type = { .points = 8, .fit = PDF_SHRINK };
static const struct pdf_type piece_bold = {
	.points = 8, .bold = true, .fit = PDF_SHRINK
};

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
	struct ruled r = { .points = leaf_small.points + 0.5 };
	struct buf flags = { 0 };

	if (v->n_rows == 0)
		return;
	lay_out_flights(&r, l, v);
	ruled_begin(&r, l, ruled_row_height(l));
	for (size_t i = 0; i < v->n_rows; i++) {
		season_flight_cells(&v->rows[i], cells);
		leaf_need(l, ruled_height(&r, l, false, cells));
		ruled_row(&r, l, false, cells);
	}
	ruled_end(l);
	season_say_flags(v, &flags);
	season_set(l, 0, &leaf_small, &flags);
	buf_free(&flags);
}

/* A flight to a column: beside the plot there is no room for a flight to a row. */
static void set_upright(struct leaf *l, const struct flight_view *v)
{
	const char *titles[SEASON_FLIGHT], *cells[SEASON_FLIGHT];
	double w = (l->body.w - label_w) / (double)v->n_rows;
	struct pdf_type type = { .points = 8, .fit = PDF_SHRINK };

	w = w > cell_w_most ? cell_w_most : w;
	season_flight_cells(NULL, titles);
	for (size_t i = 0; i < season_flight_columns(v); i++, l->y += row_h) {
		struct pdf_box box = { l->body.x, l->y, label_w - cell_gap, 0 };
		type.align = PDF_LEFT;
		type.bold = i == 0;
		if (i > 0)
			pdf_text(l->pdf, box, &type, titles[i]);
		type.align = PDF_RIGHT;
		box.x += label_w;
		box.w = w - cell_gap;
		for (size_t k = 0; k < v->n_rows; k++, box.x += w) {
			season_flight_cells(&v->rows[k], cells);
			pdf_text(l->pdf, box, &type, cells[i]);
		}
	}
	l->y += cell_gap;
}

/* What a block's part says in words beside and below its plot. */
struct said {
	struct buf limits, flags, lures, over;
};

static void say(const struct season_chart *c, struct said *s)
{
	season_say_limits(c, &s->limits);
	season_say_flags(&c->flight, &s->flags);
	season_say_lures(c, &s->lures);
	season_say_over(c, &s->over);
}

static void forget(struct said *s)
{
	buf_free(&s->limits);
	buf_free(&s->flags);
	buf_free(&s->lures);
	buf_free(&s->over);
}

static bool has_plot(const struct season_page *p, const struct season_chart *c)
{
	return p->from != DAY_NONE && c->first_day != DAY_NONE;
}

/* Of what stands beside the plot, and of both. */
static double beside_height(const struct leaf *l, const struct season_page *p,
	const struct season_chart *c, const struct said *s)
{
	double w = has_plot(p, c) ? l->body.w * (1 - plot_share) - between : l->body.w;
	double rows = c->flight.n_rows ? row_h * (double)SEASON_FLIGHT + cell_gap : 0;

	return rows + pdf_text_height(l->pdf, w, &leaf_small, c->flight.says) +
	       pdf_text_height(l->pdf, w, &leaf_small, s->limits.text) +
	       pdf_text_height(l->pdf, w, &leaf_small, s->lures.text) + 2;
}

static double top_height(const struct leaf *l, const struct season_page *p,
	const struct season_chart *c, const struct said *s)
{
	double beside = beside_height(l, p, c, s);
	double plot = has_plot(p, c) ? season_plot_height : 0;

	return beside > plot ? beside : plot;
}

/* The plot to the left, its numbers to the right of it. */
static void set_top(struct leaf *l, const struct season_page *p,
	const struct season_chart *c, const struct said *s)
{
	const struct pdf_box body = l->body;
	double top = l->y, h = top_height(l, p, c, s);

	if (has_plot(p, c)) {
		l->body.w = body.w * plot_share;
		season_plot(l, p, c);
		l->body.x += l->body.w + between;
		l->body.w = body.w - l->body.w - between;
	}
	l->y = top;
	if (c->flight.n_rows > 0)
		set_upright(l, &c->flight);
	leaf_words(l, 0, &leaf_small, c->flight.says);
	leaf_words(l, 0, &leaf_small, s->limits.text);
	leaf_words(l, 0, &leaf_small, s->lures.text);
	l->body = body;
	l->y = top + h;
}

/* Pieces one behind the other, none of them broken between two lines. */
struct flow {
	double x; /* where the next one begins */
	int lines;
	bool is_dry; /* counts the lines alone */
};

static void set_piece(
	struct leaf *l, struct flow *f, const struct pdf_type *type, const char *text)
{
	double w = pdf_text_width(l->pdf, type, text);
	double line = pdf_text_height(l->pdf, w, &piece_bold, "1");

	w = w > l->body.w ? l->body.w : w;
	if (f->lines == 0 || f->x + w > l->body.w) {
		l->y += f->lines && !f->is_dry ? line : 0;
		f->x = 0;
		f->lines++;
		if (!f->is_dry)
			leaf_need(l, line);
	}
	if (!f->is_dry)
		pdf_text(l->pdf, (struct pdf_box){ l->body.x + f->x, l->y, w + 0.1, 0 },
			type, text);
	f->x += w + piece_gap;
}

/* How often it was over, and what nobody answered. Returns the lines that it takes. */
static int flow_open(
	struct leaf *l, const struct season_chart *c, const char *over, bool is_dry)
{
	struct flow f = { .is_dry = is_dry };
	struct buf text = { 0 };

	if (*over)
		set_piece(l, &f, c->n_alerts > 0 ? &piece_bold : &piece_type, over);
	for (size_t i = 0; i < c->n_alerts; i++) {
		buf_clear(&text);
		season_say_open(c, i, &text);
		if (text.n)
			set_piece(l, &f, &piece_type, text.text);
	}
	if (f.lines && !is_dry)
		l->y += pdf_text_height(l->pdf, l->body.w, &piece_bold, "1");
	buf_free(&text);
	return f.lines;
}

static void set_answers(struct leaf *l, const struct season_chart *c)
{
	struct buf text = { 0 };

	for (size_t i = 0; i < c->n_alerts; i++) {
		if (!c->alerts[i].is_answered)
			continue;
		season_say_answer(&c->alerts[i], &text);
		leaf_need(l, pdf_text_height(l->pdf, l->body.w - day_w, &piece_type,
				     text.text));
		pdf_text(l->pdf, (struct pdf_box){ l->body.x, l->y, day_w, 0 },
			&piece_type, c->alerts[i].day_text);
		season_set(l, day_w, &(struct pdf_type){ .points = piece_type.points },
			&text);
	}
	buf_free(&text);
}

static double below_height(
	struct leaf *l, const struct season_chart *c, const struct said *s)
{
	double line = pdf_text_height(l->pdf, l->body.w, &piece_bold, "1");

	return pdf_text_height(l->pdf, l->body.w, &leaf_small, s->flags.text) + 1 +
	       line * flow_open(l, c, s->over.text, true);
}

static void set_below(
	struct leaf *l, const struct season_chart *c, const struct said *s)
{
	leaf_words(l, 0, &leaf_small, s->flags.text);
	flow_open(l, c, s->over.text, false);
	set_answers(l, c);
}

/* The name, and what kind of block it is at the other end of the line. */
static void set_name(struct leaf *l, const struct season_chart *c)
{
	char name[NAME_BYTES + CODE_BYTES + 4];
	struct pdf_box box = l->body;

	snprintf(name, sizeof name, "%s \302\267 %s", c->block_name, c->pest_code);
	box.y = l->y;
	box.h = 0;
	double h = pdf_text(l->pdf, box, &name_type, name);
	double used = pdf_text_width(l->pdf, &name_type, name) + between;
	box.y += h - pdf_text_height(l->pdf, box.w, &about_type, "1") - 0.3;
	box.x += used;
	box.w -= used;
	pdf_text(l->pdf, box, &about_type, c->about);
	l->y += h;
}

/* Of what stays on one page: all of it, unless that is more than a page has. */
static double part_height(struct leaf *l, const struct season_page *p,
	const struct season_chart *c, const struct said *s)
{
	double top = pdf_text_height(l->pdf, l->body.w, &name_type, "1") +
		     top_height(l, p, c, s);
	double all = top + below_height(l, c, s);

	return all < l->body.h ? all : top;
}

void season_chart_part(
	struct leaf *l, const struct season_page *p, const struct season_chart *c)
{
	struct said s = { 0 };

	say(c, &s);
	leaf_gap(l, between);
	leaf_need(l, part_height(l, p, c, &s));
	set_name(l, c);
	set_top(l, p, c, &s);
	set_below(l, c, &s);
	forget(&s);
}
