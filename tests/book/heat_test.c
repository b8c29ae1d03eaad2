/* Degree-day rules of the pests: what a new book starts with, what is refused. */
#include "fixture.h"

#include "base/csv.h"
#include "base/shipped.h"

#include <math.h>

static const struct pest *find(const struct pests *all, const char *code)
{
	for (size_t i = 0; i < all->n; i++)
		if (strcmp(all->items[i].code, code) == 0)
			return &all->items[i];
	return NULL;
}

static void assert_degrees(const char *pest, double got, const char *text)
{
	if (*text ? got != strtod(text, NULL) : !isnan(got))
		fail_msg("%s: %g, not \"%s\"", pest, got, text);
}

static void new_book_holds_every_shipped_rule(void **state)
{
	const struct shipped *file = shipped_find("degree-days.csv");
	struct pests all = { 0 };
	struct err err = { 0 };
	struct csv c;
	struct book *b;
	size_t n = 0, set = 0;

	(void)state;
	must(b = book_open(":memory:", BOOK_CREATE, "", e));
	must(book_pests(b, &all, e));
	FILE *f = fmemopen((void *)(uintptr_t)file->text, file->n, "r");
	csv_open(&c, f, file->name);
	assert_int_equal(csv_next(&c, &err), CSV_ROW);
	for (; csv_next(&c, &err) == CSV_ROW; n++) {
		const struct pest *p = find(&all, c.field[0].text);
		assert_non_null(p);
		assert_degrees(p->code, p->heat.base, c.field[1].text);
		assert_degrees(p->code, p->heat.cap, c.field[2].text);
		assert_int_equal(p->heat.unit, c.field[3].text[0]);
		assert_string_equal(p->heat.method, c.field[4].text);
		assert_string_equal(p->heat.cutoff, c.field[5].text);
		assert_string_equal(p->heat.source, c.field[6].text);
	}
	for (size_t i = 0; i < all.n; i++)
		set += all.items[i].heat.unit != 0;
	assert_true(n > 10 && set == n);
	/* As it was made, not changed afterwards. */
	assert_int_equal(store_number(b, "SELECT count(*) FROM history", -1), 0);
	csv_close(&c);
	fclose(f);
	free(all.items);
	book_close(b);
}

static const struct heat good_heat = { .unit = 'C',
	.base = 10,
	.cap = 31.1,
	.method = "double-triangle",
	.cutoff = "vertical",
	.source = "test" };

static void rule_is_kept_and_its_old_form_too(void **state)
{
	struct pests all = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct pest p = {
		.code = "T9", .heat = good_heat, .biofix_rule = "first-moth"
	};
	must(book_put_pest(d.book, &p, e));
	must(book_pests(d.book, &all, e));
	const struct pest *got = find(&all, "T9");
	assert_true(got->heat.base == 10 && got->heat.cap == 31.1);
	assert_int_equal(got->heat.unit, 'C');
	assert_string_equal(got->heat.method, "double-triangle");
	assert_string_equal(got->heat.cutoff, "vertical");
	assert_string_equal(got->heat.source, "test");
	assert_string_equal(got->biofix_rule, "first-moth");
	p.heat = (struct heat){ 0 };
	must(book_put_pest(d.book, &p, e));
	must(book_pests(d.book, &all, e));
	got = find(&all, "T9");
	assert_int_equal(got->heat.unit, 0);
	assert_true(isnan(got->heat.base) && isnan(got->heat.cap)); /* never 0 */
	assert_int_equal(store_number(d.book,
				 "SELECT count(*) FROM history WHERE "
				 "json_extract(old, '$.dd_cap') = 31.1 AND "
				 "json_extract(old, '$.dd_method') = "
				 "'double-triangle'",
				 -1),
		1);
	free(all.items);
	desk_clear(&d);
}

static void rule_that_is_none_is_refused(void **state)
{
	static const struct {
		const char *why;
		double base, cap;
		char unit;
		const char *method, *cutoff, *words; /* words NULL: good */
	} row[] = {
		{ "no cap", 10, NAN, 'C', "sine", "none", NULL },
		{ "lowest base", -60, 10, 'C', "sine", "none", NULL },
		{ "lower", -60.1, 10, 'C', "sine", "none", "-60 to 150" },
		{ "highest cap", 10, 150, 'F', "sine", "none", NULL },
		{ "higher", 10, 150.1, 'F', "sine", "none", "above the base" },
		{ "cap on the base", 10, 10, 'C', "sine", "none", "above the base" },
		{ "no base", NAN, 10, 'C', "sine", "none", "-60 to 150" },
		{ "no such unit", 10, 20, 'K', "sine", "none", "C or F" },
		{ "no such method", 10, 20, 'C', "cosine", "none", "method" },
		{ "no such cutoff", 10, 20, 'C', "sine", "flat", "cutoff" },
		{ "no method", 10, 20, 'C', "", "none", "method" },
	};
	struct desk d;

	(void)state;
	desk_memory(&d);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct pest p = { .heat.unit = row[i].unit,
			.heat.base = row[i].base,
			.heat.cap = row[i].cap };
		struct err e = { 0 };
		snprintf(p.code, sizeof p.code, "X%zu", i);
		snprintf(p.heat.method, sizeof p.heat.method, "%s", row[i].method);
		snprintf(p.heat.cutoff, sizeof p.heat.cutoff, "%s", row[i].cutoff);
		bool ok = book_put_pest(d.book, &p, &e);
		if (ok != !row[i].words || (!ok && !strstr(e.text, row[i].words)))
			fail_msg("%s: \"%s\"", row[i].why, e.text);
	}
	desk_clear(&d);
}

/* The table refuses them too, whoever writes. */
static void table_holds_whole_rules_only(void **state)
{
	static const char *const bad[] = {
		"dd_unit = NULL",
		"dd_base = NULL",
		"dd_method = NULL",
		"dd_cutoff = NULL",
		"dd_unit = 'K'",
		"dd_cap = dd_base",
		"dd_base = 151, dd_cap = NULL",
		"dd_cap = 151",
		"dd_method = 'cosine'",
		"dd_cutoff = 'flat'",
	};
	char sql[200];
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct pest p = { .code = "T9", .heat = good_heat };
	must(book_put_pest(d.book, &p, e));
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		snprintf(sql, sizeof sql, "UPDATE pest SET %s WHERE code = 'T9'",
			bad[i]);
		if ((raw(d.book, sql) & 0xff) != SQLITE_CONSTRAINT)
			fail_msg("%s", bad[i]);
	}
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(new_book_holds_every_shipped_rule),
		cmocka_unit_test(rule_is_kept_and_its_old_form_too),
		cmocka_unit_test(rule_that_is_none_is_refused),
		cmocka_unit_test(table_holds_whole_rules_only),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
