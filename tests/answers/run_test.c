#include "fixture.h"

#include "answers/run.h"

#include <stdlib.h>

/* Four runs of one trap: 2, 4, skipped, 6; then the run of 2 June. */
static int64_t four_weeks(struct fixture *f)
{
	int64_t t = fixture_trap(f, "1", "2026-04-28");

	fixture_count(f, t, "2026-05-05", 2);
	fixture_count(f, t, "2026-05-12", 4);
	fixture_skip(f, t, "2026-05-19");
	fixture_count(f, t, "2026-05-26", 6);
	return t;
}

static void last_four_show_a_skipped_week_as_not_read(void **state)
{
	struct fixture f;
	struct run run = { 0 };

	(void)state;
	fixture_open(&f);
	four_weeks(&f);
	fixture_read(&f, "2026-06-02");
	run_of(&f.log, f.farm.id, f.log.today, &run);
	assert_int_equal(run.n, 1);
	assert_int_equal(run.traps[0].card_full_at, f.card.floor_at);
	assert_true(run.traps[0].open);
	assert_string_equal(run.traps[0].last[0], "2");
	assert_string_equal(run.traps[0].last[1], "4");
	assert_string_equal(run.traps[0].last[2], "-");
	assert_string_equal(run.traps[0].last[3], "3"); /* 6 in 14 nights */
	assert_string_equal(run.last_text, "last run Tue 26 May, 7 nights");
	run_free(&run);
	fixture_close(&f);
}

static void a_trap_is_open_until_it_is_visited_on_the_run_or_two_days_before(
	void **state)
{
	static const struct {
		const char *why, *visited;
		bool open;
	} row[] = {
		{ "on the day itself", "2026-06-02", false },
		{ "the day before", "2026-06-01", false },
		{ "two days before, last good", "2026-05-31", false },
		{ "three days before, first bad", "2026-05-30", true },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct run run = { 0 };

		fixture_open(&f);
		int64_t t = fixture_trap(&f, "1", "2026-05-01");
		fixture_count(&f, t, row[i].visited, 3);
		fixture_read(&f, "2026-06-02");
		run_of(&f.log, f.farm.id, f.log.today, &run);
		if (run.traps[0].open != row[i].open)
			fail_msg("%s: open is %d", row[i].why, run.traps[0].open);
		run_free(&run);
		fixture_close(&f);
	}
}

static void a_trap_skipped_yesterday_is_open_again_today(void **state)
{
	static const struct {
		const char *why, *skipped;
		bool open;
	} row[] = {
		{ "skipped today: done", "2026-06-02", false },
		{ "skipped yesterday: nobody has looked yet", "2026-06-01", true },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct run run = { 0 };
		fixture_open(&f);
		fixture_skip(&f, fixture_trap(&f, "1", "2026-05-26"), row[i].skipped);
		fixture_read(&f, "2026-06-02");
		run_of(&f.log, f.farm.id, f.log.today, &run);
		if (run.traps[0].open != row[i].open)
			fail_msg("%s: open is %d", row[i].why, run.traps[0].open);
		run_free(&run);
		fixture_close(&f);
	}
}

