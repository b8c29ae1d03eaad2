#include "season/judging.h"

static struct rule weeks_rule(int32_t span, enum comparator c, int32_t value_x100)
{
	return (struct rule){ .pest = 1,
		.measure = MEASURE_TRAP_WEEK,
		.span = span,
		.comparator = c,
		.value_x100 = value_x100 };
}

static void a_single_week_is_judged_by_its_bounds(void **state)
{
	static const struct {
		const char *why, *visits;
		int asked;
		enum comparator comparator;
		int32_t value_x100;
		enum verdict want;
		enum lacking lacking;
	} row[] = {
		{ "exactly on at least", "0h 7c5", 7, AT_LEAST, 500, VERDICT_OVER, 0 },
		{ "exactly on more than", "0h 7c5", 7, MORE_THAN, 500, VERDICT_NEAR,
			0 },
		{ "12 in 10 nights on 8.4", "0h 10c12", 10, AT_LEAST, 840, VERDICT_OVER,
			0 },
		{ "12 in 10 nights under 8.41", "0h 10c12", 10, AT_LEAST, 841,
			VERDICT_NEAR, 0 },
		{ "1 in 6 nights is 1.1667, over 1.16", "0h 6c1", 6, AT_LEAST, 116,
			VERDICT_OVER, 0 },
		{ "and under 1.17", "0h 6c1", 6, AT_LEAST, 117, VERDICT_NEAR, 0 },
		{ "seven tenths are near", "0h 10c5", 10, AT_LEAST, 500, VERDICT_NEAR,
			0 },
		{ "a little less is under", "0h 7c3", 7, AT_LEAST, 500, VERDICT_UNDER,
			0 },
		{ "zero against more than 0 is under", "0h 7c0", 7, MORE_THAN, 0,
			VERDICT_UNDER, 0 },
		{ "one against more than 0", "0h 7c1", 7, MORE_THAN, 0, VERDICT_OVER,
			0 },
		{ "a floor on the threshold", "0h 7f30", 7, AT_LEAST, 3000,
			VERDICT_OVER, 0 },
		{ "a floor below it", "0h 7f20", 7, AT_LEAST, 3000, VERDICT_UNKNOWN,
			LACKING_FLOOR },
		{ "a floor on more than", "0h 7f30", 7, MORE_THAN, 3000,
			VERDICT_UNKNOWN, LACKING_FLOOR },
		{ "spoiled", "0h 7x", 7, AT_LEAST, 500, VERDICT_UNKNOWN,
			LACKING_READING },
		{ "spoiled, yet enough on it", "0h 7x6", 7, AT_LEAST, 500, VERDICT_OVER,
			0 },
		{ "skipped", "0h 7c9 14s", 14, AT_LEAST, 500, VERDICT_UNKNOWN,
			LACKING_READING },
		{ "stale", "0h 7c9", 18, AT_LEAST, 500, VERDICT_UNKNOWN,
			LACKING_READING },
		{ "missing", "0h 7m", 7, AT_LEAST, 500, VERDICT_UNKNOWN,
			LACKING_READING },
		{ "not yet visited", "0h", 3, AT_LEAST, 500, VERDICT_UNKNOWN,
			LACKING_READING },
		{ "never hung", "", 3, AT_LEAST, 500, VERDICT_UNKNOWN, LACKING_WEEKS },
		{ "three nights with too few", "0h 3c4", 3, AT_LEAST, 500,
			VERDICT_UNKNOWN, LACKING_READING },
		{ "three nights with enough", "0h 3c5", 3, AT_LEAST, 500, VERDICT_OVER,
			0 },
		{ "two weeks on average over", "0h 14c10", 14, AT_LEAST, 500,
			VERDICT_OVER, 0 },
		{ "two weeks that may hide one over", "0h 14c9", 14, AT_LEAST, 500,
			VERDICT_UNKNOWN, LACKING_SPLIT },
		{ "two weeks too few even for one", "0h 14c4", 14, AT_LEAST, 500,
			VERDICT_NEAR, 0 },
		{ "thirteen nights are one average", "0h 13c9", 13, AT_LEAST, 500,
			VERDICT_NEAR, 0 },
		{ "pulled with a count", "0h 7p5", 7, AT_LEAST, 500, VERDICT_OVER, 0 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct rule r = weeks_rule(1, row[i].comparator, row[i].value_x100);
		struct judgement j = judge_at(&r, row[i].visits, bare, row[i].asked);
		expect(row[i].why, &j, row[i].want, row[i].lacking);
	}
}

static void weeks_running_are_joined_by_a_threefold_and(void **state)
{
	static const struct {
		const char *why, *visits;
		int asked, span;
		enum comparator comparator;
		enum verdict want;
		enum lacking lacking;
	} row[] = {
		{ "2, skipped, 2", "0h 7c2 14s 21c2", 21, 2, AT_LEAST, VERDICT_UNKNOWN,
			LACKING_SPLIT },
		{ "2, skipped", "0h 7c2 14s", 14, 2, AT_LEAST, VERDICT_UNKNOWN,
			LACKING_READING },
		{ "2, 2", "0h 7c2 14c2", 14, 2, AT_LEAST, VERDICT_OVER, 0 },
		{ "2, 1", "0h 7c2 14c1", 14, 2, AT_LEAST, VERDICT_UNDER, 0 },
		{ "1, 2", "0h 7c1 14c2", 14, 2, AT_LEAST, VERDICT_UNDER, 0 },
		{ "2, 1, 2", "0h 7c2 14c1 21c2", 21, 2, AT_LEAST, VERDICT_UNDER, 0 },
		{ "more than 2: 2, 2 is under (near)", "0h 7c2 14c2", 14, 2, MORE_THAN,
			VERDICT_NEAR, 0 },
		{ "more than 2: 3, 3", "0h 7c3 14c3", 14, 2, MORE_THAN, VERDICT_OVER,
			0 },
		{ "near needs every week near: 2, 0", "0h 7c2 14c0", 14, 2, MORE_THAN,
			VERDICT_UNDER, 0 },
		{ "2, spoiled, 2", "0h 7c2 14x 21c2", 21, 2, AT_LEAST, VERDICT_UNKNOWN,
			LACKING_READING },
		{ "2, spoiled with 2 on it, 2 in three", "0h 7c2 14x2 21c2", 21, 3,
			AT_LEAST, VERDICT_OVER, 0 },
		{ "1, spoiled, 2 in three", "0h 7c1 14x 21c2", 21, 3, AT_LEAST,
			VERDICT_UNDER, 0 },
		{ "one week hung, two asked for", "0h 7c2", 7, 2, AT_LEAST,
			VERDICT_UNKNOWN, LACKING_WEEKS },
		{ "one week hung and already too few", "0h 7c0", 7, 2, AT_LEAST,
			VERDICT_UNDER, 0 },
		{ "1, then this week skipped", "0h 7c1 14s", 14, 2, AT_LEAST,
			VERDICT_UNDER, 0 },
		{ "1, then two weeks not read", "0h 7c1 21s", 21, 2, AT_LEAST,
			VERDICT_UNKNOWN, LACKING_READING },
		{ "three weeks in one interval", "0h 21c6", 21, 3, AT_LEAST,
			VERDICT_UNKNOWN, LACKING_SPLIT },
		{ "three weeks in one interval, none", "0h 21c0", 21, 3, AT_LEAST,
			VERDICT_UNDER, 0 },
		{ "missing in between", "0h 7c2 14m 21h 28c2", 28, 2, AT_LEAST,
			VERDICT_UNKNOWN, LACKING_WEEKS },
		{ "eight weeks of two", "0h 7c2 14c2 21c2 28c2 35c2 42c2 49c2 56c2", 56,
			8, AT_LEAST, VERDICT_OVER, 0 },
		{ "eight weeks, the first too few",
			"0h 7c1 14c2 21c2 28c2 35c2 42c2 49c2 56c2", 56, 8, AT_LEAST,
			VERDICT_UNDER, 0 },
		{ "a span beyond eight is taken as eight",
			"0h 7c2 14c2 21c2 28c2 35c2 42c2 49c2 56c2", 56, 99, AT_LEAST,
			VERDICT_OVER, 0 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct rule r = weeks_rule(row[i].span, row[i].comparator, 200);
		struct judgement j = judge_at(&r, row[i].visits, bare, row[i].asked);
		expect(row[i].why, &j, row[i].want, row[i].lacking);
	}
}

static void of_the_weeks_wanted_those_over_so_far_are_counted(void **state)
{
	static const struct {
		const char *why, *visits;
		int asked, span, want;
	} row[] = {
		{ "2, 1", "0h 7c2 14c1", 14, 2, 0 },
		{ "1, 2", "0h 7c1 14c2", 14, 2, 1 },
		{ "2, 2", "0h 7c2 14c2", 14, 2, 2 },
		{ "of three 2, 1, 2 the last alone", "0h 7c2 14c1 21c2", 21, 3, 1 },
		{ "a week that may be over is none", "0h 7c2 14s", 14, 2, 0 },
		{ "nor is one before it", "0h 7c2 14x 21c2", 21, 3, 1 },
		{ "one week hung", "0h 7c2", 7, 2, 1 },
		{ "a single week under", "0h 7c1", 7, 1, 0 },
	};

	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct rule r = weeks_rule(row[i].span, AT_LEAST, 200);
		struct judgement j = judge_at(&r, row[i].visits, bare, row[i].asked);
		if (j.weeks_over != row[i].want)
			fail_msg("%s: %d", row[i].why, (int)j.weeks_over);
	}
}

static void a_rule_that_may_not_hold_is_unknown_with_its_evidence(void **state)
{
	struct rule r = weeks_rule(1, AT_LEAST, 500);
	struct log log;
	struct moment m = bare;
	(void)state;
	log_read(&log, "0h 7c9");
	struct subject s = { .diary = &log.diary };
	m.day = log_day(7);
	struct judgement j = judge_trap(&r, FIT_MAYBE, &s, &m, &limits_usual);
	expect("may fit", &j, VERDICT_UNKNOWN, LACKING_BIOFIX);
	assert_int_equal(j.moths, 9);
	j = judge_trap(&r, FIT_NO, &s, &m, &limits_usual);
	expect("does not fit", &j, VERDICT_NONE, LACKING_NOTHING);
	r.measure = MEASURE_NONE;
	j = judge_trap(&r, FIT_YES, &s, &m, &limits_usual);
	expect("times the work", &j, VERDICT_NONE, LACKING_NOTHING);
	log_free(&log);
}

static void a_judgement_carries_its_evidence(void **state)
{
	struct rule r = weeks_rule(2, AT_LEAST, 500);
	struct judgement j = judge_at(&r, "0h 7c3 14c8", bare, 15);
	(void)state;
	assert_int_equal(j.from, log_day(0));
	assert_int_equal(j.to, log_day(14));
	assert_int_equal(j.nights, 7);
	assert_int_equal(j.moths, 8);
	assert_int_equal(ratio_x10(j.value.lo), 80);
	assert_int_equal(j.read, 1);
	assert_int_equal(j.traps, 1);
	j = judge_at(&r, "0h 7c3 14s", bare, 15);
	assert_int_equal(j.read, 0);
	r = weeks_rule(1, AT_LEAST, 500);
	j = judge_at(&r, "0h 7c3 22s", bare, 22);
	assert_int_equal(j.unread, UNREAD_SKIPPED);
	assert_int_equal(j.unread_nights, 15);
}

static void an_under_with_an_old_lure_or_a_loaded_card_is_questionable(void **state)
{
	static const struct {
		const char *why;
		int count, overdue;
		enum card_mark mark;
		enum service_state card;
		bool questionable;
		unsigned doubts;
	} row[] = {
		{ "fresh lure, clean card", 1, 0, CARD_CLEAN, SERVICE_FINE, false, 0 },
		{ "lure a day overdue", 1, 1, CARD_CLEAN, SERVICE_FINE, true,
			DOUBT_LURE },
		{ "near, lure overdue", 4, 9, CARD_CLEAN, SERVICE_FINE, true,
			DOUBT_LURE },
		{ "over stays over", 5, 9, CARD_CLEAN, SERVICE_FINE, false,
			DOUBT_LURE },
		{ "card to be stirred", 1, 0, CARD_STIR, SERVICE_FINE, false, 0 },
		{ "card to be changed", 1, 0, CARD_CHANGE, SERVICE_OVERDUE, true,
			DOUBT_CARD },
		{ "card old", 1, 0, CARD_CLEAN, SERVICE_OVERDUE, false,
			DOUBT_CARD_AGE },
	};
	struct rule r = weeks_rule(1, AT_LEAST, 500);
	struct moment m = bare;
	(void)state;
	m.day = log_day(7);
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct log log;
		struct lure_state lure = { .overdue_days = row[i].overdue };
		struct card_state card = { .mark = row[i].mark, .state = row[i].card };
		log_read(&log, "0h 7c1");
		log.visits[1].count = row[i].count;
		diary_read(&log.diary, log.visits, log.n);
		struct subject s = { &log.diary, &lure, &card };
		struct judgement j = judge_trap(&r, FIT_YES, &s, &m, &limits_usual);
		log_free(&log);
		if (j.questionable != row[i].questionable || j.doubts != row[i].doubts)
			fail_msg("%s: doubts %#x", row[i].why, j.doubts);
	}
}

