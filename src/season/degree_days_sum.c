/* degree_days_sum.c - degree-days added up, with what is missing or filled. */
#include "season/degree_days.h"

#include <math.h>

/* A span on its way: `at` is the first entry that is not before the day. */
struct walk {
	const struct dd_rule *rule;
	const struct dd_span *span;
	size_t at;
	struct dd_sum sum;
};

/* False if one is NAN, too. */
static bool is_known(const struct dd_temps *t)
{
	return t->min <= t->max;
}

/* First entry that is not before the day. */
static size_t find(const struct dd_span *s, int32_t day)
{
	size_t lo = 0, hi = s->n;

	while (lo < hi) {
		size_t mid = lo + (hi - lo) / 2;
		if (s->temps[mid].day < day)
			lo = mid + 1;
		else
			hi = mid;
	}
	return lo;
}

/* The day's own temperatures and tomorrow's minimum. */
static struct dd_temps take(struct walk *w, int32_t day, double *next_min)
{
	const struct dd_temps *temps = w->span->temps;
	size_t n = w->span->n;
	struct dd_temps today = { .day = day, .min = NAN, .max = NAN };

	if (w->at < n && temps[w->at].day == day)
		today = temps[w->at++];
	*next_min = NAN;
	if (w->at < n && temps[w->at].day - 1 == day && is_known(&temps[w->at]))
		*next_min = temps[w->at].min;
	return today;
}

/* Adds a day to the sum; NAN if it is missing. */
static double step(struct walk *w, const struct dd_temps *t, double next_min)
{
	if (!is_known(t)) {
		w->sum.missing++;
		return NAN;
	}
	double dd = dd_day(w->rule, t->min, t->max, next_min);
	w->sum.sum += dd;
	w->sum.days++;
	w->sum.filled += t->filled;
	w->sum.single_days += dd_is_double(w->rule->method) && isnan(next_min);
	return dd;
}

static bool is_empty(const struct dd_span *s)
{
	return s->first == DAY_NONE || s->last < s->first;
}

struct dd_sum dd_total(
	const struct dd_rule *r, const struct dd_span *span, dd_each *each, void *arg)
{
	struct walk w = { .rule = r, .span = span, .at = find(span, span->first) };

	if (is_empty(span))
		return w.sum;
	for (int64_t day = span->first; day <= span->last; day++) {
		double next_min;
		struct dd_temps today = take(&w, (int32_t)day, &next_min);
		double dd = step(&w, &today, next_min);
		if (each != NULL)
			each(arg, &today, dd, &w.sum);
	}
	return w.sum;
}

int32_t dd_reaches(const struct dd_rule *r, const struct dd_span *span, double target,
	int32_t *missing)
{
	struct walk w = { .rule = r, .span = span, .at = find(span, span->first) };
	int32_t reached = DAY_NONE;

	for (int64_t day = span->first;
		!is_empty(span) && reached == DAY_NONE && day <= span->last; day++) {
		double next_min;
		struct dd_temps today = take(&w, (int32_t)day, &next_min);
		step(&w, &today, next_min);
		if (w.sum.sum >= target)
			reached = (int32_t)day;
	}
	if (missing != NULL)
		*missing = w.sum.missing;
	return reached;
}

/* What the missing day would be. */
static struct dd_temps fill(
	struct dd_temps t, struct dd_temps before, struct dd_temps after)
{
	t.min = isnan(t.min) ? (before.min + after.min) / 2 : t.min;
	t.max = isnan(t.max) ? (before.max + after.max) / 2 : t.max;
	t.filled = true;
	return t;
}

/* An unfilled gap between before and after, whose own entries are temps[0..n-1]. */
static size_t fill_gap(const struct dd_temps *temps, size_t n,
	const struct dd_temps *before, struct dd_temps *out, size_t *n_out)
{
	const struct dd_temps *after = &temps[n];
	size_t filled = 0;

	for (int32_t day = before->day + 1; day < after->day; day++) {
		bool there = temps->day == day;
		struct dd_temps none = { .day = day, .min = NAN, .max = NAN };
		struct dd_temps t = fill(there ? *temps : none, *before, *after);
		if (is_known(&t))
			filled++;
		else
			t = *temps;
		out[(*n_out)++] = t;
		temps += there;
	}
	return filled;
}

size_t dd_fill(const struct dd_temps *temps, size_t n, int32_t max_days,
	struct dd_temps *out, size_t *n_out)
{
	size_t filled = 0;
	const struct dd_temps *before = NULL;

	*n_out = 0;
	for (size_t i = 0; i < n;) {
		size_t own = 0; /* entries without temperatures from here on */
		while (i + own < n && !is_known(&temps[i + own]))
			own++;
		bool closed = before != NULL && i + own < n;
		int32_t gap = closed ? temps[i + own].day - before->day - 1 : 0;
		if (closed && gap > 0 && gap <= max_days)
			filled += fill_gap(&temps[i], own, before, out, n_out);
		else
			for (size_t k = 0; k < own; k++)
				out[(*n_out)++] = temps[i + k];
		i += own;
		if (i < n) {
			before = &temps[i];
			out[(*n_out)++] = temps[i++];
		}
	}
	return filled;
}
