#include "fixture.h"

#include "book/acts.h"

#include "answers/due.h"
#include "answers/sheet.h"

#include <stdlib.h>

static void a_run_is_due_a_week_after_the_last_one(void **state)
{
	static const struct {
		const char *why, *today;
		bool due;
		int open;
	} row[] = {
		{ "six days after: not yet", "2026-05-14", false, 2 },
		{ "seven days after: due", "2026-05-15", true, 2 },
		{ "a day late: still due", "2026-05-16", true, 2 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct today t = { 0 };
		fixture_open(&f);
		fixture_count(&f, fixture_trap(&f, "1", "2026-05-01"), "2026-05-08", 1);
		fixture_count(&f, fixture_trap(&f, "2", "2026-05-01"), "2026-05-08", 1);
		fixture_read(&f, row[i].today);
		today_of(&f.log, &t);
		if (t.runs[0].due != row[i].due || t.runs[0].open != row[i].open)
			fail_msg("%s: due %d, open %d", row[i].why, t.runs[0].due,
				t.runs[0].open);
		today_free(&t);
		fixture_close(&f);
	}
}

static void a_run_left_half_way_stays_due_and_says_what_is_left(void **state)
{
	struct fixture f;
	struct today t = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t one = fixture_trap(&f, "1", "2026-05-01");
	int64_t two = fixture_trap(&f, "2", "2026-05-01");
	fixture_count(&f, one, "2026-05-08", 1);
	fixture_count(&f, two, "2026-05-08", 1);
	fixture_count(&f, one, "2026-05-15", 1);
	fixture_read(&f, "2026-05-16");
	today_of(&f.log, &t);
	assert_true(t.runs[0].due);
	assert_string_equal(t.runs[0].traps_text, "1 of 2 left");
	fixture_count(&f, two, "2026-05-16", 1);
	fixture_read(&f, "2026-05-16");
	today_of(&f.log, &t);
	assert_false(t.runs[0].due);
	assert_int_equal(t.runs[0].open, 0);
	today_free(&t);
	fixture_close(&f);
}

static void a_farm_with_its_own_weekday_is_run_on_it(void **state)
{
	static const struct {
		const char *why, *last, *next;
	} row[] = {
		{ "a Tuesday after a Tuesday", "2026-05-05", "2026-05-12" },
		{ "after a run one day late", "2026-05-06", "2026-05-12" },
		{ "a run four days early counts for the week", "2026-05-08",
			"2026-05-12" },
		{ "three days are too few: the week after", "2026-05-09",
			"2026-05-19" },
	};
	const struct farm f = { .run_weekday = 2 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char got[DAY_ISO_SIZE];
		day_iso(log_run_after(&f, day_of(row[i].last)), got);
		if (strcmp(got, row[i].next) != 0)
			fail_msg("%s: %s", row[i].why, got);
	}
}

static void over_comes_first_then_unknown_and_the_rest_is_counted(void **state)
{
	struct fixture f;
	struct today t = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500));
	fixture_count(&f, fixture_trap(&f, "1", "2026-05-01"), "2026-05-08", 1);
	int64_t stale = fixture_trap(&f, "2", "2026-04-20");
	fixture_count(&f, stale, "2026-04-27", 9);
	fixture_count(&f, fixture_trap(&f, "3", "2026-05-01"), "2026-05-08", 5);
	fixture_count(&f, fixture_trap(&f, "4", "2026-05-01"), "2026-05-08", 4);
	fixture_read(&f, "2026-05-08");
	today_of(&f.log, &t);
	assert_int_equal(t.n_lines, 2);
	assert_int_equal(t.n_over, 1);
	assert_string_equal(t.lines[0].where, "trap 3");
	assert_string_equal(t.lines[0].says, "5.0 a week, threshold >=5");
	assert_string_equal(t.lines[1].where, "trap 2");
	assert_string_equal(t.lines[1].says, "not read for 11 nights");
	assert_int_equal(t.n_under, 1);
	assert_int_equal(t.n_near, 1);
	assert_false(t.no_rules);
	today_free(&t);
	fixture_close(&f);
}

static void what_is_doubtful_is_counted_apart(void **state)
{
	struct fixture f;
	struct today t = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500));
	int64_t old = fixture_trap(&f, "1", "2026-05-01");
	fixture_count(&f, old, "2026-05-22", 0);
	fixture_count(&f, old, "2026-05-29", 1);
	fixture_count(&f, fixture_trap(&f, "2", "2026-05-22"), "2026-05-29", 1);
	fixture_read(&f, "2026-05-29");
	today_of(&f.log, &t);
	assert_int_equal(t.n_under, 1);
	assert_int_equal(t.n_near, 0);
	assert_string_equal(t.doubted_text, ", 1 under?");
	assert_string_equal(t.no_threshold, "");
	today_free(&t);
	fixture_close(&f);
}

