#include "csv_transcribe.h"

#include <unistd.h>

static void csv_takes_64_columns_and_no_more(void **state)
{
	char row[2 * CSV_FIELDS_MAX + 3];
	struct buf got = { 0 };

	(void)state;
	for (int i = 0; i < CSV_FIELDS_MAX; i++)
		memcpy(row + 2 * i, "a,", 2);
	row[2 * CSV_FIELDS_MAX - 1] = '\n';
	transcribe(row, 2 * CSV_FIELDS_MAX, &got);
	assert_int_equal(got.n, strlen("1[]") + 2 * CSV_FIELDS_MAX - 1);
	memcpy(row + 2 * CSV_FIELDS_MAX - 1, ",b\n", 3);
	transcribe(row, sizeof row - 1, &got);
	assert_string_equal(got.text, "t.csv, line 1, column 65: more than 64 columns; "
				      "the comma parts them, and a "
				      "comma inside a value needs quotes around it");
	buf_free(&got);
}

/* Writes a row of n bytes, quoted or not, with its line end behind "x\n". */
static void long_row(struct buf *in, size_t n, bool quoted, const char *end)
{
	buf_clear(in);
	buf_add(in, "x\n");
	for (size_t i = 0; i < n; i++)
		buf_add_n(in, quoted && (i == 0 || i + 1 == n) ? "\"" : "a", 1);
	buf_add(in, end);
}

static void csv_takes_rows_of_64_kib_and_no_more(void **state)
{
	static const char *const ends[] = { "\n", "\r\n", "", "\nnext\n" };
	struct buf in = { 0 }, got = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof ends / sizeof *ends; i++)
		for (int quoted = 0; quoted < 2; quoted++) {
			long_row(&in, CSV_ROW_MAX_BYTES, quoted, ends[i]);
			transcribe(in.text, in.n, &got);
			assert_int_equal(
				got.n, strlen("1[x]2[]") + CSV_ROW_MAX_BYTES -
					       (quoted ? 2 : 0) +
					       (i == 3 ? strlen("3[next]") : 0));
			long_row(&in, CSV_ROW_MAX_BYTES + 1, quoted, ends[i]);
			transcribe(in.text, in.n, &got);
			assert_string_equal(got.text,
				"1[x]t.csv, line 2, column 1: the row is longer than "
				"65536 bytes; "
				"each row ends its line, and each quote is closed");
		}
	buf_free(&in);
	buf_free(&got);
}

/* The limit may lie within a character: it is the row that is wrong, not the text. */
static void csv_does_not_call_a_character_torn_by_the_limit(void **state)
{
	struct buf in = { 0 }, got = { 0 };

	(void)state;
	for (size_t over = 1; over <= 3; over++) {
		buf_clear(&in);
		while (in.n < CSV_ROW_MAX_BYTES - over)
			buf_add_n(&in, "a", 1);
		buf_add(&in, "\xF0\x9F\x8D\x8E\n");
		transcribe(in.text, in.n, &got);
		assert_string_equal(got.text,
			"t.csv, line 1, column 1: the row is longer than 65536 bytes; "
			"each row "
			"ends its line, and each quote is closed");
	}
	buf_free(&in);
	buf_free(&got);
}

static void csv_refuses_a_huge_file_without_lines_early(void **state)
{
	FILE *file = tmpfile();
	struct csv c;
	struct err e = { 0 };

	(void)state;
	assert_non_null(file);
	assert_int_equal(ftruncate(fileno(file), 1 << 30), 0); /* a hole: NUL bytes */
	csv_open(&c, file, "t.csv");
	assert_int_equal(csv_next(&c, &e), CSV_BAD);
	assert_true(ftell(file) <= 1 << 20);
	csv_close(&c);
	fclose(file);
}

static void csv_tells_an_unclosed_quote_from_a_long_row(void **state)
{
	struct buf in = { 0 }, got = { 0 };

	(void)state;
	buf_add(&in, "a,b\n1,\"x\n");
	for (int i = 0; i < 20000; i++)
		buf_add(&in, "2,yyyy\n");
	transcribe(in.text, in.n, &got);
	assert_string_equal(got.text, "1[a|b]t.csv, line 2, column 2: the row is "
				      "longer than 65536 bytes; each row "
				      "ends its line, and each quote is closed");
	buf_free(&in);
	buf_free(&got);
}

