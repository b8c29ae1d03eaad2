#include "screen/hotspots_page.h"

#include "answers/entry.h"
#include "screen/hotspots_samples.h"

static void hotspots_page_shows_list_map_and_texts(void **state)
{
	static const struct {
		const char *name;
		int rows, cols;
		const char *keys;
		bool inks;
	} row[] = {
		{ "hotspots-80x24", 24, 80, "", true },
		{ "hotspots-80x24-numbers", 24, 80, "\n", false },
		{ "hotspots-80x24-sources", 24, 80, "s", false },
		{ "hotspots-80x24-map", 24, 80, "m", true },
		{ "hotspots-120x40-map", 40, 120, "m>>", false },
		{ "hotspots-40x16", 16, 40, "~~", false },
		{ "hotspots-40x16-map", 16, 40, "m", false },
		{ "hotspots-30x8", 8, 30, "", false },
	};
	static struct hot_view v;
	struct canvas c = { 0 };

	(void)state;
	sample_hotspots(&v);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct hotspots_page p = { .view = &v, .right = "Tue 21 Jul" };

		draw(&p, &c, row[i].rows, row[i].cols);
		type(&p, row[i].keys);
		draw(&p, &c, row[i].rows, row[i].cols);
		expect_golden(row[i].name, &c, row[i].inks);
		hotspots_page_free(&p);
	}
	canvas_free(&c);
}

static void hotspots_page_keys_go_between_its_parts(void **state)
{
	static const struct {
		const char *why, *keys;
		enum hotspots_show want;
	} row[] = {
		{ "opens on the list", "", HOTSPOTS_LIST },
		{ "numbers", "\n", HOTSPOTS_NUMBERS },
		{ "numbers by the arrow", ">", HOTSPOTS_NUMBERS },
		{ "and back", "\n\n", HOTSPOTS_LIST },
		{ "back by the arrow", "><", HOTSPOTS_LIST },
		{ "the map", "m", HOTSPOTS_MAP },
		{ "and back", "mm", HOTSPOTS_LIST },
		{ "sources", "s", HOTSPOTS_SOURCES },
		{ "from the map to the sources", "ms", HOTSPOTS_SOURCES },
		{ "Esc goes to the list first", "m\x1b", HOTSPOTS_LIST },
		{ "from a trap on the map to its numbers", "m\n", HOTSPOTS_NUMBERS },
	};
	static struct hot_view v;

	(void)state;
	sample_hotspots(&v);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct hotspots_page p = { .view = &v, .rows = 5 };

		type(&p, row[i].keys);
		if (p.show != row[i].want)
			fail_msg("%s: %d", row[i].why, (int)p.show);
		hotspots_page_free(&p);
	}
}

static void hotspots_page_keys_want_what_they_say(void **state)
{
	static struct hot_view v;
	struct hotspots_page p = { .view = &v };

	(void)state;
	sample_hotspots(&v);
	assert_int_equal(type(&p, "?").want, WANT_HELP);
	assert_int_equal(type(&p, "m\x1b").want, WANT_NOTHING);
	assert_int_equal(type(&p, "\x1b").want, WANT_BACK);
	type(&p, "z");
	assert_string_equal(p.message.text, "z does nothing here: ? shows the keys");
	type(&p, "m\n");
	assert_int_equal(p.picked, 3); /* trap 1 and near */
	hotspots_page_free(&p);
}

static void hotspots_page_keys_turn_what_they_say(void **state)
{
	static const struct {
		const char *key;
		int farm, pest, season, flight, alike;
	} row[] = {
		{ "f", 1, 0, 0, 0, 0 },
		{ "F", -1, 0, 0, 0, 0 },
		{ "p", 0, 1, 0, 0, 0 },
		{ "P", 0, -1, 0, 0, 0 },
		{ "Y", 0, 0, 1, 0, 0 },
		{ "y", 0, 0, -1, 0, 0 },
		{ "l", 0, 0, 0, 1, 0 },
		{ "L", 0, 0, 0, -1, 0 },
		{ "c", 0, 0, 0, 0, 1 },
		{ "C", 0, 0, 0, 0, -1 },
	};
	static struct hot_view v;

	(void)state;
	sample_hotspots(&v);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct hotspots_page p = { .view = &v };

		assert_int_equal(type(&p, row[i].key).want, WANT_NOTHING);
		if (p.turn_farm != row[i].farm || p.turn_pest != row[i].pest ||
			p.turn_season != row[i].season ||
			p.turn_flight != row[i].flight || p.turn_alike != row[i].alike)
			fail_msg("%s: %d %d %d %d %d", row[i].key, p.turn_farm,
				p.turn_pest, p.turn_season, p.turn_flight,
				p.turn_alike);
		hotspots_page_free(&p);
	}
}

