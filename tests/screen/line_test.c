#include "screen/line.h"

#include "screen/entry_samples.h"
#include "screen/narrow.h"

static struct message type(struct line *l, const char *keys)
{
	struct message m = { 0 };

	for (; *keys; keys++)
		line_key(l, entry_key_of(*keys), &m);
	return m;
}

static void line_key_edits_whole_characters(void **state)
{
	static const struct {
		const char *why, *text, *keys, *want;
		size_t at;
	} row[] = {
		{ "typed at the end", "ab", "c", "abc", 3 },
		{ "typed in the middle", "ab", "<c", "acb", 2 },
		{ "typed at the start", "ab", "{c", "cab", 1 },
		{ "Left at the start stays", "ab", "{<c", "cab", 1 },
		{ "Right at the end stays", "ab", ">c", "abc", 3 },
		{ "to the end again", "ab", "{}c", "abc", 3 },
		{ "Backspace", "abc", "<\b", "ac", 1 },
		{ "Backspace at the start", "abc", "{\b", "abc", 0 },
		{ "Delete", "abc", "{\x7f", "bc", 0 },
		{ "Delete at the end", "abc", "\x7f", "abc", 3 },
		{ "two bytes at once", "d\u00e9", "\b", "d", 1 },
		{ "three bytes at once", "\u6843\u6843", "<\b", "\u6843", 0 },
		{ "a combining mark goes with its letter", "de\u0301", "\b", "d", 1 },
		{ "the hand never stands between the two", "de\u0301", "<x",
			"dxe\u0301", 2 },
		{ "Delete takes both", "e\u0301d", "{\x7f", "d", 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char text[32];
		struct line l;

		SET(text, row[i].text);
		l = line_open(text, sizeof text, false);
		type(&l, row[i].keys);
		if (strcmp(text, row[i].want) != 0 || l.at != row[i].at)
			fail_msg("%s: \"%s\" at %zu", row[i].why, text, l.at);
	}
}

static void line_key_takes_no_more_than_fits(void **state)
{
	char text[5] = "";
	struct line l = line_open(text, sizeof text, false);
	struct message m = { 0 };

	(void)state;
	assert_string_equal(type(&l, "abcd").text, "");
	assert_string_equal(type(&l, "e").text, "No more fits here.");
	assert_string_equal(text, "abcd");
	type(&l, "\b");
	line_key(&l, (struct input){ INPUT_CHAR, 0xe9 }, &m);
	assert_true(m.is_fault);
	assert_string_equal(text, "abc");
}

static void line_key_takes_no_control_character(void **state)
{
	static const uint32_t bad[] = { 0x07, 0x1b, 0x7f, 0x9b, 0x202e, 0xfeff };
	char text[8] = "a";

	(void)state;
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		struct line l = line_open(text, sizeof text, false);
		struct message m = { 0 };

		assert_true(line_key(&l, (struct input){ INPUT_CHAR, bad[i] }, &m));
		assert_true(m.is_fault);
		assert_string_equal(text, "a");
	}
}

static void line_key_replaces_a_fresh_text(void **state)
{
	static const struct {
		const char *why, *keys, *want;
	} row[] = {
		{ "typing replaces it", "28", "28" },
		{ "Left edits it", "<8", "281" },
		{ "End edits it", "}8", "218" },
		{ "Backspace edits it", "\b8", "28" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char text[8] = "21";
		struct line l = line_open(text, sizeof text, true);

		type(&l, row[i].keys);
		if (strcmp(text, row[i].want) != 0)
			fail_msg("%s: \"%s\"", row[i].why, text);
	}
}

static void line_key_leaves_other_keys_to_the_page(void **state)
{
	static const enum input_kind kind[] = { INPUT_ENTER, INPUT_ESC, INPUT_UP,
		INPUT_DOWN, INPUT_TAB, INPUT_PAGE_UP, INPUT_PAGE_DOWN };
	char text[8] = "21";
	struct line l = line_open(text, sizeof text, true);
	struct message m = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof kind / sizeof *kind; i++)
		assert_false(line_key(&l, (struct input){ kind[i], 0 }, &m));
	assert_true(l.fresh);
}

static void line_draw_shows_the_part_round_the_cursor(void **state)
{
	static const struct {
		const char *why, *text;
		size_t at;
		int width;
		const char *want;
		int cursor;
	} row[] = {
		{ "all fits", "abc", 3, 6, "abc", 3 },
		{ "just fits", "abcde", 5, 6, "abcde", 5 },
		{ "the end of it", "abcdef", 6, 6, "<cdef", 5 },
		{ "the start of it", "abcdefgh", 0, 6, "abcde>", 0 },
		{ "the middle", "abcdefghij", 6, 6, "<cdef>", 5 },
		{ "wide ones are never halved", "\u6843\u6843\u6843\u6843", 12, 6,
			"<\u6843\u6843", 5 },
		{ "one column", "abc", 3, 1, "<", 0 },
		{ "two", "abc", 3, 2, "<", 1 },
	};
	struct canvas c = { 0 };
	struct buf got = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char text[32];
		struct line l;
		int cursor = 0;

		SET(text, row[i].text);
		l = line_open(text, sizeof text, false);
		l.at = row[i].at;
		canvas_size(&c, 1, 20);
		cursor = line_draw(
			&l, &c, (struct line_box){ 0, 0, row[i].width, INK_PLAIN });
		buf_clear(&got);
		canvas_dump(&c, false, &got);
		got.text[strcspn(got.text, "\n")] = '\0';
		if (strcmp(got.text, row[i].want) != 0 || cursor != row[i].cursor)
			fail_msg("%s: \"%s\", cursor %d", row[i].why, got.text, cursor);
	}
	buf_free(&got);
	canvas_free(&c);
}

static void narrow_contains_in_either_case(void **state)
{
	static const struct {
		const char *why, *text, *part;
		bool contains, begins;
	} row[] = {
		{ "nothing is in every text", "Old Kiln", "", true, true },
		{ "nothing is in nothing", "", "", true, true },
		{ "the start", "Old Kiln", "old", true, true },
		{ "the middle", "Old Kiln", "D K", true, false },
		{ "the end", "Old Kiln", "kiln", true, false },
		{ "the whole", "Old Kiln", "OLD KILN", true, true },
		{ "more than it", "Old Kiln", "old kilns", false, false },
		{ "not there", "Old Kiln", "weir", false, false },
		{ "accents", "\u00c9tang", "\u00e9t", true, true },
		{ "a letter is not its accent", "Etang", "\u00e9t", false, false },
		{ "begun twice", "ababc", "abc", true, false },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		if (narrow_contains(row[i].text, row[i].part) != row[i].contains ||
			narrow_begins(row[i].text, row[i].part) != row[i].begins)
			fail_msg("%s", row[i].why);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(line_key_edits_whole_characters),
		cmocka_unit_test(line_key_takes_no_more_than_fits),
		cmocka_unit_test(line_key_takes_no_control_character),
		cmocka_unit_test(line_key_replaces_a_fresh_text),
		cmocka_unit_test(line_key_leaves_other_keys_to_the_page),
		cmocka_unit_test(line_draw_shows_the_part_round_the_cursor),
		cmocka_unit_test(narrow_contains_in_either_case),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
