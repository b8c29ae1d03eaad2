#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/text.h"

#include <iconv.h>
#include <locale.h>
#include <stdio.h>
#include <string.h>

/* The character that the C library's iconv makes of exactly these n bytes; -1 = bad. */
static int64_t by_iconv(iconv_t to, const char *bytes, size_t n)
{
	char in[4];
	unsigned char out[8];
	char *from = in, *into = (char *)out;
	size_t left = n, room = sizeof out;

	memcpy(in, bytes, n);
	iconv(to, NULL, NULL, NULL, NULL);
	if (iconv(to, &from, &left, &into, &room) == (size_t)-1 || room != 4)
		return -1;
	return (int64_t)out[0] << 24 | out[1] << 16 | out[2] << 8 | out[3];
}

static void text_decode_agrees_with_iconv_on_every_character(void **state)
{
	iconv_t to = iconv_open("UTF-32BE", "UTF-8");

	(void)state;
	for (uint32_t cp = 0; cp <= 0x10FFFF; cp++) {
		char bytes[5];
		uint32_t got;
		size_t n = text_encode(cp, bytes);

		assert_int_equal(bytes[n], '\0');
		bool surrogate = cp >= 0xD800 && cp <= 0xDFFF;
		if (by_iconv(to, bytes, n) != (surrogate ? -1 : (int64_t)cp))
			fail_msg("U+%04X is written wrong", (unsigned)cp);
		size_t used = text_decode(bytes, n, &got);
		if (surrogate ? used != 1 || got != 0xFFFD : used != n || got != cp)
			fail_msg("U+%04X is read as U+%04X", (unsigned)cp,
				(unsigned)got);
	}
	iconv_close(to);
}

/* Every lead byte with every second byte, filled up with bytes that may follow. */
static void text_decode_agrees_with_iconv_on_wrong_bytes(void **state)
{
	iconv_t to = iconv_open("UTF-32BE", "UTF-8");

	(void)state;
	for (int lead = 0x80; lead < 0x100; lead++)
		for (int next = 0; next < 0x100; next++)
			for (size_t n = 1; n <= 4; n++) {
				char s[4] = { (char)lead, (char)next, (char)0x80,
					(char)0xBF };
				uint32_t cp;
				size_t used = text_decode(s, n, &cp);
				int64_t want = by_iconv(to, s, n);
				bool good = used == n && !(cp == 0xFFFD && n == 1);
				assert_in_range(used, 1, n);
				if (good != (want >= 0) || (good && cp != want))
					fail_msg("%02X %02X (%zu bytes): %zu", lead,
						next, n, used);
			}
	iconv_close(to);
}

static void text_decode_of_nothing_is_nothing(void **state)
{
	uint32_t cp = 7;

	(void)state;
	assert_int_equal(text_decode("a", 0, &cp), 0);
}

