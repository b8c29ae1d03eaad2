/* Which lines Today has of what is over and unknown. */
#include "fixture.h"

#include "book/acts.h"

#include "answers/due.h"

#include <stdlib.h>

static void a_trap_that_was_taken_down_is_not_unknown(void **state)
{
	struct fixture f;
	struct today t = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500));
	int64_t one = fixture_trap(&f, "1", "2026-05-01");
	int64_t two = fixture_trap(&f, "2", "2026-05-01");
	struct visit v = fixture_counted(one, "2026-05-08", -1);
	v.outcome = OUTCOME_PULLED;
	fixture_save(&f, v);
	v = fixture_counted(two, "2026-05-08", -1);
	v.outcome = OUTCOME_SPOILED;
	v.reason = REASON_DOWN;
	fixture_save(&f, v);
	fixture_read(&f, "2026-05-08");
	today_of(&f.log, &t);
	assert_int_equal(t.n_lines, 1);
	assert_string_equal(t.lines[0].where, "trap 2");
	today_free(&t);
	fixture_close(&f);
}

static void what_was_over_stays_when_its_trap_is_taken_down(void **state)
{
	static const char *const days[] = { "2026-05-08", "2026-05-15" };
	struct fixture f;
	struct today t = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_TOTAL, 30, 1000));
	int64_t trap = fixture_trap(&f, "1", "2026-05-01");
	for (int i = 0; i < 2; i++)
		fixture_count(&f, trap, days[i], 8);
	struct visit v = fixture_counted(trap, "2026-05-16", COUNT_NONE);
	v.outcome = OUTCOME_PULLED;
	fixture_save(&f, v);
	fixture_read(&f, "2026-05-16");
	today_of(&f.log, &t);
	assert_int_equal(t.n_over, 1);
	assert_int_equal(t.n_lines, 1);
	assert_string_equal(t.lines[0].where, "trap 1");
	today_free(&t);
	fixture_close(&f);
}

static void what_was_decided_stands_beside_what_is_over(void **state)
{
	static const struct {
		const char *why, *of, *says;
	} row[] = {
		{ "of this clearing", "2026-05-15",
			"9.0 a week, threshold >=5; looked 16 May" },
		{ "of the one before", "2026-05-08", "9.0 a week, threshold >=5" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct today t = { 0 };
		struct err e = { 0 };
		struct answer a = answer_blank;
		fixture_open(&f);
		fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500));
		a.trap = fixture_trap(&f, "1", "2026-05-01");
		fixture_count(&f, a.trap, "2026-05-08", 8);
		fixture_count(&f, a.trap, "2026-05-15", 9);
		a.block = f.block.id;
		a.pest = f.cm.id;
		a.day = day_of(row[i].of);
		a.on = day_of("2026-05-16");
		a.decision = DECISION_LOOKED;
		must(book_put_answer(f.book, &a, &e), &e);
		fixture_read(&f, "2026-05-17");
		today_of(&f.log, &t);
		if (t.n_lines != 1 || strcmp(t.lines[0].says, row[i].says) != 0)
			fail_msg("%s: %s", row[i].why, t.lines[0].says);
		today_free(&t);
		fixture_close(&f);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_trap_that_was_taken_down_is_not_unknown),
		cmocka_unit_test(what_was_over_stays_when_its_trap_is_taken_down),
		cmocka_unit_test(what_was_decided_stands_beside_what_is_over),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
