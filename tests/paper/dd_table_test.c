/* Degree-days day by day on paper. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "paper/dd_table.h"

#include <math.h>
#include <string.h>

static void a_filled_day_and_a_lower_bound_are_marked(void **state)
{
	static struct dd_line lines[] = {
		{ .min = 48.25,
			.max = 71,
			.used_min = 48.25,
			.used_max = 71,
			.dd = 9.6 },
		{ .min = NAN,
			.max = 72,
			.filled = true,
			.used_min = 50,
			.used_max = 72,
			.dd = 11,
			.sum = 20.6 },
		{ .min = NAN,
			.max = NAN,
			.used_min = NAN,
			.used_max = NAN,
			.dd = NAN,
			.sum = 20.6,
			.missing = 1 },
	};
	static const char *const want =
		"Degree-days  Weir\n"
		"base 50 F\n"
		"CM: a source\n"
		"\n"
		"date           min     max      dd       sum\n"
		"2026-05-01    48.2    71.0     9.6      9.6\n"
		"2026-05-02    50.0    72.0    11.0     20.6  filled\n"
		"2026-05-03       -       -       -     20.6+  missing\n"
		"\n"
		"at least 20.6 F degree-days from 2026-05-01 to 2026-05-03\n"
		"1 day is missing and adds nothing: the sum is a lower bound\n"
		"1 day was not read and is filled by the mean of its neighbours\n"
		"2 days are counted by the single method, since the next day's minimum "
		"is\n"
		"not known\n";
	struct dd_table t = { .ask.unit = 'F',
		.rule_text = "base 50 F",
		.lines = lines,
		.n = 3,
		.total = { .sum = 20.6,
			.days = 2,
			.missing = 1,
			.filled = 1,
			.single_days = 2 } };
	struct buf out = { 0 };

	(void)state;
	lines[0].sum = lines[0].dd;
	t.ask.from = day_from_ymd(2026, 5, 1);
	t.ask.to = t.ask.from + 2;
	for (int32_t i = 0; i < 3; i++)
		lines[i].day = t.ask.from + i;
	strcpy(t.ask.station.name, "Weir");
	paper_dd_table(&t, "CM: a source", 72, &out);
	assert_string_equal(out.text, want);
	buf_free(&out);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_filled_day_and_a_lower_bound_are_marked),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
