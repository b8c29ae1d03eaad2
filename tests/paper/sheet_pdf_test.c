#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/day.h"
#include "lines.h"
#include "paper/pdf.h"
#include "readers.h"
#include "sheets.h"

enum { MANY = 150 };

static struct buf set_pdf(const struct sheet *s, size_t n, struct sheet_form form)
{
	struct sheet_set set = { .items = s, .n = n, .day = day_from_ymd(2026, 7, 21) };
	struct buf out = { 0 };
	struct err e = { 0 };

	if (!paper_sheets_pdf(&set, &form, &out, &e))
		fail_msg("%s", e.text);
	return out;
}

static char *read_pdf(const struct sheet *s, struct sheet_form form, const char *line)
{
	struct buf pdf = set_pdf(s, 1, form);
	char *said = readers_say(&pdf, line);

	buf_free(&pdf);
	return said;
}

static void needs(const char *reader)
{
	if (!pdf_built_in() || !readers_have(reader))
		skip();
}

/* Each trap with a count and a week that no other has. */
static struct sheet sheet_of_many(void)
{
	struct sheet s = sheets_with(MANY);

	for (size_t i = 0; i < s.n; i++) {
		snprintf(s.traps[i].count, sizeof s.traps[i].count, "%d c",
			1000 + 7 * (int)i);
		snprintf(s.traps[i].week, sizeof s.traps[i].week, "%d.5", 300 + (int)i);
		snprintf(s.traps[i].last[3], sizeof s.traps[i].last[3], "%d",
			500 + (int)i);
	}
	return s;
}

static void expect_in_line(const char *line, const char *label, const char *what)
{
	if (!strstr(line, what))
		fail_msg("%s: no %s in \"%s\"", label, what, line);
}

/* poppler lays the text out as it stands on the page; Ghostscript does by itself. */
static const char *const layouts[] = {
	"pdftotext -layout \"$PDF\" - 2>&1",
	"gs -q -dNOPAUSE -dBATCH -dSAFER -sDEVICE=txtwrite -sOutputFile=- \"$PDF\" 2>&1"
};

static void sheet_pdf_holds_every_trap_and_count_for_two_readers(void **state)
{
	char line[512];

	(void)state;
	needs("gs");
	needs("pdftotext");
	struct sheet s = sheet_of_many();
	for (size_t k = 0; k < sizeof layouts / sizeof *layouts; k++) {
		char *said = read_pdf(&s, sheets_form(PAPER_A4, false), layouts[k]);

		for (size_t i = 0; i < s.n; i++) {
			const struct sheet_trap *t = &s.traps[i];

			readers_line(said, t->label, line, sizeof line);
			expect_in_line(line, t->label, t->count);
			expect_in_line(line, t->label, t->week);
			expect_in_line(line, t->label, t->last[3]);
		}
		free(said);
	}
	free(s.traps);
}

static void sheet_pdf_to_carry_holds_every_trap_and_no_count(void **state)
{
	(void)state;
	needs("pdftotext");
	struct sheet s = sheet_of_many();
	char *said = read_pdf(&s, sheets_form(PAPER_LETTER, true), layouts[0]);
	for (size_t i = 0; i < s.n; i++) {
		const struct sheet_trap *t = &s.traps[i];

		assert_non_null(strstr(said, t->label));
		assert_non_null(strstr(said, t->last[3]));
		assert_null(strstr(said, t->count));
	}
	free(said);
	free(s.traps);
}

static void sheet_pdf_is_of_the_paper_asked_for(void **state)
{
	static const struct {
		enum paper paper;
		const char *want;
	} row[] = {
		{ PAPER_A4, "595.276 x 841.89 pts (A4)" },
		{ PAPER_LETTER, "612 x 792 pts (letter)" },
	};

	(void)state;
	needs("pdfinfo");
	struct sheet s = sheets_with(20);
	for (size_t i = 0; i < 4; i++) {
		char *said = read_pdf(&s, sheets_form(row[i / 2].paper, i % 2 == 0),
			"pdfinfo \"$PDF\" 2>&1");

		if (!strstr(said, row[i / 2].want))
			fail_msg("no %s in %s", row[i / 2].want, said);
		free(said);
	}
	free(s.traps);
}

static void sheet_pdf_has_heading_titles_and_number_on_each_page(void **state)
{
	char number[32];

	(void)state;
	needs("pdftotext");
	struct sheet s = sheet_of_many();
	for (int blank = 0; blank < 2; blank++) {
		char *said =
			read_pdf(&s, sheets_form(PAPER_A4, blank != 0), layouts[0]);
		int pages = (int)lines_count(said, "\f");

		assert_in_range(pages, 4, 15);
		for (int i = 0; i < pages; i++) {
			char *page = lines_page(said, (size_t)i);

			snprintf(number, sizeof number, "page %d of %d", i + 1, pages);
			assert_non_null(strstr(page, number));
			assert_non_null(strstr(page, "Quillet Farm"));
			assert_non_null(strstr(page, "Short caution of the test."));
			if (strstr(page, "T0"))
				assert_non_null(strstr(page, "last four"));
			free(page);
		}
		free(said);
	}
	free(s.traps);
}

