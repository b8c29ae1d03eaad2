#include "screen/page.h"

#include "screen/frame.h"
#include "screen/list.h"
#include "screen/reader.h"
#include "screen/samples.h"

static void page_scroll_keeps_the_picked_row_in_sight(void **state)
{
	static const struct {
		const char *why;
		size_t n;
		int rows;
		size_t picked, top, want_picked, want_top;
	} row[] = {
		{ "nothing moves in sight", 20, 5, 3, 1, 3, 1 },
		{ "the last row in sight", 20, 5, 5, 1, 5, 1 },
		{ "the first below", 20, 5, 6, 1, 6, 2 },
		{ "the first in sight", 20, 5, 1, 1, 1, 1 },
		{ "the first above", 20, 5, 0, 1, 0, 0 },
		{ "no blank rows at the end", 6, 5, 5, 4, 5, 1 },
		{ "all fit", 4, 5, 3, 2, 3, 0 },
		{ "picked beyond the end", 4, 2, 9, 0, 3, 2 },
		{ "none at all", 0, 5, 9, 9, 0, 0 },
		{ "no room counts as one row", 4, 0, 2, 0, 2, 2 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		size_t picked = row[i].picked, top = row[i].top;

		page_scroll(row[i].n, row[i].rows, &picked, &top);
		if (picked != row[i].want_picked || top != row[i].want_top)
			fail_msg("%s: picked %zu top %zu", row[i].why, picked, top);
	}
}

static void page_scroll_near_shows_what_stands_beside_the_picked_row(void **state)
{
	static const struct {
		const char *why;
		size_t n;
		int rows;
		size_t picked, top, want_top;
	} row[] = {
		{ "nothing moves in the middle", 20, 5, 3, 1, 1 },
		{ "the last but one in sight", 20, 5, 4, 1, 1 },
		{ "the last in sight", 20, 5, 5, 1, 2 },
		{ "far below", 20, 5, 12, 1, 9 },
		{ "the second in sight", 20, 5, 2, 1, 1 },
		{ "the first in sight", 20, 5, 1, 1, 0 },
		{ "the first of all", 20, 5, 0, 1, 0 },
		{ "the last of all", 20, 5, 19, 1, 15 },
		{ "three rows: the middle one", 20, 3, 7, 1, 6 },
		{ "two rows have no room for it", 20, 2, 7, 1, 6 },
		{ "all fit", 4, 5, 3, 0, 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		size_t picked = row[i].picked, top = row[i].top;

		page_scroll_near(row[i].n, row[i].rows, &picked, &top);
		if (picked != row[i].picked || top != row[i].want_top)
			fail_msg("%s: picked %zu top %zu", row[i].why, picked, top);
	}
}

static void reader_cut_keeps_whole_parts(void **state)
{
	static const struct {
		const char *why, *text;
		int cols;
		const char *want;
	} row[] = {
		{ "all fits", "lure 3 d late, card due", 23,
			"lure 3 d late, card due" },
		{ "one too few", "lure 3 d late, card due", 22, "lure 3 d late" },
		{ "just the first part", "lure 3 d late, card due", 14,
			"lure 3 d late" },
		{ "no comma at the end", "lure 3 d late, card due", 13,
			"lure 3 d late" },
		{ "not the first part: words", "lure 3 d late, card due", 12,
			"lure 3 d" },
		{ "two parts of three", "one, two, three", 9, "one, two" },
		{ "no commas", "not read for 15 nights", 14, "not read for" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		size_t got = reader_cut(row[i].text, row[i].cols);

		if (got != strlen(row[i].want) ||
			memcmp(row[i].text, row[i].want, got) != 0)
			fail_msg("%s: \"%.*s\"", row[i].why, (int)got, row[i].text);
	}
}

static void reader_wrap_cuts_at_blanks(void **state)
{
	static const struct {
		const char *why, *text;
		int cols;
		size_t want;
	} row[] = {
		{ "all fits", "one two", 7, 7 },
		{ "one too few", "one two", 6, 3 },
		{ "a blank just behind", "one two", 3, 3 },
		{ "a long word", "threshold", 4, 4 },
		{ "nothing", "", 4, 0 },
		{ "double-width characters", "\u6843\u6843\u6843", 5, 6 },
		{ "no room for one: one all the same", "\u6843\u6843", 1, 3 },
		{ "no room at all", "ab", -3, 1 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		size_t got = reader_wrap(row[i].text, row[i].cols);

		if (got != row[i].want)
			fail_msg("%s: %zu", row[i].why, got);
	}
	assert_int_equal(reader_lines("one two three", 7), 2);
	assert_int_equal(reader_lines("", 7), 1);
}

static void columns_drop_in_order_and_cut_no_number(void **state)
{
	static const struct list_column column[] = {
		{ "", .least = 4 },
		{ "", .least = 2, .drop = 2, .whole = COLUMN_NUMBER },
		{ "", .least = 3, .drop = 1 },
	};
	static const struct {
		const char *why;
		int room, width[3];
	} row[] = {
		{ "all as wide as wanted", 22, { 8, 6, 6 } },
		{ "the last shrinks first", 21, { 8, 6, 5 } },
		{ "then the first", 17, { 6, 6, 3 } },
		{ "the least of all", 15, { 4, 6, 3 } },
		{ "the first to drop", 14, { 7, 6, 0 } },
		{ "the number is whole", 11, { 4, 6, 0 } },
		{ "or goes", 10, { 8, 0, 0 } },
		{ "what stays, stays", 2, { 4, 0, 0 } },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct columns s = { .col = column, .n = 3, .want = { 8, 6, 6 } };

		columns_fit(&s, 1, row[i].room + 1);
		if (memcmp(s.width, row[i].width, sizeof row[i].width) != 0)
			fail_msg("%s: %d %d %d", row[i].why, s.width[0], s.width[1],
				s.width[2]);
		assert_int_equal(s.dropped, i > 0);
	}
}

static void message_set_cuts_between_characters(void **state)
{
	struct message m;
	char text[400];

	(void)state;
	sample_long(text, sizeof text, 1);
	message_set(&m, true, "%s", text);
	assert_true(m.is_fault);
	assert_int_equal(strlen(m.text), 255);
	assert_true(text_valid(m.text, strlen(m.text), NULL));
}

static const struct key_row some_keys[] = {
	{ { INPUT_CHAR, 0 }, { INPUT_NONE, 0 }, 1, "0-9", "count", "h" },
	{ { INPUT_ENTER, 0 }, { INPUT_CHAR, 'k' }, 2, "Enter", "keep", "h" },
	{ { INPUT_CHAR, 'x' }, { INPUT_NONE, 0 }, 3, "x", NULL, "h" },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, 4, "?", "keys", "h" },
};

static void keys_find_takes_digits_and_aliases(void **state)
{
	const struct key_rows keys = { some_keys, 4 };

	(void)state;
	assert_int_equal(keys_find(keys, sample_key('0')), 1);
	assert_int_equal(keys_find(keys, sample_key('9')), 1);
	assert_int_equal(keys_find(keys, sample_key('/')), 0);
	assert_int_equal(keys_find(keys, sample_key(':')), 0);
	assert_int_equal(keys_find(keys, sample_key('k')), 2);
	assert_int_equal(keys_find(keys, sample_key('\n')), 2);
	assert_int_equal(keys_find(keys, (struct input){ INPUT_NONE, 0 }), 0);
	assert_int_equal(keys_find(keys, (struct input){ INPUT_UP, 0 }), 0);
}

static void frame_leaves_room_in_between(void **state)
{
	static const struct {
		const char *why;
		int rows, cols, first, last;
		bool drawn;
	} row[] = {
		{ "the design size", 24, 80, 2, 20, true },
		{ "the least with rules", 10, 40, 2, 6, true },
		{ "without rules", 9, 40, 1, 6, true },
		{ "the least with a key line", 6, 40, 1, 3, true },
		{ "without it", 5, 40, 1, 3, true },
		{ "the least", 4, 20, 1, 2, true },
		{ "too low", 3, 20, 0, -1, false },
		{ "too narrow", 4, 19, 0, -1, false },
	};
	const struct message m = { false, "kept" };
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct frame f = { .title = "Run",
			.right = "Tue 21 Jul",
			.message = &m,
			.keys = { some_keys, 4 } };

		canvas_size(&c, row[i].rows, row[i].cols);
		bool drawn = frame_draw(&c, &f);
		if (drawn != row[i].drawn || f.first != row[i].first ||
			f.last != row[i].last)
			fail_msg("%s: %d to %d", row[i].why, f.first, f.last);
	}
	expect_shows("a sentence", &c, "The window is too");
	canvas_free(&c);
}

static void frame_cuts_a_title_between_its_parts(void **state)
{
	static const struct {
		const char *why, *title, *shown;
		bool keeps;
	} row[] = {
		{ "all of it fits", "Week  all farms, CM", " Week  all farms, CM  demo",
			false },
		{ "one letter too long: the day goes, not what is shown",
			"Week  all farms, CM1", " Week  all farms, CM1\n", false },
		{ "to the last column",
			"Spots  Lowest Orchards \u00b7 CM \u00b7 season 26",
			" Spots  Lowest Orchards \u00b7 CM \u00b7 season 26\n", false },
		{ "beyond it a part goes",
			"Spots  Lowest Orchards \u00b7 CM \u00b7 season 2026",
			" Spots  Lowest Orchards \u00b7 CM\n", false },
		{ "beside a right text that stays too", "Week  all farms, CM1",
			" Week  all farms      demo", true },
		{ "nothing between two parts stands alone",
			"Old Kiln \u00b7 trap 1 \u00b7 CM",
			" Old Kiln \u00b7 trap 1    demo", true },
		{ "a name alone is cut where it ends", "Run  Lowest Orchards",
			" Run  Lowest Orchard  demo", true },
	};
	struct canvas c = { 0 };

	(void)state;
	canvas_size(&c, 16, 40);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct frame f = { .title = row[i].title,
			.right = "demo 21 July 2026",
			.keeps_right = row[i].keeps,
			.keys = { some_keys, 4 } };

		frame_draw(&c, &f);
		expect_shows(row[i].why, &c, row[i].shown);
	}
	canvas_free(&c);
}

static void frame_wraps_a_long_message(void **state)
{
	const struct message m = { true, "NOT SAVED, Enter tries again: the disk is "
					 "full, so make some room first" };
	struct frame f = { .title = "Run", .message = &m, .keys = { some_keys, 4 } };
	struct canvas c = { 0 };

	(void)state;
	canvas_size(&c, 16, 40);
	frame_draw(&c, &f);
	assert_int_equal(f.last, 11);
	expect_shows("its end", &c,
		" NOT SAVED, Enter tries again: the disk\n is full, so make some room "
		"first\n");
	expect_shows("the key line", &c, "\n 0-9 count  Enter keep  ? keys\n");
	canvas_free(&c);
}

static void a_key_that_does_nothing_says_so(void **state)
{
	static const struct {
		const char *why;
		struct input in;
		const char *want;
	} row[] = {
		{ "a letter", { INPUT_CHAR, 'z' }, "z does nothing here" },
		{ "Delete", { INPUT_DELETE, 0 }, "Delete does nothing here" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct message m = { 0 };
		page_no_key(&m, row[i].in);
		if (!strstr(m.text, row[i].want))
			fail_msg("%s: \"%s\"", row[i].why, m.text);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(page_scroll_keeps_the_picked_row_in_sight),
		cmocka_unit_test(
			page_scroll_near_shows_what_stands_beside_the_picked_row),
		cmocka_unit_test(reader_cut_keeps_whole_parts),
		cmocka_unit_test(reader_wrap_cuts_at_blanks),
		cmocka_unit_test(columns_drop_in_order_and_cut_no_number),
		cmocka_unit_test(message_set_cuts_between_characters),
		cmocka_unit_test(keys_find_takes_digits_and_aliases),
		cmocka_unit_test(a_key_that_does_nothing_says_so),
		cmocka_unit_test(frame_leaves_room_in_between),
		cmocka_unit_test(frame_cuts_a_title_between_its_parts),
		cmocka_unit_test(frame_wraps_a_long_message),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