static void a_long_interval_is_a_doubt(void **state)
{
	struct rule r = weeks_rule(1, AT_LEAST, 500);
	struct judgement j = judge_at(&r, "0h 10c1", bare, 10);
	(void)state;
	assert_int_equal(j.doubts, 0);
	j = judge_at(&r, "0h 11c1", bare, 11);
	assert_int_equal(j.doubts, DOUBT_LONG);
	assert_int_equal(j.long_nights, 11);
}

static void verdict_worse_prefers_over_then_unknown(void **state)
{
	(void)state;
	assert_int_equal(verdict_worse(VERDICT_OVER, VERDICT_UNKNOWN), VERDICT_OVER);
	assert_int_equal(verdict_worse(VERDICT_NEAR, VERDICT_UNKNOWN), VERDICT_UNKNOWN);
	assert_int_equal(verdict_worse(VERDICT_UNDER, VERDICT_NEAR), VERDICT_NEAR);
	assert_int_equal(verdict_worse(VERDICT_NONE, VERDICT_UNDER), VERDICT_UNDER);
}

static void a_count_far_above_the_earlier_ones_is_odd(void **state)
{
	static const struct {
		const char *why;
		int32_t count, earlier[4];
		size_t n;
		bool want;
	} row[] = {
		{ "26 after 5 at most", 26, { 1, 5, 2, 0 }, 4, true },
		{ "25 is five times 5", 25, { 1, 5, 2, 0 }, 4, false },
		{ "19 is below 20", 19, { 0, 0, 0, 0 }, 4, false },
		{ "20 after nothing", 20, { 0, 0, 0, 0 }, 4, true },
		{ "no earlier count", 999, { 0 }, 0, false },
		{ "none of them read", 999, { COUNT_NONE, COUNT_NONE }, 2, false },
		{ "some of them read", 21, { COUNT_NONE, 4 }, 2, true },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		if (judge_odd_count(row[i].count, row[i].earlier, row[i].n,
			    &limits_usual) != row[i].want)
			fail_msg("%s", row[i].why);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_single_week_is_judged_by_its_bounds),
		cmocka_unit_test(weeks_running_are_joined_by_a_threefold_and),
		cmocka_unit_test(of_the_weeks_wanted_those_over_so_far_are_counted),
		cmocka_unit_test(a_rule_that_may_not_hold_is_unknown_with_its_evidence),
		cmocka_unit_test(a_judgement_carries_its_evidence),
		cmocka_unit_test(
			an_under_with_an_old_lure_or_a_loaded_card_is_questionable),
		cmocka_unit_test(a_long_interval_is_a_doubt),
		cmocka_unit_test(verdict_worse_prefers_over_then_unknown),
		cmocka_unit_test(a_count_far_above_the_earlier_ones_is_odd),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
