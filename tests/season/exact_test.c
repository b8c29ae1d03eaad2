#include "season/exact.h"

#include "season/log.h"

static void ratio_of_has_lowest_terms(void **state)
{
	(void)state;
	assert_int_equal(ratio_of(84, 10).num, 42);
	assert_int_equal(ratio_of(84, 10).den, 5);
	assert_int_equal(ratio_of(0, 7).den, 1);
}

static void ratio_cmp_is_exact_at_any_size(void **state)
{
	static const struct {
		const char *why;
		struct ratio a, b;
		int want;
	} row[] = {
		{ "equal whole numbers", { 5, 1 }, { 5, 1 }, 0 },
		{ "unequal terms, one value", { 84, 10 }, { 42, 5 }, 0 },
		{ "a third is more than 0.33", { 1, 3 }, { 33, 100 }, 1 },
		{ "a third is less than 0.34", { 1, 3 }, { 34, 100 }, -1 },
		{ "zero is less than a little", { 0, 1 }, { 1, INT64_MAX }, -1 },
		{ "zero is zero", { 0, 5 }, { 0, 1 }, 0 },
		{ "neighbours whose products overflow", { INT64_MAX - 1, INT64_MAX },
			{ INT64_MAX - 2, INT64_MAX - 1 }, 1 },
		{ "the other way", { INT64_MAX - 2, INT64_MAX - 1 },
			{ INT64_MAX - 1, INT64_MAX }, -1 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		int got = ratio_cmp(row[i].a, row[i].b);
		if (got != row[i].want)
			fail_msg("%s: %d, not %d", row[i].why, got, row[i].want);
	}
}

static void ratio_x10_rounds_halves_up(void **state)
{
	static const struct {
		const char *why;
		struct ratio r;
		int32_t want;
	} row[] = {
		{ "12 moths in 10 nights", { 84, 10 }, 84 },
		{ "half a tenth", { 1, 20 }, 1 },
		{ "just under half a tenth", { 499, 10000 }, 0 },
		{ "two thirds", { 2, 3 }, 7 },
		{ "a huge denominator", { INT64_MAX / 2, INT64_MAX - 1 }, 5 },
		{ "too large to show stays the largest", { INT64_MAX, 1 }, INT32_MAX },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		int32_t got = ratio_x10(row[i].r);
		if (got != row[i].want)
			fail_msg("%s: %d, not %d", row[i].why, (int)got,
				(int)row[i].want);
	}
}

static void bounds_add_sums_both_ends(void **state)
{
	struct bounds sum = bounds_add(bounds_between(1, 3, 7), bounds_exact(1, 2));
	(void)state;
	assert_int_equal(ratio_cmp(sum.lo, ratio_of(9, 14)), 0);
	assert_int_equal(ratio_cmp(sum.hi, ratio_of(13, 14)), 0);
	assert_false(sum.open);
	assert_true(bounds_add(sum, bounds_from(2, 1)).open);
}

static void bounds_over_divides_exactly(void **state)
{
	struct bounds mean = bounds_over(bounds_exact(20, 1), 5);
	(void)state;
	assert_int_equal(ratio_cmp(mean.lo, ratio_of(4, 1)), 0);
	assert_int_equal(ratio_cmp(mean.hi, ratio_of(4, 1)), 0);
	mean = bounds_over(bounds_exact(20, 1), 3);
	assert_int_equal(ratio_cmp(mean.lo, ratio_of(20, 3)), 0);
	mean = bounds_over(bounds_exact(6, INT64_MAX), 4); /* 4 and 6 share a 2 */
	assert_true(ratio_cmp(mean.lo, ratio_of(3, INT64_MAX)) < 0);
	assert_true(ratio_cmp(mean.hi, ratio_of(1, INT64_MAX)) > 0);
}

/* The sum of 7/n over n = 5..366 has a denominator of some 150 digits. */
static void a_sum_that_cannot_fit_is_widened_outwards_by_a_hair(void **state)
{
	struct bounds sum = bounds_exact(0, 1);
	long double want = 0;
	(void)state;
	for (int n = 5; n <= 366; n++) {
		sum = bounds_add(sum, bounds_exact(9999 * 7, n));
		want += 69993.0L / n;
	}
	long double lo = (long double)sum.lo.num / (long double)sum.lo.den;
	long double hi = (long double)sum.hi.num / (long double)sum.hi.den;
	assert_true(lo <= want && want <= hi);
	assert_true(hi - lo <= want / 1000000);
	assert_true(lo < hi);
}

static void a_sum_beyond_all_numbers_stays_a_true_bound(void **state)
{
	struct bounds vast = bounds_exact(INT64_MAX, 1);
	struct bounds sum = bounds_add(vast, vast);
	(void)state;
	assert_true(sum.open);
	assert_int_equal(ratio_cmp(sum.lo, ratio_of(INT64_MAX, 1)), 0);
	struct bounds less = bounds_exact(INT64_MAX - 1, 1);
	sum = bounds_add(less, vast); /* the larger of the two is a bound */
	assert_int_equal(ratio_cmp(sum.lo, ratio_of(INT64_MAX, 1)), 0);
	sum = bounds_add(vast, less);
	assert_int_equal(ratio_cmp(sum.lo, ratio_of(INT64_MAX, 1)), 0);
	struct bounds little = bounds_over(bounds_exact(1, INT64_MAX), 366);
	assert_int_equal(little.lo.num, 0);
	assert_int_equal(ratio_cmp(little.hi, ratio_of(1, INT64_MAX)), 1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(ratio_of_has_lowest_terms),
		cmocka_unit_test(ratio_cmp_is_exact_at_any_size),
		cmocka_unit_test(ratio_x10_rounds_halves_up),
		cmocka_unit_test(bounds_add_sums_both_ends),
		cmocka_unit_test(bounds_over_divides_exactly),
		cmocka_unit_test(a_sum_that_cannot_fit_is_widened_outwards_by_a_hair),
		cmocka_unit_test(a_sum_beyond_all_numbers_stays_a_true_bound),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
