/* A run that is all done. */
#include "screen/run_page.h"

#include "screen/run_samples.h"
#include "screen/run_typing.h"

static struct run done_run(size_t n)
{
	struct run r = sample_open_run(n);

	for (size_t i = 0; i < n; i++)
		sample_visit(&r.traps[i], sample_count(&r.traps[i], 1));
	sample_tally(&r);
	return r;
}

static void run_page_takes_no_count_once_all_are_done(void **state)
{
	static const char refused[] =
		"All 2 traps are done and unchanged: an arrow key picks one to "
		"correct.";
	static const struct {
		const char *why, *keys;
		const char *says; /* NULL: kept */
	} row[] = {
		{ "a digit", "7", refused },
		{ "skip", "-", refused },
		{ "card", "+", refused },
		{ "lure", "*", refused },
		{ "spoiled", "/", refused },
		{ "glue", "g", refused },
		{ "Backspace", "\b", refused },
		{ "a note", ".", refused },
		{ "females", "f", refused },
		{ "other moths", "o", refused },
		{ "Enter after a refused digit says it first", "7\n",
			"All 2 traps are done: Enter goes back; an arrow key picks one "
			"to correct." },
		{ "the picked trap, picked anew", "~7\n", NULL },
		{ "another trap", "^7\n", NULL },
		{ "once corrected it rests again", "^7\n8", refused },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = sample_open_run(2);
		struct run_page p = page_of(&r);
		struct wish w;

		assert_int_equal(type(&p, &r, "1\n2\n").want, WANT_SAVE);
		w = type(&p, &r, row[i].keys);
		if (row[i].says ? strcmp(p.message.text, row[i].says) != 0
				: w.want != WANT_SAVE || w.visit.count != 7)
			fail_msg("%s: want %d \"%s\"", row[i].why, (int)w.want,
				p.message.text);
		if (row[i].says)
			assert_int_equal(p.typing, TYPING_COUNT);
		free(r.traps);
	}
}

static void run_page_that_opens_all_done_waits_for_an_arrow(void **state)
{
	struct run r = done_run(3);
	struct run_page p = page_of(&r);

	(void)state;
	assert_int_equal(type(&p, &r, "7\n").want, WANT_NOTHING);
	assert_int_equal(r.traps[0].visit.count, 1);
	assert_int_equal(type(&p, &r, "u").want, WANT_UNDO);
	assert_int_equal(type(&p, &r, "7\n").visit.count, 7);
	run_page_show(&p, &r, true);
	assert_int_equal(type(&p, &r,
				 "t\x1b"
				 "8\n")
				 .visit.count,
		8);
	run_page_show(&p, &r, true);
	run_page_pick(&p, 102);
	assert_int_equal(type(&p, &r, "9\n").visit.trap, 102);
	free(r.traps);
}

static void run_page_at_rest_shows_no_field(void **state)
{
	struct run r = done_run(40);
	struct run_page p = page_of(&r);
	struct canvas c = { 0 };

	(void)state;
	r.traps[39].open = true;
	run_page_show(&p, &r, true);
	type(&p, &r, "3\n");
	draw(&p, &c, 24, 80);
	expect_golden("run-80x24-all-done", &c, true);
	type(&p, &r, "^");
	draw(&p, &c, 24, 80);
	expect_shows("after an arrow key", &c, "[ 1  ]");
	canvas_free(&c);
	free(r.traps);
}

static void run_page_forgets_when_another_run_was_saved(void **state)
{
	struct run r = sample_open_run(3);
	struct run_page p = page_of(&r);

	(void)state;
	type(&p, &r, "1\n");
	run_page_show(&p, &r, true);
	assert_string_equal(p.saved, "saved 07:42:11");
	r.day--;
	run_page_show(&p, &r, true);
	assert_string_equal(p.saved, "");
	type(&p, &r, "1\n");
	assert_string_equal(p.saved, "saved 07:42:11");
	r.farm++;
	run_page_show(&p, &r, true);
	assert_string_equal(p.saved, "");
	free(r.traps);
}

static void run_page_keeps_the_next_trap_in_sight(void **state)
{
	struct run r = sample_open_run(40);
	struct run_page p = page_of(&r);
	struct canvas c = { 0 };
	char next[24];

	(void)state;
	for (int i = 1; i < 40; i++) {
		draw(&p, &c, 24, 80);
		snprintf(next, sizeof next, "\n   %d ", i + 1);
		expect_shows("the next trap", &c, next);
		type(&p, &r, "1\n");
	}
	canvas_free(&c);
	free(r.traps);
}

static void run_page_says_what_a_count_left_undone(void **state)
{
	struct run r = sample_open_run(2);
	struct run_page p = { .limits = &limits_usual };

	(void)state;
	run_page_show(&p, &r, true);
	r.traps[0].open = false;
	r.traps[0].visit.outcome = OUTCOME_COUNTED;
	r.traps[0].lure_due = true;
	SET(r.traps[0].service, "lure 42 d late");
	run_page_saved(&p, &r, "07:42:11");
	assert_non_null(strstr(
		p.message.text, "Not changed: lure 42 d late; on it again * does."));
	r.traps[1].open = false;
	r.traps[1].visit.outcome = OUTCOME_COUNTED;
	run_page_saved(&p, &r, "07:42:30");
	assert_null(strstr(p.message.text, "Not changed"));
	free(r.traps);
}

static void run_page_says_why_a_count_is_not_known(void **state)
{
	static const struct {
		enum outcome outcome;
		const char *says;
	} row[] = {
		{ OUTCOME_COUNTED, "Trap 1 kept: 6  unknown: cannot be divided" },
		{ OUTCOME_SKIPPED, "Trap 1 kept: 6  unknown" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = sample_open_run(2);
		struct run_page p = { .limits = &limits_usual };
		run_page_show(&p, &r, true);
		r.traps[0].open = false;
		r.traps[0].visit.outcome = row[i].outcome;
		SET(r.traps[0].visit_text, "6");
		SET(r.traps[0].verdict_text, "unknown");
		SET(r.traps[0].lacks, "cannot be divided");
		run_page_saved(&p, &r, "07:42:11");
		assert_string_equal(p.message.text, row[i].says);
		free(r.traps);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(run_page_takes_no_count_once_all_are_done),
		cmocka_unit_test(run_page_that_opens_all_done_waits_for_an_arrow),
		cmocka_unit_test(run_page_at_rest_shows_no_field),
		cmocka_unit_test(run_page_forgets_when_another_run_was_saved),
		cmocka_unit_test(run_page_keeps_the_next_trap_in_sight),
		cmocka_unit_test(run_page_says_what_a_count_left_undone),
		cmocka_unit_test(run_page_says_why_a_count_is_not_known),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
