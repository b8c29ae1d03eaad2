#include "season/after.h"

/* Where an interval lies, seen from the day. */
enum side { SIDE_BEFORE, SIDE_AFTER, SIDE_COUNT, SIDE_ACROSS, SIDE_FAR };

/* What one trap brings to one side. */
struct part {
	int32_t moths, nights, lost;
	bool at_least, overdue, unknown;
};

static enum side side_of(const struct interval *it, int32_t day)
{
	if (it->from < day && it->to > day)
		return SIDE_ACROSS;
	if (it->to <= day)
		return it->to > day - AFTER_NIGHTS ? SIDE_BEFORE : SIDE_FAR;
	return it->from < day + AFTER_NIGHTS ? SIDE_AFTER : SIDE_FAR;
}

/* The lure that made the catch is the one of the night before it was counted. */
static void look_at_lure(struct part *p, const struct diary *d,
	const struct lure_kinds *kinds, const struct interval *it)
{
	int32_t due = service_lure(d, kinds, it->to - 1, DAY_NONE).due;

	p->unknown = p->unknown || due == DAY_NONE;
	p->overdue = p->overdue || (due != DAY_NONE && it->to > due);
}

static void take(struct part *p, const struct diary *d, const struct lure_kinds *kinds,
	const struct interval *it)
{
	struct interval sure = interval_sure(it);
	int32_t nights = it->to - it->from;

	if (sure.state == CATCH_UNKNOWN || nights > AFTER_NIGHTS) {
		p->lost++;
		return;
	}
	p->moths += sure.moths;
	p->nights += nights;
	p->at_least = p->at_least || sure.state == CATCH_FLOOR;
	look_at_lure(p, d, kinds, it);
}

static void add_part(struct after_side *s, const struct part *p)
{
	s->intervals_lost += (size_t)p->lost;
	if (p->nights == 0)
		return;
	int64_t week = (int64_t)p->moths * 7;
	struct bounds of_trap = p->at_least ? bounds_from(week, p->nights)
					    : bounds_exact(week, p->nights);
	s->week = s->read == 0 ? of_trap : bounds_add(s->week, of_trap);
	if (s->read == 0 || p->nights < s->least)
		s->least = p->nights;
	if (p->nights > s->most)
		s->most = p->nights;
	s->read++;
	s->lures_overdue += p->overdue;
	s->lures_unknown += p->unknown;
}

static void add_trap(struct after *a, const struct diary *d,
	const struct lure_kinds *kinds, int32_t day, int32_t asked)
{
	struct part parts[SIDE_COUNT] = { 0 };

	for (size_t i = 0; i < d->n && d->items[i].to <= asked; i++) {
		enum side side = side_of(&d->items[i], day);
		if (side < SIDE_COUNT)
			take(&parts[side], d, kinds, &d->items[i]);
		a->across += side == SIDE_ACROSS;
	}
	add_part(&a->before, &parts[SIDE_BEFORE]);
	add_part(&a->after, &parts[SIDE_AFTER]);
	a->both += parts[SIDE_BEFORE].nights > 0 && parts[SIDE_AFTER].nights > 0;
}

static void divide(struct after_side *s)
{
	if (s->read > 0)
		s->week = bounds_over(s->week, (int32_t)s->read);
}

struct after after_decision(const struct diary *const traps[], size_t n,
	const struct lure_kinds *kinds, int32_t day, int32_t asked)
{
	struct after a = { .traps = n, .is_over = asked - AFTER_NIGHTS >= day };

	for (size_t i = 0; i < n; i++)
		add_trap(&a, traps[i], kinds, day, asked);
	divide(&a.before);
	divide(&a.after);
	return a;
}
