#include "screen/flight_page.h"

#include "screen/flight_samples.h"

static void draw(struct flight_page *p, struct canvas *c, int rows, int cols)
{
	canvas_size(c, rows, cols);
	flight_page_draw(p, c);
}

static struct wish type(struct flight_page *p, const char *keys)
{
	struct wish w = page_wish(WANT_NOTHING);

	for (; *keys; keys++)
		w = flight_page_key(p, sample_key(*keys));
	return w;
}

static void expect_shows_not(const char *why, const struct canvas *c, const char *text)
{
	struct buf got = { 0 };

	canvas_dump(c, false, &got);
	if (strstr(got.text, text))
		fail_msg("%s: \"%s\" in\n%s", why, text, got.text);
	buf_free(&got);
}

static void flight_page_shows_the_season(void **state)
{
	static const struct {
		const char *name;
		int rows, cols;
		const char *keys;
	} row[] = {
		{ "flight-80x24", 24, 80, "" },
		{ "flight-80x24-below", 24, 80, "3" },
		{ "flight-80x24-seasons", 24, 80, "v" },
		{ "flight-80x24-heat", 24, 80, "dv" },
		{ "flight-80x24-biofix", 24, 80, "b5-1" },
		{ "flight-120x40", 40, 120, "" },
		{ "flight-40x16", 16, 40, "" },
		{ "flight-30x8", 8, 30, "" },
	};
	static struct flight_view v;
	struct canvas c = { 0 };

	(void)state;
	sample_flight(&v);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct flight_page p = { .view = &v };

		draw(&p, &c, row[i].rows, row[i].cols);
		type(&p, row[i].keys);
		draw(&p, &c, row[i].rows, row[i].cols);
		expect_golden(row[i].name, &c, i == 0);
	}
	canvas_free(&c);
}

static void expect_row(
	const char *why, const struct canvas *c, int row, const char *want)
{
	struct buf got = { 0 };
	char *line = NULL;

	canvas_dump(c, false, &got);
	line = got.text;
	while (row-- > 0)
		line = strchr(line, '\n') + 1;
	*strchr(line, '\n') = '\0';
	if (strcmp(line, want) != 0)
		fail_msg("%s: \"%s\", not \"%s\"", why, line, want);
	buf_free(&got);
}

/* Four weeks without degree-days. */
static void sample_weeks(struct flight_view *v, const double rates[static 4])
{
	*v = (struct flight_view){ .threshold = -1 };
	sample_line(&v->now, 2026, rates, 4, -1);
}

/* Two rows of bars, 8 a row, two columns and a free one a week. The first week sets the scale. */
static void flight_chart_tells_kinds_of_weeks_apart(void **state)
{
	static const struct {
		const char *why;
		double rate;
		bool at_least;
		const char *upper, *lower;
	} row[] = {
		{ "counted, none", 0, false, "", "__" },
		{ "so little", 0.01, false, "", "\u2581\u2581" },
		{ "an eighth", 1, false, "", "\u2581\u2581" },
		{ "a bit more", 1.01, false, "", "\u2582\u2582" },
		{ "seven eighths", 7, false, "", "\u2587\u2587" },
		{ "a row", 8, false, "", "\u2588\u2588" },
		{ "a row and a bit", 8.5, false, "\u2581\u2581", "\u2588\u2588" },
		{ "the top", 16, false, "\u2588\u2588", "\u2588\u2588" },
		{ "at least a row", 8, true, "++", "\u2588\u2588" },
		{ "at least the top", 16, true, "++", "\u2588\u2588" },
		{ "at least none", 0, true, "", "++" },
	};
	static struct flight_view v;
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct flight_page p = { .view = &v };
		char want[64];

		sample_weeks(&v, (double[]){ 16, row[i].rate, -1, 0 });
		v.now.at_least[1] = row[i].at_least;
		draw(&p, &c, 11, 20);
		snprintf(want, sizeof want, "   16\u2502\u2588\u2588%s%s",
			row[i].upper[0] ? " " : "", row[i].upper);
		expect_row(row[i].why, &c, 2, want);
		snprintf(want, sizeof want,
			"    8\u2502\u2588\u2588 %s \u00b7\u00b7 __", row[i].lower);
		expect_row(row[i].why, &c, 3, want);
	}
	canvas_free(&c);
}

