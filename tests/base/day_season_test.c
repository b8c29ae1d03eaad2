/* Seasons that begin on any day of the year. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/day.h"

#include <string.h>

struct row {
	const char *why, *day;
	int start_md;
	const char *want;
};

static void assert_gives(int32_t (*of)(int32_t day, int start_md), const struct row *r)
{
	char iso[DAY_ISO_SIZE];
	int32_t day;

	assert_true(day_parse(r->day, &day));
	day_iso(of(day, r->start_md), iso);
	if (strcmp(iso, r->want) != 0)
		fail_msg("%s: %s", r->why, iso);
}

static void day_season_start_is_the_last_start_day(void **state)
{
	static const struct row row[] = {
		{ "calendar year", "2026-07-21", 101, "2026-01-01" },
		{ "its first day", "2026-01-01", 101, "2026-01-01" },
		{ "its last day", "2026-12-31", 101, "2026-01-01" },
		{ "none given is the calendar year", "2026-07-21", 0, "2026-01-01" },
		{ "south: the first day", "2026-07-01", 701, "2026-07-01" },
		{ "south: the day before it", "2026-06-30", 701, "2025-07-01" },
		{ "south: over the new year", "2027-01-15", 701, "2026-07-01" },
		{ "leap day in a leap year", "2024-03-01", 229, "2024-02-29" },
		{ "the day before it", "2024-02-28", 229, "2023-02-28" },
		{ "28 February in other years", "2026-02-28", 229, "2026-02-28" },
		{ "the day before", "2026-02-27", 229, "2025-02-28" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		assert_gives(day_season_start, &row[i]);
}

static void day_season_end_is_the_day_before_the_next_start(void **state)
{
	static const struct row row[] = {
		{ "calendar year", "2026-07-21", 101, "2026-12-31" },
		{ "its first day", "2026-01-01", 101, "2026-12-31" },
		{ "its last day", "2026-12-31", 101, "2026-12-31" },
		{ "a leap year", "2024-01-01", 101, "2024-12-31" },
		{ "south: the first day", "2026-07-01", 701, "2027-06-30" },
		{ "south: the last day", "2027-06-30", 701, "2027-06-30" },
		{ "before a leap day", "2023-02-28", 229, "2024-02-28" },
		{ "from a leap day", "2024-02-29", 229, "2025-02-27" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		assert_gives(day_season_end, &row[i]);
	assert_int_equal(day_season_end(DAY_NONE, 101), DAY_NONE);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(day_season_start_is_the_last_start_day),
		cmocka_unit_test(day_season_end_is_the_day_before_the_next_start),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
