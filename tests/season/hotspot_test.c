#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "season/hotspot.h"

static void near(const char *why, double got, double want)
{
	if (!(fabs(got - want) <= 1e-12 * fabs(want)))
		fail_msg("%s: %.17g, not %.17g", why, got, want);
}

static void hot_split_adds_both_sides_up(void **state)
{
	const struct hot_catch traps[] = { { 5, 7 }, { 1, 14 }, { 0, 6 } };
	const bool in[] = { false, true, false };
	struct hot_split s = hot_split_of(traps, 3, in);

	(void)state;
	assert_true(s.moths_in == 1 && s.nights_in == 14 && s.n_in == 1);
	assert_true(s.moths_out == 5 && s.nights_out == 13 && s.n_out == 2);
}

static void hot_subsets_are_counted_up_to_a_bound(void **state)
{
	static const struct {
		const char *why;
		int n, m;
		int64_t most, want;
	} row[] = {
		{ "3 of 12", 12, 3, 1000, 220 },
		{ "9 of 12 are as many", 12, 9, 1000, 220 },
		{ "none of some", 12, 0, 1000, 1 },
		{ "all", 12, 12, 1000, 1 },
		{ "none of none", 0, 0, 1000, 1 },
		{ "more than there are", 3, 4, 1000, 0 },
		{ "less than none", 3, -1, 1000, 0 },
		{ "just the bound", 12, 3, 220, 220 },
		{ "over the bound", 12, 3, 219, 219 },
		{ "far over it", 2000, 1000, 200001, 200001 },
		{ "beyond 64 bits", 2000, 1000, INT64_MAX, INT64_MAX },
		{ "30 of 60", 60, 30, INT64_MAX, 118264581564861424 },
	};
	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		int64_t got = hot_subsets(row[i].n, row[i].m, row[i].most);
		if (got != row[i].want)
			fail_msg("%s: %lld, not %lld", row[i].why, (long long)got,
				(long long)row[i].want);
	}
}

static void hot_ratio_without_moths_on_one_side_has_one_limit(void **state)
{
	const struct hot_split all_in = { 10, 70, 0, 140, 2, 4 };
	const struct hot_split all_out = { 0, 70, 10, 140, 2, 4 };
	const struct hot_split none = { 0, 70, 0, 140, 2, 4 };
	const struct hot_split alone = { 9, 70, 0, 0, 2, 0 };
	const struct hot_split unhung = { 0, 0, 9, 70, 0, 2 };
	struct range r = hot_ratio_exact(&all_in);

	(void)state;
	assert_true(isinf(r.at) && isinf(r.hi) && r.lo > 1 && r.lo < 10);
	r = hot_ratio_exact(&all_out);
	assert_true(r.at == 0 && r.lo == 0 && r.hi > 0 && r.hi < 1);
	r = hot_ratio_exact(&none);
	assert_true(isnan(r.at) && r.lo == 0 && isinf(r.hi));
	r = hot_ratio_exact(&alone);
	assert_true(isnan(r.at) && r.lo == 0 && isinf(r.hi));
	r = hot_ratio_exact(&unhung);
	assert_true(isnan(r.at) && r.lo == 0 && isinf(r.hi));
	near("luck without a rest", hot_luck(&alone), 1);
}

static void hot_quasi_needs_moths_on_both_sides_and_three_traps(void **state)
{
	const struct hot_catch traps[] = { { 9, 7 }, { 3, 7 }, { 0, 7 } };
	const bool first[] = { true, false, false }, last[] = { false, false, true };
	const bool two[] = { true, true, false }, all[] = { true, true, true };

	(void)state;
	assert_true(hot_ratio_quasi(traps, 3, first).is_defined);
	assert_false(hot_ratio_quasi(traps, 2, first).is_defined);
	assert_false(hot_ratio_quasi(traps, 3, last).is_defined);
	assert_false(hot_ratio_quasi(traps, 3, two).is_defined);
	assert_false(hot_ratio_quasi(traps, 3, all).is_defined);
	struct hot_quasi q = hot_ratio_quasi(traps, 3, last);
	assert_true(isnan(q.ratio.at) && isnan(q.ratio.lo) && isnan(q.p));
}

/* Traps that differ less than by luck do not make the limits narrower than luck. */
static void hot_quasi_floors_the_spread_at_luck(void **state)
{
	const struct hot_catch traps[] = { { 8, 7 }, { 8, 7 }, { 4, 7 }, { 4, 7 } };
	const bool in[] = { true, true, false, false };
	struct hot_quasi q = hot_ratio_quasi(traps, 4, in);

	(void)state;
	near("ratio", q.ratio.at, 2);
	assert_true(q.phi == 0);
	near("se", q.se, sqrt(1 / 16. + 1 / 8.));
}

static void hot_adjusting_none_one_and_equal_ones(void **state)
{
	const double p[] = { 0.03, 0.03, 0.03 };
	double out[3] = { 7, 7, 7 };

	(void)state;
	hot_holm(p, 0, out);
	hot_bh(p, 0, out);
	assert_true(out[0] == 7);
	hot_holm(p, 1, out);
	near("one alone", out[0], 0.03);
	hot_bh(p, 1, out);
	near("one alone", out[0], 0.03);
	hot_holm(p, 3, out);
	near("three, Holm", out[1], 0.09);
	hot_bh(p, 3, out);
	near("three, BH", out[1], 0.03);
}