/* In the row that holds its height: four rows, 4 a row. */
static void flight_chart_puts_the_threshold_where_it_is(void **state)
{
	static const struct {
		const char *why;
		double threshold;
		const char *row[4]; /* from the top */
	} row[] = {
		{ "none", -1,
			{ "   16\u2502\u2588\u2588", "     \u2502\u2588\u2588",
				"    8\u2502\u2588\u2588",
				"     \u2502\u2588\u2588 __ __ __" } },
		{ "the edge of a row", 4,
			{ "   16\u2502\u2588\u2588", "     \u2502\u2588\u2588",
				"    8\u2502\u2588\u2588",
				"    4\u2502\u2588\u2588-__-__-__--" } },
		{ "just above it", 4.25,
			{ "   16\u2502\u2588\u2588", "     \u2502\u2588\u2588",
				" 4.25\u2502\u2588\u2588-----------",
				"     \u2502\u2588\u2588 __ __ __" } },
		{ "the top", 16,
			{ "   16\u2502\u2588\u2588-----------",
				"     \u2502\u2588\u2588", "    8\u2502\u2588\u2588",
				"     \u2502\u2588\u2588 __ __ __" } },
	};
	static struct flight_view v;
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct flight_page p = { .view = &v };

		sample_weeks(&v, (double[]){ 16, 0, 0, 0 });
		v.threshold = row[i].threshold;
		draw(&p, &c, 14, 20);
		for (int k = 0; k < 4; k++)
			expect_row(row[i].why, &c, 2 + k, row[i].row[k]);
	}
	canvas_free(&c);
}

/* All that is caught lies below it: the chart still reaches up to it. */
static void flight_chart_always_shows_the_threshold(void **state)
{
	static struct flight_view v;
	struct flight_page p = { .view = &v };
	struct canvas c = { 0 };

	(void)state;
	sample_weeks(&v, (double[]){ 0.5, 0, 0, 0 });
	v.threshold = 15;
	draw(&p, &c, 14, 20);
	expect_row("its row", &c, 2, "   15\u2502-------------");
	canvas_free(&c);
}

static void flight_chart_stays_readable_in_ascii(void **state)
{
	static struct flight_view v;
	struct flight_page p = { .view = &v, .several = true };
	struct canvas c = { 0 };
	size_t plus = 0;

	(void)state;
	sample_flight(&v);
	draw(&p, &c, 24, 80);
	for (size_t i = 0; i < 24 * 80; i++) {
		uint32_t ch = canvas_ascii(c.cells[i].ch[0]);

		plus += ch == '+';
		if (ch == '?' && c.cells[i].ch[0] != '?')
			fail_msg("U+%04X has no likeness", c.cells[i].ch[0]);
	}
	assert_int_equal(plus, 2); /* the one week with a full card, no line */
	canvas_free(&c);
}

static void flight_chart_shows_the_latest_weeks_that_fit(void **state)
{
	static struct flight_view v;
	struct flight_page p = { .view = &v };
	struct canvas c = { 0 };

	(void)state;
	sample_weeks(&v, (double[]){ 1, 0, 1, 0 });
	for (int i = 4; i < 50; i++)
		v.now.rate[i] = i % 2;
	v.now.n = 50;
	draw(&p, &c, 11, 40);
	expect_row("33 of 50", &c, 3,
		"  0.5\u2502\u2588_\u2588_\u2588_\u2588_\u2588_\u2588_\u2588_\u2588_"
		"\u2588_\u2588_\u2588_\u2588_\u2588_\u2588_\u2588_\u2588_\u2588");
	canvas_free(&c);
}

