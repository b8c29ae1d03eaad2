/* Degree-days against published values; each has its source beside it. What is marked
 * computed is no publication: another program's arithmetic on the same formulas. */
#include "season/degree_days.h"

#include "season_2012.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#define COUNT_OF(array) (sizeof(array) / sizeof *(array))

static const struct dd_rule sine_50_88 = { DD_SINE, DD_HORIZONTAL, 50, 88 };

/* Examples of a single day, printed by those who teach the averages; degrees F. */
static void printed_days_of_the_averages(void **state)
{
	static const struct {
		const char *source;
		struct dd_rule rule;
		double min, max, dd;
	} row[] = {
		/* J. Nugent, Michigan State University, Calculating growing degree
		 * days */
		{ "Nugent", { DD_AVERAGE, DD_NO_CUTOFF, 50, 0 }, 40, 65, 2.5 },
		{ "Nugent", { DD_AVERAGE, DD_NO_CUTOFF, 50, 0 }, 35, 60, 0 },
		/* Michigan State University Extension, Understanding growing
		 * degree-days, canr.msu.edu/news/understanding_growing_degree_days */
		{ "Michigan", { DD_AVERAGE_CAPPED, DD_NO_CUTOFF, 50, 86 }, 61, 83, 22 },
		/* A. Font, Ohio State University/OARDC, Calculating degree days, slides
		 */
		{ "Font", { DD_AVERAGE_RAISED, DD_NO_CUTOFF, 50, 0 }, 50.2, 74.1,
			12.15 },
		{ "Font", { DD_AVERAGE_RAISED, DD_NO_CUTOFF, 50, 0 }, 38.6, 66.5,
			8.25 },
		{ "Font", { DD_AVERAGE_RAISED, DD_NO_CUTOFF, 50, 0 }, 19.0, 41.6, 0 },
		/* Iowa State University, Agronomy 541, lesson 2b,
		 * agron-www.agron.iastate.edu. Of the second, the statement is printed
		 * (36 is the most a day can give), the temperatures are ours. */
		{ "Iowa", { DD_AVERAGE_CLAMPED, DD_NO_CUTOFF, 50, 86 }, 50, 70, 10 },
		{ "Iowa", { DD_AVERAGE_CLAMPED, DD_NO_CUTOFF, 50, 86 }, 86, 90, 36 },
		/* Extension column, durangoherald.com, Use degree days to effectively
		 * control fruit tree pests */
		{ "Durango", { DD_AVERAGE, DD_NO_CUTOFF, 50, 0 }, 40, 80, 10 },
		/* Western Regional Climate Center, wrcc.dri.edu, station 205637,
		 * summary of growing degree-days, 2012 */
		{ "WRCC", { DD_AVERAGE, DD_NO_CUTOFF, 60, 0 }, 51, 95, 13 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		double got = dd_day(&row[i].rule, row[i].min, row[i].max, NAN);
		if (fabs(got - row[i].dd) > 1e-9)
			fail_msg("%s, %g..%g: %.4f, not %g", row[i].source, row[i].min,
				row[i].max, got, row[i].dd);
	}
}

/* Nugent (as above) prints 2.5 and 0 for these days and says that the sine gives more.
 * How much more is computed. */
static void a_sine_gives_more_than_the_average_on_a_cool_day(void **state)
{
	struct dd_rule sine = { DD_SINE, DD_NO_CUTOFF, 50, 0 };
	(void)state;
	assert_true(fabs(dd_day(&sine, 40, 65, NAN) - 5.31) <= 0.005);
	assert_true(fabs(dd_day(&sine, 35, 60, NAN) - 2.81) <= 0.005);
}

/* Ten measured days with their degree-days from the degree-day file of the public data
 * set ms-lost-hills-areawide-y06-to-y15 (commit c4d7543f1a79, CC0), station
 * LOST_HILLS.A, Lost Hills, California; degrees F, two decimals. The file does not name
 * its method; single sine, 55/94 F, horizontal is inferred: it gives every value, the
 * farthest off by 0.0051 (computed). */
static void printed_days_of_the_sine(void **state)
{
	static const struct {
		const char *date;
		double min, max, dd;
	} row[] = {
		{ "2008-01-16", 33, 51, 0 },
		{ "2008-02-18", 42, 68, 4.14 },
		{ "2008-04-06", 42, 71, 5.39 },
		{ "2008-05-09", 50, 82, 11.85 },
		{ "2008-05-23", 55, 72, 8.5 },
		{ "2008-06-18", 59, 94, 21.5 },
		{ "2008-06-20", 64, 99, 25.69 },
		{ "2008-07-10", 71, 107, 30.55 },
		{ "2008-08-16", 68, 102, 28.31 },
		{ "2008-11-06", 40, 67, 3.57 },
	};
	struct dd_rule rule = { DD_SINE, DD_HORIZONTAL, 55, 94 };
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		double got = dd_day(&rule, row[i].min, row[i].max, NAN);
		if (fabs(got - row[i].dd) > 0.0052)
			fail_msg("%s: %.4f, not %.2f", row[i].date, got, row[i].dd);
	}
}

