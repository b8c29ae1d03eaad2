/* hotspots_edge.c - the border of a block more closely: weeks in which it ran ahead of
 * the interior, the side on which it caught most, the border traps that face a
 * source. */
#include "hotspots_words.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "season/flightline.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

/* Border at least twice the interior, two weeks running: a rule of thumb of our own. So
 * is the least catch, in tenths a trap: one stray moth makes no pattern. */
enum { EDGE_TIMES = 2, EDGE_WEEKS = 2, EDGE_LEAST_X10 = 10 };
enum { WEEK_DAYS = 7, SIDES = 8, APART_METRES = 20 };

/* The weeks of a season that are looked at, and its traps by index of the log. */
struct weeks {
	const struct diary **of;
	int32_t first, last; /* days */
	size_t n;
};

static bool is_of_block(const struct hot_trap *t, int64_t block)
{
	return t->is_alike && !t->is_outside && t->block == block;
}

/* Mean catch of the block's traps on one side, a mark a week; owned by the caller. */
static struct mark *mean_of(const struct hot_view *v, const struct log *l,
	const struct weeks *w, int64_t block, enum place place)
{
	struct mark *mean = mem_new(w->n, sizeof *mean);
	struct mark *all = mem_new(v->n_traps * w->n, sizeof *all);
	size_t n = 0;

	for (size_t i = 0; i < v->n_traps; i++) {
		const struct hot_trap *t = &v->traps[i];
		if (is_of_block(t, block) && l->traps.items[t->trap].place == place)
			flightline_of_trap(
				w->of[t->trap], w->first, w->last, all + n++ * w->n);
	}
	flightline_mean(all, n, w->n, mean);
	free(all);
	return mean;
}

/* Unknown is never ahead: a full card may stand on the border, not in the interior. */
static bool is_ahead(const struct mark *border, const struct mark *interior)
{
	return (border->kind == MARK_CATCH || border->kind == MARK_FLOOR) &&
	       (interior->kind == MARK_ZERO || interior->kind == MARK_CATCH) &&
	       border->x10 >= EDGE_LEAST_X10 &&
	       border->x10 >= EDGE_TIMES * interior->x10;
}

static void say_weeks(struct hot_row *row, const struct hot_view *v,
	const struct log *l, const struct weeks *w)
{
	struct mark *border = mean_of(v, l, w, row->block, PLACE_BORDER);
	struct mark *interior = mean_of(v, l, w, row->block, PLACE_INTERIOR);
	size_t run = 0, most = 0, end = 0;
	char from[SAY_SHORT];

	for (size_t i = 0; i < w->n; i++) {
		run = is_ahead(&border[i], &interior[i]) ? run + 1 : 0;
		if (run >= EDGE_WEEKS && run >= most) {
			most = run;
			end = i + 1;
		}
	}
	free(border);
	free(interior);
	if (most == 0)
		return;
	say_day(w->first + (int32_t)(WEEK_DAYS * (end - most)), from);
	snprintf(row->earlier, sizeof row->earlier,
		_("edge pattern: at least twice the interior %zu weeks running, from "
		  "the week of %s; a pattern, no diagnosis"),
		most, from);
}

/* Middle of the block's located traps; returns how many they are. */
static int middle_of(const struct hot_view *v, int64_t block, struct point *out)
{
	struct point sum = { 0, 0 };
	int n = 0;

	for (size_t i = 0; i < v->n_traps; i++) {
		const struct hot_trap *t = &v->traps[i];
		if (!is_of_block(t, block) || !t->has_position)
			continue;
		sum.x += t->at.x;
		sum.y += t->at.y;
		n++;
	}
	*out = (struct point){ sum.x / n, sum.y / n };
	return n;
}

static double rate_of(const struct hot_trap *t)
{
	return (double)t->catch.moths / (double)t->catch.nights;
}

/* The border trap that caught most; NULL: several did, or its place is not known. */
static const struct hot_trap *top_of(const struct hot_view *v, int64_t block)
{
	const struct hot_trap *top = NULL;
	int as_high = 0;

	for (size_t i = 0; i < v->n_traps; i++) {
		const struct hot_trap *t = &v->traps[i];
		if (!is_of_block(t, block) || !t->is_border ||
			(top && rate_of(t) < rate_of(top)))
			continue;
		as_high = top && rate_of(t) == rate_of(top) ? as_high + 1 : 1;
		top = t;
	}
	return as_high == 1 && top->has_position ? top : NULL;
}

static void say_side(struct hot_row *row, const struct hot_view *v)
{
	static const char *const sides[SIDES] = { N_("north"), N_("north-east"),
		N_("east"), N_("south-east"), N_("south"), N_("south-west"), N_("west"),
		N_("north-west") };
	const struct hot_trap *top = top_of(v, row->block);
	struct point middle;
	char text[SAY_LINE];

	if (!top || middle_of(v, row->block, &middle) < 3)
		return;
	double east = top->at.x - middle.x, north = top->at.y - middle.y;
	if (hypot(east, north) < APART_METRES)
		return;
	int side = (int)lround(SIDES * atan2(east, north) / (2 * acos(-1)));
	snprintf(text, sizeof text, _("Most in trap %s, on the %s side."), top->label,
		_(sides[(side + SIDES) % SIDES]));
	hot_add(row->says, sizeof row->says, text);
}

void hot_say_edges(struct hot_view *v, const struct log *l, const struct hot_season *s,
	struct hot_window of)
{
	struct weeks w = { s->of, of.from, of.to - 1, 0 };

	w.first = day_week_start(w.first);
	w.n = flightline_weeks(w.first, w.last);
	for (size_t i = 0; i < v->n; i++) {
		struct hot_row *row = &v->rows[i];
		if (row->what != HOT_OF_BORDER || row->block == 0)
			continue;
		say_weeks(row, v, l, &w);
		if (row->grade >= HOT_HIGHER)
			say_side(row, v);
	}
}

/* True if the source lies outside the traps of the block: then some of them face it. */
static bool is_beside(const struct hot_view *v, int64_t block, struct point middle,
	const struct hot_source *s)
{
	double far = 0;

	for (size_t i = 0; i < v->n_traps; i++) {
		const struct hot_trap *t = &v->traps[i];
		if (is_of_block(t, block) && t->has_position)
			far = fmax(far, hypot(t->at.x - middle.x, t->at.y - middle.y));
	}
	return far > 0 && hypot(s->at.x - middle.x, s->at.y - middle.y) > far;
}

bool hot_facing(
	const struct hot_view *v, const struct hot_source *s, struct hot_split *out)
{
	*out = (struct hot_split){ 0 };
	for (size_t i = 0; i < v->n_traps; i++) {
		const struct hot_trap *t = &v->traps[i];
		struct point m;
		if (!is_of_block(t, t->block) || !t->is_border || !t->has_position ||
			middle_of(v, t->block, &m) < 2 || !is_beside(v, t->block, m, s))
			continue;
		bool faces = (t->at.x - m.x) * (s->at.x - m.x) +
				     (t->at.y - m.y) * (s->at.y - m.y) >
			     0;
		*(faces ? &out->n_in : &out->n_out) += 1;
		*(faces ? &out->moths_in : &out->moths_out) += t->catch.moths;
		*(faces ? &out->nights_in : &out->nights_out) += t->catch.nights;
	}
	return out->n_in > 0 && out->n_out > 0;
}
