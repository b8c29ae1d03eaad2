/* rounds.c - the checks of all traps of a block, put together. */
#include "rounds_parts.h"

#include "base/mem.h"
#include "season/flights.h"

#include <stdlib.h>

/* "At least none" tells nothing, unless it is that scouts do not agree on a count. */
static bool is_read(const struct interval *it, const struct interval *sure)
{
	return sure->state == CATCH_COUNTED || sure->moths > 0 ||
	       (it->is_disputed && it->state != CATCH_UNKNOWN && it->most >= 0);
}

static void take_readings(struct rounds *r, const struct diary *d, size_t diary,
	int32_t first, int32_t last)
{
	for (size_t i = 0; i < d->n; i++) {
		const struct interval *it = &d->items[i];
		struct interval sure = interval_sure(it);
		if (it->to < first || it->to > last)
			continue;
		r->readings = mem_grow(r->readings, &r->cap_readings, r->n_readings + 1,
			sizeof *r->readings);
		r->readings[r->n_readings++] = (struct reading){
			.from = it->from,
			.to = it->to,
			.moths = sure.moths,
			.more = it->is_disputed && sure.moths != it->most,
			.read = is_read(it, &sure),
			.diary = diary,
			.interval = i,
		};
	}
}

static int by_day_and_trap(const void *a, const void *b)
{
	const struct reading *x = a, *y = b;

	if (x->to != y->to)
		return x->to < y->to ? -1 : 1;
	return (x->diary > y->diary) - (x->diary < y->diary);
}

static bool holds_trap(const struct rounds *r, const struct round *x, size_t diary)
{
	for (size_t i = x->first; i < x->first + x->n; i++)
		if (r->readings[i].diary == diary)
			return true;
	return false;
}

static void join(struct rounds *r, size_t reading, int32_t spill)
{
	const struct reading *x = &r->readings[reading];
	struct round *now = r->n > 0 ? &r->items[r->n - 1] : NULL;

	if (now == NULL || x->to - now->day > spill || holds_trap(r, now, x->diary)) {
		r->items = mem_grow(r->items, &r->cap, r->n + 1, sizeof *r->items);
		now = &r->items[r->n++];
		*now = (struct round){ .first = reading, .day = x->to };
	}
	now->n++;
	now->end = x->to;
	now->moths += x->moths;
	now->read += x->read ? 1 : 0;
}

void rounds_read(struct rounds *r, const struct diary *const *diaries, size_t n,
	int32_t first, int32_t last, int32_t spill)
{
	for (size_t i = 0; i < n; i++)
		take_readings(r, diaries[i], i, first, last);
	if (r->n_readings > 0)
		qsort(r->readings, r->n_readings, sizeof *r->readings, by_day_and_trap);
	for (size_t i = 0; i < r->n_readings; i++)
		join(r, i, spill);
}

void rounds_free(struct rounds *r)
{
	free(r->readings);
	free(r->items);
	*r = (struct rounds){ 0 };
}

size_t rounds_next_read(const struct rounds *r, size_t i)
{
	while (i < r->n && r->items[i].read == 0)
		i++;
	return i;
}

size_t rounds_read_before(const struct rounds *r, size_t i)
{
	while (i > 0)
		if (r->items[--i].read > 0)
			return i;
	return r->n;
}

/* Where what hung in the trap was last seen: back over intervals that told nothing. */
static int32_t unseen_since(const struct diary *d, size_t interval)
{
	int32_t from = d->items[interval].from;

	while (interval > 0) {
		struct interval it = interval_sure(&d->items[--interval]);
		if (it.to != from || it.state == CATCH_COUNTED || it.moths > 0)
			break;
		from = it.from;
	}
	return from;
}

struct nights_between rounds_when(const struct rounds *r,
	const struct diary *const *diaries, size_t i, int32_t by)
{
	size_t before = rounds_read_before(r, i);
	struct nights_between w = { .after = by, .by = by };

	w.or_earlier = before == r->n;
	if (before < r->n && r->items[before].end < w.after)
		w.after = r->items[before].end;
	for (size_t k = r->items[i].first; k < r->n_readings; k++) {
		const struct reading *x = &r->readings[k];
		if (x->moths == 0 || x->from >= by)
			continue;
		int32_t since = unseen_since(diaries[x->diary], x->interval);
		if (since < w.after)
			w.after = since;
	}
	return w;
}

int32_t rounds_reach(const struct rounds *r, size_t i, int64_t least)
{
	const struct round *x = &r->items[i];
	int64_t moths = 0;

	for (size_t k = x->first; k < x->first + x->n; k++) {
		moths += r->readings[k].moths;
		if (moths >= least)
			return r->readings[k].to;
	}
	return x->end;
}

size_t rounds_sustained(const struct rounds *r, int64_t least, size_t *next)
{
	for (size_t i = rounds_next_read(r, 0); i < r->n; i = *next) {
		*next = rounds_next_read(r, i + 1);
		if (r->items[i].moths < least || *next == r->n)
			continue;
		int32_t days =
			rounds_reach(r, *next, least) - rounds_reach(r, i, least);
		if (r->items[*next].moths >= least &&
			days <= flight_constants.sustained_days)
			return i;
	}
	*next = r->n;
	return r->n;
}
