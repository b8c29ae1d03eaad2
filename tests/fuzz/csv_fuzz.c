/* Any bytes are read or refused with a clean sentence; what was read, written again,
 * reads the same. */
#include "fuzz.h"

#include "base/csv.h"
#include "base/text.h"

#include <string.h>

static void check_row(const struct csv *c)
{
	must(c->line >= 1 && c->n_fields >= 1 && c->n_fields <= CSV_FIELDS_MAX);
	for (size_t i = 0; i < c->n_fields; i++) {
		must(strlen(c->field[i].text) == c->field[i].n);
		must(text_valid(c->field[i].text, c->field[i].n, NULL));
	}
}

/* Writes what can be read of the file; false if the end was not reached. */
static bool copy(const void *bytes, size_t n, struct buf *out)
{
	struct csv c;
	struct err e = { 0 };
	enum csv_got got;
	char *text;
	FILE *file = fuzz_file(bytes, n, &text);

	csv_open(&c, file, "fuzz.csv");
	while ((got = csv_next(&c, &e)) == CSV_ROW) {
		check_row(&c);
		for (size_t i = 0; i < c.n_fields; i++)
			csv_add(out, c.field[i].text, i == 0);
		csv_end_row(out);
	}
	fuzz_said(got != CSV_BAD, &e);
	must(got != CSV_BAD || e.kind == ERR_INPUT);
	csv_close(&c);
	fclose(file);
	free(text);
	return got == CSV_END;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t n)
{
	struct buf once = { 0 }, twice = { 0 };

	copy(data, n, &once);
	/* A row may grow over its limit by the quotes that it did not have before. */
	if (once.n > 0 && once.n < CSV_ROW_MAX_BYTES) {
		must(copy(once.text, once.n, &twice));
		must(once.n == twice.n && memcmp(once.text, twice.text, once.n) == 0);
	}
	buf_free(&once);
	buf_free(&twice);
	return 0;
}
