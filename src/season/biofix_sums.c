/* biofix_sums.c - biofix rules that go by totals, weekly catches, means or a date. */
#include "biofix_parts.h"

enum { WEEK = 7 };

/* Moths that the rule counts in a reading. */
static int32_t counted(const struct biofix_numbers *k, const struct biofix_log *log,
	const struct reading *x)
{
	const struct diary *d = log->diaries[x->diary];
	int32_t females = d->visits[d->items[x->interval].visit].females;

	if (!k->males || females <= 0)
		return x->moths;
	return females < x->moths ? x->moths - females : 0;
}

static size_t round_of(const struct rounds *r, size_t reading)
{
	size_t i = 0;

	while (i + 1 < r->n && r->items[i + 1].first <= reading)
		i++;
	return i;
}

/* A trap was unread before the interval: what it missed may have been enough. */
static bool unread_before(const struct rounds *r, const struct nights_between *w)
{
	for (size_t i = 0; i < r->n_readings && r->readings[i].to <= w->by; i++)
		if (!r->readings[i].read && r->readings[i].from < w->after)
			return true;
	return false;
}

static void found_at(const struct rounds *r, size_t reading,
	const struct biofix_log *log, struct biofix *out)
{
	struct nights_between w = rounds_when(
		r, log->diaries, round_of(r, reading), r->readings[reading].to);

	w.or_earlier = w.or_earlier || unread_before(r, &w);
	biofix_found(out, BIOFIX_DATED, w);
}

void biofix_by_total(const struct biofix_numbers *k, const struct biofix_log *log,
	struct biofix *out)
{
	struct rounds r = { 0 };
	int64_t moths = 0;
	size_t i = 0;

	rounds_read(&r, log->diaries, log->n, log->first, log->last, ROUND_SPILL_DAYS);
	for (; i < r.n_readings; i++) {
		moths += counted(k, log, &r.readings[i]);
		if (moths >= k->moths)
			break;
	}
	if (i < r.n_readings) {
		found_at(&r, i, log, out);
		for (size_t j = 0; j <= i; j++)
			if (counted(k, log, &r.readings[j]) > 0)
				biofix_see(out, log, &r.readings[j]);
	}
	rounds_free(&r);
}

/* A reading joined with those of its trap before it that lie within the same seven
 * nights; *oldest: the first interval used. A single longer one counts at its mean. */
static bool week_has(
	const struct diary *d, size_t interval, int32_t moths, size_t *oldest)
{
	const struct interval *last = &d->items[interval];
	int64_t sum = interval_sure(last).moths;
	size_t i = interval;

	while (i > 0 && d->items[i].joins && d->items[i - 1].from >= last->to - WEEK)
		sum += interval_sure(&d->items[--i]).moths;
	int32_t nights = last->to - d->items[i].from;
	*oldest = i;
	return sum * WEEK >= (int64_t)moths * (nights > WEEK ? nights : WEEK);
}

void biofix_by_trap_week(const struct biofix_numbers *k, const struct biofix_log *log,
	struct biofix *out)
{
	struct rounds r = { 0 };

	rounds_read(&r, log->diaries, log->n, log->first, log->last, ROUND_SPILL_DAYS);
	for (size_t i = 0; i < r.n_readings; i++) {
		struct reading x = r.readings[i];
		size_t oldest, newest = x.interval;
		if (!week_has(log->diaries[x.diary], newest, k->moths, &oldest))
			continue;
		found_at(&r, i, log, out);
		for (x.interval = oldest; x.interval <= newest; x.interval++)
			biofix_see(out, log, &x);
		break;
	}
	rounds_free(&r);
}

/* Readings of up to a week are taken as they are, longer ones at their weekly mean. */
static bool mean_has(const struct rounds *r, const struct round *x, int32_t moths)
{
	double sum = 0;
	int32_t read = 0;

	for (size_t i = x->first; i < x->first + x->n; i++) {
		const struct reading *g = &r->readings[i];
		int32_t nights = g->to - g->from;
		if (!g->read)
			continue;
		sum += (double)g->moths * WEEK / (nights > WEEK ? nights : WEEK);
		read++;
	}
	return read > 0 && sum >= (double)moths * read * (1 - 1e-12);
}

void biofix_by_mean(const struct biofix_numbers *k, const struct biofix_log *log,
	struct biofix *out)
{
	struct rounds r = { 0 };

	rounds_read(&r, log->diaries, log->n, log->first, log->last, ROUND_SPILL_DAYS);
	for (size_t i = 0; i < r.n; i++) {
		if (!mean_has(&r, &r.items[i], k->moths))
			continue;
		found_at(&r, r.items[i].first + r.items[i].n - 1, log, out);
		biofix_see_rounds(out, log, &r, i, i);
		break;
	}
	rounds_free(&r);
}

void biofix_by_date(const struct biofix_numbers *k, const struct biofix_log *log,
	struct biofix *out)
{
	struct ymd start = day_to_ymd(log->first);
	int32_t day = day_from_ymd(start.year, k->md / 100, k->md % 100);

	if (day < log->first)
		day = day_from_ymd(start.year + 1, k->md / 100, k->md % 100);
	if (day == DAY_NONE || day > log->last)
		return;
	biofix_found(out, BIOFIX_DATED, (struct nights_between){ day - 1, day, false });
}
