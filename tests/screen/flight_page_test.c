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
	SET(v.events.none, "What comes next is not known: biofix not set.");
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
	v.ask.farm = SAMPLE_FARM;
	v.heat.state = HEAT_NO_BIOFIX;
	SET(v.biofix.set, "biofix not set");
	SET(v.heat_text, "no sum without it");
	draw(&p, &c, 24, 80);
	expect_shows("no biofix", &c, "biofix not set");
	expect_hides("said once", &c, "no sum without it");
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
	assert_int_equal(type(&p, "ss").want, WANT_NOTHING);
	type(&p, "\x1b");
	w = type(&p, "s\n");
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
	v->events = (struct events){ .items = &event, .n = 1 };
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
		cmocka_unit_test(flight_page_shows_less_as_it_gets_lower),
		cmocka_unit_test(flight_page_says_what_is_not_there),
		cmocka_unit_test(
			flight_page_says_that_the_flight_may_have_begun_earlier),
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
