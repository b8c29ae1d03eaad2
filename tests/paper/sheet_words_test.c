#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "lines.h"
#include "sheets.h"

static void sheet_names_traps_needing_attention_first_in_words(void **state)
{
	struct sheet s = sheets_with(3);

	(void)state;
	s.traps[1].needs_attention = true;
	text_copy(s.traps[1].says, sizeof s.traps[1].says, "not read for 15 nights");
	text_copy(s.traps[1].service, sizeof s.traps[1].service, "lure 3 d late");
	char *text = sheets_print(&s, sheets_form(PAPER_A4, false));
	const char *need = strstr(text, "\nT002 Quarry Rows CM");
	const char *all = strstr(text, "All traps in driving order");

	assert_non_null(need);
	assert_non_null(all);
	assert_true(need < all);
	assert_int_equal(lines_count(text, "not read for 15 nights; lure 3 d late"), 1);
	assert_true(strstr(text, "not read for 15 nights") < all);
	free(text);
	free(s.traps);
}

static void sheet_says_so_when_nothing_needs_attention(void **state)
{
	struct sheet s = sheets_with(3);
	char *text = sheets_print(&s, sheets_form(PAPER_A4, false));

	(void)state;
	assert_non_null(strstr(text, "Needing attention\n    none\n"));
	free(text);
	free(s.traps);
}

static void sheet_tells_zero_from_not_read(void **state)
{
	static const char zero[] = "T001 Quarry Rows CM     2   0   -   4 0        0.0 "
				   "     7 >=5  under\n";
	static const char unread[] = "T002 Quarry Rows CM     2   0   -   4 -          "
				     "-        >=5  under\n";
	struct sheet s = sheets_with(2);

	(void)state;
	text_copy(s.traps[0].week, sizeof s.traps[0].week, "0.0");
	text_copy(s.traps[0].count, sizeof s.traps[0].count, "0");
	text_copy(s.traps[1].week, sizeof s.traps[1].week, "-");
	text_copy(s.traps[1].count, sizeof s.traps[1].count, "-");
	text_copy(s.traps[1].nights, sizeof s.traps[1].nights, "");
	char *text = sheets_print(&s, sheets_form(PAPER_A4, false));

	assert_non_null(strstr(text, zero));
	assert_non_null(strstr(text, unread));
	free(text);
	free(s.traps);
}

static void sheet_blank_has_boxes_two_lines_high_and_no_counts(void **state)
{
	struct sheet s = sheets_with(1);

	(void)state;
	text_copy(s.traps[0].service, sizeof s.traps[0].service, "lure 3 d late");
	char *text = sheets_print(&s, sheets_form(PAPER_A4, true));

	assert_int_equal(lines_count(text, "[        ] [    ] [    ]"), 2);
	assert_non_null(strstr(text, "\n to do: lure 3 d late "));
	assert_null(strstr(text, "3 c"));
	assert_null(strstr(text, "3.0"));
	assert_non_null(strstr(text, "\n under >=5; CM 1 mg\n"));
	free(text);
	free(s.traps);
}

static void sheet_lists_blocks_with_what_they_say(void **state)
{
	struct sheet s = sheets_with(4);
	struct sheet_block block = { .name = "Quarry Rows",
		.pest = "CM",
		.mean = "4.0",
		.highest = "17.0",
		.read = "3 of 4",
		.rule = ">=5",
		.verdict = "under",
		.says = "3 of 4 traps read" };

	(void)state;
	s.blocks = &block;
	s.n_blocks = 1;
	char *text = sheets_print(&s, sheets_form(PAPER_A4, false));
	assert_non_null(
		strstr(text, "Quarry Rows CM    4.0    17.0 3 of 4 >=5  under    "
			     "3 of 4 traps read\n"));
	free(text);
	text_copy(block.says, sizeof block.says,
		"lure was 14 d overdue, 3 of 4 traps read");
	text = sheets_print(&s, sheets_form(PAPER_A4, false));
	assert_non_null(strstr(text, "Quarry Rows CM    4.0    17.0 3 of 4 >=5  under\n"
				     "    lure was 14 d overdue, 3 of 4 traps read\n"));
	free(text);
	free(s.traps);
}

