/* What moths may come from: kept as given, refused when it cannot be. */
#include "crafted.h"

#include "book/sources.h"

#include <math.h>

static struct source drawn(const struct desk *d)
{
	return (struct source){ .farm = d->farm,
		.name = "Old rows",
		.kind = SOURCE_ABANDONED,
		.has_position = true,
		.lat = -33.25,
		.lon = 0,
		.n_outline = 3,
		.outline = {
			{ -33.25, 0 }, { -33.2512345, 0.0000001 }, { -33.26, -0.5 } } };
}

static void book_keeps_a_source_as_given(void **state)
{
	struct sources got = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct source full = drawn(&d);
	struct source bare = {
		.farm = d.farm, .name = "hedge 'x'", .kind = SOURCE_OTHER
	};
	must(book_put_source(d.book, &full, e));
	must(book_put_source(d.book, &bare, e));
	must(book_sources(d.book, d.farm, &got, e));
	assert_int_equal(got.n, 2);
	const struct source *one = &got.items[0], *two = &got.items[1];
	assert_string_equal(one->name, "hedge 'x'"); /* by name, whatever its case */
	assert_int_equal(one->id, bare.id);
	assert_int_equal(one->kind, SOURCE_OTHER);
	assert_false(one->has_position); /* no position is not 0, 0 */
	assert_int_equal(one->n_outline, 0);
	assert_int_equal(two->farm, d.farm);
	assert_int_equal(two->kind, SOURCE_ABANDONED);
	assert_true(two->has_position && two->lat == -33.25 && two->lon == 0);
	assert_int_equal(two->n_outline, 3);
	assert_memory_equal(two->outline, full.outline, sizeof full.outline);
	free(got.items);
	desk_clear(&d);
}

static void book_sources_of_one_farm_are_not_those_of_another(void **state)
{
	struct farm other = { .name = "Another slope", .season_start = 101 };
	struct sources got = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	must(book_put_farm(d.book, &other, e));
	struct source here = drawn(&d), there = drawn(&d);
	there.farm = other.id;
	must(book_put_source(d.book, &here, e));
	must(book_put_source(d.book, &there, e)); /* unique within its farm */
	must(book_sources(d.book, d.farm, &got, e));
	assert_int_equal(got.n, 1);
	assert_int_equal(got.items[0].id, here.id);
	must(book_sources(d.book, 0, &got, e));
	assert_int_equal(got.n, 2);
	assert_int_equal(got.items[0].id, there.id); /* by the farm's name */
	free(got.items);
	desk_clear(&d);
}

static void book_refuses_a_source_that_cannot_be(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct source s = drawn(&d), same = drawn(&d);
	must(book_put_source(d.book, &s, e));
	refused(book_put_source(d.book, &same, e), ERR_INPUT,
		"there is a Old rows already");
	assert_int_equal(same.id, 0);
	strcpy(same.name, " ");
	refused(book_put_source(d.book, &same, e), ERR_INPUT, "name is empty");
	strcpy(same.name, "New rows");
	same.farm = 4711;
	refused(book_put_source(d.book, &same, e), ERR_NOT_FOUND, "not in the book");
	same.farm = d.farm;
	same.id = 4711;
	refused(book_put_source(d.book, &same, e), ERR_NOT_FOUND,
		"not in the book any more");
	same.id = 0;
	must(book_put_source(d.book, &same, e));
	desk_clear(&d);
}

static void book_source_positions_stay_on_the_earth(void **state)
{
	static const struct {
		const char *why;
		double lat, lon;
		bool good;
	} row[] = {
		{ "the north pole", 90, 0, true },
		{ "beyond it", 90.001, 0, false },
		{ "the south pole", -90, 0, true },
		{ "beyond it", -90.001, 0, false },
		{ "the date line", 0, 180, true },
		{ "beyond it", 0, 180.001, false },
		{ "from the other side", 0, -180, true },
		{ "beyond it", 0, -180.001, false },
		{ "no number", (double)NAN, 0, false },
		{ "no number either", 0, (double)NAN, false },
	};
	struct err err = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct source s = drawn(&d), c = drawn(&d);
		snprintf(s.name, sizeof s.name, "point %zu", i);
		snprintf(c.name, sizeof c.name, "corner %zu", i);
		s.lat = row[i].lat;
		s.lon = row[i].lon;
		c.outline[2] = (struct corner){ row[i].lat, row[i].lon };
		if (book_put_source(d.book, &s, &err) != row[i].good ||
			book_put_source(d.book, &c, &err) != row[i].good)
			fail_msg("%s: %s", row[i].why, err.text);
		if (!row[i].good && !strstr(err.text, "corner 3 of its outline"))
			fail_msg("%s: %s", row[i].why, err.text);
	}
	desk_clear(&d);
}

