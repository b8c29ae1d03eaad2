#include "season/log.h"

#include <stdio.h>

/* "0-7 c4" for an interval: from, to, state, moths, & when it joins the one before. */
static void print_intervals(const struct diary *d, char *out, size_t size)
{
	static const char states[] = "cfu";
	size_t at = 0;

	out[0] = '\0';
	for (size_t i = 0; i < d->n; i++) {
		const struct interval *it = &d->items[i];
		at += (size_t)snprintf(out + at, size - at, "%s%d-%d%c%d%s",
			i ? " " : "", (int)(it->from - log_day(0)),
			(int)(it->to - log_day(0)), states[it->state], (int)it->moths,
			it->joins ? "&" : "");
	}
}

static void diary_read_makes_intervals_between_clearings(void **state)
{
	static const struct {
		const char *why, *visits, *want;
	} row[] = {
		{ "nothing at all", "", "" },
		{ "hung and not seen again", "0h", "" },
		{ "a count closes the interval since the hanging", "0h 7c4", "0-7c4" },
		{ "a second one joins on", "0h 7c4 14c0", "0-7c4 7-14c0&" },
		{ "a skipped visit lets it go on", "0h 7c4 14s 21c9", "0-7c4 7-21c9&" },
		{ "all visits skipped", "0h 7s 14s 21s", "" },
		{ "a floor is at least", "0h 7f30 14c2", "0-7f30 7-14c2&" },
		{ "spoiled: unknown, and a new start", "0h 7x 14c2", "0-7u0 7-14c2" },
		{ "spoiled with a count: at least that", "0h 7x3 14c2",
			"0-7u3 7-14c2" },
		{ "missing ends the series", "0h 7c1 14m 21h 28c2",
			"0-7c1 7-14u0& 21-28c2" },
		{ "pulled with a count was read", "0h 7p5", "0-7c5" },
		{ "pulled without one was not", "0h 7p", "0-7u0" },
		{ "pulled and hung again", "0h 7p5 21h 28c1", "0-7c5 21-28c1" },
		{ "hung twice loses what was caught between", "0h 5h 12c3",
			"0-5u0 5-12c3" },
		{ "a first count without hanging only clears", "7c4 14c2", "7-14c2" },
		{ "a first spoiled visit too", "7x 14c2", "7-14c2" },
		{ "a count after missing clears a trap that is there",
			"0h 7m 14c9 21c1", "0-7u0 14-21c1" },
		{ "pulled before it was ever hung", "0p3 7h 14c1", "7-14c1" },
		{ "missing twice", "0h 7m 14m", "0-7u0" },
		{ "the highest count", "0h 7c9999", "0-7c9999" },
		{ "a count beyond the range is cut", "0h 7c1000000", "0-7c9999" },
		{ "counted without a count is not zero", "0h 7c", "0-7u0" },
		{ "floor without a count is not zero", "0h 7f", "0-7u0" },
		{ "more than a year", "0h 400c5", "0-400c5" },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct log log;
		char got[256];
		log_read(&log, row[i].visits);
		print_intervals(&log.diary, got, sizeof got);
		log_free(&log);
		if (strcmp(got, row[i].want) != 0)
			fail_msg("%s: %s, not %s", row[i].why, got, row[i].want);
	}
}

static void diary_stand_tells_how_the_trap_stood(void **state)
{
	static const struct {
		const char *why, *visits;
		int day;
		enum standing standing;
		int since, cleared, series, skipped; /* -1: none */
	} row[] = {
		{ "before it was hung", "7h", 6, STANDING_NOT_HUNG, -1, -1, -1, -1 },
		{ "on the day it was hung", "7h", 7, STANDING_HANGS, 7, 7, 7, -1 },
		{ "later visits are not looked at", "0h 7c1 14c1", 13, STANDING_HANGS,
			0, 7, 0, -1 },
		{ "a skipped visit is remembered", "0h 7s", 8, STANDING_HANGS, 0, 0, 0,
			7 },
		{ "until the trap is cleared", "0h 7s 14c1", 14, STANDING_HANGS, 0, 14,
			0, -1 },
		{ "missing", "0h 7m", 9, STANDING_MISSING, 7, -1, 0, -1 },
		{ "pulled", "0h 7p1", 9, STANDING_PULLED, 7, -1, 0, -1 },
		{ "hung again", "0h 7p1 21h", 22, STANDING_HANGS, 21, 21, 21, -1 },
		{ "hung while hanging starts a series", "0h 7h", 8, STANDING_HANGS, 0,
			7, 7, -1 },
		{ "a skipped visit to a trap that is gone", "0h 7m 14s", 15,
			STANDING_MISSING, 7, -1, 0, -1 },
		{ "missing twice is missing since the first", "0h 7m 14m", 15,
			STANDING_MISSING, 7, -1, 0, -1 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct log log;
		log_read(&log, row[i].visits);
		struct stand s = diary_stand(&log.diary, log_day(row[i].day));
		log_free(&log);
		int32_t want[] = { row[i].since, row[i].cleared, row[i].series,
			row[i].skipped };
		int32_t got[] = { s.since, s.cleared, s.series_start, s.skipped };
		if (s.standing != row[i].standing)
			fail_msg("%s: standing %d", row[i].why, (int)s.standing);
		for (size_t k = 0; k < COUNT_OF(want); k++)
			if (got[k] != (want[k] < 0 ? DAY_NONE : log_day(want[k])))
				fail_msg("%s: day %zu is %d", row[i].why, k,
					(int)got[k]);
	}
}

static void diary_read_reuses_its_memory(void **state)
{
	struct log log;
	(void)state;
	log_read(&log, "0h 7c1 14c2");
	struct visit other[] = { { .day = 5, .outcome = OUTCOME_HUNG },
		{ .day = 9, .outcome = OUTCOME_COUNTED, .count = 3 } };
	diary_read(&log.diary, other, 2);
	assert_int_equal(log.diary.n, 1);
	assert_int_equal(log.diary.items[0].moths, 3);
	log_free(&log);
	assert_null(log.diary.items);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(diary_read_makes_intervals_between_clearings),
		cmocka_unit_test(diary_stand_tells_how_the_trap_stood),
		cmocka_unit_test(diary_read_reuses_its_memory),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
