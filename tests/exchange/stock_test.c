/* Pests, lures and cards. */
#include "desk.h"

static void a_row_is_refused(void **state)
{
	static const struct {
		const char *why, *kind, *text, *want;
	} row[] = {
		{ "a pest code too long", "pests", "code\nABCDEFGHIJKL\n",
			"file.csv, line 2, column code: \"ABCDEFGHIJKL\" is not right; "
			"it takes a text of at most 11 letters in one line (an "
			"accented one counts as two)" },
		{ "a life of no days", "lures", "lure,life_days\nx,0\n",
			"file.csv, line 2, column life_days: \"0\" is not right; it "
			"takes a whole number from 1 to 366" },
		{ "a pest that is not there", "lures", "lure,life_days,pest\nx,20,Q\n",
			"file.csv, line 2, column pest: \"Q\" is not in the book; it "
			"has: AM, CBFW, CM, DWB, FTT, GBM, GPTB, LAW, LPTB, OBLR, OFM, "
			"PFM, PTB, RBLR, SFT, SJS, SPFW, STLM, TABM" },
		{ "heat that lengthens", "lures",
			"lure,life_days,hot_days,hot_from,hot_to\nx,20,21,06-01,08-"
			"31\n",
			"file.csv, line 2, column hot_days: \"21\" is longer than "
			"life_days, 20; heat shortens a lure's life" },
		{ "a hot season without its end", "lures",
			"lure,life_days,hot_days,hot_from,hot_to\nx,20,10,06-01,\n",
			"file.csv, line 2, column hot_days: \"10\" goes together with "
			"hot_from and hot_to: all three or none" },
		{ "a lure named kept", "lures", "lure,life_days\nkept,20\n",
			"file.csv, line 2, column lure: \"kept\" cannot name a lure: "
			"in a file of visits it means that the old one stays" },
		{ "a card named kept", "cards", "card,life_days\nkept,20\n",
			"file.csv, line 2, column card: \"kept\" cannot name a card: "
			"in a file of visits it means that the old one stays" },
		{ "marks that fall", "cards",
			"card,life_days,stir_at,change_at,floor_at\nx,30,31,30,50\n",
			"file.csv, line 2, column change_at: \"30\" does not fit: "
			"stir_at 31, change_at 30 and floor_at 50 must rise in this "
			"order" },
	};
	struct book *b = new_book();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		expect_refused(b, row[i].kind, row[i].why, row[i].text, row[i].want);
	book_close(b);
}

static void an_empty_mark_is_the_usual_one(void **state)
{
	static const struct {
		const char *why, *row, *want;
	} row[] = {
		{ "all usual", "zz,30,,,", "zz,30,20,30,50," },
		{ "a small card is stirred no later than changed", "zz,30,,15,",
			"zz,30,15,15,50," },
		{ "a large one has its floor no sooner", "zz,30,,60,",
			"zz,30,20,60,60," },
		{ "all equal", "zz,30,9,9,9", "zz,30,9,9,9," },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct book *b = new_book();
		struct buf text = { 0 }, want = { 0 };
		buf_addf(&text, "card,life_days,stir_at,change_at,floor_at\n%s\n",
			row[i].row);
		buf_addf(&want, "%s,,,,no\r\n", row[i].want);
		must_take(b, "cards", text.text);
		char *got = give(b, "cards");
		const char *line = strstr(got, "zz,");
		expect_text(row[i].why, line ? line : got, want.text);
		free(got);
		buf_free(&text);
		buf_free(&want);
		book_close(b);
	}
}

/* A column that the file lacks leaves what is there; an empty value is the default. */
static void a_kind_in_the_book_is_changed(void **state)
{
	struct book *b = new_book();

	(void)state;
	must_take(b, "lures",
		"lure,pest,life_days,hot_days,hot_from,hot_to,source\n"
		"zz,CM,20,10,06-01,08-31,own\n");
	must_take(b, "lures", "lure,life_days\nzz,25\n");
	char *got = give(b, "lures");
	assert_non_null(strstr(got, "zz,CM,25,10,06-01,08-31,own,,,,no\r\n"));
	free(got);
	must_take(b, "lures", "lure,life_days,hot_days,hot_from,hot_to\nzz,25,,,\n");
	got = give(b, "lures");
	assert_non_null(strstr(got, "zz,CM,25,,,,own,,,,no\r\n"));
	free(got);
	book_close(b);
}

static void what_is_on_the_shelf_is_kept_with_its_day(void **state)
{
	static const struct {
		const char *why, *text, *want;
	} row[] = {
		{ "counted on a day",
			"lure,life_days,stock,stock_day\nzz,20,7,2026-07-01\n",
			"7,2026-07-01,,no\r\n" },
		{ "the line alone", "lure,life_days,reorder_at\nzz,20,3\n",
			"7,2026-07-01,3,no\r\n" },
		{ "counted again, today", "lure,life_days,stock\nzz,20,5\n",
			"5," TODAY ",3,no\r\n" },
		{ "none left is not none kept", "lure,life_days,stock\nzz,20,0\n",
			"0," TODAY ",3,no\r\n" },
		{ "kept no more", "lure,life_days,stock\nzz,20,\n", ",,3,no\r\n" },
		{ "put away", "lure,life_days,retired\nzz,20,yes\n", ",,3,yes\r\n" },
	};
	struct book *b = new_book();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct buf want = { 0 };
		must_take(b, "lures", row[i].text);
		char *got = give(b, "lures");
		buf_addf(&want, "zz,,20,,,,,%s", row[i].want);
		const char *line = strstr(got, "zz,");
		expect_text(row[i].why, line ? line : got, want.text);
		free(got);
		buf_free(&want);
	}
	book_close(b);
}

static void a_kind_twice_in_a_file_is_the_latter(void **state)
{
	struct book *b = new_book();
	struct imported out = { 0 };
	struct err e = { 0 };

	(void)state;
	assert_true(take(b, "pests", "code,name\nZZ,one\nZZ,one\nZZ,two\n", &out, &e));
	assert_int_equal(out.n_new, 1);
	assert_int_equal(out.n_same, 1);
	assert_int_equal(out.n_changed, 1);
	imported_free(&out);
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_row_is_refused),
		cmocka_unit_test(an_empty_mark_is_the_usual_one),
		cmocka_unit_test(a_kind_in_the_book_is_changed),
		cmocka_unit_test(what_is_on_the_shelf_is_kept_with_its_day),
		cmocka_unit_test(a_kind_twice_in_a_file_is_the_latter),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
