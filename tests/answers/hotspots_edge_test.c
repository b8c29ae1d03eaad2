#include "hot.h"

enum { WEEKS = 4, UNREAD = -2, FULL = 1000 /* and more: the count with a full card */ };

static void hang(struct fixture *f, const char *label, double lat, double lon,
	enum place place, int64_t *id)
{
	const struct hot_spec spec = { label, "Ash", lat, lon, place, 0, 7 };

	*id = hot_trap(f, &spec, "2026-05-04");
}

static void count(struct fixture *f, int64_t trap, int week, int moths)
{
	char iso[DAY_ISO_SIZE];
	struct visit v;

	if (moths == UNREAD)
		return;
	day_iso(day_of("2026-05-18") + 7 * week, iso);
	v = fixture_counted(trap, iso, moths % FULL);
	if (moths >= FULL)
		v.outcome = OUTCOME_FLOOR;
	fixture_save(f, v);
}

/* Ash has a border and an interior trap, Birch the same without a moth. */
static void see_weeks(const int border[WEEKS], const int interior[WEEKS],
	void (*look)(const struct hot_row *ash, const char *why), const char *why)
{
	struct fixture f;
	struct hot_view v = { 0 };
	int64_t edge, inner;

	fixture_open(&f);
	hang(&f, "1", 46.1, -35.5, PLACE_BORDER, &edge);
	hang(&f, "2", 46.1, -35.499, PLACE_INTERIOR, &inner);
	hot_trap(&f,
		&(struct hot_spec){ "3", "Birch", 46.1, -35.49, PLACE_BORDER, 0, 35 },
		"2026-05-04");
	hot_trap(&f,
		&(struct hot_spec){
			"4", "Birch", 46.1, -35.491, PLACE_INTERIOR, 0, 35 },
		"2026-05-04");
	for (int k = 0; k < WEEKS; k++) {
		count(&f, edge, k, border[k]);
		count(&f, inner, k, interior[k]);
	}
	hot_see(&f, &v, (struct hot_ask){ 0 });
	look(hot_row_named(&v, "border of Ash"), why);
	assert_string_equal(hot_row_named(&v, "border of Birch")->earlier, "");
	hotspots_free(&v);
	fixture_close(&f);
}

static void expect_pattern(const struct hot_row *ash, const char *why)
{
	if (!strstr(ash->earlier, "edge pattern: at least twice the interior 2 weeks "
				  "running, from the week of 18 May"))
		fail_msg("%s: \"%s\"", why, ash->earlier);
}

static void expect_none(const struct hot_row *ash, const char *why)
{
	if (ash->earlier[0])
		fail_msg("%s: \"%s\"", why, ash->earlier);
}

