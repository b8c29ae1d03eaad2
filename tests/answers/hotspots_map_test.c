#include "hot.h"

#include "../hot_points.h"

/* An invented abandoned orchard west of the twelve traps; its distances to them and the
 * fit were worked with GEOS and R 4.2.2 (tests/reference/source_polygon.csv). */
static const struct corner garth[] = { { 46.1004, -35.5035 }, { 46.1009, -35.5022 },
	{ 46.1001, -35.5016 }, { 46.0995, -35.5030 } };

static void put_source(struct fixture *f, struct source s)
{
	struct err e = { 0 };

	s.farm = f->farm.id;
	must(book_put_source(f->book, &s, &e), &e);
}

static void put_garth(struct fixture *f, double east)
{
	struct source s = { .name = "Withy Garth",
		.kind = SOURCE_ABANDONED,
		.n_outline = sizeof garth / sizeof *garth };

	for (size_t i = 0; i < s.n_outline; i++) {
		s.outline[i] = garth[i];
		s.outline[i].lon += east;
		if (s.outline[i].lon > 180)
			s.outline[i].lon -= 360;
	}
	put_source(f, s);
}

/* The twelve traps, so many degrees further east. */
static void hang_orchard(struct fixture *f, double east)
{
	for (size_t i = 0; i < ORCHARD_TRAPS; i++) {
		struct hot_spec spec = orchard[i];
		spec.lon += east;
		if (spec.lon > 180)
			spec.lon -= 360;
		hot_trap(f, &spec, "2026-04-20");
	}
}

static void shut(struct fixture *f, struct hot_view *v)
{
	hotspots_free(v);
	fixture_close(f);
}

