#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "lines.h"
#include "sheets.h"

#include <stdio.h>

static void check_pages(const char *why, const char *text, int lines)
{
	size_t n = lines_count(text, "\f") + 1;
	char *page;

	for (size_t i = 0; (page = lines_page(text, i)); i++) {
		char number[32];

		snprintf(number, sizeof number, "page %d of %d", (int)i + 1, (int)n);
		if ((int)lines_count(page, "\n") != lines)
			fail_msg("%s, page %d: %d lines, not %d", why, (int)i + 1,
				(int)lines_count(page, "\n"), lines);
		if (!strstr(page, number) || !strstr(page, "Quillet Farm") ||
			!strstr(page, "Tue 21 July 2026"))
			fail_msg("%s: no heading with \"%s\"", why, number);
		if (!strstr(page, "Short caution of the test."))
			fail_msg(
				"%s, page %d: no caution at the foot", why, (int)i + 1);
		if (!strstr(page, "not read"))
			fail_msg("%s, page %d: - is not explained", why, (int)i + 1);
		free(page);
	}
	if (lines_widest(text) > SHEET_COLS)
		fail_msg("%s: a line of %d columns", why, lines_widest(text));
}

static const struct {
	const char *why;
	enum paper paper;
	bool blank;
	int lines;
} forms[] = {
	{ "filled on a4", PAPER_A4, false, SHEET_LINES_A4 },
	{ "filled on letter", PAPER_LETTER, false, SHEET_LINES_LETTER },
	{ "blank on a4", PAPER_A4, true, SHEET_LINES_A4 },
	{ "blank on letter", PAPER_LETTER, true, SHEET_LINES_LETTER },
};
enum { FORMS = sizeof forms / sizeof *forms };

static void sheet_pages_are_whole_with_heading_and_foot(void **state)
{
	static const size_t traps[] = { 0, 1, 2, 16, 17, 18, 40, 150 };

	(void)state;
	for (size_t f = 0; f < FORMS; f++)
		for (size_t k = 0; k < sizeof traps / sizeof *traps; k++) {
			struct sheet s = sheets_with(traps[k]);
			char *text = sheets_print(
				&s, sheets_form(forms[f].paper, forms[f].blank));

			check_pages(forms[f].why, text, forms[f].lines);
			free(text);
			free(s.traps);
		}
}

/* Every trap's first and last words stand on the same page, in driving order. */
static void check_traps(const char *why, const char *text, size_t n)
{
	const char *before = text;

	for (size_t i = 1; i <= n; i++) {
		char label[16], end[32];

		snprintf(label, sizeof label, "\nT%03d ", (int)i);
		snprintf(end, sizeof end, "end of T%03d", (int)i);
		const char *from = strstr(text, label);
		const char *to = from ? strstr(from, end) : NULL;
		if (!from || !to)
			fail_msg("%s: trap %d is not there whole", why, (int)i);
		if (from < before)
			fail_msg("%s: trap %d out of driving order", why, (int)i);
		if (memchr(from, '\f', (size_t)(to - from)))
			fail_msg("%s: trap %d is split between pages", why, (int)i);
		before = from;
	}
}

static void sheet_never_splits_a_trap_and_keeps_driving_order(void **state)
{
	(void)state;
	for (size_t f = 0; f < FORMS; f++) {
		struct sheet s = sheets_with(150);
		char *text =
			sheets_print(&s, sheets_form(forms[f].paper, forms[f].blank));

		check_traps(forms[f].why, text, s.n);
		free(text);
		free(s.traps);
	}
}

static size_t traps_on_first_page(size_t n, size_t form)
{
	struct sheet s = sheets_with(n);
	char *text =
		sheets_print(&s, sheets_form(forms[form].paper, forms[form].blank));
	char *page = lines_page(text, 0);
	size_t got = lines_count(page, "\nT0");

	free(page);
	free(text);
	free(s.traps);
	return got;
}

static void sheet_breaks_after_exactly_a_full_page(void **state)
{
	static const size_t full[FORMS] = { 24, 22, 12, 11 };

	(void)state;
	for (size_t f = 0; f < FORMS; f++) {
		size_t fits = traps_on_first_page(full[f], f);
		size_t more = traps_on_first_page(full[f] + 1, f);

		if (fits != full[f] || more != full[f])
			fail_msg("%s: of %d traps %d on the first page, of one more %d",
				forms[f].why, (int)full[f], (int)fits, (int)more);
	}
}