/* The threshold is for another crop: of these traps nothing else on the page tells. */
static void traps_that_catch_without_a_threshold_are_named(void **state)
{
	struct fixture f;
	struct today t = { 0 };

	(void)state;
	fixture_open(&f);
	struct rule r = fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500);
	text_copy(r.crop, sizeof r.crop, "pear");
	fixture_put_rule(&f, r);
	fixture_count(&f, fixture_trap(&f, "1", "2026-05-01"), "2026-05-08", 4);
	fixture_count(&f, fixture_trap(&f, "2", "2026-05-01"), "2026-05-08", 0);
	fixture_read(&f, "2026-05-08");
	today_of(&f.log, &t);
	assert_string_equal(t.no_threshold,
		"no threshold for 1 trap that catches: Upper Russet CM (1)");
	fixture_count(&f, fixture_trap(&f, "3", "2026-05-01"), "2026-05-08", 9);
	fixture_read(&f, "2026-05-08");
	today_of(&f.log, &t);
	assert_string_equal(t.no_threshold,
		"no threshold for 2 traps that catch: Upper Russet CM (2)");
	today_free(&t);
	fixture_close(&f);
}

static void a_book_without_thresholds_says_so(void **state)
{
	struct fixture f;
	struct today t = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_read(&f, "2026-05-08");
	today_of(&f.log, &t);
	assert_true(t.no_rules);
	assert_int_equal(t.n_runs, 1);
	assert_string_equal(t.runs[0].last_text, "not run yet");
	today_free(&t);
	fixture_close(&f);
}

static void a_farm_that_is_not_due_says_when_it_is(void **state)
{
	static const struct {
		const char *today, *says;
	} row[] = {
		{ "2026-05-08", "next run Fri 15 May" },
		{ "2026-05-14", "next run Fri 15 May" },
		{ "2026-05-15", "last run Fri 8 May, 7 days" },
	};
	struct fixture f;
	struct today t = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_count(&f, fixture_trap(&f, "1", "2026-05-01"), "2026-05-08", 1);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		fixture_read(&f, row[i].today);
		today_of(&f.log, &t);
		assert_string_equal(t.runs[0].last_text, row[i].says);
	}
	today_free(&t);
	fixture_close(&f);
}

/* 21-day lures hung 1 May are due 22 May; the run of 15 May is followed by one on the
 * 22nd, so they would last that week; on the 22nd they are brought. */
