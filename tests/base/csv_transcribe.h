/* csv_transcribe.h - reads bytes as a CSV file and writes down what came out, so that
 * the tests can compare texts. */
#ifndef TESTS_BASE_CSV_TRANSCRIBE_H
#define TESTS_BASE_CSV_TRANSCRIBE_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/csv.h"

#include <stdio.h>
#include <string.h>

static inline FILE *file_of(const char *bytes, size_t n)
{
	FILE *file = tmpfile();

	assert_non_null(file);
	assert_int_equal(fwrite(bytes, 1, n, file), n);
	rewind(file);
	return file;
}

/* Reads all and writes it down as LINE[field|field|...]; a bad end as its message. */
static inline void transcribe(const char *bytes, size_t n, struct buf *out)
{
	struct csv c;
	struct err e = { 0 };
	enum csv_got got;
	FILE *file = file_of(bytes, n);

	buf_clear(out);
	buf_add(out, "");
	csv_open(&c, file, "t.csv");
	while ((got = csv_next(&c, &e)) == CSV_ROW) {
		buf_addf(out, "%d[", (int)c.line);
		for (size_t i = 0; i < c.n_fields; i++) {
			assert_int_equal(c.field[i].n, strlen(c.field[i].text));
			buf_addf(out, "%s%s%s", i ? "|" : "",
				c.field[i].guarded ? "'" : "", c.field[i].text);
		}
		buf_add(out, "]");
	}
	if (got == CSV_BAD) {
		assert_int_equal(e.kind, ERR_INPUT);
		buf_add(out, e.text);
	} else {
		assert_int_equal(csv_next(&c, &e), CSV_END);
	}
	csv_close(&c);
	fclose(file);
}

#define BYTES(text) text, sizeof text - 1

struct reading {
	const char *why, *bytes;
	size_t n;
	const char *want;
};

static inline void check_readings(const struct reading *row, size_t n)
{
	struct buf got = { 0 };

	for (size_t i = 0; i < n; i++) {
		transcribe(row[i].bytes, row[i].n, &got);
		if (strcmp(got.text, row[i].want) != 0)
			fail_msg("%s:\n%s\nnot\n%s", row[i].why, got.text, row[i].want);
	}
	buf_free(&got);
}

#endif
