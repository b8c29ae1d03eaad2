/* gradient_fit.c - the leg with a slope: quasi-Poisson with a log link, by Newton. */
#include "gradient_parts.h"

#include <math.h>

/* The traps looked at. Distances are taken as parts of the farthest. */
struct fit {
	const struct hot_catch *traps;
	const double *metres;
	size_t n, without;
	double scale;
	double a, b;
};

struct sums {
	double s0, s1,
		s2;    /* of what is expected, and with the distance and its square */
	double u0, u1; /* of what is caught beyond that */
	double pearson;
};

static struct sums sums_of(const struct fit *f)
{
	struct sums s = { 0 };

	for (size_t i = 0; i < f->n; i++) {
		if (i == f->without)
			continue;
		double d = f->metres[i] / f->scale, y = (double)f->traps[i].moths;
		double mu = (double)f->traps[i].nights * exp(f->a + f->b * d);
		s.s0 += mu;
		s.s1 += mu * d;
		s.s2 += mu * d * d;
		s.u0 += y - mu;
		s.u1 += (y - mu) * d;
		s.pearson += (y - mu) * (y - mu) / mu;
	}
	return s;
}

static double capped(double step)
{
	return fmin(gradient_constants.step, fmax(-gradient_constants.step, step));
}

static double bend_of(const struct sums *s)
{
	return s->s0 * s->s2 - s->s1 * s->s1;
}

/* False when it does not come to rest. */
static bool climb(struct fit *f)
{
	for (int round = 0; round < gradient_constants.rounds; round++) {
		struct sums s = sums_of(f);
		double bend = bend_of(&s);

		if (!(bend > 0) || !isfinite(bend))
			return false;
		double da = capped((s.s2 * s.u0 - s.s1 * s.u1) / bend);
		double db = capped((s.s0 * s.u1 - s.s1 * s.u0) / bend);
		f->a += da;
		f->b += db;
		if (fabs(da) < gradient_constants.stop &&
			fabs(db) < gradient_constants.stop)
			return true;
	}
	return false;
}

/* Sets out from no slope; false where there can be none. */
static bool prepare(struct fit *f)
{
	double moths = 0, nights = 0, least = (double)INFINITY;

	for (size_t i = 0; i < f->n; i++) {
		if (i == f->without)
			continue;
		moths += (double)f->traps[i].moths;
		nights += (double)f->traps[i].nights;
		least = fmin(least, f->metres[i]);
		f->scale = fmax(f->scale, f->metres[i]);
	}
	if (!(moths > 0) || !(f->scale > least))
		return false;
	f->a = log(moths / nights);
	return true;
}

struct slope gradient_fit(
	const struct hot_catch *traps, const double *metres, size_t n, size_t without)
{
	struct fit f = { .traps = traps, .metres = metres, .n = n, .without = without };
	double nan = (double)NAN, df = (double)n - (without < n) - 2;

	if (df < 1 || !prepare(&f) || !climb(&f))
		return (struct slope){ false, nan, nan, nan, nan, nan, nan };
	struct sums s = sums_of(&f);
	double phi = s.pearson / df, b = f.b / f.scale;
	double se = sqrt(fmax(1, phi) * s.s0 / bend_of(&s)) / f.scale;
	double reach = chance_t_quantile(df) * se;
	return (struct slope){ .is_fitted = true,
		.a = f.a,
		.b = b,
		.phi = phi,
		.se = se,
		.lo = b - reach,
		.hi = b + reach };
}
