/* Weather, stations, biofix dates and degree-day rules that another program bent. */
#include "fixture.h"

#include "book/weather.h"

/* A station with a day, and a biofix. Returns the station. */
static int64_t fill(struct desk *d)
{
	struct station s = { .name = "Weir" };

	desk_memory(d);
	must(book_put_station(d->book, &s, e));
	struct weather_day w = { .station = s.id,
		.day = day_from_ymd(2026, 5, 1),
		.min = 5,
		.max = 15,
		.unit = 'C' };
	struct biofix_date x = {
		.farm = d->farm, .pest = d->pest, .season = 2026, .day = w.day
	};
	must(book_save_weather(d->book, &w, e));
	must(book_put_biofix(d->book, &x, e));
	return s.id;
}

static void damaged_rows_are_refused(void **state)
{
	static const struct {
		const char *why, *sql, *says;
	} row[] = {
		{ "hotter than any", "UPDATE weather SET high = 151",
			"in the table weather, high is \"151.0\"" },
		{ "colder than any", "UPDATE weather SET low = -151",
			"in the table weather, low is \"-151.0\"" },
		{ "minimum above the maximum", "UPDATE weather SET low = 16",
			"in the table weather, high is \"15.0\"" },
		{ "another unit", "UPDATE weather SET unit = 'CC'",
			"in the table weather, unit is \"CC\"" },
		{ "no date", "UPDATE weather SET day = '2026-05-1x'",
			"in the table weather, day is" },
		{ "off the globe", "UPDATE station SET lat = 91, lon = 0",
			"in the table station, lat is \"91.0\"" },
		{ "off it to the east", "UPDATE station SET lat = 1, lon = 181",
			"in the table station, lon is \"181.0\"" },
		{ "half a position", "UPDATE station SET lat = 1",
			"in the table station, lon is \"\"" },
		{ "a season of no year", "UPDATE biofix SET season = 26",
			"in the table biofix, season is \"26\"" },
		{ "a rule of no method",
			"UPDATE pest SET dd_method = 'cosine' WHERE code = 'CM'",
			"in the table pest, dd_cutoff is" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct weather_days days = { 0 };
		struct biofix_dates dates = { 0 };
		struct stations all = { 0 };
		struct pests pests = { 0 };
		struct err e = { 0 };
		struct desk d;
		int64_t station = fill(&d);
		raw(d.book, "PRAGMA ignore_check_constraints = ON");
		if (raw(d.book, row[i].sql) != SQLITE_OK)
			fail_msg("%s: %s", row[i].why, row[i].sql);
		bool ok = book_stations(d.book, &all, &e) &&
			  book_weather(d.book, station, -20000, 30000, &days, &e) &&
			  book_biofixes(d.book, &dates, &e) &&
			  book_pests(d.book, &pests, &e);
		if (ok || e.kind != ERR_BOOK || !strstr(e.text, row[i].says))
			fail_msg("%s: \"%s\"", row[i].why, e.text);
		free(days.items);
		free(dates.items);
		free(all.items);
		free(pests.items);
		desk_clear(&d);
	}
}

static const char *const tables[] = { "weather", "station", "biofix", "pest" };

struct told {
	int times[4]; /* by table */
};

static void tell(void *arg, const char *text)
{
	struct told *told = arg;
	char want[40];

	for (int i = 0; i < 4; i++) {
		snprintf(want, sizeof want, "in the table %s, ", tables[i]);
		told->times[i] += strstr(text, want) != NULL;
	}
}

static void check_names_them(void **state)
{
	struct told told = { 0 };
	struct desk d;
	int found;

	(void)state;
	fill(&d);
	raw(d.book, "PRAGMA ignore_check_constraints = ON");
	raw(d.book,
		"UPDATE weather SET unit = 'CC'; UPDATE station SET lat = 1; "
		"UPDATE biofix SET season = 26; UPDATE pest SET dd_cutoff = 'flat'");
	must(book_check(d.book, 30000, tell, &told, &found, e));
	for (int i = 0; i < 4; i++)
		if (told.times[i] != 1)
			fail_msg("told %d times of %s", told.times[i], tables[i]);
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(damaged_rows_are_refused),
		cmocka_unit_test(check_names_them),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
