/* season_plot.c - the plot of a block's season: a bar for each week, last season's
 * line, each trap's catches as dots, thresholds. */
#include "season_parts.h"
#include "season_words.h"

#include "base/text.h"
#include "base/words.h"

#include <math.h>
#include <stdio.h>

enum { A_WEEK = 7, STEPS_MOST = 5 };

const double season_plot_height = 37.2;
static const double plot_h = 24, left = 10, right = 13, head = 6;
static const double name_beyond = 4; /* of the axis of catches, above and below it */
static const double label_w = 9, label_h = 3, least_label_gap = 10.5;
static const double top_label_w = 8; /* with its mark */
static const double bar_share = 0.7, dot_size = 1.1, dots_above = 2.5;

static const struct pdf_type tiny_left = { .points = 6.5 };
static const struct pdf_type tiny_middle = { .points = 6.5, .align = PDF_CENTRE };
static const struct pdf_type tiny_right = {
	.points = 6.5, .align = PDF_RIGHT, .middle = true
};

double season_x(const struct season_scale *s, int32_t day)
{
	return s->box.x + s->box.w * (day - s->from) / (s->to - s->from);
}

double season_y(const struct season_scale *s, double rate)
{
	return s->box.y + s->box.h * (1 - rate / s->top);
}

const struct flight_line *season_last_year(const struct season_chart *c)
{
	return c->flight.n_earlier > 0 ? &c->flight.earlier[0] : NULL;
}

static double highest_of(const struct flight_line *l, double top)
{
	for (size_t k = 0; l && k < l->n; k++)
		top = fmax(top, l->rate[k]);
	return top;
}

/* One trap, or one week of last season, that stands far above all else must not press
 * it flat: it is set at the top with its number. */
static double highest(const struct season_chart *c)
{
	double top = highest_of(&c->flight.now, 0), most;
	double last = highest_of(season_last_year(c), 0);

	for (size_t i = 0; i < c->n_limits; i++)
		top = fmax(top, c->limits[i].rate);
	if (top <= 0 || last <= top * dots_above)
		top = fmax(top, last);
	most = top;
	for (size_t i = 0; i < c->n_dots; i++)
		if (c->dots[i].rate <= top * dots_above)
			most = fmax(most, c->dots[i].rate);
	return most;
}

/* 1, 2 or 5 times a power of ten, at most STEPS_MOST of them up to the highest. */
static double step_for(double top)
{
	static const double of[] = { 1, 2, 5 };
	double power = pow(10, floor(log10(top / STEPS_MOST)) - 1);

	for (int i = 0;; i++) {
		double step = power * of[i % 3];
		if (step * STEPS_MOST >= top * (1 - 1e-9))
			return step;
		if (i % 3 == 2)
			power *= 10;
	}
}

static struct season_scale scale_of(
	const struct leaf *l, const struct season_page *p, const struct season_chart *c)
{
	double top = highest(c);
	struct season_scale s = {
		.box = { l->body.x + left, l->y + head, l->body.w - left - right,
			plot_h },
		.from = p->from,
		.to = p->to,
	};

	s.step = step_for(top > 0 ? top : 1);
	s.top = fmax(s.step, ceil(top / s.step - 1e-9) * s.step);
	return s;
}

static void set_catch_axis(struct leaf *l, const struct season_scale *s)
{
	const struct pdf_pen faint = { .width = 0.15, .grey = 0.7 };
	const struct pdf_pen axis = { .width = 0.25 };
	char text[SAY_SHORT];

	for (int i = 0; s->step * i <= s->top * (1 + 1e-9); i++) {
		double y = season_y(s, s->step * i);
		words_print(text, sizeof text, "%.4g", s->step * i);
		pdf_text(l->pdf,
			(struct pdf_box){ s->box.x - label_w - 1, y - label_h / 2,
				label_w, label_h },
			&tiny_right, text);
		if (i > 0)
			pdf_line(l->pdf, (struct pdf_at){ s->box.x, y },
				(struct pdf_at){ s->box.x + s->box.w, y }, &faint);
	}
	pdf_line(l->pdf, (struct pdf_at){ s->box.x, s->box.y },
		(struct pdf_at){ s->box.x, s->box.y + s->box.h }, &axis);
	pdf_text_upward(l->pdf,
		(struct pdf_box){ l->body.x - 1, s->box.y - name_beyond, label_h,
			s->box.h + 2 * name_beyond },
		&tiny_middle, _("moths a trap and week"));
}

