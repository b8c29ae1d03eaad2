#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "season/chance.h"

static void near(const char *why, double got, double want)
{
	if (!(fabs(got - want) <= 1e-12 * fabs(want)))
		fail_msg("%s: %.17g, not %.17g", why, got, want);
}

static void chance_binomial_is_right_at_its_ends(void **state)
{
	static const struct {
		const char *why;
		int64_t k, n;
		double p, want;
	} row[] = {
		{ "none or more is sure", 0, 10, 0.3, 1 },
		{ "none or more of nothing", 0, 0, 0.3, 1 },
		{ "one of nothing", 1, 0, 0.3, 0 },
		{ "all of ten", 10, 10, 0.5, 0x1p-10 },
		{ "more than all", 11, 10, 0.5, 0 },
		{ "one or more", 1, 2, 0.5, 0.75 },
		{ "never", 1, 10, 0, 0 },
		{ "always", 10, 10, 1, 1 },
	};
	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		near(row[i].why, chance_binomial(row[i].k, row[i].n, row[i].p),
			row[i].want);
}

static void chance_chi_square_of_two_degrees_is_an_exponential(void **state)
{
	(void)state;
	near("all lies above nothing", chance_chi_square(0, 3), 1);
	for (double x = 0.001; x < 1400; x *= 3)
		near("exp(-x/2)", chance_chi_square(x, 2), exp(-x / 2));
	assert_true(chance_chi_square(1e6, 5) == 0);
}

/* With one degree of freedom it is Cauchy's distribution. */
static void chance_t_has_two_equal_tails(void **state)
{
	(void)state;
	near("half", chance_t(0, 5), 0.5);
	near("a quarter", chance_t(1, 1), 0.25);
	near("both tails", chance_t(2.5, 7) + chance_t(-2.5, 7), 1);
	for (double df = 1; df < 5000; df = floor(df * 1.7) + 1)
		near("2.5 %", chance_t(chance_t_quantile(df), df), 0.025);
}

/* By hand: P(X >= 1) = 1 - exp(-m), P(X <= 0) = exp(-m). */
static void chance_limits_of_none_and_one_are_those_by_hand(void **state)
{
	(void)state;
	struct range none = chance_count(0), one = chance_count(1);
	assert_true(none.at == 0 && none.lo == 0 && one.at == 1);
	near("none, high", none.hi, -log(0.025));
	near("one, low", one.lo, -log(0.975));
	struct range no = chance_share(0, 7), yes = chance_share(7, 7);
	assert_true(no.at == 0 && no.lo == 0 && yes.at == 1 && yes.hi == 1);
	near("none of 7, high", no.hi, 1 - pow(0.025, 1 / 7.));
	near("all of 7, low", yes.lo, pow(0.025, 1 / 7.));
}

/* Whatever the count, there is an answer; the limits are wide enough and no wider. */
static void chance_limits_of_counts_hold_for_all_sizes(void **state)
{
	(void)state;
	for (int64_t y = 1; y <= INT32_MAX; y = y * 3 / 2 + 1) {
		struct range r = chance_count(y);
		double least = 1.9 * sqrt((double)y) - 1;
		double most = y > CHANCE_COUNT_MAX ? 1e-2 * (double)y
						   : 2 * sqrt((double)y) + 4;
		assert_true(r.lo < r.at - least && r.lo > r.at - most);
		assert_true(r.hi > r.at + least && r.hi < r.at + most);
	}
}

static void chance_limits_of_shares_leave_two_and_a_half_percent(void **state)
{
	(void)state;
	for (int64_t n = 1; n <= CHANCE_COUNT_MAX; n = n * 2 + 1)
		for (int64_t x = 1; x < n; x += n / 8 + 1) {
			struct range r = chance_share(x, n);
			double low = chance_binomial(x, n, r.lo);
			double high = chance_binomial(n - x, n, 1 - r.hi);
			assert_true(r.lo < r.at && r.at < r.hi);
			assert_true(fabs(low - 0.025) < 1e-9);
			assert_true(fabs(high - 0.025) < 1e-9);
		}
}