/* Along degree-days a week is as wide as they are. */
static void flight_chart_goes_along_degree_days(void **state)
{
	static struct flight_view v;
	struct flight_page p = { .view = &v, .ruler = RULER_HEAT, .several = true };
	struct canvas c = { 0 };

	(void)state;
	sample_weeks(&v, (double[]){ 16, 2, 8, 4 });
	memcpy(v.now.dd, (double[]){ -1, 2, 6, 7 }, sizeof(double) * 4);
	v.heat.unit = 'F';
	v.earlier[0] = v.earlier[1] = v.now;
	v.earlier[0].season = 2025;
	v.earlier[1].dd[1] = v.earlier[1].dd[2] = v.earlier[1].dd[3] = -1;
	v.n_earlier = 2;      /* of the second none are known: it is left out */
	draw(&p, &c, 16, 20); /* 13 columns of 0.8 */
	expect_row("two weeks in a column", &c, 4,
		"    8\u2502  \u2588\u2588\u2588\u2588\u2588");
	expect_row("to the end", &c, 5,
		"     \u2502\u2584\u2584\u2588\u2588\u2588\u2588\u2588\u2588");
	expect_row("the ruler", &c, 6, " dd F 0         8");
	expect_row("the same season again", &c, 7,
		" 2025 \u2581\u2581\u2584\u2584\u2584\u2584\u2584\u2582");
	expect_row("and no other", &c, 8, " Biofix and");
	canvas_free(&c);
}

static void flight_page_shows_less_as_it_gets_lower(void **state)
{
	static const struct {
		const char *why;
		int rows;
		const char *shows, *shows_not;
	} row[] = {
		{ "all", 18, "dd F", NULL },
		{ "degree-days go first", 17, " 2024 ", "dd F" },
		{ "then the earliest season", 16, " 2025 ", " 2024 " },
		{ "then the next", 15, "B     PLT", " 2025 " },
		{ "then the marks", 14, "May w18", "B     PLT" },
		{ "then the chart", 10, "biofix Sat", "May w18" },
	};
	static struct flight_view v;
	struct canvas c = { 0 };

	(void)state;
	sample_flight(&v);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct flight_page p = { .view = &v, .several = true };

		draw(&p, &c, row[i].rows, 40);
		expect_shows(row[i].why, &c, row[i].shows);
		if (row[i].shows_not)
			expect_shows_not(row[i].why, &c, row[i].shows_not);
	}
	canvas_free(&c);
}

/* Without a catch, a farm, degree-days or events it says so. */
static void flight_page_says_what_is_not_there(void **state)
{
	static struct flight_view v;
	struct flight_page p = { .view = &v };
	struct canvas c = { 0 };

	(void)state;
	v = (struct flight_view){ .threshold = 5, .ask.pest = 1 };
	SET(v.title, "Flight  CM  all farms");
	SET(v.says, "No trap for it hangs this season.");
	SET(v.no_events, "What comes next is not known: biofix not set.");
	draw(&p, &c, 24, 80);
	expect_shows("no traps", &c, "No trap for it hangs this season.");
	expect_shows("all farms", &c, "Biofix and degree-days are a farm's");
	expect_shows("no events", &c, "not known: biofix not set.");
	type(&p, "b");
	assert_false(p.typing);
	assert_string_equal(
		p.message.text, "A biofix belongs to one farm: f picks it first.");
	type(&p, "d");
	assert_int_equal(p.ruler, RULER_WEEKS);
	assert_true(p.message.is_fault);
	type(&p, "v");
	assert_string_equal(p.message.text, "No earlier season is in the book.");
	canvas_free(&c);
}

