#include "screen/today_page.h"

#include "screen/today_samples.h"

static void today_page_shows_the_day(void **state)
{
	static const struct {
		const char *name;
		int rows, cols;
		const char *keys;
	} row[] = {
		{ "today-80x24", 24, 80, "" },
		{ "today-120x30", 30, 120, "~~" },
		{ "today-40x16", 16, 40, "~~~~" },
		{ "today-20x4", 4, 20, "~~" },
	};
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct today t = sample_today();
		struct today_page p = { .today = &t };

		for (const char *key = row[i].keys; *key; key++)
			today_page_key(&p, sample_key(*key));
		canvas_size(&c, row[i].rows, row[i].cols);
		today_page_draw(&p, &c);
		expect_golden(row[i].name, &c, row[i].cols == 80);
		today_page_free(&p);
	}
	canvas_free(&c);
}

static void today_page_of_an_empty_book_says_how_to_begin(void **state)
{
	struct today t = { .day = sample_day(), .no_rules = true };
	struct today_page p = { .today = &t };
	struct canvas c = { 0 };

	(void)state;
	SET(t.title, "Tue 21 July 2026 \u00b7 week 30");
	canvas_size(&c, 24, 80);
	today_page_draw(&p, &c);
	expect_golden("today-empty-80x24", &c, false);
	canvas_size(&c, 16, 40);
	today_page_draw(&p, &c);
	expect_shows("on a narrow page", &c, "Enter: type in your farm");
	expect_shows("on a narrow page", &c, "b: all that the book holds.");
	canvas_free(&c);
	today_page_free(&p);
}

static void today_page_says_when_no_threshold_is_set(void **state)
{
	struct today t = sample_today();
	struct today_page p = { .today = &t };
	struct canvas c = { 0 };

	(void)state;
	t.no_rules = true;
	t.n_lines = t.n_over = 0;
	canvas_size(&c, 24, 80);
	today_page_draw(&p, &c);
	expect_shows("no rules", &c, "no threshold set: b, then thresholds");
	t.no_rules = false;
	today_page_draw(&p, &c);
	expect_shows("nothing over", &c, " Over threshold\n   none\n");
	t.runs[0].due = false;
	today_page_draw(&p, &c);
	expect_shows("nothing due", &c, " To run\n   nothing is due today\n Later\n");
	canvas_free(&c);
	today_page_free(&p);
}

static void today_page_marks_what_does_not_fit(void **state)
{
	static const struct {
		const char *why;
		int rows;
		const char *keys;
		bool above, below;
		const char *shows, *lacks;
	} row[] = {
		{ "all fits", 16, "", false, false, "others: 2 near, 21 under", NULL },
		{ "the end is cut", 14, "", false, true, "trap 9", "others" },
		{ "a head without its lines is left out", 13, "", false, true,
			"mean of 4", "Unknown" },
		{ "the last but one: a row below it, none above", 12, "~~~", true, true,
			"mean of 4", "To run" },
		{ "the last one", 12, "1", true, false, "others: 2 near", "Later" },
		{ "back at the first: its head too", 12, "1^^^^", false, true, "To run",
			"Unknown" },
	};
	static const char more[] = " more \u2500\u2500\n";
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct today t = sample_today();
		struct today_page p = { .today = &t };
		struct buf got = { 0 };
		const char *second = NULL;

		canvas_size(&c, row[i].rows, 80);
		today_page_draw(&p, &c);
		for (const char *key = row[i].keys; *key; key++) {
			today_page_key(&p, sample_key(*key));
			today_page_draw(&p, &c);
		}
		canvas_dump(&c, false, &got);
		second = strchr(strchr(got.text, '\n') + 1, '\n');
		if ((strstr(got.text, more) && strstr(got.text, more) < second) !=
				row[i].above ||
			(strstr(second, more) != NULL) != row[i].below ||
			!strstr(got.text, row[i].shows) ||
			(row[i].lacks && strstr(got.text, row[i].lacks)))
			fail_msg("%s:\n%s", row[i].why, got.text);
		buf_free(&got);
		today_page_free(&p);
	}
	canvas_free(&c);
}

