#include "desk.h"

#define HEAD                                                                           \
	"pest,crop,lure,farm,block,flight,from,to,until_dd,measure,span,comparator,"   \
	"value\n"

static void a_threshold_row_is_refused(void **state)
{
	static const struct {
		const char *why, *row, *want;
	} row[] = {
		{ "an unknown measure", "CM,,,,,,,,,week,1,>=,5",
			"column measure: \"week\" is not right; it takes one of: "
			"trap-week, block-week, trap-night, block-night, trap-total, "
			"block-total, none" },
		{ "no comparator", "CM,,,,,,,,,trap-week,1,,5",
			"column comparator: a threshold needs one: >= if the value "
			"itself is over, else >" },
		{ "a comparator of another tongue", "CM,,,,,,,,,trap-week,1,=>,5",
			"column comparator: \"=>\" is not right; it takes one of: >=, "
			">" },
		{ "no value", "CM,,,,,,,,,trap-week,1,>=,",
			"column value: a threshold needs one, in moths" },
		{ "a third decimal", "CM,,,,,,,,,trap-week,1,>=,2.125",
			"column value: \"2.125\" is not right; it takes a number from "
			"0 to 999999.99 with a decimal point and at most two "
			"decimals" },
		{ "at least nothing", "CM,,,,,,,,,trap-week,1,>=,0",
			"column value: \"0\" does not fit: at least 0 is true of every "
			"catch; more than 0 means any moth" },
		{ "nine weeks", "CM,,,,,,,,,trap-week,9,>=,5",
			"column span: \"9\" does not fit: the span of a weekly measure "
			"is a number of weeks, 1 to 8" },
		{ "a week since the hanging", "CM,,,,,,,,,block-week,hung,>=,5",
			"column span: \"hung\" does not fit: the span of a weekly "
			"measure is a number of weeks, 1 to 8" },
		{ "how many nights?", "CM,,,,,,,,,trap-night,,>=,5",
			"column span: an empty value does not fit: the span of a "
			"nightly measure is a number of nights, 1 to 366" },
		{ "a total of how long?", "CM,,,,,,,,,trap-total,,>=,5",
			"column span: an empty value does not fit: the span of a total "
			"is 1 to 366 nights, or hung, biofix, flight or treatment" },
		{ "367 nights", "CM,,,,,,,,,trap-total,367,>=,5",
			"column span: \"367\" is not right; it takes weeks (1 to 8) of "
			"a weekly measure, nights (1 to 366) of a nightly one; of a "
			"total nights, hung, biofix, flight or treatment" },
		{ "half a window", "CM,,,,,,05-01,,,trap-week,1,>=,5",
			"column to: an empty value does not fit: a window needs both "
			"its first and its last day, or neither" },
		{ "the other half", "CM,,,,,,,05-01,,trap-week,1,>=,5",
			"column from: an empty value does not fit: a window needs both "
			"its first and its last day, or neither" },
		{ "ten flights", "CM,,,,,10,,,,trap-week,1,>=,5",
			"column flight: \"10\" is not right; it takes a whole number "
			"from 1 to 9" },
		{ "none has no value", "CM,,,,,,,,,none,,,5",
			"column value: \"5\" does not go with the measure none; leave "
			"it empty" },
		{ "none has no span", "CM,,,,,,,,,none,1,,",
			"column span: \"1\" does not go with the measure none, which "
			"compares nothing; leave it empty" },
		{ "an unknown farm", "CM,,,Quarle,,,,,,trap-week,1,>=,5",
			"column farm: \"Quarle\" is not in the book; it has: "
			"Nethermoss, Quarle Top" },
		{ "an unknown block", "CM,,,Nethermoss,Bank,,,,,trap-week,1,>=,5",
			"column block: \"Bank\" is no block of Nethermoss, which has: "
			"Slip" },
		{ "a block of which farm?", "CM,,,,Slip,,,,,trap-week,1,>=,5",
			"column block: \"Slip\" needs its farm in the column farm" },
		{ "a lure of another pest", "CM,,OFM standard,,,,,,,trap-week,1,>=,5",
			"column lure: \"OFM standard\" draws another pest than CM, so "
			"this would never hold" },
	};
	struct book *b = farm_book();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct buf text = { 0 }, want = { 0 };
		buf_addf(&text, HEAD "%s\n", row[i].row);
		buf_addf(&want, "file.csv, line 2, %s", row[i].want);
		expect_refused(b, "thresholds", row[i].why, text.text, want.text);
		buf_free(&text);
		buf_free(&want);
	}
	book_close(b);
}

