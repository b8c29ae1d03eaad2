#include "season/weekly.h"

#include "season/log.h"

/* What is printed for a week: tenths, or why there are none. */
struct want {
	enum unread unread;
	int x10, nights;
};

static void expect(const char *why, const struct weekly *w, struct want want)
{
	if (w->unread != want.unread)
		fail_msg(
			"%s: unread %d, not %d", why, (int)w->unread, (int)want.unread);
	if (weekly_x10(w) != want.x10)
		fail_msg("%s: %d tenths, not %d", why, (int)weekly_x10(w), want.x10);
	if (w->nights != want.nights)
		fail_msg("%s: %d nights, not %d", why, (int)w->nights, want.nights);
}

static void weekly_catch_is_moths_times_seven_over_nights(void **state)
{
	static const struct {
		const char *why, *visits;
		int asked;
		struct want want;
	} row[] = {
		{ "12 moths in 10 nights", "0h 10c12", 10, { UNREAD_NO, 84, 10 } },
		{ "a counted zero is a catch", "0h 7c0", 7, { UNREAD_NO, 0, 7 } },
		{ "four in a week", "0h 7c4 14s 21c9", 7, { UNREAD_NO, 40, 7 } },
		{ "skipped, so not known", "0h 7c4 14s 21c9", 14,
			{ UNREAD_SKIPPED, -1, 7 } },
		{ "nine in two weeks", "0h 7c4 14s 21c9", 21, { UNREAD_NO, 45, 14 } },
		{ "down: not known", "0h 7x 14c2", 7, { UNREAD_SPOILED, -1, 7 } },
		{ "put right: two in a week", "0h 7x 14c2", 14, { UNREAD_NO, 20, 7 } },
		{ "twice down: nights add up", "0h 7c1 14x 21x", 22,
			{ UNREAD_SPOILED, -1, 15 } },
		{ "five nights are enough", "0h 5c5", 5, { UNREAD_NO, 70, 5 } },
		{ "four are too few", "0h 4c5", 4, { UNREAD_SHORT, -1, 4 } },
		{ "four are joined with the week before", "0h 7c4 11c5", 11,
			{ UNREAD_NO, 57, 11 } },
		{ "daily visits are joined up to five",
			"0h 1c1 2c1 3c1 4c1 5c1 6c1 7c1", 7, { UNREAD_NO, 70, 5 } },
		{ "but not across a spoiled one", "0h 7x 10c5", 10,
			{ UNREAD_SHORT, -1, 3 } },
		{ "nor across a hanging", "0h 7c4 8p0 9h 12c5", 12,
			{ UNREAD_SHORT, -1, 3 } },
		{ "ten nights later it still holds", "0h 7c4", 17,
			{ UNREAD_NO, 40, 7 } },
		{ "eleven nights later it is stale", "0h 7c4", 18,
			{ UNREAD_STALE, -1, 11 } },
		{ "never hung", "", 7, { UNREAD_NOT_HUNG, -1, 0 } },
		{ "not hung by then", "7h", 6, { UNREAD_NOT_HUNG, -1, 0 } },
		{ "hung, and not visited yet", "0h", 3, { UNREAD_NOT_YET, -1, 3 } },
		{ "hung, and visits skipped", "0h 7s 14s", 14,
			{ UNREAD_SKIPPED, -1, 14 } },
		{ "counted without having been hung", "7c9", 8,
			{ UNREAD_NOT_YET, -1, 1 } },
		{ "missing", "0h 7c1 14m", 15, { UNREAD_MISSING, -1, 8 } },
		{ "pulled with a count holds", "0h 7p5", 10, { UNREAD_NO, 50, 7 } },
		{ "and then no longer", "0h 7p5", 18, { UNREAD_PULLED, -1, 11 } },
		{ "pulled without a count", "0h 7p", 7, { UNREAD_PULLED, -1, 7 } },
		{ "hung again after it was pulled", "0h 7p5 9h", 10,
			{ UNREAD_NOT_YET, -1, 1 } },
		{ "hung twice", "0h 7c1 14h", 15, { UNREAD_NOT_YET, -1, 1 } },
		{ "the most moths in the fewest nights", "0h 5c9999", 5,
			{ UNREAD_NO, 139986, 5 } },
		{ "a year and a month", "0h 400c100", 400, { UNREAD_NO, 18, 400 } },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct log log;
		log_read(&log, row[i].visits);
		struct weekly w =
			weekly_catch(&log.diary, log_day(row[i].asked), &limits_usual);
		log_free(&log);
		expect(row[i].why, &w, row[i].want);
	}
}

