#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/buf.h"

#include <locale.h>
#include <string.h>

static void buf_has_no_text_until_something_is_added(void **state)
{
	struct buf b = { 0 };

	(void)state;
	assert_null(b.text);
	buf_add(&b, "");
	assert_string_equal(b.text, "");
	buf_free(&b);
	assert_null(b.text);
	buf_add(&b, "again");
	assert_string_equal(b.text, "again");
	buf_free(&b);
}

static void buf_add_appends(void **state)
{
	struct buf b = { 0 };

	(void)state;
	buf_add(&b, "trap ");
	buf_add_n(&b, "12345", 2);
	buf_addf(&b, ", %d moths in %d nights%s", 9, 7, ".");
	assert_string_equal(b.text, "trap 12, 9 moths in 7 nights.");
	assert_int_equal(b.n, strlen(b.text));
	buf_free(&b);
}

static void buf_grows_over_every_size(void **state)
{
	struct buf b = { 0 };

	(void)state;
	for (size_t i = 0; i < 5000; i++) {
		buf_addf(&b, "%c", (char)('a' + i % 26));
		assert_true(b.cap > b.n);
		assert_int_equal(b.text[b.n], '\0');
	}
	for (size_t i = 0; i < 5000; i++)
		assert_int_equal(b.text[i], 'a' + i % 26);
	buf_clear(&b);
	assert_int_equal(b.n, 0);
	assert_string_equal(b.text, "");
	buf_free(&b);
}

static void buf_clear_takes_an_empty_one(void **state)
{
	struct buf b = { 0 };

	(void)state;
	buf_clear(&b);
	assert_null(b.text);
	buf_free(&b);
}

static void buf_add_field_cuts_and_pads_by_columns(void **state)
{
	static const struct {
		const char *why, *text;
		int cols;
		const char *want;
	} row[] = {
		{ "padded on the right", "ab", 4, "ab  " },
		{ "padded on the left", "ab", -4, "  ab" },
		{ "fits exactly", "abcd", 4, "abcd" },
		{ "one too many", "abcde", 4, "abcd" },
		{ "one too many, to the right", "abcde", -4, "abcd" },
		{ "no room", "abc", 0, "" },
		{ "nothing in it", "", 3, "   " },
		{ "a letter of two bytes is one column",
			"\xC3\xA9"
			"a",
			3,
			"\xC3\xA9"
			"a " },
		{ "a combining accent takes none", "e\xCC\x81", 2, "e\xCC\x81 " },
		{ "it stays with its letter at the edge", "ae\xCC\x81", 2,
			"ae\xCC\x81" },
		{ "a wide character takes two", "\xE6\xA2\xA8", 3, "\xE6\xA2\xA8 " },
		{ "and so when padded on the left", "\xE6\xA2\xA8", -3,
			" \xE6\xA2\xA8" },
		{ "half of one does not fit", "a\xE6\xA2\xA8", 2, "a " },
		{ "control characters show as ?", "a\x1B[1m\tb", 7, "a?[1m?b" },
		{ "a C1 control too",
			"\xC2\x9B"
			"1",
			3, "?1 " },
		{ "torn bytes too", "a\xC3", 3, "a? " },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct buf b = { 0 };
		buf_add_field(&b, row[i].text, row[i].cols);
		if (strcmp(b.text ? b.text : "", row[i].want) != 0)
			fail_msg("%s: \"%s\"", row[i].why, b.text);
		buf_free(&b);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(buf_has_no_text_until_something_is_added),
		cmocka_unit_test(buf_add_appends),
		cmocka_unit_test(buf_grows_over_every_size),
		cmocka_unit_test(buf_clear_takes_an_empty_one),
		cmocka_unit_test(buf_add_field_cuts_and_pads_by_columns),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
