/* season_plot_marks.c - in the plot of a block: thresholds and their values, biofix,
 * peaks, what was done. */
#include "season_parts.h"
#include "season_words.h"

#include "base/mem.h"
#include "base/words.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { A_WEEK = 7 };

static const double tag_w = 14, tag_h = 2.7, tag_step = 0.5, row_below = 4.2,
		    biofix_above = 2.9;

static const struct pdf_type bold_tag = { .points = 7, .bold = true };
static const struct pdf_type tag = { .points = 6.5 };
static const struct pdf_type letter = {
	.points = 7, .bold = true, .align = PDF_CENTRE
};

static int32_t within(const struct season_scale *s, int32_t day)
{
	return day < s->from ? s->from : day > s->to ? s->to : day;
}

/* True if a tag at `at` would lie on one of the n that are set. */
static bool is_taken(const struct pdf_at *set, size_t n, struct pdf_at at)
{
	for (size_t i = 0; i < n; i++)
		if (fabs(set[i].x - at.x) < tag_w && fabs(set[i].y - at.y) < tag_h)
			return true;
	return false;
}

/* Where a text of that width begins, at x or as far to the left as it needs. */
static double begin_at(const struct leaf *l, double x, double w)
{
	return fmin(x, l->body.x + l->body.w - w);
}

static void set_tag(struct leaf *l, struct pdf_at at, const char *text)
{
	double w = pdf_text_width(l->pdf, &bold_tag, text);
	double x = begin_at(l, at.x, w);

	pdf_text(l->pdf, (struct pdf_box){ x, at.y, w + 0.5, 0 }, &bold_tag, text);
}

static int by_rate(const void *a, const void *b)
{
	const struct season_limit *x = *(const struct season_limit *const *)a,
				  *y = *(const struct season_limit *const *)b;

	if (x->rate != y->rate)
		return x->rate < y->rate ? -1 : 1;
	return (x->from > y->from) - (x->from < y->from);
}

/* Those that are of a weekly catch, the lowest first. Returns how many. */
static size_t sort_limits(const struct season_scale *s, const struct season_chart *c,
	const struct season_limit **out)
{
	size_t n = 0;

	for (size_t i = 0; i < c->n_limits; i++)
		if (c->limits[i].rate >= 0 && c->limits[i].to > s->from)
			out[n++] = &c->limits[i];
	if (n > 1)
		qsort(out, n, sizeof *out, by_rate);
	return n;
}

/* True if another line with the same value goes on from there: that one has it. */
static bool goes_on(const struct season_limit *const *limits, size_t n, size_t i)
{
	for (size_t k = 0; k < n; k++)
		if (limits[k]->rate == limits[i]->rate &&
			strcmp(limits[k]->text, limits[i]->text) == 0 &&
			limits[k]->from <= limits[i]->to &&
			(limits[k]->to > limits[i]->to ||
				(k > i && limits[k]->to == limits[i]->to)))
			return true;
	return false;
}

/* The value stands at the end of the line, higher where another one stands. */
void season_plot_limits(
	struct leaf *l, const struct season_scale *s, const struct season_chart *c)
{
	const struct pdf_pen single = { .width = 0.45 };
	const struct pdf_pen mean = { .width = 0.45, .dash = PDF_DASH_DOT };
	const struct season_limit **limits = mem_new(c->n_limits, sizeof *limits);
	struct pdf_at *set = mem_new(c->n_limits, sizeof *set);

	size_t n = sort_limits(s, c, limits), n_set = 0;

	for (size_t i = 0; i < n; i++) {
		double y = season_y(s, limits[i]->rate);
		double x = season_x(s, within(s, limits[i]->to));
		pdf_line(l->pdf,
			(struct pdf_at){ season_x(s, within(s, limits[i]->from)), y },
			(struct pdf_at){ x, y }, limits[i]->is_block ? &mean : &single);
		if (goes_on(limits, n, i))
			continue;
		struct pdf_at at = { x + 0.8, y - tag_h / 2 };
		while (is_taken(set, n_set, at))
			at.y -= tag_step;
		set[n_set++] = at;
		set_tag(l, at, limits[i]->text);
	}
	free(limits);
	free(set);
}

/* The days that it must lie in, as far as the traps can tell. */
static void set_suggested(
	struct leaf *l, const struct season_scale *s, const struct biofix *b)
{
	const struct pdf_pen pen = { .width = 0.8 };
	double y = s->box.y - biofix_above;

