#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/day.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

/* Every day that can be written, against the calendar of the C library. */
static void day_agrees_with_the_c_library_on_every_day(void **state)
{
	struct tm first = { .tm_year = DAY_YEAR_MIN - 1900, .tm_mday = 1 };
	int32_t day = (int32_t)(timegm(&first) / 86400);
	int32_t last = day_from_ymd(DAY_YEAR_MAX, 12, 31);

	(void)state;
	assert_int_equal(day, day_from_ymd(DAY_YEAR_MIN, 1, 1));
	assert_int_equal(last - day + 1, 109573); /* 300 * 365 + 73 leap days */
	for (; day <= last; day++) {
		time_t at = (time_t)day * 86400;
		char want[64], got[64], iso[DAY_ISO_SIZE];
		struct tm tm;
		int year, week = day_week(day, &year);
		int32_t back = 0;
		struct ymd d = day_to_ymd(day);

		gmtime_r(&at, &tm);
		strftime(want, sizeof want, "%Y-%m-%d %u %G %V", &tm);
		day_iso(day, iso);
		snprintf(got, sizeof got, "%s %d %d %02d", iso, day_weekday(day), year,
			week);
		if (strcmp(got, want) != 0)
			fail_msg("day %d: %s, not %s", (int)day, got, want);
		if (!day_parse(iso, &back) || back != day ||
			day_from_ymd(d.year, d.month, d.day) != day)
			fail_msg("%s does not come back", iso);
	}
}

static void day_from_ymd_refuses_what_is_no_date(void **state)
{
	static const struct {
		const char *why;
		int year, month, day;
		bool good;
	} row[] = {
		{ "first", 1900, 1, 1, true },
		{ "before the first", 1899, 12, 31, false },
		{ "last", 2199, 12, 31, true },
		{ "after the last", 2200, 1, 1, false },
		{ "leap year", 2024, 2, 29, true },
		{ "no leap year", 2026, 2, 29, false },
		{ "1900 was none", 1900, 2, 29, false },
		{ "2000 was one", 2000, 2, 29, true },
		{ "2100 will be none", 2100, 2, 29, false },
		{ "month 0", 2026, 0, 1, false },
		{ "month 13", 2026, 13, 1, false },
		{ "day 0", 2026, 7, 0, false },
		{ "31 July", 2026, 7, 31, true },
		{ "32 July", 2026, 7, 32, false },
		{ "30 June", 2026, 6, 30, true },
		{ "31 June", 2026, 6, 31, false },
		{ "negative", 2026, -1, -1, false },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		int32_t day = day_from_ymd(row[i].year, row[i].month, row[i].day);
		if ((day != DAY_NONE) != row[i].good)
			fail_msg("%s: %d", row[i].why, (int)day);
	}
	assert_int_equal(day_from_ymd(1970, 1, 1), 0);
}