/* Its row has no room for it; the rest of the row beside it would hide it. */
static void today_page_tells_of_lures_that_are_not_known(void **state)
{
	struct today t = sample_today();
	struct today_page p = { .today = &t };
	struct canvas c = { 0 };

	(void)state;
	SET(t.runs[0].unknown_text, "; 2 lures not known");
	canvas_size(&c, 24, 120);
	today_page_draw(&p, &c);
	expect_shows("picked", &c, "bring 3 lures, 1 card; 2 lures not known\n");
	today_page_key(&p, sample_key('~'));
	today_page_draw(&p, &c);
	expect_hides("another one", &c, "lures not");
	canvas_free(&c);
	today_page_free(&p);
}

static void today_page_keys_want_what_they_say(void **state)
{
	static const struct {
		const char *why, *keys;
		enum want want;
		int64_t farm, block;
		int trap;
	} row[] = {
		{ "Enter on a farm runs it", "\n", WANT_RUN, SAMPLE_FARM, 0, -1 },
		{ "the second farm", "2\n", WANT_RUN, SAMPLE_FARM + 1, 0, -1 },
		{ "up from there", "28\n", WANT_RUN, SAMPLE_FARM, 0, -1 },
		{ "up stays at the first", "^^\n", WANT_RUN, SAMPLE_FARM, 0, -1 },
		{ "Enter on a verdict asks why", "~~\n", WANT_WHY, SAMPLE_FARM, 7, 3 },
		{ "the last one", "1\n", WANT_WHY, SAMPLE_FARM, 7, 9 },
		{ "down stays at the last", "1~~\n", WANT_WHY, SAMPLE_FARM, 7, 9 },
		{ "home", "17\n", WANT_RUN, SAMPLE_FARM, 0, -1 },
		{ "w is all farms", "w", WANT_WEEK, 0, 0, -1 },
		{ "s is all farms", "2s", WANT_SERVICE, 0, 0, -1 },
		{ "p asks", "2p", WANT_NOTHING, 0, 0, -1 },
		{ "Enter prints the picked farm", "2p\n", WANT_SHEET, SAMPLE_FARM + 1,
			0, -1 },
		{ "on a verdict its farm", "1p\n", WANT_SHEET, SAMPLE_FARM, 0, -1 },
		{ "p again is no yes", "1pp", WANT_NOTHING, 0, 0, -1 },
		{ "Esc leaves it", "1p\x1b\n", WANT_WHY, SAMPLE_FARM, 7, 9 },
		{ "another key leaves it and is heard", "1pw", WANT_WEEK, 0, 0, -1 },
		{ "and Enter is then its own again", "1p\x1b", WANT_NOTHING, 0, 0, -1 },
		{ "? helps", "?", WANT_HELP, 0, 0, -1 },
		{ "q quits", "q", WANT_QUIT, 0, 0, -1 },
		{ "u takes back", "u", WANT_UNDO_STEP, 0, 0, -1 },
		{ "Esc stays", "\x1b", WANT_NOTHING, 0, 0, -1 },
		{ "another key does nothing", "z", WANT_NOTHING, 0, 0, -1 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct today t = sample_today();
		struct today_page p = { .today = &t };
		struct wish w = page_wish(WANT_NOTHING);

		t.runs[1].farm = SAMPLE_FARM + 1;
		for (const char *key = row[i].keys; *key; key++)
			w = today_page_key(&p, sample_key(*key));
		if (w.want != row[i].want || w.farm != row[i].farm ||
			w.block != row[i].block || w.trap != row[i].trap)
			fail_msg("%s: want %d farm %d block %d trap %d", row[i].why,
				(int)w.want, (int)w.farm, (int)w.block, w.trap);
		today_page_free(&p);
	}
}

static void today_page_shows_what_comes_next(void **state)
{
	struct today t = sample_today_next();
	struct today_page p = { .today = &t };
	struct canvas c = { 0 };

	(void)state;
	canvas_size(&c, 24, 80);
	today_page_draw(&p, &c);
	expect_golden("today-80x24-next", &c, false);
	today_page_key(&p, sample_key('1'));
	canvas_size(&c, 16, 40);
	today_page_draw(&p, &c);
	expect_golden("today-40x16-next", &c, false);
	canvas_free(&c);
	today_page_free(&p);
}

static void today_page_goes_to_flight_and_weather(void **state)
{
	static const struct {
		const char *why, *keys;
		enum want want;
		int64_t farm, block, pest;
		int trap;
	} row[] = {
		{ "f on a farm", "f", WANT_FLIGHT, SAMPLE_FARM, 0, 0, -1 },
		{ "l too", "l", WANT_FLIGHT, SAMPLE_FARM, 0, 0, -1 },
		{ "h on a farm", "h", WANT_HOTSPOTS, SAMPLE_FARM, 0, 0, -1 },
		{ "h on a trap", "~~h", WANT_HOTSPOTS, SAMPLE_FARM, 7, 1, 3 },
		{ "f on a trap", "~~f", WANT_FLIGHT, SAMPLE_FARM, 7, 1, 3 },
		{ "f on what comes next", "1f", WANT_FLIGHT, SAMPLE_FARM + 2, 0, 2,
			-1 },
		{ "Enter too", "1\n", WANT_FLIGHT, SAMPLE_FARM + 2, 0, 2, -1 },
		{ "the one above it", "1^\n", WANT_FLIGHT, SAMPLE_FARM + 2, 0, 1, -1 },
		{ "a hot block above that", "1^^\n", WANT_HOTSPOTS, SAMPLE_FARM, 7, 1,
			-1 },
		{ "h on it too", "1^^h", WANT_HOTSPOTS, SAMPLE_FARM, 7, 1, -1 },
		{ "f on it", "1^^f", WANT_FLIGHT, SAMPLE_FARM, 7, 1, -1 },
		{ "the verdict above that", "1^^^\n", WANT_WHY, SAMPLE_FARM, 7, 1, 9 },
		{ "m on a farm", "m", WANT_WEATHER, SAMPLE_FARM, 0, 0, -1 },
		{ "m on what comes next", "1m", WANT_WEATHER, SAMPLE_FARM + 2, 0, 0,
			-1 },
		{ "p on what comes next", "1p\n", WANT_SHEET, SAMPLE_FARM + 2, 0, 0,
			-1 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct today t = sample_today_next();
		struct today_page p = { .today = &t };
		struct wish w = page_wish(WANT_NOTHING);

		for (const char *key = row[i].keys; *key; key++)
			w = today_page_key(&p, sample_key(*key));
		if (w.want != row[i].want || w.farm != row[i].farm ||
			w.block != row[i].block || w.pest != row[i].pest ||
			w.trap != row[i].trap)
			fail_msg("%s: want %d farm %d block %d pest %d trap %d",
				row[i].why, (int)w.want, (int)w.farm, (int)w.block,
				(int)w.pest, w.trap);
		today_page_free(&p);
	}
}

static void today_page_prints_the_sheet_filled_or_to_carry(void **state)
{
	struct today t = sample_today();
	struct today_page p = { .today = &t };

	(void)state;
	today_page_key(&p, sample_key('p'));
	assert_string_equal(p.message.text,
		"Enter prints the weekly sheet of Quillet, Esc leaves it.");
	struct wish filled = today_page_key(&p, sample_key('\n'));
	today_page_key(&p, sample_key('P'));
	assert_string_equal(p.message.text,
		"Enter prints the sheet to carry round Quillet, Esc leaves it.");
	struct wish carried = today_page_key(&p, sample_key('\n'));
	assert_int_equal(filled.want, WANT_SHEET);
	assert_int_equal(filled.by, 0);
	assert_int_equal(carried.want, WANT_SHEET);
	assert_int_equal(carried.by, 1);
	assert_int_equal(carried.farm, SAMPLE_FARM);
	today_page_free(&p);
}

static void today_page_key_line_is_that_of_what_is_asked(void **state)
{
	static const struct {
		const char *why, *keys, *line;
	} row[] = {
		{ "nothing", "", " Enter run  w week" },
		{ "a question", "p", " Enter yes  Esc leave it" },
		{ "left again", "p\x1b", " Enter run  w week" },
		{ "letters", "/q", " Enter open  Up Down pick  Esc show all" },
		{ "another key than a letter ends that", "/q\n", " Enter run  w week" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct today t = sample_today();
		struct today_page p = { .today = &t };
		struct canvas c = { 0 };

		for (const char *key = row[i].keys; *key; key++)
			today_page_key(&p, sample_key(*key));
		canvas_size(&c, 16, 40);
		today_page_draw(&p, &c);
		expect_shows(row[i].why, &c, row[i].line);
		expect_hides("cut", &c, "shows al\n");
		canvas_free(&c);
		today_page_free(&p);
	}
}

static void today_page_answers_each_key_in_words(void **state)
{
	struct today t = sample_today();
	struct today_page p = { .today = &t };

	(void)state;
	today_page_key(&p, sample_key('\x1b'));
	assert_string_equal(p.message.text, "This is the first page: q ends.");
	today_page_key(&p, sample_key('z'));
	assert_string_equal(p.message.text, "z does nothing here: ? shows the keys");
	today_page_key(&p, sample_key('2'));
	assert_string_equal(p.message.text, "");
	today_page_free(&p);
}

static void today_page_with_nothing_wants_to_begin(void **state)
{
	struct today t = { .day = sample_day() };
	struct today_page p = { .today = &t };

	(void)state;
	assert_int_equal(today_page_key(&p, sample_key('\n')).want, WANT_START);
	assert_int_equal(today_page_key(&p, sample_key('b')).want, WANT_BOOK);
	assert_int_equal(today_page_key(&p, sample_key('p')).want, WANT_NOTHING);
	assert_string_equal(
		p.message.text, "No trap hangs yet: Enter begins, b opens the book.");
	assert_int_equal(today_page_key(&p, sample_key('1')).want, WANT_NOTHING);
	assert_int_equal(p.picked, 0);
	today_page_key(&p, sample_key('f'));
	assert_string_equal(
		p.message.text, "No trap hangs yet: Enter begins, b opens the book.");
	today_page_free(&p);
}

static void today_page_keys_are_each_named_once(void **state)
{
	(void)state;
	expect_keys(today_page_keys());
}

static void today_page_draws_at_every_size(void **state)
{
	struct today sample[] = { { .day = 0 }, sample_today(), sample_long_today() };
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < 3; i++)
		for (int rows = 1; rows <= 40; rows++)
			for (int cols = 1; cols <= 120; cols++) {
				struct today_page p = { .today = &sample[i],
					.picked = (size_t)cols % 8 };

				canvas_size(&c, rows, cols);
				today_page_draw(&p, &c);
				if (cols % 8 == 0)
					text_copy(p.sift.narrow.text,
						sizeof p.sift.narrow.text,
						rows % 2 ? "trap" : "zz");
				sift_forget(&p.sift);
				today_page_draw(&p, &c);
				today_page_free(&p);
			}
	canvas_free(&c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(today_page_shows_the_day),
		cmocka_unit_test(today_page_of_an_empty_book_says_how_to_begin),
		cmocka_unit_test(today_page_says_when_no_threshold_is_set),
		cmocka_unit_test(today_page_marks_what_does_not_fit),
		cmocka_unit_test(today_page_tells_of_lures_that_are_not_known),
		cmocka_unit_test(today_page_keys_want_what_they_say),
		cmocka_unit_test(today_page_shows_what_comes_next),
		cmocka_unit_test(today_page_goes_to_flight_and_weather),
		cmocka_unit_test(today_page_prints_the_sheet_filled_or_to_carry),
		cmocka_unit_test(today_page_key_line_is_that_of_what_is_asked),
		cmocka_unit_test(today_page_answers_each_key_in_words),
		cmocka_unit_test(today_page_with_nothing_wants_to_begin),
		cmocka_unit_test(today_page_keys_are_each_named_once),
		cmocka_unit_test(today_page_draws_at_every_size),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
