#include "screen/weather_page.h"

#include "screen/weather_samples.h"

/* Keys as in sample_key, and \t Tab. */
static struct wish type(struct weather_page *p, const char *keys)
{
	struct wish w = page_wish(WANT_NOTHING);

	for (; *keys; keys++)
		w = weather_page_key(p, *keys == '\t' ? (struct input){ INPUT_TAB, 0 }
						      : sample_key(*keys));
	return w;
}

static struct weather_page page_of(const struct weather_list *l)
{
	struct weather_page p = { .rows = 10 };

	weather_page_show(&p, l, true);
	return p;
}

static void weather_page_shows_the_days(void **state)
{
	static const struct {
		const char *name;
		int rows, cols;
		const char *keys;
	} row[] = {
		{ "weather-80x24", 24, 80, "12.5\n27" },
		{ "weather-80x24-kept", 24, 80, "~" },
		{ "weather-80x24-name", 24, 80, "nHigh Ga" },
		{ "weather-40x16", 16, 40, "-0.5\n" },
		{ "weather-30x8", 8, 30, "" },
	};
	struct weather_list l = sample_weather();
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct weather_page p = page_of(&l);

		type(&p, row[i].keys);
		canvas_size(&c, row[i].rows, row[i].cols);
		weather_page_draw(&p, &c);
		expect_golden(row[i].name, &c, i == 0);
	}
	canvas_free(&c);
}

static void weather_page_without_a_station_says_how_to_begin(void **state)
{
	struct weather_list l = { .unit = 'C' };
	struct weather_page p = page_of(&l);
	struct canvas c = { 0 };

	(void)state;
	SET(l.title, "Weather");
	canvas_size(&c, 16, 40);
	weather_page_draw(&p, &c);
	expect_shows("no station", &c, "No weather station yet.");
	expect_shows("no station", &c, "mothtally import weather FILE");
	assert_int_equal(type(&p, "1").want, WANT_NOTHING);
	assert_string_equal(p.message.text, "n names a station first.");
	assert_int_equal(type(&p, "nAb").want, WANT_NOTHING);
	weather_page_draw(&p, &c);
	expect_shows("its name", &c, "name of the new station: Ab");
	assert_true(c.cursor_shown);
	assert_int_equal(c.cursor_col, 28);
	canvas_free(&c);
}