/* Pairs of one sum in C and in F: peach twig borer, Zalom, Barnett, Rice & Weakley
 * 1992, J. Econ. Entomol. 85:1904-1909 (129, 205, 376, 600 C), as printed at
 * ipm.ucanr.edu. Here a day gives them: 10..31 C and 50..87.8 F, base 10 C and 50 F. */
static void a_sum_in_c_times_1_8_is_the_sum_in_f(void **state)
{
	static const struct {
		double c, f;
	} row[] = { { 205, 369 }, { 129, 232.2 }, { 376, 676.8 }, { 600, 1080 } };
	struct dd_rule celsius = { DD_SINE, DD_HORIZONTAL, 10, 31.1 };
	struct dd_rule fahrenheit = { DD_SINE, DD_HORIZONTAL, 50, 31.1 * 1.8 + 32 };
	(void)state;
	double c = dd_day(&celsius, 4, 35, NAN);
	double f = dd_day(&fahrenheit, 4 * 1.8 + 32, 35 * 1.8 + 32, NAN);
	assert_true(c > 1);
	for (size_t i = 0; i < COUNT_OF(row); i++)
		assert_true(fabs(row[i].c / c * f - row[i].f) < 1e-9);
}

/* A table computed by another program: sine, 50/88 F, horizontal, one decimal. */
static void a_computed_table_of_the_sine(void **state)
{
	static const double min[] = { 30, 35, 40, 45, 50, 55, 60, 65, 70, 75 };
	static const struct {
		double max, dd[10]; /* -1: below the minimum */
	} row[] = {
		{ 55, { 1.0, 1.1, 1.3, 1.6, 2.5, 5.0, -1, -1, -1, -1 } },
		{ 60, { 2.5, 2.8, 3.2, 3.8, 5.0, 7.5, 10.0, -1, -1, -1 } },
		{ 65, { 4.4, 4.8, 5.3, 6.1, 7.5, 10.0, 12.5, 15.0, -1, -1 } },
		{ 70, { 6.4, 6.9, 7.5, 8.5, 10.0, 12.5, 15.0, 17.5, 20.0, -1 } },
		{ 80, { 10.6, 11.3, 12.2, 13.3, 15.0, 17.5, 20.0, 22.5, 25.0, 27.5 } },
		{ 90, { 14.9, 15.8, 16.8, 18.0, 19.8, 22.3, 24.8, 27.3, 29.7, 32.2 } },
		{ 100, { 17.5, 18.4, 19.4, 20.7, 22.4, 24.8, 27.1, 29.4, 31.6, 33.8 } },
		{ 110, { 19.3, 20.2, 21.2, 22.5, 24.1, 26.3, 28.5, 30.6, 32.6, 34.5 } },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		for (size_t k = 0; k < COUNT_OF(min); k++) {
			if (row[i].dd[k] < 0)
				continue;
			double got = dd_day(&sine_50_88, min[k], row[i].max, NAN);
			if (fabs(got - row[i].dd[k]) > 0.05 + 1e-9)
				fail_msg("%g..%g: %.3f, not %.1f", min[k], row[i].max,
					got, row[i].dd[k]);
		}
}

/* Computed by another program on the measured days of season_2012.h, the whole year,
 * 50/88 F. */
static void sums_of_a_measured_year(void **state)
{
	static const struct {
		enum dd_method method;
		enum dd_cutoff cutoff;
		double seattle, new_york;
	} row[] = {
		{ DD_SINE, DD_NO_CUTOFF, 2163.06, 3966.72 },
		{ DD_SINE, DD_HORIZONTAL, 2159.51, 3945.95 },
		{ DD_SINE, DD_INTERMEDIATE, 2155.96, 3925.19 },
		{ DD_SINE, DD_VERTICAL, 2114.06, 3718.74 },
		{ DD_TRIANGLE, DD_HORIZONTAL, 2120.42, 3917.15 },
		{ DD_TRIANGLE, DD_VERTICAL, 2093.88, 3750.32 },
		{ DD_AVERAGE, DD_NO_CUTOFF, 2040.12, 3852.99 },
		{ DD_AVERAGE_CLAMPED, DD_NO_CUTOFF, 2276.24, 4028.87 },
		{ DD_DOUBLE_SINE, DD_HORIZONTAL, 2160.80, 3944.05 },
	};
	static const char *const sites[] = { "Seattle", "New York" };
	struct dd_temps temps[SEASON_DAYS];

	(void)state;
	for (size_t s = 0; s < COUNT_OF(sites); s++) {
		season_2012(sites[s], temps);
		struct dd_span year = { temps, SEASON_DAYS, day_from_ymd(2012, 1, 1),
			day_from_ymd(2012, 12, 31) };
		for (size_t i = 0; i < COUNT_OF(row); i++) {
			struct dd_rule r = { row[i].method, row[i].cutoff, 50, 88 };
			struct dd_sum got = dd_total(&r, &year, NULL, NULL);
			double want = s == 0 ? row[i].seattle : row[i].new_york;
			assert_int_equal(got.days, 366);
			assert_int_equal(got.missing + got.single_days, 0);
			if (fabs(got.sum - want) > 0.005 + 1e-9)
				fail_msg("%s, %s, %s: %.4f, not %.2f", sites[s],
					dd_method_word(r.method),
					dd_cutoff_word(r.cutoff), got.sum, want);
		}
	}
}

/* The same; a biofix of 1 May is set by hand, that day counts. */
static void days_on_which_a_measured_year_reaches_a_sum(void **state)
{
	static const struct {
		const char *site, *from;
		double target;
		const char *day;
		double sum; /* -1: not given */
	} row[] = {
		{ "Seattle", "2012-01-01", 175, "2012-05-12", -1 },
		{ "Seattle", "2012-05-01", 220, "2012-06-03", 222.52 },
		{ "Seattle", "2012-05-01", 250, "2012-06-10", 252.68 },
		{ "Seattle", "2012-05-01", 340, "2012-06-20", 350.07 },
		{ "Seattle", "2012-05-01", 640, "2012-07-14", 652.17 },
		{ "Seattle", "2012-05-01", 920, "2012-08-02", 921.00 },
		{ "Seattle", "2012-05-01", 1060, "2012-08-09", 1061.69 },
		{ "Seattle", "2012-05-01", 1250, "2012-08-18", 1257.13 },
		{ "New York", "2012-01-01", 175, "2012-04-13", -1 },
		{ "New York", "2012-05-01", 220, "2012-05-21", 225.45 },
		{ "New York", "2012-05-01", 250, "2012-05-23", 256.95 },
		{ "New York", "2012-05-01", 340, "2012-05-28", 360.36 },
		{ "New York", "2012-05-01", 640, "2012-06-13", 652.50 },
		{ "New York", "2012-05-01", 920, "2012-06-26", 935.13 },
		{ "New York", "2012-05-01", 1060, "2012-07-01", 1080.25 },
		{ "New York", "2012-05-01", 1250, "2012-07-07", 1266.74 },
	};
	struct dd_temps temps[SEASON_DAYS];

	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct dd_span span = { temps, SEASON_DAYS, DAY_NONE,
			day_from_ymd(2012, 12, 31) };
		int32_t want, missing;
		season_2012(row[i].site, temps);
		assert_true(day_parse(row[i].from, &span.first));
		assert_true(day_parse(row[i].day, &want));
		int32_t got = dd_reaches(&sine_50_88, &span, row[i].target, &missing);
		if (got != want || missing != 0)
			fail_msg("%s from %s, %g: %d days from %s", row[i].site,
				row[i].from, row[i].target, (int)(got - want),
				row[i].day);
		span.last = got;
		double sum = dd_total(&sine_50_88, &span, NULL, NULL).sum;
		if (row[i].sum >= 0 && fabs(sum - row[i].sum) > 0.005 + 1e-9)
			fail_msg("%s, %s: %.4f, not %.2f", row[i].site, row[i].day, sum,
				row[i].sum);
	}
}