/* Rows of 7s, the last one so long that the next row begins at byte `start`. */
static void fillers(struct buf *in, int rows, size_t start)
{
	enum { ROW = 32768 };

	buf_clear(in);
	for (int i = 0; i < rows; i++) {
		size_t n = i + 1 < rows ? ROW : start - (size_t)i * ROW;
		for (size_t k = 1; k < n; k++)
			buf_add_n(in, "7", 1);
		buf_add_n(in, "\n", 1);
	}
	assert_int_equal(in->n, start);
}

/* What was read behind the fillers. */
static const char *behind(const char *text, int rows)
{
	while (rows-- > 0)
		text = strchr(text, ']') + 1;
	return text;
}

static void check_border(const struct reading *row, int rows)
{
	struct buf in = { 0 }, got = { 0 }, want = { 0 };
	size_t border = (size_t)rows * 32768;

	for (int i = 0; i < rows; i++)
		buf_add(&in, "7\n");
	buf_add_n(&in, row->bytes, row->n);
	transcribe(in.text, in.n, &want);
	for (size_t before = 0; before <= row->n + 2; before++) {
		fillers(&in, rows, border + 1 - before);
		buf_add_n(&in, row->bytes, row->n);
		transcribe(in.text, in.n, &got);
		if (strcmp(behind(got.text, rows), behind(want.text, rows)) != 0)
			fail_msg("%s, %d bytes before %d:\n%s\nnot\n%s", row->why,
				(int)before - 1, (int)border, behind(got.text, rows),
				behind(want.text, rows));
	}
	buf_free(&in);
	buf_free(&got);
	buf_free(&want);
}

/* The file is read in blocks; what comes out must not depend on where one ends. */
static void csv_reads_the_same_on_every_block_border(void **state)
{
	static const struct reading row[] = {
		{ "line ends", BYTES("a,b\r\nc\r\n"), NULL },
		{ "no line end", BYTES("a,b"), NULL },
		{ "doubled quotes", BYTES("\"a\"\"b\",\"\"\"\"\r\nc\n"), NULL },
		{ "a line break in quotes", BYTES("\"a\r\nb\",c\n"), NULL },
		{ "characters", BYTES("\xC3\xA9\xE2\x96\x88\xF0\x9F\x8D\x8E\n"), NULL },
		{ "a NUL byte", BYTES("a,x\0y\n"), NULL },
		{ "a control byte", BYTES("a,x\x1By\n"), NULL },
		{ "a torn character", BYTES("a,\xF0\x9F\x8D,b\n"), NULL },
		{ "a torn end", BYTES("a,\xF0\x9F\x8D"), NULL },
		{ "a carriage return alone", BYTES("a\rb\n"), NULL },
		{ "text after a quote", BYTES("\"a\"b\n"), NULL },
		{ "a quote inside", BYTES("a\"b\n"), NULL },
		{ "an unclosed quote", BYTES("a,\"b\n"), NULL },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		for (int rows = 2; rows <= 8; rows *= 2)
			check_border(&row[i], rows);
}

static void csv_says_when_a_file_cannot_be_read(void **state)
{
	FILE *file = fopen(".", "r"); /* opens, but reading a folder fails */
	struct csv c;
	struct err e = { 0 };

	(void)state;
	assert_non_null(file);
	csv_open(&c, file, "folder");
	assert_int_equal(csv_next(&c, &e), CSV_BAD);
	assert_int_equal(e.kind, ERR_BOOK);
	assert_memory_equal(e.text, "folder, line 1: cannot be read: ", 32);
	csv_close(&c);
	fclose(file);
}

static void csv_close_takes_an_unopened_and_a_closed_one(void **state)
{
	struct csv c = { 0 };

	(void)state;
	csv_close(&c);
	csv_close(&c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(csv_takes_64_columns_and_no_more),
		cmocka_unit_test(csv_takes_rows_of_64_kib_and_no_more),
		cmocka_unit_test(csv_does_not_call_a_character_torn_by_the_limit),
		cmocka_unit_test(csv_refuses_a_huge_file_without_lines_early),
		cmocka_unit_test(csv_tells_an_unclosed_quote_from_a_long_row),
		cmocka_unit_test(csv_reads_the_same_on_every_block_border),
		cmocka_unit_test(csv_says_when_a_file_cannot_be_read),
		cmocka_unit_test(csv_close_takes_an_unopened_and_a_closed_one),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
