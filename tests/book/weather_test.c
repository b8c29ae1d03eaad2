/* Stations, their days and biofix dates in the book. */
#include "fixture.h"

#include "book/weather.h"

#include <math.h>

static const double none = (double)NAN;

static int32_t may(int day)
{
	return day_from_ymd(2026, 5, day);
}

static int64_t add_station(struct book *b, const char *name)
{
	struct station s = { 0 };

	snprintf(s.name, sizeof s.name, "%s", name);
	must(book_put_station(b, &s, e));
	return s.id;
}

static struct weather_day celsius(int64_t station, int32_t day, double min, double max)
{
	return (struct weather_day){
		.station = station, .day = day, .min = min, .max = max, .unit = 'C'
	};
}

static int64_t rows(struct book *b, const char *sql)
{
	return store_number(b, sql, -1);
}

static void stations_come_by_name_and_keep_their_place(void **state)
{
	struct station b = {
		.name = "low gauge", .has_position = true, .lat = -41.5, .lon = 173.25
	};
	struct station a = { .name = "Bank" }, same = { .name = "Bank" };
	struct stations all = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	must(book_put_station(d.book, &b, e));
	must(book_put_station(d.book, &a, e));
	refused(book_put_station(d.book, &same, e), ERR_INPUT, "already");
	b.lat = 90.5;
	refused(book_put_station(d.book, &b, e), ERR_INPUT, "-90 to 90");
	b.lat = none;
	refused(book_put_station(d.book, &b, e), ERR_INPUT, "-90 to 90");
	*b.name = '\0';
	refused(book_put_station(d.book, &b, e), ERR_INPUT, "empty");
	must(book_stations(d.book, &all, e));
	assert_int_equal(all.n, 2);
	assert_string_equal(all.items[0].name, "Bank");
	assert_false(all.items[0].has_position);
	assert_string_equal(all.items[1].name, "low gauge");
	assert_true(all.items[1].lat == -41.5 && all.items[1].lon == 173.25);
	free(all.items);
	desk_clear(&d);
}

static void farm_goes_by_a_station_of_the_book(void **state)
{
	struct farms farms = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	must(book_farms(d.book, &farms, e));
	assert_int_equal(farms.items[0].station, 0);
	farms.items[0].station = 77;
	refused(book_put_farm(d.book, &farms.items[0], e), ERR_NOT_FOUND,
		"not in the book");
	int64_t id = farms.items[0].station = add_station(d.book, "Weir");
	must(book_put_farm(d.book, &farms.items[0], e));
	must(book_farms(d.book, &farms, e));
	assert_int_equal(farms.items[0].station, id);
	farms.items[0].station = 0;
	must(book_put_farm(d.book, &farms.items[0], e));
	assert_int_equal(rows(d.book, "SELECT json_extract(old, '$.station') FROM "
				      "history WHERE kind = 'farm' ORDER BY id DESC"),
		id);
	free(farms.items);
	desk_clear(&d);
}

static void days_come_back_as_they_were_read(void **state)
{
	struct weather_days got = { 0 };
	struct desk d;
	int32_t first, last;

	(void)state;
	desk_memory(&d);
	int64_t s = add_station(d.book, "Weir"), other = add_station(d.book, "Bank");
	must(book_weather_reach(d.book, s, &first, &last, e));
	assert_int_equal(first, DAY_NONE);
	assert_int_equal(last, DAY_NONE);
	struct weather_day w[] = { celsius(s, may(3), 0, 12.5),
		celsius(s, may(1), -3.5, none), celsius(other, may(2), 1, 2) };
	w[0].unit = 'F';
	for (size_t i = 0; i < 3; i++)
		must(book_save_weather(d.book, &w[i], e));
	must(book_weather(d.book, s, may(1), may(3), &got, e));
	assert_int_equal(got.n, 2);
	assert_int_equal(got.items[0].day, may(1));
	assert_true(got.items[0].min == -3.5 && isnan(got.items[0].max));
	assert_int_equal(got.items[0].unit, 'C');
	assert_true(got.items[1].min == 0 && got.items[1].max == 12.5);
	assert_int_equal(got.items[1].unit, 'F');
	must(book_weather(d.book, s, may(2), may(2), &got, e));
	assert_int_equal(got.n, 0); /* a missing day is not in the list */
	must(book_weather(d.book, s, may(3), may(1), &got, e));
	assert_int_equal(got.n, 0);
	must(book_weather(d.book, s, -2000000, 2000000, &got, e));
	assert_int_equal(got.n, 2);
	must(book_weather_reach(d.book, s, &first, &last, e));
	assert_int_equal(first, may(1));
	assert_int_equal(last, may(3));
	free(got.items);
	desk_clear(&d);
}

