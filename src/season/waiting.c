#include "season/waiting.h"

static const struct instant never = { .minute = INSTANT_NONE };

/* What one treatment bars, in minutes as struct instant has them. */
struct bar {
	int64_t begin, rei; /* of the application; when people may enter again */
	int64_t phi;        /* when the block may be picked again */
	bool rei_known, phi_known;
};

/* The first minute of a day, also where clocks change at midnight: the one after the
 * last of the day before. */
static int64_t start_of(const struct zone *z, int32_t day)
{
	return zone_local(z, day - 1, MINUTES_A_DAY - 1).minute + 1;
}

/* Of a treatment that has no day nothing is known, ever. */
static struct bar bar_of(const struct treatment *t, const struct zone *z)
{
	struct bar b = { .begin = INT64_MIN, .rei = INT64_MAX, .phi = INT64_MAX };

	if (t->day == DAY_NONE)
		return b;
	int64_t end = t->until.minute;
	if (end == INSTANT_NONE)
		end = zone_local(z, t->day, MINUTES_A_DAY).minute;
	b.begin = t->from.minute;
	if (b.begin == INSTANT_NONE || b.begin > end)
		b.begin = start_of(z, t->day);
	b.rei_known = t->rei_hours >= 0;
	b.rei = end + (b.rei_known ? (int64_t)t->rei_hours * 60
				   : (int64_t)WAITING_REI_DAYS * MINUTES_A_DAY);
	b.phi_known = t->phi_days >= 0;
	b.phi = start_of(z, t->day + (b.phi_known ? t->phi_days : WAITING_PHI_DAYS));
	return b;
}

/* Moves *at to where a treatment that has begun by then lets people in; false: it does
 * not bar *at. */
static bool entry_waits(const struct bar *b, int64_t *at)
{
	if (!b->rei_known || b->begin > *at || b->rei <= *at)
		return false;
	*at = b->rei;
	return true;
}

static int entry_unknown(
	const struct treatment *t, size_t n, const struct zone *z, int64_t at)
{
	int64_t last = at;
	int found = -1;

	for (size_t i = 0; i < n; i++) {
		struct bar b = bar_of(&t[i], z);
		if (b.rei_known || b.begin > at || b.rei <= last)
			continue;
		last = b.rei;
		found = (int)i;
	}
	return found;
}

/* Where one bar ends another may have begun: all are asked again after each. */
struct waiting waiting_entry(
	const struct treatment *t, size_t n, const struct zone *z, struct instant now)
{
	struct waiting w = { .until = never, .treatment = -1, .unknown = -1 };
	int64_t at = now.minute;

	if (at == INSTANT_NONE) {
		w.state = n > 0 ? WAITING_UNKNOWN : WAITING_FREE;
		return w;
	}
	for (size_t i = 0; i < n;) {
		struct bar b = bar_of(&t[i], z);
		bool waits = entry_waits(&b, &at);
		w.treatment = waits ? (int)i : w.treatment;
		i = waits ? 0 : i + 1;
	}
	w.unknown = entry_unknown(t, n, z, at);
	if (w.treatment >= 0) {
		w.state = WAITING_BARRED;
		w.until = zone_at(z, at);
	} else if (w.unknown >= 0) {
		w.state = WAITING_UNKNOWN;
		w.treatment = w.unknown;
	}
	return w;
}

/* From when on picking is allowed, as far as what was entered says. INT64_MIN: it says
 * nothing. */
static int64_t pick_from(const struct bar *b)
{
	int64_t rei = b->rei_known ? b->rei : INT64_MIN;
	int64_t phi = b->phi_known ? b->phi : INT64_MIN;

	return rei > phi ? rei : phi;
}

static bool counts(const struct treatment *t, const struct zone *z, int64_t at)
{
	return t->day <= instant_day(zone_at(z, at));
}

/* The first minute from `at` on at which picking is allowed; *which is the treatment
 * that bars until then, or stays as it was. */
static int64_t pick_wait_end(const struct treatment *t, size_t n, const struct zone *z,
	int64_t at, int *which)
{
	for (size_t i = 0; i < n;) {
		struct bar b = bar_of(&t[i], z);
		bool waits = counts(&t[i], z, at) && pick_from(&b) > at;
		at = waits ? pick_from(&b) : at;
		*which = waits ? (int)i : *which;
		i = waits ? 0 : i + 1;
	}
	return at;
}

/* Of the treatments that bar no longer, the one that did so last; -1: none did. */
static int pick_last(
	const struct treatment *t, size_t n, const struct zone *z, int64_t at)
{
	int64_t last = INT64_MIN;
	int found = -1;

	for (size_t i = 0; i < n; i++) {
		struct bar b = bar_of(&t[i], z);
		if (!counts(&t[i], z, at) || pick_from(&b) <= last)
			continue;
		last = pick_from(&b);
		found = (int)i;
	}
	return found;
}

static int pick_unknown(
	const struct treatment *t, size_t n, const struct zone *z, int64_t at)
{
	int64_t last = at;
	int found = -1;

	for (size_t i = 0; i < n; i++) {
		struct bar b = bar_of(&t[i], z);
		int64_t rei = b.rei_known ? INT64_MIN : b.rei;
		int64_t phi = b.phi_known ? INT64_MIN : b.phi;
		int64_t open = rei > phi ? rei : phi;
		if (!counts(&t[i], z, at) || open <= last)
			continue;
		last = open;
		found = (int)i;
	}
	return found;
}

static void pick_explain(
	struct pick_wait *w, const struct treatment *t, const struct zone *z)
{
	if (w->treatment < 0)
		return;
	struct bar b = bar_of(&t[w->treatment], z);
	struct instant from = zone_at(z, pick_from(&b));
	w->earliest = instant_day(from);
	w->by_reentry = b.rei_known && (!b.phi_known || b.rei > b.phi);
	w->from = w->by_reentry ? from : never;
}

struct pick_wait waiting_pick(
	const struct treatment *t, size_t n, const struct zone *z, int32_t day)
{
	struct pick_wait w = {
		.earliest = DAY_NONE, .treatment = -1, .from = never, .unknown = -1
	};

	if (day == DAY_NONE) {
		w.state = n > 0 ? WAITING_UNKNOWN : WAITING_FREE;
		return w;
	}
	int64_t asked = start_of(z, day);
	int64_t at = pick_wait_end(t, n, z, asked, &w.treatment);
	w.unknown = pick_unknown(t, n, z, at);
	bool that_day = instant_day(zone_at(z, at)) == day;
	if (w.unknown >= 0 && that_day) {
		w.state = WAITING_UNKNOWN;
		w.treatment = w.unknown;
		return w;
	}
	if (at > asked)
		w.state = that_day ? WAITING_FROM : WAITING_BARRED;
	else
		w.treatment = pick_last(t, n, z, at);
	pick_explain(&w, t, z);
	return w;
}
