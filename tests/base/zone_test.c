#include "base/clocks.h"

#include <string.h>

#define COUNT_OF(array) (sizeof(array) / sizeof *(array))

static void zone_local_is_what_clocks_show(void **state)
{
	static const struct {
		const char *why;
		enum clocks clocks;
		const char *local, *want;
	} row[] = {
		{ "UTC", CLOCKS_UTC, "2026-07-21 10:30", "2026-07-21T10:30+00:00" },
		{ "behind UTC", CLOCKS_WEST, "2026-08-20 10:30",
			"2026-08-20T10:30-07:00" },
		{ "before the first step", CLOCKS_HOUR, "2019-08-20 10:30",
			"2019-08-20T10:30+01:00" },
		{ "long after the last", CLOCKS_HOUR, "2031-08-20 10:30",
			"2031-08-20T10:30+01:00" },
		{ "last minute of winter", CLOCKS_HOUR, "2026-03-29 01:59",
			"2026-03-29T01:59+01:00" },
		{ "first minute that no clock shows", CLOCKS_HOUR, "2026-03-29 02:00",
			"2026-03-29T03:00+02:00" },
		{ "last minute that no clock shows", CLOCKS_HOUR, "2026-03-29 02:59",
			"2026-03-29T03:59+02:00" },
		{ "first minute of summer", CLOCKS_HOUR, "2026-03-29 03:00",
			"2026-03-29T03:00+02:00" },
		{ "last minute shown once", CLOCKS_HOUR, "2026-10-25 01:59",
			"2026-10-25T01:59+02:00" },
		{ "first minute shown twice", CLOCKS_HOUR, "2026-10-25 02:00",
			"2026-10-25T02:00+01:00" },
		{ "last minute shown twice", CLOCKS_HOUR, "2026-10-25 02:59",
			"2026-10-25T02:59+01:00" },
		{ "shown once again", CLOCKS_HOUR, "2026-10-25 03:00",
			"2026-10-25T03:00+01:00" },
		{ "half an hour forward", CLOCKS_HALF, "2026-10-04 01:45",
			"2026-10-04T02:15+11:00" },
		{ "half an hour back, once", CLOCKS_HALF, "2026-04-05 01:29",
			"2026-04-05T01:29+11:00" },
		{ "half an hour back, twice", CLOCKS_HALF, "2026-04-05 01:30",
			"2026-04-05T01:30+10:30" },
		{ "a midnight that is not shown", CLOCKS_MIDNIGHT, "2026-09-06 00:00",
			"2026-09-06T01:00-03:00" },
		{ "a midnight shown twice", CLOCKS_TWICE, "2026-10-25 00:00",
			"2026-10-25T00:00-01:00" },
		{ "an evening shown twice", CLOCKS_MIDNIGHT, "2026-04-04 23:30",
			"2026-04-04T23:30-04:00" },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct zone z = clocks_zone(row[i].clocks);
		char got[INSTANT_SIZE];
		instant_write(clocks_at(&z, row[i].local), got);
		if (strcmp(got, row[i].want) != 0)
			fail_msg("%s: %s, not %s", row[i].why, got, row[i].want);
	}
}

/* Every minute of three years, at each place. */
static void a_minute_shown_is_found_again_or_a_later_one(void **state)
{
	(void)state;
	for (int c = CLOCKS_UTC; c <= CLOCKS_WEST; c++) {
		struct zone z = clocks_zone((enum clocks)c);
		int64_t from = clocks_minute(2025, 7, 1, 0, 0), later = 0;
		for (int64_t m = from; m < from + 3 * 366 * MINUTES_A_DAY; m++) {
			struct instant t = zone_at(&z, m);
			int32_t day = instant_day(t), at = instant_minute_of_day(t);
			struct instant back = zone_local(&z, day, at);
			if (back.minute < m || instant_day(back) != day ||
				instant_minute_of_day(back) != at)
				fail_msg("clock %d: minute %lld", c, (long long)m);
			later += back.minute > m;
		}
		assert_int_equal(later, c == CLOCKS_UTC || c == CLOCKS_WEST ? 0
					: c == CLOCKS_HALF                  ? 30
									    : 60);
	}
}

