/* Nothing is counted in a trap that does not hang: a file that says so is refused. */
#include "desk.h"

#include "exchange/series.h"

#define HEAD "farm,trap,date,outcome,count\n"
#define NEVER                                                                          \
	": no earlier row or visit says hung; add the row that hung it, or put the "   \
	"date right"
#define AGAIN "; add a row that hung it again between, or put the date right"

/* Trap 2 of Quarle Top, never hung. `book` goes in first. */
static void a_visit_to_a_trap_that_does_not_hang_is_refused(void **state)
{
	static const struct {
		const char *why, *book, *rows, *want;
	} row[] = {
		{ "never hung", "", "2,2026-06-01,counted,3\n",
			"line 2: trap 2 of Quarle Top does not hang on 2026-06-01 "
			"(counted)" NEVER },
		{ "a floor", "", "2,2026-06-01,floor,30\n",
			"line 2: trap 2 of Quarle Top does not hang on 2026-06-01 "
			"(floor)" NEVER },
		{ "skipped", "", "2,2026-06-01,skipped,\n",
			"line 2: trap 2 of Quarle Top does not hang on 2026-06-01 "
			"(skipped)" NEVER },
		{ "spoiled", "", "2,2026-06-01,spoiled,\n",
			"line 2: trap 2 of Quarle Top does not hang on 2026-06-01 "
			"(spoiled)" NEVER },
		{ "missing", "", "2,2026-06-01,missing,\n",
			"line 2: trap 2 of Quarle Top does not hang on 2026-06-01 "
			"(missing)" NEVER },
		{ "pulled", "", "2,2026-06-01,pulled,\n",
			"line 2: trap 2 of Quarle Top does not hang on 2026-06-01 "
			"(pulled)" NEVER },
		{ "hung later, in the same file", "",
			"2,2026-06-08,hung,\n2,2026-06-01,counted,3\n",
			"line 3: trap 2 of Quarle Top does not hang on 2026-06-01 "
			"(counted)" NEVER },
		{ "after it was pulled", "",
			"2,2026-06-01,hung,\n2,2026-06-08,pulled,\n"
			"2,2026-06-09,counted,1\n",
			"line 4: trap 2 of Quarle Top does not hang on 2026-06-09 "
			"(counted): it is pulled on 2026-06-08" AGAIN },
		{ "after it went missing, against the order of days", "",
			"2,2026-06-09,counted,1\n2,2026-06-08,missing,\n"
			"2,2026-06-01,hung,\n",
			"line 2: trap 2 of Quarle Top does not hang on 2026-06-09 "
			"(counted): it is missing on 2026-06-08" AGAIN },
		{ "pulled in the book", "2,2026-06-01,hung,\n2,2026-06-08,pulled,\n",
			"2,2026-06-15,counted,1\n",
			"line 2: trap 2 of Quarle Top does not hang on 2026-06-15 "
			"(counted): it is pulled on 2026-06-08" AGAIN },
		{ "pulled by the file before what the book has",
			"2,2026-06-01,hung,\n2,2026-06-08,counted,4\n",
			"2,2026-06-02,pulled,\n",
			"line 2: trap 2 of Quarle Top does not hang on 2026-06-08 "
			"(counted, in the book): it is pulled on 2026-06-02" AGAIN },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct book *b = farm_book();
		struct buf text = { 0 }, want = { 0 };
		const char *from[] = { row[i].book, row[i].rows };
		for (int n = 0; n < 2; n++) {
			buf_clear(&text);
			buf_add(&text, HEAD);
			for (const char *at = from[n]; *at; at = strchr(at, '\n') + 1)
				buf_addf(&text, "Quarle Top,%.*s\n",
					(int)strcspn(at, "\n"), at);
			if (n == 0)
				must_take(b, "visits", text.text);
		}
		buf_addf(&want, "file.csv, %s", row[i].want);
		expect_refused(b, "visits", row[i].why, text.text, want.text);
		buf_free(&text);
		buf_free(&want);
		book_close(b);
	}
}

