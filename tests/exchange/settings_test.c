/* Files of settings. */
#include "desk.h"

#include "base/records.h"

#define HEAD "name,value\n"

static const char *const usual = "name,value\r\njoin_nights,5\r\nlong_nights,10\r\n"
				 "stale_nights,10\r\nnear_x100,70\r\nread_num,2\r\n"
				 "read_den,3\r\nopen_days,2\r\nfill_days,0\r\n"
				 "skip_biofix_day,0\r\nodd_count,20\r\nodd_times,5\r\n"
				 "scout,\r\narea_unit,ha\r\nlength_unit,m\r\n"
				 "degree_unit,C\r\ndate_style,day-month\r\n"
				 "week_start,monday\r\npaper,a4\r\n";

static void a_new_book_gives_out_the_usual_numbers(void **state)
{
	struct imported out = { 0 };
	struct err e = { 0 };
	struct book *b = new_book();
	char *got = give(b, "settings");

	(void)state;
	expect_text("given out", got, usual);
	assert_true(take(b, "settings", got, &out, &e));
	assert_int_equal(out.n_same, 18);
	assert_int_equal(out.n_new + out.n_changed, 0);
	imported_free(&out);
	out = (struct imported){ 0 };
	assert_true(take(b, "settings", HEAD "fill_days,\nscout,\n", &out, &e));
	assert_int_equal(out.n_same, 2);
	imported_free(&out);
	free(got);
	book_close(b);
}

static void settings_that_a_file_sets_hold_and_the_others_stay(void **state)
{
	struct imported out = { 0 };
	struct limits limits;
	struct err e = { 0 };
	struct book *b = new_book();

	(void)state;
	assert_true(take(b, "settings",
		HEAD "fill_days,3\nSkip_Biofix_Day,1\nscout,Ida\nopen_days,2\n", &out,
		&e));
	assert_int_equal(out.n_changed, 3);
	assert_int_equal(out.n_same, 1);
	imported_free(&out);
	assert_true(book_limits(b, &limits, &e));
	assert_int_equal(limits.fill_days, 3);
	assert_int_equal(limits.skip_biofix_day, 1);
	assert_int_equal(limits.near_x100, limits_usual.near_x100);
	char *got = give(b, "settings");
	assert_non_null(strstr(got, "\r\nfill_days,3\r\nskip_biofix_day,1\r\n"));
	assert_non_null(strstr(got, "\r\nscout,Ida\r\n"));
	struct book *again = new_book();
	must_take(again, "settings", got);
	char *two = give(again, "settings");
	expect_text("in another book", two, got);
	free(got);
	free(two);
	book_close(again);
	must_take(b, "settings", HEAD "fill_days,\nskip_biofix_day,\nscout,\n");
	got = give(b, "settings");
	expect_text("empty is usual", got, usual);
	free(got);
	book_close(b);
}

static void numbers_that_bound_each_other_change_together_in_any_order(void **state)
{
	static const char *const files[] = {
		HEAD "read_num,4\nread_den,5\njoin_nights,12\nlong_nights,14\n",
		HEAD "long_nights,14\njoin_nights,12\nread_den,5\nread_num,4\n",
		HEAD "read_den,1\nread_num,1\nlong_nights,3\njoin_nights,3\n",
	};
	struct book *b = new_book();

	(void)state;
	for (size_t i = 0; i < sizeof files / sizeof *files; i++)
		must_take(b, "settings", files[i]);
	book_close(b);
}

/* The sentences are those of the book. */
static void a_wrong_setting_is_named(void **state)
{
	static const struct {
		const char *why, *text, *want;
	} row[] = {
		{ "no such setting", HEAD "fill,2\n",
			"file.csv, line 2, column name: \"fill\" is not right; it "
			"takes one of: join_nights, long_nights, stale_nights, "
			"near_x100, read_num, read_den, open_days, fill_days, "
			"skip_biofix_day, odd_count, odd_times, scout, area_unit, "
			"length_unit, degree_unit, date_style, week_start, paper" },
		{ "no such unit", HEAD "area_unit,rods\n",
			"file.csv, line 2, column value: \"rods\" is not right; it "
			"takes one of: ha, acre" },
		{ "too many days", HEAD "fill_days,4\n",
			"file.csv, line 2, column value: \"4\" is not right; it takes "
			"a whole number from 0 to 3" },
		{ "a word for a number", HEAD "open_days,1\nskip_biofix_day,yes\n",
			"file.csv, line 3, column value: \"yes\" is not right; it "
			"takes a whole number from 0 to 1" },
		{ "more than all traps", HEAD "read_num,4\n",
			"file.csv, line 2: the settings ask for 4 of 3 traps; the "
			"first number must not be the larger one" },
		{ "joined beyond long", HEAD "join_nights,11\n",
			"file.csv, line 2: the settings join up to 11 nights but call "
			"10 long; the first number must not be the larger one" },
		{ "twice", HEAD "fill_days,1\nfill_days,2\n",
			"file.csv, line 3, column name: \"fill_days\" is in this file "
			"before" },
		{ "a long scout", HEAD "scout,abcdefghijklmnopqrstuvwx\n",
			"file.csv, line 2, column value: \"abcdefghijklmnopqrstuvwx\" "
			"is too long for a scout, who has at most 23 letters (an "
			"accented one counts as two)" },
	};
	struct book *b = new_book();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		expect_refused(b, "settings", row[i].why, row[i].text, row[i].want);
	must_take(b, "settings", HEAD "scout,abcdefghijklmnopqrstuvw\n");
	book_close(b);
}

/* Else the book would keep them as words of no meaning. */
static void every_number_in_the_file_is_one_that_the_book_looks_at(void **state)
{
	struct book *b = new_book();
	struct err e;
	char name[NAME_BYTES];

	(void)state;
	for (const char *at = strchr(usual, '\n') + 1; strncmp(at, "scout", 5) != 0;
		at = strchr(at, '\n') + 1) {
		snprintf(name, sizeof name, "%.*s", (int)strcspn(at, ","), at);
		if (book_put_setting(b, name, "many", &e))
			fail_msg("%s", name);
		assert_int_equal(e.kind, ERR_INPUT);
	}
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_new_book_gives_out_the_usual_numbers),
		cmocka_unit_test(settings_that_a_file_sets_hold_and_the_others_stay),
		cmocka_unit_test(
			numbers_that_bound_each_other_change_together_in_any_order),
		cmocka_unit_test(a_wrong_setting_is_named),
		cmocka_unit_test(
			every_number_in_the_file_is_one_that_the_book_looks_at),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