static void weather_page_saves_two_numbers_and_enter(void **state)
{
	static const struct {
		const char *why, *keys;
		int days_ago;
		double min, max;
	} row[] = {
		{ "today", "12.5\n27\n", 0, 12.5, 27 },
		{ "frost, asked about", "-2\n7.5\n\n", 0, -2, 7.5 },
		{ "frost all day, asked about", "-12\n-3\n\n", 0, -12, -3 },
		{ "a comma is a point", "12,5\n27\n", 0, 12.5, 27 },
		{ "taken back", "13\b2\n277\b\n", 0, 12, 27 },
		{ "three digits, two decimals", "-90.25\n100.75\n\n", 0, -90.25,
			100.75 },
		{ "only the minimum", "12.5\n\n", 0, 12.5, NAN },
		{ "the missing maximum of a day", "~~~\n26\n", 3, 12, 26 },
		{ "the minimum anew", "~~~11\n26\n", 3, 11, 26 },
		{ "a day that was read, its maximum alone", "~\n26\n", 1, 12.5, 26 },
		{ "the other field by Tab", "\t26\n", 0, NAN, 26 },
		{ "back from there by Backspace", "\t\b12\n26\n", 0, 12, 26 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct weather_list l = sample_weather();
		struct weather_page p = page_of(&l);
		struct wish w = type(&p, row[i].keys);
		bool min = w.weather.min == row[i].min ||
			   (isnan(w.weather.min) && isnan(row[i].min));
		bool max = w.weather.max == row[i].max ||
			   (isnan(w.weather.max) && isnan(row[i].max));

		if (w.want != WANT_SAVE_WEATHER || !min || !max ||
			w.weather.day != sample_day() - row[i].days_ago)
			fail_msg("%s: want %d, %g %g, %s", row[i].why, (int)w.want,
				w.weather.min, w.weather.max, p.message.text);
		assert_int_equal(w.weather.station, SAMPLE_STATION);
		assert_int_equal(w.weather.unit, 'C');
		assert_int_equal(w.day, w.weather.day);
	}
}

static void weather_page_refuses_in_words(void **state)
{
	static const struct {
		const char *why, *keys, *says;
		bool is_fault;
	} row[] = {
		{ "a second point", "1.2.", "There is a decimal point already.", true },
		{ "a third decimal", "1.234", "Two decimals are enough.", true },
		{ "a fourth digit", "1234",
			"A temperature has up to 3 digits before the point.", true },
		{ "- behind a digit", "1-", "- comes first, for frost.", true },
		{ "a lone -", "-\n", "- is no temperature.", true },
		{ "a lone point as maximum", "1\n.\n", ". is no temperature.", true },
		{ "swapped", "27\n12.5\n",
			"The minimum 27.0 is above the maximum 12.5: Tab goes to the "
			"other field.",
			true },
		{ "above the maximum that is there", "~44\n\n",
			"The minimum 44.0 is above the maximum 25.5: Tab goes to the "
			"other field.",
			true },
		{ "F typed as C", "54\n82\n",
			"Far from the day beside it: Enter again if it is so.", false },
		{ "the same twice", "20\n20\n",
			"The same twice: Enter again if it is so.", false },
		{ "a letter", "z", "z does nothing here: ? shows the keys", false },
		{ "moving away", "12~", "Not saved yet: Enter saves it, Esc drops it.",
			false },
		{ "another station", "12s",
			"Not saved yet: Enter saves it, Esc drops it.", false },
		{ "Esc", "12\x1b", "Dropped what was typed.", false },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct weather_list l = sample_weather();
		struct weather_page p = page_of(&l);
		struct wish w = type(&p, row[i].keys);

		if (w.want != WANT_NOTHING || p.turn_station ||
			p.message.is_fault != row[i].is_fault ||
			strcmp(p.message.text, row[i].says) != 0)
			fail_msg("%s: want %d, \"%s\"", row[i].why, (int)w.want,
				p.message.text);
	}
}

static void weather_page_asks_once_about_an_odd_pair(void **state)
{
	static const struct {
		const char *why, *keys;
		char unit;
		bool asks;
	} row[] = {
		/* yesterday's mean is 19 */
		{ "15 C above it", "30\n38\n", 'C', true },
		{ "just less", "30\n37.9\n", 'C', false },
		{ "15 C below it", "0\n8\n", 'C', true },
		{ "just less below", "0.1\n8\n", 'C', false },
		{ "27 F above it", "40\n52\n", 'F', true },
		{ "less in F", "40\n51.9\n", 'F', false },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct weather_list l = sample_weather();
		struct weather_page p = { 0 };

		l.unit = row[i].unit;
		p = page_of(&l);
		if ((type(&p, row[i].keys).want == WANT_NOTHING) != row[i].asks)
			fail_msg("%s: \"%s\"", row[i].why, p.message.text);
		if (row[i].asks && type(&p, "\n").want != WANT_SAVE_WEATHER)
			fail_msg("%s: not saved when asked again", row[i].why);
	}
}

static void weather_page_goes_to_the_next_missing_day(void **state)
{
	struct weather_list l = sample_weather();
	struct weather_page p = page_of(&l);

	(void)state;
	assert_int_equal(p.picked, 0);
	assert_int_equal(type(&p, "\n").want, WANT_NOTHING);
	assert_int_equal(p.picked, 3);
	type(&p, "\n\n"); /* its minimum, its empty maximum */
	assert_int_equal(p.picked, 4);
	assert_int_equal(type(&p, "\n").want, WANT_NOTHING);
	assert_int_equal(p.picked, 4);
	assert_string_equal(p.message.text, "No day is missing below this one.");
}

static void weather_page_says_what_was_saved(void **state)
{
	struct weather_list l = sample_weather();
	struct weather_page p = page_of(&l);

	(void)state;
	assert_int_equal(type(&p, "12.5\n27\n").want, WANT_SAVE_WEATHER);
	l.rows[0] = sample_weather_row(sample_day(), 12.5, 27);
	weather_page_saved(&p, &l);
	assert_string_equal(p.message.text, "Saved: Tue 21 Jul  12.5  27.0");
	assert_int_equal(p.picked, 3);
	assert_string_equal(p.min, "");
	assert_false(p.on_max);
	weather_page_key(&p, sample_key('~'));
	assert_int_equal(type(&p, "10\n20\n").want, WANT_SAVE_WEATHER);
	l.rows[4] = sample_weather_row(sample_day() - 4, 10, 20);
	weather_page_saved(&p, &l);
	assert_string_equal(p.message.text,
		"Saved: Fri 17 Jul  10.0  20.0. No day is missing below it.");
	assert_int_equal(p.picked, 4);
}

static void weather_page_keeps_what_was_not_saved(void **state)
{
	struct weather_list l = sample_weather();
	struct weather_page p = page_of(&l);

	(void)state;
	type(&p, "12.5\n27\n");
	weather_page_not_saved(&p, "the disk is full");
	assert_string_equal(p.message.text, "NOT SAVED: the disk is full");
	assert_true(p.message.is_fault);
	assert_string_equal(p.min, "12.5");
	assert_string_equal(p.max, "27");
	assert_int_equal(type(&p, "\n").want, WANT_SAVE_WEATHER);
}

/* Another program, or midnight, gave the list a row more. */
static void weather_page_finds_its_day_again(void **state)
{
	struct weather_list l = sample_weather(), more = l;
	struct weather_row rows[SAMPLE_DAYS + 1];
	struct weather_page p = page_of(&l);

	(void)state;
	type(&p, "~~~11");
	rows[0] = sample_weather_row(sample_day() + 1, NAN, NAN);
	memcpy(rows + 1, l.rows, sizeof *rows * SAMPLE_DAYS);
	more.rows = rows;
	more.n = SAMPLE_DAYS + 1;
	weather_page_show(&p, &more, false);
	assert_int_equal(p.picked, 4);
	assert_string_equal(p.min, "11");
	more.n = 3;
	weather_page_show(&p, &more, false);
	assert_int_equal(p.picked, 0);
	assert_string_equal(p.min, "");
}

static void weather_page_keys_want_what_they_say(void **state)
{
	struct weather_list l = sample_weather();
	struct weather_page p = page_of(&l);
	struct wish w = page_wish(WANT_NOTHING);

	(void)state;
	assert_int_equal(type(&p, "\x1b").want, WANT_BACK);
	assert_int_equal(type(&p, "?").want, WANT_HELP);
	type(&p, "s");
	assert_true(p.turn_station);
	type(&p, "c");
	assert_true(p.turn_unit);
	type(&p, "o");
	assert_false(p.use_for_farm);
	type(&p, "~o");
	assert_false(p.use_for_farm);
	type(&p, "o");
	assert_true(p.use_for_farm);
	w = type(&p, "n  High Gauge?s\b\b \n");
	assert_int_equal(w.want, WANT_NEW_STATION);
	assert_string_equal(w.words.note, "High Gauge");
	assert_false(p.naming);
	assert_int_equal(type(&p, "n  \n").want, WANT_NOTHING);
	assert_string_equal(p.message.text, "A station needs a name; Esc leaves it.");
	assert_int_equal(type(&p, "\x1b").want, WANT_NOTHING);
	assert_false(p.naming);
	weather_page_key(&p, (struct input){ INPUT_END, 0 });
	assert_int_equal(p.picked, SAMPLE_DAYS - 1);
}

static void weather_page_keys_are_each_named_once(void **state)
{
	(void)state;
	expect_keys(weather_page_keys());
}

static void weather_page_takes_no_name_longer_than_it_keeps(void **state)
{
	struct weather_list l = sample_weather();
	struct weather_page p = page_of(&l);
	struct wish w = page_wish(WANT_NOTHING);

	(void)state;
	type(&p, "n");
	for (int i = 0; i < NAME_BYTES; i++)
		weather_page_key(&p, (struct input){ INPUT_CHAR, 0x6843 });
	assert_string_equal(p.message.text, "No more fits here.");
	w = type(&p, "\n");
	assert_int_equal(strlen(w.words.note), NAME_BYTES / 3 * 3 - 3);
}

static void weather_page_draws_at_every_size(void **state)
{
	struct weather_list l[] = { { .unit = 'C' }, sample_weather(),
		sample_weather() };
	struct canvas c = { 0 };

	(void)state;
	sample_long(l[2].title, sizeof l[2].title, 1);
	sample_long(l[2].farms, sizeof l[2].farms, 0);
	sample_long(l[2].heat, sizeof l[2].heat, 1);
	for (size_t i = 0; i < 3; i++)
		for (int rows = 1; rows <= 40; rows++)
			for (int cols = 1; cols <= 120; cols++) {
				struct weather_page p = page_of(&l[i]);

				p.naming = cols % 3 == 0;
				p.picked = (size_t)cols % SAMPLE_DAYS;
				SET(p.min, "-100.25");
				sample_long(p.line, sizeof p.line, 1);
				canvas_size(&c, rows, cols);
				weather_page_draw(&p, &c);
			}
	canvas_size(&c, 5, 5);
	weather_page_draw(&(struct weather_page){ .list = NULL }, &c);
	canvas_free(&c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(weather_page_shows_the_days),
		cmocka_unit_test(weather_page_without_a_station_says_how_to_begin),
		cmocka_unit_test(weather_page_saves_two_numbers_and_enter),
		cmocka_unit_test(weather_page_refuses_in_words),
		cmocka_unit_test(weather_page_asks_once_about_an_odd_pair),
		cmocka_unit_test(weather_page_goes_to_the_next_missing_day),
		cmocka_unit_test(weather_page_says_what_was_saved),
		cmocka_unit_test(weather_page_keeps_what_was_not_saved),
		cmocka_unit_test(weather_page_finds_its_day_again),
		cmocka_unit_test(weather_page_keys_want_what_they_say),
		cmocka_unit_test(weather_page_keys_are_each_named_once),
		cmocka_unit_test(weather_page_takes_no_name_longer_than_it_keeps),
		cmocka_unit_test(weather_page_draws_at_every_size),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
