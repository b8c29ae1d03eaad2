#include "desk.h"

#define HEAD                                                                           \
	"farm,trap,date,outcome,reason,count,females,others,card,lure,stirred,scout,"  \
	"note\n"

static void a_visit_row_is_refused(void **state)
{
	static const struct {
		const char *why, *row, *want;
	} row[] = {
		{ "a blank is never zero", "Quarle Top,2,2026-07-01,,,,,,,,,,",
			"column count: an empty count is not 0; write 0 if there was "
			"no moth, or an outcome without a count, such as skipped" },
		{ "nor when it says counted",
			"Quarle Top,2,2026-07-01,counted,,,,,,,,,",
			"column count: an empty count is not 0; write 0 if there was "
			"no moth, or an outcome without a count, such as skipped" },
		{ "nor on a full card", "Quarle Top,2,2026-07-01,floor,,,,,,,,,",
			"column count: an empty count is not 0; write 0 if there was "
			"no moth, or an outcome without a count, such as skipped" },
		{ "a skipped trap has no count",
			"Quarle Top,2,2026-07-01,skipped,,0,,,,,,,",
			"column count: \"0\" does not go with the outcome skipped, "
			"which has no count; leave it empty, or write counted" },
		{ "nor females", "Quarle Top,2,2026-07-01,missing,,,1,,,,,,",
			"column females: \"1\" goes with a count only; leave it "
			"empty" },
		{ "nor others", "Quarle Top,2,2026-07-01,missing,,,,1,,,,,",
			"column others: \"1\" goes with a count only; leave it empty" },
		{ "more females than moths", "Quarle Top,2,2026-07-01,,,5,6,,,,,,",
			"column females: \"6\" is more than the count; females are a "
			"part of it" },
		{ "an unknown farm", "Quarle,2,2026-07-01,,,5,,,,,,,",
			"column farm: \"Quarle\" is not in the book; it has: "
			"Nethermoss, Quarle Top" },
		{ "a trap of another farm", "Nethermoss,2,2026-07-01,,,5,,,,,,,",
			"column trap: \"2\" is no trap of Nethermoss, which has: 1" },
		{ "tomorrow", "Quarle Top,2,2026-07-22,,,5,,,,,,,",
			"column date: \"2026-07-22\" lies after today, 2026-07-21" },
		{ "an unknown outcome", "Quarle Top,2,2026-07-01,zero,,,,,,,,,",
			"column outcome: \"zero\" is not right; it takes one of: hung, "
			"counted, floor, skipped, spoiled, missing, pulled" },
		{ "a reason of another outcome",
			"Quarle Top,2,2026-07-01,skipped,down,,,,,,,,",
			"column reason: \"down\" is no reason of the outcome skipped; "
			"there are: re-entry, weather, time, other" },
		{ "a reason where none goes",
			"Quarle Top,2,2026-07-01,counted,down,1,,,,,,,",
			"column reason: \"down\" does not go with the outcome counted; "
			"leave it empty" },
		{ "an unknown lure", "Quarle Top,3,2026-07-01,,,5,,,,CM 1,,,",
			"column lure: \"CM 1\" is not in the book; lures of that pest: "
			"OFM standard" },
		{ "an unknown card", "Quarle Top,2,2026-07-01,,,5,,,paper,,,,",
			"column card: \"paper\" is not in the book; it has: delta "
			"liner, small liner, sticky sphere, wing bottom" },
		{ "a lure of another pest",
			"Quarle Top,2,2026-07-01,,,5,,,,OFM standard,,,",
			"column lure: \"OFM standard\" draws another pest than this "
			"trap's; a trap keeps the scent, so it has one pest for life" },
		{ "neither yes nor no", "Quarle Top,2,2026-07-01,,,5,,,,,maybe,,",
			"column stirred: \"maybe\" is not right; it takes one of: no, "
			"yes" },
		{ "a scout's name too long",
			"Quarle Top,2,2026-07-01,,,5,,,,,,abcdefghijklmnopqrstuvwx,",
			"column scout: \"abcdefghijklmnopqrstuvwx\" is not right; it "
			"takes a text of at most 23 letters in one line (an accented "
			"one counts as two)" },
	};
	struct book *b = farm_book();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct buf text = { 0 }, want = { 0 };
		buf_addf(&text, HEAD "%s\n", row[i].row);
		buf_addf(&want, "file.csv, line 2, %s", row[i].want);
		expect_refused(b, "visits", row[i].why, text.text, want.text);
		buf_free(&text);
		buf_free(&want);
	}
	book_close(b);
}

