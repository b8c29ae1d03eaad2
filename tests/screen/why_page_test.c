#include "screen/why_page.h"

#include "screen/run_page.h"
#include "screen/samples.h"
#include "screen/today_page.h"
#include "screen/week_page.h"

static struct why sample_why(void)
{
	static char text[][120] = {
		"Trap 3: 14.0 a week, threshold 5 or more: OVER",
		"compared: 14 moths in 7 nights, 14 to 21 July",
		"visits read:",
		"21 Jul  14",
		"14 Jul   6  new card",
		"What is counted says little about one trap on one night. The label is "
		"the "
		"law; ask the local extension service.",
	};
	static struct why_line lines[] = {
		{ TONE_OVER, 0, text[0] },
		{ TONE_PLAIN, 2, text[1] },
		{ TONE_QUIET, 2, text[2] },
		{ TONE_PLAIN, 4, text[3] },
		{ TONE_PLAIN, 4, text[4] },
		{ TONE_TITLE, 0, text[5] },
	};
	struct why w = { .lines = lines, .n = sizeof lines / sizeof *lines };

	SET(w.title, "Hollow East \u00b7 trap 3 \u00b7 CM");
	return w;
}

static void why_page_shows_the_lines_wrapped(void **state)
{
	struct why w = sample_why();
	struct why_page p = { .why = &w, .right = "Tue 21 Jul" };
	struct canvas c = { 0 };

	(void)state;
	canvas_size(&c, 24, 80);
	why_page_draw(&p, &c);
	expect_golden("why-80x24", &c, true);
	canvas_size(&c, 12, 40);
	why_page_draw(&p, &c);
	expect_golden("why-40x12", &c, false);
	canvas_free(&c);
}

static void why_page_scrolls_to_its_end_and_no_further(void **state)
{
	struct why w = sample_why();
	struct why_page p = { .why = &w };
	struct canvas c = { 0 };

	(void)state;
	canvas_size(&c, 10, 40); /* 5 rows for 9 lines */
	why_page_draw(&p, &c);
	assert_int_equal(p.top, 0);
	assert_int_equal(p.rows, 5);
	why_page_key(&p, sample_key('^'));
	assert_int_equal(p.top, 0);
	why_page_key(&p, sample_key('2'));
	assert_int_equal(p.top, 1);
	why_page_key(&p, sample_key('1'));
	why_page_draw(&p, &c);
	expect_shows("the end", &c, "extension service.");
	why_page_key(&p, sample_key('9'));
	why_page_key(&p, sample_key('9'));
	assert_int_equal(p.top, 0);
	canvas_free(&c);
}

static void why_page_goes_back(void **state)
{
	struct why w = sample_why();
	struct why_page p = { .why = &w };

	(void)state;
	assert_int_equal(why_page_key(&p, sample_key('\x1b')).want, WANT_BACK);
	assert_int_equal(why_page_key(&p, sample_key('\n')).want, WANT_BACK);
	assert_int_equal(why_page_key(&p, sample_key('?')).want, WANT_HELP);
	assert_int_equal(why_page_key(&p, sample_key('z')).want, WANT_NOTHING);
	expect_keys(why_page_keys());
}

static void why_page_goes_to_the_flight_and_help_does_not(void **state)
{
	struct why w = sample_why();
	struct why_page p = { .why = &w };
	struct help_page help = { .title = "Why", .keys = why_page_keys() };

	(void)state;
	assert_int_equal(why_page_key(&p, sample_key('l')).want, WANT_FLIGHT);
	assert_int_equal(why_page_key(&p, sample_key('d')).want, WANT_DIARY);
	assert_int_equal(help_page_key(&help, sample_key('d')).want, WANT_NOTHING);
	assert_int_equal(help_page_key(&help, sample_key('l')).want, WANT_NOTHING);
	assert_string_equal(help.message.text, "l does nothing here: ? shows the keys");
	expect_keys(help_page_keys());
}

static struct help_page run_help(void)
{
	return (struct help_page){
		.title = "Run", .keys = run_page_keys(), .notes = run_page_notes()
	};
}

static void help_page_shows_every_key_of_the_page(void **state)
{
	struct key_rows keys = run_page_keys();
	struct help_page p = run_help();
	struct canvas c = { 0 };

	(void)state;
	canvas_size(&c, 120, 80);
	help_page_draw(&p, &c);
	for (size_t i = 0; i < keys.n; i++) {
		char line[64];

		snprintf(line, sizeof line, "\n %s", keys.rows[i].key);
		expect_shows("a key", &c, line);
	}
	expect_shows("a mark", &c, "b is a border trap, d a block under mating");
	canvas_size(&c, 24, 80);
	help_page_draw(&p, &c);
	expect_golden("help-run-80x24", &c, false);
	p.keys = week_page_keys();
	p.notes = week_page_notes();
	p.title = "Week";
	canvas_size(&c, 40, 80);
	help_page_draw(&p, &c);
	expect_golden("help-week-80x40", &c, false);
	canvas_free(&c);
}

static void help_page_goes_back(void **state)
{
	struct help_page p = run_help();

	(void)state;
	assert_int_equal(help_page_key(&p, sample_key('?')).want, WANT_NOTHING);
	assert_string_equal(p.message.text, "Esc goes back.");
	assert_int_equal(help_page_key(&p, sample_key('2')).want, WANT_NOTHING);
	assert_int_equal(p.top, 1);
	assert_int_equal(help_page_key(&p, sample_key('\x1b')).want, WANT_BACK);
}

static void draw_both(struct why_page *why, struct help_page *help)
{
	struct canvas c = { 0 };

	for (int rows = 1; rows <= 40; rows++)
		for (int cols = 1; cols <= 120; cols++) {
			why->top = help->top = (size_t)rows;
			canvas_size(&c, rows, cols);
			why_page_draw(why, &c);
			help_page_draw(help, &c);
		}
	canvas_free(&c);
}

static void why_and_help_draw_at_every_size(void **state)
{
	struct why none = { 0 }, some = sample_why(), wide = { 0 };
	char text[400];
	struct why_line line = { TONE_UNSURE, 30, text };
	struct help_page help = run_help(), bare = { .title = "" };

	(void)state;
	sample_long(text, sizeof text, 1);
	sample_long(wide.title, sizeof wide.title, 0);
	wide.lines = &line;
	wide.n = 1;
	draw_both(&(struct why_page){ .why = &none }, &bare);
	draw_both(&(struct why_page){ .why = &some }, &help);
	draw_both(&(struct why_page){ .why = &wide, .right = text }, &help);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(why_page_shows_the_lines_wrapped),
		cmocka_unit_test(why_page_scrolls_to_its_end_and_no_further),
		cmocka_unit_test(why_page_goes_back),
		cmocka_unit_test(why_page_goes_to_the_flight_and_help_does_not),
		cmocka_unit_test(help_page_shows_every_key_of_the_page),
		cmocka_unit_test(help_page_goes_back),
		cmocka_unit_test(why_and_help_draw_at_every_size),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