static void day_parse_takes_iso_dates_and_nothing_else(void **state)
{
	static const struct {
		const char *text, *iso; /* "" = refused */
	} row[] = {
		{ "2026-07-21", "2026-07-21" },
		{ "1900-01-01", "1900-01-01" },
		{ "2199-12-31", "2199-12-31" },
		{ "", "" },
		{ "2026", "" },
		{ "2026-", "" },
		{ "2026-07", "" },
		{ "2026-07-", "" },
		{ "2026-07-2", "" },
		{ "2026-07-21 ", "" },
		{ " 2026-07-21", "" },
		{ "2026-7-21", "" },
		{ "2026-07-211", "" },
		{ "2026/07/21", "" },
		{ "21.07.2026", "" },
		{ "07/21/2026", "" },
		{ "2026-07-32", "" },
		{ "2026-02-29", "" },
		{ "1899-12-31", "" },
		{ "2200-01-01", "" },
		{ "+026-07-21", "" },
		{ "2026--7-21", "" },
		{ "2026-07-21T10:00", "" },
		{ "20260721", "" },
		{ "2026-W30-2", "" },
		{ "yyyy-mm-dd", "" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		/* On the heap a sanitizer sees a look behind the NUL. */
		char *text = strdup(row[i].text), iso[DAY_ISO_SIZE];
		int32_t day = DAY_NONE;
		bool good = day_parse(text, &day);
		day_iso(day, iso);
		if (good != (row[i].iso[0] != '\0') || strcmp(iso, row[i].iso) != 0)
			fail_msg("\"%s\" is read as \"%s\"", text, iso);
		free(text);
	}
}

static void day_fault_tells_a_year_out_of_range_from_no_date(void **state)
{
	static const char year[] = "the year must be 1900 to 2199";
	static const char date[] = "not a date such as 2026-07-21";
	static const struct {
		const char *text, *says; /* NULL: a date */
	} row[] = {
		{ "1900-01-01", NULL },
		{ "2199-12-31", NULL },
		{ "1899-12-31", year },
		{ "2200-01-01", year },
		{ "0000-02-29", year },
		{ "9999-12-31", year },
		{ "1899-12-32", date },
		{ "1899-02-29", date },
		{ "1899-00-01", date },
		{ "1899-13-01", date },
		{ "1899-01-00", date },
		{ "1899-12-311", date },
		{ "2026-02-29", date },
		{ "2026-07", date },
		{ "", date },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		const char *says = day_fault(row[i].text);
		if (!says != !row[i].says || (says && strcmp(says, row[i].says) != 0))
			fail_msg("%s: %s", row[i].text, says ? says : "a date");
	}
}

static void day_none_gives_nothing(void **state)
{
	char iso[DAY_ISO_SIZE] = "#", text[DAY_TEXT_SIZE] = "#";
	int year = 9;

	(void)state;
	day_iso(DAY_NONE, iso);
	assert_string_equal(iso, "");
	day_long(DAY_NONE, text, sizeof text);
	assert_string_equal(text, "");
	strcpy(text, "#");
	day_short(DAY_NONE, text, sizeof text);
	assert_string_equal(text, "");
	assert_int_equal(day_weekday(DAY_NONE), 0);
	assert_int_equal(day_week(DAY_NONE, &year), 0);
	assert_int_equal(year, 0);
	assert_int_equal(day_monday(DAY_NONE), DAY_NONE);
	assert_int_equal(day_md(DAY_NONE), 0);
	assert_int_equal(day_to_ymd(DAY_NONE).year, 0);
	assert_int_equal(day_season_start(DAY_NONE, 101), DAY_NONE);
}

static void day_monday_starts_the_week(void **state)
{
	int32_t monday = day_from_ymd(2026, 7, 20);

	(void)state;
	for (int i = 0; i < 7; i++) {
		assert_int_equal(day_monday(monday + i), monday);
		assert_int_equal(day_weekday(monday + i), i + 1);
		assert_int_equal(day_week(monday + i, NULL), 30);
	}
	assert_int_equal(day_monday(monday + 7), monday + 7);
	assert_int_equal(day_monday(monday - 1), monday - 7);
	assert_int_equal(day_monday(-3), -3); /* 1969-12-29 */
}

static void day_week_may_begin_on_sunday(void **state)
{
	static const struct {
		const char *why, *day;
		int week, year;
	} row[] = {
		/* Week 1 is the first that has four days in the year: common practice
		 * of week tables from Sunday to Saturday, no source. */
		{ "Saturday is of the week before", "2026-07-18", 28, 2026 },
		{ "Sunday begins the next", "2026-07-19", 29, 2026 },
		{ "and Saturday ends it", "2026-07-25", 29, 2026 },
		{ "three days of a year are of the one before", "2026-01-03", 53,
			2025 },
		{ "its first Sunday", "2026-01-04", 1, 2026 },
		{ "four days are of the year", "2025-01-01", 1, 2025 },
		{ "though they begin in the one before", "2024-12-29", 1, 2025 },
	};

	(void)state;
	day_set_style((struct day_style){ .sunday_first = true });
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		int32_t day;
		int year;
		assert_true(day_parse(row[i].day, &day));
		int week = day_week(day, &year);
		if (week != row[i].week || year != row[i].year)
			fail_msg("%s: week %d of %d", row[i].why, week, year);
	}
	int32_t sunday = day_from_ymd(2026, 7, 19);
	for (int i = 0; i < 7; i++) {
		assert_int_equal(day_week_start(sunday + i), sunday);
		assert_int_equal(day_weekday(sunday + i), i == 0 ? 7 : i);
	}
	assert_int_equal(day_week_start(sunday - 1), sunday - 7);
	assert_int_equal(day_week_start(DAY_NONE), DAY_NONE);
	assert_int_equal(day_monday(sunday), sunday - 6);
	day_set_style((struct day_style){ 0 });
	assert_int_equal(day_week_start(sunday), sunday - 6);
}

