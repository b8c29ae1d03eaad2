#include "fixture.h"

#include "answers/sheet.h"
#include "answers/why.h"

#include <stdlib.h>

/* Two weeks of two traps, the second hot, one more that nobody visited. */
static void two_weeks(struct fixture *f)
{
	fixture_put_rule(f, fixture_rule(f, MEASURE_TRAP_WEEK, 1, 500));
	int64_t one = fixture_trap(f, "1", "2026-05-01");
	int64_t two = fixture_trap(f, "2", "2026-05-01");
	fixture_trap(f, "3", "2026-05-01");
	fixture_count(f, one, "2026-05-08", 0);
	fixture_count(f, two, "2026-05-08", 3);
	fixture_count(f, one, "2026-05-15", 1);
	fixture_count(f, two, "2026-05-15", 17);
}

static void the_tree_has_farm_block_and_traps_with_their_answers(void **state)
{
	struct fixture f;
	struct week w = { 0 };

	(void)state;
	fixture_open(&f);
	two_weeks(&f);
	fixture_read(&f, "2026-05-15");
	week_of(&f.log, 0, 0, &w);
	assert_int_equal(w.n, 5);
	assert_int_equal(w.rows[0].level, WEEK_FARM);
	assert_int_equal(w.rows[0].verdict, VERDICT_OVER);
	assert_int_equal(w.rows[1].level, WEEK_BLOCK);
	assert_string_equal(w.rows[1].catch_text, "9.0");
	assert_string_equal(w.rows[1].highest_text, "17.0");
	assert_string_equal(w.rows[1].nights_text, "2 of 3");
	assert_string_equal(w.rows[1].verdict_text, "OVER");
	assert_string_equal(w.rows[2].verdict_text, "under");
	assert_string_equal(w.rows[3].verdict_text, "OVER");
	assert_string_equal(w.rows[4].verdict_text, "unknown");
	assert_string_equal(w.rows[4].says, "hung 14 nights ago, not read yet");
	assert_int_equal(w.n_over, 1);
	assert_int_equal(w.n_unknown, 1);
	assert_int_equal(w.n_under, 1);
	week_free(&w);
	fixture_close(&f);
}

/* The 21-day lure of trap 1 was a week overdue; trap 2 caught more and got a new. */
static void a_block_and_its_farm_are_no_surer_than_their_traps(void **state)
{
	struct fixture f;
	struct week w = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500));
	int64_t one = fixture_trap(&f, "1", "2026-05-01");
	int64_t two = fixture_trap(&f, "2", "2026-05-22");
	fixture_count(&f, one, "2026-05-22", 0);
	fixture_count(&f, one, "2026-05-29", 1);
	fixture_count(&f, two, "2026-05-29", 2);
	fixture_read(&f, "2026-05-29");
	week_of(&f.log, 0, 0, &w);
	assert_int_equal(w.n, 4);
	assert_string_equal(w.rows[2].verdict_text, "under?");
	assert_string_equal(w.rows[3].verdict_text, "under");
	assert_string_equal(w.rows[1].verdict_text, "under?");
	assert_int_equal(w.rows[1].tone, TONE_UNSURE);
	assert_string_equal(w.rows[1].says, "trap 1: lure was 7 d overdue");
	assert_string_equal(w.rows[0].verdict_text, "under?");
	assert_int_equal(w.n_under, 1);
	assert_int_equal(w.n_doubted, 1);
	assert_string_equal(w.doubted_text, ", 1 under?");
	fixture_count(&f, two, "2026-05-29", 4); /* near, and that is no surer */
	fixture_read(&f, "2026-05-29");
	week_of(&f.log, 0, 0, &w);
	assert_string_equal(w.rows[3].verdict_text, "near");
	assert_string_equal(w.rows[1].verdict_text, "near?");
	assert_string_equal(w.rows[0].verdict_text, "near?");
	week_free(&w);
	fixture_close(&f);
}

static void flight_lines_tell_a_zero_from_a_week_not_read(void **state)
{
	struct fixture f;
	struct week w = { 0 };

	(void)state;
	fixture_open(&f);
	two_weeks(&f);
	fixture_read(&f, "2026-05-15");
	week_of(&f.log, 0, 0, &w);
	assert_int_equal(w.n_weeks, 3);
	assert_int_equal(w.rows[2].line[1].kind, MARK_ZERO);
	assert_int_equal(w.rows[3].line[2].kind, MARK_CATCH);
	assert_int_equal(w.rows[3].line[2].x10, 170);
	assert_int_equal(w.rows[4].line[2].kind, MARK_NOT_READ);
	assert_int_equal(w.rows[1].line[2].x10, 90);
	week_free(&w);
	fixture_close(&f);
}

static void a_trap_with_a_threshold_of_its_block_only_is_said_to_be_judged_with_it(
	void **state)
{
	struct fixture f;
	struct week w = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_BLOCK_WEEK, 1, 500));
	fixture_count(&f, fixture_trap(&f, "1", "2026-05-01"), "2026-05-08", 1);
	fixture_read(&f, "2026-05-08");
	week_of(&f.log, 0, 0, &w);
	assert_string_equal(w.rows[2].says, "judged with its block");
	assert_int_equal(w.n_none, 0);
	week_free(&w);
	fixture_close(&f);
}

