#include "season/flights.h"

#include "season/logs.h"

#include <stdio.h>

/* "3/7 8/7+ 0/0 2/14!": moths / nights, + at least, ! other traps than before. */
static void print_series(const struct flight_series *s, char *out, size_t size)
{
	size_t at = 0;

	out[0] = '\0';
	for (size_t w = 0; w < s->n; w++)
		at += (size_t)snprintf(out + at, size - at, "%s%.4g/%g%s%s",
			w > 0 ? " " : "", s->moths[w], s->nights[w],
			s->at_least[w] ? "+" : "", s->traps_changed[w] ? "!" : "");
}

/* The first three are ours, with weeks and sums counted by hand. */
static void a_count_is_spread_over_its_nights(void **state)
{
	static const struct {
		const char *why, *traps[LOGS_MAX];
		int start; /* week 0 */
		const char *want;
	} row[] = {
		{ "two weeks", { "0h 7c3 14c8" }, 0, "3/7 8/7" },
		{ "nine nights reach into the next week", { "0h 7c7 16c18 21c5" }, 0,
			"7/7 14/7 9/7" },
		{ "two traps, one read every other week", { "0h 7c2 14c6", "0h 14c10" },
			0, "7/14 11/14" },
		{ "a skipped visit", { "0h 7s 14c4" }, 0, "2/7 2/7" },
		{ "a zero is looked at", { "0h 7c0 14c4" }, 0, "0/7 4/7" },
		{ "a spoiled week is a gap", { "0h 7c3 14x 21c2" }, 0, "3/7 0/0 2/7" },
		{ "with moths on the spoiled card too", { "0h 7c3 14x9 21c2" }, 0,
			"3/7 0/0 2/7" },
		{ "so is a missing trap", { "0h 7c3 14m 21h 28c2" }, 0,
			"3/7 0/0 0/0 2/7" },
		{ "a floor", { "0h 7f30 14c2" }, 0, "30/7+ 2/7" },
		{ "most checks on Thursday", { "1h 3c1 10c2 17c3" }, -4,
			"1/2 2/7 3/7" },
		{ "Monday goes first on ties", { "0h 7c1 10c3" }, 0, "1/7 3/3" },
		{ "then Tuesday", { "1h 8c1 10c2" }, 1, "1/7 2/2" },
		{ "Sunday", { "0h 6c1 13c2" }, -1, "1/6 2/7" },
		{ "a trap more", { "0h 7c1 14c1 21c1", "7h 14c1 21c1" }, 0,
			"1/7 2/14! 2/14" },
		{ "a trap less", { "0h 7c1 14c1 21c1", "0h 7c1 14m" }, 0,
			"2/14 1/7! 1/7" },
		{ "one more after a gap", { "0h 7c1 14x 21c1", "14h 21c1" }, 0,
			"1/7 0/0 2/14!" },
		{ "one for another", { "0h 7c1 14p1", "14h 21c1" }, 0, "1/7 1/7 1/7!" },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct flight_series s;
		struct logs l;
		char got[160];
		logs_read(&l, row[i].traps);
		bool any =
			flight_series_of(l.list, l.n, log_day(-120), log_day(200), &s);
		print_series(&s, got, sizeof got);
		logs_free(&l);
		if (!any || strcmp(got, row[i].want) != 0)
			fail_msg("%s: %s, not %s", row[i].why, got, row[i].want);
		if (s.first_day != log_day(row[i].start))
			fail_msg("%s: starts on day %d", row[i].why,
				(int)(s.first_day - log_day(0)));
	}
}

static void only_what_was_read_within_the_season_counts(void **state)
{
	static const struct {
		const char *why, *visits;
		int first, last;
		const char *want; /* NULL: nothing */
	} row[] = {
		{ "no visit", "", 0, 100, NULL },
		{ "hung only", "0h", 0, 100, NULL },
		{ "spoiled only", "0h 7x", 0, 100, NULL },
		{ "read on the last day", "0h 7c3 14c4", 0, 14, "3/7 4/7" },
		{ "read the day after", "0h 7c3 15c4", 0, 14, "3/7" },
		{ "all nights in the season before", "-7h 0c5 7c3", 0, 100, "3/7" },
		{ "one night of seven in this one", "-6h 1c7 8c3", 0, 100, "1/1 3/7" },
		{ "a trap that hung all winter", "-203h 7c30 14c0", 0, 100, "1/7 0/7" },
		{ "60 weeks", "0h 420c60", 0, 500, "" },
		{ "61 weeks", "0h 421c60", 0, 500, NULL },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		const char *const one[LOGS_MAX] = { row[i].visits };
		struct flight_series s;
		struct logs l;
		char got[1024];
		logs_read(&l, one);
		bool any = flight_series_of(
			l.list, l.n, log_day(row[i].first), log_day(row[i].last), &s);
		print_series(&s, got, sizeof got);
		logs_free(&l);
		if (any != (row[i].want != NULL))
			fail_msg("%s: %s", row[i].why, any ? got : "nothing");
		if (any && row[i].want[0] != '\0' && strcmp(got, row[i].want) != 0)
			fail_msg("%s: %s, not %s", row[i].why, got, row[i].want);
	}
}

/* A southern orchard has its flights half a year later. 181 days are no whole weeks, so
 * the usual weekday moves too. */
static void half_a_year_later_gives_the_same_flights(void **state)
{
	static const char visits[] = "0h 7c0 14c2 21c9 28s 35c50 42c22 49c10 56c3 63c0 "
				     "70c0 77c12 84c30 91c14 98x 105c2 112c0 119c0";
	struct log north, south;
	struct flight_series a, b;
	struct flights fa, fb;
	(void)state;
	int32_t first = day_from_ymd(2026, 1, 1), start = day_from_ymd(2026, 7, 1);
	int32_t later = start - first;
	log_read(&north, visits);
	log_read(&south, visits);
	for (size_t i = 0; i < south.n; i++)
		south.visits[i].day += later;
	diary_read(&south.diary, south.visits, south.n);
	const struct diary *const n[] = { &north.diary };
	const struct diary *const s[] = { &south.diary };
	assert_true(flight_series_of(n, 1, first, first + 364, &a));
	assert_true(flight_series_of(
		s, 1, day_season_start(log_day(later), 701), start + 364, &b));
	flights_find(&a, &fa);
	flights_find(&b, &fb);
	assert_int_equal(b.first_day - a.first_day, later);
	assert_int_equal(fa.n, 2);
	assert_int_equal(fb.n, 2);
	assert_memory_equal(fa.items, fb.items, sizeof fa.items);
	log_free(&north);
	log_free(&south);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_count_is_spread_over_its_nights),
		cmocka_unit_test(only_what_was_read_within_the_season_counts),
		cmocka_unit_test(half_a_year_later_gives_the_same_flights),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
