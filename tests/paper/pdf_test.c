#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/day.h"
#include "lines.h"
#include "paper/pdf_lines.h"
#include "readers.h"

static const struct pdf_type plain = { .points = 10 };

static struct buf make(void (*draw)(struct pdf *p, const void *what), const void *what)
{
	struct pdf_job job = { .title = "Quillet", .author = "QX", .draw = draw };
	struct buf out = { 0 };
	struct err e = { 0 };

	job.what = what;
	job.day = day_from_ymd(2026, 7, 21);
	if (!pdf_make(&job, &out, &e))
		fail_msg("%s", e.text);
	return out;
}

static void needs(const char *reader)
{
	if (!pdf_built_in() || !readers_have(reader))
		skip();
}

static void draw_text(struct pdf *p, const void *what)
{
	pdf_begin_page(p);
	pdf_text(p, (struct pdf_box){ 20, 20, 170, 0 }, &plain, what);
}

static void pdf_is_the_same_bytes_for_the_same_day(void **state)
{
	struct buf one, two;

	(void)state;
	needs("true");
	one = make(draw_text, "Quarry Rows");
	two = make(draw_text, "Quarry Rows");
	assert_int_equal(one.n, two.n);
	assert_memory_equal(one.text, two.text, one.n);
	buf_free(&one);
	buf_free(&two);
}

static void pdf_tells_title_author_and_the_day_given(void **state)
{
	static const char *const wanted[] = { "Title:           Quillet\n",
		"Author:          QX\n", "Tue Jul 21 12:00:00 2026 UTC\n",
		"595.276 x 841.89 pts (A4)" };

	(void)state;
	needs("pdfinfo");
	struct buf pdf = make(draw_text, "Quarry Rows");
	char *said = readers_say(&pdf, "TZ=UTC pdfinfo \"$PDF\" 2>&1");
	for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++)
		if (!strstr(said, wanted[i]))
			fail_msg("no %s in %s", wanted[i], said);
	free(said);
	buf_free(&pdf);
}

static void pdf_sets_what_must_not_be_seen_as_question_marks(void **state)
{
	static const struct {
		const char *why, *text, *want;
	} row[] = {
		{ "plain", "Quarry Rows", "Quarry Rows\n" },
		{ "accents", "G\u00fcldener \u0141an", "G\u00fcldener \u0141an\n" },
		{ "an escape", "a\033[2Jb", "a?[2Jb\n" },
		{ "a new line", "a\nb", "a?b\n" },
		{ "a torn character", "a\xe2\x82", "a??\n" },
		{ "a turn to the left", "a\u202eb", "a?b\n" },
		{ "blanks", "row 3 of 5", "row 3 of 5\n" },
		{ "letters that could be joined", "flight office", "flight office\n" },
	};

	(void)state;
	needs("pdftotext");
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct buf pdf = make(draw_text, row[i].text);
		char *said = readers_say(&pdf, "pdftotext \"$PDF\" - 2>&1");

		if (strncmp(said, row[i].want, strlen(row[i].want)) != 0)
			fail_msg("%s: %s", row[i].why, said);
		free(said);
		buf_free(&pdf);
	}
}

static const char long_text[] = "a sentence that is a good deal longer than the box "
				"which it is to be set into, so that it must break";

static bool is_about(double a, double b)
{
	return a - b < 0.01 && b - a < 0.01;
}

static void draw_fits(struct pdf *p, const void *what)
{
	const struct pdf_type cut = { .points = 10, .fit = PDF_CUT };
	const struct pdf_type shrunk = { .points = 10, .fit = PDF_SHRINK };
	const struct pdf_box box = { 20, 20, 40, 0 };
	double line = pdf_text_height(p, 40, &plain, "x");

	(void)what;
	pdf_begin_page(p);
	double all = pdf_text(p, box, &plain, long_text);
	assert_true(all > 4 * line);
	assert_true(is_about(all, pdf_text_height(p, 40, &plain, long_text)));
	double two = pdf_text(
		p, (struct pdf_box){ 20, 80, 40, 2.5 * line }, &plain, long_text);
	assert_true(is_about(two, 2 * line));
	assert_true(is_about(pdf_text(p, box, &cut, long_text), line));
	double small = pdf_text(p, box, &shrunk, long_text);
	assert_true(small < line && small > 0.45 * line);
	assert_true(is_about(pdf_text(p, box, &plain, ""), 0));
	assert_true(pdf_text_width(p, &plain, long_text) > 100);
}

static void pdf_breaks_cuts_and_shrinks_text_to_its_box(void **state)
{
	(void)state;
	needs("true");
	struct buf pdf = make(draw_fits, NULL);
	buf_free(&pdf);
}

static void draw_parts(struct pdf *p, const void *what)
{
	static const int pages[] = { 1, 3 };

	(void)what;
	for (size_t i = 0; i < sizeof pages / sizeof *pages; i++) {
		pdf_begin_part(p);
		for (int k = 0; k < pages[i]; k++) {
			pdf_begin_page(p);
			pdf_text(p, (struct pdf_box){ 20, 20, 170, 0 }, &plain,
				pdf_page_words(p));
		}
	}
}

static void pdf_counts_the_pages_of_each_part(void **state)
{
	(void)state;
	needs("pdftotext");
	struct buf pdf = make(draw_parts, NULL);
	char *said = readers_say(&pdf, "pdftotext \"$PDF\" - | tr -d '\\f'");
	assert_string_equal(said, "page 1 of 1\n\npage 1 of 3\n\npage 2 of 3\n\n"
				  "page 3 of 3\n\n");
	free(said);
	buf_free(&pdf);
}

