#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "lines.h"
#include "paper/record.h"

static const char *const says[] = { "What it is of.", "Others ask for more.", NULL };
static const char *const cautions[] = { "Caution of the test.", NULL };

static struct record_form form(int cols)
{
	return (struct record_form){
		.cols = cols, .utf8 = true, .says = says, .cautions = cautions
	};
}

static struct record_row row_of(const struct treatment *t, const char *farm)
{
	struct record_row r = { .treatment = t,
		.block = "Quarry Rows",
		.crop = "pear",
		.when = "Thu 20 August 2026, 09:30 to 10:30",
		.area = "4.2 ha, border only",
		.missing = "certificate number",
		.entry = "no entry until Thu 20 Aug 22:30",
		.pick = "earliest pick Thu 3 Sep (14 days after 20 Aug)" };

	text_copy(r.farm, sizeof r.farm, farm);
	return r;
}

static void a_record_tells_each_treatment_under_its_farm(void **state)
{
	static const char want[] =
		"Record of treatments, 1 Jan 2026 to 31 Dec 2026\n\n"
		"Otterlea\n"
		"  Thu 20 August 2026, 09:30 to 10:30: Quarry Rows (pear), all pests\n"
		"    product Brackwater oil; registration number 00-000; 12.5 l in "
		"all; area\n"
		"    4.2 ha, border only\n"
		"    applicator J. Quill\n"
		"    by itself: no entry until Thu 20 Aug 22:30; earliest pick Thu 3 Sep "
		"(14\n"
		"    days after 20 Aug)\n"
		"    not entered: certificate number\n"
		"    note: wind from the west\n"
		"    corrected 21 Aug 07:42 JR: note was empty, is wind from the west\n\n"
		"  What it is of.\n"
		"  Others ask for more.\n\n"
		"Cautions\n"
		"  Caution of the test.\n";
	struct treatment t = { .product = "Brackwater oil",
		.registration = "00-000",
		.amount = "12.5",
		.amount_unit = "l",
		.applicator = "J. Quill",
		.note = "wind from the west" };
	char line[1][SAY_LINE * 2] = {
		"21 Aug 07:42 JR: note was empty, is wind from the west"
	};
	struct record_row row = row_of(&t, "Otterlea");
	row.corrected.lines = line;
	row.corrected.n = 1;
	struct record r = {
		.title = "1 Jan 2026 to 31 Dec 2026", .rows = &row, .n = 1
	};
	struct record_form f = form(78);
	struct buf out = { 0 };

	(void)state;
	paper_record(&r, &f, &out);
	assert_string_equal(out.text, want);
	buf_free(&out);
}

static void a_treatment_that_is_only_answered_says_so_below_its_day(void **state)
{
	struct treatment t = { 0 };
	struct record_row row = row_of(&t, "Otterlea");
	struct record r = { .title = "all", .rows = &row, .n = 1 };
	struct record_form f = form(78);
	struct buf out = { 0 };

	(void)state;
	text_copy(row.answered, sizeof row.answered, "answered as treated");
	paper_record(&r, &f, &out);
	assert_non_null(strstr(out.text, "Quarry Rows (pear), all pests\n"
					 "    answered as treated\n"));
	buf_free(&out);
}

static void no_line_is_wider_than_asked_and_each_farm_is_named_once(void **state)
{
	static const int widths[] = { 40, 41, 78, 200 };
	struct treatment t = {
		.product = "Forty-seven bytes of a name is the longest one.",
		.note = "a note that goes on for longer than a narrow page has room"
	};
	struct record_row rows[] = { row_of(&t, "Otterlea"), row_of(&t, "Otterlea"),
		row_of(&t, "Quillet Farm") };
	struct record r = { .title = "all", .rows = rows, .n = 3 };

	(void)state;
	for (size_t i = 0; i < sizeof widths / sizeof *widths; i++) {
		struct record_form f = form(widths[i]);
		struct buf out = { 0 };
		paper_record(&r, &f, &out);
		if (lines_widest(out.text) > widths[i])
			fail_msg("%d columns, not %d", lines_widest(out.text),
				widths[i]);
		assert_int_equal(lines_count(out.text, "\nOtterlea\n"), 1);
		assert_int_equal(lines_count(out.text, "\nQuillet Farm\n"), 1);
		buf_free(&out);
	}
}

static void an_empty_record_says_so_and_keeps_its_cautions(void **state)
{
	struct record r = { .title = "1 Jan 2026 to 31 Dec 2026" };
	struct block_diary d = { .title = "Otterlea, Quarry Rows" };
	struct record_form f = form(78);
	struct buf out = { 0 };

	(void)state;
	paper_record(&r, &f, &out);
	assert_non_null(strstr(out.text, "no treatment was entered for this span"));
	assert_non_null(strstr(out.text, "Others ask for more."));
	assert_non_null(strstr(out.text, "Caution of the test."));
	buf_clear(&out);
	paper_block_diary(&d, &f, &out);
	assert_non_null(strstr(out.text, "nothing was entered for this span"));
	assert_non_null(strstr(out.text, "Caution of the test."));
	buf_free(&out);
}

static void a_block_diary_is_plain_where_utf8_does_not_show(void **state)
{
	static struct block_line lines[] = {
		{ .day_text = "Mon 29 Jun", .text = "CM: \u00b7_\u2588" },
		{ .day_text = "Wed 15 Jul", .text = "OVER CM, trap 1" },
	};
	struct block_diary d = { .title = "Otterlea \u00b7 Quarry Rows",
		.lines = lines,
		.n = 2,
		.says = "Told as they stand now." };
	struct record_form f = form(78);
	struct buf out = { 0 };

	(void)state;
	f.utf8 = false;
	paper_block_diary(&d, &f, &out);
	assert_non_null(strstr(out.text, "Season of a block, Otterlea . Quarry Rows"));
	assert_non_null(strstr(out.text, "  Mon 29 Jun  CM: ._8\n"));
	assert_non_null(strstr(out.text,
		"  Wed 15 Jul  OVER CM, trap 1\n\n  Told as they stand now.\n"));
	buf_free(&out);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_record_tells_each_treatment_under_its_farm),
		cmocka_unit_test(
			a_treatment_that_is_only_answered_says_so_below_its_day),
		cmocka_unit_test(
			no_line_is_wider_than_asked_and_each_farm_is_named_once),
		cmocka_unit_test(an_empty_record_says_so_and_keeps_its_cautions),
		cmocka_unit_test(a_block_diary_is_plain_where_utf8_does_not_show),
	};
	return cmocka_run_group_tests(tests, lines_setup, NULL);
}