static void saving_a_day_again_replaces_it_and_keeps_the_old_one(void **state)
{
	struct weather_days got = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	int64_t s = add_station(d.book, "Weir");
	struct weather_day w = celsius(s, may(1), 5, 15);
	must(book_save_weather(d.book, &w, e));
	must(book_save_weather(d.book, &w, e)); /* the same: no change */
	assert_int_equal(
		rows(d.book, "SELECT count(*) FROM history WHERE kind = 'weather'"), 1);
	w.max = none;
	must(book_save_weather(d.book, &w, e));
	assert_int_equal(rows(d.book, "SELECT count(*) FROM history WHERE kind = "
				      "'weather' AND op = 'update' AND "
				      "json_extract(old, '$.high') = 15"),
		1);
	must(book_weather(d.book, s, may(1), may(1), &got, e));
	assert_true(got.n == 1 && isnan(got.items[0].max));
	free(got.items);
	desk_clear(&d);
}

static void days_that_cannot_be_are_refused(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	int64_t s = add_station(d.book, "Weir");
	const struct {
		const char *why;
		struct weather_day w;
		const char *words; /* NULL: good */
	} row[] = {
		{ "minimum on the maximum", celsius(s, may(1), 7, 7), NULL },
		{ "minimum above it", celsius(s, may(1), 7.1, 7), "above the maximum" },
		{ "hottest", celsius(s, may(2), 0, 150), NULL },
		{ "hotter", celsius(s, may(2), 0, 150.1), "-150 to 150" },
		{ "coldest", celsius(s, may(3), -150, 0), NULL },
		{ "colder", celsius(s, may(3), -150.1, none), "-150 to 150" },
		{ "only a maximum", celsius(s, may(4), none, 1), NULL },
		{ "neither", celsius(s, may(4), none, none), "neither" },
		{ "infinite", celsius(s, may(4), 0, (double)INFINITY), "-150 to 150" },
		{ "no date", celsius(s, DAY_NONE, 0, 1), "no date" },
		{ "before 1900", celsius(s, -25568, 0, 1), "no date" },
		{ "no such station", celsius(s + 1, may(5), 0, 1), "station" },
	};
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct err e = { 0 };
		bool same, ok = book_save_weather(d.book, &row[i].w, &e);
		if (ok != !row[i].words || (!ok && !strstr(e.text, row[i].words)))
			fail_msg("save, %s: \"%s\"", row[i].why, e.text);
		ok = book_add_weather(d.book, &row[i].w, &same, &e);
		if (ok != !row[i].words || (!ok && !strstr(e.text, row[i].words)))
			fail_msg("add, %s: \"%s\"", row[i].why, e.text);
	}
	struct weather_day kelvin = celsius(s, may(6), 0, 1);
	kelvin.unit = 'K';
	refused(book_save_weather(d.book, &kelvin, e), ERR_INPUT, "C or F");
	desk_clear(&d);
}

static void adding_never_replaces(void **state)
{
	struct weather_days got = { 0 };
	struct desk d;
	bool same = true;

	(void)state;
	desk_memory(&d);
	int64_t s = add_station(d.book, "Weir");
	struct weather_day w = celsius(s, may(1), 5, 15);
	must(book_add_weather(d.book, &w, &same, e));
	assert_false(same);
	must(book_add_weather(d.book, &w, &same, e));
	assert_true(same);
	w.max = 15.5;
	refused(book_add_weather(d.book, &w, &same, e), ERR_INPUT,
		"Weir has the weather of 2026-05-01 already: \"5 to 15 C\", not \"5 to "
		"15.5 C\"");
	w.max = none;
	refused(book_add_weather(d.book, &w, &same, e), ERR_INPUT, "not \"minimum 5 C");
	w = celsius(s, may(1), 5, 15);
	w.unit = 'F';
	refused(book_add_weather(d.book, &w, &same, e), ERR_INPUT, "5 to 15 F");
	must(book_weather(d.book, s, may(1), may(1), &got, e));
	assert_true(got.n == 1 && got.items[0].max == 15);
	free(got.items);
	desk_clear(&d);
}

