#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/mem.h"
#include "lines.h"
#include "paper/sheet.h"

#include <stdio.h>

static const char *const cautions[] = { "First caution of the test.",
	"Second caution of the test.", NULL };

static struct sheet_form form_of(enum paper paper, bool blank)
{
	return (struct sheet_form){ paper, blank, true, "Short caution of the test.",
		cautions };
}

/* n traps T001.. in driving order; of each the last words are "end of T001". */
static struct sheet sheet_with(size_t n)
{
	struct sheet s = { .farm = "Quillet Farm",
		.day = "Tue 21 July 2026 \u00b7 week 30",
		.scout = "QX",
		.last_run = "last run Tue 14 Jul, 7 nights",
		.bring = "2 lures CM 1 mg",
		.counted = (int)n,
		.moths = 3 * (int32_t)n };

	s.traps = mem_new(n, sizeof *s.traps);
	s.n = n;
	for (size_t i = 0; i < n; i++) {
		struct sheet_trap *t = &s.traps[i];

		*t = (struct sheet_trap){ .block = "Quarry Rows",
			.pest = "CM",
			.lure = "CM 1 mg",
			.last = { "2", "0", "-", "4" },
			.count = "3 c",
			.week = "3.0",
			.nights = "7",
			.rule = ">=5",
			.verdict = "under",
			.total = "9" };
		snprintf(t->label, sizeof t->label, "T%03d", (int)i + 1);
		snprintf(t->says, sizeof t->says, "end of %s", t->label);
		snprintf(t->service, sizeof t->service, "end of %s", t->label);
	}
	return s;
}

static char *print(const struct sheet *s, struct sheet_form form)
{
	struct buf out = { 0 };

	paper_sheet(s, &form, &out);
	return out.text;
}

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
			struct sheet s = sheet_with(traps[k]);
			char *text = print(&s, form_of(forms[f].paper, forms[f].blank));

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
		struct sheet s = sheet_with(150);
		char *text = print(&s, form_of(forms[f].paper, forms[f].blank));

		check_traps(forms[f].why, text, s.n);
		free(text);
		free(s.traps);
	}
}

static size_t traps_on_first_page(size_t n, size_t form)
{
	struct sheet s = sheet_with(n);
	char *text = print(&s, form_of(forms[form].paper, forms[form].blank));
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
		struct sheet s = sheet_with(60);
		char *text = print(&s, form_of(forms[f].paper, forms[f].blank));
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
		struct sheet s = sheet_with(60);
		char *text = print(&s, form_of(forms[f].paper, forms[f].blank));
		char *last = lines_page(text, lines_count(text, "\f"));

		for (size_t i = 0; cautions[i]; i++) {
			assert_non_null(strstr(last, cautions[i]));
			assert_int_equal(lines_count(text, cautions[i]), 1);
		}
		free(last);
		free(text);
		free(s.traps);
	}
}

static void sheet_names_traps_needing_attention_first_and_once_in_words(void **state)
{
	struct sheet s = sheet_with(3);

	(void)state;
	s.traps[1].needs_attention = true;
	snprintf(s.traps[1].says, sizeof s.traps[1].says, "not read for 15 nights");
	snprintf(s.traps[1].service, sizeof s.traps[1].service, "lure 3 d over");
	char *text = print(&s, form_of(PAPER_A4, false));
	const char *need = strstr(text, "\nT002 Quarry Rows CM");
	const char *all = strstr(text, "All traps in driving order");

	assert_non_null(need);
	assert_non_null(all);
	assert_true(need < all);
	assert_int_equal(lines_count(text, "not read for 15 nights; lure 3 d over"), 1);
	assert_true(strstr(text, "not read for 15 nights") < all);
	free(text);
	free(s.traps);
}

static void sheet_says_so_when_no_trap_needs_attention(void **state)
{
	struct sheet s = sheet_with(3);
	char *text = print(&s, form_of(PAPER_A4, false));

	(void)state;
	assert_non_null(strstr(text, "Traps needing attention\n    none\n"));
	free(text);
	free(s.traps);
}

static void sheet_tells_zero_from_not_read(void **state)
{
	static const char zero[] = "T001 Quarry Rows CM     2   0   -   4 0        0.0 "
				   "     7 >=5  under\n";
	static const char unread[] = "T002 Quarry Rows CM     2   0   -   4 -          "
				     "-        >=5  under\n";
	struct sheet s = sheet_with(2);

	(void)state;
	snprintf(s.traps[0].week, sizeof s.traps[0].week, "0.0");
	snprintf(s.traps[0].count, sizeof s.traps[0].count, "0");
	snprintf(s.traps[1].week, sizeof s.traps[1].week, "-");
	snprintf(s.traps[1].count, sizeof s.traps[1].count, "-");
	snprintf(s.traps[1].nights, sizeof s.traps[1].nights, "%s", "");
	char *text = print(&s, form_of(PAPER_A4, false));

	assert_non_null(strstr(text, zero));
	assert_non_null(strstr(text, unread));
	free(text);
	free(s.traps);
}