/* What the diary has after one row for trap 2, as an export writes it. */
static void a_visit_row_is_taken_as_it_says(void **state)
{
	static const struct {
		const char *why, *row, *want;
	} row[] = {
		{ "a count alone is counted", ",,0,,,,,,,", "counted,,0,,,,,,," },
		{ "the highest count", ",,9999,,,,,,,", "counted,,9999,,,,,,," },
		{ "all females", ",,5,5,2,,,yes,AB,x", "counted,,5,5,2,,,yes,AB,x" },
		{ "at least", "floor,,40,,,delta liner,,no,,",
			"floor,,40,,,delta liner,,,," },
		{ "hung: new of the usual kinds", "hung,,,,,,,,,",
			"hung,,,,,delta liner,CM 1 mg,,," },
		{ "hung with the old ones", "hung,,,,,kept,kept,,,",
			"hung,,,,,kept,kept,,," },
		{ "hung with others", "hung,,,,,wing bottom,CM long-life,,,",
			"hung,,,,,wing bottom,CM long-life,,," },
		{ "counted: left as they were", "counted,,1,,,kept,,,,",
			"counted,,1,,,,,,," },
		{ "skipped for a reason", "skipped,re-entry,,,,,,,,",
			"skipped,re-entry,,,,,,,," },
		{ "spoiled without a count", "spoiled,card lost,,,,,,,,",
			"spoiled,card lost,,,,,,,," },
		{ "spoiled with one", "spoiled,,7,,,,,,,", "spoiled,,7,,,,,,," },
		{ "pulled with one", "pulled,,3,,,,,,,", "pulled,,3,,,,,,," },
		{ "letters in either case", "Missing,,,,,,,,,", "missing,,,,,,,,," },
		{ "a note like a formula", "counted,,1,,,,,,,'=SUM(A1)",
			"counted,,1,,,,,,,'=SUM(A1)" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct book *b = farm_book();
		struct buf text = { 0 }, want = { 0 };
		buf_addf(&text,
			HEAD "Quarle Top,2,2026-07-20,hung,,,,,,,,,\n"
			     "Quarle Top,2,2026-07-21,%s\n",
			row[i].row);
		buf_addf(&want, "Quarle Top,2,2026-07-21,%s\r\n", row[i].want);
		must_take(b, "visits", text.text);
		char *got = give(b, "visits");
		const char *line = strstr(got, "Quarle Top,2,2026-07-21");
		expect_text(row[i].why, line ? line : got, want.text);
		free(got);
		buf_free(&text);
		buf_free(&want);
		book_close(b);
	}
}

static void the_same_visit_is_passed_over(void **state)
{
	struct book *b = farm_book();
	struct imported out = { 0 };
	struct err e = { 0 };

	(void)state;
	must_take(b, "visits", "farm,trap,date,count\nQuarle Top,1,2026-05-08,4\n");
	assert_true(take(b, "visits",
		"farm,trap,date,count\nQuarle Top,1,2026-05-08,4\nQuarle "
		"Top,1,2026-05-15,6\n",
		&out, &e));
	assert_int_equal(out.n_same, 1);
	assert_int_equal(out.n_new, 1);
	imported_free(&out);
	expect_refused(b, "visits", "another count on that day",
		"farm,trap,date,count\nQuarle Top,1,2026-05-08,5\n",
		"file.csv, line 2: trap 1 of Quarle Top has a visit on 2026-05-08 "
		"already: \"counted 4\", not \"counted 5\"");
	book_close(b);
}

/* A file of traps makes bare visits; the file of visits knows more about them. */
static void a_bare_hanging_gives_way_to_a_fuller_one(void **state)
{
	struct book *b = farm_book();
	struct imported out = { 0 };
	struct err e = { 0 };

	(void)state;
	assert_true(take(b, "visits",
		HEAD "Quarle Top,1,2026-05-01,hung,,,,,,CM long-life,,AB,by the gate\n",
		&out, &e));
	assert_int_equal(out.n_changed, 1);
	imported_free(&out);
	char *got = give(b, "visits");
	assert_non_null(strstr(got, "Quarle Top,1,2026-05-01,hung,,,,,delta liner,"
				    "CM long-life,,AB,by the gate\r\n"));
	free(got);
	expect_refused(b, "visits", "a full one gives way to nothing",
		HEAD "Quarle Top,1,2026-05-01,hung,,,,,,,,CD,\n",
		"file.csv, line 2: trap 1 of Quarle Top has a visit on 2026-05-01 "
		"already (hung), with other details");
	book_close(b);
}

static void a_visit_with_a_scout_is_not_bare(void **state)
{
	struct book *b = farm_book();

	(void)state;
	must_take(b, "visits", HEAD "Quarle Top,2,2026-05-01,hung,,,,,,,,AB,\n");
	expect_refused(b, "visits", "somebody said so",
		HEAD "Quarle Top,2,2026-05-01,hung,,,,,,,,CD,\n",
		"file.csv, line 2: trap 2 of Quarle Top has a visit on 2026-05-01 "
		"already (hung), with other details");
	book_close(b);
}

static void a_bare_hanging_is_no_count(void **state)
{
	struct book *b = farm_book();

	(void)state;
	expect_refused(b, "visits", "another outcome",
		"farm,trap,date,count\nQuarle Top,1,2026-05-01,0\n",
		"file.csv, line 2: trap 1 of Quarle Top has a visit on 2026-05-01 "
		"already: \"hung\", not \"counted 0\"");
	expect_refused(b, "visits", "nor a pulling",
		"farm,trap,date,outcome\nQuarle Top,1,2026-05-01,pulled\n",
		"file.csv, line 2: trap 1 of Quarle Top has a visit on 2026-05-01 "
		"already: \"hung\", not \"pulled\"");
	book_close(b);
}

/* What was found to fit is remembered for the time of an import, not beyond a
 * change. */
static void a_lure_that_changes_its_pest_fits_no_more(void **state)
{
	struct book *b = farm_book();
	struct lure_kinds lures = { 0 };
	struct traps traps = { 0 };
	struct err e = { 0 };
	bool same;

	(void)state;
	assert_true(book_lures(b, &lures, &e) && book_traps(b, 0, &traps, &e));
	struct lure_kind *k = lures.items;
	struct visit v = { .trap = traps.items[0].id, .outcome = OUTCOME_COUNTED };
	while (strcmp(k->name, "CM long-life") != 0)
		k++;
	v.new_lure = k->id;
	v.day = day_of("2026-06-01");
	v.females = v.others = COUNT_NONE;
	assert_true(book_begin(b, &e));
	assert_true(book_add_visit(b, &v, NULL, &same, &e));
	v.day++;
	assert_true(book_add_visit(b, &v, NULL, &same, &e));
	for (size_t i = 0; i < traps.n; i++) /* a pest that is not this trap's */
		if (traps.items[i].pest != traps.items[0].pest)
			k->pest = traps.items[i].pest;
	assert_true(book_put_lure(b, k, &e));
	v.day++;
	assert_false(book_add_visit(b, &v, NULL, &same, &e));
	assert_int_equal(e.kind, ERR_INPUT);
	book_rollback(b);
	free(lures.items);
	free(traps.items);
	book_close(b);
}

static void a_date_twice_names_both_lines(void **state)
{
	static const char *const files[] = {
		/* by date, against it, and with other traps between */
		"Quarle Top,1,2026-06-01,1\nQuarle Top,1,2026-06-08,1\n"
		"Quarle Top,1,2026-06-15,1\nQuarle Top,1,2026-06-08,1\n",
		"Quarle Top,1,2026-06-15,1\nQuarle Top,1,2026-06-08,1\n"
		"Quarle Top,1,2026-06-01,1\nQuarle Top,1,2026-06-08,1\n",
		"Nethermoss,1,2026-06-08,1\nQuarle Top,1,2026-06-08,1\n"
		"Quarle Top,2,2026-06-08,1\nQuarle Top,1,2026-06-08,1\n",
	};
	struct book *b = farm_book();

	(void)state;
	for (size_t i = 0; i < sizeof files / sizeof *files; i++) {
		struct buf text = { 0 };
		buf_addf(&text, "farm,trap,date,count\n%s", files[i]);
		expect_refused(b, "visits", files[i], text.text,
			"file.csv, line 5, column date: \"2026-06-08\" is in the file "
			"twice for this trap, in line 3 too; a trap has one visit a "
			"day");
		buf_free(&text);
	}
	book_close(b);
}

static void an_export_goes_by_farm_order_and_date(void **state)
{
	struct book *b = farm_book();

	(void)state;
	must_take(b, "traps", "farm,block,trap,pest,order\nQuarle Top,Slip,1,CM,9\n");
	must_take(b, "visits",
		"farm,trap,date,outcome,count\nQuarle Top,1,2026-05-08,,1\n"
		"Quarle Top,3,2026-06-01,,2\nQuarle Top,3,2026-05-01,hung,\n"
		"Nethermoss,1,2026-07-01,hung,\n");
	char *got = give(b, "visits");
	expect_text("order", got,
		"farm,trap,date,outcome,reason,count,females,others,card,lure,stirred,"
		"scout,note\r\n"
		"Nethermoss,1,2026-07-01,hung,,,,,wing bottom,CM long-life,,,\r\n"
		"Quarle Top,3,2026-05-01,hung,,,,,delta liner,OFM standard,,,\r\n"
		"Quarle Top,3,2026-06-01,counted,,2,,,,,,,\r\n"
		"Quarle Top,1,2026-05-01,hung,,,,,delta liner,CM 1 mg,,,\r\n"
		"Quarle Top,1,2026-05-08,counted,,1,,,,,,,\r\n");
	free(got);
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_visit_row_is_refused),
		cmocka_unit_test(a_visit_row_is_taken_as_it_says),
		cmocka_unit_test(the_same_visit_is_passed_over),
		cmocka_unit_test(a_bare_hanging_gives_way_to_a_fuller_one),
		cmocka_unit_test(a_visit_with_a_scout_is_not_bare),
		cmocka_unit_test(a_bare_hanging_is_no_count),
		cmocka_unit_test(a_lure_that_changes_its_pest_fits_no_more),
		cmocka_unit_test(a_date_twice_names_both_lines),
		cmocka_unit_test(an_export_goes_by_farm_order_and_date),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