static void a_count_alone_brings_no_lure(void **state)
{
	static const struct {
		const char *why;
		bool changed;
		int left;
	} row[] = {
		{ "counted, the old lure hangs on", false, 1 },
		{ "counted and changed", true, 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct run r = { 0 };

		fixture_open(&f);
		int64_t trap = fixture_trap(&f, "1", "2026-05-26");
		struct visit v = fixture_counted(trap, "2026-12-01", 4);
		v.new_lure = row[i].changed ? f.lure.id : 0;
		fixture_save(&f, v);
		fixture_read(&f, "2026-12-01");
		run_of(&f.log, f.farm.id, f.log.today, &r);
		if (r.lures_left != row[i].left)
			fail_msg("%s: %d left", row[i].why, r.lures_left);
		run_free(&r);
		fixture_close(&f);
	}
}

static void a_lure_changed_between_runs_is_no_visit_of_the_run(void **state)
{
	struct fixture f;
	struct run r = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t trap = fixture_trap(&f, "1", "2026-05-26");
	fixture_count(&f, trap, "2026-06-02", 6);
	fixture_count(&f, trap, "2026-06-08", 4);
	struct visit v = fixture_counted(trap, "2026-06-09", COUNT_NONE);
	v.outcome = OUTCOME_SKIPPED;
	v.new_lure = f.lure.id;
	fixture_save(&f, v);
	fixture_read(&f, "2026-06-10"); /* counted two days ago: done */
	run_of(&f.log, f.farm.id, f.log.today, &r);
	assert_false(r.traps[0].open);
	assert_int_equal(r.traps[0].visit.count, 4);
	assert_string_equal(r.traps[0].verdict_text, "no threshold");
	fixture_read(&f, "2026-06-11"); /* three days ago: open, nothing was skipped */
	run_of(&f.log, f.farm.id, f.log.today, &r);
	assert_true(r.traps[0].open);
	assert_string_equal(r.traps[0].last[RUN_LAST - 1], "5"); /* 4 in 6 nights */
	fixture_read(&f, "2026-06-09"); /* on its own day it goes into what is typed */
	run_of(&f.log, f.farm.id, f.log.today, &r);
	assert_int_equal(r.traps[0].visit.count, 4);
	assert_true(r.traps[0].is_serviced);
	assert_int_equal(r.traps[0].serviced.new_lure, f.lure.id);
	run_free(&r);
	fixture_close(&f);
}

/* A week after the last count: the run of that day still has to read it. */
static void a_lure_changed_today_leaves_the_count_open(void **state)
{
	struct fixture f;
	struct run r = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500));
	int64_t trap = fixture_trap(&f, "1", "2026-05-26");
	fixture_count(&f, trap, "2026-06-02", 6);
	struct visit v = fixture_counted(trap, "2026-06-09", COUNT_NONE);
	v.outcome = OUTCOME_SKIPPED;
	v.new_lure = f.lure.id;
	fixture_save(&f, v);
	fixture_read(&f, "2026-06-09");
	assert_int_equal(log_open_traps(&f.log, f.farm.id), 1);
	run_of(&f.log, f.farm.id, f.log.today, &r);
	assert_true(r.traps[0].open);
	assert_int_equal(r.done, 0);
	assert_string_equal(r.traps[0].week_text, "");
	assert_string_equal(r.traps[0].verdict_text, "");
	v.reason = REASON_WEATHER; /* skipped, which is done */
	fixture_save(&f, v);
	fixture_read(&f, "2026-06-09");
	run_of(&f.log, f.farm.id, f.log.today, &r);
	assert_false(r.traps[0].open);
	assert_false(r.traps[0].is_serviced);
	run_free(&r);
	fixture_close(&f);
}

static void a_run_is_judged_as_it_is_entered(void **state)
{
	struct fixture f;
	struct run run = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t t = four_weeks(&f);
	fixture_trap(&f, "2", "2026-05-26");
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500));
	fixture_count(&f, t, "2026-06-02", 14);
	fixture_read(&f, "2026-06-02");
	run_of(&f.log, f.farm.id, f.log.today, &run);
	assert_int_equal(run.done, 1);
	assert_int_equal(run.over, 1);
	assert_string_equal(run.traps[0].week_text, "14.0");
	assert_string_equal(run.traps[0].week_says, "14.0 a week");
	assert_string_equal(run.traps[0].rule_text, ">=5");
	assert_string_equal(run.traps[0].verdict_text, "OVER");
	assert_true(run.traps[1].open);
	run_free(&run);
	fixture_close(&f);
}

static void nights_stand_beside_a_catch_that_is_not_of_a_week(void **state)
{
	struct fixture f;
	struct run run = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t t = fixture_trap(&f, "1", "2026-05-01");
	fixture_count(&f, t, "2026-05-11", 12);
	fixture_read(&f, "2026-05-11");
	run_of(&f.log, f.farm.id, f.log.today, &run);
	assert_string_equal(run.traps[0].week_text, "8.4 10n");
	assert_string_equal(run.traps[0].week_says, "8.4 a week over 10 nights");
	run_free(&run);
	fixture_close(&f);
}

static void a_catch_under_one_a_week_never_shows_as_none(void **state)
{
	struct fixture f;
	struct run run = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t t = fixture_trap(&f, "1", "2026-05-01");
	fixture_count(&f, t, "2026-05-15", 1); /* 0.5 a week */
	fixture_count(&f, t, "2026-05-22", 0);
	fixture_read(&f, "2026-05-29");
	run_of(&f.log, f.farm.id, f.log.today, &run);
	assert_string_equal(run.traps[0].last[2], "<1");
	assert_string_equal(run.traps[0].last[3], "0");
	run_free(&run);
	fixture_close(&f);
}