/* A rule of thumb: common practice, no source. */
static void a_border_ahead_two_weeks_running_is_a_pattern(void **state)
{
	static const struct {
		const char *why;
		int border[WEEKS], interior[WEEKS];
		bool is_pattern;
	} row[] = {
		{ "twice the interior", { 4, 6, 1, 1 }, { 2, 3, 1, 1 }, true },
		{ "just not twice", { 4, 5, 1, 1 }, { 2, 3, 1, 1 }, false },
		{ "with a week between", { 4, 1, 6, 1 }, { 2, 1, 3, 1 }, false },
		{ "nothing in the interior", { 1, 1, 0, 0 }, { 0, 0, 0, 0 }, true },
		{ "nothing at all", { 0, 0, 0, 0 }, { 0, 0, 0, 0 }, false },
		{ "an interior week not read", { 4, 6, 1, 1 }, { 2, UNREAD, 1, 1 },
			false },
		{ "the interior's card was full", { 4, 6, 1, 1 }, { 2, FULL + 3, 1, 1 },
			false },
		{ "the border's card was full", { 4, FULL + 6, 1, 1 }, { 2, 3, 1, 1 },
			true },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		see_weeks(row[i].border, row[i].interior,
			row[i].is_pattern ? expect_pattern : expect_none, row[i].why);
}

/* Border traps round an interior one that caught nothing; Birch has both places too. */
static void the_side_that_caught_most_is_named_from_positions(void **state)
{
	static const struct {
		const char *why;
		int north, east;
		const char *says;
	} row[] = {
		{ "the northern one", 40, 8, "Most in trap 1, on the north side." },
		{ "the eastern one", 8, 40, "Most in trap 2, on the east side." },
		{ "as many in both", 24, 24, "" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		const struct hot_spec traps[] = {
			{ "1", "Ash", 46.101, -35.5, PLACE_BORDER, row[i].north, 84 },
			{ "2", "Ash", 46.1, -35.4985, PLACE_BORDER, row[i].east, 84 },
			{ "3", "Ash", 46.1, -35.5, PLACE_INTERIOR, 0, 84 },
			{ "4", "Ash", 46.099, -35.5, PLACE_INTERIOR, 0, 84 },
			{ "5", "Ash", 46.1, -35.5015, PLACE_INTERIOR, 0, 84 },
			{ "6", "Birch", 46.1, -35.49, PLACE_BORDER, 0, 84 },
			{ "7", "Birch", 46.1, -35.491, PLACE_INTERIOR, 0, 84 },
		};
		struct fixture f;
		struct hot_view v = { 0 };
		fixture_open(&f);
		hot_traps(&f, traps, sizeof traps / sizeof *traps, "2026-04-20");
		hot_see(&f, &v, (struct hot_ask){ 0 });
		const char *says = hot_row_named(&v, "border of Ash")->says;
		if (*row[i].says ? !strstr(says, row[i].says)
				 : strstr(says, "Most in") != NULL)
			fail_msg("%s: %s", row[i].why, says);
		hotspots_free(&v);
		fixture_close(&f);
	}
}

/* Found on a farm whose full cards were all entered as 9999. */
static void equal_catches_have_no_order_with_distance(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };
	struct source s = {
		.name = "Mill", .has_position = true, .lat = 46.1, .lon = -35.5012
	};
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	for (size_t i = 0; i < ORCHARD_TRAPS; i++) {
		struct hot_spec spec = orchard[i];
		spec.count = 9999;
		spec.nights = 84;
		hot_trap(&f, &spec, "2026-04-20");
	}
	s.farm = f.farm.id;
	must(book_put_source(f.book, &s, &e), &e);
	hot_see(&f, &v, (struct hot_ask){ 0 });
	has_text(v.sources[0].says, "no clear change");
	assert_null(strstr(v.sources[0].numbers, "rho"));
	hotspots_free(&v);
	fixture_close(&f);
}

/* All traps of a border differ a little and alike: that is shown, but not twice. */
static void a_difference_that_is_shown_but_slight_says_so(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	fixture_open(&f);
	for (int i = 0; i < 12; i++) {
		struct hot_spec spec = { "", i < 4 ? "Ash" : "Birch", 46.1, -35.5,
			PLACE_INTERIOR, i < 4 ? 60 : 40, 84 };
		char label[12];
		snprintf(label, sizeof label, "%d", i + 1);
		spec.label = label;
		hot_trap(&f, &spec, "2026-04-20");
	}
	hot_see(&f, &v, (struct hot_ask){ 0 });
	const struct hot_row *ash = hot_row_named(&v, "Ash");
	assert_int_equal(ash->grade, HOT_HIGHER);
	assert_string_equal(ash->grade_text, "higher, not twice");
	has_text(ash->says, "Higher, but not twice as high");
	has_text(v.says, "No block is shown to catch twice the rest; Ash is higher.");
	hotspots_free(&v);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_border_ahead_two_weeks_running_is_a_pattern),
		cmocka_unit_test(the_side_that_caught_most_is_named_from_positions),
		cmocka_unit_test(equal_catches_have_no_order_with_distance),
		cmocka_unit_test(a_difference_that_is_shown_but_slight_says_so),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
