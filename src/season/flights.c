#include "season/flights.h"

#include "base/words.h"
#include "flights_parts.h"

#include <assert.h>
#include <math.h>
#include <string.h>

enum { WEEK = 7 };

const struct flight_constants flight_constants = {
	.least_height = 0.10,
	.drop = 0.5,
	.dip_p = 0.05,
	.wide_from = 3,
	.edge_share = 0.10,
	.spike_share = 0.60,
	.too_few = 10,
	.sustained_days = 14,
};

const char *flight_flag_word(int i)
{
	static const char *const words[FLIGHT_FLAG_COUNT] = { N_("open start"),
		N_("still rising"), N_("not finished"), N_("gap at peak"),
		N_("gap at valley"), N_("one-week spike"), N_("too few"),
		N_("at least"), N_("traps changed") };

	assert(i >= 0 && i < FLIGHT_FLAG_COUNT);
	return words[i];
}

bool flight_same_hump(double dd50_before, double dd50, double generation)
{
	return dd50 - dd50_before < generation / 2;
}

/* First and one past the last week that anyone read. */
static void observed(const struct flight_series *s, size_t *first, size_t *end)
{
	*first = 0;
	*end = s->n;
	while (*end > 0 && s->nights[*end - 1] <= 0)
		(*end)--;
	while (*first < *end && s->nights[*first] <= 0)
		(*first)++;
}