enum { FILLS = 6, FILL_MM = 20 };

static void draw_fills(struct pdf *p, const void *what)
{
	(void)what;
	pdf_begin_page(p);
	for (int i = 0; i < FILLS; i++)
		pdf_fill(p, (struct pdf_box){ FILL_MM * i, FILL_MM, FILL_MM, FILL_MM },
			(enum pdf_fill)i);
}

/* Hundredths of the i-th area that are black when all from mid grey on is. */
static int black_part(const unsigned char *pixels, int cols, int i)
{
	int black = 0;

	for (int y = FILL_MM * 4; y < FILL_MM * 8; y++)
		for (int x = FILL_MM * 4 * i; x < FILL_MM * 4 * (i + 1); x++)
			black += pixels[y * cols + x] < 128;
	return black * 100 / (FILL_MM * FILL_MM * 16);
}

/* At 101.6 dots an inch a millimetre is four dots. */
static void pdf_fills_with_what_a_hard_photocopy_keeps(void **state)
{
	static const struct {
		const char *why;
		int least, most; /* hundredths */
	} want[FILLS] = {
		[PDF_BLACK] = { "black is black", 100, 100 },
		[PDF_WHITE] = { "white is white", 0, 0 },
		[PDF_TINT] = { "a tint may vanish", 0, 0 },
		[PDF_HATCHED] = { "hatches stay apart", 5, 50 },
		[PDF_CROSSED] = { "crossed ones too", 10, 70 },
		[PDF_SPOTTED] = { "dots too", 2, 40 },
	};
	int cols = 0, rows = 0, at = 0;

	(void)state;
	needs("pdftoppm");
	struct buf pdf = make(draw_fills, NULL);
	char *said = readers_say(&pdf,
		"pdftoppm -gray -r 101.6 -singlefile \"$PDF\" \"$PDF\" && "
		"cat \"$PDF\".pgm && rm \"$PDF\".pgm");
	assert_int_equal(sscanf(said, "P5 %d %d 255%n", &cols, &rows, &at), 2);
	assert_true(rows > FILL_MM * 8 && cols >= FILL_MM * FILLS * 4);
	for (int i = 0; i < FILLS; i++) {
		int part = black_part((unsigned char *)said + at + 1, cols, i);

		if (part < want[i].least || part > want[i].most)
			fail_msg("%s: %d in 100", want[i].why, part);
	}
	free(said);
	buf_free(&pdf);
}

static void draw_everything(struct pdf *p, const void *what)
{
	static const struct pdf_at round[] = { { 20, 150 }, { 60, 150 }, { 40, 190 } };

	(void)what;
	pdf_begin_page(p);
	pdf_clip(p, (struct pdf_box){ 20, 20, 150, 200 });
	for (int i = PDF_SOLID; i <= PDF_DASH_DOT; i++)
		pdf_line(p, (struct pdf_at){ 0, 20 + i },
			(struct pdf_at){ 210, 60 + i },
			&(struct pdf_pen){ 0.3, (enum pdf_dash)i, 0 });
	for (int i = PDF_DOT; i <= PDF_TIMES; i++)
		pdf_put_mark(
			p, (struct pdf_at){ 20 + 10 * i, 100 }, (enum pdf_mark)i, 3);
	pdf_area(p, round, 3, PDF_HATCHED);
	pdf_lines(p, round, 3, &(struct pdf_pen){ .width = 0.5 });
	pdf_lines(p, round, 1, &(struct pdf_pen){ .width = 0.5 });
	pdf_area(p, round, 2, PDF_BLACK);
	pdf_frame(p, (struct pdf_box){ 100, 150, 20, 20 },
		&(struct pdf_pen){ .width = 0.2 });
	pdf_text_upward(p, (struct pdf_box){ 25, 110, 10, 60 }, &plain, "moths a week");
	pdf_unclip(p);
}

/* Ghostscript's bounding box: 20 mm are 56.7 points. */
static void pdf_draws_within_what_it_is_clipped_to(void **state)
{
	double x1, y1, x2, y2;

	(void)state;
	needs("gs");
	struct buf pdf = make(draw_everything, NULL);
	char *said = readers_say(&pdf, "gs -q -dNOPAUSE -dBATCH -dSAFER -sDEVICE=bbox "
				       "\"$PDF\" 2>&1 | grep HiRes");
	assert_int_equal(sscanf(said, "%%%%HiResBoundingBox: %lf %lf %lf %lf", &x1, &y1,
				 &x2, &y2),
		4);
	assert_true(x1 >= 56.6 && x2 <= 170 * 72 / 25.4 + 0.1);
	assert_true(y1 >= 297 * 72 / 25.4 - 220 * 72 / 25.4 - 0.1);
	assert_null(strstr(said, "FAILED"));
	free(said);
	said = readers_say(&pdf, "pdftotext \"$PDF\" -");
	assert_non_null(strstr(said, "moths a week"));
	free(said);
	buf_free(&pdf);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(pdf_is_the_same_bytes_for_the_same_day),
		cmocka_unit_test(pdf_tells_title_author_and_the_day_given),
		cmocka_unit_test(pdf_sets_what_must_not_be_seen_as_question_marks),
		cmocka_unit_test(pdf_breaks_cuts_and_shrinks_text_to_its_box),
		cmocka_unit_test(pdf_counts_the_pages_of_each_part),
		cmocka_unit_test(pdf_fills_with_what_a_hard_photocopy_keeps),
		cmocka_unit_test(pdf_draws_within_what_it_is_clipped_to),
	};
	return cmocka_run_group_tests(tests, lines_setup, NULL);
}
