#include "screen/canvas.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static void expect_dump(const char *why, struct canvas *c, bool inks, const char *want)
{
	struct buf got = { 0 };

	canvas_dump(c, inks, &got);
	if (strcmp(got.text, want) != 0)
		fail_msg("%s: got\n%s\nwanted\n%s", why, got.text, want);
	buf_free(&got);
}

static void canvas_text_clips_and_pads(void **state)
{
	static const struct {
		const char *why;
		int row, col, width;
		const char *text, *want;
		int end;
	} row[] = {
		{ "as it is", 0, 1, 0, "moths", " moths\n\n", 6 },
		{ "the right edge cuts", 1, 6, 0, "moths", "\n      mo\n", 8 },
		{ "a field cuts", 0, 0, 3, "moths", "mot\n\n", 3 },
		{ "a field pads over what was there", 0, 0, 8, "x", "x\n\n", 8 },
		{ "set to the right", 0, 0, -6, "12", "    12\n\n", 6 },
		{ "to the right, too long: the start stays", 0, 0, -3, "moths",
			"mot\n\n", 3 },
		{ "left of the canvas", 0, -2, 0, "moths", "ths\n\n", 3 },
		{ "above the canvas", -1, 0, 5, "moths", "\n\n", 5 },
		{ "below the canvas", 2, 0, 0, "moths", "\n\n", 5 },
		{ "right of the canvas", 0, 9, 4, "moths", "\n\n", 13 },
		{ "right of the canvas, no field", 0, 9, 0, "moths", "\n\n", 9 },
		{ "nothing", 0, 3, 0, "", "\n\n", 3 },
		{ "control bytes show as ?", 0, 0, 0, "a\x1b[m\n\x7f", "a?[m??\n\n",
			6 },
		{ "C1 control shows as ?", 0, 0, 0, "a\xc2\x9b", "a?\n\n", 2 },
		{ "torn UTF-8 shows as ?", 0, 0, 0, "a\xc3", "a?\n\n", 2 },
		{ "double width counts two", 0, 0, 4, "\u6843\u6843x",
			"\u6843\u6843\n\n", 4 },
		{ "no half of a double-width one", 0, 0, 3, "\u6843\u6843",
			"\u6843\n\n", 3 },
		{ "nor at the right edge", 0, 7, 0, "\u6843", "\n\n", 7 },
		{ "nor at the right edge, in a field", 0, 7, 3, "\u6843", "\n\n", 10 },
		{ "nor at the left edge", 0, -1, 0, "\u6843x", " x\n\n", 2 },
		{ "combining takes no room", 0, 0, 2, "e\u0301x", "e\u0301x\n\n", 2 },
		{ "two combining fit, a third goes", 0, 0, 0, "e\u0301\u0302\u0303x",
			"e\u0301\u0302x\n\n", 2 },
		{ "combining alone goes", 0, 0, 0, "\u0301x", "x\n\n", 1 },
		{ "combining at a full field stays", 0, 0, 1, "e\u0301", "e\u0301\n\n",
			1 },
		{ "marks of direction go", 0, 0, 0, "a\u202eb\u200dc", "abc\n\n", 3 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct canvas c = { 0 };

		canvas_size(&c, 2, 8);
		if (row[i].width == 8)
			canvas_text(&c, 0, 0, 0, INK_PLAIN, "########");
		int end = canvas_text(&c, row[i].row, row[i].col, row[i].width,
			INK_PLAIN, row[i].text);
		expect_dump(row[i].why, &c, false, row[i].want);
		if (end != row[i].end)
			fail_msg("%s: ends at %d, not %d", row[i].why, end, row[i].end);
		canvas_free(&c);
	}
}

static void canvas_text_leaves_no_half_of_what_it_covers(void **state)
{
	static const struct {
		const char *why;
		int col;
		const char *text, *want;
	} row[] = {
		{ "the left half is covered", 1, "x", " x \u6843z\n" },
		{ "the right half is covered", 2, "x", "  x\u6843z\n" },
		{ "both halves are covered", 1, "xy", " xy\u6843z\n" },
		{ "between two", 2, "\u7530", "  \u7530 z\n" },
		{ "exactly over one", 3, "\u7530", " \u6843\u7530z\n" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct canvas c = { 0 };

		canvas_size(&c, 1, 6);
		canvas_text(&c, 0, 1, 0, INK_PLAIN, "\u6843\u6843z");
		canvas_text(&c, 0, row[i].col, 0, INK_PLAIN, row[i].text);
		expect_dump(row[i].why, &c, false, row[i].want);
		canvas_free(&c);
	}
}

static void canvas_dump_shows_each_ink(void **state)
{
	struct canvas c = { 0 };

	(void)state;
	canvas_size(&c, 2, 9);
	for (int ink = 0; ink < INK_COUNT; ink++)
		canvas_textf(&c, 0, ink, 1, (enum ink)ink, "%d", ink);
	canvas_text(&c, 1, 0, -4, INK_OVER, "7");
	expect_dump("inks", &c, true, "01234567\n   7\n---------\n tpfouq!\noooo\n");
	canvas_free(&c);
}

static void canvas_textf_takes_any_length(void **state)
{
	struct canvas c = { 0 };
	char text[600];

	(void)state;
	memset(text, 'm', sizeof text - 1);
	text[sizeof text - 1] = '\0';
	canvas_size(&c, 1, 700);
	assert_int_equal(canvas_textf(&c, 0, 0, 0, INK_PLAIN, "%s|%d", text, 7), 601);
	canvas_free(&c);
}

static void canvas_line_spans_the_row(void **state)
{
	struct canvas c = { 0 };

	(void)state;
	canvas_size(&c, 2, 3);
	canvas_line(&c, 1);
	canvas_line(&c, 2);
	expect_dump("a line", &c, true, "\n\u2500\u2500\u2500\n---\n\nqqq\n");
	canvas_free(&c);
}

static void canvas_cursor_stays_on_the_canvas(void **state)
{
	struct canvas c = { 0 };

	(void)state;
	canvas_size(&c, 3, 4);
	assert_false(c.cursor_shown);
	canvas_cursor(&c, 2, 3);
	assert_int_equal(c.cursor_row * 10 + c.cursor_col, 23);
	canvas_cursor(&c, 3, 4);
	assert_int_equal(c.cursor_row * 10 + c.cursor_col, 23);
	canvas_cursor(&c, -1, -1);
	assert_int_equal(c.cursor_row * 10 + c.cursor_col, 0);
	assert_true(c.cursor_shown);
	canvas_clear(&c);
	assert_false(c.cursor_shown);
	canvas_free(&c);
	canvas_free(&c);
}

static void canvas_size_takes_any_size(void **state)
{
	struct canvas c = { 0 };

	(void)state;
	for (int rows = -1; rows <= 5; rows++)
		for (int cols = -1; cols <= 12; cols++) {
			canvas_size(&c, rows, cols);
			canvas_text(&c, 0, 0, 0, INK_OVER, "\u6843 e\u0301 moths");
			canvas_text(&c, 1, cols / 2, 7, INK_OVER, "\u6843\u6843");
			canvas_text(&c, 1, cols / 2 - 1, -5, INK_PICKED, "\u6843");
			canvas_line(&c, rows - 1);
			canvas_cursor(&c, rows, cols);
			assert_int_equal(c.rows, rows < 1 ? 1 : rows);
			assert_int_equal(c.cols, cols < 1 ? 1 : cols);
		}
	canvas_free(&c);
}

static void canvas_ascii_keeps_what_is_read(void **state)
{
	static const struct {
		const char *why;
		uint32_t ch, want;
	} row[] = {
		{ "a letter", 'a', 'a' },
		{ "the last ASCII character", '~', '~' },
		{ "delete", 0x7F, '?' },
		{ "the lowest block", 0x2581, '1' },
		{ "the highest block", 0x2588, '8' },
		{ "below the blocks", 0x2580, '?' },
		{ "above the blocks", 0x2589, '?' },
		{ "a line", 0x2500, '-' },
		{ "a vertical line", 0x2502, '|' },
		{ "a corner", 0x250C, '+' },
		{ "the middle dot", 0xB7, '.' },
		{ "a thin blank", 0x2009, ' ' },
		{ "a dash", 0x2013, '-' },
		{ "a letter with an accent", 0xE9, '?' },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		if (canvas_ascii(row[i].ch) != row[i].want)
			fail_msg("%s: %#x", row[i].why,
				(unsigned)canvas_ascii(row[i].ch));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(canvas_text_clips_and_pads),
		cmocka_unit_test(canvas_text_leaves_no_half_of_what_it_covers),
		cmocka_unit_test(canvas_dump_shows_each_ink),
		cmocka_unit_test(canvas_textf_takes_any_length),
		cmocka_unit_test(canvas_line_spans_the_row),
		cmocka_unit_test(canvas_cursor_stays_on_the_canvas),
		cmocka_unit_test(canvas_size_takes_any_size),
		cmocka_unit_test(canvas_ascii_keeps_what_is_read),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
