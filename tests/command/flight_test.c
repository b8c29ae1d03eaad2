/* The flight command on the demo's book: its flights, its sentences, its statuses. */
#define _XOPEN_SOURCE 700 /* nftw */

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "demo_book.h"

static int fill_book(void **state)
{
	static const char *const files[][2] = { { "traps", "traps" },
		{ "visits", "visits" }, { "visits", "visits-2025" },
		{ "thresholds", "thresholds" }, { "weather", "weather" },
		{ "biofix", "biofix" } };

	return program_fill(state, files, sizeof files / sizeof *files);
}

/* Runs flight with these arguments on the demo's day. */
static void fly(struct ran *r, const char *arguments)
{
	char line[200];

	snprintf(line, sizeof line, "--book d.db --today 2026-07-21 flight %s",
		arguments);
	program_run(r, line);
}

/* The number of rows that begin with `start`. */
static size_t count_rows(const char *text, const char *start)
{
	size_t n = 0;

	for (const char *line = text; line && *line; line = strchr(line, '\n')) {
		line += *line == '\n';
		n += strncmp(line, start, strlen(start)) == 0;
	}
	return n;
}

static void demo_has_two_flights_of_cm_and_three_of_ofm(void **state)
{
	static const struct {
		const char *why, *pest, *start;
		size_t n;
	} row[] = {
		{ "CM, all farms", "CM", ",,", 2 },
		{ "CM, a farm", "CM", "Addermoor,", 2 },
		{ "CM, a farm with few moths", "CM", "Hather Bend,", 2 },
		{ "OFM, all farms", "OFM", ",,", 3 },
		{ "OFM, a farm", "OFM", "Addermoor,", 3 },
		{ "OFM, the disrupted farm", "OFM", "Drumsorrel,", 3 },
	};
	struct ran r = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char arguments[40];

		snprintf(arguments, sizeof arguments, "--pest %s --csv", row[i].pest);
		fly(&r, arguments);
		assert_int_equal(r.status, 0);
		if (count_rows(r.out.text, row[i].start) != row[i].n)
			fail_msg("%s: not %d:\n%s", row[i].why, (int)row[i].n,
				r.out.text);
	}
	program_forget(&r);
}

static void csv_has_iso_dates_and_words_of_files(void **state)
{
	static const char start[] =
		"farm,block,flight,first,peak_week,peak_catch,d10,d50,d90,moths,flags\r\n"
		"Addermoor,Old Kiln,1,2025-";
	struct ran r = { 0 };

	(void)state;
	fly(&r, "--pest CM --farm Addermoor --block Old~Kiln --season 2025 --csv");
	assert_true(strncmp(r.out.text, start, strlen(start)) == 0);
	fly(&r, "--pest CM --farm Addermoor --csv");
	assert_non_null(strstr(r.out.text, ",at least; traps changed\r\n"));
	program_forget(&r);
}

static void all_farms_come_first_and_then_each_with_such_traps(void **state)
{
	struct ran r = { 0 };

	(void)state;
	fly(&r, "--pest OBLR");
	assert_true(strncmp(r.out.text, "Flight  OBLR  all farms", 23) == 0);
	assert_non_null(strstr(r.out.text, "\nFlight  OBLR  Hather Bend"));
	assert_null(strstr(r.out.text, "Addermoor"));
	program_forget(&r);
}

static void a_farm_shows_biofix_heat_and_what_comes_next(void **state)
{
	static const char *const parts[] = { "Flight  CM  Addermoor", "\n 2025 ",
		"flight 2", "biofix Tue 12 May 2026", "after Tue 5 May, by Tue 12 May",
		"earlier seasons: 2025: 6 May, 2024: 14 May", "since biofix: at least",
		"2 days", "\nNext\n", "(as in 2 earlier", "\nPassed\n",
		"egg hatch begins", "Intermountain fruit guide" };
	struct ran r = { 0 };

	(void)state;
	fly(&r, "--pest CM --farm Addermoor");
	const char *at = r.out.text;
	for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) {
		const char *found = strstr(at, parts[i]);
		if (!found)
			fail_msg("no \"%s\" where it belongs:\n%s", parts[i],
				r.out.text);
		at = found;
	}
	program_forget(&r);
}

static void an_open_biofix_is_suggested_and_nothing_comes_next(void **state)
{
	struct ran r = { 0 };

	(void)state;
	fly(&r, "--pest CM --farm Hather~Bend");
	assert_non_null(strstr(r.out.text, "\nbiofix not set\n"));
	assert_non_null(strstr(r.out.text, "after Thu 23 Apr, by Thu 7 May"));
	assert_non_null(strstr(r.out.text, "not known: biofix not set"));
	program_forget(&r);
}

