/* flights_peaks.c - peaks of the smoothed weeks: high and steep enough, and apart. */
#include "flights_parts.h"

#include <assert.h>
#include <stdlib.h>

/* The smoothed week, with one 0 put before the first and after the last. */
static double height_at(const struct flights *f, int week)
{
	if (week < (int)f->first || week >= (int)f->end)
		return 0;
	return f->smooth[week];
}

/* Lowest point met from a peak until something higher or the end. */
static double lowest(const struct flights *f, int peak, int step)
{
	double top = height_at(f, peak), low = top;
	int before = (int)f->first - 1, after = (int)f->end;

	for (int w = peak + step; w >= before && w <= after; w += step) {
		double h = height_at(f, w);
		if (h > top)
			break;
		if (h < low)
			low = h;
	}
	return low;
}

static double prominence_of(const struct flights *f, int peak)
{
	double left = lowest(f, peak, -1), right = lowest(f, peak, 1);

	return height_at(f, peak) - (left > right ? left : right);
}

/* Last week of the flat run that starts at this one. */
static int flat_end(const struct flights *f, int week)
{
	while (week + 1 < (int)f->end && f->smooth[week + 1] == f->smooth[week])
		week++;
	return week;
}

void flights_add_candidates(struct flights *f)
{
	for (int w = (int)f->first; w < (int)f->end; w++) {
		int start = w;
		double h = f->smooth[start];
		w = flat_end(f, start);
		if (!(h > height_at(f, start - 1)) || !(h > height_at(f, w + 1)))
			continue;
		struct flight_candidate c = { .week = (start + w) / 2, .height = h };
		c.prominence = prominence_of(f, c.week);
		assert(f->n_candidates < FLIGHTS_MAX);
		f->candidates[f->n_candidates++] = c;
	}
}

static size_t keep_high_and_steep(
	const struct flights *f, int peaks[static FLIGHTS_MAX])
{
	const struct flight_constants *k = &flight_constants;
	double highest = 0;
	size_t n = 0;

	for (size_t i = 0; i < f->n_candidates; i++)
		if (f->candidates[i].height > highest)
			highest = f->candidates[i].height;
	for (size_t i = 0; i < f->n_candidates; i++) {
		const struct flight_candidate *c = &f->candidates[i];
		double least = k->least_height * highest, steep = k->drop * c->height;
		if (c->height >= least * (1 - FLIGHT_SLACK) &&
			c->prominence >= steep * (1 - FLIGHT_SLACK))
			peaks[n++] = c->week;
	}
	return n;
}

/* Middle of the longest run of least weeks strictly between two peaks. */
static int valley_between(const struct flights *f, int a, int b)
{
	int valley = a + 1, longest = 0;
	double low = f->smooth[a + 1];

	for (int w = a + 2; w < b; w++)
		if (f->smooth[w] < low)
			low = f->smooth[w];
	for (int w = a + 1; w < b; w++) {
		int start = w;
		if (f->smooth[w] > low)
			continue;
		while (w + 1 < b && f->smooth[w + 1] <= low)
			w++;
		if (w - start + 1 <= longest)
			continue;
		longest = w - start + 1;
		valley = (start + w) / 2;
	}
	return valley;
}

struct window {
	int32_t moths;
	double nights;
};

static struct window window_around(
	const struct flight_series *s, const struct flights *f, int week, int reach)
{
	double moths = 0, nights = 0;

	for (int w = week - reach; w <= week + reach; w++) {
		if (w < (int)f->first || w >= (int)f->end)
			continue;
		moths += s->moths[w];
		nights += s->nights[w];
	}
	/* Halves up, also where the spreading left one just short. */
	return (struct window){ (int32_t)(moths * (1 + FLIGHT_SLACK) + 0.5), nights };
}

struct dip {
	int lower; /* the lower of the two peaks, 0 or 1; the later on equal heights */
	int valley;
	double p; /* 2: it does not go down to half */
};

static struct dip dip_between(
	const struct flight_series *s, const struct flights *f, const int *pair)
{
	const struct flight_constants *k = &flight_constants;
	struct dip d = { .valley = valley_between(f, pair[0], pair[1]), .p = 2 };

	d.lower = f->smooth[pair[1]] <= f->smooth[pair[0]] ? 1 : 0;
	int peak = pair[d.lower];
	if (f->smooth[d.valley] > k->drop * f->smooth[peak] * (1 + FLIGHT_SLACK))
		return d;
	int reach = abs(peak - d.valley) >= k->wide_from ? 1 : 0;
	struct window high = window_around(s, f, peak, reach);
	struct window low = window_around(s, f, d.valley, reach);
	d.p = flight_dip_p(high.moths, high.nights, low.moths, low.nights);
	return d;
}

size_t flights_peaks(
	const struct flight_series *s, struct flights *f, int peaks[static FLIGHTS_MAX])
{
	size_t n = keep_high_and_steep(f, peaks);

	while (n > 1) {
		double worst = 0;
		size_t drop = 0;
		for (size_t i = 0; i + 1 < n; i++) {
			struct dip d = dip_between(s, f, &peaks[i]);
			f->valley_week[i] = d.valley;
			f->split_p[i] = d.p;
			if (d.p <= worst)
				continue;
			worst = d.p;
			drop = i + (size_t)d.lower;
		}
		if (worst <= flight_constants.dip_p)
			break;
		for (n--; drop < n; drop++)
			peaks[drop] = peaks[drop + 1];
	}
	return n;
}