static void hot_is_enough_from_the_bounds_on(void **state)
{
	static const struct {
		const char *why;
		struct hot_split s;
		bool want;
	} row[] = {
		{ "2 in, 5 out: 21 ways", { 10, 70, 10, 70, 2, 5 }, true },
		{ "one trap", { 10, 70, 10, 70, 1, 30 }, false },
		{ "2 in, 4 out: 15 ways", { 10, 70, 10, 70, 2, 4 }, false },
		{ "3 in, 3 out: 20 ways", { 10, 70, 10, 70, 3, 3 }, true },
		{ "2 out", { 10, 70, 10, 70, 9, 2 }, false },
		{ "19 moths", { 10, 70, 9, 70, 3, 3 }, false },
		{ "all of 20 moths in it", { 20, 70, 0, 70, 3, 3 }, true },
		{ "nothing", { 0, 0, 0, 0, 0, 0 }, false },
	};
	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		if (hot_is_enough(&row[i].s) != row[i].want)
			fail_msg("%s", row[i].why);
}

static void hot_grades_from_the_bounds_on(void **state)
{
	static const struct {
		const char *why;
		struct hot_evidence e;
		enum hot_grade want;
	} row[] = {
		{ "luck just passed, all passed", { 0.05, 0.05, 0.05, 2 }, HOT_CLEAR },
		{ "luck not passed", { 0.051, 0.01, 0.01, 9 }, HOT_LUCK },
		{ "luck unknown", { NAN, 0.01, 0.01, 9 }, HOT_LUCK },
		{ "Holm just not", { 0.01, 0.051, 0.05, 2 }, HOT_WATCH },
		{ "BH just passed", { 0.01, 0.5, 0.10, 2 }, HOT_WATCH },
		{ "BH just not", { 0.01, 0.5, 0.101, 2 }, HOT_HIGHER },
		{ "ratio just not", { 0.01, 0.01, 0.01, 1.99 }, HOT_HIGHER },
		{ "the rest caught none", { 0.01, 0.01, 0.01, INFINITY }, HOT_CLEAR },
		{ "not shuffled", { 0.01, NAN, NAN, 9 }, HOT_HIGHER },
	};
	const struct hot_split s = { 30, 70, 10, 70, 3, 9 };
	const struct hot_split one = { 30, 70, 10, 70, 1, 11 };
	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		if (hot_grade_of(&s, &row[i].e) != row[i].want)
			fail_msg("%s", row[i].why);
		assert_int_equal(hot_grade_of(&one, &row[i].e), HOT_TOO_LITTLE);
	}
}

static void hot_grades_have_words_of_their_own(void **state)
{
	(void)state;
	for (unsigned a = 0; a < HOT_GRADE_COUNT; a++)
		for (unsigned b = 0; b < a; b++)
			assert_string_not_equal(hot_grade_word((enum hot_grade)a),
				hot_grade_word((enum hot_grade)b));
}

static void hot_clumping_needs_traps_moths_and_spread(void **state)
{
	static const struct {
		const char *why;
		size_t n;
		int64_t first, rest;
		bool is_enough, is_clumped;
	} row[] = {
		{ "six traps, one of them hot", 6, 40, 4, true, true },
		{ "five traps", 5, 40, 4, false, false },
		{ "20 moths in one trap", 6, 20, 0, true, true },
		{ "19 moths in one trap", 6, 19, 0, false, false },
		{ "all alike", 6, 9, 9, true, false },
	};
	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct hot_catch traps[6];
		for (size_t k = 0; k < row[i].n; k++)
			traps[k] =
				(struct hot_catch){ k ? row[i].rest : row[i].first, 7 };
		struct hot_clumping c = hot_clumping_of(traps, row[i].n, HOT_SEED);
		if (c.is_enough != row[i].is_enough ||
			c.is_clumped != row[i].is_clumped)
			fail_msg("%s: enough %d, clumped %d", row[i].why, c.is_enough,
				c.is_clumped);
	}
}

static void hot_clumping_of_nothing_has_no_numbers(void **state)
{
	const struct hot_catch none[] = { { 0, 7 }, { 0, 7 } },
			       one[] = { { 1, 7 }, { 0, 7 } };

	(void)state;
	assert_true(isnan(hot_clumping_of(NULL, 0, 1).p));
	assert_true(isnan(hot_clumping_of(one, 1, 1).p));
	struct hot_clumping c = hot_clumping_of(none, 2, 1);
	assert_true(isnan(c.p) && isnan(c.phi) && isnan(c.morisita) && !c.is_clumped);
	const struct hot_catch unlike[] = { { 9, 7 }, { 9, 14 } };
	c = hot_clumping_of(unlike, 2, 1);
	assert_true(isnan(c.morisita)); /* it is made for equal nights */
	assert_true(c.x2 > 0);
	c = hot_clumping_of(one, 2, 1);
	near("one moth is always so uneven", c.p, 1);
	assert_true(isnan(c.morisita));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(hot_split_adds_both_sides_up),
		cmocka_unit_test(hot_subsets_are_counted_up_to_a_bound),
		cmocka_unit_test(hot_ratio_without_moths_on_one_side_has_one_limit),
		cmocka_unit_test(hot_quasi_needs_moths_on_both_sides_and_three_traps),
		cmocka_unit_test(hot_quasi_floors_the_spread_at_luck),
		cmocka_unit_test(hot_adjusting_none_one_and_equal_ones),
		cmocka_unit_test(hot_is_enough_from_the_bounds_on),
		cmocka_unit_test(hot_grades_from_the_bounds_on),
		cmocka_unit_test(hot_grades_have_words_of_their_own),
		cmocka_unit_test(hot_clumping_needs_traps_moths_and_spread),
		cmocka_unit_test(hot_clumping_of_nothing_has_no_numbers),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