/* Computed: New York, 7 July 2012, 23.9..37.2 C, 50/88 F. */
static void a_hot_day_by_every_cutoff(void **state)
{
	static const double want[2][DD_CUTOFF_COUNT] = {
		{ 36.99, 33.6713, 30.3525, 15.6931 },
		{ 36.99, 34.4812, 31.9724, 17.0844 },
	};
	(void)state;
	for (int c = 0; c < 2 * DD_CUTOFF_COUNT; c++) {
		struct dd_rule r = { c % 2 == 0 ? DD_SINE : DD_TRIANGLE,
			(enum dd_cutoff)(c / 2), 50, 88 };
		double got = dd_day(&r, 23.9 * 9 / 5 + 32, 37.2 * 9 / 5 + 32, NAN);
		if (fabs(got - want[c % 2][c / 2]) > 0.00005 + 1e-9)
			fail_msg("%s, %s: %.5f", dd_method_word(r.method),
				dd_cutoff_word(r.cutoff), got);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(printed_days_of_the_averages),
		cmocka_unit_test(a_sine_gives_more_than_the_average_on_a_cool_day),
		cmocka_unit_test(printed_days_of_the_sine),
		cmocka_unit_test(a_sum_in_c_times_1_8_is_the_sum_in_f),
		cmocka_unit_test(a_computed_table_of_the_sine),
		cmocka_unit_test(sums_of_a_measured_year),
		cmocka_unit_test(days_on_which_a_measured_year_reaches_a_sum),
		cmocka_unit_test(a_hot_day_by_every_cutoff),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