static void flight_page_says_that_the_flight_may_have_begun_earlier(void **state)
{
	static struct flight_view v;
	struct flight_page p = { .view = &v };
	struct canvas c = { 0 };

	(void)state;
	sample_flight(&v);
	v.biofix.suggestion.or_earlier = true;
	draw(&p, &c, 60, 80);
	expect_shows("in the text", &c,
		"The flight may have begun before anyone could see it.");
	expect_shows("its rule", &c, "rule: first check with 2 moths or more");
	expect_shows("its source", &c, "source: a grower's guide, 2021");
	type(&p, "b");
	draw(&p, &c, 60, 80);
	expect_shows("when it is offered", &c,
		"biofix:   Enter takes Sat 9 May, when it was seen (it may have been");
	canvas_free(&c);
}

static void flight_page_wants_the_biofix_that_is_typed(void **state)
{
	static const struct {
		const char *why, *keys;
		int year, month, day; /* 0: it is taken out */
	} row[] = {
		{ "Enter takes what is suggested", "b\n", 2026, 5, 9 },
		{ "month and day", "b05-12\n", 2026, 5, 12 },
		{ "without zeros", "b5-2\n", 2026, 5, 2 },
		{ "in full", "b2026-05-12\n", 2026, 5, 12 },
		{ "taken back", "b5-23\b\n", 2026, 5, 2 },
		{ "early in the year", "b1-2\n", 2026, 1, 2 },
		{ "late in the year", "b12-30\n", 2026, 12, 30 },
		{ "- takes it out", "b-\n", 0, 0, 0 },
	};
	static struct flight_view v;

	(void)state;
	sample_flight(&v);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct flight_page p = { .view = &v };
		struct wish w = type(&p, row[i].keys);
		int32_t day = row[i].year ? day_from_ymd(row[i].year, row[i].month,
						    row[i].day)
					  : DAY_NONE;

		if (w.want != WANT_BIOFIX || w.day != day || w.farm != SAMPLE_FARM ||
			w.pest != 1 || p.typing)
			fail_msg("%s: want %d, day %d, \"%s\"", row[i].why, (int)w.want,
				(int)w.day, p.message.text);
	}
}

/* A season that began on 1 July 2026 runs into 2027. */
static void flight_page_takes_the_year_that_the_season_is_in(void **state)
{
	static struct flight_view v;
	struct flight_page p = { .view = &v };

	(void)state;
	sample_flight(&v);
	v.now.first_day = day_from_ymd(2026, 7, 1);
	v.now.n = 52;
	assert_int_equal(type(&p, "b9-20\n").day, day_from_ymd(2026, 9, 20));
	assert_int_equal(type(&p, "b2-20\n").day, day_from_ymd(2027, 2, 20));
}

static void flight_page_refuses_in_words(void **state)
{
	static const struct {
		const char *why, *keys, *says;
		bool is_set, is_dated;
	} row[] = {
		{ "nothing to take out", "b-\n", "There is no biofix to take out.",
			false, true },
		{ "nothing suggested", "b\n",
			"Nothing is suggested yet: type the date.", true, false },
		{ "a day alone", "b9\n", "9 is no date: write 2026-05-09, or 05-09.",
			true, true },
		{ "no such month", "b13-01\n",
			"13-01 is no date: write 2026-05-09, or 05-09.", true, true },
		{ "no such day", "b2-30\n",
			"2-30 is no date: write 2026-05-09, or 05-09.", true, true },
		{ "the year before", "b2025-05-09\n",
			"2025-05-09 is not in the season of 2026.", true, true },
		{ "two years on", "b2028-01-01\n",
			"2028-01-01 is not in the season of 2026.", true, true },
		{ "a letter", "bx",
			"Only digits and - here: Enter ends it, Esc drops it.", true,
			true },
		{ "too long", "b2026-05-091", "No more fits here.", true, true },
	};
	static struct flight_view v;

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct flight_page p = { .view = &v };
		struct wish w = page_wish(WANT_NOTHING);

		sample_flight(&v);
		v.biofix.is_set = row[i].is_set;
		if (!row[i].is_dated)
			v.biofix.suggestion.state = BIOFIX_WAITS;
		w = type(&p, row[i].keys);
		if (w.want != WANT_NOTHING || !p.typing || !p.message.is_fault ||
			strcmp(p.message.text, row[i].says) != 0)
			fail_msg("%s: want %d, \"%s\"", row[i].why, (int)w.want,
				p.message.text);
	}
}

