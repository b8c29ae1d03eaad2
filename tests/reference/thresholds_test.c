/* The proof against published values: every case holds, and every threshold that ships
 * as read at its source is among them, as the rule that ships. */
#include "answers/proof.h"

#include "base/csv.h"
#include "base/shipped.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static struct proof_case *cases;
static size_t n_cases;

static int run(void **state)
{
	(void)state;
	n_cases = proof_run(&cases);
	return 0;
}

static int done(void **state)
{
	(void)state;
	free(cases);
	return 0;
}

static void every_published_case_holds(void **state)
{
	int failed = 0;
	(void)state;
	for (size_t i = 0; i < n_cases; i++) {
		const struct proof_case *c = &cases[i];
		if (c->holds)
			continue;
		print_error("%s, %s, %s: %s, not %s\n", c->id, c->rule, c->input,
			c->ours, c->expected);
		failed++;
	}
	assert_int_equal(failed, 0);
	assert_true(n_cases > 100);
}

static void every_case_names_its_source_or_says_that_it_has_none(void **state)
{
	(void)state;
	for (size_t i = 0; i < n_cases; i++) {
		const struct proof_case *c = &cases[i];
		bool practice = strstr(c->remark, "common practice, no source") != NULL;
		if ((c->source[0] == '\0') != practice)
			fail_msg("%s: %s", c->id, c->source);
		if (c->printed[0] == '\0' || c->rule[0] == '\0' ||
			c->input[0] == '\0' || c->expected[0] == '\0')
			fail_msg("%s has an empty text", c->id);
	}
}

/* What a case of this id and rule expects of its inputs, such as "uoo". */
static void print_wants(const char *id, const char *rule, char *out, size_t size)
{
	size_t at = 0;

	for (size_t i = 0; i < n_cases && at + 1 < size; i++)
		if (strcmp(cases[i].id, id) == 0 && strcmp(cases[i].rule, rule) == 0)
			out[at++] = cases[i].expected[0];
	out[at] = '\0';
}

/* The nineteen rows and their printed comparators: on a >= it is OVER, on a > under. */
static void every_read_row_is_tried_below_on_and_above(void **state)
{
	static const struct {
		const char *id, *rule, *wants;
	} row[] = {
		{ "CM1", "trap-week 2 >= 2", "uuoo" },
		{ "CM2", "trap-week 1 >= 5", "uoo" },
		{ "CM2", "block-week 1 >= 5", "uoo" },
		{ "CM3", "trap-week 1 >= 3", "uoo" },
		{ "CM3", "block-week 1 >= 3", "uoo" },
		{ "CM4", "trap-week 1 >= 5", "uoo" },
		{ "CM4", "block-week 1 >= 5", "uoo" },
		{ "CM5", "trap-week 1 >= 5", "uoo" },
		{ "CM5", "block-week 1 >= 5", "uoo" },
		{ "CM6", "trap-week 1 >= 3", "uoo" },
		{ "CM6", "block-week 1 >= 3", "uoo" },
		{ "CM7", "trap-week 1 >= 5", "uoo" },
		{ "CM7", "block-week 1 >= 5", "uoo" },
		{ "CM8", "block-total flight > 3", "uuo" },
		{ "CM9", "trap-week 1 >= 2", "uoo" },
		{ "CM9", "block-week 1 >= 2", "uoo" },
		{ "CM10", "trap-total 14 >= 2", "uuoo" },
		{ "CM10", "block-total 14 >= 2", "uoo" },
		{ "CM11", "trap-night 3 >= 5", "uoo" },
		{ "CM11", "trap-night 4 >= 5", "uoo" },
		{ "OFM1", "trap-week 1 >= 6", "uoo" },
		{ "OFM1", "block-week 1 >= 6", "uoo" },
		{ "OFM2", "trap-week 1 >= 8", "uoo" },
		{ "OFM2", "block-week 1 >= 8", "uoo" },
		{ "OFM3", "trap-week 1 >= 10", "uoo" },
		{ "OFM4", "trap-week 1 > 5", "uuo" },
		{ "OFM4", "block-week 1 > 5", "uuo" },
		{ "SFT1", "trap-week 1 >= 30", "uoo" },
		{ "SFT1", "block-week 1 >= 30", "uoo" },
		{ "SFT2", "trap-week 1 > 5", "uuo" },
		{ "SFT2", "block-week 1 > 5", "uuo" },
		{ "AM1", "block-week 1 >= 1", "uoo" },
		{ "AM2", "block-week 1 >= 5", "uoo" },
	};
	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char got[16];
		print_wants(row[i].id, row[i].rule, got, sizeof got);
		if (strcmp(got, row[i].wants) != 0)
			fail_msg("%s, %s: %s, not %s", row[i].id, row[i].rule, got,
				row[i].wants);
	}
}