static void sheet_pdf_of_two_farms_counts_the_pages_of_each(void **state)
{
	(void)state;
	needs("pdftotext");
	struct sheet both[2] = { sheets_with(2), sheets_with(3) };
	struct buf pdf = set_pdf(both, 2, sheets_form(PAPER_A4, true));
	char *said = readers_say(&pdf, layouts[0]);
	assert_int_equal(lines_count(said, "page 1 of 1"), 2);
	free(said);
	buf_free(&pdf);
	free(both[0].traps);
	free(both[1].traps);
}

static void sheet_pdf_is_the_same_bytes_for_the_same_answers(void **state)
{
	(void)state;
	needs("true");
	struct sheet s = sheets_with(30);
	struct buf one = set_pdf(&s, 1, sheets_form(PAPER_A4, false));
	struct buf two = set_pdf(&s, 1, sheets_form(PAPER_A4, false));
	assert_int_equal(one.n, two.n);
	assert_memory_equal(one.text, two.text, one.n);
	buf_free(&one);
	buf_free(&two);
	free(s.traps);
}

static void sheet_pdf_carries_its_fonts(void **state)
{
	(void)state;
	needs("pdffonts");
	struct sheet s = sheets_with(3);
	char *said = read_pdf(&s, sheets_form(PAPER_A4, false),
		"pdffonts \"$PDF\" | awk 'NR > 2 { print $(NF - 4) }' | sort -u");
	assert_string_equal(said, "yes\n");
	free(said);
	free(s.traps);
}

/* Whatever stands outside is cut off by a printer: 12 mm are 34 points, 18 are 51. */
static void expect_within_margins(char *said)
{
	static const char word[] = "%%HiResBoundingBox:";
	size_t n = 0;

	for (const char *at = said; (at = strstr(at, word)); at++, n++) {
		double x1, y1, x2, y2;

		assert_int_equal(sscanf(at + sizeof word - 1, "%lf %lf %lf %lf", &x1,
					 &y1, &x2, &y2),
			4);
		if (x1 < 50.5 || x2 > 595.276 - 33.5 || y1 < 27 || y2 > 841.89 - 33)
			fail_msg("page %d: %g %g %g %g", (int)n + 1, x1, y1, x2, y2);
	}
	assert_true(n > 0);
}

static const char *const hostile[] = {
	"\033[2J\007bell",
	"na\xefve torn",
	"\u202eeman a",
	"\u05d7\u05dc\u05e7\u05ea \u05d4\u05d0\u05d2\u05e1",
	"\u5317\u306e\u679c\u6a39\u5712\u306e\u6771\u5074\u306e\u7b2c\u4e09\u533a",
	"Wideawake Wednesday Wagonwheel Windbreak Weir W",
	"wwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwww",
	"<b>&amp;%s%n</b>",
};

static struct sheet hostile_sheet(void)
{
	size_t n = sizeof hostile / sizeof *hostile;
	struct sheet s = sheets_with(n);

	for (size_t i = 0; i < n; i++) {
		struct sheet_trap *t = &s.traps[i];

		text_copy(t->label, sizeof t->label, hostile[i]);
		text_copy(t->block, sizeof t->block, hostile[(i + 1) % n]);
		text_copy(t->lure, sizeof t->lure, hostile[(i + 2) % n]);
		text_copy(t->barred, sizeof t->barred, hostile[(i + 3) % n]);
		text_copy(t->pest, sizeof t->pest, "WWWWWWWW");
		text_copy(t->rule, sizeof t->rule, ">=9999.99 total");
		t->lure_due = t->card_due = t->is_over = t->needs_attention = true;
		t->is_border = t->is_disrupted = true;
		for (int k = 0; k < RUN_LAST; k++)
			text_copy(t->last[k], sizeof t->last[k], "9999+");
	}
	text_copy(s.farm, sizeof s.farm, hostile[5]);
	return s;
}

static void sheet_pdf_stays_within_its_margins(void **state)
{
	static const char line[] =
		"gs -q -dNOPAUSE -dBATCH -dSAFER -sDEVICE=bbox \"$PDF\" 2>&1";

	(void)state;
	needs("gs");
	struct sheet many = sheet_of_many(), odd = hostile_sheet();
	const struct sheet *sheets[] = { &many, &odd };
	for (size_t i = 0; i < 4; i++) {
		char *said = read_pdf(
			sheets[i / 2], sheets_form(PAPER_A4, i % 2 == 0), line);

		assert_null(strstr(said, "FAILED"));
		expect_within_margins(said);
		free(said);
	}
	free(many.traps);
	free(odd.traps);
}

