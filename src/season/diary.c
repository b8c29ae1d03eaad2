#include "season/diary.h"

#include "base/mem.h"
#include "diary_parts.h"

#include <stdlib.h>

static const struct stand not_hung = {
	.standing = STANDING_NOT_HUNG,
	.since = DAY_NONE,
	.cleared = DAY_NONE,
	.series_start = DAY_NONE,
	.skipped = DAY_NONE,
};

static bool closes(enum outcome o)
{
	return o != OUTCOME_SKIPPED;
}

int32_t visit_moths(const struct visit *v)
{
	if (v->outcome == OUTCOME_HUNG || v->outcome == OUTCOME_SKIPPED || v->count < 0)
		return 0;
	return v->count > COUNT_MAX ? COUNT_MAX : v->count;
}

static enum catch_state state_of(const struct visit *v)
{
	if (v->count < 0)
		return CATCH_UNKNOWN;
	switch (v->outcome) {
	case OUTCOME_COUNTED:
	case OUTCOME_PULLED:
		return CATCH_COUNTED;
	case OUTCOME_FLOOR:
		return CATCH_FLOOR;
	default:
		return CATCH_UNKNOWN;
	}
}

/* The trap hangs cleared from this visit on. */
static void stand_clear(struct stand *s, const struct visit *v)
{
	if (s->standing != STANDING_HANGS) {
		s->standing = STANDING_HANGS;
		s->since = v->day;
		s->series_start = v->day;
	}
	if (v->outcome == OUTCOME_HUNG)
		s->series_start = v->day;
	s->cleared = v->day;
	s->skipped = DAY_NONE;
	s->skip_reason = REASON_NONE;
}

static void stand_end(struct stand *s, enum standing how, int32_t day)
{
	if (s->standing != how)
		s->since = day;
	s->standing = how;
	s->cleared = DAY_NONE;
	s->skipped = DAY_NONE;
	s->skip_reason = REASON_NONE;
}

static void stand_take(struct stand *s, const struct visit *v)
{
	switch (v->outcome) {
	case OUTCOME_SKIPPED:
		if (s->standing == STANDING_HANGS && !visit_is_service(v)) {
			s->skipped = v->day;
			s->skip_reason = v->reason;
		}
		break;
	case OUTCOME_MISSING:
		stand_end(s, STANDING_MISSING, v->day);
		break;
	case OUTCOME_PULLED:
		stand_end(s, STANDING_PULLED, v->day);
		break;
	default:
		stand_clear(s, v);
		break;
	}
}

struct interval interval_sure(const struct interval *it)
{
	struct interval sure = *it;

	if (!it->is_disputed)
		return sure;
	sure.moths = it->least;
	if (it->state != CATCH_UNKNOWN)
		sure.state =
			it->least == 0 && it->most < 0 ? CATCH_UNKNOWN : CATCH_FLOOR;
	return sure;
}

/* A count or floor that closed the interval before leaves the series whole. */
static bool joins_before(const struct diary *d, int32_t from)
{
	if (d->n == 0 || d->items[d->n - 1].to != from)
		return false;
	enum outcome o = d->visits[d->items[d->n - 1].visit].outcome;
	return o == OUTCOME_COUNTED || o == OUTCOME_FLOOR;
}

/* Whether the trap was read that day at all is what the scouts do not agree on. */
static bool is_torn(const struct visit *v)
{
	return v->is_disputed && v->most == COUNT_NONE;
}

/* The moths of an interval on whose ends scouts agree, or do not: a visit that one of
 * them left out, within it or before it, may have taken some of them away. */
static void dispute(struct interval *it, const struct diary *d, size_t first)
{
	const struct visit *v = &d->visits[it->visit];

	it->least = it->most = it->moths;
	if (v->is_disputed) {
		it->is_disputed = true;
		it->least = v->least;
		it->most = is_torn(v) ? -1 : v->most;
	}
	for (size_t i = first; i < it->visit; i++) {
		if (d->visits[i].day < it->from || !is_torn(&d->visits[i]))
			continue;
		it->is_disputed = true;
		it->least = 0;
		it->most = -1;
	}
}

static size_t first_on(const struct diary *d, size_t before, int32_t day)
{
	size_t first = before;

	while (first > 0 && d->visits[first - 1].day >= day)
		first--;
	return first;
}

static void diary_close(struct diary *d, int32_t from, size_t visit)
{
	const struct visit *v = &d->visits[visit];
	struct interval it = {
		.from = from,
		.to = v->day,
		.state = state_of(v),
		.moths = visit_moths(v),
		.joins = joins_before(d, from),
		.visit = visit,
	};

	dispute(&it, d, first_on(d, visit, from));
	d->items = mem_grow(d->items, &d->cap, d->n + 1, sizeof *d->items);
	d->items[d->n++] = it;
}

void diary_read(struct diary *d, const struct visit *visits, size_t n)
{
	struct stand s = not_hung;

	d->visits = visits;
	d->n_visits = n;
	d->n = 0;
	for (size_t i = 0; i < n; i++) {
		const struct visit *v = &visits[i];
		if (s.standing == STANDING_HANGS && closes(v->outcome) &&
			v->day > s.cleared)
			diary_close(d, s.cleared, i);
		stand_take(&s, v);
	}
}

void diary_free(struct diary *d)
{
	free(d->items);
	*d = (struct diary){ 0 };
}

struct stand diary_stand(const struct diary *d, int32_t day)
{
	struct stand s = not_hung;

	for (size_t i = 0; i < d->n_visits && d->visits[i].day <= day; i++)
		stand_take(&s, &d->visits[i]);
	return s;
}

size_t diary_closed(const struct diary *d, int32_t day)
{
	size_t lo = 0, hi = d->n;

	while (lo < hi) {
		size_t mid = lo + (hi - lo) / 2;
		if (d->items[mid].to <= day)
			lo = mid + 1;
		else
			hi = mid;
	}
	return lo;
}
