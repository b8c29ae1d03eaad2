#include "fixture.h"

#include "book/acts.h"

#include "answers/say.h"
#include "answers/verdicts.h"

#include <stdlib.h>

static const struct verdict_row *row_of_block(const struct verdict_rows *v)
{
	for (size_t i = 0; i < v->n; i++)
		if (v->items[i].trap == NO_TRAP)
			return &v->items[i];
	return NULL;
}

/* practice: 0, 1, 0, 2, 17 over five traps has the mean 4.0: under 5, and yet one trap
 * is far over. */
static void a_block_mean_does_not_hide_one_hot_trap(void **state)
{
	static const int32_t counts[] = { 0, 1, 0, 2, 17 };
	struct fixture f;
	struct verdict_rows v = { 0 };
	int over = 0;

	(void)state;
	fixture_open(&f);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500));
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_BLOCK_WEEK, 1, 500));
	for (int i = 0; i < 5; i++) {
		char label[2] = { (char)('1' + i), '\0' };
		int64_t t = fixture_trap(&f, label, "2026-05-01");
		fixture_count(&f, t, "2026-05-08", counts[i]);
	}
	fixture_read(&f, "2026-05-08");
	verdicts_of(&f.log, 0, 0, f.log.today, &v);
	const struct verdict_row *mean = row_of_block(&v);
	assert_int_equal(mean->judgement.verdict, VERDICT_NEAR); /* 4.0 of 5 */
	assert_int_equal(ratio_cmp(mean->judgement.value.lo, ratio_of(4, 1)), 0);
	for (size_t i = 0; i < v.n; i++)
		over += v.items[i].trap != NO_TRAP &&
			v.items[i].judgement.verdict == VERDICT_OVER;
	assert_int_equal(over, 1);
	assert_int_equal(
		verdicts_worst_of_block(&v, f.block.id, f.cm.id)->judgement.verdict,
		VERDICT_OVER);
	free(v.items);
	fixture_close(&f);
}

/* practice 1.1: an overdue lure reads as low pressure, with nothing on the card to say
 * so. A lure changed at the very visit did not make that visit's catch. */
static void a_lure_changed_at_the_visit_still_leaves_its_catch_in_doubt(void **state)
{
	struct fixture f;
	struct verdict_rows v = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500));
	int64_t t = fixture_trap(&f, "1", "2026-05-01"); /* due 22 May */
	fixture_count(&f, t, "2026-05-29", 9);
	struct visit visit = fixture_counted(t, "2026-06-05", 1);
	visit.new_lure = f.lure.id;
	fixture_save(&f, visit);
	fixture_read(&f, "2026-06-05");
	verdicts_of(&f.log, 0, 0, f.log.today, &v);
	assert_int_equal(v.n, 1);
	assert_int_equal(v.items[0].judgement.verdict, VERDICT_UNDER);
	assert_true(v.items[0].judgement.questionable);
	assert_int_equal(v.items[0].judgement.lure_overdue_days, 14);
	fixture_count(&f, t, "2026-06-12", 1);
	fixture_read(&f, "2026-06-12");
	verdicts_of(&f.log, 0, 0, f.log.today, &v);
	assert_false(v.items[0].judgement.questionable);
	free(v.items);
	fixture_close(&f);
}

static void a_narrower_threshold_replaces_a_wider_one(void **state)
{
	struct fixture f;
	struct verdict_rows v = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500));
	struct rule narrow = fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 1000);
	narrow.block = f.block.id;
	narrow.farm = f.farm.id;
	fixture_put_rule(&f, narrow);
	int64_t t = fixture_trap(&f, "1", "2026-05-01");
	fixture_count(&f, t, "2026-05-08", 7);
	fixture_read(&f, "2026-05-08");
	verdicts_of(&f.log, 0, 0, f.log.today, &v);
	assert_int_equal(v.n, 1);
	assert_int_equal(f.log.rules.items[v.items[0].rule].value_x100, 1000);
	assert_int_equal(v.items[0].judgement.verdict, VERDICT_NEAR);
	free(v.items);
	fixture_close(&f);
}

static void a_treatment_restarts_a_total_that_runs_since_treatment(void **state)
{
	struct fixture f;
	struct verdict_rows v = { 0 };
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	struct rule r = fixture_rule(&f, MEASURE_TRAP_TOTAL, 0, 1000);
	r.span_kind = SPAN_TREATMENT;
	fixture_put_rule(&f, r);
	int64_t t = fixture_trap(&f, "1", "2026-05-01");
	fixture_count(&f, t, "2026-05-08", 9);
	fixture_count(&f, t, "2026-05-15", 2);
	fixture_read(&f, "2026-05-15");
	verdicts_of(&f.log, 0, 0, f.log.today, &v);
	assert_int_equal(v.items[0].judgement.verdict, VERDICT_OVER);
	struct treatment done = treatment_blank;
	done.block = f.block.id;
	done.day = day_of("2026-05-08");
	must(book_put_treatment(f.book, &done, &e), &e);
	fixture_read(&f, "2026-05-15");
	verdicts_of(&f.log, 0, 0, f.log.today, &v);
	assert_int_equal(v.items[0].judgement.verdict, VERDICT_UNDER);
	assert_int_equal(v.items[0].judgement.moths, 2);
	free(v.items);
	fixture_close(&f);
}

static void without_a_threshold_there_is_a_row_that_says_none(void **state)
{
	struct fixture f;
	struct verdict_rows v = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t t = fixture_trap(&f, "1", "2026-05-01");
	fixture_count(&f, t, "2026-05-08", 99);
	fixture_read(&f, "2026-05-08");
	verdicts_of(&f.log, 0, 0, f.log.today, &v);
	assert_int_equal(v.n, 1);
	assert_int_equal(v.items[0].rule, NO_RULE);
	assert_int_equal(v.items[0].judgement.verdict, VERDICT_NONE);
	assert_int_equal(v.items[0].weekly.moths, 99);
	free(v.items);
	fixture_close(&f);
}

