#include "ghcn.h"

#define MISSING_5 "-9999   -9999   -9999   -9999   -9999   "

/* Two lines put together by hand from the columns of the readme: May 2012, days 1 to 3.
 * Day 2 has its maximum flagged I, day 3 no minimum. */
static const char may[] =
	"XX000000001201205TMAX"
	"  153  0  161 I0  -12H S" MISSING_5 MISSING_5 MISSING_5 MISSING_5 MISSING_5
	"-9999   -9999   -9999   \r\n"
	"XX000000001201205TMIN"
	"   44  0   50  0-9999   " MISSING_5 MISSING_5 MISSING_5 MISSING_5 MISSING_5
	"-9999   -9999   -9999\n";

static void a_dly_file_is_read_by_its_columns(void **state)
{
	(void)state;
	assert_int_equal(strcspn(may, "\r"), 269);
	expect_reading(ghcn_read_dly, "by hand", may, NULL,
		"XX000000001 2012-05-01 4.4/15.3; XX000000001 2012-05-02 5.0/-; "
		"XX000000001 2012-05-03 -/-1.2");
}

static void what_is_left_out_is_told(void **state)
{
	struct buf text = { 0 };
	struct sentences notes = { 0 };
	struct ghcn g;

	(void)state;
	buf_add(&text, may);
	add_dly(&text, "XX000000001 189912 TMAX", "1=10 2=20X");
	add_dly(&text, "XX000000001 201205 TMIN", "1=44 4=20X 5=20G 6=19G");
	assert_true(read_bytes(ghcn_read_dly, text.text, text.n, NULL, &g));
	ghcn_notes(&g, &notes);
	assert_int_equal(notes.n, 5);
	assert_string_equal(notes.items[0],
		"temperatures that did not pass the archive's own checks and are "
		"missing here: 4 (by quality flag: G 2, I 1, X 1)");
	assert_string_equal(notes.items[1], "temperatures missing in the file: 84");
	assert_string_equal(notes.items[2],
		"days with only one of minimum and maximum, which give no degree-days: "
		"2");
	assert_string_equal(
		notes.items[3], "temperatures given twice, both times the same: 1");
	assert_string_equal(
		notes.items[4], "temperatures from before 1900, left out: 2");
	sentences_free(&notes);
	ghcn_free(&g);
	buf_free(&text);
}

static void what_is_wanted_is_taken_in_order(void **state)
{
	struct buf text = { 0 };

	(void)state;
	add_dly(&text, "XX000000002 201206 TMIN", "1=10");
	add_dly(&text, "XX000000001 201206 PRCP", "1=9999 2=-1");
	add_dly(&text, "XX000000001 201205 TAVG", "1=7");
	buf_add(&text, "\n");
	add_dly(&text, "XX000000001 201206 TMAX", "30=210 2=155");
	add_dly(&text, "XX000000001 201206 TMIN", "2=-5");
	expect_reading(ghcn_read_dly, "all stations", text.text, NULL,
		"XX000000001 2012-06-02 -0.5/15.5; XX000000001 2012-06-30 -/21.0; "
		"XX000000002 2012-06-01 1.0/-");
	expect_reading(ghcn_read_dly, "one station", text.text, "XX000000002",
		"XX000000002 2012-06-01 1.0/-");
	expect_reading(ghcn_read_dly, "no such station", text.text, "XX000000003",
		"w has no TMIN or TMAX of the station XX000000003 that counts");
	expect_reading(ghcn_read_dly, "nothing at all", "", NULL,
		"w has no TMIN or TMAX that counts");
	buf_free(&text);
}

