/* From files of weather to sums of degree-days, through the program itself. */
#define _XOPEN_SOURCE 700 /* nftw */

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/csv.h"
#include "program.h"

#include <math.h>

/* tests/reference/weather-2012.csv as a file of weather: see season_2012.h there for
 * where it comes from. Its columns stand in another order here. */
static void write_2012(FILE *from)
{
	struct buf text = { 0 };
	struct err e = { 0 };
	struct csv csv;

	buf_add(&text, "unit,max,min,date,station\n");
	csv_open(&csv, from, "weather-2012.csv");
	csv_next(&csv, &e);
	while (csv_next(&csv, &e) == CSV_ROW)
		buf_addf(&text, "C,%s,%s,%s,%s\n", csv.field[3].text, csv.field[2].text,
			csv.field[1].text, csv.field[0].text);
	csv_close(&csv);
	program_write("weather.csv", text.text);
	buf_free(&text);
}

static int fill_book(void **state)
{
	FILE *weather = fopen("tests/reference/weather-2012.csv", "r");
	struct ran r = { 0 };
	int failed = weather ? program_setup(state) : -1;

	if (failed == 0) {
		write_2012(weather);
		program_run(&r, "--book b.db import weather weather.csv");
		failed = r.status;
		fprintf(stderr, "%s", r.err.text);
	}
	if (weather)
		fclose(weather);
	program_forget(&r);
	return failed;
}

/* The nth line of the text, from 0; its end too. */
static const char *line_of(const char *text, int n, size_t *size)
{
	for (; n > 0; n--)
		text = strchr(text, '\n') + 1;
	*size = strcspn(text, "\r\n");
	return text;
}

/* Computed by another program on these days, single sine, horizontal cutoff, 50/88 F,
 * from a biofix of 1 May that counts itself (tests/reference/degree_days_test.c has the
 * same from the season alone): the day on which a sum is reached, and the sum then. */
static void a_measured_year_reaches_its_sums_on_the_days_it_should(void **state)
{
	static const struct {
		const char *site, *from;
		double target;
		const char *day;
		double sum; /* -1: not given */
	} row[] = {
		{ "Seattle", "2012-01-01", 175, "2012-05-12", -1 },
		{ "Seattle", "2012-05-01", 220, "2012-06-03", 222.52 },
		{ "Seattle", "2012-05-01", 640, "2012-07-14", 652.17 },
		{ "Seattle", "2012-05-01", 1250, "2012-08-18", 1257.13 },
		{ "New~York", "2012-01-01", 175, "2012-04-13", -1 },
		{ "New~York", "2012-05-01", 220, "2012-05-21", 225.45 },
		{ "New~York", "2012-05-01", 250, "2012-05-23", 256.95 },
		{ "New~York", "2012-05-01", 340, "2012-05-28", 360.36 },
		{ "New~York", "2012-05-01", 640, "2012-06-13", 652.50 },
		{ "New~York", "2012-05-01", 920, "2012-06-26", 935.13 },
		{ "New~York", "2012-05-01", 1060, "2012-07-01", 1080.25 },
		{ "New~York", "2012-05-01", 1250, "2012-07-07", 1266.74 },
	};
	struct ran r = { 0 };
	char line[200];

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		double before = 0, sum = 0, dd;
		size_t size = 1;
		snprintf(line, sizeof line,
			"--book b.db degree-days --station %s --base 50F --cap 88F "
			"--method sine --cutoff horizontal --from %s --to %s --csv",
			row[i].site, row[i].from, row[i].day);
		program_run(&r, line);
		if (r.status != 0)
			fail_msg("%s: %s", line, r.err.text);
		const char *at = line_of(r.out.text, 1, &size);
		for (; size; at = line_of(at, 1, &size)) {
			before = sum;
			if (sscanf(at, "%*10c,%*f,%*f,%lf,%lf,0", &dd, &sum) != 2)
				fail_msg("%.*s", (int)size, at);
		}
		if (before >= row[i].target || sum < row[i].target ||
			(row[i].sum >= 0 && fabs(sum - row[i].sum) > 0.005 + 1e-9))
			fail_msg("%s: %.4f, then %.4f", line, before, sum);
	}
	program_forget(&r);
}

