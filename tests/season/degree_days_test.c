/* Degree-days of one day: rules, every branch, and what must hold of every method. The
 * published numbers are in tests/reference. */
#include "season/degree_days.h"

#include "season/log.h"

#include <math.h>

static const double exact = 1e-12;

static void words_read_back(void **state)
{
	enum dd_method m;
	enum dd_cutoff c;

	(void)state;
	for (int i = 0; i < DD_METHOD_COUNT; i++) {
		assert_true(dd_method_read(dd_method_word((enum dd_method)i), &m));
		assert_int_equal(m, i);
	}
	for (int i = 0; i < DD_CUTOFF_COUNT; i++) {
		assert_true(dd_cutoff_read(dd_cutoff_word((enum dd_cutoff)i), &c));
		assert_int_equal(c, i);
	}
	assert_string_equal(dd_method_word(DD_DOUBLE_SINE), "double-sine");
	assert_string_equal(dd_cutoff_word(DD_NO_CUTOFF), "none");
	assert_false(dd_method_read("Sine", &m));
	assert_false(dd_cutoff_read("", &c));
}

static void a_rule_that_is_wrong_says_how(void **state)
{
	static const char base[] = "the base is a number of degrees from -60 to 150";
	static const char cap[] = "the cap is a number of degrees from -60 to 150";
	static const char order[] = "the base must be lower than the cap";
	static const char average[] =
		"a cutoff goes with sines and triangles; an average "
		"has cutoff none";
	static const struct {
		const char *why;
		struct dd_rule rule;
		const char *want;
	} row[] = {
		{ "a usual one", { DD_SINE, DD_HORIZONTAL, 50, 88 }, NULL },
		{ "no cap needed", { DD_SINE, DD_NO_CUTOFF, 50, NAN }, NULL },
		{ "nor by the plain average", { DD_AVERAGE, DD_NO_CUTOFF, 50, 0 },
			NULL },
		{ "a cutoff with an average", { DD_AVERAGE, DD_HORIZONTAL, 50, 88 },
			average },
		{ "even with one that has a cap",
			{ DD_AVERAGE_CLAMPED, DD_VERTICAL, 50, 88 }, average },
		{ "a capped average needs its cap",
			{ DD_AVERAGE_CAPPED, DD_NO_CUTOFF, 50, NAN }, cap },
		{ "the lowest base", { DD_SINE, DD_NO_CUTOFF, -60, 0 }, NULL },
		{ "a base lower still", { DD_SINE, DD_NO_CUTOFF, -60.1, 0 }, base },
		{ "no base", { DD_SINE, DD_NO_CUTOFF, NAN, 0 }, base },
		{ "the highest cap", { DD_TRIANGLE, DD_VERTICAL, 50, 150 }, NULL },
		{ "a cap higher still", { DD_TRIANGLE, DD_VERTICAL, 50, 150.1 }, cap },
		{ "base on the cap", { DD_TRIANGLE, DD_INTERMEDIATE, 50, 50 }, order },
		{ "base above the cap", { DD_AVERAGE_CLAMPED, DD_NO_CUTOFF, 51, 50 },
			order },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		const char *got = dd_rule_fault(&row[i].rule);
		if ((got == NULL) != (row[i].want == NULL) ||
			(got != NULL && strcmp(got, row[i].want) != 0))
			fail_msg("%s: %s", row[i].why, got ? got : "nothing said");
	}
}

