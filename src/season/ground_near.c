/* ground_near.c - who is near whom, and do neighbours catch more than they should? */
#include "season/ground.h"

#include <math.h>

static double nearest_other(const struct position *at, size_t n, size_t i)
{
	double least = (double)INFINITY;

	for (size_t j = 0; j < n; j++)
		if (j != i)
			least = fmin(least, ground_distance(at[i], at[j]));
	return least;
}

double ground_band(const struct position *at, size_t n)
{
	double band = 0, farthest = 0;

	for (size_t i = 0; i < n; i++) {
		band = fmax(band, nearest_other(at, n, i));
		farthest = fmax(farthest, ground_distance(at[0], at[i]));
	}
	return farthest > 0 ? band : (double)INFINITY;
}

double ground_spacing(const struct position *at, size_t n)
{
	double least = (double)INFINITY;

	for (size_t i = 0; i < n; i++)
		for (size_t j = 0; j < i; j++) {
			double d = ground_distance(at[i], at[j]);
			if (d > 0)
				least = fmin(least, d);
		}
	return isinf(least) ? 0 : least;
}

/* The values looked at, and those of them within the band. */
struct field {
	double n, sum, near_n, near_sum, lo, hi;
};

static void field_add(struct field *f, double x, bool is_near)
{
	f->n++;
	f->sum += x;
	f->near_n += is_near;
	f->near_sum += is_near ? x : 0;
	f->lo = fmin(f->lo, x);
	f->hi = fmax(f->hi, x);
}

/* squares: of the distances from the mean, added up. With 0/1 weights the published
 * denominator, s^2 (n S1 - W^2) / (n - 1), has S1 = W: it is the variance of a total of
 * W values drawn without putting back. */
static double z_of(const struct field *f, double squares)
{
	if (!(f->hi > f->lo) || f->near_n < 1 || f->near_n >= f->n)
		return (double)NAN;
	double variance = squares / f->n * f->near_n * (f->n - f->near_n) / (f->n - 1);
	return (f->near_sum - f->near_n * (f->sum / f->n)) / sqrt(variance);
}

static double z_near(const double *x, const struct position *at, size_t n, double band,
	size_t i, bool with_self)
{
	struct field f = { .lo = (double)INFINITY, .hi = -(double)INFINITY };
	double squares = 0;

	for (size_t j = 0; j < n; j++)
		if (j != i || with_self)
			field_add(&f, x[j],
				j == i || ground_distance(at[i], at[j]) <= band);
	for (size_t j = 0; j < n; j++)
		if (j != i || with_self)
			squares += (x[j] - f.sum / f.n) * (x[j] - f.sum / f.n);
	return z_of(&f, squares);
}

double ground_gi_star(
	const double *x, const struct position *at, size_t n, double band, size_t i)
{
	return z_near(x, at, n, band, i, true);
}

double ground_gi(
	const double *x, const struct position *at, size_t n, double band, size_t i)
{
	return z_near(x, at, n, band, i, false);
}