static bool says(const struct why *w, const char *part)
{
	for (size_t i = 0; i < w->n; i++)
		if (strstr(w->lines[i].text, part))
			return true;
	return false;
}

static void why_names_visits_nights_threshold_source_and_cautions(void **state)
{
	struct fixture f;
	struct why w = { 0 };

	(void)state;
	fixture_open(&f);
	two_weeks(&f);
	fixture_read(&f, "2026-05-15");
	why_of(&f.log, 1, 0, 0, &w);
	assert_string_equal(w.title, "Upper Russet \302\267 trap 2 \302\267 CM");
	assert_true(says(&w, "OVER: 17.0 a week, threshold >=5"));
	assert_true(says(&w, "17 moths in 7 nights, Fri 8 May to Fri 15 May"));
	assert_true(says(&w, "at least 5 a week, any single trap"));
	assert_true(says(&w, "your own number"));
	assert_true(says(&w, "Fri 8 May  counted 3"));
	assert_true(says(&w, "The product label is the law"));
	why_free(&w);
	fixture_close(&f);
}

static void why_of_a_block_lists_its_traps(void **state)
{
	struct fixture f;
	struct why w = { 0 };

	(void)state;
	fixture_open(&f);
	two_weeks(&f);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_BLOCK_WEEK, 1, 1000));
	fixture_read(&f, "2026-05-15");
	why_of(&f.log, NO_TRAP, f.block.id, f.cm.id, &w);
	assert_true(says(&w, "2 of 3 traps read, 18 moths in them"));
	assert_true(says(&w, "trap 2: 17.0 a week; OVER"));
	assert_true(says(&w, "hung 14 nights ago, not read yet"));
	why_free(&w);
	fixture_close(&f);
}

static void a_replaced_threshold_is_named_in_why(void **state)
{
	struct fixture f;
	struct why w = { 0 };

	(void)state;
	fixture_open(&f);
	two_weeks(&f);
	struct rule narrow = fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 2000);
	narrow.condition = CONDITION_CONVENTIONAL;
	narrow.place = PLACE_BORDER; /* the other traps keep the wide one */
	fixture_put_rule(&f, narrow);
	struct traps traps = { 0 };
	struct err e = { 0 };
	must(book_traps(f.book, 0, &traps, &e), &e);
	traps.items[1].place = PLACE_BORDER;
	must(book_put_trap(f.book, &traps.items[1], &e), &e);
	free(traps.items);
	fixture_read(&f, "2026-05-15");
	why_of(&f.log, 1, 0, 0, &w);
	assert_true(says(&w, "off here, one that says more of where or when is "
			     "judged instead: at least 5 a week"));
	why_free(&w);
	fixture_close(&f);
}

static void why_tells_where_the_thresholds_of_the_pest_hold_instead(void **state)
{
	static const struct {
		const char *why, *crop, *says;
	} row[] = {
		{ "another crop", "Apples",
			"no threshold set for this trap; yours for its pest hold "
			"elsewhere: >=5 (apple); the crop of Upper Russet is Apples" },
		{ "none entered", "",
			"no threshold set for this trap; yours for its pest hold "
			"elsewhere: >=5 (apple); the crop of Upper Russet is not "
			"entered" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct why w = { 0 };
		struct err e = { 0 };
		fixture_open(&f);
		text_copy(f.block.crop, sizeof f.block.crop, row[i].crop);
		must(book_put_block(f.book, &f.block, &e), &e);
		struct rule r = fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500);
		text_copy(r.crop, sizeof r.crop, "apple");
		fixture_put_rule(&f, r);
		fixture_trap(&f, "1", "2026-05-01");
		fixture_read(&f, "2026-05-08");
		why_of(&f.log, 0, 0, 0, &w);
		if (!says(&w, row[i].says))
			fail_msg("%s is not told", row[i].why);
		why_free(&w);
		fixture_close(&f);
	}
}

static void the_sheet_holds_every_trap_and_sums_the_run(void **state)
{
	struct fixture f;
	struct sheet s = { 0 };
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	two_weeks(&f);
	fixture_read(&f, "2026-05-15");
	must(sheet_of(&f.log, f.book, f.farm.id, &s, &e), &e);
	assert_int_equal(s.n, 3);
	assert_int_equal(s.counted, 2);
	assert_int_equal(s.moths, 18);
	assert_int_equal(s.over, 1);
	assert_string_equal(s.scout, "JQ");
	assert_string_equal(s.traps[1].total, "20");
	assert_true(s.traps[1].needs_attention);
	assert_false(s.traps[0].needs_attention);
	assert_string_equal(s.traps[2].count, "");
	assert_string_equal(s.traps[0].lure_since, "1 May");
	assert_int_equal(s.n_blocks, 1);
	assert_string_equal(s.blocks[0].mean, "9.0");
	sheet_free(&s);
	fixture_close(&f);
}