static double median_nights(const struct flight_series *s)
{
	double sorted[FLIGHT_WEEKS_MAX];
	size_t n = 0;

	for (size_t w = 0; w < s->n; w++) {
		if (s->nights[w] <= 0)
			continue;
		size_t at = n++;
		for (; at > 0 && sorted[at - 1] > s->nights[w]; at--)
			sorted[at] = sorted[at - 1];
		sorted[at] = s->nights[w];
	}
	return n == 0 ? 0 : (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
}

/* A week of few nights at an end goes into its neighbour, unless nobody looked there:
 * its moths do not tell about that week. */
static void pool(struct flight_series *s, size_t thin, size_t into)
{
	if (s->nights[into] <= 0)
		return;
	s->moths[into] += s->moths[thin];
	s->nights[into] += s->nights[thin];
	s->at_least[into] = s->at_least[into] || s->at_least[thin];
	s->moths[thin] = s->nights[thin] = 0;
	s->at_least[thin] = false;
}

static void pool_thin_ends(struct flight_series *s)
{
	double least = median_nights(s) / 2;
	size_t first, end;

	observed(s, &first, &end);
	if (end - first < 2)
		return;
	bool thin_first = s->nights[first] < least;
	bool thin_last = s->nights[end - 1] < least;
	if (thin_first)
		pool(s, first, first + 1);
	if (thin_last)
		pool(s, end - 1, end - 2);
}

static void set_rates(const struct flight_series *s, struct flights *f)
{
	size_t seen = f->first;

	for (size_t w = f->first; w < f->end; w++) {
		if (s->nights[w] <= 0)
			continue;
		f->rate[w] = WEEK * s->moths[w] / s->nights[w];
		double step = (f->rate[w] - f->rate[seen]) / (double)(w - seen);
		for (size_t gap = seen + 1; gap < w; gap++) {
			f->rate[gap] = f->rate[seen] + step * (double)(gap - seen);
			f->filled[gap] = true;
		}
		seen = w;
	}
}

static double smooth_at(const struct flights *f, size_t w)
{
	bool left = w > f->first, right = w + 1 < f->end;
	double own = 2 * f->rate[w];

	if (left && right)
		return (f->rate[w - 1] + f->rate[w + 1] + own) / 4;
	if (left || right)
		return (own + f->rate[left ? w - 1 : w + 1]) / 3;
	return f->rate[w];
}

/* Weeks that differ by rounding alone are made equal, so that a flat top or a flat
 * valley is seen as one. */
static void set_smooth(struct flights *f)
{
	double highest = 0;

	for (size_t w = f->first; w < f->end; w++) {
		f->smooth[w] = smooth_at(f, w);
		if (f->smooth[w] > highest)
			highest = f->smooth[w];
	}
	for (size_t w = f->first; w < f->end; w++)
		for (size_t v = f->first; v < w; v++)
			if (fabs(f->smooth[w] - f->smooth[v]) <= FLIGHT_SLACK * highest)
				f->smooth[w] = f->smooth[v];
}

static double rate_total(const struct flights *f, const struct flight *x)
{
	double total = 0;

	for (int w = x->first_week; w <= x->last_week; w++)
		total += f->rate[w];
	return total;
}

/* Nights from the start of week 0 to where the flight has brought this share. */
static double share_date(const struct flights *f, const struct flight *x, double share)
{
	double target = share * rate_total(f, x), sum = 0;
	int w = x->first_week;

	while (w < x->last_week && sum + f->rate[w] < target * (1 - FLIGHT_SLACK))
		sum += f->rate[w++];
	double part = (target - sum) / f->rate[w];
	return WEEK * (w + (part < 1 ? part : 1));
}

static bool gap_within(const struct flights *f, int from, int to)
{
	for (int w = from; w <= to; w++)
		if (w >= (int)f->first && w < (int)f->end && f->filled[w])
			return true;
	return false;
}

static unsigned edge_flags(const struct flights *f, const struct flight *x, double best)
{
	double edge = flight_constants.edge_share * best * (1 + FLIGHT_SLACK);
	int last = (int)f->end - 1;
	unsigned flags = 0;

	if (x->first_week == (int)f->first && f->rate[f->first] > edge)
		flags |= FLIGHT_OPEN_START;
	if (x->peak_week == last)
		flags |= FLIGHT_STILL_RISING;
	else if (x->last_week == last && f->rate[last] > edge)
		flags |= FLIGHT_NOT_FINISHED;
	if (gap_within(f, x->peak_week - 1, x->peak_week + 1))
		flags |= FLIGHT_GAP_AT_PEAK;
	if (x->last_week < last && f->filled[x->last_week])
		flags |= FLIGHT_GAP_AT_VALLEY;
	return flags;
}

static unsigned flags_of(
	const struct flight_series *s, const struct flights *f, const struct flight *x)
{
	const struct flight_constants *k = &flight_constants;
	double best = 0;
	unsigned flags = 0;

	for (int w = x->first_week; w <= x->last_week; w++) {
		if (f->rate[w] > best)
			best = f->rate[w];
		if (s->at_least[w])
			flags |= FLIGHT_AT_LEAST;
		if (w > x->first_week && s->traps_changed[w])
			flags |= FLIGHT_TRAPS_CHANGED;
	}
	if (best > k->spike_share * rate_total(f, x) * (1 + FLIGHT_SLACK))
		flags |= FLIGHT_SPIKE;
	if (x->moths < k->too_few * (1 - FLIGHT_SLACK))
		flags |= FLIGHT_TOO_FEW;
	return flags | edge_flags(f, x, best);
}

static void set_flight(
	const struct flight_series *s, const struct flights *f, struct flight *x)
{
	x->moths = 0;
	for (int w = x->first_week; w <= x->last_week; w++)
		x->moths += s->moths[w];
	x->peak_rate = f->rate[x->peak_week];
	x->d10 = share_date(f, x, 0.1);
	x->d50 = share_date(f, x, 0.5);
	x->d90 = share_date(f, x, 0.9);
	x->flags = flags_of(s, f, x);
}

static void set_flights(const struct flight_series *s, struct flights *f)
{
	int peaks[FLIGHTS_MAX];

	f->n = flights_peaks(s, f, peaks);
	for (size_t k = 0; k < f->n; k++) {
		struct flight *x = &f->items[k];
		x->first_week = k == 0 ? (int)f->first : f->valley_week[k - 1] + 1;
		x->last_week = k + 1 == f->n ? (int)f->end - 1 : f->valley_week[k];
		x->peak_week = peaks[k];
		set_flight(s, f, x);
	}
}

void flights_find(const struct flight_series *s, struct flights *out)
{
	struct flight_series pooled = *s;

	assert(s->n <= FLIGHT_WEEKS_MAX);
	memset(out, 0, sizeof *out);
	pool_thin_ends(&pooled);
	observed(&pooled, &out->first, &out->end);
	set_rates(&pooled, out);
	set_smooth(out);
	flights_add_candidates(out);
	set_flights(&pooled, out);
}
