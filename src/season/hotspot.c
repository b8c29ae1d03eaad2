#include "season/hotspot.h"

#include <assert.h>
#include <math.h>

const struct hot_constants hot_constants = {
	.ratio_named = 2,
	.traps_in = 2,
	.traps_out = 3,
	.subsets = 20,
	.moths = 20,
	.luck = 0.05,
	.watch = 0.10,
	.clear = 0.05,
	.clump_phi = 1.5,
	.clump_expected = 5,
	.clump_traps = 6,
	.clump_moths = 20,
	.near_traps = 12,
	.near_members = 3,
};

static const char *const words[HOT_GRADE_COUNT] = {
	[HOT_TOO_LITTLE] = "too little",
	[HOT_LUCK] = "luck",
	[HOT_HIGHER] = "higher",
	[HOT_WATCH] = "watch",
	[HOT_CLEAR] = "clear",
};

const char *hot_grade_word(enum hot_grade g)
{
	return words[g];
}

static struct range scaled(struct range r, double by)
{
	return (struct range){ r.at * by, r.lo * by, r.hi * by };
}

struct range hot_rate(int64_t moths, int64_t nights)
{
	assert(nights >= 1);
	return scaled(chance_count(moths), 7 / (double)nights);
}

struct hot_split hot_split_of(const struct hot_catch *traps, size_t n, const bool *in)
{
	struct hot_split s = { 0 };

	for (size_t i = 0; i < n; i++) {
		*(in[i] ? &s.moths_in : &s.moths_out) += traps[i].moths;
		*(in[i] ? &s.nights_in : &s.nights_out) += traps[i].nights;
		*(in[i] ? &s.n_in : &s.n_out) += 1;
	}
	return s;
}

double hot_luck(const struct hot_split *s)
{
	int64_t nights = s->nights_in + s->nights_out;

	assert(nights >= 1);
	return chance_binomial(s->moths_in, s->moths_in + s->moths_out,
		(double)s->nights_in / (double)nights);
}

/* With no nights on one side, or no moths at all, nothing is known of it. */
struct range hot_ratio_exact(const struct hot_split *s)
{
	int64_t moths = s->moths_in + s->moths_out;

	if (moths == 0 || s->nights_in == 0 || s->nights_out == 0)
		return (struct range){ (double)NAN, 0, (double)INFINITY };
	struct range share = chance_share(s->moths_in, moths);
	struct range odds = { (double)s->moths_in / (double)s->moths_out,
		share.lo / (1 - share.lo), share.hi / (1 - share.hi) };
	return scaled(odds, (double)s->nights_out / (double)s->nights_in);
}

/* Pearson's chi-square of all traps against the rate of their own side. */
static double pearson(const struct hot_split *s, const struct hot_catch *traps,
	size_t n, const bool *in)
{
	double inside = (double)s->moths_in / (double)s->nights_in;
	double outside = (double)s->moths_out / (double)s->nights_out, sum = 0;

	for (size_t i = 0; i < n; i++) {
		double mean = (double)traps[i].nights * (in[i] ? inside : outside);
		double off = (double)traps[i].moths - mean;
		sum += off * off / mean;
	}
	return sum;
}

struct hot_quasi hot_ratio_quasi(
	const struct hot_catch *traps, size_t n, const bool *in)
{
	const double none = (double)NAN;
	struct hot_split s = hot_split_of(traps, n, in);
	double a = (double)s.moths_in, b = (double)s.moths_out;

	if (n <= 2 || s.moths_in == 0 || s.moths_out == 0)
		return (struct hot_quasi){ false, none, none, none, none, none,
			{ none, none, none } };
	double df = (double)n - 2;
	double lambda = log(a / (double)s.nights_in / (b / (double)s.nights_out));
	double phi = pearson(&s, traps, n, in) / df;
	double se = sqrt(fmax(1, phi) * (1 / a + 1 / b));
	double reach = chance_t_quantile(df) * se;
	return (struct hot_quasi){ true, lambda, phi, se, lambda / se,
		chance_t(lambda / se, df),
		{ exp(lambda), exp(lambda - reach), exp(lambda + reach) } };
}

int64_t hot_subsets(int n, int m, int64_t most)
{
	int64_t ways = 1;

	if (m < 0 || m > n)
		return 0;
	m = m > n - m ? n - m : m;
	for (int i = 1; i <= m; i++) {
		if (__builtin_mul_overflow(ways, (int64_t)(n - m + i), &ways))
			return most;
		ways /= i;
		if (ways >= most)
			return most;
	}
	return ways < most ? ways : most;
}

bool hot_is_enough(const struct hot_split *s)
{
	const struct hot_constants *c = &hot_constants;

	return s->n_in >= c->traps_in && s->n_out >= c->traps_out &&
	       s->moths_in + s->moths_out >= c->moths &&
	       hot_subsets(s->n_in + s->n_out, s->n_in, c->subsets) >= c->subsets;
}

enum hot_grade hot_grade_of(const struct hot_split *s, const struct hot_evidence *e)
{
	const struct hot_constants *c = &hot_constants;

	if (!hot_is_enough(s))
		return HOT_TOO_LITTLE;
	if (!(e->luck <= c->luck))
		return HOT_LUCK;
	if (e->holm <= c->clear && e->ratio >= c->ratio_named)
		return HOT_CLEAR;
	return e->bh <= c->watch && e->ratio >= c->ratio_named ? HOT_WATCH : HOT_HIGHER;
}