static void why_of_two_weeks_running_shows_each_week_on_its_line(void **state)
{
	struct fixture f;
	struct why w = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_WEEK, 2, 200));
	int64_t t = fixture_trap(&f, "1", "2026-05-01");
	fixture_count(&f, t, "2026-05-08", 3);
	fixture_count(&f, t, "2026-05-15", 4);
	fixture_read(&f, "2026-05-15");
	why_of(&f.log, 0, 0, 0, &w);
	assert_true(says(&w, "4 moths in 7 nights, Fri 8 May to Fri 15 May"));
	assert_true(says(&w, "3 moths in 7 nights, Fri 1 May to Fri 8 May"));
	why_free(&w);
	fixture_close(&f);
}

static void a_floor_keeps_its_plus_as_the_highest_of_a_block(void **state)
{
	struct fixture f;
	struct week w = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_count(&f, fixture_trap(&f, "1", "2026-05-01"), "2026-05-08", 2);
	struct visit v =
		fixture_counted(fixture_trap(&f, "2", "2026-05-01"), "2026-05-08", 22);
	v.outcome = OUTCOME_FLOOR;
	fixture_save(&f, v);
	fixture_read(&f, "2026-05-08");
	week_of(&f.log, 0, 0, &w);
	assert_string_equal(w.rows[1].catch_text, "12.0+");
	assert_string_equal(w.rows[1].highest_text, "22.0+");
	week_free(&w);
	fixture_close(&f);
}

static void a_total_is_shown_beside_the_threshold_it_is_held_against(void **state)
{
	struct fixture f;
	struct week w = { 0 };

	(void)state;
	fixture_open(&f);
	struct rule r = fixture_rule(&f, MEASURE_TRAP_TOTAL, 0, 600);
	r.span_kind = SPAN_HUNG;
	fixture_put_rule(&f, r);
	int64_t t = fixture_trap(&f, "1", "2026-05-01");
	fixture_count(&f, t, "2026-05-08", 6);
	fixture_count(&f, t, "2026-05-15", 1);
	fixture_read(&f, "2026-05-15");
	week_of(&f.log, 0, 0, &w);
	assert_string_equal(w.rows[2].says, "7.0 in all");
	assert_string_equal(w.rows[2].verdict_text, "OVER");
	week_free(&w);
	fixture_close(&f);
}

static void a_pulled_trap_leaves_the_week_when_its_catch_is_stale(void **state)
{
	static const struct {
		const char *why, *today;
		size_t rows;
	} row[] = {
		{ "ten nights after, last good", "2026-05-18", 4 },
		{ "eleven, first bad", "2026-05-19", 3 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct week w = { 0 };
		fixture_open(&f);
		fixture_trap(&f, "1", "2026-05-01");
		struct visit v = fixture_counted(
			fixture_trap(&f, "2", "2026-05-01"), "2026-05-08", 1);
		v.outcome = OUTCOME_PULLED;
		fixture_save(&f, v);
		fixture_read(&f, row[i].today);
		week_of(&f.log, 0, 0, &w);
		if (w.n != row[i].rows)
			fail_msg("%s: %zu rows", row[i].why, w.n);
		week_free(&w);
		fixture_close(&f);
	}
}

static void a_trap_never_read_has_no_total_on_the_sheet(void **state)
{
	struct fixture f;
	struct sheet s = { 0 };
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	two_weeks(&f);
	fixture_read(&f, "2026-05-15");
	must(sheet_of(&f.log, f.book, f.farm.id, &s, &e), &e);
	assert_string_equal(s.traps[2].total, "-");
	assert_int_equal(s.visited, 2);
	sheet_free(&s);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			why_tells_where_the_thresholds_of_the_pest_hold_instead),
		cmocka_unit_test(why_of_two_weeks_running_shows_each_week_on_its_line),
		cmocka_unit_test(a_floor_keeps_its_plus_as_the_highest_of_a_block),
		cmocka_unit_test(
			a_total_is_shown_beside_the_threshold_it_is_held_against),
		cmocka_unit_test(a_pulled_trap_leaves_the_week_when_its_catch_is_stale),
		cmocka_unit_test(a_trap_never_read_has_no_total_on_the_sheet),
		cmocka_unit_test(the_tree_has_farm_block_and_traps_with_their_answers),
		cmocka_unit_test(
			a_trap_with_a_threshold_of_its_block_only_is_said_to_be_judged_with_it),
		cmocka_unit_test(a_block_and_its_farm_are_no_surer_than_their_traps),
		cmocka_unit_test(flight_lines_tell_a_zero_from_a_week_not_read),
		cmocka_unit_test(why_names_visits_nights_threshold_source_and_cautions),
		cmocka_unit_test(why_of_a_block_lists_its_traps),
		cmocka_unit_test(a_replaced_threshold_is_named_in_why),
		cmocka_unit_test(the_sheet_holds_every_trap_and_sums_the_run),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