static void a_day_ends_where_the_next_begins(void **state)
{
	struct zone z = clocks_zone(CLOCKS_HOUR);
	int32_t leap = day_from_ymd(2028, 2, 28), last = day_from_ymd(2026, 12, 31);

	(void)state;
	assert_int_equal(zone_local(&z, leap, MINUTES_A_DAY).minute,
		zone_local(&z, day_from_ymd(2028, 2, 29), 0).minute);
	assert_int_equal(zone_local(&z, leap + 1, MINUTES_A_DAY).minute,
		zone_local(&z, day_from_ymd(2028, 3, 1), 0).minute);
	assert_int_equal(zone_local(&z, last, MINUTES_A_DAY).minute,
		zone_local(&z, day_from_ymd(2027, 1, 1), 0).minute);
	assert_int_equal(instant_day(zone_local(&z, last, MINUTES_A_DAY)), last + 1);
	assert_int_equal(instant_minute_of_day(zone_local(&z, last, MINUTES_A_DAY)), 0);
}

static void an_hour_is_an_hour_when_clocks_change(void **state)
{
	static const struct {
		const char *why, *from;
		int hours;
		const char *want;
	} row[] = {
		{ "across midnight", "2026-08-20 22:30", 12, "2026-08-21T10:30+02:00" },
		{ "across the month", "2026-08-31 22:30", 2, "2026-09-01T00:30+02:00" },
		{ "29 February", "2028-02-28 22:30", 12, "2028-02-29T10:30+01:00" },
		{ "no 29 February", "2027-02-28 22:30", 12, "2027-03-01T10:30+01:00" },
		{ "clocks go forward", "2026-03-28 22:00", 12,
			"2026-03-29T11:00+02:00" },
		{ "clocks go back", "2026-10-24 22:00", 12, "2026-10-25T09:00+01:00" },
	};
	struct zone z = clocks_zone(CLOCKS_HOUR);
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		int64_t from = clocks_at(&z, row[i].from).minute;
		char got[INSTANT_SIZE];
		instant_write(zone_at(&z, from + row[i].hours * 60), got);
		if (strcmp(got, row[i].want) != 0)
			fail_msg("%s: %s, not %s", row[i].why, got, row[i].want);
	}
}

static void instant_read_takes_what_instant_write_gives(void **state)
{
	static const struct {
		const char *why, *text;
		bool good;
	} row[] = {
		{ "behind UTC", "2026-08-20T10:30-07:00", true },
		{ "ahead, by half hours", "2026-08-20T10:30+10:30", true },
		{ "UTC", "2026-08-20T10:30+00:00", true },
		{ "the furthest east", "2026-08-20T00:00+14:00", true },
		{ "further than any clock", "2026-08-20T00:00+14:01", false },
		{ "the furthest west", "2026-08-20T00:00-14:00", true },
		{ "last minute of a day", "2026-08-20T23:59+02:00", true },
		{ "an hour too many", "2026-08-20T24:00+02:00", false },
		{ "a minute too many", "2026-08-20T23:60+02:00", false },
		{ "minutes of the offset", "2026-08-20T23:00+02:60", false },
		{ "no such day", "2026-02-29T10:30+02:00", false },
		{ "a leap day", "2028-02-29T10:30+02:00", true },
		{ "the first day that can be written", "1900-01-01T00:00+14:00", true },
		{ "the last", "2199-12-31T23:59-14:00", true },
		{ "no offset", "2026-08-20T10:30", false },
		{ "a letter for UTC", "2026-08-20T10:30Z", false },
		{ "a second spelling of UTC", "2026-08-20T10:30-00:00", false },
		{ "a blank for the T", "2026-08-20 10:30+02:00", false },
		{ "seconds", "2026-08-20T10:30:00+02:00", false },
		{ "an offset without colon", "2026-08-20T10:30+02000", false },
		{ "no sign", "2026-08-20T10:30 02:00", false },
		{ "something after it", "2026-08-20T10:30+02:00 ", false },
		{ "nothing", "", false },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct instant t = { 7, 7 };
		char back[INSTANT_SIZE] = "";
		bool good = instant_read(row[i].text, &t);
		if (good != row[i].good)
			fail_msg("%s: %s", row[i].why, row[i].text);
		if (good)
			instant_write(t, back);
		if (good ? strcmp(back, row[i].text) != 0 : t.minute != 7)
			fail_msg("%s: %s came back as %s", row[i].why, row[i].text,
				back);
	}
}