/* What is no claim stands with the sources alone. */
static void hotspots_list_names_a_source_when_catch_falls_away_from_it(void **state)
{
	static const struct {
		enum gradient_say say;
		bool shows;
	} row[] = {
		{ GRADIENT_FALLS, true },
		{ GRADIENT_FALLS_SOMEHOW, true },
		{ GRADIENT_TRAPS, false },
		{ GRADIENT_NO_CHANGE, false },
		{ GRADIENT_ONE_TRAP, false },
	};
	static struct hot_view v;
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct hotspots_page p = { .view = &v };
		struct buf got = { 0 };

		sample_hotspots(&v);
		v.sources[0].gradient.say = row[i].say;
		draw(&p, &c, 24, 80);
		canvas_dump(&c, false, &got);
		if ((strstr(got.text, "Catch halves") != NULL) != row[i].shows)
			fail_msg("%d:\n%s", (int)row[i].say, got.text);
		buf_free(&got);
		hotspots_page_free(&p);
	}
	canvas_free(&c);
}

static void hotspots_page_says_what_is_not_there(void **state)
{
	static struct hot_view v;
	struct hotspots_page p = { .view = &v };
	struct canvas c = { 0 };

	(void)state;
	v = (struct hot_view){ 0 };
	SET(v.title, "Quillet \u00b7 CM \u00b7 season 2026");
	SET(v.says, "No trap for it was read this season.");
	SET(v.no_map, "no trap has a position.");
	SET(v.missing, "Without positions there is no map.");
	draw(&p, &c, 24, 80);
	expect_shows("nothing to compare", &c, "No trap for it was read this season.");
	expect_shows("what is missing", &c, "Without positions there is no map.");
	type(&p, "m");
	assert_string_equal(p.message.text, "No map: no trap has a position.");
	assert_int_equal(p.show, HOTSPOTS_LIST);
	type(&p, "\n");
	assert_int_equal(p.show, HOTSPOTS_LIST);
	assert_string_equal(p.message.text, "No trap for it was read this season.");
	type(&p, "s");
	draw(&p, &c, 24, 80);
	expect_shows("no sources", &c, "mothtally import places FILE");
	expect_shows("where to put one in", &c, "b opens");
	canvas_free(&c);
	hotspots_page_free(&p);
}

static void hotspots_list_narrows_to_what_is_typed(void **state)
{
	static const struct {
		const char *why, *keys;
		size_t n, at;
		enum hotspots_show show;
	} row[] = {
		{ "all", "7", SAMPLE_SPOT_ROWS, 0, HOTSPOTS_LIST },
		{ "a name", "/hollow e", 1, 0, HOTSPOTS_LIST },
		{ "nothing", "/zz", 0, SIZE_MAX, HOTSPOTS_LIST },
		{ "no numbers behind nothing", "/zz\n", 0, SIZE_MAX, HOTSPOTS_LIST },
		{ "all again", "/zz\x1b", SAMPLE_SPOT_ROWS, 0, HOTSPOTS_LIST },
		{ "the numbers behind one that is found", "/luck\n", 0, 0,
			HOTSPOTS_NUMBERS },
	};
	static struct hot_view v;
	struct canvas c = { 0 };

	(void)state;
	sample_hotspots(&v);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct hotspots_page p = { .view = &v, .rows = 5 };

		type(&p, row[i].keys);
		draw(&p, &c, 24, 80);
		if (row[i].n && (p.sift.n != row[i].n || p.picked != row[i].at))
			fail_msg("%s: %zu rows, %zu picked", row[i].why, p.sift.n,
				p.picked);
		assert_int_equal(p.show, row[i].show);
		if (strcmp(row[i].keys, "/zz\n") == 0)
			assert_string_equal(p.message.text,
				"Nothing is picked: Esc shows all again.");
		hotspots_page_free(&p);
	}
	canvas_free(&c);
}

static void hotspots_page_opens_the_sources_of_its_farm(void **state)
{
	static struct hot_view v;
	struct hotspots_page p = { .view = &v };

	(void)state;
	sample_hotspots(&v);
	v.farm = 7;
	struct wish w = hotspots_page_key(&p, sample_key('b'));
	assert_int_equal(w.want, WANT_ENTRIES);
	assert_int_equal(w.kind, ENTRY_SOURCES);
	assert_int_equal(w.farm, 7);
	hotspots_page_free(&p);
}

