/* chance.c - the tails are GSL's. Its inverses are not used for the limits: they fail
 * for counts of some hundreds, and a failure there ends the program. Bisection cannot.
 * Above a million the tails fail too: CHANCE_COUNT_MAX keeps away from that. */
#include "season/chance.h"

#include <assert.h>
#include <gsl/gsl_cdf.h>
#include <math.h>

/* What the limits of 95 % leave out on either side. */
static const double LEFT_OUT = 0.025;

/* By what larger counts are divided. */
static int64_t shrink(int64_t n)
{
	return n <= CHANCE_COUNT_MAX ? 1 : (n - 1) / CHANCE_COUNT_MAX + 1;
}

/* P(X >= k) of n, n up to CHANCE_COUNT_MAX. */
static double upper_tail(int64_t k, int64_t n, double p)
{
	if (k <= 0)
		return 1;
	return k > n ? 0 : gsl_cdf_beta_P(p, (double)k, (double)(n - k + 1));
}

double chance_binomial(int64_t k, int64_t n, double p)
{
	assert(n >= 0 && p >= 0 && p <= 1);
	if (k > n)
		return 0;
	return upper_tail(k / shrink(n), n / shrink(n), p);
}

double chance_chi_square(double x, double df)
{
	assert(df >= 1);
	return x <= 0 ? 1 : gsl_cdf_chisq_Q(x, df);
}

double chance_t(double t, double df)
{
	assert(df >= 1);
	return gsl_cdf_tdist_Q(t, df);
}

double chance_t_quantile(double df)
{
	assert(df >= 1);
	return gsl_cdf_tdist_Pinv(1 - LEFT_OUT, df);
}

/* A chance that grows with x from 0, for k of n, or k of any number. */
typedef double rising(double x, int64_t k, int64_t n);

/* Where it passes p: lo and hi close in until no number is left between them. */
static double where(rising *chance, int64_t k, int64_t n, double p)
{
	double lo = 0, hi = 1;

	while (chance(hi, k, n) < p) {
		lo = hi;
		hi *= 2;
	}
	for (;;) {
		double mid = lo + (hi - lo) / 2;
		if (mid <= lo || mid >= hi)
			return hi;
		if (chance(mid, k, n) < p)
			lo = mid;
		else
			hi = mid;
	}
}

/* P(X >= k) of a Poisson count of this mean. */
static double count_rises(double mean, int64_t k, int64_t n)
{
	(void)n;
	return gsl_cdf_gamma_P(mean, (double)k, 1);
}

static double share_rises(double share, int64_t k, int64_t n)
{
	return upper_tail(k, n, share);
}

struct range chance_count(int64_t y)
{
	assert(y >= 0);
	int64_t by = shrink(y), k = y / by;
	return (struct range){ .at = (double)y,
		.lo = k == 0 ? 0 : (double)by * where(count_rises, k, 0, LEFT_OUT),
		.hi = (double)by * where(count_rises, k + 1, 0, 1 - LEFT_OUT) };
}

struct range chance_share(int64_t x, int64_t n)
{
	assert(x >= 0 && n >= 1 && x <= n);
	int64_t by = shrink(n), k = x / by, of = n / by;
	return (struct range){ .at = (double)x / (double)n,
		.lo = k == 0 ? 0 : where(share_rises, k, of, LEFT_OUT),
		.hi = k == of ? 1 : where(share_rises, k + 1, of, 1 - LEFT_OUT) };
}

uint64_t dice_next(struct dice *d)
{
	uint64_t z = d->state += 0x9E3779B97F4A7C15;

	z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
	z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
	return z ^ (z >> 31);
}

uint64_t dice_below(struct dice *d, uint64_t n)
{
	assert(n >= 1);
	uint64_t r = dice_next(d);
	while (r < n && r < -n % n) /* 2^64 mod n is below n: seldom worked out */
		r = dice_next(d);
	return r % n;
}