static void removed_day_leaves_a_tombstone_and_its_old_form(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	int64_t s = add_station(d.book, "Weir");
	struct weather_day w = celsius(s, may(1), 5, 15);
	must(book_save_weather(d.book, &w, e));
	must(book_remove_weather(d.book, s, may(1), e));
	assert_int_equal(rows(d.book, "SELECT count(*) FROM weather"), 0);
	assert_int_equal(rows(d.book, "SELECT count(*) FROM tombstone WHERE kind = "
				      "'weather' AND changed_by = 'JR'"),
		1);
	assert_int_equal(rows(d.book, "SELECT count(*) FROM history WHERE op = "
				      "'delete' AND by = 'JR'"),
		1);
	refused(book_remove_weather(d.book, s, may(1), e), ERR_NOT_FOUND,
		"Weir has no weather of 2026-05-01");
	desk_clear(&d);
}

static void biofix_is_one_a_season_and_its_old_date_is_kept(void **state)
{
	struct biofix_dates all = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct biofix_date x = {
		.farm = d.farm, .pest = d.pest, .season = 2026, .day = may(5)
	};
	snprintf(x.rule, sizeof x.rule, "first-moth");
	must(book_put_biofix(d.book, &x, e));
	struct biofix_date y = x;
	y.id = 0;
	y.day = may(8);
	*y.rule = '\0';
	must(book_put_biofix(d.book, &y, e));
	assert_int_equal(y.id, x.id);
	struct biofix_date z = y;
	z.id = 0;
	z.season = 2025;
	z.day = day_from_ymd(2025, 5, 2);
	must(book_put_biofix(d.book, &z, e));
	must(book_biofixes(d.book, &all, e));
	assert_int_equal(all.n, 2);
	assert_int_equal(all.items[0].season, 2025);
	assert_int_equal(all.items[1].day, may(8));
	assert_string_equal(all.items[1].rule, "");
	assert_int_equal(rows(d.book, "SELECT count(*) FROM history WHERE kind = "
				      "'biofix' AND json_extract(old, '$.rule') = "
				      "'first-moth'"),
		1);
	must(book_remove_biofix(d.book, z.id, e));
	refused(book_remove_biofix(d.book, z.id, e), ERR_NOT_FOUND, "not in the book");
	must(book_biofixes(d.book, &all, e));
	assert_int_equal(all.n, 1);
	free(all.items);
	desk_clear(&d);
}

static void biofix_of_nothing_is_refused(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct biofix_date good = {
		.farm = d.farm, .pest = d.pest, .season = 2026, .day = may(5)
	};
	struct biofix_date x = good;
	x.day = DAY_NONE;
	refused(book_put_biofix(d.book, &x, e), ERR_INPUT, "no date");
	x = good;
	x.season = 1899;
	refused(book_put_biofix(d.book, &x, e), ERR_INPUT, "1900 to 2199");
	x = good;
	x.farm = 99;
	refused(book_put_biofix(d.book, &x, e), ERR_NOT_FOUND, "not in the book");
	x = good;
	snprintf(x.rule, sizeof x.rule, "a\tb");
	refused(book_put_biofix(d.book, &x, e), ERR_INPUT, "cannot be printed");
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(stations_come_by_name_and_keep_their_place),
		cmocka_unit_test(farm_goes_by_a_station_of_the_book),
		cmocka_unit_test(days_come_back_as_they_were_read),
		cmocka_unit_test(saving_a_day_again_replaces_it_and_keeps_the_old_one),
		cmocka_unit_test(days_that_cannot_be_are_refused),
		cmocka_unit_test(adding_never_replaces),
		cmocka_unit_test(removed_day_leaves_a_tombstone_and_its_old_form),
		cmocka_unit_test(biofix_is_one_a_season_and_its_old_date_is_kept),
		cmocka_unit_test(biofix_of_nothing_is_refused),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
