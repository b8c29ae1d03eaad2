#include "csv_transcribe.h"

static void csv_add_quotes_and_guards_where_needed(void **state)
{
	static const struct {
		const char *text, *want;
	} row[] = {
		{ "", "" },
		{ "plain text", "plain text" },
		{ "a,b", "\"a,b\"" },
		{ "5\" card", "\"5\"\" card\"" },
		{ "a\nb", "\"a\nb\"" },
		{ "a\rb", "\"a\rb\"" },
		{ "=1+1", "'=1+1" },
		{ "+1", "'+1" },
		{ "-a", "'-a" },
		{ "@a", "'@a" },
		{ "=a,b", "\"'=a,b\"" },
		{ "=\"a\"", "\"'=\"\"a\"\"\"" },
		{ "a=b", "a=b" },
		{ "-5", "-5" },
		{ "-120.25", "-120.25" },
		{ "-", "'-" },
		{ "-5.", "'-5." },
		{ "-5-3", "'-5-3" },
		{ "-5.2+1", "'-5.2+1" },
		{ "--5", "'--5" },
		{ "'a", "'a" },
		{ "'=a", "''=a" },
		{ "'-5", "''-5" },
		{ "''=a", "'''=a" },
		{ "'", "'" },
		{ "a\tb", "a?b" }, /* some spreadsheets would make two columns of it */
		{ "\033[31mred\a", "?[31mred?" },
		{ "\033,\033", "\"?,?\"" },
		{ "a\177b\xC2\x9B|", "a?b?|" },
		{ "torn \xF0\x9F\x8D", "torn ???" },
		{ "\xFF=1", "?=1" },
		{ "\xEF\xBB\xBFx", "?x" },
		{ "\xE2\x80\xAExet", "?xet" }, /* would turn the text around */
		{ "\xC3\xA9\xE2\x96\x88", "\xC3\xA9\xE2\x96\x88" },
	};
	struct buf out = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		buf_clear(&out);
		csv_add(&out, row[i].text, true);
		if (strcmp(out.text, row[i].want) != 0)
			fail_msg("%s is written as %s", row[i].text, out.text);
	}
	buf_free(&out);
}

static void csv_written_is_read_back_unchanged(void **state)
{
	static const char *const texts[] = { "", "a", "'", "''", "'=", "=", "-1",
		"-1.5", "'-1", "\"", "\"\"", ",", "\n", "\r\n", "a\"b,c\nd", "+\"",
		"\xC3\xA9", " a " };
	enum { N = sizeof texts / sizeof *texts };
	struct buf out = { 0 };
	struct err e = { 0 };
	struct csv c;

	(void)state;
	for (size_t i = 0; i < N; i++) { /* alone in its row, then all from here on */
		csv_add(&out, texts[i], true);
		csv_end_row(&out);
		for (size_t k = i; k < N; k++)
			csv_add(&out, texts[k], k == i);
		csv_end_row(&out);
	}
	FILE *file = file_of(out.text, out.n);
	csv_open(&c, file, "t.csv");
	for (size_t i = 0; i < N; i++) {
		assert_int_equal(csv_next(&c, &e), CSV_ROW);
		assert_int_equal(c.n_fields, 1);
		assert_string_equal(c.field[0].text, texts[i]);
		assert_int_equal(csv_next(&c, &e), CSV_ROW);
		assert_int_equal(c.n_fields, N - i);
		for (size_t k = i; k < N; k++)
			assert_string_equal(c.field[k - i].text, texts[k]);
	}
	assert_int_equal(csv_next(&c, &e), CSV_END);
	csv_close(&c);
	fclose(file);
	buf_free(&out);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(csv_add_quotes_and_guards_where_needed),
		cmocka_unit_test(csv_written_is_read_back_unchanged),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
