/* The degree-day rules and events that come with the program: every row reads. */
#include "base/csv.h"
#include "base/shipped.h"
#include "season/degree_days.h"
#include "season/log.h"

#include <math.h>
#include <stdio.h>

enum { ROWS_MAX = 128 };

/* A shipped file, row by row. */
struct table {
	struct csv csv;
	FILE *file;
	char row[ROWS_MAX][16][256];
	size_t n, n_columns;
};

static void read_table(struct table *t, const char *name, const char *header)
{
	const struct shipped *s = shipped_find(name);
	struct err e = { 0 };
	char text[256] = "";

	assert_non_null(s);
	memset(t, 0, sizeof *t);
	t->file = fmemopen((void *)(uintptr_t)s->text, s->n, "r");
	csv_open(&t->csv, t->file, name);
	assert_int_equal(csv_next(&t->csv, &e), CSV_ROW);
	t->n_columns = t->csv.n_fields;
	for (size_t i = 0; i < t->n_columns; i++) {
		strcat(text, i == 0 ? "" : ",");
		strcat(text, t->csv.field[i].text);
	}
	assert_string_equal(text, header);
	for (; csv_next(&t->csv, &e) == CSV_ROW; t->n++) {
		assert_true(t->n < ROWS_MAX);
		if (t->csv.n_fields != t->n_columns)
			fail_msg("%s, line %d", name, (int)t->csv.line);
		for (size_t i = 0; i < t->n_columns; i++)
			assert_true(snprintf(t->row[t->n][i], 256, "%s",
					    t->csv.field[i].text) < SOURCE_BYTES);
	}
	assert_int_equal(e.kind, ERR_NONE);
	csv_close(&t->csv);
	fclose(t->file);
}

static double number(const char *text)
{
	char *end;
	double value = strtod(text, &end);

	return text[0] != '\0' && *end == '\0' ? value : (double)NAN;
}

static bool is_one_of(const char *text, const char *const words[])
{
	for (; *words != NULL; words++)
		if (strcmp(text, *words) == 0)
			return true;
	return false;
}

static bool is_pest(const char *code)
{
	static struct table pests;

	if (pests.n == 0)
		read_table(&pests, "pests.csv", "code,name,latin,source");
	for (size_t i = 0; i < pests.n; i++)
		if (strcmp(pests.row[i][0], code) == 0)
			return true;
	return false;
}

static const char *const units[] = { "C", "F", NULL };

static void every_shipped_rule_reads_and_has_its_source(void **state)
{
	static struct table t;

	(void)state;
	read_table(&t, "degree-days.csv", "pest,base,cap,unit,method,cutoff,source");
	assert_true(t.n >= 10);
	for (size_t i = 0; i < t.n; i++) {
		char(*f)[256] = t.row[i];
		struct dd_rule r = { .base = number(f[1]), .cap = number(f[2]) };
		bool ok = is_pest(f[0]) && is_one_of(f[3], units) &&
			  dd_method_read(f[4], &r.method) &&
			  dd_cutoff_read(f[5], &r.cutoff) && f[6][0] != '\0';
		if (!ok || dd_rule_fault(&r) != NULL ||
			dd_uses_cap(&r) != (f[2][0] != '\0'))
			fail_msg("degree-days.csv, row %zu, %s", i + 1, f[0]);
		for (size_t k = 0; k < i; k++)
			assert_string_not_equal(t.row[k][0], f[0]);
	}
}

static void every_shipped_choice_of_ours_is_told(void **state)
{
	static struct table t;

	(void)state;
	read_table(&t, "degree-days.csv", "pest,base,cap,unit,method,cutoff,source");
	for (size_t i = 0; i < t.n; i++) {
		bool all_read = strcmp(t.row[i][0], "PTB") == 0;
		bool told = strstr(t.row[i][6], "our choice") != NULL;
		if (told == all_read)
			fail_msg("%s: %s", t.row[i][0], t.row[i][6]);
	}
}

/* "catch: ...", "01-01"; what the sum starts from. */
static bool is_biofix(const char *text)
{
	static const char *const words[] = { "catch", "increase", "bloom", "stage",
		"not stated", "01-01", NULL };
	char word[32];
	size_t n = strcspn(text, ":");

	if (n >= sizeof word || (text[n] == ':' && text[n + 1] != ' '))
		return false;
	memcpy(word, text, n);
	word[n] = '\0';
	return is_one_of(word, words);
}

static bool event_holds(char (*f)[256])
{
	static const char *const generations[] = { "", "overwintering", "each",
		"single", "1", "2", "3", "4", NULL };
	double lo = number(f[3]), hi = number(f[4]);
	struct dd_rule r = { DD_SINE, DD_NO_CUTOFF, number(f[6]), number(f[7]) };
	bool has_cutoff = f[8][0] == '\0' || dd_cutoff_read(f[8], &r.cutoff);

	return is_pest(f[0]) && f[1][0] != '\0' && is_one_of(f[2], generations) &&
	       lo > 0 && hi >= lo && is_one_of(f[5], units) && has_cutoff &&
	       dd_rule_fault(&r) == NULL && (f[7][0] == '\0' || r.cap > r.base) &&
	       is_biofix(f[9]) && f[10][0] != '\0';
}

static void every_shipped_event_reads_and_has_its_source(void **state)
{
	static struct table t;

	(void)state;
	read_table(&t, "phenology.csv",
		"pest,event,generation,dd_lo,dd_hi,unit,base,cap,cutoff,biofix,source");
	assert_true(t.n >= 80);
	for (size_t i = 0; i < t.n; i++)
		if (!event_holds(t.row[i]))
			fail_msg("phenology.csv, row %zu: %s, %s", i + 1, t.row[i][0],
				t.row[i][1]);
}

/* Events say what the insect does or when to look. */
static void no_shipped_event_tells_to_spray(void **state)
{
	static const char *const words[] = { "spray", "product", "treat", "regulator" };
	static struct table t;

	(void)state;
	read_table(&t, "phenology.csv",
		"pest,event,generation,dd_lo,dd_hi,unit,base,cap,cutoff,biofix,source");
	for (size_t i = 0; i < t.n; i++)
		for (size_t k = 0; k < COUNT_OF(words); k++)
			if (strstr(t.row[i][1], words[k]) != NULL)
				fail_msg("%s: %s", t.row[i][0], t.row[i][1]);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_shipped_rule_reads_and_has_its_source),
		cmocka_unit_test(every_shipped_choice_of_ours_is_told),
		cmocka_unit_test(every_shipped_event_reads_and_has_its_source),
		cmocka_unit_test(no_shipped_event_tells_to_spray),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