static void sheet_blank_has_boxes_two_lines_high_and_no_counts(void **state)
{
	struct sheet s = sheet_with(1);

	(void)state;
	snprintf(s.traps[0].service, sizeof s.traps[0].service, "lure 3 d over");
	char *text = print(&s, form_of(PAPER_A4, true));

	assert_int_equal(lines_count(text, "[        ] [    ] [    ]"), 2);
	assert_non_null(strstr(text, "due: lure 3 d over"));
	assert_null(strstr(text, "3 c"));
	assert_null(strstr(text, "3.0"));
	assert_null(strstr(text, "under"));
	free(text);
	free(s.traps);
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
			struct sheet s = sheet_with(2);
			struct sheet_trap *t = &s.traps[0];

			snprintf(t->label, sizeof t->label, "%s", names[i]);
			snprintf(t->block, sizeof t->block, "%s", names[i]);
			snprintf(t->lure, sizeof t->lure, "%s", names[i]);
			snprintf(t->service, sizeof t->service, "%s", names[i]);
			snprintf(s.bring, sizeof s.bring, "%s", names[i]);
			snprintf(t->last[0], sizeof t->last[0], "1234.5+");
			snprintf(t->verdict, sizeof t->verdict,
				"no threshold at all set");
			char *text = print(&s, form_of(forms[f].paper, forms[f].blank));
			if (lines_widest(text) > SHEET_COLS)
				fail_msg("%s, %s: %d columns", forms[f].why, names[i],
					lines_widest(text));
			assert_null(strpbrk(text, "\a\x1b\t\r"));
			assert_true(text_valid(text, strlen(text), NULL));
			free(text);
			free(s.traps);
		}
}

static void sheet_is_ascii_when_asked(void **state)
{
	struct sheet s = sheet_with(30);
	struct sheet_form form = form_of(PAPER_LETTER, false);

	(void)state;
	form.utf8 = false;
	char *text = print(&s, form);
	for (const char *p = text; *p; p++)
		assert_true((unsigned char)*p < 0x80);
	check_pages("in ASCII", text, SHEET_LINES_LETTER);
	free(text);
	free(s.traps);
}

static void sheet_lists_blocks_totals_and_what_to_bring(void **state)
{
	struct sheet s = sheet_with(4);
	struct sheet_block block = { .name = "Quarry Rows",
		.pest = "CM",
		.mean = "4.0",
		.highest = "17.0",
		.read = "3 of 4",
		.rule = ">=5",
		.verdict = "under" };

	(void)state;
	s.blocks = &block;
	s.n_blocks = 1;
	s.over = 1;
	char *text = print(&s, form_of(PAPER_A4, false));
	assert_non_null(
		strstr(text, "Quarry Rows CM    4.0    17.0 3 of 4 >=5  under"));
	assert_non_null(strstr(text, "Totals of this run: 4 of 4 traps counted, 12 "
				     "moths; 1 OVER, 0 unknown"));
	assert_non_null(strstr(text, "Bring on the next run: 2 lures CM 1 mg"));
	free(text);
	free(s.traps);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(sheet_pages_are_whole_with_heading_and_foot),
		cmocka_unit_test(sheet_never_splits_a_trap_and_keeps_driving_order),
		cmocka_unit_test(sheet_breaks_after_exactly_a_full_page),
		cmocka_unit_test(sheet_repeats_the_titles_where_a_table_goes_on),
		cmocka_unit_test(sheet_has_all_cautions_on_the_last_page_only),
		cmocka_unit_test(
			sheet_names_traps_needing_attention_first_and_once_in_words),
		cmocka_unit_test(sheet_says_so_when_no_trap_needs_attention),
		cmocka_unit_test(sheet_tells_zero_from_not_read),
		cmocka_unit_test(sheet_blank_has_boxes_two_lines_high_and_no_counts),
		cmocka_unit_test(sheet_keeps_its_width_with_any_names),
		cmocka_unit_test(sheet_is_ascii_when_asked),
		cmocka_unit_test(sheet_lists_blocks_totals_and_what_to_bring),
	};

	return cmocka_run_group_tests(tests, lines_setup, NULL);
}
