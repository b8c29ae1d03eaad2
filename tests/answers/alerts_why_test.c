/* What the Why page tells of alerts, treatments and disruption. */
#include "acts.h"
#include "warm.h"

#include "answers/alerts.h"
#include "answers/why.h"

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
	acts_trap_over(&f);
	acts_treat(&f, "2026-07-15 10:00", 24, 14);
	acts_read(&f, "2026-07-15 12:00");
	alerts_of(&f.log, 0, &a);
	acts_answer(&f, a.items[0].answer, DECISION_TREATED, "2026-07-15", "");
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

static void why_tells_since_which_treatment_a_total_runs(void **state)
{
	static const char border[] = "the treatment of the border alone, Wed 15 Jul, "
				     "does not restart it";
	static const struct {
		const char *why;
		bool treated, border;
		const char *says, *lacks;
	} row[] = {
		{ "none", false, false, "no treatment is entered that restarts it",
			border },
		{ "all of it", true, false, "since the treatment of Sun 12 Jul",
			border },
		{ "the border later", true, true, "since the treatment of Sun 12 Jul",
			"no treatment" },
		{ "which alone restarts nothing inside", false, true, border,
			"since the treatment" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct why w = { 0 };
		fixture_open(&f);
		struct rule r = fixture_rule(&f, MEASURE_TRAP_TOTAL, 0, 500);
		r.span_kind = SPAN_TREATMENT;
		fixture_put_rule(&f, r);
		int64_t t = fixture_trap(&f, "3", "2026-07-01");
		fixture_count(&f, t, "2026-07-08", 3);
		if (row[i].treated)
			acts_treat(&f, "2026-07-12 10:00", 12, 7);
		struct treatment edge = acts_treatment(&f, "2026-07-15 10:00", 12, 7);
		edge.border = true;
		if (row[i].border)
			acts_put(&f, edge);
		acts_read(&f, "2026-07-20 12:00");
		why_of(&f.log, 0, 0, 0, &w);
		if (!has_line(&w, row[i].says) || has_line(&w, row[i].lacks))
			fail_msg("%s", row[i].why);
		assert_int_equal(has_line(&w, border), row[i].border);
		why_free(&w);
		fixture_close(&f);
	}
}

static void why_of_a_disrupted_block_tells_what_no_catch_does_not_mean(void **state)
{
	static const struct {
		const char *why;
		enum condition condition;
		bool says;
	} row[] = {
		{ "disrupted", CONDITION_DISRUPTED, true },
		{ "conventional", CONDITION_CONVENTIONAL, false },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct why w = { 0 };
		struct err e = { 0 };
		fixture_open(&f);
		f.block.condition = row[i].condition;
		must(book_put_block(f.book, &f.block, &e), &e);
		int64_t t = fixture_trap(&f, "3", "2026-07-01");
		fixture_count(&f, t, "2026-07-08", 0);
		acts_read(&f, "2026-07-08 12:00");
		for (int trap = NO_TRAP; trap <= 0; trap++) {
			why_of(&f.log, trap, f.block.id, f.cm.id, &w);
			if (has_line(&w, "does not mean that there are no moths") !=
				row[i].says)
				fail_msg("%s, trap %d", row[i].why, trap);
		}
		why_free(&w);
		fixture_close(&f);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(why_tells_what_was_decided_and_who_may_go_there),
		cmocka_unit_test(why_tells_since_which_treatment_a_total_runs),
		cmocka_unit_test(
			why_of_a_disrupted_block_tells_what_no_catch_does_not_mean),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