static void sheet_repeats_the_titles_where_a_table_goes_on(void **state)
{
	(void)state;
	for (size_t f = 0; f < FORMS; f++) {
		struct sheet s = sheets_with(60);
		char *text =
			sheets_print(&s, sheets_form(forms[f].paper, forms[f].blank));
		char *page = lines_page(text, 1);

		if (!page || !strstr(page, "\ntrap block"))
			fail_msg("%s: no titles on page 2", forms[f].why);
		free(page);
		free(text);
		free(s.traps);
	}
}

static void sheet_has_all_cautions_on_the_last_page_only(void **state)
{
	(void)state;
	for (size_t f = 0; f < FORMS; f++) {
		struct sheet s = sheets_with(60);
		char *text =
			sheets_print(&s, sheets_form(forms[f].paper, forms[f].blank));
		char *last = lines_page(text, lines_count(text, "\f"));

		for (size_t i = 0; sheets_cautions[i]; i++) {
			assert_non_null(strstr(last, sheets_cautions[i]));
			assert_int_equal(lines_count(text, sheets_cautions[i]), 1);
		}
		free(last);
		free(text);
		free(s.traps);
	}
}

static void sheet_keeps_its_width_with_any_names(void **state)
{
	static const char *const names[] = {
		"a name that fills all forty-seven bytes of it!!",
		"\u6881\u6881\u6881\u6881\u6881\u6881\u6881\u6881\u6881\u6881\u6881",
		"e\u0301e\u0301e\u0301e\u0301e\u0301e\u0301e\u0301e\u0301e\u0301",
		"bell\a and \x1b[2J and torn \xc3",
	};

	(void)state;
	for (size_t f = 0; f < FORMS; f++)
		for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
			struct sheet s = sheets_with(2);
			struct sheet_trap *t = &s.traps[0];

			snprintf(t->label, sizeof t->label, "%s", names[i]);
			snprintf(t->block, sizeof t->block, "%s", names[i]);
			snprintf(t->lure, sizeof t->lure, "%s", names[i]);
			snprintf(t->service, sizeof t->service, "%s", names[i]);
			snprintf(s.bring, sizeof s.bring, "%s", names[i]);
			snprintf(t->last[0], sizeof t->last[0], "1234.5+");
			snprintf(t->verdict, sizeof t->verdict,
				"no threshold at all set");
			char *text = sheets_print(
				&s, sheets_form(forms[f].paper, forms[f].blank));
			if (lines_widest(text) > SHEET_COLS)
				fail_msg("%s, %s: %d columns", forms[f].why, names[i],
					lines_widest(text));
			assert_null(strpbrk(text, "\a\x1b\t\r"));
			assert_true(text_valid(text, strlen(text), NULL));
			free(text);
			free(s.traps);
		}
}

/* What a column has no room for stands below the row. */
static void sheet_has_the_whole_of_a_long_name(void **state)
{
	static const char name[] = "Quarry Rows by the windbreak east";

	(void)state;
	for (size_t f = 0; f < FORMS; f++) {
		struct sheet s = sheets_with(2);

		snprintf(s.traps[1].block, sizeof s.traps[1].block, "%s", name);
		char *text =
			sheets_print(&s, sheets_form(forms[f].paper, forms[f].blank));
		if (!strstr(text, name))
			fail_msg("%s: %s", forms[f].why, text);
		free(text);
		free(s.traps);
	}
}

/* As the PDF to carry does. */
static void sheet_to_carry_tells_what_needs_attention(void **state)
{
	static const char *const wanted[] = { "Needing attention\n",
		"mean Upper Field OFM     4.0 >=3  OVER\n",
		"This season: Quarry Rows, CM: clear hot spot\n", "  2   0   -   4 ",
		"OVER >=5; CM 1 mg\n" };
	struct hot_line hot = { .text = "Quarry Rows, CM: clear hot spot" };
	struct sheet_block block = { .name = "Upper Field",
		.pest = "OFM",
		.mean = "4.0",
		.read = "3 of 4",
		.rule = ">=3",
		.verdict = "OVER",
		.needs_attention = true };
	struct sheet s = sheets_with(2);

	(void)state;
	snprintf(s.traps[0].verdict, sizeof s.traps[0].verdict, "OVER");
	char *text = sheets_print(&s, sheets_form(PAPER_A4, true));
	assert_null(strstr(text, "Needing attention"));
	free(text);
	s.blocks = &block;
	s.n_blocks = 1;
	s.hot = (struct hot_lines){ &hot, 1, 1 };
	text = sheets_print(&s, sheets_form(PAPER_A4, true));
	for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++)
		if (!strstr(text, wanted[i]))
			fail_msg("no %s in\n%s", wanted[i], text);
	free(text);
	free(s.traps);
}