static void a_threshold_for_a_flight_is_unknown_while_biofix_is_not_set(void **state)
{
	struct fixture f;
	struct verdict_rows v = { 0 };

	(void)state;
	fixture_open(&f);
	struct rule r = fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500);
	r.flight = 2;
	fixture_put_rule(&f, r);
	int64_t t = fixture_trap(&f, "1", "2026-05-01");
	fixture_count(&f, t, "2026-05-08", 9);
	fixture_read(&f, "2026-05-08");
	verdicts_of(&f.log, 0, 0, f.log.today, &v);
	assert_int_equal(v.items[0].judgement.verdict, VERDICT_UNKNOWN);
	assert_int_equal(v.items[0].judgement.lacking, LACKING_BIOFIX);
	free(v.items);
	fixture_close(&f);
}

/* The turn of the year (or a southern season's first day) finds traps that hang: what
 * they caught before counts on, and their lures age on. */
static void a_new_season_does_not_forget_a_trap_that_still_hangs(void **state)
{
	static const struct {
		const char *why, *today;
	} row[] = {
		{ "last day of the old season", "2026-12-31" },
		{ "first day of the new one", "2027-01-01" },
		{ "weeks into it", "2027-01-11" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct verdict_rows v = { 0 };
		char iso[DAY_ISO_SIZE];
		fixture_open(&f);
		struct rule r = fixture_rule(&f, MEASURE_TRAP_TOTAL, 0, 3000);
		r.span_kind = SPAN_HUNG;
		fixture_put_rule(&f, r);
		int64_t one = fixture_trap(&f, "1", "2026-08-03");
		fixture_trap(&f, "2", "2026-09-21");
		for (int32_t d = day_of("2026-08-10"); d <= day_of(row[i].today);
			d += 7) {
			day_iso(d, iso);
			fixture_count(&f, one, iso, d <= day_of("2026-09-21") ? 5 : 0);
		}
		fixture_read(&f, row[i].today);
		verdicts_of(&f.log, 0, 0, f.log.today, &v);
		if (v.n != 2 || v.items[0].judgement.verdict != VERDICT_OVER ||
			v.items[0].judgement.moths != 35 ||
			v.items[1].judgement.verdict != VERDICT_UNKNOWN)
			fail_msg("%s: %zu rows, %d moths", row[i].why, v.n,
				v.n ? (int)v.items[0].judgement.moths : -1);
		assert_true(f.log.lure_states[0].overdue_days > 100);
		free(v.items);
		fixture_close(&f);
	}
}

/* Two lures, two thresholds: the catch belongs to the lure that made it. */
static void a_threshold_for_a_lure_judges_the_catch_of_that_lure(void **state)
{
	struct fixture f;
	struct verdict_rows v = { 0 };
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	struct lure_kind other = {
		.name = "ten weeks", .pest = f.cm.id, .life_days = 70
	};
	must(book_put_lure(f.book, &other, &e), &e);
	struct rule r = fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500);
	r.lure = f.lure.id;
	fixture_put_rule(&f, r);
	r = fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 1000);
	r.lure = other.id;
	fixture_put_rule(&f, r);
	struct visit visit =
		fixture_counted(fixture_trap(&f, "1", "2026-06-01"), "2026-06-08", 5);
	visit.new_lure = other.id;
	fixture_save(&f, visit);
	fixture_read(&f, "2026-06-08");
	verdicts_of(&f.log, 0, 0, f.log.today, &v);
	assert_int_equal(v.n, 1);
	assert_int_equal(v.items[0].judgement.verdict, VERDICT_OVER);
	free(v.items);
	fixture_close(&f);
}

static void of_a_rule_of_two_weeks_it_is_said_how_many_were_over(void **state)
{
	struct fixture f;
	struct verdict_rows v = { 0 };
	char says[SAY_LINE];

	(void)state;
	fixture_open(&f);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_WEEK, 2, 200));
	int64_t t = fixture_trap(&f, "1", "2026-05-01");
	fixture_count(&f, t, "2026-05-08", 1);
	fixture_count(&f, t, "2026-05-15", 2);
	fixture_read(&f, "2026-05-15");
	verdicts_of(&f.log, 0, 0, f.log.today, &v);
	assert_int_equal(v.n, 1);
	assert_int_equal(v.items[0].judgement.verdict, VERDICT_UNDER);
	say_behind(&f.log.rules.items[0], &v.items[0].judgement, says, sizeof says);
	assert_string_equal(says, "1 of 2 weeks so far");
	free(v.items);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(of_a_rule_of_two_weeks_it_is_said_how_many_were_over),
		cmocka_unit_test(a_new_season_does_not_forget_a_trap_that_still_hangs),
		cmocka_unit_test(a_threshold_for_a_lure_judges_the_catch_of_that_lure),
		cmocka_unit_test(a_block_mean_does_not_hide_one_hot_trap),
		cmocka_unit_test(
			a_lure_changed_at_the_visit_still_leaves_its_catch_in_doubt),
		cmocka_unit_test(a_narrower_threshold_replaces_a_wider_one),
		cmocka_unit_test(
			a_treatment_restarts_a_total_that_runs_since_treatment),
		cmocka_unit_test(without_a_threshold_there_is_a_row_that_says_none),
		cmocka_unit_test(
			a_threshold_for_a_flight_is_unknown_while_biofix_is_not_set),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