static void a_threshold_row_is_taken_as_it_says(void **state)
{
	static const struct {
		const char *why, *row, *want;
	} row[] = {
		{ "a week when nothing is said", "CM,,,,,,,,,trap-week,,>=,5",
			"CM,,,,,,,,,,,trap-week,1,>=,5,," },
		{ "more than none", "CM,,,,,,,,,trap-week,8,>,0",
			"CM,,,,,,,,,,,trap-week,8,>,0,," },
		{ "a window over the new year",
			"CM,,,,,,11-15,02-29,,trap-total,366,>,0.5",
			"CM,,,,,,,,11-15,02-29,,trap-total,366,>,0.5000,," },
		{ "where and when",
			"CM,apple,CM 1 mg,Quarle "
			"Top,Slip,2,,,250,block-total,flight,>,3",
			"CM,apple,,CM 1 mg,,Quarle "
			"Top,Slip,2,,,250,block-total,flight,>,3,," },
		{ "timing only", "CM,,,,,,,,,none,,,", "CM,,,,,,,,,,,none,,,,," },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct book *b = farm_book();
		struct buf text = { 0 }, want = { 0 };
		buf_addf(&text, HEAD "%s\n", row[i].row);
		buf_addf(&want, "%s\r\n", row[i].want);
		must_take(b, "thresholds", text.text);
		char *got = give(b, "thresholds");
		expect_text(row[i].why, strchr(got, '\n') + 1, want.text);
		free(got);
		buf_free(&text);
		buf_free(&want);
		book_close(b);
	}
}

static void the_same_rule_is_passed_over(void **state)
{
	struct book *b = farm_book();
	struct imported out = { 0 };
	struct err e = { 0 };

	(void)state;
	assert_true(take(b, "thresholds",
		HEAD
		"CM,,,,,,,,,trap-week,1,>=,5\nCM,,,,,,,,,trap-week,,>=,5.00\n"
		"CM,,,,,,,,,trap-week,1,>,5\nCM,,,,,,,,,none,,,\nCM,,,,,,,,,none,,,\n",
		&out, &e));
	assert_int_equal(out.n_new, 3);
	assert_int_equal(out.n_same, 2);
	imported_free(&out);
	book_close(b);
}

static void take_published(struct book *b, const struct published *f, int n, int same)
{
	struct imported out = { 0 };
	struct err e = { 0 };

	if (!exchange_take_published(b, f, day_of(TODAY), &out, &e))
		fail_msg("%s", e.text);
	assert_int_equal(out.n_new, n);
	assert_int_equal(out.n_same, same);
	assert_true(out.notes.n >= (size_t)(n + same)); /* waiting ones are told last */
	for (size_t i = 0; i < (size_t)(n + same); i++)
		assert_non_null(strstr(out.notes.items[i], "\n    source: "));
	imported_free(&out);
}

/* What the program carries changes; that each row of it goes in does not. */
static void published_thresholds_are_taken_by_a_filter(void **state)
{
	static const struct published ofm1 = { .source = "ofm1" };
	static const struct published august = {
		.pest = "OFM", .crop = "apple", .condition = "conventional"
	};
	static const struct published nothing = { .pest = "OFM", .crop = "cherry" };
	struct book *b = new_book();
	struct imported out = { 0 };
	struct err e = { 0 };

	(void)state;
	take_published(b, &ofm1, 1, 0);
	take_published(b, &ofm1, 0, 1);
	take_published(b, &august, 1, 0);
	char *before = give_all(b);
	assert_false(exchange_take_published(b, &nothing, day_of(TODAY), &out, &e));
	assert_int_equal(e.kind, ERR_NOT_FOUND);
	char *after = give_all(b);
	expect_text("nothing was taken", after, before);
	free(before);
	free(after);
	imported_free(&out);
	book_close(b);
}

static void a_source_is_looked_for_as_whole_words(void **state)
{
	static const struct published cm1 = { .source = "CM1" },
				      m1 = { .source = "M1" };
	struct book *b = new_book();
	struct imported out = { 0 };
	struct err e = { 0 };

	(void)state;
	take_published(b, &cm1, 1, 0); /* not CM10, CM11 */
	assert_false(exchange_take_published(b, &m1, day_of(TODAY), &out, &e));
	assert_int_equal(e.kind, ERR_NOT_FOUND);
	imported_free(&out);
	book_close(b);
}

static void every_published_threshold_goes_in_with_its_source(void **state)
{
	static const struct published all = { 0 };
	struct book *b = new_book();
	struct imported out = { 0 };
	struct rules rules = { 0 };
	struct err e = { 0 };

	(void)state;
	if (!exchange_take_published(b, &all, day_of(TODAY), &out, &e))
		fail_msg("%s", complaint(&out, &e));
	assert_true(book_rules(b, &rules, &e));
	assert_true(rules.n > 20);
	assert_int_equal(rules.n, out.n_new);
	for (size_t i = 0; i < rules.n; i++)
		if (!*rules.items[i].source)
			fail_msg("rule %d has no source", (int)i);
	free(rules.items);
	imported_free(&out);
	book_close(b);
}

static void a_new_book_has_no_thresholds(void **state)
{
	struct book *b = new_book();
	char *got = give(b, "thresholds");

	(void)state;
	assert_string_equal(strchr(got, '\n'), "\n");
	free(got);
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_threshold_row_is_refused),
		cmocka_unit_test(a_threshold_row_is_taken_as_it_says),
		cmocka_unit_test(the_same_rule_is_passed_over),
		cmocka_unit_test(published_thresholds_are_taken_by_a_filter),
		cmocka_unit_test(a_source_is_looked_for_as_whole_words),
		cmocka_unit_test(every_published_threshold_goes_in_with_its_source),
		cmocka_unit_test(a_new_book_has_no_thresholds),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