static void what_is_not_known_stays_so(void **state)
{
	struct zone z = clocks_zone(CLOCKS_HOUR);
	struct instant never = zone_at(&z, INSTANT_NONE);
	char text[DAY_TEXT_SIZE] = "x";

	(void)state;
	assert_true(never.minute == INSTANT_NONE);
	assert_true(zone_local(&z, DAY_NONE, 0).minute == INSTANT_NONE);
	assert_true(zone_local(&z, 0, -1).minute == INSTANT_NONE);
	assert_true(zone_local(&z, 0, MINUTES_A_DAY).minute != INSTANT_NONE);
	assert_true(zone_local(&z, 0, MINUTES_A_DAY + 1).minute == INSTANT_NONE);
	assert_int_equal(instant_day(never), DAY_NONE);
	assert_int_equal(instant_minute_of_day(never), -1);
	instant_write(never, text);
	assert_string_equal(text, "");
	text[0] = 'x';
	instant_short(never, text, sizeof text);
	assert_string_equal(text, "");
	assert_int_equal(instant_day((struct instant){ INT64_MAX, 840 }), DAY_NONE);
	assert_int_equal(
		instant_day((struct instant){ INT64_MIN + 1, -840 }), DAY_NONE);
}

static void clock_read_takes_a_time_of_day(void **state)
{
	static const struct {
		const char *why, *text;
		int want;
	} row[] = {
		{ "with a colon", "10:30", 630 },
		{ "one digit of hours", "7:05", 425 },
		{ "two", "07:05", 425 },
		{ "digits alone", "1030", 630 },
		{ "the same in the morning", "0705", 425 },
		{ "the first minute", "0:00", 0 },
		{ "the last minute", "23:59", 1439 },
		{ "past it", "24:00", -1 },
		{ "past it, digits alone", "2400", -1 },
		{ "the last of an hour", "1059", 659 },
		{ "past it", "1060", -1 },
		{ "a digit may be lacking", "103", -1 },
		{ "one digit of minutes", "10:3", -1 },
		{ "no minutes", "10", -1 },
		{ "no hours", ":30", -1 },
		{ "three colons", "1:::", -1 },
		{ "a dot", "10.30", -1 },
		{ "a sign", "-1:30", -1 },
		{ "a blank", " 7:05", -1 },
		{ "seconds", "10:30:00", -1 },
		{ "a word", "noon", -1 },
		{ "nothing", "", -1 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		int32_t got = -1;
		bool good = clock_read(row[i].text, &got);
		if (got != row[i].want || good != (row[i].want >= 0))
			fail_msg("%s: %s: %d", row[i].why, row[i].text, (int)got);
	}
}

static void instant_short_is_day_and_clock(void **state)
{
	struct zone z = clocks_zone(CLOCKS_WEST);
	char text[DAY_TEXT_SIZE];

	(void)state;
	instant_short(clocks_at(&z, "2026-07-22 6:00"), text, sizeof text);
	assert_string_equal(text, "Wed 22 Jul 06:00");
	instant_short(clocks_at(&z, "2026-07-22 23:59"), text, sizeof text);
	assert_string_equal(text, "Wed 22 Jul 23:59");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(zone_local_is_what_clocks_show),
		cmocka_unit_test(a_minute_shown_is_found_again_or_a_later_one),
		cmocka_unit_test(a_day_ends_where_the_next_begins),
		cmocka_unit_test(an_hour_is_an_hour_when_clocks_change),
		cmocka_unit_test(instant_read_takes_what_instant_write_gives),
		cmocka_unit_test(what_is_not_known_stays_so),
		cmocka_unit_test(clock_read_takes_a_time_of_day),
		cmocka_unit_test(instant_short_is_day_and_clock),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