static void a_lure_is_brought_on_the_last_run_that_it_still_lasts(void **state)
{
	static const struct {
		const char *why, *last, *today;
		size_t brings;
	} row[] = {
		{ "still good until the run after", "2026-05-08", "2026-05-15", 0 },
		{ "due on the run's day", "2026-05-15", "2026-05-22", 1 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct due d = { 0 };
		fixture_open(&f);
		int64_t t = fixture_trap(&f, "1", "2026-05-01");
		fixture_count(&f, t, row[i].last, 1);
		fixture_read(&f, row[i].today);
		due_of(&f.log, 0, &d);
		if (d.n_brings != row[i].brings)
			fail_msg("%s: %zu", row[i].why, d.n_brings);
		due_free(&d);
		fixture_close(&f);
	}
}

/* What Today, the list and the sheet say of what the run is to bring. */
static void expect_bring(struct fixture *f, const char *bring, const char *unknown)
{
	struct today t = { 0 };
	struct due d = { 0 };
	struct sheet s = { 0 };
	struct err e = { 0 };
	char text[SAY_LINE];

	fixture_read(f, "2026-06-02");
	today_of(&f->log, &t);
	snprintf(text, sizeof text, "bring %s", bring);
	assert_string_equal(t.runs[0].bring, text);
	assert_string_equal(t.runs[0].unknown_text, unknown);
	due_of(&f->log, f->farm.id, &d);
	assert_string_equal(d.today.runs[0].unknown_text, unknown);
	assert_string_equal(d.unknown_text, unknown);
	assert_int_equal(d.has_unknown, *unknown != '\0');
	due_free(&d);
	must(sheet_of(&f->log, f->book, f->farm.id, &s, &e), &e);
	snprintf(text, sizeof text, "%s%s", bring, unknown);
	assert_string_equal(s.bring, text);
	sheet_free(&s);
	today_free(&t);
}

/* A lure that nobody noted may be due any day: that nothing is to be brought is not
 * known. */
static void a_lure_that_is_not_known_is_not_read_as_fine(void **state)
{
	struct fixture f;

	(void)state;
	fixture_open(&f);
	struct visit hung =
		fixture_counted(fixture_trap(&f, "1", NULL), "2026-06-01", COUNT_NONE);
	hung.outcome = OUTCOME_HUNG;
	fixture_save(&f, hung);
	expect_bring(&f, "nothing known", "; 1 lure not known");
	log_free(&f.log);
	hung.new_lure = f.lure.id;
	fixture_save(&f, hung);
	expect_bring(&f, "nothing", "");
	fixture_close(&f);
}

static void what_is_due_names_trap_kind_and_day(void **state)
{
	struct fixture f;
	struct due d = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t t = fixture_trap(&f, "1", "2026-05-01");
	fixture_count(&f, t, "2026-06-05", 31);
	fixture_read(&f, "2026-06-05");
	due_of(&f.log, f.farm.id, &d);
	assert_int_equal(d.n, 2);
	assert_true(d.items[0].is_lure);
	assert_int_equal(d.items[0].due, day_of("2026-05-22"));
	assert_string_equal(d.items[0].state_text, "14 d overdue");
	assert_string_equal(d.items[0].state_word, "overdue");
	assert_false(d.items[1].is_lure);
	assert_string_equal(d.items[1].state_text, "31 moths on it");
	due_free(&d);
	fixture_close(&f);
}

static void a_lure_forgotten_in_the_run_is_still_on_the_bring_list(void **state)
{
	struct fixture f;
	struct due d = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t one = fixture_trap(&f, "1", "2026-05-01"); /* due 22 May */
	fixture_trap(&f, "2", "2026-05-15");
	fixture_count(&f, one, "2026-05-22", 1);
	fixture_read(&f, "2026-05-22");
	due_of(&f.log, 0, &d);
	assert_int_equal(d.n_brings, 1);
	assert_true(d.brings[0].is_lure);
	due_free(&d);
	fixture_close(&f);
}

static void a_day_of_nothing_but_skips_is_no_run(void **state)
{
	struct fixture f;
	struct today t = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t one = fixture_trap(&f, "1", "2026-05-01");
	fixture_count(&f, one, "2026-05-08", 1);
	fixture_skip(&f, one, "2026-05-15");
	fixture_read(&f, "2026-05-18");
	today_of(&f.log, &t);
	assert_string_equal(t.runs[0].last_text, "last run Fri 8 May, 10 days");
	assert_true(t.runs[0].due);
	today_free(&t);
	fixture_close(&f);
}

static void what_lasts_past_the_next_run_but_not_the_one_after_is_changed_there(
	void **state)
{
	static const struct {
		const char *why, *today, *want;
	} row[] = {
		{ "due on the next run's day", "2026-05-16", "by next run" },
		{ "due after it", "2026-05-15", "change on next run" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct due d = { 0 };
		fixture_open(&f);
		int64_t t = fixture_trap(&f, "1", "2026-05-01"); /* due 22 May */
		fixture_count(&f, t, i == 0 ? "2026-05-15" : "2026-05-13", 1);
		fixture_read(&f, row[i].today);
		due_of(&f.log, 0, &d);
		if (d.n != 1 || strcmp(d.items[0].state_text, row[i].want) != 0)
			fail_msg("%s: %zu items, \"%s\"", row[i].why, d.n,
				d.n ? d.items[0].state_text : "");
		due_free(&d);
		fixture_close(&f);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			what_lasts_past_the_next_run_but_not_the_one_after_is_changed_there),
		cmocka_unit_test(a_day_of_nothing_but_skips_is_no_run),
		cmocka_unit_test(
			a_lure_forgotten_in_the_run_is_still_on_the_bring_list),
		cmocka_unit_test(a_run_is_due_a_week_after_the_last_one),
		cmocka_unit_test(a_run_left_half_way_stays_due_and_says_what_is_left),
		cmocka_unit_test(a_farm_with_its_own_weekday_is_run_on_it),
		cmocka_unit_test(over_comes_first_then_unknown_and_the_rest_is_counted),
		cmocka_unit_test(what_is_doubtful_is_counted_apart),
		cmocka_unit_test(traps_that_catch_without_a_threshold_are_named),
		cmocka_unit_test(a_book_without_thresholds_says_so),
		cmocka_unit_test(a_farm_that_is_not_due_says_when_it_is),
		cmocka_unit_test(a_lure_is_brought_on_the_last_run_that_it_still_lasts),
		cmocka_unit_test(a_lure_that_is_not_known_is_not_read_as_fine),
		cmocka_unit_test(what_is_due_names_trap_kind_and_day),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
