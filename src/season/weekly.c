#include "season/weekly.h"

#include "diary_parts.h"
#include "season/exact.h"

enum unread unread_why(const struct diary *d, size_t i)
{
	switch (d->visits[d->items[i].visit].outcome) {
	case OUTCOME_MISSING:
		return UNREAD_MISSING;
	case OUTCOME_PULLED:
		return UNREAD_PULLED;
	default:
		return UNREAD_SPOILED; /* hung anew loses its catch as well */
	}
}

/* The day since when nothing was read, for a trap whose last `n` intervals are
 * looked at: unknown intervals at the end that follow each other count as one. */
static int32_t unread_since(const struct diary *d, size_t n, int32_t from)
{
	while (n > 0 && d->items[n - 1].state == CATCH_UNKNOWN &&
		d->items[n - 1].to == from)
		from = d->items[--n].from;
	return from;
}

static struct weekly unread_week(
	const struct diary *d, size_t n, int32_t nights, enum unread why)
{
	struct weekly w = {
		.unread = why, .nights = nights, .from = DAY_NONE, .to = DAY_NONE
	};

	if (n > 0) {
		w.from = d->items[n - 1].from;
		w.to = d->items[n - 1].to;
		w.first = w.last = n - 1;
	}
	return w;
}

static void add_interval(struct weekly *w, const struct interval *it)
{
	w->moths += it->moths;
	w->is_disputed = w->is_disputed || it->is_disputed;
	w->least += it->least;
	w->most = w->most < 0 || it->most < 0 ? -1 : w->most + it->most;
}

struct weekly weekly_closing(
	const struct diary *d, size_t i, int32_t asked, const struct limits *l)
{
	const struct interval *it = &d->items[i];

	if (it->state == CATCH_UNKNOWN) {
		int32_t since = unread_since(d, i + 1, it->to);
		struct weekly w =
			unread_week(d, i + 1, asked - since, unread_why(d, i));
		w.moths = it->moths;
		w.is_disputed = it->is_disputed;
		w.least = it->least;
		return w;
	}
	size_t first = i;
	struct weekly sum = { .moths = it->moths,
		.is_disputed = it->is_disputed,
		.least = it->least,
		.most = it->most };
	bool floor = it->state == CATCH_FLOOR;
	while (it->to - d->items[first].from < l->join_nights &&
		d->items[first].joins) {
		first--;
		add_interval(&sum, &d->items[first]);
		floor = floor || d->items[first].state == CATCH_FLOOR;
	}
	int32_t nights = it->to - d->items[first].from;
	return (struct weekly){
		.unread = nights < l->join_nights ? UNREAD_SHORT : UNREAD_NO,
		.at_least = floor,
		.is_long = nights > l->long_nights,
		.is_disputed = sum.is_disputed,
		.moths = sum.moths,
		.least = sum.least,
		.most = sum.most,
		.nights = nights,
		.from = d->items[first].from,
		.to = it->to,
		.first = first,
		.last = i,
	};
}

static struct weekly catch_of_hanging(
	const struct diary *d, struct stand s, int32_t asked, const struct limits *l)
{
	size_t n = diary_closed(d, asked);
	int32_t nights = asked - unread_since(d, n, s.cleared);

	if (s.skipped != DAY_NONE)
		return unread_week(d, n, nights, UNREAD_SKIPPED);
	if (s.cleared == s.series_start)
		return unread_week(d, n, asked - s.cleared, UNREAD_NOT_YET);
	if (asked - s.cleared > l->stale_nights)
		return unread_week(d, n, nights, UNREAD_STALE);
	return weekly_closing(d, n - 1, asked, l);
}

/* A trap pulled with a count was read; a week and a half later nothing is. */
static struct weekly catch_of_pulled(
	const struct diary *d, struct stand s, int32_t asked, const struct limits *l)
{
	size_t n = diary_closed(d, asked);
	bool fresh = n > 0 && d->items[n - 1].to == s.since &&
		     d->items[n - 1].state != CATCH_UNKNOWN &&
		     asked - s.since <= l->stale_nights;

	if (fresh)
		return weekly_closing(d, n - 1, asked, l);
	return unread_week(d, n, asked - unread_since(d, n, s.since), UNREAD_PULLED);
}

struct weekly weekly_catch(const struct diary *d, int32_t asked, const struct limits *l)
{
	struct stand s = diary_stand(d, asked);
	size_t n = diary_closed(d, asked);

	switch (s.standing) {
	case STANDING_HANGS:
		return catch_of_hanging(d, s, asked, l);
	case STANDING_PULLED:
		return catch_of_pulled(d, s, asked, l);
	case STANDING_MISSING:
		return unread_week(
			d, n, asked - unread_since(d, n, s.since), UNREAD_MISSING);
	default:
		return unread_week(d, 0, 0, UNREAD_NOT_HUNG);
	}
}

struct weekly weekly_before(
	const struct diary *d, const struct weekly *w, const struct limits *l)
{
	if (w->first == 0)
		return unread_week(d, 0, 0, UNREAD_NOT_HUNG);
	size_t i = w->first - 1;
	const struct interval *it = &d->items[i];
	if (it->to == w->from || it->state == CATCH_UNKNOWN)
		return weekly_closing(d, i, w->from, l);
	return unread_week(d, i + 1, w->from - it->to, UNREAD_PULLED);
}

int32_t weekly_x10(const struct weekly *w)
{
	if (w->unread != UNREAD_NO || w->nights <= 0)
		return -1;
	return ratio_x10(ratio_of((int64_t)w->moths * 7, w->nights));
}