/* A view read anew may lack what was picked. */
static void hotspots_page_keeps_to_what_is_there(void **state)
{
	static struct hot_view v;
	struct canvas c = { 0 };

	(void)state;
	for (int show = HOTSPOTS_LIST; show <= HOTSPOTS_SOURCES; show++) {
		struct hotspots_page p = { .view = &v,
			.show = (enum hotspots_show)show,
			.picked = 99,
			.top = 98,
			.trap = 97,
			.text_top = 96 };

		sample_hotspots(&v);
		draw(&p, &c, 24, 80);
		assert_int_equal(p.picked, SAMPLE_SPOT_ROWS - 1);
		v = (struct hot_view){ 0 };
		draw(&p, &c, 24, 80);
		assert_true(p.show == HOTSPOTS_LIST || p.show == HOTSPOTS_SOURCES);
		hotspots_page_free(&p);
	}
	canvas_free(&c);
}

static void hotspots_page_stays_readable_in_ascii(void **state)
{
	static const char *const keys[] = { "", "\n", "m", "s" };
	static struct hot_view v;
	struct canvas c = { 0 };

	(void)state;
	sample_hotspots(&v);
	for (size_t k = 0; k < sizeof keys / sizeof *keys; k++) {
		struct hotspots_page p = { .view = &v };

		type(&p, keys[k]);
		draw(&p, &c, 24, 80);
		for (size_t i = 0; i < 24 * 80; i++)
			if (canvas_ascii(c.cells[i].ch[0]) == '?' &&
				c.cells[i].ch[0] != '?')
				fail_msg("U+%04X has no likeness", c.cells[i].ch[0]);
		hotspots_page_free(&p);
	}
	canvas_free(&c);
}

static void hotspots_page_keys_are_each_named_once(void **state)
{
	(void)state;
	expect_keys(hotspots_page_keys());
}

static void sample_long_hotspots(struct hot_view *v)
{
	sample_hotspots(v);
	sample_long(v->title, sizeof v->title, 1);
	sample_long(v->window, sizeof v->window, 0);
	sample_long(v->says, sizeof v->says, 1);
	sample_long(v->left_out, sizeof v->left_out, 0);
	sample_long(v->rows[0].name, sizeof v->rows[0].name, 1);
	sample_long(v->rows[0].says, sizeof v->rows[0].says, 0);
	sample_long(v->rows[0].grade_text, sizeof v->rows[0].grade_text, 1);
	sample_long(v->traps[0].name, sizeof v->traps[0].name, 0);
	sample_long(v->sources[0].name, sizeof v->sources[0].name, 1);
	v->traps[3].at = (struct point){ 1e7, -1e7 };
	v->sources[0].outline[2] = (struct point){ -1e9, 1e9 };
	hot_points_fill(v);
}

static void hotspots_page_draws_at_every_size(void **state)
{
	static struct hot_view v;
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < 3; i++) {
		v = (struct hot_view){ 0 };
		if (i == 1)
			sample_hotspots(&v);
		if (i == 2)
			sample_long_hotspots(&v);
		for (int rows = 1; rows <= 40; rows++)
			for (int cols = 1; cols <= 120; cols++) {
				struct hotspots_page p = { .view = &v,
					.show = (enum hotspots_show)((rows + cols) % 4),
					.picked = (size_t)rows,
					.trap = (size_t)cols,
					.text_top = (size_t)rows };

				draw(&p, &c, rows, cols);
				hotspots_page_free(&p);
			}
	}
	canvas_free(&c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(hotspots_page_shows_list_map_and_texts),
		cmocka_unit_test(hotspots_page_keys_go_between_its_parts),
		cmocka_unit_test(hotspots_page_keys_want_what_they_say),
		cmocka_unit_test(hotspots_page_keys_turn_what_they_say),
		cmocka_unit_test(
			hotspots_list_names_a_source_when_catch_falls_away_from_it),
		cmocka_unit_test(hotspots_page_says_what_is_not_there),
		cmocka_unit_test(hotspots_list_narrows_to_what_is_typed),
		cmocka_unit_test(hotspots_page_opens_the_sources_of_its_farm),
		cmocka_unit_test(hotspots_page_keeps_to_what_is_there),
		cmocka_unit_test(hotspots_page_stays_readable_in_ascii),
		cmocka_unit_test(hotspots_page_keys_are_each_named_once),
		cmocka_unit_test(hotspots_page_draws_at_every_size),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
