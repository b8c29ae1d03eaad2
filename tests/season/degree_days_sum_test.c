/* Sums of degree-days: days missing, filled, without a tomorrow. Base 50 and no cutoff
 * throughout, so that a day of 50..60 gives 5. */
#include "season/degree_days.h"

#include "season/log.h"

#include <math.h>
#include <stdio.h>

static const struct dd_rule plain = { DD_TRIANGLE, DD_NO_CUTOFF, 50, 0 };
static const struct dd_rule twofold = { DD_DOUBLE_TRIANGLE, DD_NO_CUTOFF, 50, 0 };

/* Days 100, 101, 103, 104, 105: 102 has no entry, 104 no maximum. */
static const struct dd_temps holed[] = {
	{ .day = 100, .min = 50, .max = 60 },
	{ .day = 101, .min = 50, .max = 70, .filled = true },
	{ .day = 103, .min = 60, .max = 70 },
	{ .day = 104, .min = 60, .max = NAN },
	{ .day = 105, .min = 80, .max = 70 },
	{ .day = 106, .min = 56, .max = 60 },
};

static struct dd_span span_of(int32_t first, int32_t last)
{
	return (struct dd_span){ holed, COUNT_OF(holed), first, last };
}

static void a_sum_says_what_it_lacks(void **state)
{
	static const struct {
		const char *why;
		int32_t first, last;
		double sum;
		int32_t days, missing, filled;
	} row[] = {
		{ "one day", 100, 100, 5, 1, 0, 0 },
		{ "a filled one counts as filled", 100, 101, 15, 2, 0, 1 },
		{ "a day without an entry is missing, not 0", 100, 102, 15, 2, 1, 1 },
		{ "a day without a maximum too", 103, 104, 15, 1, 1, 0 },
		{ "a minimum above its maximum gives no sum", 105, 105, 0, 0, 1, 0 },
		{ "all", 100, 106, 38, 4, 3, 1 },
		{ "days before and after the entries are missing", 98, 108, 38, 4, 7,
			1 },
		{ "beyond all entries", 200, 202, 0, 0, 3, 0 },
		{ "the first after the last", 101, 100, 0, 0, 0, 0 },
		{ "no first day", DAY_NONE, 100, 0, 0, 0, 0 },
		{ "no last day", 100, DAY_NONE, 0, 0, 0, 0 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct dd_span span = span_of(row[i].first, row[i].last);
		struct dd_sum got = dd_total(&plain, &span, NULL, NULL);
		if (fabs(got.sum - row[i].sum) > 1e-12 || got.days != row[i].days ||
			got.missing != row[i].missing || got.filled != row[i].filled ||
			got.single_days != 0)
			fail_msg("%s: %g, %d days, %d missing, %d filled", row[i].why,
				got.sum, (int)got.days, (int)got.missing,
				(int)got.filled);
	}
}

static void a_double_method_says_where_tomorrow_was_unknown(void **state)
{
	static const struct {
		const char *why;
		int32_t day;
		double sum;
		int32_t single;
	} row[] = {
		{ "tomorrow's minimum may lie beyond the span", 100, 5, 0 },
		{ "tomorrow has no entry", 101, 10, 1 },
		{ "tomorrow is no whole day", 103, 15, 1 },
		{ "no tomorrow at the end", 106, 8, 1 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct dd_span span = span_of(row[i].day, row[i].day);
		struct dd_sum got = dd_total(&twofold, &span, NULL, NULL);
		if (fabs(got.sum - row[i].sum) > 1e-12 ||
			got.single_days != row[i].single)
			fail_msg("%s: %g, %d single", row[i].why, got.sum,
				(int)got.single_days);
	}
}

static void tell(
	void *arg, const struct dd_temps *t, double dd, const struct dd_sum *sum)
{
	char *text = arg;
	size_t n = strlen(text);

	snprintf(text + n, 200 - n, "%d:%g=%g,%d ", (int)t->day, isnan(dd) ? -1 : dd,
		sum->sum, (int)sum->missing);
	assert_true(isnan(dd) || t->min <= t->max);
}

static void every_day_is_told_in_turn(void **state)
{
	struct dd_span span = span_of(101, 104);
	char text[200] = "";

	(void)state;
	dd_total(&plain, &span, tell, text);
	assert_string_equal(text, "101:10=10,0 102:-1=10,1 103:15=25,1 104:-1=25,2 ");
}

static void the_day_a_sum_is_reached(void **state)
{
	static const struct {
		const char *why;
		double target;
		int32_t first, last, want, missing;
	} row[] = {
		{ "on the target", 15, 100, 106, 101, 0 },
		{ "just over", 15.1, 100, 106, 103, 1 },
		{ "on the last day", 38, 100, 106, 106, 3 },
		{ "never", 38.1, 100, 106, DAY_NONE, 3 },
		{ "not before the span ends", 38, 100, 105, DAY_NONE, 3 },
		{ "nothing is reached at once", 0, 102, 106, 102, 1 },
		{ "no days", 0, 102, 101, DAY_NONE, 0 },
		{ "no first day", 0, DAY_NONE, 101, DAY_NONE, 0 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct dd_span span = span_of(row[i].first, row[i].last);
		int32_t missing = -1;
		int32_t got = dd_reaches(&plain, &span, row[i].target, &missing);
		if (got != row[i].want || missing != row[i].missing)
			fail_msg("%s: day %d with %d missing", row[i].why, (int)got,
				(int)missing);
		assert_int_equal(
			dd_reaches(&plain, &span, row[i].target, NULL), row[i].want);
	}
}

/* "1:50/60 2:-/64 5:54/70": days, minimum and maximum, - for none; * is filled. */
static size_t read_days(const char *text, struct dd_temps *out)
{
	size_t n = 0;

	for (; *text != '\0'; n++) {
		char *end;
		out[n] = (struct dd_temps){
			.day = (int32_t)strtol(text, &end, 10), .min = NAN, .max = NAN
		};
		if (end[1] != '-')
			out[n].min = strtod(end + 1, &end);
		else
			end += 2;
		if (end[1] != '-')
			out[n].max = strtod(end + 1, &end);
		else
			end += 2;
		text = end + (*end == ' ');
	}
	return n;
}

static void write_days(const struct dd_temps *t, size_t n, char out[static 200])
{
	size_t at = 0;

	out[0] = '\0';
	for (size_t i = 0; i < n; i++) {
		char min[16] = "-", max[16] = "-";
		if (!isnan(t[i].min))
			snprintf(min, sizeof min, "%g", t[i].min);
		if (!isnan(t[i].max))
			snprintf(max, sizeof max, "%g", t[i].max);
		at += (size_t)snprintf(out + at, 200 - at, "%s%d:%s/%s%s",
			i == 0 ? "" : " ", (int)t[i].day, min, max,
			t[i].filled ? "*" : "");
	}
}

static void short_gaps_are_filled_by_their_neighbours(void **state)
{
	static const struct {
		const char *why;
		int32_t max_days;
		const char *in, *out;
		size_t filled;
	} row[] = {
		{ "nothing", 3, "", "", 0 },
		{ "no gap", 3, "1:50/60 2:52/64", "1:50/60 2:52/64", 0 },
		{ "a day without an entry", 3, "1:50/60 3:52/64",
			"1:50/60 2:51/62* 3:52/64", 1 },
		{ "a day with an empty entry", 3, "1:50/60 2:-/- 3:52/64",
			"1:50/60 2:51/62* 3:52/64", 1 },
		{ "what a day has stays", 3, "1:50/60 2:-/70 3:52/64",
			"1:50/60 2:51/70* 3:52/64", 1 },
		{ "a half that the mean contradicts stays alone", 3,
			"1:50/60 2:-/40 3:52/64", "1:50/60 2:-/40 3:52/64", 0 },
		{ "the longest gap", 3, "1:50/60 5:52/64",
			"1:50/60 2:51/62* 3:51/62* 4:51/62* 5:52/64", 3 },
		{ "one day longer", 3, "1:50/60 6:52/64", "1:50/60 6:52/64", 0 },
		{ "a long gap keeps its entries", 1, "1:50/60 3:-/61 4:52/64",
			"1:50/60 3:-/61 4:52/64", 0 },
		{ "entries and none mixed", 3, "1:50/60 3:-/61 4:52/64",
			"1:50/60 2:51/62* 3:51/61* 4:52/64", 2 },
		{ "no day before", 3, "1:-/60 2:50/60", "1:-/60 2:50/60", 0 },
		{ "no day after", 3, "1:50/60 2:-/60", "1:50/60 2:-/60", 0 },
		{ "swapped temperatures stay as they are", 3, "1:50/60 2:70/60 3:52/64",
			"1:50/60 2:70/60 3:52/64", 0 },
		{ "filling off", 0, "1:50/60 3:52/64", "1:50/60 3:52/64", 0 },
		{ "two gaps", 3, "1:50/60 3:50/60 4:-/- 5:50/60",
			"1:50/60 2:50/60* 3:50/60 4:50/60* 5:50/60", 2 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct dd_temps in[8], out[8];
		size_t n = read_days(row[i].in, in), n_out = 99;
		char text[200];
		size_t filled = dd_fill(in, n, row[i].max_days, out, &n_out);
		write_days(out, n_out, text);
		if (strcmp(text, row[i].out) != 0 || filled != row[i].filled)
			fail_msg("%s: %s, %zu filled", row[i].why, text, filled);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_sum_says_what_it_lacks),
		cmocka_unit_test(a_double_method_says_where_tomorrow_was_unknown),
		cmocka_unit_test(every_day_is_told_in_turn),
		cmocka_unit_test(the_day_a_sum_is_reached),
		cmocka_unit_test(short_gaps_are_filled_by_their_neighbours),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