static void text_valid_points_at_the_first_bad_byte(void **state)
{
	static const struct {
		const char *why, *text;
		size_t n;
		int bad; /* -1 = none */
	} row[] = {
		{ "nothing", "", 0, -1 },
		{ "ASCII", "abc", 3, -1 },
		{ "a NUL is a character", "a\0b", 3, -1 },
		{ "a real U+FFFD", "\xEF\xBF\xBD", 3, -1 },
		{ "two, three and four bytes", "\xC3\xBC\xE2\x96\x88\xF0\x9F\x8D\x8E",
			9, -1 },
		{ "torn at the end", "ab\xE2\x96", 4, 2 },
		{ "a stray second byte", "abc\x80", 4, 3 },
		{ "Latin-1", "Gr\xFCn", 4, 2 },
		{ "overlong slash", "\xC0\xAF", 2, 0 },
		{ "overlong in three", "\xE0\x80\xAF", 3, 0 },
		{ "a surrogate", "a\xED\xA0\x80", 4, 1 },
		{ "the last character", "\xF4\x8F\xBF\xBF", 4, -1 },
		{ "the one behind it", "\xF4\x90\x80\x80", 4, 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		size_t bad = 99;
		bool good = text_valid(row[i].text, row[i].n, &bad);
		if (good != (row[i].bad < 0) || (!good && bad != (size_t)row[i].bad))
			fail_msg("%s: %d, byte %zu", row[i].why, good, bad);
		assert_int_equal(text_valid(row[i].text, row[i].n, NULL), good);
	}
}

static void text_control_bounds(void **state)
{
	(void)state;
	assert_true(text_control(0));
	assert_true(text_control(0x1F));
	assert_false(text_control(0x20));
	assert_false(text_control(0x7E));
	assert_true(text_control(0x7F));
	assert_true(text_control(0x80));
	assert_true(text_control(0x9F));
	assert_false(text_control(0xA0));
	assert_false(text_control(0x200A));
	assert_true(text_control(0x200B));
	assert_true(text_control(0x200F));
	assert_false(text_control(0x2010));
	assert_false(text_control(0x2027));
	assert_true(text_control(0x2028));
	assert_true(text_control(0x202E));
	assert_false(text_control(0x202F));
	assert_false(text_control(0x2065));
	assert_true(text_control(0x2066));
	assert_true(text_control(0x2069));
	assert_false(text_control(0x206A));
	assert_false(text_control(0xFEFE));
	assert_true(text_control(0xFEFF));
	assert_false(text_control(0xFF00));
}

static void text_cols_and_fit_agree(void **state)
{
	static const struct {
		const char *why, *text;
		int cols;
		int fit_cols;
		size_t fit;
	} row[] = {
		{ "nothing", "", 0, 5, 0 },
		{ "ASCII fits", "abc", 3, 3, 3 },
		{ "one too narrow", "abc", 3, 2, 2 },
		{ "no columns", "abc", 3, 0, 0 },
		{ "fewer than none", "abc", 3, -1, 0 },
		{ "umlaut",
			"\xC3\xBC"
			"b",
			2, 1, 2 },
		{ "combining",
			"e\xCC\x81"
			"b",
			2, 1, 3 },
		{ "wide",
			"\xE6\xA2\xA8"
			"b",
			3, 2, 3 },
		{ "wide does not fit",
			"\xE6\xA2\xA8"
			"b",
			3, 1, 0 },
		{ "block character", "\xE2\x96\x88", 1, 1, 3 },
		{ "control counts one", "\x1B[", 2, 1, 1 },
		{ "unassigned counts one", "\xCD\xB8", 1, 0, 0 },
		{ "torn counts one", "\xE2\x96", 2, 1, 1 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		int cols = text_cols(row[i].text);
		size_t fit = text_fit(row[i].text, row[i].fit_cols);
		if (cols != row[i].cols || fit != row[i].fit)
			fail_msg("%s: %d columns, %zu bytes", row[i].why, cols, fit);
	}
}

static void text_hundredths_have_no_minus_before_zero(void **state)
{
	static const struct {
		double x;
		const char *want;
	} row[] = { { -0.004, "0.00" }, { -0.006, "-0.01" }, { 0.994, "0.99" },
		{ -12.3456, "-12.35" }, { 0, "0.00" } };
	char got[16];

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		snprintf(got, sizeof got, "%.2f", text_hundredths(row[i].x));
		assert_string_equal(got, row[i].want);
	}
}

static void text_copy_cuts_between_characters(void **state)
{
	static const struct {
		const char *why, *text;
		size_t size;
		const char *want;
		bool fits;
	} row[] = {
		{ "room to spare", "abc", 8, "abc", true },
		{ "fits with its NUL", "abc", 4, "abc", true },
		{ "one short", "abc", 3, "ab", false },
		{ "only the NUL", "abc", 1, "", false },
		{ "two bytes fit", "a\xC3\xBC", 4, "a\xC3\xBC", true },
		{ "two bytes do not", "a\xC3\xBC", 3, "a", false },
		{ "four bytes do not", "\xF0\x9F\x8D\x8E", 4, "", false },
		{ "three bytes, cut after two", "ab\xE2\x96\x88", 5, "ab", false },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char out[8] = "#######";
		bool fits = text_copy(out, row[i].size, row[i].text);
		if (fits != row[i].fits || strcmp(out, row[i].want) != 0)
			fail_msg("%s: \"%s\"", row[i].why, out);
	}
	assert_false(text_copy(NULL, 0, "a"));
}

static void text_trim_drops_blanks_at_both_ends(void **state)
{
	static const struct {
		const char *text, *want;
	} row[] = {
		{ "", "" }, { "  \t ", "" }, { "a", "a" }, { " a b\t", "a b" },
		{ "a  ", "a" }, { "\t a", "a" },
		{ "\xC2\xA0", "\xC2\xA0" }, /* a no-break space is meant to be there */
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char s[16];
		strcpy(s, row[i].text);
		text_trim(s);
		assert_string_equal(s, row[i].want);
	}
}

static void text_int_takes_digits_within_bounds_only(void **state)
{
	static const struct {
		const char *text;
		int32_t lo, hi, want; /* -1 = refused */
	} row[] = {
		{ "0", 0, 9999, 0 }, { "9999", 0, 9999, 9999 },
		{ "10000", 0, 9999, -1 }, { "1", 1, 366, 1 }, { "0", 1, 366, -1 },
		{ "007", 0, 9999, 7 }, { "2147483647", 0, INT32_MAX, INT32_MAX },
		{ "2147483648", 0, INT32_MAX, -1 }, { "4294967296", 0, INT32_MAX, -1 },
		{ "18446744073709551617", 0, INT32_MAX, -1 },
		{ "99999999999999999999999999999999999999", 0, INT32_MAX, -1 },
		{ "", 0, 9999, -1 }, { "+1", 0, 9999, -1 }, { "-1", -5, 9999, -1 },
		{ " 1", 0, 9999, -1 }, { "1 ", 0, 9999, -1 }, { "1e3", 0, 9999, -1 },
		{ "0x1", 0, 9999, -1 }, { "1.0", 0, 9999, -1 }, { "12a", 0, 9999, -1 },
		{ "\xD9\xA1", 0, 9999, -1 }, /* an Arabic digit */
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		int32_t got = -1;
		bool good = text_int(row[i].text, row[i].lo, row[i].hi, &got);
		if (got != row[i].want || good != (row[i].want >= 0))
			fail_msg("\"%s\": %d", row[i].text, (int)got);
	}
}

static void text_x100_takes_two_decimals_at_most(void **state)
{
	static const struct {
		const char *text;
		int32_t max, want;
	} row[] = {
		{ "0", 99999, 0 },
		{ "5", 99999, 500 },
		{ "5.2", 99999, 520 },
		{ "5.02", 99999, 502 },
		{ "5.25", 99999, 525 },
		{ "5.250", 99999, -1 },
		{ "5.", 99999, -1 },
		{ ".5", 99999, -1 },
		{ "5,2", 99999, -1 },
		{ "5.2.1", 99999, -1 },
		{ "5. 2", 99999, -1 },
		{ "5.-2", 99999, -1 },
		{ "-5", 99999, -1 },
		{ "", 99999, -1 },
		{ "5e1", 99999, -1 },
		{ "999.99", 99999, 99999 },
		{ "1000", 99999, -1 },
		{ "21474836.47", INT32_MAX, INT32_MAX },
		{ "21474836.48", INT32_MAX, -1 },
		{ "99999999999", INT32_MAX, -1 },
		{ "99999999999999999", INT32_MAX, -1 }, /* 10^19 hundredths wrap */
		{ "1.99999999999999", INT32_MAX, -1 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		int32_t got = -1;
		bool good = text_x100(row[i].text, row[i].max, &got);
		if (got != row[i].want || good != (row[i].want >= 0))
			fail_msg("\"%s\": %d", row[i].text, (int)got);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(text_hundredths_have_no_minus_before_zero),
		cmocka_unit_test(text_decode_agrees_with_iconv_on_every_character),
		cmocka_unit_test(text_decode_agrees_with_iconv_on_wrong_bytes),
		cmocka_unit_test(text_decode_of_nothing_is_nothing),
		cmocka_unit_test(text_valid_points_at_the_first_bad_byte),
		cmocka_unit_test(text_control_bounds),
		cmocka_unit_test(text_cols_and_fit_agree),
		cmocka_unit_test(text_copy_cuts_between_characters),
		cmocka_unit_test(text_trim_drops_blanks_at_both_ends),
		cmocka_unit_test(text_int_takes_digits_within_bounds_only),
		cmocka_unit_test(text_x100_takes_two_decimals_at_most),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