static void chance_of_more_than_a_farm_counts_is_never_bolder(void **state)
{
	const int64_t most = CHANCE_COUNT_MAX;
	struct range full = chance_share(most / 5, most);
	struct range more = chance_share(most, 5 * most);

	(void)state;
	near("share of five times as many", more.at, full.at);
	near("low", more.lo, full.lo);
	near("high", more.hi, full.hi);
	near("five times as many", chance_count(5 * most).hi,
		5 * chance_count(most).hi);
	assert_true(chance_binomial(most + 1, most + 1, 0.999) >=
		    chance_binomial(most, most, 0.999));
	assert_true(chance_binomial(1, INT32_MAX, 0.5) == 1);
	assert_true(chance_binomial(INT32_MAX, INT32_MAX - 1, 0.5) == 0);
}

/* GSL ends the program or gives no number where it fails: it must not. */
static void chance_tails_are_numbers_at_any_size(void **state)
{
	(void)state;
	for (int64_t n = 1; n <= CHANCE_COUNT_MAX; n = n * 3 + 1)
		for (int64_t k = 1; k <= n; k += n / 20 + 1)
			for (double p = 1e-7; p < 1; p = fmin(p * 1.4, p + 0.02)) {
				double tail = chance_binomial(k, n, p);
				assert_true(tail >= 0 && tail <= 1);
			}
	for (double df = 1; df < 3000; df = floor(df * 1.3) + 1)
		for (double x = 1e-9; x < 1e15; x *= 2) {
			assert_true(chance_chi_square(x, df) >= 0);
			assert_true(chance_chi_square(x, df) <= 1);
			assert_true(chance_t(x, df) >= 0 && chance_t(-x, df) <= 1);
		}
}

static void dice_stay_below_and_reach_all(void **state)
{
	struct dice d = { 9 };
	int met[6] = { 0 };

	(void)state;
	for (int i = 0; i < 6000; i++)
		met[dice_below(&d, 6)]++;
	for (int i = 0; i < 6; i++)
		assert_in_range(met[i], 850, 1150);
	for (int i = 0; i < 100; i++)
		assert_true(dice_below(&d, 1) == 0);
	for (int i = 0; i < 100; i++)
		assert_true(dice_below(&d, UINT64_MAX) < UINT64_MAX);
}

/* 2^64 mod (2^63 + 1) is 2^63 - 1: nearly every second number is redrawn. */
static void dice_redraw_what_would_favour_low_numbers(void **state)
{
	const uint64_t n = ((uint64_t)1 << 63) + 1, least = -n % n;
	struct dice d = { 1 }, raw = { 1 };
	int redrawn = 0;

	(void)state;
	for (int i = 0; i < 200; i++) {
		uint64_t r = dice_next(&raw);
		for (; r < least; r = dice_next(&raw))
			redrawn++;
		assert_true(dice_below(&d, n) == r % n);
	}
	assert_in_range(redrawn, 120, 300);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(chance_binomial_is_right_at_its_ends),
		cmocka_unit_test(chance_chi_square_of_two_degrees_is_an_exponential),
		cmocka_unit_test(chance_t_has_two_equal_tails),
		cmocka_unit_test(chance_limits_of_none_and_one_are_those_by_hand),
		cmocka_unit_test(chance_limits_of_counts_hold_for_all_sizes),
		cmocka_unit_test(chance_limits_of_shares_leave_two_and_a_half_percent),
		cmocka_unit_test(chance_of_more_than_a_farm_counts_is_never_bolder),
		cmocka_unit_test(chance_tails_are_numbers_at_any_size),
		cmocka_unit_test(dice_stay_below_and_reach_all),
		cmocka_unit_test(dice_redraw_what_would_favour_low_numbers),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
