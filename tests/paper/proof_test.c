#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "lines.h"
#include "paper/proof.h"

static const struct proof_case cases[] = {
	{ "Q1", "Quillet Extension, 2020", "2 or more in each of two weeks", "",
		"trap-week 2 >= 2", "7 nights: 2 1", "under", "under", true },
	{ "Q1", "Quillet Extension, 2020", "2 or more in each of two weeks", "",
		"trap-week 2 >= 2", "7 nights: 2 2", "over", "over", true },
	{ "Q2", "", "a page that says more than 3", "a bare number", "block-total > 3",
		"7 nights: 1 1 1 | 1 1 1 | 2 1 0 | 1 1 0 | 1 1 1 | 1 1 1 | 2 1 0",
		"over", "unknown", false },
};

static char *print(size_t n, int cols)
{
	const struct proof_text p = { cases, n, "How to read an input." };
	struct buf out = { 0 };

	paper_proof(&p, cols, &out);
	return out.text;
}

static void proof_sets_source_input_printed_and_ours_side_by_side(void **state)
{
	char *text = print(2, 80);

	(void)state;
	assert_string_equal(text,
		"How to read an input.\n"
		"\n"
		"Q1: Quillet Extension, 2020\n"
		"  2 or more in each of two weeks\n"
		"    rule             input         printed ours\n"
		"    trap-week 2 >= 2 7 nights: 2 1 under   under holds\n"
		"    trap-week 2 >= 2 7 nights: 2 2 over    over  holds\n"
		"\n"
		"All 2 cases hold.\n");
	free(text);
}

static void proof_says_what_does_not_hold(void **state)
{
	char *text = print(3, 80);

	(void)state;
	assert_non_null(strstr(text, "unknown DOES NOT HOLD\n"));
	assert_non_null(strstr(text, "\n1 of 3 cases DO NOT HOLD.\n"));
	free(text);
}

static void proof_never_cuts_an_input(void **state)
{
	(void)state;
	for (int cols = 80; cols <= 160; cols += 20) {
		char *text = print(3, cols);

		assert_non_null(strstr(text, cases[2].input));
		assert_true(lines_widest(text) <= cols);
		free(text);
	}
}

static void proof_keeps_to_any_width(void **state)
{
	(void)state;
	for (int cols = 40; cols <= 160; cols++) {
		char *text = print(3, cols);

		if (lines_widest(text) > cols)
			fail_msg("%d columns: a line of %d", cols, lines_widest(text));
		free(text);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(proof_sets_source_input_printed_and_ours_side_by_side),
		cmocka_unit_test(proof_says_what_does_not_hold),
		cmocka_unit_test(proof_never_cuts_an_input),
		cmocka_unit_test(proof_keeps_to_any_width),
	};

	return cmocka_run_group_tests(tests, lines_setup, NULL);
}
