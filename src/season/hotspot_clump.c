/* hotspot_clump.c - is the catch more uneven than chance makes it? */
#include "season/hotspot.h"

#include "base/mem.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* With more moths a trap whose expected count is small counts for nothing beside the
 * others, and throwing them all would take long. */
enum { THROWN_MAX = 2000 };

/* Sums that are equal may differ by rounding; unequal ones differ by far more. */
static const double TIE = 1e-9;

struct farm {
	const struct hot_catch *traps;
	size_t n;
	int64_t moths, nights;
};

static struct farm farm_of(const struct hot_catch *traps, size_t n)
{
	struct farm f = { .traps = traps, .n = n };

	for (size_t i = 0; i < n; i++) {
		assert(traps[i].moths >= 0 && traps[i].nights >= 1);
		f.moths += traps[i].moths;
		f.nights += traps[i].nights;
	}
	return f;
}

static double expected(const struct farm *f, size_t i)
{
	return (double)f->traps[i].nights * (double)f->moths / (double)f->nights;
}

static bool is_sparse(const struct farm *f)
{
	for (size_t i = 0; i < f->n; i++)
		if (expected(f, i) < hot_constants.clump_expected)
			return true;
	return false;
}

static double x2_of(const struct farm *f)
{
	double sum = 0;

	for (size_t i = 0; i < f->n; i++) {
		double off = (double)f->traps[i].moths - expected(f, i);
		sum += off * off / expected(f, i);
	}
	return sum;
}

/* n (sum y^2 - T) / (T^2 - T), where all nights are equal. */
static double morisita(const struct farm *f)
{
	int64_t squares = 0;

	for (size_t i = 0; i < f->n; i++) {
		if (f->traps[i].nights != f->traps[0].nights)
			return (double)NAN;
		squares += f->traps[i].moths * f->traps[i].moths;
	}
	return f->moths < 2 ? (double)NAN
			    : (double)f->n * (double)(squares - f->moths) /
				      ((double)f->moths * (double)(f->moths - 1));
}

/* The trap in whose nights this one falls; upto[i] is the sum of nights through i. */
static size_t trap_at(const int64_t *upto, size_t n, int64_t night)
{
	size_t lo = 0, hi = n - 1;

	while (lo < hi) {
		size_t mid = (lo + hi) / 2;
		if (night < upto[mid])
			hi = mid;
		else
			lo = mid + 1;
	}
	return lo;
}

static void throw_all(
	const struct farm *f, const int64_t *upto, struct dice *dice, int64_t *caught)
{
	memset(caught, 0, f->n * sizeof *caught);
	for (int64_t k = 0; k < f->moths; k++) {
		uint64_t night = dice_below(dice, (uint64_t)f->nights);
		caught[trap_at(upto, f->n, (int64_t)night)]++;
	}
}

/* Grows with X2: the sum of y^2/e. */
static double unevenness(const struct farm *f, const int64_t *caught)
{
	double sum = 0;

	for (size_t i = 0; i < f->n; i++)
		sum += (double)(caught[i] * caught[i]) / (double)f->traps[i].nights;
	return sum;
}

/* How many of HOT_SHUFFLES throws of all moths are as uneven as the catch. */
static int64_t throws_as_high(const struct farm *f, uint64_t seed)
{
	struct dice dice = { seed };
	int64_t *upto = mem_new(f->n, sizeof *upto), count = 0, sum = 0;
	int64_t *caught = mem_new(f->n, sizeof *caught);

	for (size_t i = 0; i < f->n; i++) {
		upto[i] = sum += f->traps[i].nights;
		caught[i] = f->traps[i].moths;
	}
	double observed = unevenness(f, caught) * (1 - TIE);
	for (int k = 0; k < HOT_SHUFFLES; k++) {
		throw_all(f, upto, &dice, caught);
		count += unevenness(f, caught) >= observed;
	}
	free(upto);
	free(caught);
	return count;
}

struct hot_clumping hot_clumping_of(
	const struct hot_catch *traps, size_t n, uint64_t seed)
{
	const struct hot_constants *c = &hot_constants;
	const double none = (double)NAN;
	struct farm f = farm_of(traps, n);
	struct hot_clumping out = {
		.x2 = none, .phi = none, .morisita = none, .p = none
	};

	if (n < 2 || f.moths == 0)
		return out;
	out.is_enough = n >= (size_t)c->clump_traps && f.moths >= c->clump_moths;
	out.x2 = x2_of(&f);
	out.phi = out.x2 / (double)(n - 1);
	out.morisita = morisita(&f);
	out.is_shuffled = f.moths <= THROWN_MAX && is_sparse(&f);
	if (out.is_shuffled) {
		out.as_high = throws_as_high(&f, seed);
		out.p = (double)(out.as_high + 1) / (HOT_SHUFFLES + 1);
	} else
		out.p = chance_chi_square(out.x2, (double)(n - 1));
	out.is_clumped = out.is_enough && out.phi > c->clump_phi && out.p <= c->luck;
	return out;
}