enum shipped_column { MEASURE, SPAN, COMPARATOR, VALUE, SOURCE, COLUMNS };

static void find_columns(const struct csv *c, size_t at[COLUMNS])
{
	static const char *const names[COLUMNS] = { "measure", "span", "comparator",
		"value", "source" };

	for (size_t k = 0; k < COLUMNS; k++) {
		at[k] = CSV_FIELDS_MAX;
		for (size_t i = 0; i < c->n_fields; i++)
			if (strcmp(c->field[i].text, names[k]) == 0)
				at[k] = i;
		if (at[k] == CSV_FIELDS_MAX)
			fail_msg("thresholds.csv has no column %s", names[k]);
	}
}

static bool is_tried(const char *id, const char *rule)
{
	for (size_t i = 0; i < n_cases; i++)
		if (strcmp(cases[i].id, id) == 0 &&
			(rule == NULL || strcmp(cases[i].rule, rule) == 0))
			return true;
	return false;
}

/* Rows of the shipped file whose source begins with an id; a T is for timing only. */
static int check_row(const struct csv *c, const size_t at[COLUMNS])
{
	const char *source = c->field[at[SOURCE]].text;
	const char *measure = c->field[at[MEASURE]].text;
	char id[8] = "", rule[96];

	size_t n = strcspn(source, ":");
	if (n >= sizeof id)
		fail_msg("line %d: the source does not begin with an id", (int)c->line);
	memcpy(id, source, n);
	id[n] = '\0';
	if (id[0] == 'T')
		return 0;
	snprintf(rule, sizeof rule, "%s %s %s %s", measure, c->field[at[SPAN]].text,
		c->field[at[COMPARATOR]].text, c->field[at[VALUE]].text);
	if (!is_tried(id, strcmp(measure, "none") == 0 ? NULL : rule))
		fail_msg("%s ships as %s, which is not in the proof", id, rule);
	return 1;
}

static void every_threshold_that_ships_is_in_the_proof(void **state)
{
	const struct shipped *file = shipped_find("thresholds.csv");
	size_t at[COLUMNS];
	struct csv c;
	struct err e;
	int rows = 0;
	(void)state;

	assert_non_null(file);
	FILE *f = tmpfile();
	assert_non_null(f);
	assert_int_equal(fwrite(file->text, 1, file->n, f), file->n);
	rewind(f);
	csv_open(&c, f, "thresholds.csv");
	assert_int_equal(csv_next(&c, &e), CSV_ROW);
	find_columns(&c, at);
	while (csv_next(&c, &e) == CSV_ROW)
		rows += check_row(&c, at);
	csv_close(&c);
	fclose(f);
	assert_int_equal(rows, 19);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_published_case_holds),
		cmocka_unit_test(every_case_names_its_source_or_says_that_it_has_none),
		cmocka_unit_test(every_read_row_is_tried_below_on_and_above),
		cmocka_unit_test(every_threshold_that_ships_is_in_the_proof),
	};
	return cmocka_run_group_tests(tests, run, done);
}