static void a_pulled_trap_is_driven_to_no_more(void **state)
{
	struct fixture f;
	struct run run = { 0 };
	struct visit v;

	(void)state;
	fixture_open(&f);
	int64_t t = fixture_trap(&f, "1", "2026-05-01");
	v = fixture_counted(t, "2026-05-08", COUNT_NONE);
	v.outcome = OUTCOME_PULLED;
	fixture_save(&f, v);
	fixture_read(&f, "2026-05-10");
	run_of(&f.log, f.farm.id, f.log.today, &run);
	assert_int_equal(run.n, 1);
	fixture_read(&f, "2026-05-11");
	run_of(&f.log, f.farm.id, f.log.today, &run);
	assert_int_equal(run.n, 0);
	run_free(&run);
	fixture_close(&f);
}

static void a_missing_trap_stays_on_the_run_and_says_so(void **state)
{
	struct fixture f;
	struct run run = { 0 };
	struct visit v;

	(void)state;
	fixture_open(&f);
	int64_t t = fixture_trap(&f, "1", "2026-05-01");
	v = fixture_counted(t, "2026-05-08", COUNT_NONE);
	v.outcome = OUTCOME_MISSING;
	fixture_save(&f, v);
	fixture_read(&f, "2026-05-15");
	run_of(&f.log, f.farm.id, f.log.today, &run);
	assert_int_equal(run.n, 1);
	assert_false(run.traps[0].hangs);
	assert_string_equal(run.traps[0].service, "missing");
	run_free(&run);
	fixture_close(&f);
}

static void a_past_run_sees_nothing_of_what_came_after_it(void **state)
{
	struct fixture f;
	struct run run = { 0 };

	(void)state;
	fixture_open(&f);
	four_weeks(&f);
	fixture_read(&f, "2026-05-19");
	run_of(&f.log, f.farm.id, f.log.today, &run);
	assert_int_equal(run.n, 1);
	assert_false(run.traps[0].open);
	assert_string_equal(run.traps[0].visit_text, "-");
	assert_string_equal(run.traps[0].last[3], "4");
	run_free(&run);
	fixture_close(&f);
}

static void an_odd_count_is_20_or_more_and_over_5_times_the_highest_of_four(
	void **state)
{
	static const struct {
		const char *why;
		int32_t high, count;
		bool odd;
	} row[] = {
		{ "20 over 5 times 3", 3, 20, true },
		{ "19 is too few to ask", 3, 19, false },
		{ "exactly 5 times is not over", 4, 20, false },
		{ "one more is", 4, 21, true },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run_trap t = { .last_count = { row[i].high, 1 },
			.n_last_count = 2 };
		if (run_is_odd(&t, row[i].count, &limits_usual) != row[i].odd)
			fail_msg("%s", row[i].why);
	}
}

static void a_threshold_of_the_block_alone_still_answers_on_the_run(void **state)
{
	struct fixture f;
	struct run run = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t t = fixture_trap(&f, "1", "2026-05-01");
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_BLOCK_WEEK, 1, 500));
	fixture_count(&f, t, "2026-05-08", 5);
	fixture_read(&f, "2026-05-08");
	run_of(&f.log, f.farm.id, f.log.today, &run);
	assert_string_equal(run.traps[0].verdict_text, "OVER");
	assert_string_equal(run.traps[0].week_text, "5.0");
	run_free(&run);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(last_four_show_a_skipped_week_as_not_read),
		cmocka_unit_test(
			a_trap_is_open_until_it_is_visited_on_the_run_or_two_days_before),
		cmocka_unit_test(a_trap_skipped_yesterday_is_open_again_today),
		cmocka_unit_test(a_count_alone_brings_no_lure),
		cmocka_unit_test(a_lure_changed_between_runs_is_no_visit_of_the_run),
		cmocka_unit_test(a_lure_changed_today_leaves_the_count_open),
		cmocka_unit_test(a_run_is_judged_as_it_is_entered),
		cmocka_unit_test(nights_stand_beside_a_catch_that_is_not_of_a_week),
		cmocka_unit_test(a_catch_under_one_a_week_never_shows_as_none),
		cmocka_unit_test(a_pulled_trap_is_driven_to_no_more),
		cmocka_unit_test(a_missing_trap_stays_on_the_run_and_says_so),
		cmocka_unit_test(a_past_run_sees_nothing_of_what_came_after_it),
		cmocka_unit_test(
			an_odd_count_is_20_or_more_and_over_5_times_the_highest_of_four),
		cmocka_unit_test(
			a_threshold_of_the_block_alone_still_answers_on_the_run),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
