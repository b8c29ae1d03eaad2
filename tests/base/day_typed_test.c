#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/day.h"

#include <string.h>

struct row {
	const char *why, *typed, *want; /* want "": none */
};

static void expect(
	const struct row *r, const char *today, int32_t (*read)(const char *, int32_t))
{
	char got[DAY_ISO_SIZE];
	int32_t day;

	assert_true(day_parse(today, &day));
	day_iso(read(r->typed, day), got);
	if (strcmp(got, r->want) != 0)
		fail_msg("%s: %s on %s is \"%s\"", r->why, r->typed, today, got);
}

static void day_typed_is_the_latest_that_does_not_lie_ahead(void **state)
{
	static const struct row row[] = {
		{ "today", "21", "2026-07-21" },
		{ "tomorrow's number is a month ago", "22", "2026-06-22" },
		{ "a day of this month", "3", "2026-07-03" },
		{ "with its zero", "03", "2026-07-03" },
		{ "no 31st in June", "31", "" },
		{ "month and day", "7-14", "2026-07-14" },
		{ "with zeros", "07-14", "2026-07-14" },
		{ "run together", "0714", "2026-07-14" },
		{ "tomorrow is last year's", "0722", "2025-07-22" },
		{ "a leap day that this year lacks", "0229", "" },
		{ "no month", "1332", "" },
		{ "no day", "0700", "" },
		{ "three digits", "714", "" },
		{ "nothing before the dash", "-14", "" },
		{ "nothing behind it", "7-", "" },
		{ "a whole date", "2026-07-14", "" },
		{ "nothing", "", "" },
		{ "words", "June", "" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		expect(&row[i], "2026-07-21", day_typed);
	expect(&(struct row){ "over the new year", "30", "2025-12-30" }, "2026-01-05",
		day_typed);
}

static void day_typed_ahead_is_the_nearest(void **state)
{
	static const struct row row[] = {
		{ "today", "21", "2026-07-21" },
		{ "next week", "28", "2026-07-28" },
		{ "last week", "14", "2026-07-14" },
		{ "the last one ahead", "5", "2026-08-05" },
		{ "the next is nearer from behind", "6", "2026-07-06" },
		{ "month and day ahead", "0901", "2026-09-01" },
		{ "half a year ahead", "0120", "2027-01-20" },
		{ "more than that", "0121", "2026-01-21" },
		{ "this month has it, the last one not", "31", "2026-07-31" },
		{ "no day", "32", "" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		expect(&row[i], "2026-07-21", day_typed_ahead);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(day_typed_is_the_latest_that_does_not_lie_ahead),
		cmocka_unit_test(day_typed_ahead_is_the_nearest),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