static void flight_page_prints_the_season_of_one_farm_only(void **state)
{
	static struct flight_view v;
	struct flight_page p = { .view = &v };

	(void)state;
	sample_flight(&v);
	v.ask.farm = 0;
	assert_int_equal(type(&p, "s").want, WANT_NOTHING);
	assert_non_null(strstr(p.message.text, "f shows the next one"));
}

static void flight_page_keys_want_what_they_say(void **state)
{
	static struct flight_view v;
	struct flight_page p = { .view = &v };
	struct wish w = page_wish(WANT_NOTHING);

	(void)state;
	sample_flight(&v);
	w = type(&p, "m");
	assert_int_equal(w.want, WANT_WEATHER);
	assert_int_equal(w.farm, SAMPLE_FARM);
	w = type(&p, "h");
	assert_int_equal(w.want, WANT_HOTSPOTS);
	assert_int_equal(w.farm, SAMPLE_FARM);
	assert_int_equal(w.pest, 1);
	w = type(&p, "s");
	assert_int_equal(w.want, WANT_SEASON);
	assert_int_equal(w.farm, SAMPLE_FARM);
	assert_int_equal(w.id, v.ask.season);
	assert_int_equal(type(&p, "?").want, WANT_HELP);
	assert_int_equal(type(&p, "\x1b").want, WANT_BACK);
	assert_int_equal(type(&p, "b5\x1b").want, WANT_NOTHING);
	assert_false(p.typing);
	assert_string_equal(p.message.text, "Left as it was.");
	assert_int_equal(type(&p, "z").want, WANT_NOTHING);
	assert_string_equal(p.message.text, "z does nothing here: ? shows the keys");
	type(&p, "d");
	assert_int_equal(p.ruler, RULER_HEAT);
	type(&p, "dv");
	assert_int_equal(p.ruler, RULER_WEEKS);
	assert_true(p.several);
}

static void flight_page_keys_turn_what_they_say(void **state)
{
	static const struct {
		const char *key;
		int farm, block, trap, pest, season;
	} row[] = {
		{ "f", 1, 0, 0, 0, 0 },
		{ "F", -1, 0, 0, 0, 0 },
		{ "k", 0, 1, 0, 0, 0 },
		{ "K", 0, -1, 0, 0, 0 },
		{ "t", 0, 0, 1, 0, 0 },
		{ "T", 0, 0, -1, 0, 0 },
		{ "p", 0, 0, 0, 1, 0 },
		{ "P", 0, 0, 0, -1, 0 },
		{ "Y", 0, 0, 0, 0, 1 },
		{ "y", 0, 0, 0, 0, -1 },
	};
	static struct flight_view v;

	(void)state;
	sample_flight(&v);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct flight_page p = { .view = &v, .top = 5 };

		assert_int_equal(type(&p, row[i].key).want, WANT_NOTHING);
		if (p.turn_farm != row[i].farm || p.turn_block != row[i].block ||
			p.turn_trap != row[i].trap || p.turn_pest != row[i].pest ||
			p.turn_season != row[i].season || p.top != 0)
			fail_msg("%s: %d %d %d %d %d", row[i].key, p.turn_farm,
				p.turn_block, p.turn_trap, p.turn_pest, p.turn_season);
	}
}

