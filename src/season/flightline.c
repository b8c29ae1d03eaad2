#include "season/flightline.h"

#include "diary_parts.h"
#include "season/exact.h"

enum { WEEK = 7 };

/* A week as the line ends on `last`. */
struct week {
	int32_t start, end; /* end: its seventh day, or `last` if that is earlier */
};

size_t flightline_weeks(int32_t first, int32_t last)
{
	if (last < first)
		return 0;
	return (size_t)((last - first) / WEEK) + 1;
}

static struct mark mark_catch(int64_t moths, int32_t nights, bool floor)
{
	int32_t x10 = ratio_x10(ratio_of(moths * WEEK, nights));

	if (floor)
		return (struct mark){ MARK_FLOOR, x10 };
	if (moths == 0)
		return (struct mark){ MARK_ZERO, 0 };
	return (struct mark){ MARK_CATCH, x10 < 1 ? 1 : x10 };
}

/* What the intervals that closed in the week, up to its end, say together. */
static bool mark_closed(const struct diary *d, struct week w, struct mark *out)
{
	int64_t moths = 0;
	int32_t nights = 0;
	bool floor = false;

	for (size_t i = diary_closed(d, w.end); i > 0; i--) {
		struct interval it = interval_sure(&d->items[i - 1]);
		if (it.to < w.start)
			break;
		if (it.state == CATCH_UNKNOWN)
			continue;
		moths += it.moths;
		nights += it.to - it.from;
		floor = floor || it.state == CATCH_FLOOR;
	}
	if (nights > 0)
		*out = mark_catch(moths, nights, floor);
	return nights > 0;
}

/* A week that lies wholly within one read interval has that interval's rate, unless the
 * interval is of two weeks or more: then this week was missed. The week in which it
 * began belongs to the visit that began it, on its first day too. */
static bool mark_inside(
	const struct diary *d, struct week w, int32_t last, struct mark *out)
{
	size_t i = diary_closed(d, w.end);

	if (i == d->n || d->items[i].from >= w.start || d->items[i].to > last)
		return false;
	struct interval it = interval_sure(&d->items[i]);
	if (it.state == CATCH_UNKNOWN || it.to - it.from >= 2 * WEEK)
		return false;
	*out = mark_catch(it.moths, it.to - it.from, it.state == CATCH_FLOOR);
	return true;
}

static bool hung_in(const struct diary *d, struct week w)
{
	size_t i = diary_closed(d, w.start);

	if (i < d->n && d->items[i].from <= w.end)
		return true;
	if (i > 0 && d->items[i - 1].to == w.start)
		return true;
	return diary_stand(d, w.end).cleared != DAY_NONE;
}

void flightline_of_trap(
	const struct diary *d, int32_t first, int32_t last, struct mark *out)
{
	size_t n = flightline_weeks(first, last);

	for (size_t i = 0; i < n; i++) {
		int32_t start = first + (int32_t)i * WEEK;
		int32_t end = start + WEEK - 1;
		struct week w = { start, end < last ? end : last };
		out[i] = (struct mark){ MARK_NOTHING, 0 };
		if (mark_closed(d, w, &out[i]) || mark_inside(d, w, last, &out[i]))
			continue;
		if (hung_in(d, w))
			out[i].kind = MARK_NOT_READ;
	}
}

static struct mark mean_of_week(
	const struct mark *marks, size_t n_traps, size_t n_weeks, size_t week)
{
	int64_t sum = 0, read = 0;
	bool hung = false, floor = false, caught = false;

	for (size_t t = 0; t < n_traps; t++) {
		struct mark m = marks[t * n_weeks + week];
		hung = hung || m.kind != MARK_NOTHING;
		floor = floor || m.kind == MARK_FLOOR;
		caught = caught || m.kind == MARK_CATCH;
		if (m.kind == MARK_NOTHING || m.kind == MARK_NOT_READ)
			continue;
		sum += m.x10;
		read++;
	}
	if (read == 0)
		return (struct mark){ hung ? MARK_NOT_READ : MARK_NOTHING, 0 };
	int32_t x10 = (int32_t)((2 * sum + read) / (2 * read));
	if (floor)
		return (struct mark){ MARK_FLOOR, x10 };
	return caught ? (struct mark){ MARK_CATCH, x10 < 1 ? 1 : x10 }
		      : (struct mark){ MARK_ZERO, 0 };
}

void flightline_mean(
	const struct mark *marks, size_t n_traps, size_t n_weeks, struct mark *out)
{
	for (size_t w = 0; w < n_weeks; w++)
		out[w] = mean_of_week(marks, n_traps, n_weeks, w);
}
