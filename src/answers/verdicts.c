#include "verdicts_parts.h"

#include "base/mem.h"

#include <stdint.h>
#include <stdlib.h>

/* Rules that hold for one trap, and how well each fits. */
struct held {
	size_t trap;
	size_t *rules;
	size_t n;
};

struct group { /* traps of one block and pest, in driving order */
	int64_t farm, block, pest;
	struct few few;
	struct held *held;
	size_t n, cap;
};

struct states { /* what hung while the judged catch was made */
	struct lure_state lure;
	struct card_state card;
};

/* The latest interval closed up to `day`; NULL: none. */
static const struct interval *last_closed(const struct diary *d, int32_t day)
{
	const struct interval *last = NULL;

	for (size_t i = 0; i < d->n && d->items[i].to <= day; i++)
		last = &d->items[i];
	return last;
}

/* The lure that made the latest catch; before any, the one that hangs. */
static int64_t lure_in(const struct log *l, size_t trap, int32_t day)
{
	const struct interval *last = last_closed(&l->diaries[trap], day);
	struct lure_state s = service_lure(
		&l->diaries[trap], &l->lures, last ? last->to - 1 : day, DAY_NONE);

	return s.kind ? s.kind : l->traps.items[trap].lure;
}

struct spot verdicts_spot(const struct log *l, size_t trap, int32_t day)
{
	const struct trap *t = &l->traps.items[trap];
	const struct block *b = log_block(l, t->block);

	return (struct spot){ .farm = t->farm,
		.block = t->block,
		.pest = t->pest,
		.lure = lure_in(l, trap, day),
		.crop = b ? b->crop : "",
		.condition = log_condition(l, t->block, t->pest, day),
		.place = t->place };
}

/* The lure and card as they were when the latest catch up to `day` was taken off: a
 * lure changed at that visit did not make the catch. */
static struct states states_behind(const struct log *l, size_t trap, int32_t day)
{
	const struct diary *d = &l->diaries[trap];
	struct states s = { 0 };
	const struct interval *last = last_closed(d, day);

	if (!last)
		return s;
	s.lure = service_lure(d, &l->lures, last->to - 1, DAY_NONE);
	s.card = service_card(d, &l->cards, last->to - 1, DAY_NONE);
	if (s.lure.due != DAY_NONE && last->to > s.lure.due)
		s.lure.overdue_days = last->to - s.lure.due;
	if (s.card.due != DAY_NONE && last->to > s.card.due)
		s.card.overdue_days = last->to - s.card.due;
	const struct card_kind *kind = log_card(l, s.card.kind);
	s.card.moths += last->moths;
	if (kind && s.card.moths >= kind->change_at)
		s.card.mark = s.card.moths >= kind->floor_at ? CARD_FLOOR : CARD_CHANGE;
	return s;
}

static struct verdict_row *add_row(struct verdict_rows *out)
{
	out->items = mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
	struct verdict_row *row = &out->items[out->n++];
	*row = (struct verdict_row){ .trap = NO_TRAP, .rule = NO_RULE };
	return row;
}

static struct verdict_row *add_group_row(
	struct verdict_rows *out, const struct group *g, int trap)
{
	struct verdict_row *row = add_row(out);

	row->farm = g->farm;
	row->block = g->block;
	row->pest = g->pest;
	row->trap = trap;
	return row;
}

static void add_to_group(struct group *g, const struct log *l, size_t trap, int32_t day)
{
	const struct trap *t = &l->traps.items[trap];
	struct spot spot = verdicts_spot(l, trap, day);
	struct moment m = log_moment_at(l, t->block, t->pest, t->place, day);

	g->held = mem_grow(g->held, &g->cap, g->n + 1, sizeof *g->held);
	struct held *h = &g->held[g->n++];
	h->trap = trap;
	h->rules = mem_new(g->few.n, sizeof *h->rules);
	h->n = rule_choose(g->few.rules, g->few.n, &spot, &m, h->rules);
	for (size_t i = 0; i < h->n; i++)
		h->rules[i] = g->few.at[h->rules[i]];
}

