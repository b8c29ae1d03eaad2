/* flights_series.c - visits as a series of weeks. */
#include "season/flights.h"

#include <string.h>

enum { WEEK = 7 };

/* The bounds of the season, then what was read within them. */
struct extent {
	int32_t first, last;
	int32_t from, to;     /* earliest night read, latest check */
	int checks[WEEK + 1]; /* by weekday, 1 Monday .. 7 Sunday */
};

static bool is_read(const struct interval *it, const struct extent *x)
{
	return interval_sure(it).state != CATCH_UNKNOWN && it->to > x->first &&
	       it->to <= x->last;
}

static int32_t from_of(const struct interval *it, const struct extent *x)
{
	return it->from > x->first ? it->from : x->first;
}

static void extent_take(struct extent *x, const struct diary *d)
{
	for (size_t i = 0; i < d->n; i++) {
		const struct interval *it = &d->items[i];
		if (!is_read(it, x))
			continue;
		if (x->from == DAY_NONE || from_of(it, x) < x->from)
			x->from = from_of(it, x);
		if (it->to > x->to)
			x->to = it->to;
		x->checks[day_weekday(it->to)]++;
	}
}

/* Latest day of the usual weekday on or before the first night. */
static int32_t week_zero(const struct extent *x)
{
	int anchor = 1;

	for (int day = 2; day <= WEEK; day++)
		if (x->checks[day] > x->checks[anchor])
			anchor = day;
	return x->from - (day_weekday(x->from) - anchor + WEEK) % WEEK;
}

/* The nights of an interval that fall into one week. */
struct part {
	size_t week;
	int32_t nights;
};

static struct part part_at(int32_t from, int32_t to, int32_t start)
{
	int32_t week = (from - start) / WEEK;
	int32_t end = start + (week + 1) * WEEK;

	return (struct part){ (size_t)week, (end < to ? end : to) - from };
}

static void series_add(
	struct flight_series *s, const struct interval *it, const struct extent *x)
{
	struct interval sure = interval_sure(it);
	double nightly = (double)sure.moths / (double)(it->to - it->from);
	int32_t night = from_of(it, x);

	while (night < it->to) {
		struct part p = part_at(night, it->to, s->first_day);
		s->moths[p.week] += nightly * p.nights;
		s->nights[p.week] += p.nights;
		if (sure.state == CATCH_FLOOR)
			s->at_least[p.week] = true;
		night += p.nights;
	}
}

/* Marks the weeks in which this trap came or went, against the last week that anyone
 * read. */
static void mark_changes(
	struct flight_series *s, const struct diary *d, const struct extent *x)
{
	bool here[FLIGHT_WEEKS_MAX] = { false };
	size_t before = s->n;

	for (size_t i = 0; i < d->n; i++) {
		const struct interval *it = &d->items[i];
		if (!is_read(it, x))
			continue;
		for (int32_t night = from_of(it, x); night < it->to;) {
			struct part p = part_at(night, it->to, s->first_day);
			here[p.week] = true;
			night += p.nights;
		}
	}
	for (size_t w = 0; w < s->n; w++) {
		if (s->nights[w] <= 0)
			continue;
		if (before < s->n && here[w] != here[before])
			s->traps_changed[w] = true;
		before = w;
	}
}

static void add_trap(
	struct flight_series *s, const struct diary *d, const struct extent *x)
{
	for (size_t i = 0; i < d->n; i++)
		if (is_read(&d->items[i], x))
			series_add(s, &d->items[i], x);
}

bool flight_series_of(const struct diary *const *diaries, size_t n, int32_t first,
	int32_t last, struct flight_series *out)
{
	struct extent x = {
		.first = first, .last = last, .from = DAY_NONE, .to = first
	};

	memset(out, 0, sizeof *out);
	for (size_t i = 0; i < n; i++)
		extent_take(&x, diaries[i]);
	if (x.from == DAY_NONE)
		return false;
	out->first_day = week_zero(&x);
	int32_t weeks = (x.to - out->first_day + WEEK - 1) / WEEK;
	if (weeks > FLIGHT_WEEKS_MAX)
		return false;
	out->n = (size_t)weeks;
	for (size_t i = 0; i < n; i++)
		add_trap(out, diaries[i], &x);
	for (size_t i = 0; i < n; i++)
		mark_changes(out, diaries[i], &x);
	return true;
}
