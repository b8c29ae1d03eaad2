/* What is claimed where there is nothing: invented farms of which no block truly
 * differs, with the spread between traps that counts of moths have. No published rule
 * says when a block is a hot spot; this is the ground on which ours stands. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "season/hotspot.h"

enum { FARMS = 2000, TRAPS_MAX = 20, BLOCKS_MAX = 5 };

struct farm {
	struct hot_catch traps[TRAPS_MAX];
	int block[TRAPS_MAX];
	size_t n;
	int n_blocks;
};

static int between(struct dice *d, int low, int high)
{
	return low + (int)dice_below(d, (uint64_t)(high - low + 1));
}

/* Above 0, up to 1. */
static double share(struct dice *d)
{
	return ((double)(dice_next(d) >> 11) + 1) / 9007199254740992.0;
}

/* By the time that passes between one and the next. */
static int64_t poisson(struct dice *d, double mean)
{
	int64_t count = -1;

	for (double time = 0; time <= mean; count++)
		time -= log(share(d));
	return count;
}

/* 12 to 20 traps dealt to 4 or 5 blocks. What a trap can expect differs from the farm's
 * mean by a gamma factor of shape 1: counts are negative binomial with k = 1. */
static struct farm farm_draw(struct dice *d)
{
	struct farm f = { .n = (size_t)between(d, 12, TRAPS_MAX),
		.n_blocks = between(d, 4, BLOCKS_MAX) };
	double mean = between(d, 3, 30);

	for (size_t i = 0; i < f.n; i++) {
		int64_t nights = between(d, 8, 12) * 7;
		double expected = mean * (double)nights / 70 * -log(share(d));
		f.traps[i] = (struct hot_catch){ poisson(d, expected), nights };
		f.block[i] = (int)i % f.n_blocks;
	}
	return f;
}

struct looked {
	struct hot_split split[BLOCKS_MAX];
	double p[BLOCKS_MAX];
	size_t n; /* blocks with enough */
};

static struct looked look(const struct farm *f)
{
	struct looked l = { .n = 0 };

	for (int block = 0; block < f->n_blocks; block++) {
		bool in[TRAPS_MAX];
		for (size_t i = 0; i < f->n; i++)
			in[i] = f->block[i] == block;
		l.split[l.n] = hot_split_of(f->traps, f->n, in);
		if (!hot_is_enough(&l.split[l.n]))
			continue;
		l.p[l.n++] = hot_shuffle(f->traps, f->n, in, NULL, HOT_SEED).p;
	}
	return l;
}

/* The highest grade of its blocks. */
static enum hot_grade claimed(const struct farm *f)
{
	struct looked l = look(f);
	double holm[BLOCKS_MAX], bh[BLOCKS_MAX];
	enum hot_grade best = HOT_TOO_LITTLE;

	hot_holm(l.p, l.n, holm);
	hot_bh(l.p, l.n, bh);
	for (size_t i = 0; i < l.n; i++) {
		const struct hot_evidence e = { hot_luck(&l.split[i]), holm[i], bh[i],
			hot_ratio_exact(&l.split[i]).at };
		enum hot_grade g = hot_grade_of(&l.split[i], &e);
		best = g > best ? g : best;
	}
	return best;
}

static void hot_spots_are_seldom_claimed_where_there_are_none(void **state)
{
	struct dice d = { 20260721 };
	int farms[HOT_GRADE_COUNT] = { 0 };

	(void)state;
	for (int i = 0; i < FARMS; i++) {
		struct farm f = farm_draw(&d);
		farms[claimed(&f)]++;
	}
	int clear = farms[HOT_CLEAR], watch = clear + farms[HOT_WATCH];
	print_message(
		"of %d farms without any hot spot (k = 1): clear %.1f %%, watch or "
		"better %.1f %%; beyond luck alone %.1f %%; too little %.1f %%\n",
		FARMS, 100. * clear / FARMS, 100. * watch / FARMS,
		100. * (watch + farms[HOT_HIGHER]) / FARMS,
		100. * farms[HOT_TOO_LITTLE] / FARMS);
	assert_true(clear * 20 <= FARMS);
	assert_true(watch * 10 <= FARMS);
	/* else nothing was tried */
	assert_true(clear > 0 && farms[HOT_HIGHER] * 4 > FARMS);
	assert_true(farms[HOT_TOO_LITTLE] * 20 < FARMS);
}

/* The generator, by its moments: mean m, variance m + m^2. */
static void hot_simulation_has_the_spread_that_it_says(void **state)
{
	enum { DRAWS = 200000 };
	struct dice d = { 1 };
	double sum = 0, squares = 0;

	(void)state;
	for (int i = 0; i < DRAWS; i++) {
		double y = (double)poisson(&d, -5 * log(share(&d)));
		sum += y;
		squares += y * y;
	}
	double mean = sum / DRAWS, variance = squares / DRAWS - mean * mean;
	assert_true(fabs(mean - 5) < 0.1);
	assert_true(fabs(variance - 30) < 1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(hot_spots_are_seldom_claimed_where_there_are_none),
		cmocka_unit_test(hot_simulation_has_the_spread_that_it_says),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