static void empty_group(struct group *g)
{
	for (size_t i = 0; i < g->n; i++)
		free(g->held[i].rules);
	g->n = 0;
}

static bool holds(const struct held *h, size_t rule)
{
	for (size_t i = 0; i < h->n; i++)
		if (h->rules[i] == rule)
			return true;
	return false;
}

static void judge_group_rule(const struct log *l, const struct group *g, size_t rule,
	int32_t day, struct verdict_rows *out)
{
	const struct rule *r = &l->rules.items[rule];
	struct subject *subjects = mem_new(g->n, sizeof *subjects);
	struct states *states = mem_new(g->n, sizeof *states);
	struct moment m = log_moment_at(l, g->block, g->pest, r->place, day);
	enum fit fit = FIT_NO;
	size_t n = 0;

	for (size_t i = 0; i < g->n; i++) {
		if (!holds(&g->held[i], rule))
			continue;
		size_t trap = g->held[i].trap;
		struct spot spot = verdicts_spot(l, trap, day);
		fit = rule_fits(r, &spot, &m);
		states[n] = states_behind(l, trap, day);
		subjects[n] = (struct subject){ &l->diaries[trap], &states[n].lure,
			&states[n].card };
		n++;
	}
	if (n > 0) {
		struct verdict_row *row = add_group_row(out, g, NO_TRAP);
		row->rule = (int)rule;
		row->fit = fit;
		row->judgement = judge_block(r, fit, subjects, n, &m, &l->limits);
	}
	free(subjects);
	free(states);
}

static void judge_group_trap(const struct log *l, const struct group *g,
	const struct held *h, int32_t day, struct verdict_rows *out)
{
	enum place place = l->traps.items[h->trap].place;
	struct moment m = log_moment_at(l, g->block, g->pest, place, day);
	struct spot spot = verdicts_spot(l, h->trap, day);
	struct states states = states_behind(l, h->trap, day);
	struct subject subject = { &l->diaries[h->trap], &states.lure, &states.card };
	struct weekly weekly = weekly_catch(subject.diary, day, &l->limits);
	size_t before = out->n;

	for (size_t i = 0; i < h->n; i++) {
		const struct rule *r = &l->rules.items[h->rules[i]];
		if (measure_of_block(r->measure))
			continue;
		struct verdict_row *row = add_group_row(out, g, (int)h->trap);
		row->rule = (int)h->rules[i];
		row->fit = rule_fits(r, &spot, &m);
		row->weekly = weekly;
		row->judgement = judge_trap(r, row->fit, &subject, &m, &l->limits);
	}
	if (out->n == before)
		add_group_row(out, g, (int)h->trap)->weekly = weekly;
}

static void judge_group(const struct log *l, const struct group *g, int32_t day,
	struct verdict_rows *out)
{
	for (size_t r = 0; r < g->few.n; r++)
		if (measure_of_block(g->few.rules[r].measure) &&
			g->few.rules[r].pest == g->pest)
			judge_group_rule(l, g, g->few.at[r], day, out);
	for (size_t i = 0; i < g->n; i++)
		judge_group_trap(l, g, &g->held[i], day, out);
}

/* A trap that was pulled is judged as long as its last catch is this week's. */
static bool was_pulled(const struct log *l, size_t trap, int32_t day)
{
	struct stand s = diary_stand(&l->diaries[trap], day);

	return s.standing == STANDING_PULLED && s.since < day - l->limits.stale_nights;
}

static bool asked_for(
	const struct log *l, size_t trap, int64_t farm, int64_t pest, int32_t day)
{
	const struct trap *t = &l->traps.items[trap];

	return (farm == 0 || t->farm == farm) && (pest == 0 || t->pest == pest) &&
	       log_in_season(l, trap) && !was_pulled(l, trap, day);
}

static bool is_cleared_on(const struct diary *d, int32_t day)
{
	const struct interval *last = last_closed(d, day);

	return last && last->to == day;
}

