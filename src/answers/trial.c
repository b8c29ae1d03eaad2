/* trial.c - a rule judged over the season so far, week by week. */
#include "answers/trial.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "trial_parts.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { WEEK = 7 };

/* One week of the season. */
struct span_of_days {
	int32_t first, last; /* both included */
};

/* The kind of lure that hung when the catch up to `day` was made; before any was put
 * in, the one that the trap usually gets. */
static int64_t lure_behind(const struct log *l, size_t trap, int32_t day)
{
	const struct diary *d = &l->diaries[trap];
	int64_t kind = 0;

	for (size_t i = 0; i < d->n_visits && d->visits[i].day <= day; i++)
		if (d->visits[i].new_lure != 0 && (d->visits[i].day < day || !kind))
			kind = d->visits[i].new_lure;
	return kind ? kind : l->traps.items[trap].lure;
}

static struct spot spot_of(const struct log *l, const struct rule *r, size_t trap,
	const struct block *b, int32_t day)
{
	const struct trap *t = &l->traps.items[trap];

	return (struct spot){ .farm = t->farm,
		.block = t->block,
		.pest = t->pest,
		.lure = r->lure ? lure_behind(l, trap, day) : 0,
		.crop = b->crop,
		.condition = log_condition(l, b->id, t->pest, day),
		.place = t->place };
}

static int32_t last_look(const struct diary *d, struct span_of_days week)
{
	for (size_t i = d->n_visits; i > 0; i--) {
		const struct visit *v = &d->visits[i - 1];
		if (v->day < week.first)
			break;
		if (v->day <= week.last && v->outcome != OUTCOME_HUNG &&
			!visit_is_service(v))
			return v->day;
	}
	return DAY_NONE;
}

/* The day on which a trap is asked for this week; DAY_NONE: it has no such week. */
static int32_t asked_day(const struct log *l, size_t trap, struct span_of_days week)
{
	const struct diary *d = &l->diaries[trap];
	int32_t look = last_look(d, week);

	if (look != DAY_NONE)
		return look;
	if (week.last >= l->today ||
		diary_stand(d, week.first - 1).standing != STANDING_HANGS)
		return DAY_NONE;
	return week.last;
}

static void count(struct trial *t, enum verdict v)
{
	t->n++;
	t->n_over += v == VERDICT_OVER;
	t->n_near += v == VERDICT_NEAR;
	t->n_under += v == VERDICT_UNDER;
	t->n_unknown += v == VERDICT_UNKNOWN;
}

/* A week's catch that nobody read is not the one of the week before. */
static bool nobody_looked(
	const struct rule *r, const struct diary *d, struct span_of_days week)
{
	bool weekly =
		r->measure == MEASURE_TRAP_WEEK || r->measure == MEASURE_BLOCK_WEEK;

	return weekly && last_look(d, week) == DAY_NONE;
}

static void try_trap(const struct log *l, const struct rule *r, size_t trap,
	const struct block *b, struct span_of_days week, struct trial *out)
{
	const struct trap *t = &l->traps.items[trap];
	int32_t day = asked_day(l, trap, week);

	if (day == DAY_NONE)
		return;
	struct moment m = log_moment_at(l, b->id, r->pest, t->place, day);
	struct spot spot = spot_of(l, r, trap, b, day);
	enum fit fit = rule_fits(r, &spot, &m);
	struct subject subject = { .diary = &l->diaries[trap] };

	if (fit == FIT_NO)
		return;
	if (nobody_looked(r, subject.diary, week))
		count(out, VERDICT_UNKNOWN);
	else
		count(out, judge_trap(r, fit, &subject, &m, &l->limits).verdict);
}

/* The traps of a block that the rule holds for in this week, and the latest day on
 * which one of them is asked. */
struct gathered {
	size_t *members; /* of the block, for the rule's pest: indices in the log */
	size_t n_members;
	struct subject *traps;
	size_t n;
	int32_t day;
	enum fit fit;
};

static void gather(const struct log *l, const struct rule *r, const struct block *b,
	struct span_of_days week, struct gathered *out)
{
	out->n = 0;
	out->day = DAY_NONE;
	for (size_t k = 0; k < out->n_members; k++) {
		size_t i = out->members[k];
		const struct trap *t = &l->traps.items[i];
		int32_t day = asked_day(l, i, week);
		if (day == DAY_NONE)
			continue;
		struct moment m = log_moment_at(l, b->id, r->pest, t->place, day);
		struct spot spot = spot_of(l, r, i, b, day);
		enum fit fit = rule_fits(r, &spot, &m);
		if (fit == FIT_NO)
			continue;
		out->traps[out->n++] = (struct subject){ .diary = &l->diaries[i] };
		out->fit = fit;
		out->day = day > out->day ? day : out->day;
	}
}

