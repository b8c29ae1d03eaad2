#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "../../src/season/hotspot_parts.h"

enum { SIX = 6, MANY = 60 };

static void hot_shuffle_of_equal_traps_shows_nothing(void **state)
{
	const struct hot_catch traps[SIX] = { { 3, 7 }, { 6, 14 }, { 3, 7 }, { 9, 21 },
		{ 3, 7 }, { 3, 7 } };
	const bool in[SIX] = { true, false, true };
	struct hot_shuffle s = hot_shuffle(traps, SIX, in, NULL, HOT_SEED);

	(void)state;
	assert_true(s.is_all && s.of == 15 && s.as_high == 15 && s.p == 1);
}

static void hot_shuffle_of_the_best_is_one_of_all(void **state)
{
	const struct hot_catch traps[SIX] = { { 9, 7 }, { 1, 7 }, { 8, 7 }, { 2, 7 },
		{ 0, 7 }, { 3, 7 } };
	const bool best[SIX] = { true, false, true };
	const bool worst[SIX] = { false, true, false, false, true };
	struct hot_shuffle s = hot_shuffle(traps, SIX, best, NULL, HOT_SEED);

	(void)state;
	assert_true(s.as_high == 1 && s.of == 15 && s.p == 1 / 15.);
	s = hot_shuffle(traps, SIX, worst, NULL, HOT_SEED);
	assert_true(s.as_high == 15 && s.p == 1);
}

static void hot_shuffle_without_a_rest_or_a_set_is_sure(void **state)
{
	const struct hot_catch traps[SIX] = { { 9, 7 }, { 1, 7 }, { 8, 7 }, { 2, 7 },
		{ 0, 7 }, { 3, 7 } };
	const bool all[SIX] = { true, true, true, true, true, true }, none[SIX] = { 0 };
	const int alone[SIX] = { 1, 2, 3, 4, 5, 6 };
	const bool *sets[] = { all, none, all };

	(void)state;
	for (int i = 0; i < 3; i++) {
		struct hot_shuffle s = hot_shuffle(
			traps, i ? SIX : 0, sets[i], i ? alone : NULL, HOT_SEED);
		assert_true(s.is_all && s.of == 1 && s.as_high == 1 && s.p == 1);
	}
	assert_true(hot_shuffle(traps, SIX, all, NULL, HOT_SEED).p == 1);
	assert_true(hot_shuffle(traps, SIX, none, NULL, HOT_SEED).p == 1);
}

/* Two blocks of three with one border trap each: 3 x 3 ways. The third block has border
 * traps only and counts for nothing: its empty nights would make 60 moths in 21 nights
 * look more than 30 in 7. */
static void hot_shuffle_inside_strata_leaves_out_those_of_one_kind(void **state)
{
	const struct hot_catch traps[8] = { { 9, 7 }, { 1, 7 }, { 0, 70 }, { 2, 7 },
		{ 30, 7 }, { 60, 21 }, { 0, 70 }, { 40, 7 } };
	const bool in[8] = { true, false, true, false, true, false, true, false };
	const int blocks[8] = { 4, 4, 2, 4, 9, 9, 2, 9 };
	const int renamed[8] = { 1, 1, 0, 1, -5, -5, 0, -5 };
	struct hot_shuffle s = hot_shuffle(traps, 8, in, blocks, HOT_SEED);

	(void)state;
	/* 9 and 30; as high: 9 and 40, 1 and 40, 2 and 40, itself */
	assert_true(s.is_all && s.of == 9 && s.as_high == 4);
	s = hot_shuffle(traps, 8, in, renamed, HOT_SEED);
	assert_true(s.of == 9 && s.as_high == 4);
}

/* What the subsets of one set are is written down twice: here by the bits of a
 * number. */
static void hot_shuffle_counts_what_bits_count(void **state)
{
	struct dice dice = { 5 };

	(void)state;
	for (int round = 0; round < 60; round++) {
		struct hot_catch traps[10];
		bool in[10];
		int64_t moths = 0, nights = 0, observed = 0, of = 0, as_high = 0;
		int size = 0;
		for (int i = 0; i < 10; i++) {
			traps[i].moths = (int64_t)dice_below(&dice, 12);
			traps[i].nights = 1 + (int64_t)dice_below(&dice, 30);
			in[i] = dice_below(&dice, 3) == 0;
			moths += traps[i].moths;
			nights += traps[i].nights;
			size += in[i];
		}
		for (int pass = 0; pass < 2; pass++)
			for (unsigned set = 0; set < 1024; set++) {
				int64_t sum = 0;
				bool is_set = true;
				for (int i = 0; i < 10; i++) {
					bool has = set >> i & 1;
					is_set &= has == in[i];
					if (has)
						sum += traps[i].moths * nights -
						       traps[i].nights * moths;
				}
				if (pass == 0 && is_set)
					observed = sum;
				if (pass == 0 || __builtin_popcount(set) != size)
					continue;
				of++;
				as_high += sum >= observed;
			}
		struct hot_shuffle s = hot_shuffle(traps, 10, in, NULL, HOT_SEED);
		assert_int_equal(s.of, of);
		assert_int_equal(s.as_high, as_high);
	}
}

