#include "screen/hotspots_samples.h"

static void hotspots_map_arrows_go_from_trap_to_trap(void **state)
{
	static const struct {
		const char *why, *keys;
		size_t want;
	} row[] = {
		{ "the first located one", "m", 0 },
		{ "east", "m>", 1 },
		{ "south", "m~", 2 },
		{ "and north again", "m~^", 0 },
		{ "west of the westernmost stays", "m<", 0 },
		{ "Tab goes in driving order", "m\t\t\t", 3 },
		{ "and round", "m\t\t\t\t\t\t\t\t", 0 },
		{ "past one without a position", "m\t\t\t\t\t", 6 },
	};
	static struct hot_view v;

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct hotspots_page p = { .view = &v };

		sample_hotspots(&v);
		v.traps[5].has_position = false;
		hot_points_fill(&v);
		type(&p, row[i].keys);
		if (p.trap != row[i].want)
			fail_msg("%s: trap %zu", row[i].why, p.trap);
		hotspots_page_free(&p);
	}
}

static void hotspots_map_says_what_the_picked_trap_caught(void **state)
{
	static struct hot_view v;
	struct hotspots_page p = { .view = &v };
	struct canvas c = { 0 };

	(void)state;
	sample_hotspots(&v);
	type(&p, "m");
	draw(&p, &c, 24, 80);
	expect_shows("its catch", &c,
		"trap 1, Hollow East, border: 6.2 a week, 62 moths in 70 nights");
	expect_shows("its neighbours", &c, "near it, within 127 m: 2, 3");
	p.trap = 6;
	draw(&p, &c, 24, 80);
	expect_shows("unread is never zero", &c, "trap 7, Ridge: not read");
	p.trap = 8;
	draw(&p, &c, 24, 80);
	expect_shows("not compared", &c, "It is not compared");
	canvas_free(&c);
	hotspots_page_free(&p);
}

/* Its letter stands below all the same. */
static void hotspots_map_leaves_far_sources_off(void **state)
{
	static struct hot_view v;
	static char letters[] = "A Mill Lane (abandoned, off the map)";
	struct hotspots_page p = { .view = &v };
	struct canvas c = { 0 };
	struct buf text = { 0 };

	(void)state;
	sample_hotspots(&v);
	type(&p, "m");
	draw(&p, &c, 24, 100);
	canvas_dump(&c, false, &text);
	assert_ptr_not_equal(strchr(text.text, 'A'), strstr(text.text, v.letters));
	buf_clear(&text);
	v.sources[0].is_on_map = false;
	v.letters = letters;
	draw(&p, &c, 24, 100);
	canvas_dump(&c, false, &text);
	assert_ptr_equal(strchr(text.text, 'A'), strstr(text.text, letters));
	buf_free(&text);
	canvas_free(&c);
	hotspots_page_free(&p);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(hotspots_map_arrows_go_from_trap_to_trap),
		cmocka_unit_test(hotspots_map_says_what_the_picked_trap_caught),
		cmocka_unit_test(hotspots_map_leaves_far_sources_off),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