/* One of the traps of the block and pest from trap `first` on. */
static bool is_any_cleared(
	const struct log *l, const size_t *next, size_t first, int32_t day)
{
	for (size_t k = first; k != SIZE_MAX; k = next[k])
		if (is_cleared_on(&l->diaries[k], day))
			return true;
	return false;
}

/* A trap and the next one of its block and pest in driving order. */
struct alike {
	int64_t block, pest;
	size_t trap;
};

static int by_block_pest_turn(const void *a, const void *b)
{
	const struct alike *x = a, *y = b;

	if (x->block != y->block)
		return x->block < y->block ? -1 : 1;
	if (x->pest != y->pest)
		return x->pest < y->pest ? -1 : 1;
	return (x->trap > y->trap) - (x->trap < y->trap);
}

/* For each trap the next one of its block and pest; SIZE_MAX: none. The caller frees
 * it. */
static size_t *next_alike(const struct log *l)
{
	size_t *next = mem_new(l->traps.n, sizeof *next);
	struct alike *all = mem_new(l->traps.n, sizeof *all);

	for (size_t i = 0; i < l->traps.n; i++)
		all[i] = (struct alike){ l->traps.items[i].block,
			l->traps.items[i].pest, i };
	if (l->traps.n > 1)
		qsort(all, l->traps.n, sizeof *all, by_block_pest_turn);
	for (size_t i = 0; i < l->traps.n; i++) {
		bool is_last = i + 1 == l->traps.n ||
			       all[i].block != all[i + 1].block ||
			       all[i].pest != all[i + 1].pest;
		next[all[i].trap] = is_last ? SIZE_MAX : all[i + 1].trap;
	}
	free(all);
	return next;
}

/* Of which traps; 0: all. */
struct asked {
	int64_t farm, block, pest;
	bool cleared; /* blocks and pests alone of which one was cleared on the day */
};

static bool is_asked(
	const struct log *l, size_t trap, const struct asked *ask, int32_t day)
{
	return (ask->block == 0 || l->traps.items[trap].block == ask->block) &&
	       asked_for(l, trap, ask->farm, ask->pest, day);
}

static void verdicts_read(const struct log *l, const struct asked *ask, int32_t day,
	struct verdict_rows *out)
{
	bool *done = mem_new(l->traps.n, sizeof *done);
	size_t *next = next_alike(l);
	struct rule_place *rules = rules_by_block(l);
	struct group g = { 0 };

	out->n = 0;
	for (size_t i = 0; i < l->traps.n; i++) {
		const struct trap *t = &l->traps.items[i];
		if (done[i] || !is_asked(l, i, ask, day) ||
			(ask->cleared && !is_any_cleared(l, next, i, day)))
			continue;
		g.farm = t->farm;
		g.block = t->block;
		g.pest = t->pest;
		rules_find_few(l, rules, t, &g.few);
		for (size_t k = i; k != SIZE_MAX; k = next[k]) {
			if (!is_asked(l, k, ask, day))
				continue;
			done[k] = true;
			add_to_group(&g, l, k, day);
		}
		judge_group(l, &g, day, out);
		empty_group(&g);
	}
	rules_free_few(&g.few);
	free(g.held);
	free(rules);
	free(next);
	free(done);
}

void verdicts_of(const struct log *l, int64_t farm, int64_t pest, int32_t day,
	struct verdict_rows *out)
{
	verdicts_read(l, &(struct asked){ .farm = farm, .pest = pest }, day, out);
}

void verdicts_of_block(
	const struct log *l, int64_t block, int32_t day, struct verdict_rows *out)
{
	verdicts_read(l, &(struct asked){ .block = block }, day, out);
}

void verdicts_cleared_on(const struct log *l, int64_t farm, int64_t block, int32_t day,
	struct verdict_rows *out)
{
	const struct asked ask = { .farm = farm, .block = block, .cleared = true };

	verdicts_read(l, &ask, day, out);
}
