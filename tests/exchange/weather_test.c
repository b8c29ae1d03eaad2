/* Files of weather, stations and biofix dates. */
#include "desk.h"

#define HEAD "station,date,min,max,unit\n"

static void weather_comes_in_any_order_and_either_unit(void **state)
{
	static const char *const want = "station,date,min,max,unit\r\n"
					"Bank,2026-05-01,-2.5000,11,C\r\n"
					"Weir,2026-04-30,50,,F\r\n"
					"Weir,2026-05-01,0,70.2500,F\r\n"
					"Weir,2026-05-02,,21,C\r\n";
	struct imported out = { 0 };
	struct err e = { 0 };
	struct book *b = new_book();

	(void)state;
	assert_true(take(b, "weather",
		"unit,max,date,min,station\n"
		"C,21,2026-05-02,,Weir\n"
		"F,70.25,2026-05-01,0,Weir\n"
		"c,11,2026-05-01,-2.5,Bank\n"
		"F,,2026-05-03,,Weir\n"
		"F,,2026-04-30,50.00,Weir\n",
		&out, &e));
	assert_int_equal(out.n_new, 4);
	assert_int_equal(out.notes.n, 1);
	assert_string_equal(out.notes.items[0],
		"days without a minimum and a maximum, which stay missing: 1");
	char *got = give(b, "weather");
	expect_text("given out", got, want);
	imported_free(&out);
	out = (struct imported){ 0 };
	assert_true(take(b, "weather", got, &out, &e));
	assert_int_equal(out.n_same, 4);
	assert_int_equal(out.n_new + out.n_changed, 0);
	imported_free(&out);
	free(got);
	book_close(b);
}

static void a_wrong_day_of_weather_is_named(void **state)
{
	static const struct {
		const char *why, *text, *want;
	} row[] = {
		{ "no unit", HEAD "Weir,2026-05-01,5,15,\n",
			"file.csv, line 2, column unit: a value is missing; it takes "
			"one of: C, F" },
		{ "no such unit", HEAD "Weir,2026-05-01,5,15,K\n",
			"file.csv, line 2, column unit: \"K\" is not right; it takes "
			"one of: C, F" },
		{ "no column of units", "station,date,min,max\nWeir,2026-05-01,5,15\n",
			"file.csv, line 1: the column unit is missing; a file of "
			"weather needs it" },
		{ "29 February of a common year",
			HEAD "Weir,2026-02-28,5,15,C\nWeir,2026-02-29,5,15,C\n",
			"file.csv, line 3, column date: \"2026-02-29\" is not right; "
			"it takes a date of the calendar as year-month-day, such as "
			"2026-07-21" },
		{ "tomorrow", HEAD "Weir,2026-07-22,5,15,C\n",
			"file.csv, line 2, column date: \"2026-07-22\" lies after "
			"today, 2026-07-21" },
		{ "minimum above the maximum", HEAD "Weir,2026-05-01,15.1,15,C\n",
			"file.csv, line 2, column min: \"15.1\" cannot be: the minimum "
			"is above the maximum" },
		{ "F typed as C", HEAD "Weir,2026-05-01,48,66,C\n",
			"file.csv, line 2, column max: \"66\" cannot be: no weather is "
			"hotter than 60 degrees C; are these degrees F?" },
		{ "one of them F typed as C", HEAD "Weir,2026-05-01,-9,52,C\n",
			"file.csv, line 2, column max: \"52\" cannot be: no day goes "
			"through more than 60 degrees C; is one of them in degrees "
			"F?" },
		{ "colder than any", HEAD "Weir,2026-05-01,-90.1,,C\n",
			"file.csv, line 2, column min: \"-90.1\" cannot be: no weather "
			"is colder than -90 degrees C" },
		{ "one day F typed as C",
			HEAD "Weir,2026-05-01,4,12,C\nWeir,2026-05-02,40,58,C\n",
			"file.csv, line 3, column date: \"2026-05-02\" with 40 to 58 C "
			"does not go with 4 to 12 C on 2026-05-01: no weather changes "
			"a day's mean by more than 30 degrees C overnight; is one of "
			"the days in degrees F?" },
		{ "the same, backwards",
			HEAD "Weir,2026-05-02,40,58,C\nWeir,2026-05-01,4,12,C\n",
			"file.csv, line 3, column date: \"2026-05-01\" with 4 to 12 C "
			"does not go with 40 to 58 C on 2026-05-02: no weather changes "
			"a day's mean by more than 30 degrees C overnight; is one of "
			"the days in degrees F?" },
		{ "a day twice",
			HEAD "Weir,2026-05-01,4,12,C\nBank,2026-05-01,4,12,C\n"
			     "Weir,2026-05-01,4,12,C\n",
			"file.csv, line 4, column date: \"2026-05-01\" is in this file "
			"before; a station has one row a day" },
		{ "a decimal comma", HEAD "Weir,2026-05-01,\"4,5\",12,C\n",
			"file.csv, line 2, column min: \"4,5\" is not right; it takes "
			"a number from -150 to 150 with a decimal point, such as "
			"21.5" },
		{ "no number", HEAD "Weir,2026-05-01,n/a,12,C\n",
			"file.csv, line 2, column min: \"n/a\" is not right; it takes "
			"a number from -150 to 150 with a decimal point, such as "
			"21.5" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct book *b = new_book();
		expect_refused(b, "weather", row[i].why, row[i].text, row[i].want);
		book_close(b);
	}
}

static void the_last_good_day_of_weather_is_taken(void **state)
{
	static const char *const rows[] = {
		"2026-07-21,5,15,C",    /* today */
		"2026-05-01,15,15,C",   /* minimum on the maximum */
		"2026-05-01,0,60,C",    /* the hottest and the widest */
		"2026-05-01,-90,-60,C", /* the coldest */
		"2026-05-01,32,140,F",  /* the hottest in F: 60 C */
		"2024-02-29,5,15,C",    /* a leap day */
	};
	char text[200];

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct book *b = new_book();
		snprintf(text, sizeof text, HEAD "Weir,%s\n", rows[i]);
		must_take(b, "weather", text);
		book_close(b);
	}
	struct book *b = new_book(); /* a jump of 30 degrees of the mean */
	must_take(
		b, "weather", HEAD "Weir,2026-05-01,0,10,C\nWeir,2026-05-02,30,40,C\n");
	book_close(b);
}

