#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../hot_points.h"
#include "lines.h"
#include "paper/pdf.h"
#include "readers.h"
#include "seasons.h"

#include <math.h>

enum { MANY = 20 };

static char *print(const struct season_page *p, int cols)
{
	const struct season_form form = seasons_form(PAPER_A4);
	struct buf out = { 0 };

	paper_season(p, &form, cols, &out);
	return out.text;
}

static void no_line_of_the_text_is_too_wide(void **state)
{
	static const int farms[] = { 0, 1, MANY };

	(void)state;
	for (size_t i = 0; i < sizeof farms / sizeof *farms; i++) {
		struct season_page p = seasons_with(farms[i]);
		for (int cols = 40; cols <= 100; cols++) {
			char *text = print(&p, cols);
			int most = cols < 78 ? cols : 78;
			if (lines_widest(text) > most)
				fail_msg("%d blocks: %d columns in %d:\n%s", farms[i],
					lines_widest(text), most, text);
			free(text);
		}
		seasons_free(&p);
	}
}

static void a_week_nobody_looked_at_is_no_zero(void **state)
{
	struct season_page p = seasons_with(1);
	char *text = print(&p, 78);

	(void)state;
	/* counted little, 2, 7, not read, a full card, 12, none, 1, 4, 9, 3, not
	 * read */
	assert_non_null(strstr(text,
		"2026   \u2581\u2581 \u2581\u2581 \u2582\u2582 \u00b7\u00b7 ++ "
		"\u2584\u2584 __ \u2581\u2581 \u2582\u2582 \u2583\u2583 "
		"\u2581\u2581 \u00b7\u00b7\n"));
	free(text);
	seasons_free(&p);
}

static void last_season_is_drawn_to_the_same_scale(void **state)
{
	struct season_page p = seasons_with(1);
	char *text = print(&p, 78);

	(void)state;
	/* half of each: 6 of 30 is 2 of 8 */
	assert_non_null(strstr(text,
		"2025   \u2581\u2581 \u2581\u2581 \u2581\u2581 \u00b7\u00b7 ++ "
		"\u2582\u2582 __"));
	free(text);
	seasons_free(&p);
}

static void an_answered_alert_stands_with_its_answer(void **state)
{
	struct season_page p = seasons_with(1);
	char *text = print(&p, 78);

	(void)state;
	assert_non_null(strstr(text, "  Tue 9 Jun trap 7: 30.0+ (>=5)\n"));
	assert_non_null(strstr(
		text, "trap 8: 12.0 (>=5): looked Wed 10 Jun: fruit clean; before"));
	free(text);
	seasons_free(&p);
}

static void a_farm_with_nothing_says_so_and_has_its_cautions(void **state)
{
	struct season_page p = seasons_with(0);
	char *text = print(&p, 78);

	(void)state;
	assert_non_null(strstr(text, "No trap was read."));
	assert_non_null(strstr(text, "Nothing was entered"));
	assert_non_null(strstr(text, "Second caution."));
	assert_non_null(strstr(text, "all of it invented"));
	free(text);
	seasons_free(&p);
}

static struct buf set_pdf(const struct season_page *p, enum paper paper)
{
	struct season_set set = { .items = p, .n = 1, .day = p->day };
	const struct season_form form = seasons_form(paper);
	struct buf out = { 0 };
	struct err e = { 0 };

	if (!paper_seasons_pdf(&set, &form, &out, &e))
		fail_msg("%s", e.text);
	return out;
}

static char *read_pdf(const struct season_page *p, enum paper paper, const char *line)
{
	struct buf pdf = set_pdf(p, paper);
	char *said = readers_say(&pdf, line);

	buf_free(&pdf);
	return said;
}

static void needs(const char *reader)
{
	if (!pdf_built_in() || !readers_have(reader))
		skip();
}

static const enum paper papers[] = { PAPER_A4, PAPER_LETTER };

static void each_long_name_stands_whole_in_the_pdf(void **state)
{
	struct season_page p = seasons_with(MANY);

	(void)state;
	needs("pdftotext");
	for (size_t i = 0; i < 2; i++) {
		char *said = read_pdf(&p, papers[i], "pdftotext -layout \"$PDF\" -");
		for (size_t k = 0; k < p.n_charts; k++)
			/* over its chart; at a glance it takes more lines */
			if (lines_count(said, p.charts[k].block_name) < 1)
				fail_msg(
					"%s is cut:\n%s", p.charts[k].block_name, said);
		assert_int_equal(lines_count(said, "30.0+ (>=5)"), MANY);
		assert_null(strstr(said, "\u2026"));
		free(said);
	}
	seasons_free(&p);
}