/* The pest's own rule is the one that the shipped file gives it. */
static void a_pest_brings_its_rule_and_units_may_be_mixed(void **state)
{
	static const char *const lines[] = {
		"--book b.db degree-days --station Seattle --pest CM --from 2012-05-01 "
		"--to 2012-05-20 --csv",
		"--book b.db degree-days --station Seattle --base 50F --cap 88~f "
		"--method sine --cutoff horizontal --from 2012-05-01 --to 2012-05-20 "
		"--csv",
		"--book b.db degree-days --station Seattle --base 50F "
		"--cap 31.1111111111C --method sine --cutoff horizontal "
		"--from 2012-05-01 --to 2012-05-20 --csv",
	};
	struct ran r = { 0 }, first = { 0 };

	(void)state;
	program_run(&first, lines[0]);
	for (size_t i = 0; i < 3; i++) {
		program_run(&r, lines[i]);
		if (r.status != 0 || strcmp(r.out.text, first.out.text) != 0)
			fail_msg("%s: %s%s", lines[i], r.err.text, r.out.text);
	}
	program_forget(&first);
	program_forget(&r);
}

/* Five days by hand, base 10 C, average: 5, missing, missing, 8, 0. */
static const char gaps[] = "station,date,min,max,unit\n"
			   "Weir,2026-05-01,10,20,C\n"
			   "Weir,2026-05-03,,20,C\n"
			   "Weir,2026-05-04,53.6,75.2,F\n"
			   "Weir,2026-05-05,0,20,C\n";

static void missing_days_are_counted_and_never_zero(void **state)
{
	static const char *const csv = "date,min,max,dd,sum,missing\r\n"
				       "2026-05-01,10,20,5,5,0\r\n"
				       "2026-05-02,,,,5,1\r\n"
				       "2026-05-03,,20,,5,2\r\n"
				       "2026-05-04,12,24,8,13,2\r\n"
				       "2026-05-05,0,20,0,13,2\r\n";
	static const char *const text =
		"Degree-days  Weir\n"
		"base 10 C, method average, cutoff none\n"
		"\n"
		"date           min     max      dd       sum\n"
		"2026-05-01    10.0    20.0     5.0      5.0\n"
		"2026-05-02       -       -       -      5.0+  missing\n"
		"2026-05-03       -    20.0       -      5.0+  missing\n"
		"2026-05-04    12.0    24.0     8.0     13.0+\n"
		"2026-05-05     0.0    20.0     0.0     13.0+\n"
		"\n"
		"at least 13.0 C degree-days from 2026-05-01 to 2026-05-05\n"
		"2 days are missing and add nothing: the sum is a lower bound\n";
	struct ran r = { 0 };

	(void)state;
	program_write("gaps.csv", gaps);
	program_run(&r, "--book g.db --today 2026-07-21 import weather gaps.csv");
	assert_int_equal(r.status, 0);
	program_run(&r,
		"--book g.db --today 2026-07-21 degree-days --station Weir --base 10C "
		"--method average --cutoff none --from 2026-05-01 --csv");
	assert_string_equal(r.out.text, csv);
	program_run(&r,
		"--book g.db --today 2026-07-21 degree-days --station Weir --base 10C "
		"--method average --cutoff none --from 2026-05-01");
	assert_string_equal(r.out.text, text);
	/* What had not come yet is not looked at. */
	program_run(&r,
		"--book g.db --today 2026-05-02 degree-days --station Weir --base 10C "
		"--method average --cutoff none --from 2026-05-01 --csv");
	assert_non_null(strstr(r.out.text, "2026-05-02,,,,5,1\r\n"));
	assert_null(strstr(r.out.text, "2026-05-03"));
	program_forget(&r);
}

