/* season_pdf_glance.c - the first page of the season, which stands alone: all blocks in
 * a table with their season as small bars, what each pest did, the maps. */
#include "ruled.h"
#include "season_parts.h"
#include "season_words.h"

#include "base/words.h"

#include <math.h>
#include <stdio.h>

/* Cells of the table: those that the text has too, and the bars among them. */
enum { BARS = 2, CELLS = SEASON_GLANCE + 1, A_WEEK = 7 };

/* Millimetres. */
static const double bars_w = 36, row_least = 5.2, row_air = 0.6, bars_share = 0.8,
		    bars_air = 1.1;
static const double map_between = 5, map_most = 66, map_least = 45;
static const double points = 8, gap = 1.8;

static void cells_of(const struct season_chart *c, const char *out[static CELLS])
{
	const char *cells[SEASON_GLANCE];

	season_glance_cells(c, cells);
	for (size_t i = 0; i < CELLS; i++)
		out[i] = i == BARS ? "" : cells[i > BARS ? i - 1 : i];
}

static bool is_number(size_t column)
{
	return column == 3 || column == 6 || column == 7 || column == 8;
}

/* The days that the bars span stand over them. */
static void say_span(const struct season_page *p, struct buf *out)
{
	char from[DAY_TEXT_SIZE], to[DAY_TEXT_SIZE];

	buf_add(out, "");
	if (p->now_to == DAY_NONE)
		return;
	season_say_day(p->from, from);
	season_say_day(p->now_to - 1, to);
	buf_addf(out, _("%s to %s"), from, to);
}

static void lay_out(struct ruled *r, const struct leaf *l, const struct season_page *p,
	const char *span)
{
	const char *cells[CELLS];

	cells_of(NULL, cells);
	cells[BARS] = span;
	for (size_t i = 0; i < CELLS; i++)
		ruled_column(r, cells[i], is_number(i) ? PDF_RIGHT : PDF_LEFT);
	for (size_t i = 0; i < p->n_charts; i++) {
		cells_of(&p->charts[i], cells);
		ruled_note(r, l->pdf, cells);
	}
	if (p->now_to != DAY_NONE)
		r->column[BARS].w = fmax(r->column[BARS].w, bars_w);
	ruled_fit(r, l);
}

/* All blocks of a pest have one scale. */
static double highest(const struct season_page *p, int64_t pest)
{
	double top = 0;

	for (size_t i = 0; i < p->n_charts; i++) {
		const struct flight_line *now = &p->charts[i].flight.now;
		for (size_t k = 0; p->charts[i].pest == pest && k < now->n; k++)
			top = fmax(top, now->rate[k]);
	}
	return top > 0 ? top : 1;
}

/* What was counted has a foot, even if it was nothing. */
static void set_bar(struct leaf *l, struct pdf_box week, double share, bool is_at_least)
{
	const struct pdf_pen foot = { .width = 0.3 };
	const double y = week.y + week.h, h = week.h * share;

	pdf_line(l->pdf, (struct pdf_at){ week.x, y },
		(struct pdf_at){ week.x + week.w, y }, &foot);
	pdf_fill(l->pdf, (struct pdf_box){ week.x, y - h, week.w, h }, PDF_BLACK);
	if (is_at_least)
		pdf_put_mark(l->pdf,
			(struct pdf_at){ week.x + week.w / 2, y - h - 0.6 }, PDF_PLUS,
			1);
}

static void set_bars(struct leaf *l, const struct season_page *p,
	const struct season_chart *c, struct pdf_box box)
{
	const struct flight_line *now = &c->flight.now;
	const double top = highest(p, c->pest);
	const double day_w = box.w / (p->now_to - p->from);
	struct pdf_box week = { 0, box.y + bars_air, A_WEEK * day_w * bars_share,
		box.h - bars_air };

	for (size_t k = 0; k < now->n; k++) {
		int32_t day = c->first_day + A_WEEK * (int32_t)k;
		week.x = box.x + day_w * (day - p->from);
		if (now->rate[k] >= 0 && day >= p->from)
			set_bar(l, week, now->rate[k] / top, now->at_least[k]);
	}
}

