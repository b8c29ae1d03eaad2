/* How local clocks go, against the C library and the system's tables of time zones. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/day.h"
#include "command/clock.h"

#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum { DRAWS = 20000 };

static void go_to(const char *place)
{
	setenv("TZ", place, 1);
	tzset();
}

static struct tm local_at(int64_t minute)
{
	time_t at = (time_t)(minute * 60);
	struct tm local = { 0 };

	localtime_r(&at, &local);
	return local;
}

static int64_t draw(uint64_t *seed, int64_t lo, int64_t hi)
{
	*seed = *seed * 6364136223846793005U + 1442695040888963407U;
	return lo + (int64_t)((*seed >> 16) % (uint64_t)(hi - lo));
}

static void compare_minute(const struct zone *z, const char *place, int64_t minute)
{
	struct tm want = local_at(minute);
	struct instant t = zone_at(z, minute);
	int32_t day = day_from_ymd(want.tm_year + 1900, want.tm_mon + 1, want.tm_mday);

	if (zone_east(z, minute) != want.tm_gmtoff / 60 || instant_day(t) != day ||
		instant_minute_of_day(t) != want.tm_hour * 60 + want.tm_min)
		fail_msg("%s: minute %lld", place, (long long)minute);
}

/* The latest instant that mktime knows for the local time when told that it is summer
 * time, or that it is not; those that show that very time go before others. */
static int64_t latest_of_mktime(int32_t day, int32_t minute)
{
	struct ymd d = day_to_ymd(day);
	int64_t shown = INT64_MIN, any = INT64_MIN;

	for (int summer = 0; summer <= 1; summer++) {
		struct tm tm = { .tm_year = d.year - 1900,
			.tm_mon = d.month - 1,
			.tm_mday = d.day,
			.tm_hour = minute / 60,
			.tm_min = minute % 60,
			.tm_isdst = summer };
		int64_t at = (int64_t)mktime(&tm) / 60;
		struct tm back = local_at(at);
		if (back.tm_mday == d.day && back.tm_hour * 60 + back.tm_min == minute)
			shown = at > shown ? at : shown;
		any = at > any ? at : any;
	}
	return shown != INT64_MIN ? shown : any;
}

static void compare_local(
	const struct zone *z, const char *place, int32_t day, int32_t minute)
{
	int64_t want = latest_of_mktime(day, minute);
	struct instant got = zone_local(z, day, minute);
	char text[INSTANT_SIZE];

	instant_write(got, text);
	if (got.minute != want)
		fail_msg("%s: day %d, minute %d: %s, %lld minutes off", place, (int)day,
			(int)minute, text, (long long)(got.minute - want));
}

/* Random times, and every quarter of an hour of the days around each step. */
static void compare_place(const char *place, int32_t from, int32_t to)
{
	struct zone z;
	uint64_t seed = 20260721;

	go_to(place);
	clock_zone(&z, from + (to - from) / 2);
	for (int i = 0; i < DRAWS; i++) {
		int64_t minute = draw(&seed, (int64_t)from * MINUTES_A_DAY,
			(int64_t)to * MINUTES_A_DAY);
		compare_minute(&z, place, minute);
		compare_local(&z, place, (int32_t)draw(&seed, from, to),
			(int32_t)draw(&seed, 0, MINUTES_A_DAY));
	}
	assert_in_range(z.n, 59, ZONE_STEPS_MAX);
	for (size_t i = 1; i < z.n; i++) {
		int32_t day = instant_day(zone_at(&z, z.steps[i].from));
		compare_minute(&z, place, z.steps[i].from - 1);
		compare_minute(&z, place, z.steps[i].from);
		for (int32_t m = 0; m < 3 * MINUTES_A_DAY; m += 15)
			compare_local(&z, place, day - 1 + m / MINUTES_A_DAY,
				m % MINUTES_A_DAY);
	}
}

static void compare_or_skip(const char *place)
{
	go_to(place);
	if (local_at((int64_t)day_from_ymd(2026, 7, 1) * MINUTES_A_DAY).tm_gmtoff ==
		local_at((int64_t)day_from_ymd(2026, 1, 1) * MINUTES_A_DAY).tm_gmtoff) {
		print_message("%s: no table of its clocks here, not compared\n", place);
		skip();
	}
	compare_place(place, day_from_ymd(2000, 1, 10), day_from_ymd(2029, 12, 20));
	compare_place(place, day_from_ymd(2010, 6, 10), day_from_ymd(2040, 5, 20));
}

static void clocks_of_Berlin_go_as_the_system_says(void **state)
{
	(void)state;
	compare_or_skip("Europe/Berlin");
}

static void clocks_of_Los_Angeles_go_as_the_system_says(void **state)
{
	(void)state;
	compare_or_skip("America/Los_Angeles");
}

static void clocks_of_Adelaide_go_as_the_system_says(void **state)
{
	(void)state;
	compare_or_skip("Australia/Adelaide");
}

static void clocks_of_Lord_Howe_go_as_the_system_says(void **state)
{
	(void)state;
	compare_or_skip("Australia/Lord_Howe");
}