static void a_hanging_between_makes_it_right_in_any_order(void **state)
{
	static const char *const files[] = {
		"Quarle Top,2,2026-06-01,hung,\nQuarle Top,2,2026-06-02,counted,1\n",
		"Quarle Top,2,2026-06-02,counted,1\nQuarle Top,2,2026-06-01,hung,\n",
		"Quarle Top,2,2026-06-15,counted,1\nQuarle Top,2,2026-06-09,hung,\n"
		"Quarle Top,2,2026-06-08,missing,\nQuarle Top,2,2026-06-01,hung,\n",
		"Quarle Top,1,2026-07-01,hung,\nQuarle Top,1,2026-06-08,pulled,\n"
		"Quarle Top,1,2026-07-08,counted,2\n",
	};

	(void)state;
	for (size_t i = 0; i < sizeof files / sizeof *files; i++) {
		struct book *b = farm_book();
		struct buf text = { 0 };
		struct imported out = { 0 };
		struct err e = { 0 };
		buf_addf(&text, HEAD "%s", files[i]);
		if (!take(b, "visits", text.text, &out, &e))
			fail_msg("%s: %s", files[i], complaint(&out, &e));
		assert_int_equal(out.n_warnings, 0);
		imported_free(&out);
		buf_free(&text);
		book_close(b);
	}
}

/* The first and last windows in which the book is read, and a leap over many. */
static void old_seasons_are_looked_at_too(void **state)
{
	struct book *b = farm_book();

	(void)state;
	must_take(b, "visits",
		HEAD "Quarle Top,2,1900-01-01,hung,\nQuarle Top,2,1951-06-01,pulled,\n"
		     "Quarle Top,3,1931-06-01,hung,\n");
	must_take(b, "visits", HEAD "Quarle Top,3,2026-06-01,counted,1\n");
	expect_refused(b, "visits", "pulled long ago",
		HEAD "Quarle Top,2,2026-06-01,counted,1\n",
		"file.csv, line 2: trap 2 of Quarle Top does not hang on 2026-06-01 "
		"(counted): it is pulled on 1951-06-01" AGAIN);
	book_close(b);
}

/* It is read in windows, without a gap between them. */
static void every_day_of_the_book_is_read(void **state)
{
	enum { DAYS = 300 };
	struct book *b = farm_book();
	struct traps traps = { 0 };
	struct err e = { 0 };
	bool same;

	(void)state;
	assert_true(book_traps(b, 0, &traps, &e) && book_begin(b, &e));
	struct series s = { .trap = traps.items[0].id };
	for (int i = 0; i < DAYS; i++) {
		struct visit v = { .trap = s.trap,
			.day = day_of("2025-01-01") + i,
			.outcome = i ? OUTCOME_COUNTED : OUTCOME_HUNG,
			.count = i ? 0 : COUNT_NONE,
			.females = -1,
			.others = -1 };
		assert_true(book_add_visit(b, &v, NULL, &same, &e));
	}
	assert_true(book_commit(b, &e));
	assert_true(series_read(b, &s, 1, &e));
	assert_int_equal(s.n, DAYS);
	for (int i = 0; i < DAYS; i++)
		assert_int_equal(s.items[i].day, day_of("2025-01-01") + i);
	assert_int_equal(s.items[0].outcome, OUTCOME_HUNG);
	free(s.items);
	free(traps.items);
	book_close(b);
}

/* A hanging that was forgotten is one thing wrong, not a season of them. */
static void one_complaint_stands_for_a_stretch(void **state)
{
	struct book *b = farm_book();
	struct imported out = { 0 };
	struct err e = { 0 };

	(void)state;
	assert_false(take(b, "visits",
		HEAD "Quarle Top,2,2026-06-01,counted,3\n"
		     "Quarle Top,2,2026-06-08,counted,3\n"
		     "Quarle Top,2,2026-06-09,hung,\n"
		     "Quarle Top,2,2026-06-10,pulled,\n"
		     "Quarle Top,2,2026-06-22,skipped,\n"
		     "Quarle Top,2,2026-06-29,counted,3\n",
		&out, &e));
	assert_int_equal(out.n_problems, 2);
	assert_non_null(strstr(out.problems.items[0], "line 2: "));
	assert_non_null(strstr(out.problems.items[1], "line 6: "));
	imported_free(&out);
	book_close(b);
}

