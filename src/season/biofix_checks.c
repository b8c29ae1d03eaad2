/* biofix_checks.c - biofix rules that go by what checks found, one after another. */
#include "biofix_parts.h"
#include "season/flights.h"

/* True if the nights before `after` were read as empty, as many as the rule wants. */
static bool empty_before(
	const struct biofix_numbers *k, const struct rounds *r, int32_t after)
{
	int32_t since = DAY_NONE;

	for (size_t i = 0; i < r->n_readings; i++) {
		const struct reading *x = &r->readings[i];
		bool empty = x->read && x->moths == 0;
		if (x->to > after)
			break;
		if (!empty)
			since = x->to;
		else if (since == DAY_NONE)
			since = x->from;
	}
	return since != DAY_NONE && after - since >= k->zeros;
}

/* The last check caught, and there is still time for the next to confirm it. */
static bool waits(const struct rounds *r, const struct biofix_log *log, int64_t moths,
	int32_t days, size_t *at)
{
	size_t i = rounds_read_before(r, r->n);

	if (i == r->n || r->items[i].moths < moths)
		return false;
	*at = i;
	return log->last - rounds_reach(r, i, moths) <= days;
}

void biofix_by_sustained(const struct biofix_numbers *k, const struct biofix_log *log,
	struct biofix *out)
{
	struct rounds r = { 0 };
	size_t next;

	rounds_read(&r, log->diaries, log->n, log->first, log->last, ROUND_SPILL_DAYS);
	size_t i = rounds_sustained(&r, k->moths, &next);
	bool found = i < r.n;
	if (found || waits(&r, log, k->moths, flight_constants.sustained_days, &i)) {
		struct nights_between w =
			rounds_when(&r, log->diaries, i, rounds_reach(&r, i, k->moths));
		if (k->zeros > 0 && !empty_before(k, &r, w.after))
			w.or_earlier = true;
		biofix_found(out, found ? BIOFIX_DATED : BIOFIX_WAITS, w);
		biofix_see_rounds(out, log, &r, i, found ? next : i);
	}
	rounds_free(&r);
}

/* Moths of the readings that are short enough for the rule. */
static int64_t short_moths(
	const struct biofix_numbers *k, const struct rounds *r, size_t i)
{
	const struct round *x = &r->items[i];
	int64_t moths = 0;

	for (size_t j = x->first; j < x->first + x->n; j++)
		if (r->readings[j].to - r->readings[j].from <= k->nights)
			moths += r->readings[j].moths;
	return moths;
}

/* A catch by then over more nights than the rule takes: it may have been met before. */
static bool long_catch_by(
	const struct biofix_numbers *k, const struct rounds *r, int32_t day)
{
	for (size_t i = 0; i < r->n_readings && r->readings[i].to <= day; i++) {
		const struct reading *x = &r->readings[i];
		if (x->moths > 0 && x->to - x->from > k->nights)
			return true;
	}
	return false;
}

/* First of two successive counts with moths; r->n: none. *next: the second. */
static size_t two_counts(
	const struct biofix_numbers *k, const struct rounds *r, size_t *next)
{
	for (size_t i = rounds_next_read(r, 0); i < r->n; i = *next) {
		*next = rounds_next_read(r, i + 1);
		if (*next == r->n)
			break;
		int32_t days = rounds_reach(r, *next, 1) - rounds_reach(r, i, 1);
		if (short_moths(k, r, i) >= k->moths && days <= k->nights &&
			short_moths(k, r, *next) >= k->moths)
			return i;
	}
	return r->n;
}

void biofix_by_counts(const struct biofix_numbers *k, const struct biofix_log *log,
	struct biofix *out)
{
	struct rounds r = { 0 };
	size_t next = 0;

	rounds_read(&r, log->diaries, log->n, log->first, log->last, ROUND_SPILL_DAYS);
	size_t i = two_counts(k, &r, &next);
	bool found = i < r.n;
	if (found || (waits(&r, log, k->moths, k->nights, &i) &&
			     short_moths(k, &r, i) >= k->moths)) {
		struct nights_between w =
			rounds_when(&r, log->diaries, i, rounds_reach(&r, i, k->moths));
		w.or_earlier = w.or_earlier || long_catch_by(k, &r, w.by);
		biofix_found(out, found ? BIOFIX_DATED : BIOFIX_WAITS, w);
		biofix_see_rounds(out, log, &r, i, found ? next : i);
	}
	rounds_free(&r);
}

/* True if the one night before the day of round i was what the rule asks for. */
static bool night_meets(
	const struct biofix_numbers *k, const struct rounds *r, size_t i)
{
	const struct round *x = &r->items[i];
	int32_t moths = 0, read = 0, caught = 0;

	for (size_t j = x->first; j < x->first + x->n; j++) {
		const struct reading *g = &r->readings[j];
		if (!g->read || g->to - g->from != 1)
			continue;
		read++;
		moths += g->moths;
		caught += g->moths > 0 ? 1 : 0;
	}
	return k->traps > 0 ? caught >= k->traps : moths > k->moths * read;
}

/* How many nights running from round i on meet the rule, up to its run. */
static size_t run_from(const struct biofix_numbers *k, const struct rounds *r, size_t i)
{
	size_t n = 0;

	while (n < (size_t)k->run && i + n < r->n && night_meets(k, r, i + n) &&
		r->items[i + n].day == r->items[i].day + (int32_t)n)
		n++;
	return n;
}

void biofix_by_nights(const struct biofix_numbers *k, const struct biofix_log *log,
	struct biofix *out)
{
	struct rounds r = { 0 };
	size_t i = 0, run = 0;

	rounds_read(&r, log->diaries, log->n, log->first, log->last, 0);
	for (; i < r.n; i++) {
		run = run_from(k, &r, i);
		if (run == (size_t)k->run ||
			(run > 0 && i + run == r.n &&
				log->last - r.items[r.n - 1].day <= 1))
			break;
	}
	if (i < r.n) {
		int32_t night = r.items[i].day, end = r.items[i + run - 1].day;
		/* A rule of the mean does not say which of its nights it dates to. */
		struct nights_between w = { night - 1, k->traps > 0 ? night : end,
			rounds_read_before(&r, i) == r.n ||
				long_catch_by(k, &r, night) };
		biofix_found(
			out, run == (size_t)k->run ? BIOFIX_DATED : BIOFIX_WAITS, w);
		biofix_see_rounds(out, log, &r, i, i + run - 1);
	}
	rounds_free(&r);
}