static bool nobody_looked_at_any(
	const struct rule *r, const struct gathered *g, struct span_of_days week)
{
	for (size_t i = 0; i < g->n; i++)
		if (!nobody_looked(r, g->traps[i].diary, week))
			return false;
	return true;
}

static void try_block(const struct log *l, const struct rule *r, const struct block *b,
	struct span_of_days week, struct gathered *room, struct trial *out)
{
	gather(l, r, b, week, room);
	if (room->n == 0)
		return;
	struct moment m = log_moment_at(l, b->id, r->pest, r->place, room->day);

	if (nobody_looked_at_any(r, room, week))
		count(out, VERDICT_UNKNOWN);
	else
		count(out,
			judge_block(r, room->fit, room->traps, room->n, &m, &l->limits)
				.verdict);
}

static int32_t season_start(const struct log *l, int64_t farm)
{
	const struct farm *f = log_farm(l, farm);

	return day_season_start(l->today, f ? f->season_start : 101);
}

static void find_members(const struct log *l, const struct rule *r,
	const struct block *b, struct gathered *out)
{
	out->n_members = 0;
	if ((r->farm && r->farm != b->farm) || (r->block && r->block != b->id))
		return;
	for (size_t i = 0; i < l->traps.n; i++)
		if (l->traps.items[i].block == b->id &&
			l->traps.items[i].pest == r->pest)
			out->members[out->n_members++] = i;
}

static void try_blocks(const struct log *l, const struct rule *r, struct trial *out)
{
	struct gathered room = { .members = mem_new(l->traps.n, sizeof *room.members),
		.traps = mem_new(l->traps.n, sizeof *room.traps) };

	for (size_t i = 0; i < l->blocks.n; i++) {
		const struct block *b = &l->blocks.items[i];
		int32_t day = day_week_start(season_start(l, b->farm));
		find_members(l, r, b, &room);
		for (; room.n_members > 0 && day <= l->today; day += WEEK)
			try_block(l, r, b, (struct span_of_days){ day, day + WEEK - 1 },
				&room, out);
	}
	free(room.members);
	free(room.traps);
}

static void try_traps(const struct log *l, const struct rule *r, struct trial *out)
{
	for (size_t i = 0; i < l->traps.n; i++) {
		const struct trap *t = &l->traps.items[i];
		if (t->pest != r->pest || (r->farm && t->farm != r->farm) ||
			(r->block && t->block != r->block))
			continue;
		const struct block *b = log_block(l, t->block);
		int32_t day = day_week_start(season_start(l, t->farm));
		for (; b && day <= l->today; day += WEEK)
			try_trap(l, r, i, b,
				(struct span_of_days){ day, day + WEEK - 1 }, out);
	}
}

static void say_trial(const struct rule *r, struct trial *t)
{
	bool block = measure_of_block(r->measure);
	char more[SAY_SHORT * 2] = "";

	if (t->n == 0) {
		text_copy(t->says, sizeof t->says,
			block ? _("no block-week of this season to try it on yet")
			      : _("no trap-week of this season to try it on yet"));
		return;
	}
	if (t->n_unknown > 0)
		snprintf(more, sizeof more, _(", unknown in %d"), t->n_unknown);
	snprintf(t->says, sizeof t->says,
		block ? ngettext("OVER in %d of %d block-week this season%s",
				"OVER in %d of %d block-weeks this season%s",
				(unsigned)t->n)
		      : ngettext("OVER in %d of %d trap-week this season%s",
				"OVER in %d of %d trap-weeks this season%s",
				(unsigned)t->n),
		t->n_over, t->n, more);
}

void trial_of(const struct log *l, const struct rule *r, struct trial *out)
{
	*out = (struct trial){ 0 };
	trial_never(l, r, out->never, sizeof out->never);
	if (r->measure == MEASURE_NONE) {
		text_copy(out->says, sizeof out->says,
			_("for timing only: it never calls anything over"));
		return;
	}
	if (!*out->never && measure_of_block(r->measure))
		try_blocks(l, r, out);
	else if (!*out->never)
		try_traps(l, r, out);
	say_trial(r, out);
}
