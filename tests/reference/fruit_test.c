/* Shares of hurt fruit against values of another program and the published rule of
 * three. Each source stands beside its check. */
#include "season/fruit.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <math.h>

static void limits_are_those_of_another_program(void **state)
{
	/* R 4.2.2, binom.test: Clopper-Pearson 95 %. */
	static const struct {
		int32_t x, n;
		double lo, hi;
	} row[] = {
		{ 0, 10, 0, 30.8497107819 },
		{ 1, 10, 0.252857854446, 44.5016117028 },
		{ 5, 10, 18.7086028447, 81.2913971553 },
		{ 10, 10, 69.1502892181, 100 },
		{ 2, 11, 2.28311983, 51.775585236 },
		{ 92, 153, 51.9111983204, 67.9499192192 },
	};
	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fruit_share s = fruit_share(row[i].x, row[i].n);
		if (fabs(s.lo - row[i].lo) > 1e-7 || fabs(s.hi - row[i].hi) > 1e-7)
			fail_msg("%d of %d: %.10f to %.10f", (int)row[i].x,
				(int)row[i].n, s.lo, s.hi);
	}
	/* The action level of WSU Tree Fruit's scouting guide, 0.5 %: 5 of 1000. */
	assert_true(fabs(fruit_share(5, 1000).at - 0.5) < 1e-12);
}

static void a_clean_sample_follows_the_rule_of_three(void **state)
{
	/* About 3 / n of the whole, worked out by us from that rule to as many places
	 * as a page shows. 1260 is 60 fruit on 21 trees. */
	static const struct {
		int32_t n;
		double percent, within;
	} row[] = { { 300, 1.0, 0.01 }, { 600, 0.5, 0.005 }, { 1260, 0.24, 0.005 } };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		double got = fruit_clean_hi(row[i].n);
		if (fabs(got - row[i].percent) > row[i].within)
			fail_msg("0 of %d: %.4f", (int)row[i].n, got);
		/* By definition: then a clean sample has a chance of 5 %. */
		assert_true(fabs(pow(1 - got / 100, row[i].n) - 0.05) < 1e-12);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(limits_are_those_of_another_program),
		cmocka_unit_test(a_clean_sample_follows_the_rule_of_three),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
