/* Files of farms. */
#include "desk.h"

#define HEAD "farm,season_start,run_weekday,station\n"

static void farms_go_out_as_they_stand(void **state)
{
	struct imported out = { 0 };
	struct err e = { 0 };
	struct book *b = farm_book();

	(void)state;
	must_take(b, "stations", "station\nWeir\n");
	assert_true(take(b, "farms",
		HEAD "Quarle Top,07-01,tue,Weir\nHindmoor,02-29,Sun,\n", &out, &e));
	assert_int_equal(out.n_new, 1);
	assert_int_equal(out.n_changed, 1);
	assert_int_equal(out.notes.n, 0);
	imported_free(&out);
	char *got = give(b, "farms");
	expect_text("given out", got,
		"farm,season_start,run_weekday,station,retired\r\n"
		"Hindmoor,02-29,Sun,,no\r\nNethermoss,01-01,,,no\r\n"
		"Quarle Top,07-01,Tue,Weir,no\r\n");
	out = (struct imported){ 0 };
	assert_true(take(b, "farms", got, &out, &e));
	assert_int_equal(out.n_same, 3);
	imported_free(&out);
	struct book *again = new_book();
	out = (struct imported){ 0 };
	assert_true(take(again, "farms", got, &out, &e));
	assert_int_equal(out.notes.n, 1);
	assert_string_equal(out.notes.items[0],
		"a new weather station, without any weather yet: Weir");
	imported_free(&out);
	char *two = give(again, "farms");
	expect_text("in another book", two, got);
	free(got);
	free(two);
	book_close(again);
	book_close(b);
}

/* A column that the file lacks leaves what is there; an empty value is the default. */
static void what_a_file_of_farms_leaves_out_stays(void **state)
{
	static const struct {
		const char *why, *text, *want;
	} row[] = {
		{ "the weekday alone", "farm,run_weekday\nQuarle Top,Wed\n",
			"Quarle Top,07-01,Wed,Weir,no\r\n" },
		{ "the start alone", "farm,season_start\nQuarle Top,10-01\n",
			"Quarle Top,10-01,Wed,Weir,no\r\n" },
		{ "no weekday", "farm,run_weekday\nQuarle Top,\n",
			"Quarle Top,10-01,,Weir,no\r\n" },
		{ "no station", "farm,station\nQuarle Top,\n",
			"Quarle Top,10-01,,,no\r\n" },
		{ "the usual start", "farm,season_start\nQuarle Top,\n",
			"Quarle Top,01-01,,,no\r\n" },
		{ "put away", "farm,retired\nQuarle Top,Yes\n",
			"Quarle Top,01-01,,,yes\r\n" },
		{ "still put away", "farm,run_weekday\nQuarle Top,Fri\n",
			"Quarle Top,01-01,Fri,,yes\r\n" },
		{ "brought back", "farm,retired\nQuarle Top,\n",
			"Quarle Top,01-01,Fri,,no\r\n" },
	};
	struct book *b = farm_book();

	(void)state;
	must_take(b, "farms", HEAD "Quarle Top,07-01,Tue,Weir\n");
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		must_take(b, "farms", row[i].text);
		char *got = give(b, "farms");
		const char *line = strstr(got, "Quarle Top");
		expect_text(row[i].why, line ? line : got, row[i].want);
		free(got);
	}
	book_close(b);
}

static void a_wrong_farm_is_named(void **state)
{
	static const struct {
		const char *why, *text, *want;
	} row[] = {
		{ "no day of the year", HEAD "Hindmoor,02-30,,\n",
			"file.csv, line 2, column season_start: \"02-30\" is not "
			"right; it takes a day of the year as month-day, such as "
			"05-01" },
		{ "no such weekday", HEAD "Hindmoor,,Tuesday,\n",
			"file.csv, line 2, column run_weekday: \"Tuesday\" is not "
			"right; it takes one of: Mon, Tue, Wed, Thu, Fri, Sat, Sun" },
		{ "a number for a weekday", HEAD "Hindmoor,,2,\n",
			"file.csv, line 2, column run_weekday: \"2\" is not right; it "
			"takes one of: Mon, Tue, Wed, Thu, Fri, Sat, Sun" },
		{ "no name", HEAD ",07-01,,\n",
			"file.csv, line 2, column farm: a value is missing; it takes a "
			"text of at most 47 letters in one line (an accented one "
			"counts as two)" },
		{ "twice", HEAD "Hindmoor,07-01,,Weir\nHindmoor,07-01,,Weir\n",
			"file.csv, line 3, column farm: \"Hindmoor\" is in this file "
			"before" },
	};
	struct book *b = farm_book();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		expect_refused(b, "farms", row[i].why, row[i].text, row[i].want);
	book_close(b);
}

static void biofix_dates_go_along_with_a_new_start_of_the_season(void **state)
{
	static const struct {
		const char *why, *text, *want;
	} row[] = {
		{ "the day itself is of this season", HEAD "Quarle Top,01-10,,\n",
			"2025,2025-01-11,\r\nQuarle Top,CM,2026,2026-01-10,\r\n" },
		{ "both to an earlier year", HEAD "Quarle Top,07-01,,\n",
			"2024,2025-01-11,\r\nQuarle Top,CM,2025,2026-01-10,\r\n" },
		{ "and back", HEAD "Quarle Top,01-01,,\n",
			"2025,2025-01-11,\r\nQuarle Top,CM,2026,2026-01-10,\r\n" },
		{ "no new start", HEAD "Quarle Top,01-01,Mon,\n",
			"2025,2025-01-11,\r\nQuarle Top,CM,2026,2026-01-10,\r\n" },
		{ "another farm's", HEAD "Nethermoss,07-01,,\n",
			"2025,2025-01-11,\r\nQuarle Top,CM,2026,2026-01-10,\r\n" },
	};
	struct book *b = farm_book();

	(void)state;
	must_take(b, "biofix",
		"farm,pest,date\nQuarle Top,CM,2025-01-11\nQuarle Top,CM,2026-01-10\n");
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		must_take(b, "farms", row[i].text);
		char *got = give(b, "biofix");
		const char *first = strstr(got, "Quarle Top,CM,");
		assert_non_null(first);
		expect_text(row[i].why, first + strlen("Quarle Top,CM,"), row[i].want);
		free(got);
	}
	book_close(b);
}

static void two_biofix_dates_of_one_season_are_told_of(void **state)
{
	struct imported out = { 0 };
	struct err e = { 0 };
	struct book *b = farm_book();

	(void)state;
	must_take(b, "biofix",
		"farm,pest,date\nQuarle Top,CM,2025-01-11\nQuarle Top,CM,2026-01-10\n");
	assert_true(take(b, "farms", HEAD "Quarle Top,01-11,,\n", &out, &e));
	assert_int_equal(out.n_warnings, 1);
	assert_string_equal(out.warnings.items[0],
		"Quarle Top: the biofix of 2026-01-10 stays under the season of 2026, "
		"since that of 2025 has one already");
	imported_free(&out);
	char *got = give(b, "biofix");
	assert_non_null(strstr(got, "CM,2025,2025-01-11,\r\nQuarle Top,CM,2026,2026"));
	free(got);
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(farms_go_out_as_they_stand),
		cmocka_unit_test(what_a_file_of_farms_leaves_out_stays),
		cmocka_unit_test(a_wrong_farm_is_named),
		cmocka_unit_test(biofix_dates_go_along_with_a_new_start_of_the_season),
		cmocka_unit_test(two_biofix_dates_of_one_season_are_told_of),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