/* What the owner is given first: every block in its row, on one page. */
static void the_first_page_stands_alone(void **state)
{
	char name[24];

	(void)state;
	needs("pdftotext");
	for (size_t i = 0; i < 2; i++) {
		struct season_page p = seasons_with(MANY);
		seasons_name_briefly(&p);
		char *said = read_pdf(&p, papers[i], "pdftotext -layout \"$PDF\" -");
		char *first = lines_page(said, 0);
		for (int k = 0; k < MANY; k++) {
			snprintf(name, sizeof name, "Block %02d", k);
			assert_non_null(strstr(first, name));
		}
		assert_int_equal(lines_count(first, "30.0+, 2 Jun"), MANY);
		assert_int_equal(lines_count(first, "4 of 150"), MANY);
		assert_non_null(strstr(first, "5 May to 27 Jul"));
		assert_non_null(strstr(first, "Nothing to compare."));
		free(first);
		free(said);
		seasons_free(&p);
	}
}

static void an_owner_has_few_pages_to_turn(void **state)
{
	static const struct {
		int blocks, pages;
	} row[] = { { 1, 2 }, { 4, 3 }, { MANY, 9 } };

	(void)state;
	needs("pdftotext");
	for (size_t i = 0; i < 2 * sizeof row / sizeof *row; i++) {
		struct season_page p = seasons_with(row[i / 2].blocks);
		seasons_name_briefly(&p);
		char *said =
			read_pdf(&p, papers[i % 2], "pdftotext -layout \"$PDF\" -");
		int pages = (int)lines_count(said, "\f");
		if (pages > row[i / 2].pages)
			fail_msg("%d blocks: %d pages, not %d", row[i / 2].blocks,
				pages, row[i / 2].pages);
		free(said);
		seasons_free(&p);
	}
}

static void the_text_has_the_columns_of_the_first_page(void **state)
{
	struct season_page p = seasons_with(1);

	(void)state;
	seasons_name_briefly(&p);
	char *text = print(&p, 78);
	assert_non_null(strstr(text, "over open treated   damage\n"));
	if (!strstr(text, "90.0+, trap 7    2    1       3 4 of 150\n"))
		fail_msg("%s", text);
	assert_true(strstr(text, "What was done") < strstr(text, "Thresholds: "));
	free(text);
	seasons_free(&p);
}

static void the_same_page_gives_the_same_bytes(void **state)
{
	struct season_page p = seasons_with(3);

	(void)state;
	if (!pdf_built_in())
		skip();
	struct buf one = set_pdf(&p, PAPER_A4), two = set_pdf(&p, PAPER_A4);
	assert_int_equal(one.n, two.n);
	assert_memory_equal(one.text, two.text, one.n);
	buf_free(&one);
	buf_free(&two);
	seasons_free(&p);
}

/* Points from the foot and the left; the margins are 18, 12, 12 and 10 mm. */
static void expect_within_margins(const char *said, double w, double h)
{
	const char *line = said;
	double x1, y1, x2, y2;
	int pages = 0;

	while ((line = strstr(line, "%%HiResBoundingBox: "))) {
		line += strlen("%%HiResBoundingBox: ");
		assert_int_equal(
			sscanf(line, "%lf %lf %lf %lf", &x1, &y1, &x2, &y2), 4);
		if (x1 < 18 / 25.4 * 72 - 4 || x2 > w - 12 / 25.4 * 72 + 1 ||
			y1 < 10 / 25.4 * 72 - 4 || y2 > h - 12 / 25.4 * 72 + 1)
			fail_msg("page %d: %.0f %.0f %.0f %.0f", pages + 1, x1, y1, x2,
				y2);
		pages++;
	}
	assert_true(pages > 0);
}

static void nothing_lies_outside_the_margins(void **state)
{
	static const int farms[] = { 0, 1, MANY };
	static const char line[] =
		"gs -q -dNOPAUSE -dBATCH -dSAFER -sDEVICE=bbox \"$PDF\" 2>&1";

	(void)state;
	needs("gs");
	for (size_t i = 0; i < sizeof farms / sizeof *farms; i++) {
		struct season_page p = seasons_with(farms[i]);
		char *a4 = read_pdf(&p, PAPER_A4, line);
		char *letter = read_pdf(&p, PAPER_LETTER, line);
		expect_within_margins(a4, 595.3, 841.9);
		expect_within_margins(letter, 612, 792);
		free(a4);
		free(letter);
		seasons_free(&p);
	}
}