static void catch_falls_away_from_the_orchard_wherever_it_is(void **state)
{
	static const struct {
		const char *why;
		double east;
	} row[] = {
		{ "where it was drawn", 0 },
		{ "across the date line", 215.4975 },
		{ "and elsewhere", 70 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct hot_view v = { 0 };
		fixture_open(&f);
		hang_orchard(&f, row[i].east);
		put_garth(&f, row[i].east);
		hot_see(&f, &v, (struct hot_ask){ 0 });
		if (strcmp(v.sources[0].says,
			    "Catch halves about every 150 m going away from Withy "
			    "Garth (likely 120 to 190 m).") != 0)
			fail_msg("%s: %s", row[i].why, v.sources[0].says);
		/* published distances: 47.58 to 679.32 m */
		has_text(
			v.sources[0].numbers, "12 traps, 153 moths, 48 to 679 m away.");
		/* 1, 2, 7, 10: 81 moths in 329 nights; 6, 9, 12: 14 in 238 */
		has_text(v.sources[0].numbers,
			"Border traps on its side of their block: 1.7 a week (4); other "
			"border traps: 0.4 (3).");
		assert_int_equal(v.sources[0].letter, 'A');
		has_text(v.says, "Catch halves about every 150 m");
		shut(&f, &v);
	}
}

static void a_source_is_a_clue_and_no_proof(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	fixture_open(&f);
	put_garth(&f, 0);
	for (int k = SOURCE_WILD; k < SOURCE_KIND_COUNT; k++) {
		struct source s = { .kind = (enum source_kind)k };
		text_copy(s.name, sizeof s.name, source_kind_word(s.kind));
		put_source(&f, s);
	}
	hot_see(&f, &v, (struct hot_ask){ 0 });
	assert_int_equal(v.n_sources, SOURCE_KIND_COUNT);
	for (size_t i = 0; i < v.n_sources; i++) {
		has_text(v.sources[i].note,
			"A pattern is no proof that the moths come from there.");
		assert_true(strlen(v.sources[i].note) < sizeof v.sources[i].note - 1);
	}
	shut(&f, &v);
}

/* The orchard, and one source of a point. */
static void open_by_yard(struct fixture *f, double lat, double lon)
{
	fixture_open(f);
	hang_orchard(f, 0);
	put_source(f, (struct source){ .name = "Yard",
			      .kind = SOURCE_BINS,
			      .has_position = true,
			      .lat = lat,
			      .lon = lon });
}

static void why_there_is_no_fall_is_said(void **state)
{
	static const struct {
		const char *why;
		double lat, lon;
		const char *says;
	} row[] = {
		{ "a source in the middle of the farm", 46.1006, -35.4966,
			"Yard: no clear change of the catch with distance." },
		{ "on the far side catch rises with distance", 46.1008, -35.4920,
			"Yard: no clear change of the catch with distance." },
		{ "so far away that all traps are as far", 47, -35.4920,
			"Distances to Yard differ too little to tell" },
		{ "at the pole", 90, 0, "Distances to Yard differ too little to tell" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct hot_view v = { 0 };
		open_by_yard(&f, row[i].lat, row[i].lon);
		hot_see(&f, &v, (struct hot_ask){ 0 });
		if (!strstr(v.sources[0].says, row[i].says))
			fail_msg("%s: %s", row[i].why, v.sources[0].says);
		shut(&f, &v);
	}
}

/* Other layers' tests fill views by hand, and must not fill others than these. */
static void expect_the_same_points_by_hand(struct hot_view v)
{
	const struct hot_points want = v.points;

	if (v.sources[0].is_on_map != v.sources[0].has_point)
		return; /* by hand all of them are on the map */
	hot_points_fill(&v);
	assert_int_equal(v.points.n, want.n);
	assert_int_equal(v.points.n_traps, want.n_traps);
	assert_memory_equal(v.points.x, want.x, want.n * sizeof *want.x);
	assert_memory_equal(v.points.y, want.y, want.n * sizeof *want.y);
}

/* The traps lie within 700 m: twice that beside them is still near. */
static void a_far_source_is_off_the_map(void **state)
{
	static const struct {
		const char *why;
		double lon;
		bool is_on_map;
		const char *letters;
	} row[] = {
		{ "a kilometre away", -35.513, true, "A Yard (bins)" },
		{ "a hundred", -36.8, false, "A Yard (bins, off the map)" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct hot_view v = { 0 };
		open_by_yard(&f, 46.1, row[i].lon);
		hot_see(&f, &v, (struct hot_ask){ 0 });
		if (v.sources[0].is_on_map != row[i].is_on_map ||
			strcmp(v.letters, row[i].letters) != 0)
			fail_msg("%s: %s", row[i].why, v.letters);
		assert_int_equal(v.points.n_traps, ORCHARD_TRAPS);
		assert_int_equal(v.points.n, ORCHARD_TRAPS + row[i].is_on_map);
		expect_the_same_points_by_hand(v);
		shut(&f, &v);
	}
}

static void a_source_drawn_round_a_trap_is_no_distance_from_it(void **state)
{
	static const struct corner round_one[] = { { 46.1000, -35.5012 },
		{ 46.1004, -35.5012 }, { 46.1004, -35.5008 }, { 46.1000, -35.5008 } };
	struct fixture f;
	struct hot_view v = { 0 };
	struct source s = { .name = "Yard", .kind = SOURCE_BINS, .n_outline = 4 };

	(void)state;
	fixture_open(&f);
	hang_orchard(&f, 0);
	memcpy(s.outline, round_one, sizeof round_one);
	put_source(&f, s);
	hot_see(&f, &v, (struct hot_ask){ 0 });
	has_text(v.sources[0].numbers, "12 traps, 153 moths, 0 to ");
	has_text(v.sources[0].says, "Yard");
	assert_null(strstr(v.sources[0].says, "nan"));
	shut(&f, &v);
}

static void without_positions_the_rest_still_stands(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	fixture_open(&f);
	for (size_t i = 0; i < ORCHARD_TRAPS; i++) {
		struct hot_spec spec = orchard[i];
		spec.lat = spec.lon = NAN;
		hot_trap(&f, &spec, "2026-04-20");
	}
	put_garth(&f, 0);
	put_source(&f, (struct source){ .name = "Yard", .kind = SOURCE_BINS });
	hot_see(&f, &v, (struct hot_ask){ 0 });
	assert_string_equal(v.no_map, "No map: no trap has a position.");
	assert_string_equal(v.missing,
		"Without positions: no map, no neighbourhoods, no distances to sources.");
	has_text(v.sources[0].says, "None of the traps compared has a position");
	has_text(v.sources[1].says, "Yard has no position");
	assert_int_equal(v.sources[0].letter, 0);
	assert_int_equal(hot_row_named(&v, "Ash")->grade, HOT_CLEAR);
	assert_true(v.band == 0);
	shut(&f, &v);
}

static void traps_at_one_point_have_no_neighbourhoods(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	fixture_open(&f);
	for (size_t i = 0; i < ORCHARD_TRAPS; i++) {
		struct hot_spec spec = orchard[i];
		spec.lat = 46.1;
		spec.lon = -35.5;
		hot_trap(&f, &spec, "2026-04-20");
	}
	put_garth(&f, 0);
	hot_see(&f, &v, (struct hot_ask){ 0 });
	has_text(v.missing, "All traps are at one point");
	has_text(v.sources[0].says, "Distances to Withy Garth differ too little");
	for (size_t i = 0; i < v.n; i++)
		assert_int_not_equal(v.rows[i].what, HOT_OF_NEAR);
	assert_true(v.band == 0);
	for (size_t i = 0; i < v.n_traps; i++)
		assert_true(isfinite(v.traps[i].at.x) && isfinite(v.traps[i].at.y));
	shut(&f, &v);
}

static void a_farm_at_the_pole_has_finite_places(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	fixture_open(&f);
	for (size_t i = 0; i < ORCHARD_TRAPS; i++) {
		struct hot_spec spec = orchard[i];
		spec.lat = 90 - 0.001 * (double)(i % 3);
		spec.lon = -180 + 30 * (double)i;
		hot_trap(&f, &spec, "2026-04-20");
	}
	hot_see(&f, &v, (struct hot_ask){ 0 });
	assert_int_equal(hot_row_named(&v, "Ash")->grade, HOT_CLEAR);
	for (size_t i = 0; i < v.n_traps; i++)
		assert_true(hypot(v.traps[i].at.x, v.traps[i].at.y) < 1000);
	shut(&f, &v);
}

static void neighbourhoods_need_twelve_located_traps(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };
	int n = 0;

	(void)state;
	fixture_open(&f);
	hang_orchard(&f, 0);
	hot_see(&f, &v, (struct hot_ask){ 0 });
	/* smallest at which each has a neighbour, by spdep */
	assert_true(fabs(v.band - 127.1570977) < 1e-6);
	for (size_t i = 0; i < v.n; i++) {
		if (v.rows[i].what != HOT_OF_NEAR)
			continue;
		n++;
		assert_in_range(v.rows[i].split.n_in, 3, 6);
		assert_true(isfinite(v.rows[i].gi_star));
	}
	assert_int_equal(n, 4); /* one of them has its third just at the band */
	has_text(hot_row_named(&v, "trap 1 and near")->numbers, "of 3 traps against");
	assert_string_equal(v.missing, "");
	shut(&f, &v);

	fixture_open(&f);
	hot_traps(&f, orchard, ORCHARD_TRAPS - 1, "2026-04-20");
	hot_see(&f, &v, (struct hot_ask){ 0 });
	for (size_t i = 0; i < v.n; i++)
		assert_int_not_equal(v.rows[i].what, HOT_OF_NEAR);
	assert_string_equal(v.missing,
		"Neighbourhoods are tested from 12 like traps with "
		"a position; here 11.");
	shut(&f, &v);
}

static void the_map_shows_classes_and_who_is_near(void **state)
{
	static const int digits[] = { 5, 4, 4, 3, 3, 2, 2, 1, 2, 1, 1, 1 };
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	fixture_open(&f);
	hang_orchard(&f, 0);
	hot_see(&f, &v, (struct hot_ask){ 0 });
	assert_int_equal(v.n_traps, ORCHARD_TRAPS);
	for (size_t i = 0; i < v.n_traps; i++) {
		assert_int_equal(v.traps[i].digit, digits[i]);
		for (size_t k = 0; k < v.n_traps; k++)
			assert_int_equal(v.traps[i].near[k], v.traps[k].near[i]);
		assert_int_equal(v.traps[i].near[i], 1);
	}
	/* T01-T02 90.3 m, T01-T03 126.9 m, T01-T12 633.8 m */
	assert_int_equal(v.traps[0].near[1], 1);
	assert_int_equal(v.traps[0].near[2], 1);
	assert_int_equal(v.traps[0].near[11], 0);
	double east = v.traps[11].at.x - v.traps[0].at.x;
	double north = v.traps[11].at.y - v.traps[0].at.y;
	assert_true(fabs(hypot(east, north) - 633.8061228) < 0.1);
	assert_true(east > 0 && north < 0);
	shut(&f, &v);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(catch_falls_away_from_the_orchard_wherever_it_is),
		cmocka_unit_test(a_source_is_a_clue_and_no_proof),
		cmocka_unit_test(why_there_is_no_fall_is_said),
		cmocka_unit_test(a_far_source_is_off_the_map),
		cmocka_unit_test(a_source_drawn_round_a_trap_is_no_distance_from_it),
		cmocka_unit_test(without_positions_the_rest_still_stands),
		cmocka_unit_test(traps_at_one_point_have_no_neighbourhoods),
		cmocka_unit_test(a_farm_at_the_pole_has_finite_places),
		cmocka_unit_test(neighbourhoods_need_twelve_located_traps),
		cmocka_unit_test(the_map_shows_classes_and_who_is_near),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