static void day_words_may_put_the_month_first(void **state)
{
	char text[DAY_TEXT_SIZE], iso[DAY_ISO_SIZE];
	int32_t day = day_from_ymd(2026, 7, 21);

	(void)state;
	day_set_style((struct day_style){ .month_first = true });
	day_short(day, text, sizeof text);
	assert_string_equal(text, "Tue Jul 21");
	day_long(day, text, sizeof text);
	assert_string_equal(text, "Tue July 21, 2026");
	day_iso(day, iso);
	assert_string_equal(iso, "2026-07-21");
	day_short(DAY_NONE, text, sizeof text);
	assert_string_equal(text, "");
	day_set_style((struct day_style){ 0 });
}

static void day_md_parse_takes_days_of_any_year(void **state)
{
	static const struct {
		const char *text;
		int want; /* 0 = refused */
	} row[] = {
		{ "01-01", 101 },
		{ "12-31", 1231 },
		{ "02-29", 229 },
		{ "02-30", 0 },
		{ "06-30", 630 },
		{ "06-31", 0 },
		{ "00-10", 0 },
		{ "13-01", 0 },
		{ "10-00", 0 },
		{ "1-01", 0 },
		{ "01-1", 0 },
		{ "0101", 0 },
		{ "01-01-", 0 },
		{ "01-011", 0 },
		{ "", 0 },
		{ "0", 0 },
		{ "01-", 0 },
		{ " 01-01", 0 },
		{ "01/01", 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		int md = 0;
		char *text = strdup(row[i].text);
		bool good = day_md_parse(text, &md);
		if (md != row[i].want || good != (row[i].want != 0))
			fail_msg("\"%s\" is read as %d", text, md);
		free(text);
	}
	assert_int_equal(day_md(day_from_ymd(2026, 7, 1)), 701);
	assert_int_equal(day_md(day_from_ymd(2024, 2, 29)), 229);
}

static void day_md_within_may_wrap_the_new_year(void **state)
{
	static const struct {
		const char *why;
		int md, from, to;
		bool want;
	} row[] = {
		{ "before", 630, 701, 831, false },
		{ "first day", 701, 701, 831, true },
		{ "last day", 831, 701, 831, true },
		{ "after", 901, 701, 831, false },
		{ "one day", 701, 701, 701, true },
		{ "the day after one", 702, 701, 701, false },
		{ "wraps: before", 1030, 1101, 228, false },
		{ "wraps: first day", 1101, 1101, 228, true },
		{ "wraps: new year's eve", 1231, 1101, 228, true },
		{ "wraps: new year", 101, 1101, 228, true },
		{ "wraps: last day", 228, 1101, 228, true },
		{ "wraps: leap day is after", 229, 1101, 228, false },
		{ "no window is the whole year", 101, 0, 0, true },
		{ "no day is in no window", 0, 1101, 228, false },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		if (day_md_within(row[i].md, row[i].from, row[i].to) != row[i].want)
			fail_msg("%s", row[i].why);
}

static void day_words_name_the_day(void **state)
{
	char text[DAY_TEXT_SIZE];
	int32_t day = day_from_ymd(2026, 7, 21);

	(void)state;
	day_long(day, text, sizeof text);
	assert_string_equal(text, "Tue 21 July 2026");
	day_short(day, text, sizeof text);
	assert_string_equal(text, "Tue 21 Jul");
	for (int month = 1; month <= 12; month++) { /* against the C library's names */
		char want[DAY_TEXT_SIZE];
		struct tm tm = { .tm_year = 126, .tm_mon = month - 1, .tm_mday = 10 };
		timegm(&tm);
		strftime(want, sizeof want, "%a %d %B %Y", &tm);
		day_long(day_from_ymd(2026, month, 10), text, sizeof text);
		assert_string_equal(text, want);
		strftime(want, sizeof want, "%a %d %b", &tm);
		day_short(day_from_ymd(2026, month, 10), text, sizeof text);
		assert_string_equal(text, want);
	}
	char small[6];
	day_long(day, small, sizeof small);
	assert_string_equal(small, "Tue 2");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(day_agrees_with_the_c_library_on_every_day),
		cmocka_unit_test(day_from_ymd_refuses_what_is_no_date),
		cmocka_unit_test(day_parse_takes_iso_dates_and_nothing_else),
		cmocka_unit_test(day_fault_tells_a_year_out_of_range_from_no_date),
		cmocka_unit_test(day_none_gives_nothing),
		cmocka_unit_test(day_monday_starts_the_week),
		cmocka_unit_test(day_week_may_begin_on_sunday),
		cmocka_unit_test(day_words_may_put_the_month_first),
		cmocka_unit_test(day_md_parse_takes_days_of_any_year),
		cmocka_unit_test(day_md_within_may_wrap_the_new_year),
		cmocka_unit_test(day_words_name_the_day),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