/* The middle of a word in mm from the upper left corner, as poppler sees it. */
static void find_word(const char *said, const char *word, double *x, double *y)
{
	char line[64];
	double x1, y1, x2, y2;
	const char *at = said;

	snprintf(line, sizeof line, ">%s</word>", word);
	at = strstr(said, line);
	if (!at)
		fail_msg("no \"%s\" in:\n%s", word, said);
	while (at > said && *at != '<')
		at--;
	assert_int_equal(sscanf(at,
				 "<word xMin=\"%lf\" yMin=\"%lf\" xMax=\"%lf\" "
				 "yMax=\"%lf\"",
				 &x1, &y1, &x2, &y2),
		4);
	*x = (x1 + x2) / 2 / 72 * 25.4;
	*y = (y1 + y2) / 2 / 72 * 25.4;
}

static struct hot_trap traps[] = {
	{ .label = "1", .has_position = true, .is_alike = true, .digit = 6 },
	{ .label = "2",
		.has_position = true,
		.is_alike = true,
		.digit = 8,
		.at = { 400, 300 } },
	{ .label = "3", .digit = 2, .is_alike = true },
};
static struct hot_source source = { .letter = 'A',
	.name = "Old Quarry",
	.kind = SOURCE_ABANDONED,
	.has_point = true,
	.at = { -100, 0 },
	.outline = { { -110, 0 }, { -90, 0 }, { -100, 20 } },
	.n_outline = 3 };

static struct season_page with_map(void)
{
	struct season_page p = seasons_with(1);
	static char letters[] = "A Old Quarry (abandoned)";
	struct hot_view *v = &p.pests[0].hot;

	v->traps = traps;
	v->n_traps = sizeof traps / sizeof *traps;
	v->sources = &source;
	v->n_sources = 1;
	v->letters = letters;
	hot_points_fill(v);
	return p;
}

static void a_map_names_its_sources(void **state)
{
	struct season_page p = with_map();

	(void)state;
	needs("pdftotext");
	char *said = read_pdf(&p, PAPER_A4, "pdftotext -layout \"$PDF\" -");
	assert_non_null(strstr(said, "north"));
	assert_non_null(strstr(said, "A Old Quarry (abandoned)"));
	free(said);
	seasons_free(&p);
}

/* 500 m between the traps, north upwards, and three of four parts of it eastwards. */
static void a_map_is_drawn_to_one_scale_both_ways(void **state)
{
	struct season_page p = with_map();
	double x1, y1, x2, y2, x3, y3;

	(void)state;
	needs("pdftotext");
	char *said = read_pdf(&p, PAPER_A4, "pdftotext -bbox \"$PDF\" -");
	find_word(said, "6", &x1, &y1);
	find_word(said, "8", &x2, &y2);
	find_word(said, "A", &x3, &y3);
	double mm_a_metre = (x2 - x1) / 400;
	assert_true(mm_a_metre > 0.05);
	assert_true(fabs((y1 - y2) / mm_a_metre - 300) < 3);
	assert_true(fabs((x1 - x3) / mm_a_metre - 100) < 3);
	free(said);
	seasons_free(&p);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(no_line_of_the_text_is_too_wide),
		cmocka_unit_test(a_week_nobody_looked_at_is_no_zero),
		cmocka_unit_test(last_season_is_drawn_to_the_same_scale),
		cmocka_unit_test(an_answered_alert_stands_with_its_answer),
		cmocka_unit_test(a_farm_with_nothing_says_so_and_has_its_cautions),
		cmocka_unit_test(each_long_name_stands_whole_in_the_pdf),
		cmocka_unit_test(the_first_page_stands_alone),
		cmocka_unit_test(an_owner_has_few_pages_to_turn),
		cmocka_unit_test(the_text_has_the_columns_of_the_first_page),
		cmocka_unit_test(the_same_page_gives_the_same_bytes),
		cmocka_unit_test(nothing_lies_outside_the_margins),
		cmocka_unit_test(a_map_names_its_sources),
		cmocka_unit_test(a_map_is_drawn_to_one_scale_both_ways),
	};
	return cmocka_run_group_tests(tests, lines_setup, NULL);
}