/* One set of `size` traps that caught by far the most. */
static struct hot_shuffle shuffle_hot(int n, int size, uint64_t seed)
{
	struct hot_catch traps[MANY];
	bool in[MANY];

	for (int i = 0; i < n; i++) {
		in[i] = i % 7 == 3 && i / 7 < size;
		traps[i] = (struct hot_catch){ in[i] ? 90 : i % 5, 84 };
	}
	return hot_shuffle(traps, (size_t)n, in, NULL, seed);
}

static void hot_shuffle_samples_beyond_two_hundred_thousand(void **state)
{
	struct hot_shuffle all = shuffle_hot(60, 3, 1);  /* 34,220 */
	struct hot_shuffle some = shuffle_hot(60, 4, 1); /* 487,635 */

	(void)state;
	assert_true(all.is_all && all.of == 34220 && all.as_high == 1);
	assert_true(!some.is_all && some.of == HOT_SHUFFLES && some.as_high == 0);
	assert_true(some.p == 1 / 10000.);
}

static void hot_shuffle_repeats_with_its_seed(void **state)
{
	struct hot_catch traps[MANY];
	bool in[MANY];
	int64_t first = -1, differ = 0;

	(void)state;
	for (int i = 0; i < MANY; i++) {
		traps[i] = (struct hot_catch){ i * 37 % 11, 60 + i % 9 };
		in[i] = i < 5;
	}
	for (uint64_t seed = 1; seed < 5; seed++) {
		struct hot_shuffle a = hot_shuffle(traps, MANY, in, NULL, seed);
		struct hot_shuffle b = hot_shuffle(traps, MANY, in, NULL, seed);
		assert_true(a.as_high == b.as_high);
		differ += first >= 0 && a.as_high != first;
		first = a.as_high;
	}
	assert_true(differ > 0);
}

/* A sample of strata keeps their sizes: what is sampled comes near what all would
 * say. */
static void hot_shuffle_samples_inside_strata(void **state)
{
	struct hot_catch traps[SIX * 2];
	bool in[SIX * 2];
	int block[SIX * 2];
	struct dice dice = { 3 };

	(void)state;
	for (int i = 0; i < SIX * 2; i++) {
		traps[i] = (struct hot_catch){ i * 29 % 13 + i, 70 + i };
		in[i] = i % 3 == 1;
		block[i] = i % 2;
	}
	struct hot_shuffle all = hot_shuffle(traps, SIX * 2, in, block, HOT_SEED);
	struct hot_shuffle some = hot_shuffle_by(traps, SIX * 2, in, block,
		(struct hot_effort){ 0, HOT_SHUFFLES }, &dice);
	assert_true(all.is_all && all.of == 225 && !some.is_all);
	assert_true(fabs(all.p - some.p) < 0.02);
}

static void hot_power_grows_with_what_there_is_to_see(void **state)
{
	double none = hot_power(12, 3, 20, 1), three = hot_power(12, 3, 20, 3);
	double six = hot_power(12, 3, 20, 6), more = hot_power(30, 6, 20, 6);

	(void)state;
	print_message("shown alone, 3 of 12 traps: none there %.3f, threefold %.3f, "
		      "sixfold %.3f; 6 of 30, sixfold %.3f\n",
		none, three, six, more);
	assert_true(none <= 0.07);
	assert_true(three > none + 0.1 && six > three + 0.1 && more > six);
	assert_true(hot_power(12, 3, 20, 3) == three);
	assert_true(hot_power(60, 5, 20, 6) > 0.5);
}

static void hot_power_is_none_where_nothing_can_be_shown(void **state)
{
	(void)state;
	assert_true(hot_power(12, 1, 20, 9) == 0); /* one trap */
	assert_true(hot_power(12, 12, 20, 9) == 0);
	assert_true(hot_power(12, 0, 20, 9) == 0);
	assert_true(hot_power(0, 0, 20, 9) == 0);
	assert_true(hot_power(12, 3, 0, 9) == 0);
	assert_true(hot_power(12, 3, (double)NAN, 9) == 0);
	assert_true(hot_power(12, 3, 1e300, 9) >= 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(hot_shuffle_of_equal_traps_shows_nothing),
		cmocka_unit_test(hot_shuffle_of_the_best_is_one_of_all),
		cmocka_unit_test(hot_shuffle_without_a_rest_or_a_set_is_sure),
		cmocka_unit_test(
			hot_shuffle_inside_strata_leaves_out_those_of_one_kind),
		cmocka_unit_test(hot_shuffle_counts_what_bits_count),
		cmocka_unit_test(hot_shuffle_samples_beyond_two_hundred_thousand),
		cmocka_unit_test(hot_shuffle_repeats_with_its_seed),
		cmocka_unit_test(hot_shuffle_samples_inside_strata),
		cmocka_unit_test(hot_power_grows_with_what_there_is_to_see),
		cmocka_unit_test(hot_power_is_none_where_nothing_can_be_shown),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
