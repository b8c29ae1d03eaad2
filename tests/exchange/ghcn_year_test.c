#include "ghcn.h"

static void a_by_year_file_is_read(void **state)
{
	(void)state;
	expect_reading(ghcn_read_year, "as it comes",
		"XX000000001,20120503,TMAX,156,,,0,0700\n"
		"XX000000001,20120503,PRCP,15,,,0,0700\n"
		"XX000000002,20120501,TMIN,-9999,,,,\r\n"
		"XX000000001,20120503,TMIN,-44,,,0,0700\n"
		"XX000000002,20120502,TMIN,50,,,0,\n"
		"XX000000002,20120503,TMIN,50,,I,0,\n"
		"XX000000002,18991231,TMIN,50,,,0,",
		NULL, "XX000000001 2012-05-03 -4.4/15.6; XX000000002 2012-05-02 5.0/-");
}

static void only_the_wanted_station_is_looked_at(void **state)
{
	(void)state;
	expect_reading(ghcn_read_year, "the other has nonsense",
		"XX000000001,20120503,TMAX,156,,,0,0700\n"
		"XX000000002,2012,TMIN,x,,,0,0700\n",
		"XX000000001", "XX000000001 2012-05-03 -/15.6");
}

static void what_is_left_out_is_told(void **state)
{
	static const char text[] = "XX000000001,20120503,TMAX,156,,,0,0700\n"
				   "XX000000001,20120503,TMAX,156,,,0,0700\n"
				   "XX000000001,20120504,TMAX,-9999,,,,\n"
				   "XX000000001,18991231,TMAX,50,,,0,\n"
				   "XX000000001,18991231,TMIN,-9999,,,0,\n"
				   "XX000000001,20120504,TMIN,12,,Z,0,\n";
	struct ghcn g;

	(void)state;
	assert_true(read_bytes(ghcn_read_year, text, sizeof text - 1, NULL, &g));
	assert_int_equal(g.n, 1);
	assert_int_equal(g.n_repeated, 1);
	assert_int_equal(g.n_missing, 1);
	assert_int_equal(g.n_early, 1);
	assert_int_equal(g.n_flagged['Z' - 'A'], 1);
	ghcn_free(&g);
}

static void a_wrong_line_is_named(void **state)
{
	static const struct {
		const char *why, *line, *want;
	} row[] = {
		{ "29 February in a leap year", "XX000000001,20120229,TMAX,10,,,0,\n",
			"XX000000001 2012-02-29 -/1.0" },
		{ "29 February in another", "XX000000001,20110229,TMAX,10,,,0,\n",
			"w, line 2: 20110229 is no day of the calendar, yet has a "
			"temperature" },
		{ "a date of another form", "XX000000001,2012-05-03,TMAX,10,,,0,\n",
			"w, line 2: field 2: \"2012-05-03\" is no date such as "
			"20120503" },
		{ "tomorrow", "XX000000001,20260722,TMAX,10,,,0,\n",
			"w, line 2: 20260722 is later than today" },
		{ "too few fields", "XX000000001,20120503,TMAX,10\n",
			"w, line 2: has 4 fields; a line of a by-year file has 8: "
			"station, date, element, value, three flags, time" },
		{ "too many", "XX000000001,20120503,TMAX,10,,,0,,\n",
			"w, line 2: has 9 fields; a line of a by-year file has 8: "
			"station, date, element, value, three flags, time" },
		{ "no element", "XX000000001,20120503,MAX,10,,,0,\n",
			"w, line 2: field 3: \"MAX\" is no element such as TMAX" },
		{ "no station", "here,20120503,TMAX,10,,,0,\n",
			"w, line 2: \"here\" is no station of GHCN-Daily, which has 11 "
			"letters and digits" },
		{ "degrees with decimals", "XX000000001,20120503,TMAX,15.6,,,0,\n",
			"w, line 2: 20120503: \"15.6\" is no temperature in whole "
			"tenths of a degree C, such as 153 for 15.3; missing is "
			"-9999" },
		{ "an empty value", "XX000000001,20120503,TMAX,,,,0,\n",
			"w, line 2: 20120503: \"\" is no temperature in whole tenths "
			"of a degree C, such as 153 for 15.3; missing is -9999" },
		{ "a value that is too long", "XX000000001,20120503,TMAX,100000,,,0,\n",
			"w, line 2: 20120503: \"100000\" is no temperature in whole "
			"tenths of a degree C, such as 153 for 15.3; missing is "
			"-9999" },
		{ "two quality flags", "XX000000001,20120503,TMAX,10,,IX,0,\n",
			"w, line 2: field 6: \"IX\" is no quality flag, which is empty "
			"or one capital" },
		{ "a quality flag that is none", "XX000000001,20120503,TMAX,10,,7,0,\n",
			"w, line 2: \"7\" stands for the quality flag, which is a "
			"blank or a capital; do the columns fit the layout?" },
		{ "an open quote", "\"XX000000001,20120503\n",
			"w, line 2, column 1: the quote before "
			"\"XX000000001,20120503\" is not closed; end the value with a "
			"quote" },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct buf text = { 0 };
		buf_addf(&text, "XX000000009,20120101,SNOW,5,,,0,\n%s", row[i].line);
		expect_reading(
			ghcn_read_year, row[i].why, text.text, NULL, row[i].want);
		buf_free(&text);
	}
}

static void degrees_f_are_not_taken_for_c(void **state)
{
	(void)state;
	expect_reading(ghcn_read_year, "whole degrees F times ten",
		"XX000000001,20120502,TMAX,590,,,0,\n"
		"XX000000001,20120502,TMIN,410,,,0,\n"
		"XX000000001,20120503,TMAX,720,,,0,\n"
		"XX000000001,20120503,TMIN,500,,,0,\n"
		"XX000000001,20120504,TMAX,160,,,0,\n"
		"XX000000001,20120504,TMIN,50,,,0,\n"
		"XX000000001,20120505,TMAX,590,,,0,\n"
		"XX000000001,20120505,TMIN,480,,,0,\n",
		NULL,
		"w, line 3: station XX000000001, 2012-05-03, 50.0 to 72.0 C: no "
		"weather is hotter than 60 degrees C; are these degrees F?; "
		"w, line 7: station XX000000001, 2012-05-05, 48.0 to 59.0 C after 5.0 "
		"to 16.0 C the day before: no weather changes a day's mean by more "
		"than 30 degrees C overnight; is one of the days in degrees F?");
}

static void a_table_with_named_columns_is_refused(void **state)
{
	(void)state;
	expect_reading(ghcn_read_year, "a station's own table",
		"\"STATION\",\"DATE\",\"LATITUDE\",\"TMAX\"\n", NULL,
		"w, line 1: a by-year file has no header row; a file that names its "
		"columns does not say its unit and is not read as one");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_by_year_file_is_read),
		cmocka_unit_test(only_the_wanted_station_is_looked_at),
		cmocka_unit_test(what_is_left_out_is_told),
		cmocka_unit_test(a_wrong_line_is_named),
		cmocka_unit_test(degrees_f_are_not_taken_for_c),
		cmocka_unit_test(a_table_with_named_columns_is_refused),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