static struct weekly catch_of(struct log *log, const char *visits, int asked)
{
	log_read(log, visits);
	return weekly_catch(&log->diary, log_day(asked), &limits_usual);
}

static void weekly_catch_marks_long_intervals_and_floors(void **state)
{
	struct log log;
	(void)state;
	assert_false(catch_of(&log, "0h 10c12", 10).is_long);
	log_free(&log);
	assert_true(catch_of(&log, "0h 11c12", 11).is_long);
	log_free(&log);
	assert_true(catch_of(&log, "0h 7f30", 7).at_least);
	log_free(&log);
	assert_true(catch_of(&log, "0h 3f30 7c1", 7).at_least);
	log_free(&log);
	assert_false(catch_of(&log, "0h 3f30 10c1", 10).at_least);
	log_free(&log);
	assert_int_equal(catch_of(&log, "0h 7x8", 7).moths, 8);
	log_free(&log);
}

static void weekly_catch_says_what_it_used(void **state)
{
	struct log log;
	struct weekly w = catch_of(&log, "0h 7c4 9c1 11c5", 12);
	(void)state;
	assert_int_equal(w.from, log_day(0));
	assert_int_equal(w.to, log_day(11));
	assert_int_equal(w.first, 0);
	assert_int_equal(w.last, 2);
	assert_int_equal(w.moths, 10);
	log_free(&log);
	w = catch_of(&log, "0h", 3);
	assert_int_equal(w.from, DAY_NONE);
	assert_int_equal(w.to, DAY_NONE);
	log_free(&log);
}

static void the_three_numbers_are_settings(void **state)
{
	struct limits l = limits_usual;
	struct log log;
	(void)state;
	l.join_nights = 3;
	l.long_nights = 6;
	l.stale_nights = 2;
	log_read(&log, "0h 3c3 10c4");
	struct weekly w = weekly_catch(&log.diary, log_day(3), &l);
	expect("three nights are enough", &w, (struct want){ UNREAD_NO, 70, 3 });
	w = weekly_catch(&log.diary, log_day(6), &l);
	expect("stale after two", &w, (struct want){ UNREAD_STALE, -1, 3 });
	w = weekly_catch(&log.diary, log_day(10), &l);
	assert_true(w.is_long);
	log_free(&log);
}

static void weekly_before_goes_back_week_by_week(void **state)
{
	static const struct {
		const char *why, *visits;
		int asked;
		struct want want;
	} row[] = {
		{ "the week before", "0h 7c4 14c9", 14, { UNREAD_NO, 40, 7 } },
		{ "it is never stale", "0h 7c4 40c9", 40, { UNREAD_NO, 40, 7 } },
		{ "before a joined week", "0h 7c4 11c1 14c9", 14,
			{ UNREAD_NO, 40, 7 } },
		{ "nothing before the first", "0h 7c4", 7, { UNREAD_NOT_HUNG, -1, 0 } },
		{ "spoiled is the answer", "0h 7c4 14x 21c1", 21,
			{ UNREAD_SPOILED, -1, 7 } },
		{ "missing is the answer", "0h 7c4 14m 21h 28c1", 28,
			{ UNREAD_MISSING, -1, 14 } },
		{ "pulled in between", "0h 7p4 21h 28c1", 28,
			{ UNREAD_PULLED, -1, 14 } },
		{ "too short a first interval", "0h 3c4 10c1", 10,
			{ UNREAD_SHORT, -1, 3 } },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct log log;
		struct weekly w = catch_of(&log, row[i].visits, row[i].asked);
		struct weekly before = weekly_before(&log.diary, &w, &limits_usual);
		log_free(&log);
		expect(row[i].why, &before, row[i].want);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(weekly_catch_is_moths_times_seven_over_nights),
		cmocka_unit_test(weekly_catch_marks_long_intervals_and_floors),
		cmocka_unit_test(weekly_catch_says_what_it_used),
		cmocka_unit_test(the_three_numbers_are_settings),
		cmocka_unit_test(weekly_before_goes_back_week_by_week),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