static void a_wrong_day_is_named(void **state)
{
	static const struct {
		const char *why, *head, *days, *want;
	} row[] = {
		{ "29 February in a leap year", "XX000000001 201202 TMAX", "29=10",
			"XX000000001 2012-02-29 -/1.0" },
		{ "29 February in another", "XX000000001 201102 TMAX", "28=10 29=10",
			"w, line 2: 2011-02-29 is no day of the calendar, yet has a "
			"temperature" },
		{ "31 June", "XX000000001 201206 TMIN", "31=100",
			"w, line 2: 2012-06-31 is no day of the calendar, yet has a "
			"temperature" },
		{ "today", "XX000000001 202607 TMIN", "21=100",
			"XX000000001 2026-07-21 10.0/-" },
		{ "tomorrow", "XX000000001 202607 TMIN", "22=100",
			"w, line 2: 2026-07-22 is later than today" },
		{ "month 13", "XX000000001 201213 TMIN", "1=100",
			"w, line 2: columns 12-17: \"201213\" is no year and month" },
		{ "month 0", "XX000000001 201200 TMIN", "1=100",
			"w, line 2: columns 12-17: \"201200\" is no year and month" },
		{ "a year too far", "XX000000001 220001 TMIN", "1=100",
			"w, line 2: columns 12-17: \"220001\" is no year and month" },
		{ "a quality flag that is none", "XX000000001 201206 TMIN", "1=100i",
			"w, line 2: \"i\" stands for the quality flag, which is a "
			"blank or a capital; do the columns fit the layout?" },
		{ "a station's name", "XX0000 0001 201206 TMIN", "1=100",
			"w, line 2: \"XX0000 0001\" is no station of GHCN-Daily, which "
			"has 11 letters and digits" },
		{ "degrees F in tenths", "XX000000001 201206 TMAX", "1=720",
			"w, line 2: station XX000000001, 2012-06-01, maximum 72.0 C: "
			"no weather is hotter than 60 degrees C; are these degrees "
			"F?" },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct buf text = { 0 };
		add_dly(&text, "XX000000009 201201 SNOW", "1=5");
		add_dly(&text, row[i].head, row[i].days);
		expect_reading(ghcn_read_dly, row[i].why, text.text, NULL, row[i].want);
		buf_free(&text);
	}
}

static void a_wrong_pair_of_lines_is_named(void **state)
{
	static const struct {
		const char *why, *first, *first_days, *second, *second_days, *want;
	} row[] = {
		{ "the same day again", "XX000000001 201206 TMAX", "1=150 2=160",
			"XX000000001 201206 TMAX", "1=150 2=170",
			"w, line 2: station XX000000001, 2012-06-02: the maximum 17.0 "
			"is here a second time; before, it was 16.0" },
		{ "a minimum again", "XX000000001 201206 TMIN", "1=150",
			"XX000000001 201206 TMIN", "1=151",
			"w, line 2: station XX000000001, 2012-06-01: the minimum 15.1 "
			"is here a second time; before, it was 15.0" },
		{ "minimum above maximum", "XX000000001 201206 TMAX", "1=150 2=160",
			"XX000000001 201206 TMIN", "1=50 2=161",
			"w, line 1: station XX000000001, 2012-06-02, 16.1 to 16.0 C: "
			"the minimum is above the maximum" },
		{ "a jump in the mean", "XX000000001 201206 TMAX", "1=150 2=590",
			"XX000000001 201206 TMIN", "1=50 2=430",
			"w, line 1: station XX000000001, 2012-06-02, 43.0 to 59.0 C "
			"after 5.0 to 15.0 C the day before: no weather changes a "
			"day's mean by more than 30 degrees C overnight; is one of the "
			"days in degrees F?" },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct buf text = { 0 };
		add_dly(&text, row[i].first, row[i].first_days);
		add_dly(&text, row[i].second, row[i].second_days);
		expect_reading(ghcn_read_dly, row[i].why, text.text, NULL, row[i].want);
		buf_free(&text);
	}
}

/* Neither do two days with another between them. */
static void two_stations_make_no_jump(void **state)
{
	struct buf text = { 0 };

	(void)state;
	add_dly(&text, "XX000000001 201206 TMAX", "1=150");
	add_dly(&text, "XX000000001 201206 TMIN", "1=50");
	add_dly(&text, "XX000000002 201206 TMAX", "2=590 4=90");
	add_dly(&text, "XX000000002 201206 TMIN", "2=430 4=20");
	expect_reading(ghcn_read_dly, "hot here, cool there", text.text, NULL,
		"XX000000001 2012-06-01 5.0/15.0; XX000000002 2012-06-02 43.0/59.0; "
		"XX000000002 2012-06-04 2.0/9.0");
	buf_free(&text);
}