/* Base 50, cap 88. Triangles by hand: half base times height over the whole day. */
static void a_day_has_the_degree_days_of_its_case(void **state)
{
	static const struct {
		const char *why;
		double a, b;
		enum dd_method method;
		double want[DD_CUTOFF_COUNT]; /* by cutoff, as in the enum */
	} row[] = {
		{ "all above both", 90, 94, DD_TRIANGLE, { 42, 38, 34, 0 } },
		{ "all above both", 90, 94, DD_SINE, { 42, 38, 34, 0 } },
		{ "so hot that the penalty eats the day", 130, 140, DD_TRIANGLE,
			{ 85, 38, 0, 0 } },
		{ "all below both", 30, 49, DD_SINE, { 0, 0, 0, 0 } },
		{ "up to the base", 30, 50, DD_TRIANGLE, { 0, 0, 0, 0 } },
		{ "all between", 60, 80, DD_SINE, { 20, 20, 20, 20 } },
		{ "from base to cap", 50, 88, DD_TRIANGLE, { 19, 19, 19, 19 } },
		{ "across the base", 40, 60, DD_TRIANGLE, { 2.5, 2.5, 2.5, 2.5 } },
		/* The mean of |sin| is 2/pi: height 10 over half a day. */
		{ "across the base", 40, 60, DD_SINE,
			{ 3.18309886183791, 3.18309886183791, 3.18309886183791,
				3.18309886183791 } },
		{ "across the cap", 78, 98, DD_TRIANGLE, { 38, 35.5, 33, 16.5 } },
		{ "across the cap", 78, 98, DD_SINE,
			{ 38, 34.81690113816209, 31.63380227632418,
				15.81690113816209 } },
		{ "across both", 40, 100, DD_TRIANGLE,
			{ 2500.0 / 120, 2356.0 / 120, 2212.0 / 120, 1444.0 / 120 } },
		{ "still at the base", 50, 50, DD_SINE, { 0, 0, 0, 0 } },
		{ "still between", 70, 70, DD_SINE, { 20, 20, 20, 20 } },
		{ "still at the cap, not above", 88, 88, DD_SINE, { 38, 38, 38, 38 } },
		{ "still a hair above", 88.5, 88.5, DD_SINE, { 38.5, 38, 37.5, 0 } },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		for (int c = 0; c < DD_CUTOFF_COUNT; c++) {
			struct dd_rule r = { row[i].method, (enum dd_cutoff)c, 50, 88 };
			double got = dd_day(&r, row[i].a, row[i].b, NAN);
			if (fabs(got - row[i].want[c]) > exact)
				fail_msg("%s, %s: %.15g, not %.15g", row[i].why,
					dd_cutoff_word(r.cutoff), got, row[i].want[c]);
		}
}

static void averages_treat_the_ends_each_in_their_way(void **state)
{
	static const struct {
		const char *why;
		double a, b;
		double want[4]; /* average, raised, clamped, capped */
	} row[] = {
		{ "within", 60, 80, { 20, 20, 20, 20 } },
		{ "a cold night", 40, 70, { 5, 10, 10, 5 } },
		{ "cold throughout", 30, 40, { 0, 0, 0, 0 } },
		{ "a hot noon", 60, 96, { 28, 28, 24, 24 } },
		{ "a cold night and a hot noon", 40, 96, { 18, 23, 19, 14 } },
		{ "a night above the cap", 90, 96, { 43, 43, 38, 39 } },
		{ "still at the base", 50, 50, { 0, 0, 0, 0 } },
		{ "still at the cap", 88, 88, { 38, 38, 38, 38 } },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		for (int m = 0; m < 4; m++) {
			struct dd_rule r = { (enum dd_method)m, DD_NO_CUTOFF, 50, 88 };
			double got = dd_day(&r, row[i].a, row[i].b, 20);
			if (fabs(got - row[i].want[m]) > exact)
				fail_msg("%s, %s: %g, not %g", row[i].why,
					dd_method_word(r.method), got, row[i].want[m]);
		}
}

static void a_double_day_is_half_of_each_of_two(void **state)
{
	static const struct {
		const char *why;
		double next, other_a, other_b;
	} row[] = {
		{ "a colder night to come", 41, 41, 83 },
		{ "a warmer one", 70, 70, 83 },
		{ "one as warm as the day", 83, 83, 83 },
		{ "one warmer than the day", 90, 83, 90 },
		{ "one not known", NAN, 52, 83 },
	};
	static const enum dd_method single[] = { DD_TRIANGLE, DD_SINE };
	static const enum dd_method twofold[] = { DD_DOUBLE_TRIANGLE, DD_DOUBLE_SINE };

	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		for (int k = 0; k < 2 * DD_CUTOFF_COUNT; k++) {
			struct dd_rule one = { single[k % 2], (enum dd_cutoff)(k / 2),
				60, 80 };
			struct dd_rule two = { twofold[k % 2], one.cutoff, 60, 80 };
			double want = (dd_day(&one, 52, 83, NAN) +
					      dd_day(&one, row[i].other_a,
						      row[i].other_b, NAN)) /
				      2;
			double got = dd_day(&two, 52, 83, row[i].next);
			if (fabs(got - want) > exact)
				fail_msg("%s: %g, not %g", row[i].why, got, want);
			assert_true(
				dd_is_double(two.method) && !dd_is_double(one.method));
		}
}

/* A linear congruence with the multiplier of Knuth's MMIX: the same in every run. */
struct dice {
	uint64_t seed;
};

static double roll(struct dice *d, double lo, double hi)
{
	d->seed = d->seed * 6364136223846793005u + 1442695040888963407u;
	return lo + (hi - lo) * (double)(d->seed >> 11) / 9007199254740992.0;
}

struct day {
	double a, b, next, base, cap;
};

static struct day roll_day(struct dice *d)
{
	struct day day = { .base = roll(d, 35, 55), .cap = roll(d, 80, 95) };

	day.a = roll(d, 10, 100);
	day.b = day.a + roll(d, 0, 60);
	day.next = roll(d, 10, 100);
	return day;
}

static double of(const struct day *day, int method, int cutoff)
{
	struct dd_rule r = { (enum dd_method)method, (enum dd_cutoff)cutoff, day->base,
		day->cap };
	return dd_day(&r, day->a, day->b, day->next);
}

enum { ROLLS = 20000 };

static void no_cutoff_gives_most_and_vertical_least(void **state)
{
	struct dice dice = { 4 };
	(void)state;
	for (int i = 0; i < ROLLS; i++) {
		struct day d = roll_day(&dice);
		for (int m = DD_TRIANGLE; m < DD_METHOD_COUNT; m++) {
			double none = of(&d, m, DD_NO_CUTOFF);
			double horizontal = of(&d, m, DD_HORIZONTAL);
			double vertical = of(&d, m, DD_VERTICAL);
			assert_true(none >= horizontal - exact);
			assert_true(horizontal >= of(&d, m, DD_INTERMEDIATE) - exact);
			assert_true(horizontal >= vertical - exact && vertical >= 0);
			assert_true(horizontal <= d.cap - d.base + exact);
			assert_true(of(&d, m, DD_INTERMEDIATE) >= 0);
		}
	}
}

static void a_sine_lies_between_the_plain_and_the_raised_average(void **state)
{
	struct dice dice = { 5 };
	(void)state;
	for (int i = 0; i < ROLLS; i++) {
		struct day d = roll_day(&dice);
		double sine = of(&d, DD_SINE, DD_NO_CUTOFF);
		double triangle = of(&d, DD_TRIANGLE, DD_NO_CUTOFF);
		double low = of(&d, DD_AVERAGE, DD_NO_CUTOFF);
		double high = of(&d, DD_AVERAGE_RAISED, DD_NO_CUTOFF);
		assert_true(low <= sine + exact && sine <= high + exact);
		assert_true(low <= triangle + exact && triangle <= high + exact);
	}
}

static void between_base_and_cap_all_methods_agree(void **state)
{
	struct dice dice = { 6 };
	(void)state;
	for (int i = 0; i < ROLLS; i++) {
		struct day d = { .base = roll(&dice, 35, 55),
			.cap = roll(&dice, 80, 95) };
		d.a = roll(&dice, d.base, d.cap);
		d.b = roll(&dice, d.a, d.cap);
		d.next = d.a;
		for (int m = 0; m < DD_METHOD_COUNT; m++)
			for (int c = 0; c < (m < DD_TRIANGLE ? 1 : DD_CUTOFF_COUNT);
				c++)
				assert_true(
					fabs(of(&d, m, c) -
						((d.a + d.b) / 2 - d.base)) < exact);
	}
}

static struct day scaled(struct day d, double by, double plus)
{
	return (struct day){ d.a * by + plus, d.b * by + plus, d.next * by + plus,
		d.base * by + plus, d.cap * by + plus };
}

/* Moved up by 32 and stretched by 1.8, C become F. */
static void a_shift_changes_nothing_and_a_scale_scales(void **state)
{
	struct dice dice = { 7 };
	(void)state;
	for (int i = 0; i < ROLLS; i++) {
		struct day d = roll_day(&dice);
		struct day up = scaled(d, 1, 17.25), fahrenheit = scaled(d, 1.8, 32);
		for (int m = 0; m < DD_METHOD_COUNT; m++)
			for (int c = 0; c < (m < DD_TRIANGLE ? 1 : DD_CUTOFF_COUNT);
				c++) {
				double dd = of(&d, m, c);
				assert_true(fabs(of(&up, m, c) - dd) < 1e-9);
				assert_true(
					fabs(of(&fahrenheit, m, c) - 1.8 * dd) < 1e-9);
			}
	}
}

/* The arc sine of the textbook form loses half its digits here. */
static void a_day_with_next_to_no_range_comes_out_right(void **state)
{
	static const double ranges[] = { 1e-1, 1e-3, 1e-6, 1e-9, 1e-12 };
	(void)state;
	for (size_t i = 0; i < COUNT_OF(ranges); i++) {
		/* 64 is a power of two: the cap lies exactly in the middle. */
		double half = ldexp(1, (int)floor(log2(ranges[i])));
		struct day d = { 64 - half, 64 + half, 64 - half, 32, 64 };
		double none = 32 - half / 3.14159265358979323846;
		assert_true(fabs(of(&d, DD_SINE, DD_HORIZONTAL) - none) < exact);
		double vertical = (32 - half * 2 / 3.14159265358979323846) / 2;
		assert_true(fabs(of(&d, DD_SINE, DD_VERTICAL) - vertical) < exact);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(words_read_back),
		cmocka_unit_test(a_rule_that_is_wrong_says_how),
		cmocka_unit_test(a_day_has_the_degree_days_of_its_case),
		cmocka_unit_test(averages_treat_the_ends_each_in_their_way),
		cmocka_unit_test(a_double_day_is_half_of_each_of_two),
		cmocka_unit_test(no_cutoff_gives_most_and_vertical_least),
		cmocka_unit_test(a_sine_lies_between_the_plain_and_the_raised_average),
		cmocka_unit_test(between_base_and_cap_all_methods_agree),
		cmocka_unit_test(a_shift_changes_nothing_and_a_scale_scales),
		cmocka_unit_test(a_day_with_next_to_no_range_comes_out_right),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
