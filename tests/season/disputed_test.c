/* What adds up catches, of a count that two scouts do not agree on: no fact of the
 * trade, but our own rule that what is not known is neither a number nor a zero. */
#include "log.h"

#include "season/biofix.h"
#include "season/flightline.h"
#include "season/flights.h"

/* The visit of that day: it is least..most; most -1: one of them did not read it. */
static void dispute(struct log *l, int32_t day, int32_t least, int32_t most)
{
	for (size_t i = 0; i < l->n; i++)
		if (l->visits[i].day == log_day(day)) {
			l->visits[i].is_disputed = true;
			l->visits[i].least = least;
			l->visits[i].most = most;
		}
	diary_read(&l->diary, l->visits, l->n);
}

static void interval_takes_what_no_scout_denies(void **state)
{
	static const struct {
		const char *why, *log;
		int32_t least, most, moths;
		enum catch_state want;
	} row[] = {
		{ "the diary has the higher one", "0h 7c9", 4, 9, 4, CATCH_FLOOR },
		{ "the diary has the lower one", "0h 7c4", 4, 9, 4, CATCH_FLOOR },
		{ "none or some is not none", "0h 7c0", 0, 3, 0, CATCH_FLOOR },
		{ "one did not read it", "0h 7c4", 0, -1, 0, CATCH_UNKNOWN },
		{ "one found the card full", "0h 7c40", 30, -1, 30, CATCH_FLOOR },
		{ "no good card stays unknown", "0h 7x4", 2, -1, 2, CATCH_UNKNOWN },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct log l;
		log_read(&l, row[i].log);
		dispute(&l, 7, row[i].least, row[i].most);
		struct interval it = interval_sure(&l.diary.items[0]);
		diary_free(&l.diary);
		if (it.moths != row[i].moths || it.state != row[i].want)
			fail_msg("%s: %d, state %d", row[i].why, (int)it.moths,
				(int)it.state);
	}
}

static void week_of_a_flight_has_at_least_what_both_say(void **state)
{
	struct flight_series s;
	struct log l;

	(void)state;
	log_read(&l, "0h 7c4 14c9 21c5");
	dispute(&l, 14, 6, 9);
	const struct diary *list[] = { &l.diary };
	assert_true(flight_series_of(list, 1, log_day(0), log_day(99), &s));
	assert_int_equal((int)(s.moths[1] + 0.5), 6);
	assert_true(s.at_least[1]);
	assert_false(s.at_least[0] || s.at_least[2]);
	dispute(&l, 14, 0, -1); /* one of them did not read it */
	assert_true(flight_series_of(list, 1, log_day(0), log_day(99), &s));
	assert_true(s.nights[1] <= 0);
	diary_free(&l.diary);
}

static void mark_of_a_disputed_week_is_at_least(void **state)
{
	struct mark m[3];
	struct log l;

	(void)state;
	log_read(&l, "0h 7c4 14c9 21c5");
	dispute(&l, 14, 6, 9);
	flightline_of_trap(&l.diary, log_day(1), log_day(21), m);
	assert_int_equal(m[1].kind, MARK_FLOOR);
	assert_int_equal(m[1].x10, 60);
	assert_int_equal(m[2].kind, MARK_CATCH);
	diary_free(&l.diary);
}

static void biofix_is_not_dated_by_a_moth_that_one_scout_denies(void **state)
{
	static const struct {
		const char *why, *word;
		int32_t day, least, most; /* of the disputed one */
		enum biofix_state want;
		int32_t after, by;
		bool disputed;
	} row[] = {
		{ "none is disputed", "first-moth", 99, 0, 0, BIOFIX_DATED, 7, 14,
			false },
		{ "a moth or none: a later check dates it, perhaps too late",
			"first-moth", 14, 0, 2, BIOFIX_DATED, 7, 21, true },
		{ "a moth, but how many: it is dated by it", "first-moth", 14, 1, 2,
			BIOFIX_DATED, 7, 14, true },
		{ "what comes after the date is no matter", "first-moth", 21, 0, 4,
			BIOFIX_DATED, 7, 14, false },
		{ "the third moth", "three-moths", 14, 1, 3, BIOFIX_DATED, 14, 21,
			true },
		{ "two checks have it, the third is no matter", "sustained", 28, 0, 3,
			BIOFIX_DATED, 7, 14, false },
		{ "not read by one", "sustained", 14, 0, -1, BIOFIX_DATED, 7, 28,
			true },
		{ "the check that would confirm it may have had none", "sustained", 21,
			0, 4, BIOFIX_DATED, 14, 28, true },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct log l;
		log_read(&l, "0h 7c0 14c2 21c4 28c3 35c3");
		dispute(&l, row[i].day, row[i].least, row[i].most);
		const struct diary *list[] = { &l.diary };
		struct biofix b = biofix_suggest(biofix_rule_find(row[i].word), list, 1,
			log_day(0), log_day(99));
		diary_free(&l.diary);
		if (b.state != row[i].want || b.after != log_day(row[i].after) ||
			b.by != log_day(row[i].by) || b.is_disputed != row[i].disputed)
			fail_msg("%s: state %d, after %d, by %d, disputed %d",
				row[i].why, (int)b.state, (int)(b.after - log_day(0)),
				(int)(b.by - log_day(0)), (int)b.is_disputed);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(interval_takes_what_no_scout_denies),
		cmocka_unit_test(week_of_a_flight_has_at_least_what_both_say),
		cmocka_unit_test(mark_of_a_disputed_week_is_at_least),
		cmocka_unit_test(biofix_is_not_dated_by_a_moth_that_one_scout_denies),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
