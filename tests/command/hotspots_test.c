/* The hotspots command and waypoints on the demo's book: whom it accuses, its
 * sentences, its statuses. */
#define _XOPEN_SOURCE 700 /* nftw */

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "demo_book.h"

#include <stdbool.h>

static int fill_book(void **state)
{
	static const char *const files[][2] = { { "traps", "traps" },
		{ "places", "places" }, { "visits", "visits" },
		{ "visits", "visits-2025" }, { "weather", "weather" },
		{ "biofix", "biofix" } };

	return program_fill(state, files, sizeof files / sizeof *files);
}

static void run(struct ran *r, const char *arguments)
{
	char line[200];

	snprintf(line, sizeof line, "--book d.db --today 2026-07-21 %s", arguments);
	program_run(r, line);
}

/* The last word of the row that begins so; "" when there is none. */
static void answer_of(const char *csv, const char *start, char out[static 32])
{
	const char *line = strstr(csv, start), *end;

	*out = '\0';
	if (!line || !(end = strstr(line, "\r\n")))
		return;
	while (end[-1] != ',')
		end--;
	snprintf(out, 32, "%.*s", (int)strcspn(end, "\r"), end);
}

static void the_bad_corner_is_named_and_nobody_else(void **state)
{
	static const struct {
		const char *why, *start;
		bool is_hot;
	} row[] = {
		{ "the corner", "block,Addermoor: Old Kiln,", true },
		{ "the other block of its farm", "block,Addermoor: Top Pears,", false },
		{ "a clean farm", "block,Drumsorrel: Ridge,", false },
		{ "another", "block,Hather Bend: River End,", false },
	};
	struct ran r = { 0 };

	(void)state;
	run(&r, "hotspots --pest CM --csv");
	assert_int_equal(r.status, 0);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char says[32];

		answer_of(r.out.text, row[i].start, says);
		bool is_hot = strcmp(says, "watch") == 0 || strcmp(says, "clear") == 0;
		if (!*says || is_hot != row[i].is_hot)
			fail_msg("%s: \"%s\" in\n%s", row[i].why, says, r.out.text);
	}
	program_forget(&r);
}

static void csv_has_the_columns_of_the_manual(void **state)
{
	static const char start[] =
		"kind,name,traps,moths,nights,ratio,ratio_lo,ratio_hi,p_luck,p_shuffle,"
		"p_holm,p_bh,says\r\nblock,Old Kiln,4,";
	struct ran r = { 0 };

	(void)state;
	run(&r, "hotspots --pest CM --farm Addermoor --csv");
	if (strncmp(r.out.text, start, strlen(start)) != 0)
		fail_msg("%s", r.out.text);
	assert_non_null(strstr(r.out.text, "\r\nsource,Withy Garth,"));
	program_forget(&r);
}

static void text_leads_from_the_answer_to_the_cautions(void **state)
{
	static const char *const parts[] = { "Hot spots  Addermoor", "traps left out",
		"Old Kiln", "trap-nights", "Sample fruit here", "north  |-",
		"Withy Garth (abandoned", "no proof", "label is the law" };
	struct ran r = { 0 };

	(void)state;
	run(&r, "hotspots --pest CM --farm Addermoor");
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

static void a_flight_and_an_earlier_season_are_windows_of_their_own(void **state)
{
	struct ran r = { 0 };

	(void)state;
	run(&r, "hotspots --pest CM --farm Addermoor --flight 1");
	assert_non_null(strstr(r.out.text, "season 2026, flight 1\n"));
	run(&r, "hotspots --pest CM --farm Addermoor --season 2025");
	assert_non_null(strstr(r.out.text, "season 2025\n"));
	program_forget(&r);
}

static void status_says_what_went_wrong(void **state)
{
	static const struct {
		const char *why, *arguments;
		int status;
		const char *says;
	} row[] = {
		{ "no pest", "hotspots --farm Addermoor", 2, "--pest CM" },
		{ "no such option", "hotspots --pest CM --block Ridge", 2, "--pest" },
		{ "no year", "hotspots --pest CM --season 26", 2, "such as 2026" },
		{ "no flight", "hotspots --pest CM --flight 0", 2, "such as 1" },
		{ "no such pest", "hotspots --pest XM", 4, "CM" },
		{ "no such farm", "hotspots --pest CM --farm Adder", 4, "Addermoor" },
		{ "a flight that was not",
			"hotspots --pest CM --farm Addermoor "
			"--flight 9",
			4, "no flight 9" },
		{ "a pest that nobody traps", "hotspots --pest SJS", 0, "" },
		{ "a year without a visit", "hotspots --pest CM --season 1900", 0, "" },
		{ "waypoints of no farm", "import gpx w.gpx", 2, "--farm FARM" },
		{ "waypoints of no file", "import gpx --farm Addermoor", 2, "FILE" },
		{ "no such file", "import gpx no.gpx --farm Addermoor", 4, "no.gpx" },
		{ "waypoints of another farm", "import gpx in.csv --farm Adder", 4,
			"Addermoor" },
		{ "no waypoints", "import gpx in.csv --farm Addermoor", 3, "in.csv" },
		{ "out without a farm", "export gpx", 2, "--farm FARM" },
	};
	struct ran r = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		run(&r, row[i].arguments);
		if (r.status != row[i].status || !strstr(r.err.text, row[i].says))
			fail_msg("%s: status %d, \"%s\"", row[i].why, r.status,
				r.err.text);
		if (row[i].status && r.out.n)
			fail_msg("%s: stdout has \"%s\"", row[i].why, r.out.text);
	}
	program_run(&r, "--book none.db import gpx in.csv --farm Addermoor");
	assert_int_equal(r.status, 4);
	assert_int_not_equal(access("none.db", F_OK), 0);
	program_forget(&r);
}

static void waypoints_go_out_and_in(void **state)
{
	struct ran r = { 0 };

	(void)state;
	run(&r, "export gpx way.gpx --farm Hather~Bend");
	assert_int_equal(r.status, 0);
	run(&r, "import gpx way.gpx --farm Hather~Bend");
	assert_int_equal(r.status, 0);
	assert_string_equal(r.out.text, "gpx: positions set: 0, there already: 11\n");
	assert_int_equal(r.err.n, 0);
	program_forget(&r);
}

static void hotspots_are_ascii_where_utf8_does_not_show(void **state)
{
	struct ran r = { 0 };

	(void)state;
	setenv("LC_CTYPE", "C", 1);
	run(&r, "hotspots --pest CM");
	setenv("LC_CTYPE", "C.UTF-8", 1);
	assert_true(r.out.n > 0);
	for (const char *p = r.out.text; *p; p++)
		if ((unsigned char)*p >= 0x80)
			fail_msg("%s", p);
	program_forget(&r);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_bad_corner_is_named_and_nobody_else),
		cmocka_unit_test(csv_has_the_columns_of_the_manual),
		cmocka_unit_test(text_leads_from_the_answer_to_the_cautions),
		cmocka_unit_test(
			a_flight_and_an_earlier_season_are_windows_of_their_own),
		cmocka_unit_test(status_says_what_went_wrong),
		cmocka_unit_test(waypoints_go_out_and_in),
		cmocka_unit_test(hotspots_are_ascii_where_utf8_does_not_show),
	};

	return cmocka_run_group_tests(tests, fill_book, program_teardown);
}