static void sheet_without_a_trap_says_so(void **state)
{
	(void)state;
	for (size_t f = 0; f < FORMS; f++) {
		struct sheet s = sheets_with(0);
		char *text =
			sheets_print(&s, sheets_form(forms[f].paper, forms[f].blank));

		assert_non_null(strstr(text, "No trap hangs on this farm."));
		assert_null(strstr(text, "last four"));
		free(text);
		free(s.traps);
	}
}

static void sheet_is_ascii_when_asked(void **state)
{
	struct sheet s = sheets_with(30);
	struct sheet_form form = sheets_form(PAPER_LETTER, false);

	(void)state;
	form.utf8 = false;
	char *text = sheets_print(&s, form);
	for (const char *p = text; *p; p++)
		assert_true((unsigned char)*p < 0x80);
	check_pages("in ASCII", text, SHEET_LINES_LETTER);
	free(text);
	free(s.traps);
}

/* Wherever the table ends, the cautions stand with traps or with lines to write on,
 * and the lines shrink before a page is begun for them. */
static void sheet_makes_no_page_for_the_cautions_alone(void **state)
{
	(void)state;
	for (size_t f = 0; f < FORMS; f++)
		for (size_t n = 1; n <= 40; n++) {
			struct sheet s = sheets_with(n);
			char *text = sheets_print(
				&s, sheets_form(forms[f].paper, forms[f].blank));
			char *last = lines_page(text, lines_count(text, "\f"));

			if (!strstr(last, "\nT0") && !strstr(last, "\nNotes\n"))
				fail_msg("%s, %d traps: cautions alone on\n%s",
					forms[f].why, (int)n, last);
			if (forms[f].blank && !strstr(last, "\n______"))
				fail_msg("%s, %d traps: nowhere to write", forms[f].why,
					(int)n);
			free(last);
			free(text);
			free(s.traps);
		}
}

static void sheet_notes_shrink_to_stay_on_the_page(void **state)
{
	static const struct {
		const char *why;
		bool blank;
		size_t traps, pages, lines;
	} row[] = {
		{ "room for all", true, 6, 1, 6 },
		{ "the last that shrinks", true, 10, 1, 1 },
		{ "the first that does not fit", true, 11, 2, 6 },
		{ "filled, one line left", false, 18, 1, 1 },
		{ "filled, it does without", false, 20, 1, 0 },
		{ "filled, the first that does not fit", false, 21, 2, 6 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct sheet s = sheets_with(row[i].traps);
		char *text = sheets_print(&s, sheets_form(PAPER_A4, row[i].blank));
		size_t pages = lines_count(text, "\f") + 1;
		size_t lines = lines_count(text, "\n____________________________");

		if (pages != row[i].pages || lines != row[i].lines)
			fail_msg("%s: %d pages, %d lines", row[i].why, (int)pages,
				(int)lines);
		free(text);
		free(s.traps);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(sheet_pages_are_whole_with_heading_and_foot),
		cmocka_unit_test(sheet_never_splits_a_trap_and_keeps_driving_order),
		cmocka_unit_test(sheet_breaks_after_exactly_a_full_page),
		cmocka_unit_test(sheet_repeats_the_titles_where_a_table_goes_on),
		cmocka_unit_test(sheet_has_all_cautions_on_the_last_page_only),
		cmocka_unit_test(sheet_keeps_its_width_with_any_names),
		cmocka_unit_test(sheet_makes_no_page_for_the_cautions_alone),
		cmocka_unit_test(sheet_notes_shrink_to_stay_on_the_page),
		cmocka_unit_test(sheet_has_the_whole_of_a_long_name),
		cmocka_unit_test(sheet_to_carry_tells_what_needs_attention),
		cmocka_unit_test(sheet_without_a_trap_says_so),
		cmocka_unit_test(sheet_is_ascii_when_asked),
	};

	return cmocka_run_group_tests(tests, lines_setup, NULL);
}