static void a_line_that_is_no_dly_line_is_named(void **state)
{
	struct buf text = { 0 };
	static const struct {
		const char *why;
		size_t at, n;     /* these characters of line 1 */
		const char *by;   /* are replaced by these */
		const char *want; /* NULL: fine */
	} row[] = {
		{ "as it is", 0, 0, "", NULL },
		{ "blanks at the end taken off", 266, 3, "", NULL },
		{ "a digit taken off", 265, 4, "",
			"w, line 1: has 265 characters; a line of a .dly file has 269, "
			"one month of one element" },
		{ "one too long", 269, 0, " ",
			"w, line 1: has 270 characters; a line of a .dly file has 269, "
			"one month of one element" },
		{ "a decimal point", 21, 5, " 15.3",
			"w, line 1: 2012-06-01: \" 15.3\" is no temperature in whole "
			"tenths of a degree C, such as 153 for 15.3; missing is "
			"-9999" },
		{ "an empty value", 21, 5, "     ",
			"w, line 1: 2012-06-01: \"     \" is no temperature in whole "
			"tenths of a degree C, such as 153 for 15.3; missing is "
			"-9999" },
		{ "control bytes do not reach the terminal", 21, 5, "\x1b[31m",
			"w, line 1: 2012-06-01: \"?[31m\" is no temperature in whole "
			"tenths of a degree C, such as 153 for 15.3; missing is "
			"-9999" },
	};

	(void)state;
	add_dly(&text, "XX000000001 201206 TMAX", "1=153");
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct buf line = { 0 };
		buf_add_n(&line, text.text, row[i].at);
		buf_add(&line, row[i].by);
		buf_add(&line, text.text + row[i].at + row[i].n);
		expect_reading(ghcn_read_dly, row[i].why, line.text, NULL,
			row[i].want ? row[i].want : "XX000000001 2012-06-01 -/15.3");
		buf_free(&line);
	}
	buf_free(&text);
}

static void all_problems_are_counted_and_the_first_are_kept(void **state)
{
	struct buf text = { 0 };
	struct ghcn g;

	(void)state;
	for (int i = 0; i < 60; i++)
		buf_add(&text, "nonsense\n");
	assert_false(read_bytes(ghcn_read_dly, text.text, text.n, NULL, &g));
	assert_int_equal(g.n_problems, 60);
	assert_int_equal(g.problems.n, PROBLEMS_MAX);
	ghcn_free(&g);
	buf_free(&text);
}

/* Whatever byte is changed or lost, the reader says something or takes something. */
static void torn_files_do_no_harm(void **state)
{
	char torn[sizeof may];
	uint32_t seed = 7;

	(void)state;
	for (int i = 0; i < 20000; i++) {
		struct ghcn g;
		memcpy(torn, may, sizeof may);
		for (int k = 0; k <= i % 3; k++) {
			seed = seed * 1664525u + 1013904223u;
			torn[(seed >> 8) % (sizeof may - 1)] = (char)(seed >> 24);
		}
		size_t n = i % 2 == 0 ? sizeof may - 1 : (seed >> 8) % sizeof may;
		bool ok = read_bytes(ghcn_read_dly, torn, n, NULL, &g);
		assert_true(ok ? g.n > 0 : g.problems.n > 0);
		ghcn_free(&g);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_dly_file_is_read_by_its_columns),
		cmocka_unit_test(what_is_left_out_is_told),
		cmocka_unit_test(what_is_wanted_is_taken_in_order),
		cmocka_unit_test(a_wrong_day_is_named),
		cmocka_unit_test(a_wrong_pair_of_lines_is_named),
		cmocka_unit_test(two_stations_make_no_jump),
		cmocka_unit_test(a_line_that_is_no_dly_line_is_named),
		cmocka_unit_test(all_problems_are_counted_and_the_first_are_kept),
		cmocka_unit_test(torn_files_do_no_harm),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