static void another_weather_of_a_day_is_refused_with_both(void **state)
{
	struct book *b = new_book();

	(void)state;
	must_take(b, "weather", HEAD "Weir,2026-05-01,4,12,C\n");
	expect_refused(b, "weather", "another maximum", HEAD "Weir,2026-05-01,4,13,C\n",
		"file.csv, line 2: Weir has the weather of 2026-05-01 already: \"4 to "
		"12 C\", not \"4 to 13 C\"");
	expect_refused(b, "weather", "a jump from a day of the book",
		HEAD "Weir,2026-04-30,50,58,C\n",
		"file.csv, line 2, column date: \"2026-04-30\" with 50 to 58 C does "
		"not go with 4 to 12 C on 2026-05-01: no weather changes a day's mean "
		"by more than 30 degrees C overnight; is one of the days in degrees "
		"F?");
	book_close(b);
}

static void stations_say_where_they_are_and_who_goes_by_them(void **state)
{
	static const char *const want = "station,lat,lon,farm\r\n"
					"Bank,,,\r\n"
					"Weir,41.250000,-3.500000,Nethermoss\r\n"
					"Weir,41.250000,-3.500000,Quarle Top\r\n";
	struct imported out = { 0 };
	struct err e = { 0 };
	struct book *b = farm_book();

	(void)state;
	must_take(b, "stations",
		"station,farm,lat,lon\nWeir,Quarle Top,41.25,-3.5\n"
		"Weir,Nethermoss,,\nBank,,,\n");
	char *got = give(b, "stations");
	expect_text("given out", got, want);
	assert_true(take(b, "stations", got, &out, &e));
	assert_int_equal(out.n_same, 3);
	imported_free(&out);
	free(got);
	/* A farm moves to another station. */
	must_take(b, "stations", "station,farm\nBank,Nethermoss\n");
	got = give(b, "stations");
	assert_non_null(strstr(got, "Bank,,,Nethermoss\r\nWeir,41.250000,-3.500000,"
				    "Quarle Top\r\n"));
	free(got);
	book_close(b);
}

static void a_wrong_station_is_named(void **state)
{
	static const struct {
		const char *why, *text, *want;
	} row[] = {
		{ "half a position", "station,lat,lon\nWeir,41.25,\n",
			"file.csv, line 2, column lon: is missing; lat and lon go "
			"together" },
		{ "off the globe", "station,lat,lon\nWeir,90.1,0\n",
			"file.csv, line 2, column lat: \"90.1\" is not right; it takes "
			"degrees from -90 to 90 with a decimal point, such as "
			"46.251849" },
		{ "two places", "station,lat,lon\nWeir,41,3\nWeir,41,3.5\n",
			"file.csv, line 3, column lat: \"41\" and its lon are another "
			"place than this file has said before" },
		{ "no such farm", "station,farm\nWeir,Quarl\n",
			"file.csv, line 2, column farm: \"Quarl\" is not in the book; "
			"it has: Nethermoss, Quarle Top" },
		{ "two stations of a farm",
			"station,farm\nWeir,Nethermoss\nBank,Nethermoss\n",
			"file.csv, line 3, column farm: \"Nethermoss\" goes by another "
			"station in this file; a farm goes by one" },
	};
	struct book *b = farm_book();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		expect_refused(b, "stations", row[i].why, row[i].text, row[i].want);
	book_close(b);
}