/* Saved at the trap, before anybody hung it: another file is not refused for it. */
static void what_the_book_held_before_is_no_fault_of_the_file(void **state)
{
	struct book *b = farm_book();
	struct traps traps = { 0 };
	struct err e = { 0 };

	(void)state;
	assert_true(book_traps(b, 0, &traps, &e));
	struct visit v = { .outcome = OUTCOME_COUNTED,
		.count = 2,
		.females = -1,
		.others = -1,
		.day = day_of("2026-05-20") };
	for (size_t i = 0; i < traps.n; i++)
		if (strcmp(traps.items[i].label, "2") == 0)
			v.trap = traps.items[i].id;
	assert_true(book_save_visit(b, &v, NULL, &e));
	must_take(b, "visits", HEAD "Quarle Top,2,2026-05-20,counted,2\n");
	must_take(b, "visits",
		HEAD "Quarle Top,2,2026-06-01,hung,\nQuarle "
		     "Top,2,2026-06-08,counted,2\n");
	free(traps.items);
	book_close(b);
}

static void expect_warning(
	struct book *b, const char *kind, const char *text, const char *want)
{
	struct imported out = { 0 };
	struct err e = { 0 };

	if (!take(b, kind, text, &out, &e))
		fail_msg("%s", complaint(&out, &e));
	assert_int_equal(out.n_warnings, 1);
	expect_text(kind, out.warnings.items[0], want);
	imported_free(&out);
}

static void hung_while_it_hangs_is_taken_and_told(void **state)
{
	struct book *b = farm_book();

	(void)state;
	expect_warning(b, "visits", HEAD "Quarle Top,1,2026-06-01,hung,\n",
		"file.csv, line 2: trap 1 of Quarle Top hangs already since "
		"2026-05-01; hung again on 2026-06-01, what it caught since its last "
		"visit is not known");
	expect_warning(b, "visits", HEAD "Quarle Top,1,2026-04-01,hung,\n",
		"file.csv, line 2: trap 1 of Quarle Top hangs already since "
		"2026-04-01; hung again on 2026-05-01, what it caught since its last "
		"visit is not known");
	expect_warning(b, "traps",
		"farm,block,trap,pest,hung\nQuarle Top,Slip,1,CM,2026-07-01\n",
		"file.csv, line 2: trap 1 of Quarle Top hangs already since "
		"2026-06-01; hung again on 2026-07-01, what it caught since its last "
		"visit is not known");
	book_close(b);
}

static void a_traps_file_does_not_pull_what_is_counted_later(void **state)
{
	struct book *b = farm_book();

	(void)state;
	must_take(b, "visits", HEAD "Quarle Top,1,2026-06-08,counted,4\n");
	expect_refused(b, "traps", "pulled too early",
		"farm,block,trap,pest,pulled\nQuarle Top,Slip,1,CM,2026-06-01\n",
		"file.csv, line 2: trap 1 of Quarle Top does not hang on 2026-06-08 "
		"(counted, in the book): it is pulled on 2026-06-01" AGAIN);
	must_take(b, "traps",
		"farm,block,trap,pest,pulled\nQuarle Top,Slip,1,CM,2026-06-09\n");
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_visit_to_a_trap_that_does_not_hang_is_refused),
		cmocka_unit_test(a_hanging_between_makes_it_right_in_any_order),
		cmocka_unit_test(old_seasons_are_looked_at_too),
		cmocka_unit_test(every_day_of_the_book_is_read),
		cmocka_unit_test(one_complaint_stands_for_a_stretch),
		cmocka_unit_test(what_the_book_held_before_is_no_fault_of_the_file),
		cmocka_unit_test(hung_while_it_hangs_is_taken_and_told),
		cmocka_unit_test(a_traps_file_does_not_pull_what_is_counted_later),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
