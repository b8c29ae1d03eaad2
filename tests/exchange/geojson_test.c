/* Traps and sources on the maps of other programs. The layout is that of RFC 7946. */
#include "desk.h"

#include "book/sources.h"
#include "exchange/geojson.h"

#define MAP(features) "{\"type\":\"FeatureCollection\",\"features\":[" features "]}"
#define FEATURE(properties, geometry)                                                  \
	"{\"type\":\"Feature\",\"properties\":" properties ",\"geometry\":" geometry "}"
#define POINT(lon, lat) "{\"type\":\"Point\",\"coordinates\":[" lon "," lat "]}"
#define RING "[[165.2,41.2],[165.3,41.2],[165.3,41.3],[165.2,41.2]]"
#define POLYGON(rings) "{\"type\":\"Polygon\",\"coordinates\":[" rings "]}"

static int64_t quarle_top(struct book *b)
{
	struct farms all = { 0 };
	int64_t id = 0;

	assert_true(book_farms(b, &all, NULL));
	for (size_t i = 0; i < all.n; i++)
		if (strcmp(all.items[i].name, "Quarle Top") == 0)
			id = all.items[i].id;
	free(all.items);
	return id;
}

static bool take_map(
	struct book *b, const char *text, struct imported *out, struct err *e)
{
	struct geojson_from from = { .name = "map.geojson", .farm = quarle_top(b) };

	from.file = fmemopen((void *)(uintptr_t)text, strlen(text), "r");
	assert_non_null(from.file);
	bool ok = geojson_import(b, &from, out, e);
	fclose(from.file);
	return ok;
}

static void must_take_map(struct book *b, const char *text, struct imported *out)
{
	struct err e = { 0 };

	if (!take_map(b, text, out, &e))
		fail_msg("%s; %s", e.text,
			out->problems.n ? out->problems.items[0] : "");
}

static void expect_in(struct book *b, const char *kind, const char *want)
{
	char *all = give(b, kind);

	if (!strstr(all, want))
		fail_msg("no \"%s\" in\n%s", want, all);
	free(all);
}

static void points_give_traps_their_positions(void **state)
{
	struct book *b = farm_book();
	struct imported out = { 0 };

	(void)state;
	must_take_map(b,
		MAP(FEATURE("{\"name\":\"1\"}", POINT("165.201", "41.205")) "," FEATURE(
			"{\"name\":2}", POINT("165.202", "41.206,12.5"))),
		&out);
	assert_int_equal(out.n_changed, 2);
	assert_int_equal(out.n_new, 0);
	assert_int_equal(out.n_warnings, 0);
	assert_int_equal(out.notes.n, 1);
	assert_string_equal(out.notes.items[0],
		"traps of Quarle Top without a point in the file: 3");
	expect_in(b, "traps", "41.205000,165.201000,1,2026-05-01");
	expect_in(b, "traps", "41.206000,165.202000,2,");
	imported_free(&out);
	book_close(b);
}

static void outlines_and_points_of_a_kind_are_sources(void **state)
{
	struct book *b = farm_book();
	struct imported out = { 0 };

	(void)state;
	must_take_map(b,
		MAP(FEATURE("{\"name\":\"Gully\"}", POLYGON(RING)) "," FEATURE(
			"{\"name\":\"Yard\",\"kind\":\"bins\"}",
			POINT("165.2", "41.2"))),
		&out);
	assert_int_equal(out.n_new, 2);
	imported_free(&out);
	expect_in(b, "places",
		"Quarle Top,Gully,other,,,41.2 165.2; 41.2 165.3; 41.3 165.3");
	expect_in(b, "places", "Quarle Top,Yard,bins,41.200000,165.200000,");
	out = (struct imported){ 0 };
	must_take_map(b,
		MAP(FEATURE("{\"name\":\"Gully\",\"kind\":\"wild\"}",
			POLYGON(RING)) "," FEATURE("{\"name\":\"Yard\"}",
			POINT("165.2", "41.21"))),
		&out);
	assert_int_equal(out.n_new, 0);
	assert_int_equal(out.n_changed, 2);
	imported_free(&out);
	expect_in(b, "places", "Quarle Top,Gully,wild");
	expect_in(b, "places", "Quarle Top,Yard,bins,41.210000");
	book_close(b);
}