static void book_outline_has_three_corners_or_none(void **state)
{
	struct sources got = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct source s = drawn(&d);
	s.n_outline = 1;
	refused(book_put_source(d.book, &s, e), ERR_INPUT, "has 1 corners");
	s.n_outline = 2;
	refused(book_put_source(d.book, &s, e), ERR_INPUT, "it needs 3 to 100");
	s.n_outline = OUTLINE_MAX;
	must(book_put_source(d.book, &s, e));
	s.n_outline = OUTLINE_MAX + 1;
	refused(book_put_source(d.book, &s, e), ERR_INPUT, "has 101 corners");
	s.n_outline = 0;
	must(book_put_source(d.book, &s, e));
	must(book_sources(d.book, 0, &got, e));
	assert_int_equal(got.items[0].n_outline, 0); /* taken away again */
	free(got.items);
	desk_clear(&d);
}

static void book_removed_source_leaves_its_old_form(void **state)
{
	struct sources got = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct source s = drawn(&d);
	must(book_put_source(d.book, &s, e));
	must(book_remove_source(d.book, s.id, e));
	must(book_sources(d.book, 0, &got, e));
	assert_int_equal(got.n, 0);
	assert_int_equal(store_number(d.book,
				 "SELECT count(*) FROM history h JOIN tombstone t "
				 "ON t.uid = h.uid AND t.changed_by = h.by WHERE "
				 "h.kind = 'place' AND h.op = 'delete' AND by = 'JR' "
				 "AND json_extract(old, '$.name') = 'Old rows'",
				 0),
		1);
	refused(book_remove_source(d.book, s.id, e), ERR_NOT_FOUND, "not in the book");
	desk_clear(&d);
}

static const struct damage damages[] = {
	{ "UPDATE place SET outline = '1 2; 3 4'", "outline is \"1 2; 3 4\"" },
	{ "UPDATE place SET outline = '1 2 3'", "outline is \"1 2 3\"" },
	{ "UPDATE place SET outline = '91 2; 3 4; 5 6'", "outline is \"91 2;" },
	{ "UPDATE place SET outline = char(27)", "outline is \"?\"" },
	{ "UPDATE place SET kind = 'barn'", "kind is \"barn\"" },
	{ "UPDATE place SET lat = 91", "lat is \"91.0\"" },
	{ "UPDATE place SET lon = -181", "lon is \"-181.0\"" },
	{ "UPDATE place SET lon = NULL", "lon is \"\"" },
};

static void look(void *arg, const char *text)
{
	*(bool *)arg |= strstr(text, "in the table place, ") != NULL;
}

static void book_source_that_is_damaged_is_named(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof damages / sizeof *damages; i++) {
		const struct damage *bad = &damages[i];
		struct sources got = { 0 };
		struct err err = { 0 };
		bool told = false;
		struct desk d;
		int found;
		craft(&d, "");
		struct source s = drawn(&d);
		must(book_put_source(d.book, &s, e));
		must(book_sources(d.book, 0, &got, e));
		assert_int_equal(raw(d.book, bad->sql), SQLITE_OK);
		bool read = book_sources(d.book, 0, &got, &err);
		assert_damaged(bad->sql, read, &err, bad->says);
		assert_damaged(bad->sql, read, &err, "in the table place, ");
		must(book_check(d.book, CRAFTED_DAY + 9, look, &told, &found, e));
		if (!told)
			fail_msg("%s: not told", bad->sql);
		free(got.items);
		desk_clear(&d);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_keeps_a_source_as_given),
		cmocka_unit_test(book_sources_of_one_farm_are_not_those_of_another),
		cmocka_unit_test(book_refuses_a_source_that_cannot_be),
		cmocka_unit_test(book_source_positions_stay_on_the_earth),
		cmocka_unit_test(book_outline_has_three_corners_or_none),
		cmocka_unit_test(book_removed_source_leaves_its_old_form),
		cmocka_unit_test(book_source_that_is_damaged_is_named),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