static void what_is_asked_wrongly_is_said(void **state)
{
	static const struct {
		const char *why, *line;
		int status;
		const char *says;
	} row[] = {
		{ "no station", "--base 50F --method sine --cutoff none", 2,
			"--station STATION" },
		{ "no first day", "--station Seattle --pest CM", 2, "--from DATE" },
		{ "neither pest nor base", "--station Seattle --from 2012-05-01", 2,
			"--pest CODE, or --base" },
		{ "both", "--station Seattle --pest CM --cap 88F --from 2012-05-01", 2,
			"brings its own base" },
		{ "no unit",
			"--station Seattle --base 50 --method sine --cutoff none "
			"--from 2012-05-01",
			2, "--base \"50\" is no temperature with its unit" },
		{ "no number",
			"--station Seattle --base F --method sine --cutoff none "
			"--from 2012-05-01",
			2, "--base \"F\" is no temperature" },
		{ "two points",
			"--station Seattle --base 5.0.1C --method sine --cutoff none "
			"--from 2012-05-01",
			2, "--base \"5.0.1C\" is no temperature" },
		{ "a hexadecimal number",
			"--station Seattle --base 0xF --method sine --cutoff none "
			"--from 2012-05-01",
			2, "--base \"0xF\" is no temperature" },
		{ "no such method",
			"--station Seattle --base 50F --method cosine --cutoff none "
			"--from 2012-05-01",
			2, "there are: average, average-raised" },
		{ "no such cutoff",
			"--station Seattle --base 50F --method sine --cutoff flat "
			"--from 2012-05-01",
			2, "there are: none, horizontal, intermediate, vertical" },
		{ "a cutoff without its cap",
			"--station Seattle --base 50F --method sine --cutoff vertical "
			"--from 2012-05-01",
			2, "the cap is a number" },
		{ "a cap that nothing looks at",
			"--station Seattle --base 50F --cap 88F --method sine "
			"--cutoff none --from 2012-05-01",
			2, "--cap has no use" },
		{ "a cap below the base",
			"--station Seattle --base 50F --cap 9.9C --method sine "
			"--cutoff horizontal --from 2012-05-01",
			2, "lower than the cap" },
		{ "no date", "--station Seattle --pest CM --from 2012-02-30", 2,
			"--from \"2012-02-30\" is no date" },
		{ "backwards",
			"--station Seattle --pest CM --from 2012-05-02 "
			"--to 2012-05-01",
			3, "2012-05-02, lies after the last one, 2012-05-01" },
		{ "no such station", "--station Seatle --pest CM --from 2012-05-01", 4,
			"it has: New York, Seattle" },
		{ "no such pest", "--station Seattle --pest XM --from 2012-05-01", 4,
			"CM" },
		{ "a pest without a rule",
			"--station Seattle --pest CBFW --from 2012-05-01", 4,
			"CBFW has no base" },
		{ "before the station's days",
			"--station Seattle --pest CM --from 2011-05-01 "
			"--to 2011-05-02",
			4, "Seattle has no weather up to 2011-05-02" },
	};
	struct ran r = { 0 };
	char line[300];

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		snprintf(line, sizeof line, "--book b.db degree-days %s", row[i].line);
		program_run(&r, line);
		if (r.status != row[i].status || !strstr(r.err.text, row[i].says))
			fail_msg("%s: status %d, \"%s\"", row[i].why, r.status,
				r.err.text);
		assert_int_equal(r.out.n, 0);
	}
	program_forget(&r);
}

static void an_archive_file_goes_in_by_its_layout(void **state)
{
	static const char *const file = "XX000000001,20120501,TMAX,211,,,S,\n"
					"XX000000001,20120501,TMIN,111,,,S,\n"
					"XX000000002,20120501,TMAX,99,,X,S,\n"
					"XX000000002,20120501,TMIN,11,,,S,\n";
	struct ran r = { 0 };

	(void)state;
	program_write("2012.csv", file);
	program_run(&r, "--book a.db import ghcn-year 2012.csv --station XX000000001");
	assert_int_equal(r.status, 0);
	assert_string_equal(r.out.text, "ghcn-year, days: 1 new\n");
	program_run(&r, "--book a.db import --station XX000000002 ghcn-year 2012.csv");
	assert_int_equal(r.status, 0);
	assert_non_null(strstr(r.out.text, "by quality flag: X 1"));
	program_run(&r, "--book a.db import ghcn-year 2012.csv");
	assert_non_null(strstr(r.out.text, "ghcn-year, days: 0 new, 2 already there"));
	program_run(&r, "--book a.db import ghcn-dly 2012.csv");
	assert_int_equal(r.status, 3);
	assert_non_null(strstr(r.err.text, "line 1"));
	program_run(&r, "--book a.db import ghcn-dly");
	assert_int_equal(r.status, 2);
	program_run(&r, "--book a.db import ghcn-year none.csv");
	assert_int_equal(r.status, 4);
	program_run(&r, "--book new.db import ghcn-dly 2012.csv");
	assert_int_equal(access("new.db", F_OK), -1); /* nothing went into it */
	program_forget(&r);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			a_measured_year_reaches_its_sums_on_the_days_it_should),
		cmocka_unit_test(a_pest_brings_its_rule_and_units_may_be_mixed),
		cmocka_unit_test(missing_days_are_counted_and_never_zero),
		cmocka_unit_test(what_is_asked_wrongly_is_said),
		cmocka_unit_test(an_archive_file_goes_in_by_its_layout),
	};

	return cmocka_run_group_tests(tests, fill_book, program_teardown);
}
