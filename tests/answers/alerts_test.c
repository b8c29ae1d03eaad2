#include "acts.h"

#include "answers/alerts.h"
#include "answers/why.h"

static void answer_it(struct fixture *f, struct answer a, enum decision d,
	const char *on, const char *note)
{
	struct err e = { 0 };

	a.decision = d;
	a.on = day_of(on);
	text_copy(a.note, sizeof a.note, note);
	must(book_put_answer(f->book, &a, &e), &e);
}

/* 12 and 12 a week before 15 July, then 12, 3, 4. */
static int64_t a_trap_over(struct fixture *f)
{
	fixture_put_rule(f, fixture_rule(f, MEASURE_TRAP_WEEK, 1, 500));
	int64_t t = fixture_trap(f, "3", "2026-07-01");
	fixture_count(f, t, "2026-07-08", 12);
	fixture_count(f, t, "2026-07-15", 12);
	return t;
}

static void an_alert_is_open_until_it_is_answered(void **state)
{
	struct fixture f;
	struct alerts a = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t t = a_trap_over(&f);
	acts_read(&f, "2026-07-15 12:00");
	alerts_of(&f.log, 0, &a);
	assert_int_equal(a.n, 1);
	assert_false(a.items[0].is_answered);
	assert_int_equal(a.items[0].trap, t);
	assert_int_equal(a.items[0].day, day_of("2026-07-15"));
	assert_string_equal(a.items[0].name, "Upper Russet, CM, trap 3");
	assert_string_equal(a.items[0].amount, "12.0");
	assert_string_equal(a.items[0].says, "12.0 a week, threshold >=5");
	assert_string_equal(a.items[0].decided, "open");
	assert_string_equal(a.items[0].after, "");
	answer_it(&f, a.items[0].answer, DECISION_TREATED, "2026-07-15", "border rows");
	acts_read(&f, "2026-07-15 12:00");
	alerts_of(&f.log, 0, &a);
	assert_int_equal(a.n, 1);
	assert_true(a.items[0].is_answered);
	assert_string_equal(a.items[0].decided, "treated Wed 15 Jul: border rows");
	alerts_free(&a);
	fixture_close(&f);
}

static void what_the_catch_did_after_is_told_with_its_doubts(void **state)
{
	static const struct {
		const char *why, *today, *after;
	} row[] = {
		{ "nothing read yet", "2026-07-15 12:00",
			"before 12.0 a week, after not read (14 nights and -; the two "
			"weeks after are not over)" },
		{ "the last day of the two weeks is not over", "2026-07-28 12:00",
			"before 12.0 a week, after 3.0 a week (14 nights and 7 nights; "
			"the two weeks after are not over)" },
		{ "both weeks; the lure was due on 22 July", "2026-07-29 12:00",
			"before 12.0 a week, after 3.5 a week (14 nights and 14 "
			"nights; lure overdue after)" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct alerts a = { 0 };
		fixture_open(&f);
		int64_t t = a_trap_over(&f);
		acts_read(&f, "2026-07-15 12:00");
		alerts_of(&f.log, 0, &a);
		assert_int_equal(a.n, 1);
		answer_it(&f, a.items[0].answer, DECISION_LEFT, "2026-07-15", "");
		fixture_count(&f, t, "2026-07-22", 3);
		fixture_count(&f, t, "2026-07-29", 4);
		acts_read(&f, row[i].today);
		alerts_of(&f.log, 0, &a);
		assert_int_equal(a.n, 1);
		assert_string_equal(a.items[0].decided, "left as it was Wed 15 Jul");
		if (strcmp(a.items[0].after, row[i].after) != 0)
			fail_msg("%s: %s", row[i].why, a.items[0].after);
		alerts_free(&a);
		fixture_close(&f);
	}
}

static void over_again_at_a_later_clearing_is_a_new_alert_before_the_old(void **state)
{
	struct fixture f;
	struct alerts a = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t t = a_trap_over(&f);
	acts_read(&f, "2026-07-15 12:00");
	alerts_of(&f.log, 0, &a);
	answer_it(&f, a.items[0].answer, DECISION_LOOKED, "2026-07-16", "");
	fixture_count(&f, t, "2026-07-22", 9);
	acts_read(&f, "2026-07-22 12:00");
	alerts_of(&f.log, 0, &a);
	assert_int_equal(a.n, 2);
	assert_false(a.items[0].is_answered);
	assert_int_equal(a.items[0].day, day_of("2026-07-22"));
	assert_true(a.items[1].is_answered);
	assert_string_equal(a.items[1].decided, "looked Thu 16 Jul");
	assert_string_equal(a.items[1].says, "12.0 a week, threshold >=5");
	alerts_free(&a);
	fixture_close(&f);
}

static void a_count_corrected_since_is_said(void **state)
{
	struct fixture f;
	struct alerts a = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t t = a_trap_over(&f);
	acts_read(&f, "2026-07-15 12:00");
	alerts_of(&f.log, 0, &a);
	answer_it(&f, a.items[0].answer, DECISION_LOOKED, "2026-07-15", "");
	fixture_count(&f, t, "2026-07-15", 2);
	acts_read(&f, "2026-07-15 12:00");
	alerts_of(&f.log, 0, &a);
	assert_int_equal(a.n, 1);
	assert_string_equal(a.items[0].says,
		"under as counts and thresholds stand now: 2.0 a week, threshold >=5");
	alerts_free(&a);
	fixture_close(&f);
}

static bool has_line(const struct why *w, const char *text)
{
	for (size_t i = 0; i < w->n; i++)
		if (strstr(w->lines[i].text, text))
			return true;
	return false;
}

static void why_tells_what_was_decided_and_who_may_go_there(void **state)
{
	struct fixture f;
	struct alerts a = { 0 };
	struct why w = { 0 };

	(void)state;
	fixture_open(&f);
	a_trap_over(&f);
	acts_treat(&f, "2026-07-15 10:00", 24, 14);
	acts_read(&f, "2026-07-15 12:00");
	alerts_of(&f.log, 0, &a);
	answer_it(&f, a.items[0].answer, DECISION_TREATED, "2026-07-15", "");
	acts_read(&f, "2026-07-15 12:00");
	why_of(&f.log, 0, 0, 0, &w);
	assert_true(has_line(&w, "What was decided"));
	assert_true(has_line(&w, "treated Wed 15 Jul"));
	assert_true(has_line(&w, "Upper Russet: no entry until Thu 16 Jul 10:00"));
	assert_true(has_line(&w, "Upper Russet: earliest pick Wed 29 Jul"));
	why_free(&w);
	alerts_free(&a);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(an_alert_is_open_until_it_is_answered),
		cmocka_unit_test(what_the_catch_did_after_is_told_with_its_doubts),
		cmocka_unit_test(
			over_again_at_a_later_clearing_is_a_new_alert_before_the_old),
		cmocka_unit_test(a_count_corrected_since_is_said),
		cmocka_unit_test(why_tells_what_was_decided_and_who_may_go_there),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