static void biofix_dates_replace_those_of_their_season(void **state)
{
	struct imported out = { 0 };
	struct err e = { 0 };
	struct book *b = farm_book();

	(void)state;
	must_take(b, "biofix",
		"farm,pest,season,date,rule\nQuarle Top,CM,2026,2026-05-08,first-moth\n"
		"Quarle Top,OFM,,2026-04-12,\nNethermoss,CM,2025,2025-05-01,by eye\n");
	assert_true(take(b, "biofix",
		"farm,pest,date\nQuarle Top,CM,2026-05-09\nNethermoss,CM,2025-05-01\n",
		&out, &e));
	assert_int_equal(out.n_changed, 1);
	assert_int_equal(out.n_same, 1);
	imported_free(&out);
	char *got = give(b, "biofix");
	expect_text("given out", got,
		"farm,pest,season,date,rule\r\n"
		"Nethermoss,CM,2025,2025-05-01,by eye\r\n"
		"Quarle Top,CM,2026,2026-05-09,first-moth\r\n"
		"Quarle Top,OFM,2026,2026-04-12,\r\n");
	free(got);
	book_close(b);
}

/* The season that a date falls in is that of its farm. */
static void a_southern_season_is_of_the_year_that_it_began_in(void **state)
{
	struct farms farms = { 0 };
	struct err e = { 0 };
	struct book *b = farm_book();

	(void)state;
	assert_true(book_farms(b, &farms, &e));
	farms.items[0].season_start = 701;
	assert_true(book_put_farm(b, &farms.items[0], &e));
	must_take(b, "biofix", "farm,pest,date\nNethermoss,CM,2026-01-10\n");
	must_take(b, "biofix", "farm,pest,date\nQuarle Top,CM,2026-01-10\n");
	char *got = give(b, "biofix");
	assert_non_null(strstr(got, "Nethermoss,CM,2025,2026-01-10"));
	assert_non_null(strstr(got, "Quarle Top,CM,2026,2026-01-10"));
	must_take(b, "biofix", got);
	free(got);
	free(farms.items);
	book_close(b);
}

static void a_wrong_biofix_is_named(void **state)
{
	static const struct {
		const char *why, *text, *want;
	} row[] = {
		{ "no such farm", "farm,pest,date\nQuarl,CM,2026-05-08\n",
			"file.csv, line 2, column farm: \"Quarl\" is not in the book; "
			"it has: Nethermoss, Quarle Top" },
		{ "another year's season",
			"farm,pest,season,date\nNethermoss,CM,2024,2026-05-08\n",
			"file.csv, line 2, column season: \"2024\" began in another "
			"year than the date's or the one before it; its date is "
			"2026-05-08" },
		{ "no such pest beside no date", "date,farm,pest\n,Nethermoss,XM\n",
			"file.csv, line 2, column date: a value is missing; it takes a "
			"date of the calendar as year-month-day, such as 2026-07-21" },
		{ "tomorrow", "farm,pest,date\nNethermoss,CM,2026-07-22\n",
			"file.csv, line 2, column date: \"2026-07-22\" lies after "
			"today, 2026-07-21" },
		{ "two of a season",
			"farm,pest,date\nNethermoss,CM,2026-05-08\n"
			"Nethermoss,CM,2026-05-09\n",
			"file.csv, line 3, column date: \"2026-05-09\" is a second "
			"biofix of CM on Nethermoss in the season of 2026; there is "
			"one" },
		{ "two of one that the book has",
			"farm,pest,date\nQuarle Top,CM,2026-05-08\n"
			"Quarle Top,CM,2026-05-09\n",
			"file.csv, line 3, column date: \"2026-05-09\" is a second "
			"biofix of CM on Quarle Top in the season of 2026; there is "
			"one" },
	};
	struct book *b = farm_book();

	(void)state;
	must_take(b, "biofix", "farm,pest,date\nQuarle Top,CM,2026-05-01\n");
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		expect_refused(b, "biofix", row[i].why, row[i].text, row[i].want);
	book_close(b);
}

static void what_the_book_lacks_is_named_beside_a_bad_value(void **state)
{
	struct imported out = { 0 };
	struct err e = { 0 };
	struct book *b = farm_book();

	(void)state;
	assert_false(take(b, "biofix", "farm,pest,date\nQuarl,XM,soon\n", &out, &e));
	assert_int_equal(out.n_problems, 3);
	imported_free(&out);
	out = (struct imported){ 0 };
	assert_false(
		take(b, "stations", "station,lat,farm\nWeir,north,Quarl\n", &out, &e));
	assert_int_equal(out.n_problems, 2);
	imported_free(&out);
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(weather_comes_in_any_order_and_either_unit),
		cmocka_unit_test(a_wrong_day_of_weather_is_named),
		cmocka_unit_test(the_last_good_day_of_weather_is_taken),
		cmocka_unit_test(another_weather_of_a_day_is_refused_with_both),
		cmocka_unit_test(stations_say_where_they_are_and_who_goes_by_them),
		cmocka_unit_test(a_wrong_station_is_named),
		cmocka_unit_test(biofix_dates_replace_those_of_their_season),
		cmocka_unit_test(a_southern_season_is_of_the_year_that_it_began_in),
		cmocka_unit_test(a_wrong_biofix_is_named),
		cmocka_unit_test(what_the_book_lacks_is_named_beside_a_bad_value),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