static double week_width(const struct season_scale *s)
{
	return s->box.w * A_WEEK / (s->to - s->from);
}

/* A tick where each week begins, its date below as many as have room. */
static void set_week_axis(
	struct leaf *l, const struct season_scale *s, const struct season_chart *c)
{
	const struct pdf_pen pen = { .width = 0.2 };
	double foot = s->box.y + s->box.h;
	int every = (int)ceil(least_label_gap / week_width(s));
	int first = (s->from - c->first_day) / A_WEEK;
	char text[DAY_TEXT_SIZE];

	for (int k = first;; k++) {
		int32_t day = c->first_day + A_WEEK * k;
		double x = season_x(s, day);
		if (day > s->to)
			return;
		if (day < s->from)
			continue;
		pdf_line(l->pdf, (struct pdf_at){ x, foot },
			(struct pdf_at){ x, foot + 1 }, &pen);
		if (k % every != 0 || x + label_w / 2 > l->body.x + l->body.w)
			continue;
		season_say_day(day, text);
		pdf_text(l->pdf,
			(struct pdf_box){ x - label_w / 2, foot + 1.1, label_w, 0 },
			&tiny_middle, text);
	}
}

struct bar {
	double x, w, y, foot;
};

static struct bar bar_of(const struct season_scale *s, int32_t first, double rate)
{
	double w = week_width(s);

	return (struct bar){ season_x(s, first) + w * (1 - bar_share) / 2,
		w * bar_share, season_y(s, rate), s->box.y + s->box.h };
}

/* Its top stays open where the catch was at least this. */
static void set_bar(struct leaf *l, const struct bar *b, bool is_open)
{
	const struct pdf_pen pen = { .width = 0.3 };
	const struct pdf_at corners[] = { { b->x, b->y }, { b->x, b->foot },
		{ b->x + b->w, b->foot }, { b->x + b->w, b->y }, { b->x, b->y } };

	pdf_lines(l->pdf, corners, is_open ? 4 : 5, &pen);
	if (is_open)
		pdf_put_mark(l->pdf, (struct pdf_at){ b->x + b->w + 0.9, b->y },
			PDF_PLUS, 1.4);
}

/* Counted, even if none: a thick foot. Nobody looked: a question mark. */
static void set_week(struct leaf *l, const struct season_scale *s,
	const struct season_chart *c, size_t k)
{
	const struct flight_line *now = &c->flight.now;
	const struct pdf_pen thick = { .width = 0.6 };
	struct bar b = bar_of(s, c->first_day + A_WEEK * (int32_t)k,
		now->rate[k] > 0 ? now->rate[k] : 0);

	if (now->rate[k] < 0) {
		pdf_text(l->pdf,
			(struct pdf_box){ b.x, b.foot - label_h, b.w, label_h },
			&tiny_middle, "?");
		return;
	}
	pdf_line(l->pdf, (struct pdf_at){ b.x, b.foot },
		(struct pdf_at){ b.x + b.w, b.foot }, &thick);
	if (now->rate[k] > 0 || now->at_least[k])
		set_bar(l, &b, now->at_least[k]);
}

/* Below all else; the outlines come on top of last season's line. */
static void fill_bars(
	struct leaf *l, const struct season_scale *s, const struct season_chart *c)
{
	const struct flight_line *now = &c->flight.now;

	for (size_t k = 0; k < now->n; k++) {
		struct bar b =
			bar_of(s, c->first_day + A_WEEK * (int32_t)k, now->rate[k]);
		if (now->rate[k] > 0)
			pdf_fill(l->pdf,
				(struct pdf_box){ b.x, b.y, b.w, b.foot - b.y },
				PDF_TINT);
	}
}

static bool take_top(struct season_tops *t, double x)
{
	for (size_t i = 0; i < t->n; i++)
		if (fabs(t->x[i] - x) < top_label_w)
			return false;
	if (t->n == SEASON_TOPS)
		return false;
	t->x[t->n++] = x;
	return true;
}

/* At the top, for what is higher than the chart. */
static void set_above(struct leaf *l, const struct season_scale *s, double x,
	enum pdf_mark mark, const char *text)
{
	double y = s->box.y - 1;