static void sheet_repeats_what_is_due_at_a_trap_named_above(void **state)
{
	struct sheet s = sheets_with(2);

	(void)state;
	s.traps[1].needs_attention = true;
	text_copy(s.traps[1].says, sizeof s.traps[1].says, "not read for 15 nights");
	text_copy(s.traps[1].service, sizeof s.traps[1].service, "card 5 d late");
	char *text = sheets_print(&s, sheets_form(PAPER_A4, false));
	const char *all = strstr(text, "All traps in driving order");

	assert_non_null(all);
	assert_non_null(strstr(all, "lure CM 1 mg, season 9; card 5 d late\n"));
	assert_null(strstr(all, "not read for 15 nights"));
	free(text);
	free(s.traps);
}

static void sheet_does_not_double_words(void **state)
{
	static const struct {
		const char *why, *says, *service, *want;
	} row[] = {
		{ "missing", "trap missing", "missing", "\n    trap missing\n" },
		{ "not hung", "not hung", "not hung", "\n    not hung\n" },
		{ "two things", "trap missing", "lure due",
			"\n    trap missing; lure due\n" },
		{ "no words", "", "missing", "\n    missing\n" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct sheet s = sheets_with(1);
		struct sheet_trap *t = &s.traps[0];

		t->needs_attention = true;
		text_copy(t->says, sizeof t->says, row[i].says);
		text_copy(t->service, sizeof t->service, row[i].service);
		char *text = sheets_print(&s, sheets_form(PAPER_A4, false));
		if (!strstr(text, row[i].want))
			fail_msg("%s:\n%s", row[i].why, text);
		free(text);
		free(s.traps);
	}
}

static void sheet_names_block_means_needing_attention(void **state)
{
	static const struct {
		const char *why;
		struct sheet_block block;
		const char *want;
	} row[] = {
		{ "a mean over its threshold",
			{ "Low Row", "OFM", "7.0", "9.0", "2 of 2", ">=5", "OVER",
				"lure was 7 d overdue", true, true },
			"\nmean Low Row     OFM     7.0 >=5  OVER\n"
			"    traps read: 2 of 2, highest 9.0; lure was 7 d overdue\n" },
		{ "an unknown mean",
			{ "Low Row", "OFM", "-", "-", "0 of 2", ">=5", "unknown",
				"none of 2 traps read", true, false },
			"\nmean Low Row     OFM       - >=5  unknown\n"
			"    traps read: 0 of 2; none of 2 traps read\n" },
		{ "a mean beside a trap that is worse",
			{ "Low Row", "OFM", "7.0", "9.0", "2 of 3", "", "OVER",
				"trap 4: >=3", true, true },
			"\nmean Low Row     OFM     7.0      over or unknown\n"
			"    traps read: 2 of 3, highest 9.0; trap 4: >=3\n" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct sheet s = sheets_with(1);
		struct sheet_block block = row[i].block;

		s.blocks = &block;
		s.n_blocks = 1;
		char *text = sheets_print(&s, sheets_form(PAPER_A4, false));
		const char *need = strstr(text, row[i].want);
		if (!need || need > strstr(text, "All traps in driving order"))
			fail_msg("%s:\n%s", row[i].why, text);
		free(text);
		free(s.traps);
	}
}

static void sheet_names_no_block_mean_that_is_fine(void **state)
{
	struct sheet s = sheets_with(1);
	struct sheet_block block = { "Low Row", "OFM", "2.0", "3.0", "2 of 2", ">=5",
		"under", "", false, false };

	(void)state;
	s.blocks = &block;
	s.n_blocks = 1;
	char *text = sheets_print(&s, sheets_form(PAPER_A4, false));
	assert_null(strstr(text, "\nmean"));
	assert_non_null(strstr(text, "Needing attention\n    none\n"));
	free(text);
	free(s.traps);
}

/* A week says nothing of a season: the line stands there whatever this week was. */
static void sheet_has_a_line_for_each_hot_block(void **state)
{
	static struct hot_line lines[2] = {
		{ .text = "Quarry Rows, CM: clear hot spot, 4.5 times the rest" },
		{ .text = "Low Row, OFM: watch, all moths of like traps were here" },
	};
	struct sheet s = sheets_with(1);

	(void)state;
	s.hot = (struct hot_lines){ lines, 2, 2 };
	char *text = sheets_print(&s, sheets_form(PAPER_A4, false));
	assert_non_null(strstr(text,
		"Needing attention\n"
		"This season: Quarry Rows, CM: clear hot spot, 4.5 times the rest\n"
		"This season: Low Row, OFM: watch, all moths of like traps were here\n"
		"\nAll traps in driving order\n"));
	free(text);
	free(s.traps);
}

static void sheet_totals_tell_how_far_the_run_is(void **state)
{
	static const struct {
		const char *why;
		size_t n;
		int visited, counted;
		int32_t moths;
		const char *totals, *bring;
	} row[] = {
		{ "nobody has been there", 3, 0, 0, 0,
			"Totals: the run has not begun.\nAs of the last",
			"Bring on the next run: " },
		{ "under way", 3, 2, 2, 7,
			"Totals: 2 of 3 traps counted so far, 7 moths.\nAs of",
			"Still to bring: " },
		{ "one moth so far", 3, 1, 1, 1,
			"Totals: 1 of 3 traps counted so far, 1 moth.\nAs of",
			"Still to bring: " },
		{ "none could be read so far", 3, 2, 0, 0,
			"Totals: 0 of 3 traps counted so far.\nAs of",
			"Still to bring: " },
		{ "all visited, one not counted", 3, 3, 2, 0,
			"Totals: 2 of 3 traps counted, 0 moths.\nAs of",
			"Bring on the next run: " },
		{ "one trap", 1, 1, 1, 2,
			"Totals: 1 of 1 trap counted, 2 moths.\nAs of",
			"Bring on the next run: " },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct sheet s = sheets_with(row[i].n);

		s.visited = row[i].visited;
		s.counted = row[i].counted;
		s.moths = row[i].moths;
		char *text = sheets_print(&s, sheets_form(PAPER_A4, false));
		if (!strstr(text, row[i].totals) || !strstr(text, row[i].bring))
			fail_msg("%s:\n%s", row[i].why, text);
		free(text);
		free(s.traps);
	}
}

static void sheet_totals_of_verdicts_name_their_day_and_kind(void **state)
{
	struct sheet s = sheets_with(1);

	(void)state;
	s.over = 3;
	s.unknown = 1;
	char *text = sheets_print(&s, sheets_form(PAPER_A4, false));
	assert_non_null(strstr(text,
		"\nAs of the last readings: 3 OVER, 1 unknown, traps and block means together.\n"));
	free(text);
	free(s.traps);
}

static void sheet_explains_its_words_at_the_foot(void **state)
{
	static const char *const words[] = { "0 none counted", "season: moths",
		"block: judged", "? in doubt", "b border", "week: moths per trap" };
	struct sheet s = sheets_with(1);
	char *text = sheets_print(&s, sheets_form(PAPER_A4, false));
	const char *foot = strstr(text, "0 none counted");

	(void)state;
	assert_non_null(foot);
	for (size_t i = 0; i < sizeof words / sizeof *words; i++)
		if (!strstr(foot, words[i]))
			fail_msg("no \"%s\" in\n%s", words[i], foot);
	free(text);
	free(s.traps);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(sheet_names_traps_needing_attention_first_in_words),
		cmocka_unit_test(sheet_says_so_when_nothing_needs_attention),
		cmocka_unit_test(sheet_tells_zero_from_not_read),
		cmocka_unit_test(sheet_blank_has_boxes_two_lines_high_and_no_counts),
		cmocka_unit_test(sheet_lists_blocks_with_what_they_say),
		cmocka_unit_test(sheet_repeats_what_is_due_at_a_trap_named_above),
		cmocka_unit_test(sheet_does_not_double_words),
		cmocka_unit_test(sheet_names_block_means_needing_attention),
		cmocka_unit_test(sheet_names_no_block_mean_that_is_fine),
		cmocka_unit_test(sheet_has_a_line_for_each_hot_block),
		cmocka_unit_test(sheet_totals_tell_how_far_the_run_is),
		cmocka_unit_test(sheet_totals_of_verdicts_name_their_day_and_kind),
		cmocka_unit_test(sheet_explains_its_words_at_the_foot),
	};

	return cmocka_run_group_tests(tests, lines_setup, NULL);
}