/* An earlier season has an outlook no more: this season's would mislead. */
static void an_earlier_season_is_shown_without_what_comes_next(void **state)
{
	struct ran r = { 0 };

	(void)state;
	fly(&r, "--pest CM --farm Addermoor --season 2025");
	assert_non_null(strstr(r.out.text, "season 2025"));
	assert_non_null(strstr(r.out.text, "biofix Tue 6 May 2025"));
	assert_null(strstr(r.out.text, "\nNext\n"));
	assert_null(strstr(r.out.text, "\nPassed\n"));
	program_forget(&r);
}

static void status_says_what_went_wrong(void **state)
{
	static const struct {
		const char *why, *arguments;
		int status;
		const char *says;
	} row[] = {
		{ "no pest", "--farm Addermoor", 2, "--pest CM" },
		{ "no such option", "--pest CM --year 2026", 2, "it takes --pest" },
		{ "a block without its farm", "--pest CM --block Ridge", 2, "--farm" },
		{ "a trap without its farm", "--pest CM --trap 5", 2, "--farm" },
		{ "no year", "--pest CM --season 26", 2, "such as 2026" },
		{ "the year before the first", "--pest CM --season 1899", 2, "1899" },
		{ "no such pest", "--pest XM", 4, "CM" },
		{ "no such farm", "--pest CM --farm Adder", 4, "Addermoor" },
		{ "no such block", "--pest CM --farm Addermoor --block Ridge", 4,
			"Old Kiln" },
		{ "a trap of another pest", "--pest CM --farm Addermoor --trap 17", 4,
			"there are: 1, 2" },
		{ "a trap of another block",
			"--pest CM --farm Addermoor --block Old~Kiln --trap 6", 4,
			"there are: 1, 2, 3, 4, 5\n" },
		{ "no trap at all", "--pest SJS --farm Addermoor --trap 1", 4,
			"there are: none" },
		{ "a year without a visit", "--pest CM --season 1900", 0, "" },
		{ "a trap", "--pest CM --farm Addermoor --trap 1", 0, "" },
	};
	struct ran r = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		fly(&r, row[i].arguments);
		if (r.status != row[i].status || !strstr(r.err.text, row[i].says))
			fail_msg("%s: status %d, \"%s\"", row[i].why, r.status,
				r.err.text);
		if (row[i].status && r.out.n)
			fail_msg("%s: stdout has \"%s\"", row[i].why, r.out.text);
	}
	program_run(&r, "--book none.db flight --pest CM");
	assert_int_equal(r.status, 4);
	program_forget(&r);
}

static void flight_is_ascii_where_utf8_does_not_show(void **state)
{
	struct ran r = { 0 };

	(void)state;
	setenv("LC_CTYPE", "C", 1);
	fly(&r, "--pest CM");
	setenv("LC_CTYPE", "C.UTF-8", 1);
	assert_true(r.out.n > 0);
	for (const char *p = r.out.text; *p; p++)
		if ((unsigned char)*p >= 0x80)
			fail_msg("%s", p);
	program_forget(&r);
}

static void flight_changes_nothing(void **state)
{
	struct buf before = { 0 }, after = { 0 };
	struct ran r = { 0 };

	(void)state;
	program_read("d.db", &before);
	fly(&r, "--pest CM");
	program_read("d.db", &after);
	assert_int_equal(before.n, after.n);
	assert_memory_equal(before.text, after.text, before.n);
	buf_free(&before);
	buf_free(&after);
	program_forget(&r);
}

/* The demo's rule of Long Row counts since biofix: with it the block is judged. */
static void a_threshold_since_biofix_decides_on_the_demo(void **state)
{
	struct ran r = { 0 };

	(void)state;
	program_run(&r, "--book d.db --today 2026-07-21 week --farm Drumsorrel --csv");
	assert_non_null(strstr(r.out.text,
		"Drumsorrel,Long Row,,OFM,2.2500,2.2500,91,block-total,biofix,>,3,"
		"near,"));
	program_forget(&r);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(demo_has_two_flights_of_cm_and_three_of_ofm),
		cmocka_unit_test(csv_has_iso_dates_and_words_of_files),
		cmocka_unit_test(all_farms_come_first_and_then_each_with_such_traps),
		cmocka_unit_test(a_farm_shows_biofix_heat_and_what_comes_next),
		cmocka_unit_test(an_open_biofix_is_suggested_and_nothing_comes_next),
		cmocka_unit_test(an_earlier_season_is_shown_without_what_comes_next),
		cmocka_unit_test(status_says_what_went_wrong),
		cmocka_unit_test(flight_is_ascii_where_utf8_does_not_show),
		cmocka_unit_test(flight_changes_nothing),
		cmocka_unit_test(a_threshold_since_biofix_decides_on_the_demo),
	};

	return cmocka_run_group_tests(tests, fill_book, program_teardown);
}