static void sheet_pdf_sets_names_of_any_script(void **state)
{
	static const char *const wanted[] = { "?[2J?bell", "na?ve torn", "?eman a",
		"Wideawake Wed", "www", "<b>&amp;%s%n</b>" };

	(void)state;
	needs("pdftotext");
	struct sheet s = hostile_sheet();
	for (int blank = 0; blank < 2; blank++) {
		char *said = read_pdf(
			&s, sheets_form(PAPER_A4, blank != 0), "pdftotext \"$PDF\" -");

		for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++)
			if (!strstr(said, wanted[i]))
				fail_msg("no %s in %s", wanted[i], said);
		assert_null(strstr(said, "\033"));
		free(said);
	}
	free(s.traps);
}

static void sheet_pdf_has_the_whole_of_a_long_name(void **state)
{
	(void)state;
	needs("pdftotext");
	struct sheet s = sheets_with(3);
	text_copy(s.traps[1].block, sizeof s.traps[1].block,
		"Quarry Rows beyond the second windbreak, east");
	for (int blank = 0; blank < 2; blank++) {
		char *said = read_pdf(&s, sheets_form(PAPER_A4, blank != 0),
			"pdftotext \"$PDF\" - | tr '\\n' ' '");

		assert_non_null(strstr(said, "east"));
		assert_null(strstr(said, "\u2026"));
		free(said);
	}
	free(s.traps);
}

/* What stands on either sheet, said once and in the same words. */
static void sheet_pdf_says_what_bars_and_what_is_due(void **state)
{
	static const char *const wanted[] = { "Entry and picks",
		"Quarry Rows: no entry until Wed 22 Jul 06:00",
		"The label is the law, says the test.", "no entry till Wed 06:00",
		"lure 3 d late", "OVER", "Needing attention",
		"This season: Quarry Rows, CM: clear hot spot",
		"Bring on the next run: 2 lures CM 1 mg", "First caution of the test.",
		"Second caution of the test.", "Quarry Rows OFM" };
	struct block_clock clock = { .tone = TONE_OVER,
		.text = "Quarry Rows: no entry until Wed 22 Jul 06:00" };
	struct hot_line hot = { .text = "Quarry Rows, CM: clear hot spot" };
	struct sheet_block block = { .name = "Quarry Rows",
		.pest = "OFM",
		.mean = "4.0",
		.read = "3 of 4",
		.rule = ">=3",
		.verdict = "OVER",
		.needs_attention = true,
		.is_over = true };

	(void)state;
	needs("pdftotext");
	struct sheet s = sheets_with(3);
	s.visited = 0;
	s.blocks = &block;
	s.n_blocks = 1;
	s.clocks = (struct block_clocks){ &clock, 1, 1,
		"The label is the law, says the test." };
	s.hot = (struct hot_lines){ &hot, 1, 1 };
	text_copy(
		s.traps[1].barred, sizeof s.traps[1].barred, "no entry till Wed 06:00");
	text_copy(s.traps[1].service, sizeof s.traps[1].service, "lure 3 d late");
	text_copy(s.traps[1].verdict, sizeof s.traps[1].verdict, "OVER");
	s.traps[1].is_over = s.traps[1].needs_attention = s.traps[1].lure_due = true;
	for (int blank = 0; blank < 2; blank++) {
		char *said = read_pdf(&s, sheets_form(PAPER_A4, blank != 0),
			"pdftotext -layout \"$PDF\" - | tr -s ' '");

		for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++)
			if (!strstr(said, wanted[i]))
				fail_msg("no %s in %s", wanted[i], said);
		free(said);
	}
	free(s.traps);
}

static void sheet_pdf_marks_the_lure_and_card_that_are_due(void **state)
{
	(void)state;
	needs("pdftotext");
	struct sheet s = sheets_with(4);
	s.traps[0].lure_due = s.traps[2].lure_due = s.traps[2].card_due = true;
	char *said = read_pdf(
		&s, sheets_form(PAPER_A4, true), "pdftotext -layout \"$PDF\" -");
	assert_int_equal(lines_count(said, " due"), 3);
	free(said);
	free(s.traps);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(sheet_pdf_holds_every_trap_and_count_for_two_readers),
		cmocka_unit_test(sheet_pdf_to_carry_holds_every_trap_and_no_count),
		cmocka_unit_test(sheet_pdf_is_of_the_paper_asked_for),
		cmocka_unit_test(sheet_pdf_has_heading_titles_and_number_on_each_page),
		cmocka_unit_test(sheet_pdf_of_two_farms_counts_the_pages_of_each),
		cmocka_unit_test(sheet_pdf_is_the_same_bytes_for_the_same_answers),
		cmocka_unit_test(sheet_pdf_carries_its_fonts),
		cmocka_unit_test(sheet_pdf_stays_within_its_margins),
		cmocka_unit_test(sheet_pdf_sets_names_of_any_script),
		cmocka_unit_test(sheet_pdf_has_the_whole_of_a_long_name),
		cmocka_unit_test(sheet_pdf_says_what_bars_and_what_is_due),
		cmocka_unit_test(sheet_pdf_marks_the_lure_and_card_that_are_due),
	};
	return cmocka_run_group_tests(tests, lines_setup, NULL);
}