static void flight_page_scrolls_to_its_end_and_no_further(void **state)
{
	static struct flight_view v;
	struct flight_page p = { .view = &v };
	struct canvas c = { 0 };

	(void)state;
	sample_flight(&v);
	draw(&p, &c, 24, 80);
	type(&p, "8");
	assert_int_equal(p.top, 0);
	type(&p, "2");
	assert_int_equal(p.top, 1);
	type(&p, "1");
	draw(&p, &c, 24, 80);
	expect_shows("the end", &c, "* week from Mon 25 May: peak, lure change\n");
	expect_shows_not("the end", &c, " more ");
	type(&p, "7");
	assert_int_equal(p.top, 0);
	canvas_free(&c);
}

static void flight_page_keys_are_each_named_once(void **state)
{
	(void)state;
	expect_keys(flight_page_keys());
}

static void sample_long_flight(struct flight_view *v)
{
	static struct event event;

	sample_flight(v);
	sample_long(v->title, sizeof v->title, 1);
	sample_long(v->says, sizeof v->says, 0);
	sample_long(v->biofix.suggested, sizeof v->biofix.suggested, 1);
	sample_long(v->rows[0].name, sizeof v->rows[0].name, 1);
	sample_long(v->rows[1].flags, sizeof v->rows[1].flags, 0);
	sample_long(event.text, sizeof event.text, 0);
	sample_long(event.source, sizeof event.source, 1);
	v->events = (struct events){ &event, 1, 1 };
	v->now.n = v->earlier[0].n = FLIGHT_WEEKS_MAX;
	v->now.rate[FLIGHT_WEEKS_MAX - 1] = 99999.9;
	v->marks[0].week = FLIGHT_WEEKS_MAX - 1;
	v->marks[1].week = -1;
	v->threshold = 0.01;
}

static void flight_page_draws_at_every_size(void **state)
{
	static struct flight_view v[3];
	struct canvas c = { 0 };

	(void)state;
	v[0] = (struct flight_view){ .threshold = -1 };
	sample_flight(&v[1]);
	sample_long_flight(&v[2]);
	for (size_t i = 0; i < 3; i++)
		for (int rows = 1; rows <= 40; rows++)
			for (int cols = 1; cols <= 120; cols++) {
				struct flight_page p = { .view = &v[i],
					.several = cols % 2,
					.ruler = cols % 3 ? RULER_WEEKS : RULER_HEAT,
					.typing = cols % 5 == 0,
					.top = (size_t)rows };

				draw(&p, &c, rows, cols);
			}
	canvas_free(&c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(flight_page_shows_the_season),
		cmocka_unit_test(flight_chart_tells_kinds_of_weeks_apart),
		cmocka_unit_test(flight_chart_puts_the_threshold_where_it_is),
		cmocka_unit_test(flight_chart_always_shows_the_threshold),
		cmocka_unit_test(flight_chart_stays_readable_in_ascii),
		cmocka_unit_test(flight_chart_shows_the_latest_weeks_that_fit),
		cmocka_unit_test(flight_chart_goes_along_degree_days),
		cmocka_unit_test(flight_page_shows_less_as_it_gets_lower),
		cmocka_unit_test(flight_page_says_what_is_not_there),
		cmocka_unit_test(
			flight_page_says_that_the_flight_may_have_begun_earlier),
		cmocka_unit_test(flight_page_wants_the_biofix_that_is_typed),
		cmocka_unit_test(flight_page_takes_the_year_that_the_season_is_in),
		cmocka_unit_test(flight_page_refuses_in_words),
		cmocka_unit_test(flight_page_keys_want_what_they_say),
		cmocka_unit_test(flight_page_keys_turn_what_they_say),
		cmocka_unit_test(flight_page_scrolls_to_its_end_and_no_further),
		cmocka_unit_test(flight_page_prints_the_season_of_one_farm_only),
		cmocka_unit_test(flight_page_keys_are_each_named_once),
		cmocka_unit_test(flight_page_draws_at_every_size),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
