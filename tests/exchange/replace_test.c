/* Thresholds changed and dropped through a file; what is told of them. */
#include "desk.h"

#define HEAD "pest,crop,flight,until_dd,measure,span,comparator,value,source\n"

static bool replace(struct book *b, const char *text, struct imported *out)
{
	struct import_from from = {
		.name = "file.csv", .today = day_of(TODAY), .replace = true
	};
	struct err e = { 0 };

	from.file = fmemopen((void *)(uintptr_t)text, strlen(text), "r");
	assert_non_null(from.file);
	bool ok = exchange_import(b, kind_find("thresholds", NULL), &from, out, &e);
	fclose(from.file);
	return ok;
}

static void a_replacing_file_becomes_all_of_the_thresholds(void **state)
{
	struct book *b = new_book();
	struct imported out = { 0 };
	struct err e = { 0 };
	struct rules rules = { 0 };

	(void)state;
	must_take(b, "thresholds",
		HEAD "CM,,,,trap-week,1,>=,10,\nCM,pear,,,trap-week,2,>,3,\n"
		     "OFM,,,,none,,,,\n");
	assert_true(book_rules(b, &rules, &e));
	int64_t kept = rules.items[1].id;
	assert_true(replace(
		b, HEAD "CM,,,,trap-week,1,>=,9,\nCM,pear,,,trap-week,2,>,3,\n", &out));
	struct buf said = { 0 };
	imported_say(&out, &said);
	expect_text("in sum", said.text, "1 new, 2 removed, 1 already there");
	assert_int_equal(out.n_warnings, 0); /* 10 is gone */
	assert_true(book_rules(b, &rules, &e));
	assert_int_equal(rules.n, 2);
	assert_int_equal(rules.items[0].id, kept);
	assert_int_equal(rules.items[1].value_x100, 900);
	free(rules.items);
	buf_free(&said);
	imported_free(&out);
	book_close(b);
}

static void a_wrong_replacing_file_drops_nothing(void **state)
{
	struct book *b = new_book();
	struct imported out = { 0 };

	(void)state;
	must_take(b, "thresholds", HEAD "CM,,,,trap-week,1,>=,10,\n");
	char *before = give_all(b);
	assert_false(replace(b, HEAD "CM,,,,trap-week,9,>=,9,\n", &out));
	char *after = give_all(b);
	expect_text("the book", after, before);
	free(before);
	free(after);
	imported_free(&out);
	book_close(b);
}

static void an_export_replaces_with_no_change(void **state)
{
	struct book *b = new_book();
	struct imported out = { 0 };

	(void)state;
	must_take(b, "thresholds",
		HEAD "CM,,,,trap-week,1,>=,10,\nOFM,,2,,block-total,flight,>,3,x\n");
	char *before = give(b, "thresholds");
	assert_true(replace(b, before, &out));
	assert_int_equal(out.n_removed + out.n_new, 0);
	char *after = give(b, "thresholds");
	expect_text("the thresholds", after, before);
	free(before);
	free(after);
	imported_free(&out);
	book_close(b);
}

static void a_second_value_for_the_same_traps_is_told(void **state)
{
	static const struct {
		const char *why, *row;
		int told;
	} row[] = {
		{ "another value", "CM,,,,trap-week,1,>=,9,", 1 },
		{ "another comparator", "CM,,,,trap-week,1,>,10,", 1 },
		{ "another source of the same value", "CM,,,,trap-week,1,>=,10,x", 0 },
		{ "another crop", "CM,pear,,,trap-week,1,>=,9,", 0 },
		{ "another pest", "OFM,,,,trap-week,1,>=,9,", 0 },
		{ "another measure", "CM,,,,block-week,1,>=,9,", 0 },
		{ "another span", "CM,,,,trap-week,2,>=,9,", 0 },
		{ "another flight", "CM,,1,,trap-week,1,>=,9,", 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct book *b = new_book();
		struct imported out = { 0 };
		struct err e = { 0 };
		struct buf text = { 0 };
		must_take(b, "thresholds", HEAD "CM,,,,trap-week,1,>=,10,\n");
		buf_addf(&text, HEAD "%s\n", row[i].row);
		assert_true(take(b, "thresholds", text.text, &out, &e));
		if (out.n_warnings != row[i].told)
			fail_msg("%s: %d", row[i].why, (int)out.n_warnings);
		if (i == 0)
			expect_text(row[i].why, out.warnings.items[0],
				"file.csv, line 2: two thresholds of CM now judge the "
				"same traps: trap-week, 1 week: >= 10, and trap-week, "
				"1 week: >= 9; import with --replace to drop one");
		buf_free(&text);
		imported_free(&out);
		book_close(b);
	}
}

static void a_threshold_that_waits_for_a_biofix_says_so(void **state)
{
	static const struct {
		const char *why, *row;
		size_t told;
	} row[] = {
		{ "a week needs nothing", "CM,,,,trap-week,1,>=,9,", 0 },
		{ "a flight", "CM,,1,,trap-week,1,>=,9,", 1 },
		{ "degree-days", "CM,,,250,trap-week,1,>=,9,", 1 },
		{ "since biofix", "CM,,,,trap-total,biofix,>=,9,", 1 },
		{ "since the flight began", "CM,,,,trap-total,flight,>=,9,", 1 },
		{ "since it was hung", "CM,,,,trap-total,hung,>=,9,", 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct book *b = new_book();
		struct imported out = { 0 };
		struct err e = { 0 };
		struct buf text = { 0 };
		buf_addf(&text, HEAD "%s\n", row[i].row);
		assert_true(take(b, "thresholds", text.text, &out, &e));
		if (out.notes.n != row[i].told)
			fail_msg("%s: %d", row[i].why, (int)out.notes.n);
		if (out.notes.n)
			expect_text(row[i].why, out.notes.items[0],
				"1 threshold needs a flight, a biofix or degree-days: "
				"its answer stays unknown (biofix not set) until a "
				"biofix is set");
		buf_free(&text);
		imported_free(&out);
		book_close(b);
	}
}

static void published_rows_are_told_in_words(void **state)
{
	static const struct {
		const char *source, *want;
	} row[] = {
		{ "CM2", "CM, apple, 05-01 to 07-31: trap-week, 1 week: >= 5\n" },
		{ "CM1", "CM, apple: trap-week, 2 weeks: >= 2\n" },
	};
	struct book *b = new_book();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct published f = { .source = row[i].source };
		struct imported out = { 0 };
		struct err e = { 0 };
		assert_true(exchange_take_published(b, &f, day_of(TODAY), &out, &e));
		if (strncmp(out.notes.items[0], row[i].want, strlen(row[i].want)) != 0)
			fail_msg("%s", out.notes.items[0]);
		imported_free(&out);
	}
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_replacing_file_becomes_all_of_the_thresholds),
		cmocka_unit_test(a_wrong_replacing_file_drops_nothing),
		cmocka_unit_test(an_export_replaces_with_no_change),
		cmocka_unit_test(a_second_value_for_the_same_traps_is_told),
		cmocka_unit_test(a_threshold_that_waits_for_a_biofix_says_so),
		cmocka_unit_test(published_rows_are_told_in_words),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