static void what_does_not_belong_is_passed_over_in_words(void **state)
{
	static const struct {
		const char *feature, *says;
	} row[] = {
		{ FEATURE("{\"name\":\"9\"}", POINT("165", "41")),
			"the point \"9\" is no trap and no source of Quarle Top; it was "
			"passed over" },
		{ FEATURE("{\"what\":\"trap\",\"name\":\"9\"}", POLYGON(RING)),
			"a trap hangs at a point and has no outline; it was passed over" },
		{ FEATURE("null", POINT("165", "41")),
			"a point has no name that a trap could have; it was passed over" },
		{ FEATURE("{\"name\":\"x\"}", "null"),
			"it has no place on the ground; it was passed over" },
		{ FEATURE("{\"name\":\"x\"}",
			  "{\"type\":\"LineString\",\"coordinates\":[[1,1],[2,2]]}"),
			"a LineString is neither a point nor one outline; it was passed "
			"over" },
		{ FEATURE("{}", POLYGON(RING)),
			"a source needs a name of at most 47 bytes; it was passed over" },
		{ FEATURE("{\"name\":\"Hollow\"}", POLYGON(RING "," RING)),
			"the holes of its outline were left out" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct book *b = farm_book();
		struct imported out = { 0 };
		char text[1024], want[256];

		snprintf(text, sizeof text,
			MAP("%s," FEATURE("{\"name\":\"1\"}", POINT("165.2", "41.2"))),
			row[i].feature);
		snprintf(want, sizeof want, "map.geojson, feature 1: %s", row[i].says);
		must_take_map(b, text, &out);
		assert_int_equal(out.n_changed, 1);
		assert_int_equal(out.n_warnings, 1);
		assert_string_equal(out.warnings.items[0], want);
		imported_free(&out);
		book_close(b);
	}
}

static void features_of_other_farms_are_counted(void **state)
{
	struct book *b = farm_book();
	struct imported out = { 0 };

	(void)state;
	must_take_map(b,
		MAP(FEATURE("{\"name\":\"1\",\"farm\":\"Nethermoss\"}",
			POINT("165.2",
				"41.2")) "," FEATURE("{\"name\":\"1\",\"farm\":\"Quarle Top\"}",
			POINT("165.3", "41.3"))),
		&out);
	assert_int_equal(out.n_changed, 1);
	assert_string_equal(out.notes.items[out.notes.n - 1],
		"1 feature of other farms was passed over");
	imported_free(&out);
	book_close(b);
}

/* Nothing of such a file goes in. What follows the words is the library's. */
static void files_that_are_wrong_are_refused_whole(void **state)
{
	static const struct {
		const char *why, *text, *says;
	} row[] = {
		{ "no JSON", "{\"type\":",
			"map.geojson, line 1: this is not well-formed JSON (" },
		{ "no GeoJSON", "{\"name\":1}",
			"map.geojson is no GeoJSON file of features: it does not begin with "
			"a FeatureCollection" },
		{ "metres",
			"{\"type\":\"FeatureCollection\",\"crs\":{\"properties\":{\"name\":"
			"\"urn:ogc:def:crs:EPSG::3857\"}},\"features\":[]}",
			"the positions of map.geojson are in another system "
			"(urn:ogc:def:crs:EPSG::3857); save it as longitude and latitude, "
			"WGS 84" },
		{ "nothing in it", MAP(""),
			"map.geojson: no point is called as a trap or a source of Quarle "
			"Top, and no outline has a name" },
		{ "latitude first",
			MAP(FEATURE("{\"name\":\"1\"}", POINT("41.2", "165.2"))),
			"map.geojson, feature 1: a position needs longitude from -180 to 180 "
			"and then latitude from -90 to 90, in degrees" },
		{ "a text for a number",
			MAP(FEATURE("{\"name\":\"1\"}", POINT("\"165\"", "41"))),
			"map.geojson, feature 1: a position is a pair of numbers, longitude "
			"and latitude" },
		{ "two corners",
			MAP(FEATURE("{\"name\":\"x\"}",
				POLYGON("[[165,41],[166,41],[165,41]]"))),
			"map.geojson, feature 1: an outline has 3 to 100 corners, this one "
			"has 2" },
		{ "a trap twice",
			MAP(FEATURE("{\"name\":\"1\"}",
				POINT("165.2", "41.2")) "," FEATURE("{\"name\":\"1\"}",
				POINT("165.2", "41.2"))),
			"map.geojson, feature 2: the point \"1\" is in the file twice, as "
			"feature 1 too; a trap hangs in one place" },
		{ "a source twice",
			MAP(FEATURE("{\"name\":\"x\"}", POLYGON(RING)) "," FEATURE(
				"{\"name\":\"x\"}", POLYGON(RING))),
			"map.geojson, feature 2: the source \"x\" is in the file twice, as "
			"feature 1 too; a farm has it once" },
		{ "no feature", MAP("7"),
			"map.geojson, feature 1: this is no Feature" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct book *b = farm_book();
		struct imported out = { 0 };
		struct err e = { 0 };
		char *before = give_all(b);

		if (take_map(b, row[i].text, &out, &e))
			fail_msg("%s: was taken in", row[i].why);
		assert_int_equal(e.kind, ERR_INPUT);
		if (strncmp(complaint(&out, &e), row[i].says, strlen(row[i].says)) != 0)
			fail_msg("%s: %s", row[i].why, complaint(&out, &e));
		char *after = give_all(b);
		expect_text(row[i].why, after, before);
		free(before);
		free(after);
		imported_free(&out);
		book_close(b);
	}
}

static void a_hundred_corners_go_in_and_one_more_does_not(void **state)
{
	(void)state;
	for (int corners = OUTLINE_MAX; corners <= OUTLINE_MAX + 1; corners++) {
		struct book *b = farm_book();
		struct imported out = { 0 };
		struct err e = { 0 };
		struct buf text = { 0 };

		buf_add(&text, "{\"type\":\"Feature\",\"properties\":{\"name\":\"x\"},"
			       "\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[");
		for (int i = 0; i < corners; i++)
			buf_addf(&text, "[165.%03d,41.%03d],", i, i * i % 997);
		buf_add(&text, "[165.000,41.000]]]}}");
		assert_int_equal(
			take_map(b, text.text, &out, &e), corners == OUTLINE_MAX);
		buf_free(&text);
		imported_free(&out);
		book_close(b);
	}
}

static void a_position_far_off_is_asked_about(void **state)
{
	struct book *b = farm_book();
	struct imported out = { 0 };

	(void)state;
	must_take_map(b,
		MAP(FEATURE("{\"name\":\"1\"}", POINT("165.2", "41.2")) "," FEATURE(
			"{\"name\":\"2\"}",
			POINT("165.2", "41.2")) "," FEATURE("{\"name\":\"3\"}",
			POINT("165.2",
				"-41.2")) "," FEATURE("{\"name\":\"x\",\"kind\":\"wild\"}",
			POINT("-165.2", "41.2"))),
		&out);
	assert_int_equal(out.n_warnings, 2);
	assert_non_null(strstr(out.warnings.items[0], "trap 3 lies 9 "));
	assert_non_null(strstr(out.warnings.items[1], "x lies "));
	imported_free(&out);
	book_close(b);
}

static void what_goes_out_comes_back(void **state)
{
	struct book *b = farm_book(), *other = farm_book();
	struct imported out = { 0 };
	struct buf map = { 0 };
	struct err e = { 0 };

	(void)state;
	must_take(b, "places",
		"farm,name,kind,lat,lon,outline\n"
		"Quarle Top,\"a \"\"b\"\"\\\",wild,41.1,-165.1234567,\n"
		"Quarle Top,Clockwise,abandoned,,,\"41 165; 42 165; 42 166\"\n"
		"Quarle Top,Unlocated,other,,,\n");
	must_take_map(
		b, MAP(FEATURE("{\"name\":\"1\"}", POINT("165.5", "41.0"))), &out);
	imported_free(&out);
	assert_true(geojson_export(b, 0, &map, &e));
	/* RFC 7946, 3.1.6: the outer ring goes counterclockwise and closes. */
	assert_non_null(strstr(
		map.text, "[[[165.0,41.0],[166.0,42.0],[165.0,42.0],[165.0,41.0]]]"));
	assert_null(strstr(map.text, "Unlocated"));
	out = (struct imported){ 0 };
	must_take_map(other, map.text, &out);
	assert_int_equal(out.n_new, 2);
	assert_int_equal(out.n_changed, 1);
	imported_free(&out);
	out = (struct imported){ 0 };
	must_take_map(other, map.text, &out);
	assert_int_equal(out.n_same, 3);
	imported_free(&out);
	buf_free(&map);
	book_close(b);
	book_close(other);
}

/* RFC 7946 turns it; that alone is no change. */
static void a_ring_the_other_way_round_is_the_same_ground(void **state)
{
	static const struct {
		const char *why, *ring;
		int n_same;
	} row[] = {
		{ "as it was entered", "[165,41],[165,42],[166,42],[165,41]", 1 },
		{ "the other way round", "[165,41],[166,42],[165,42],[165,41]", 1 },
		{ "another corner", "[165,41],[166,42],[165,43],[165,41]", 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct book *b = farm_book();
		struct imported out = { 0 };
		struct buf map = { 0 };

		must_take(b, "places",
			"farm,name,kind,lat,lon,outline\n"
			"Quarle Top,Gully,wild,,,\"41 165; 42 165; 42 166\"\n");
		buf_addf(&map, MAP(FEATURE("{\"name\":\"Gully\"}", POLYGON("[%s]"))),
			row[i].ring);
		must_take_map(b, map.text, &out);
		if (out.n_same != row[i].n_same || out.n_changed != !row[i].n_same)
			fail_msg("%s: %d the same, %d changed", row[i].why,
				(int)out.n_same, (int)out.n_changed);
		imported_free(&out);
		buf_free(&map);
		book_close(b);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(points_give_traps_their_positions),
		cmocka_unit_test(outlines_and_points_of_a_kind_are_sources),
		cmocka_unit_test(what_does_not_belong_is_passed_over_in_words),
		cmocka_unit_test(features_of_other_farms_are_counted),
		cmocka_unit_test(files_that_are_wrong_are_refused_whole),
		cmocka_unit_test(a_hundred_corners_go_in_and_one_more_does_not),
		cmocka_unit_test(a_position_far_off_is_asked_about),
		cmocka_unit_test(what_goes_out_comes_back),
		cmocka_unit_test(a_ring_the_other_way_round_is_the_same_ground),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