/* Rules that are written out need no tables. */
static void clocks_that_change_at_midnight_go_as_the_system_says(void **state)
{
	(void)state;
	compare_place("AAA4BBB,M9.1.0/0,M4.1.0/0", day_from_ymd(2011, 1, 10),
		day_from_ymd(2040, 12, 20));
}

static void clocks_that_never_change_have_one_step(void **state)
{
	struct zone z;
	(void)state;
	go_to("UTC0");
	clock_zone(&z, day_from_ymd(2026, 7, 21));
	assert_int_equal(z.n, 1);
	assert_int_equal(z.steps[0].east, 0);
	go_to("AAA7");
	clock_zone(&z, day_from_ymd(2026, 7, 21));
	assert_int_equal(z.n, 1);
	assert_int_equal(z.steps[0].east, -420);
	clock_zone(&z, DAY_NONE);
	assert_int_equal(z.n, 0);
}

/* Morocco's clocks change four times in many a year. */
static void of_too_many_steps_the_oldest_are_left_out(void **state)
{
	static const char place[] = "Africa/Casablanca";
	struct zone z;

	(void)state;
	go_to(place);
	clock_zone(&z, day_from_ymd(2026, 7, 21));
	if (z.n < ZONE_STEPS_MAX) {
		print_message(
			"%s: no table of so many changes here, not compared\n", place);
		skip();
	}
	for (size_t i = 1; i < z.n; i++) {
		assert_true(z.steps[i].from > z.steps[i - 1].from);
		compare_minute(&z, place, z.steps[i].from - 1);
		compare_minute(&z, place, z.steps[i].from);
	}
	assert_true(z.steps[z.n - 1].from >
		    (int64_t)day_from_ymd(2040, 1, 1) * MINUTES_A_DAY);
}

static void now_is_today(void **state)
{
	struct instant before, after;
	int32_t today;
	char text[16];

	(void)state;
	go_to("AAA-13:30");
	before = clock_now();
	today = clock_day();
	clock_text(text, sizeof text);
	after = clock_now();
	assert_int_equal(before.east, 810);
	assert_true(before.minute <= after.minute && after.minute <= before.minute + 1);
	assert_true(today == instant_day(before) || today == instant_day(after));
	int32_t minute = instant_minute_of_day(before);
	int32_t shown = (text[0] - '0') * 600 + (text[1] - '0') * 60 +
			(text[3] - '0') * 10 + (text[4] - '0');
	assert_true(shown == minute || shown == instant_minute_of_day(after));
}

static void another_day_has_the_hour_that_the_clock_shows(void **state)
{
	struct instant before, now, after;
	struct zone z;

	(void)state;
	go_to("AAA-13:30");
	before = clock_now();
	clock_stand(instant_day(before), 0, &now, &z);
	after = clock_now();
	assert_true(before.minute <= now.minute && now.minute <= after.minute);
	before = clock_now();
	clock_stand(day_from_ymd(2024, 2, 29), 0, &now, &z);
	after = clock_now();
	assert_int_equal(instant_day(now), day_from_ymd(2024, 2, 29));
	assert_int_equal(now.east, 810);
	assert_true(instant_minute_of_day(now) == instant_minute_of_day(before) ||
		    instant_minute_of_day(now) == instant_minute_of_day(after));
}

static void a_minute_that_is_given_is_taken_on_any_day(void **state)
{
	static const struct {
		const char *why;
		int32_t minute, day_after, shown;
	} row[] = {
		{ "the first that can be given", 1, 0, 1 },
		{ "the demo's", 450, 0, 450 },
		{ "the last of the day", 1439, 0, 1439 },
		{ "its end is the next day's begin", 1440, 1, 0 },
	};
	struct instant now;
	struct zone z;

	(void)state;
	go_to("AAA-13:30");
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		int32_t days[] = { day_from_ymd(2026, 7, 21), clock_day() };
		for (size_t k = 0; k < 2; k++) {
			clock_stand(days[k], row[i].minute, &now, &z);
			if (instant_day(now) != days[k] + row[i].day_after ||
				instant_minute_of_day(now) != row[i].shown)
				fail_msg("%s: minute %d", row[i].why,
					(int)instant_minute_of_day(now));
		}
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(clocks_of_Berlin_go_as_the_system_says),
		cmocka_unit_test(clocks_of_Los_Angeles_go_as_the_system_says),
		cmocka_unit_test(clocks_of_Adelaide_go_as_the_system_says),
		cmocka_unit_test(clocks_of_Lord_Howe_go_as_the_system_says),
		cmocka_unit_test(clocks_that_change_at_midnight_go_as_the_system_says),
		cmocka_unit_test(clocks_that_never_change_have_one_step),
		cmocka_unit_test(of_too_many_steps_the_oldest_are_left_out),
		cmocka_unit_test(now_is_today),
		cmocka_unit_test(another_day_has_the_hour_that_the_clock_shows),
		cmocka_unit_test(a_minute_that_is_given_is_taken_on_any_day),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