	if (b->state == BIOFIX_DATED && b->after != DAY_NONE && b->by > s->from &&
		b->after < s->to)
		pdf_line(l->pdf, (struct pdf_at){ season_x(s, within(s, b->after)), y },
			(struct pdf_at){ season_x(s, within(s, b->by)), y }, &pen);
}

static void set_biofix(
	struct leaf *l, const struct season_scale *s, const struct flight_biofix *b)
{
	const struct pdf_pen pen = { .width = 0.35, .dash = PDF_DOTTED };
	int32_t at = b->is_set ? b->day : b->suggestion.by;
	char day[DAY_TEXT_SIZE], text[SAY_LINE];

	set_suggested(l, s, &b->suggestion);
	if ((!b->is_set && b->suggestion.state != BIOFIX_DATED) || at < s->from ||
		at > s->to)
		return;
	double x = season_x(s, at);
	season_say_day(at, day);
	snprintf(text, sizeof text,
		b->is_set ? _("biofix %s") : _("biofix not set, suggested by %s"), day);
	if (b->is_set)
		pdf_line(l->pdf, (struct pdf_at){ x, s->box.y - 5 },
			(struct pdf_at){ x, s->box.y + s->box.h }, &pen);
	double w = pdf_text_width(l->pdf, &tag, text);
	pdf_text(l->pdf,
		(struct pdf_box){ begin_at(l, x + 0.8, w), s->box.y - 6, w + 0.5, 0 },
		&tag, text);
}

/* A letter in the row below the dates. */
struct tagged {
	int32_t day;
	const char *letter;
};

static int by_day(const void *a, const void *b)
{
	const struct tagged *x = a, *y = b;

	return (x->day > y->day) - (x->day < y->day);
}

/* Peaks amid their week, and what was done; by day. Returns how many. */
static size_t collect(const struct season_chart *c, struct tagged *out)
{
	static const char *const letters[] = { [SEASON_LURE] = NC_("chart", "L"),
		[SEASON_TREATED] = NC_("chart", "T"),
		[SEASON_BORDER] = NC_("chart", "Tb"),
		[SEASON_PICKED] = NC_("chart", "H") };
	size_t n = 0;

	for (size_t i = 0; i < c->flight.n_rows; i++)
		out[n++] =
			(struct tagged){ c->flight.rows[i].peak_day + A_WEEK / 2, "P" };
	for (size_t i = 0; i < c->n_marks; i++)
		out[n++] = (struct tagged){ c->marks[i].day,
			words_in(letters[c->marks[i].kind]) };
	if (n > 1)
		qsort(out, n, sizeof *out, by_day);
	return n;
}

/* Those of one place stand beside each other. */
static void set_letters(
	struct leaf *l, const struct season_scale *s, const struct season_chart *c)
{
	struct tagged *all = mem_new(c->flight.n_rows + c->n_marks, sizeof *all);
	double y = s->box.y + s->box.h + row_below, last = 0;

	for (size_t i = 0, n = collect(c, all); i < n; i++) {
		double w = pdf_text_width(l->pdf, &letter, all[i].letter) + 0.6;
		double x = season_x(s, all[i].day) - w / 2;
		if (all[i].day < s->from || all[i].day > s->to)
			continue;
		x = x < last ? last : x;
		pdf_text(
			l->pdf, (struct pdf_box){ x, y, w, 0 }, &letter, all[i].letter);
		last = x + w;
	}
	free(all);
}

static void set_treated(
	struct leaf *l, const struct season_scale *s, const struct season_chart *c)
{
	const struct pdf_pen pen = { .width = 0.25, .dash = PDF_DASH_DOT };

	for (size_t i = 0; i < c->n_marks; i++) {
		const struct season_mark *m = &c->marks[i];
		double x = season_x(s, m->day);
		if ((m->kind == SEASON_TREATED || m->kind == SEASON_BORDER) &&
			m->day >= s->from && m->day <= s->to)
			pdf_line(l->pdf, (struct pdf_at){ x, s->box.y },
				(struct pdf_at){ x, s->box.y + s->box.h }, &pen);
	}
}

void season_plot_marks(struct leaf *l, const struct season_scale *s,
	const struct season_chart *c, const struct flight_biofix *b)
{
	set_treated(l, s, c);
	set_biofix(l, s, b);
	set_letters(l, s, c);
}