	pdf_put_mark(l->pdf, (struct pdf_at){ x, y }, mark,
		mark == PDF_DOT ? dot_size : dot_size * 1.6);
	if (take_top(s->tops, x))
		pdf_text(l->pdf, (struct pdf_box){ x + 1.2, y - 1.3, label_w, 0 },
			&tiny_left, text);
}

static bool is_above(const struct season_scale *s, double rate)
{
	return rate > s->top * (1 + 1e-9);
}

static void set_last_mark(struct leaf *l, const struct season_scale *s,
	const struct flight_line *line, size_t k, struct pdf_at at)
{
	char text[SAY_SHORT];

	if (is_above(s, line->rate[k])) {
		words_print(text, sizeof text, "%.1f%s", line->rate[k],
			line->at_least[k] ? "+" : "");
		set_above(l, s, at.x, PDF_RING, text);
	} else {
		pdf_put_mark(l->pdf, at, line->at_least[k] ? PDF_PLUS : PDF_RING, 1.4);
	}
}

/* Weeks first..end-1 in a row that were read. */
static void set_run(struct leaf *l, const struct season_scale *s,
	const struct season_chart *c, size_t first, size_t end)
{
	const struct flight_line *line = season_last_year(c);
	const struct pdf_pen pen = { .width = 0.35, .dash = PDF_DASHED, .grey = 0.35 };
	struct pdf_at at[FLIGHT_WEEKS_MAX];

	for (size_t k = first; k < end; k++) {
		int32_t day = c->first_day + A_WEEK * (int32_t)k;
		at[k - first] = (struct pdf_at){ season_x(s, day) + week_width(s) / 2,
			season_y(s, line->rate[k]) };
		if (line->at_least[k] || end - first == 1 || is_above(s, line->rate[k]))
			set_last_mark(l, s, line, k, at[k - first]);
	}
	pdf_clip(l->pdf, s->box);
	pdf_lines(l->pdf, at, end - first, &pen);
	pdf_unclip(l->pdf);
}

static void set_last_year(
	struct leaf *l, const struct season_scale *s, const struct season_chart *c)
{
	const struct flight_line *line = season_last_year(c);
	size_t first = 0, end;

	for (; line && first < line->n; first = end + 1) {
		for (end = first; end < line->n && line->rate[end] >= 0;)
			end++;
		if (end > first)
			set_run(l, s, c, first, end);
	}
}

/* A trap's catch lies amid the nights that it was made in. */
static void set_dot(
	struct leaf *l, const struct season_scale *s, const struct season_dot *d)
{
	double x = (season_x(s, d->from) + season_x(s, d->day)) / 2;
	enum pdf_mark mark = d->at_least ? PDF_UP_OPEN : PDF_DOT;

	if (is_above(s, d->rate))
		set_above(l, s, x, mark, d->text);
	else
		pdf_put_mark(l->pdf, (struct pdf_at){ x, season_y(s, d->rate) }, mark,
			d->at_least ? dot_size * 1.6 : dot_size);
}

static void set_dots(
	struct leaf *l, const struct season_scale *s, const struct season_chart *c)
{
	for (size_t i = 0; i < c->n_dots; i++)
		if (c->dots[i].from >= s->from && c->dots[i].day <= s->to)
			set_dot(l, s, &c->dots[i]);
}

/* A biofix is a farm's, whichever block's traps are looked at. */
static const struct flight_biofix *biofix_of(const struct season_page *p, int64_t pest)
{
	size_t i = 0;

	while (i + 1 < p->n_pests && p->pests[i].pest != pest)
		i++;
	return &p->pests[i].all.biofix;
}

void season_plot(
	struct leaf *l, const struct season_page *p, const struct season_chart *c)
{
	struct season_scale s = scale_of(l, p, c);
	struct season_tops tops = { .n = 0 };

	s.tops = &tops;
	set_catch_axis(l, &s);
	set_week_axis(l, &s, c);
	fill_bars(l, &s, c);
	set_last_year(l, &s, c);
	for (size_t k = 0; k < c->flight.now.n; k++)
		set_week(l, &s, c, k);
	season_plot_limits(l, &s, c);
	set_dots(l, &s, c);
	season_plot_marks(l, &s, c, biofix_of(p, c->pest));
	l->y += season_plot_height;
}