static void set_row(struct leaf *l, const struct ruled *r, const struct season_page *p,
	const struct season_chart *c)
{
	const char *cells[CELLS];
	bool is_over = c->n_alerts > 0;

	cells_of(c, cells);
	double h = fmax(ruled_height(r, l, is_over, cells) + 2 * row_air, row_least);
	leaf_need(l, h);
	double y = l->y;
	if (p->now_to != DAY_NONE && c->first_day != DAY_NONE)
		set_bars(l, p, c,
			(struct pdf_box){ ruled_x(r, l, BARS), y, r->column[BARS].w,
				row_least - bars_air });
	l->y += row_air;
	ruled_row(r, l, is_over, cells);
	l->y = y + h;
}

static void set_table(struct leaf *l, const struct season_page *p)
{
	struct ruled r = { .points = points, .gap = gap };
	struct buf span = { 0 };

	say_span(p, &span);
	lay_out(&r, l, p, span.text);
	ruled_begin(&r, l, row_least);
	for (size_t i = 0; i < p->n_charts; i++)
		set_row(l, &r, p, &p->charts[i]);
	ruled_end(l);
	leaf_rule(l, 0.15);
	leaf_gap(l, 1);
	if (p->now_to != DAY_NONE)
		leaf_words(l, 0, &leaf_small,
			_("Bars: the mean of the block's traps, week by week, all "
			  "blocks of a pest on one scale; a foot alone: none counted; "
			  "nothing: nobody looked; +: at least."));
	leaf_words(l, 0, &leaf_small, season_glance_note());
	buf_free(&span);
}

static void set_pest(struct leaf *l, const struct season_pest *s)
{
	struct buf text = { 0 };

	leaf_gap(l, 1);
	season_say_hot(s, &text);
	season_set(l, 0, &leaf_small_bold, &text);
	leaf_words(l, 0, &leaf_small, s->all.biofix.set);
	if (s->all.heat.state != HEAT_NO_BIOFIX) {
		buf_addf(&text, "%s: %s", _("since biofix"), s->all.heat_text);
		season_set(l, 0, &leaf_small, &text);
	}
	buf_free(&text);
}

/* The next pest from i on that has a map; n_pests: none. */
static size_t next_map(const struct season_page *p, size_t i)
{
	while (i < p->n_pests && !season_has_map(&p->pests[i].hot))
		i++;
	return i;
}

/* One or two maps side by side, as high as the page still has room for. */
static void set_map_row(
	struct leaf *l, const struct season_page *p, const size_t *of, size_t n)
{
	const struct pdf_box body = l->body;
	double words = 0, end = 0;

	l->body.w = (body.w - map_between * (double)(n - 1)) / (double)n;
	for (size_t i = 0; i < n; i++)
		words = fmax(words, season_map_words(l, &p->pests[of[i]]));
	double room = leaf_left(l) - words;
	double most = room < map_least ? map_most : fmin(room, map_most);
	l->body.w = body.w;
	leaf_need(l, most + words);
	double top = l->y, w = (body.w - map_between * (double)(n - 1)) / (double)n;
	for (size_t i = 0; i < n; i++) {
		l->body.w = w;
		l->y = top;
		season_map(l, p, &p->pests[of[i]], most);
		end = fmax(end, l->y);
		l->body.x += w + map_between;
	}
	l->body = (struct pdf_box){ body.x, l->body.y, body.w, l->body.h };
	l->y = end;
}

static void set_maps(struct leaf *l, const struct season_page *p)
{
	size_t i = next_map(p, 0);

	while (i < p->n_pests) {
		const size_t of[] = { i, next_map(p, i + 1) };
		size_t n = of[1] < p->n_pests ? 2 : 1;
		leaf_gap(l, 2);
		set_map_row(l, p, of, n);
		i = next_map(p, of[n - 1] + 1);
	}
}

void season_glance(struct leaf *l, const struct season_page *p)
{
	leaf_words(l, 0, &leaf_bold, p->says);
	if (p->n_charts > 0)
		set_table(l, p);
	for (size_t i = 0; i < p->n_pests; i++)
		set_pest(l, &p->pests[i]);
	leaf_words(l, 0, &leaf_plain, p->bare ? p->bare : "");
	set_maps(l, p);
}
