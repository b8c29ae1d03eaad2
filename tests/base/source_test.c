#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/source.h"

#include <string.h>

static void outline_is_written_latitude_first(void **state)
{
	struct source s = { .n_outline = 4,
		.outline = { { 46.1002, 14.4975 }, { -0.00000004, 180 },
			{ -89.12345678, -179.9 }, { 7, -0.5 } } };
	char text[OUTLINE_BYTES];

	(void)state;
	outline_write(&s, text);
	assert_string_equal(text, "46.1002 14.4975; 0 180; -89.1234568 -179.9; 7 -0.5");
	s.n_outline = 0;
	outline_write(&s, text);
	assert_string_equal(text, "");
}

static void outline_of_the_most_and_longest_corners_fits(void **state)
{
	struct source s = { .n_outline = OUTLINE_MAX }, got;
	char text[OUTLINE_BYTES];

	(void)state;
	for (size_t i = 0; i < OUTLINE_MAX; i++)
		s.outline[i] = (struct corner){ -89.1234567, -179.1234567 };
	outline_write(&s, text);
	assert_int_equal(strlen(text), OUTLINE_BYTES - 3); /* no "; " behind it */
	assert_true(outline_read(text, &got));
	assert_int_equal(got.n_outline, OUTLINE_MAX);
	assert_memory_equal(got.outline, s.outline, sizeof s.outline);
}

static void outline_is_read_or_refused_whole(void **state)
{
	static const struct {
		const char *why, *text;
		int corners; /* -1: refused */
	} row[] = {
		{ "nothing is not drawn", "", 0 },
		{ "blanks are nothing", "  ", 0 },
		{ "three corners", "1 2; 3 4; 5 6", 3 },
		{ "two are no outline", "1 2; 3 4", -1 },
		{ "nor is one", "1 2", -1 },
		{ "loose blanks, and one ; more", "\t1  2 ;3 4;5.5 -6 ; ", 3 },
		{ "the poles and the date line", "90 180; -90 -180; 0 0", 3 },
		{ "beyond the pole", "90.0000001 0; 1 1; 2 2", -1 },
		{ "beyond the date line", "0 180.0000001; 1 1; 2 2", -1 },
		{ "a corner without longitude", "1; 3 4; 5 6; 7 8", -1 },
		{ "three numbers", "1 2 3; 3 4; 5 6", -1 },
		{ "an empty corner", "1 2;; 3 4; 5 6", -1 },
		{ "an empty corner before all", "; 1 2; 3 4; 5 6", -1 },
		{ "two ; more", "1 2; 3 4; 5 6;;", -1 },
		{ "a comma for the point", "1,5 2; 3 4; 5 6", -1 },
		{ "an exponent", "1e1 2; 3 4; 5 6", -1 },
		{ "no number", "nan 2; 3 4; 5 6", -1 },
		{ "hexadecimal", "0x1 2; 3 4; 5 6", -1 },
		{ "a plus", "+1 2; 3 4; 5 6", -1 },
		{ "a point without digits", "1. 2; 3 4; 5 6", -1 },
		{ "a compass point", "1 2 E; 3 4; 5 6", -1 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct source s = { .n_outline = 99 };
		bool read = outline_read(row[i].text, &s);
		int n = read ? (int)s.n_outline : -1;
		if (n != row[i].corners || (!read && s.n_outline != 99))
			fail_msg("%s: %d, not %d", row[i].why, n, row[i].corners);
	}
}

static void outline_has_no_more_corners_than_there_is_room_for(void **state)
{
	char text[OUTLINE_BYTES] = "";
	struct source s = { 0 };

	(void)state;
	for (int i = 0; i < OUTLINE_MAX; i++)
		strcat(text, "1 2;");
	assert_true(outline_read(text, &s));
	assert_int_equal(s.n_outline, OUTLINE_MAX);
	assert_true(s.outline[OUTLINE_MAX - 1].lat == 1);
	strcat(text, "1 2");
	assert_false(outline_read(text, &s));
}

static void source_kinds_are_the_words_of_the_files(void **state)
{
	static const char *const word[SOURCE_KIND_COUNT] = { "abandoned", "wild",
		"woodlot", "bins", "other" };
	enum source_kind k;

	(void)state;
	for (int i = 0; i < SOURCE_KIND_COUNT; i++) {
		assert_string_equal(source_kind_word((enum source_kind)i), word[i]);
		assert_true(source_kind_read(word[i], &k) && (int)k == i);
	}
	k = SOURCE_WILD;
	assert_false(source_kind_read("", &k) || source_kind_read("Bins", &k));
	assert_int_equal(k, SOURCE_WILD);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(outline_is_written_latitude_first),
		cmocka_unit_test(outline_of_the_most_and_longest_corners_fits),
		cmocka_unit_test(outline_is_read_or_refused_whole),
		cmocka_unit_test(outline_has_no_more_corners_than_there_is_room_for),
		cmocka_unit_test(source_kinds_are_the_words_of_the_files),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
