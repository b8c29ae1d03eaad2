#include "warm.h"

#include "answers/next.h"
#include "answers/today.h"

#include <stdlib.h>

static struct heat_sum sum_on(struct fixture *f, const char *today)
{
	struct heat_sum sum;
	struct err e = { 0 };

	fixture_read(f, today);
	const struct heat_ask of = {
		.farm = f->farm.id, .pest = f->cm.id, .day = f->log.today
	};
	must(heat_since(&sum, f->book, &f->log, &of, &e), &e);
	return sum;
}

static void the_sum_says_what_it_lacks(void **state)
{
	struct fixture f;
	char text[SAY_LINE];

	(void)state;
	fixture_open(&f);
	warm_rule(&f);
	struct heat_sum sum = sum_on(&f, "2026-05-10");
	assert_int_equal(sum.state, HEAT_NO_BIOFIX);
	warm_biofix(&f, "2026-05-01");
	sum = sum_on(&f, "2026-05-10");
	assert_int_equal(sum.state, HEAT_NO_STATION);
	int64_t station = warm_station(&f, "Gauge");
	sum = sum_on(&f, "2026-05-10");
	assert_int_equal(sum.state, HEAT_NO_WEATHER);
	warm_days(&f, station, "2026-05-01", "2026-05-10", 60);
	sum = sum_on(&f, "2026-05-10");
	say_heat(&sum, text, sizeof text);
	assert_string_equal(text, "100 F degree-days, Fri 1 May to Sun 10 May");
	fixture_close(&f);
}

static void a_missing_day_makes_the_sum_a_lower_bound_and_is_never_zero(void **state)
{
	struct fixture f;
	char text[SAY_LINE];

	(void)state;
	fixture_open(&f);
	warm_rule(&f);
	warm_biofix(&f, "2026-05-01");
	int64_t station = warm_station(&f, "Gauge");
	warm_days(&f, station, "2026-05-01", "2026-05-04", 60);
	warm_days(&f, station, "2026-05-07", "2026-05-10", 60);
	struct heat_sum sum = sum_on(&f, "2026-05-10");
	assert_int_equal(sum.state, HEAT_AT_LEAST);
	assert_int_equal(sum.sum.missing, 2);
	say_heat(&sum, text, sizeof text);
	assert_string_equal(text,
		"at least 80 F degree-days, Fri 1 May to Sun 10 May, 2 days missing");
	fixture_close(&f);
}

static void settings_fill_short_gaps_and_leave_out_the_biofix_day(void **state)
{
	static const struct {
		const char *why, *setting, *value;
		double sum;
		int missing;
	} row[] = {
		{ "as it comes", "fill_days", "0", 80, 2 },
		{ "a gap of two is filled by up to 2", "fill_days", "2", 100, 0 },
		{ "but not by up to 1", "fill_days", "1", 80, 2 },
		{ "without the biofix day", "skip_biofix_day", "1", 70, 2 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct err e = { 0 };
		fixture_open(&f);
		warm_rule(&f);
		warm_biofix(&f, "2026-05-01");
		int64_t station = warm_station(&f, "Gauge");
		warm_days(&f, station, "2026-05-01", "2026-05-04", 60);
		warm_days(&f, station, "2026-05-07", "2026-05-10", 60);
		must(book_put_setting(f.book, row[i].setting, row[i].value, &e), &e);
		struct heat_sum sum = sum_on(&f, "2026-05-10");
		if (fabs(sum.sum.sum - row[i].sum) > 1e-9 ||
			sum.sum.missing != row[i].missing)
			fail_msg("%s: %g, %d missing", row[i].why, sum.sum.sum,
				(int)sum.sum.missing);
		fixture_close(&f);
	}
}

static void what_settings_do_to_a_sum_is_said(void **state)
{
	static const struct {
		const char *fill, *skip, *want;
	} row[] = {
		{ "0", "1",
			"at least 60 F degree-days, Sat 2 May to Sun 10 May, 3 days "
			"missing, from the day after biofix" },
		{ "1", "0",
			"at least 80 F degree-days, Fri 1 May to Sun 10 May, 2 days "
			"missing, 1 day filled" },
		{ "2", "0",
			"100 F degree-days, Fri 1 May to Sun 10 May, 3 days filled" },
		{ "2", "1",
			"90 F degree-days, Sat 2 May to Sun 10 May, 3 days filled, "
			"from the day after biofix" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct err e = { 0 };
		char text[SAY_LINE];
		fixture_open(&f);
		warm_rule(&f);
		warm_biofix(&f, "2026-05-01");
		int64_t station = warm_station(&f, "Gauge");
		warm_days(&f, station, "2026-05-01", "2026-05-04", 60);
		warm_days(&f, station, "2026-05-07", "2026-05-08", 60);
		warm_days(&f, station, "2026-05-10", "2026-05-10", 60);
		must(book_put_setting(f.book, "fill_days", row[i].fill, &e), &e);
		must(book_put_setting(f.book, "skip_biofix_day", row[i].skip, &e), &e);
		struct heat_sum sum = sum_on(&f, "2026-05-10");
		say_heat(&sum, text, sizeof text);
		assert_string_equal(text, row[i].want);
		fixture_close(&f);
	}
}

static void with_two_stations_the_farm_must_choose(void **state)
{
	struct fixture f;
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	warm_rule(&f);
	warm_biofix(&f, "2026-05-01");
	int64_t low = warm_station(&f, "Low");
	int64_t high = warm_station(&f, "High");
	warm_days(&f, low, "2026-05-01", "2026-05-10", 60);
	warm_days(&f, high, "2026-05-01", "2026-05-10", 55);
	assert_int_equal(sum_on(&f, "2026-05-10").state, HEAT_NO_STATION);
	f.farm.station = high;
	must(book_put_farm(f.book, &f.farm, &e), &e);
	assert_true(fabs(sum_on(&f, "2026-05-10").sum.sum - 50) < 1e-9);
	fixture_close(&f);
}

/* Intermountain fruit guide, timeline: egg hatch begins 220-250 F after biofix. */
static const struct event *egg_hatch(struct fixture *f, struct events *ev)
{
	struct err e = { 0 };
	const struct heat_ask of = {
		.farm = f->farm.id, .pest = f->cm.id, .day = f->log.today
	};

	must(next_events(ev, f->book, &f->log, &of, &e), &e);
	for (size_t i = 0; i < ev->n; i++)
		if (strncmp(ev->items[i].text, "egg hatch begins", 16) == 0 &&
			strcmp(ev->items[i].at, "220-250 F") == 0)
			return &ev->items[i];
	fail_msg("no egg hatch among %zu events: %s", ev->n, ev->none);
	return NULL;
}

static void an_event_is_expected_at_the_last_weeks_pace_without_earlier_years(
	void **state)
{
	struct fixture f;
	struct events ev = { 0 };

	(void)state;
	fixture_open(&f);
	warm_rule(&f);
	warm_biofix(&f, "2026-05-01");
	warm_days(&f, warm_station(&f, "Gauge"), "2026-05-01", "2026-05-10", 60);
	fixture_read(&f, "2026-05-10"); /* 100 so far, 120 to go, 10 a day */
	const struct event *hatch = egg_hatch(&f, &ev);
	assert_int_equal(hatch->first, day_of("2026-05-22"));
	assert_string_equal(hatch->when, "about Fri 22 May (at the last week's pace)");
	events_free(&ev);
	fixture_close(&f);
}

static void earlier_years_give_a_range_when_they_differ(void **state)
{
	struct fixture f;
	struct events ev = { 0 };

	(void)state;
	fixture_open(&f);
	warm_rule(&f);
	warm_biofix(&f, "2026-05-01");
	int64_t station = warm_station(&f, "Gauge");
	warm_days(&f, station, "2024-05-01", "2024-06-30", 70);
	warm_days(&f, station, "2025-05-01", "2025-06-30", 62);
	warm_days(&f, station, "2026-05-01", "2026-05-10", 60);
	fixture_read(&f, "2026-05-10"); /* 120 to go: 6 days at 20, 10 at 12 */
	const struct event *hatch = egg_hatch(&f, &ev);
	assert_int_equal(hatch->first, day_of("2026-05-16"));
	assert_int_equal(hatch->last, day_of("2026-05-20"));
	assert_string_equal(
		hatch->when, "Sat 16 May to Wed 20 May (as in 2 earlier years)");
	events_free(&ev);
	fixture_close(&f);
}

static void a_passed_event_says_when(void **state)
{
	struct fixture f;
	struct events ev = { 0 };
	struct today t = { 0 };
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	warm_rule(&f);
	warm_biofix(&f, "2026-05-01");
	fixture_trap(&f, "1", "2026-04-20");
	warm_days(&f, warm_station(&f, "Gauge"), "2026-05-01", "2026-05-30", 60);
	fixture_read(&f, "2026-05-30");
	assert_string_equal(
		egg_hatch(&f, &ev)->when, "passed, Fri 22 May to Mon 25 May");
	today_of(&f.log, &t);
	must(today_read_next(&f.log, f.book, &t, &e), &e);
	assert_int_equal(t.n_nexts, 1);
	assert_string_equal(t.nexts[0].pest_code, "CM");
	today_free(&t);
	events_free(&ev);
	fixture_close(&f);
}

/* 220-250 F: at 230 the hatch has begun and is not over. */
static void an_event_that_has_begun_is_under_way_until_its_range_is_over(void **state)
{
	static const struct {
		const char *why, *today;
		bool under_way, passed;
	} row[] = {
		{ "210, last before", "2026-05-21", false, false },
		{ "220, first within", "2026-05-22", true, false },
		{ "240, last within", "2026-05-24", true, false },
		{ "250, over", "2026-05-25", false, true },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct events ev = { 0 };
		fixture_open(&f);
		warm_rule(&f);
		warm_biofix(&f, "2026-05-01");
		warm_days(
			&f, warm_station(&f, "Gauge"), "2026-05-01", row[i].today, 60);
		fixture_read(&f, row[i].today);
		const struct event *hatch = egg_hatch(&f, &ev);
		if (hatch->under_way != row[i].under_way ||
			hatch->passed != row[i].passed)
			fail_msg("%s: %s", row[i].why, hatch->when);
		events_free(&ev);
		fixture_close(&f);
	}
}

static void a_year_that_never_got_so_far_is_told_of(void **state)
{
	static const struct {
		const char *why;
		double warm;
		const char *want;
	} row[] = {
		{ "one of two", 70, "about Sat 16 May (as in 1 of 2 earlier years)" },
		{ "none of two", 49, "not reached in any of 2 earlier years" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct events ev = { 0 };
		fixture_open(&f);
		warm_rule(&f);
		warm_biofix(&f, "2026-05-01");
		int64_t station = warm_station(&f, "Gauge");
		warm_days(&f, station, "2024-05-01", "2024-12-31", row[i].warm);
		warm_days(&f, station, "2025-05-01", "2025-12-31", 49);
		warm_days(&f, station, "2026-05-01", "2026-05-10", 60);
		fixture_read(&f, "2026-05-10");
		const struct event *hatch = egg_hatch(&f, &ev);
		if (strcmp(hatch->when, row[i].want) != 0)
			fail_msg("%s: %s", row[i].why, hatch->when);
		events_free(&ev);
		fixture_close(&f);
	}
}

static void a_day_that_is_over_is_no_day_to_expect(void **state)
{
	struct fixture f;
	struct events ev = { 0 };

	(void)state;
	fixture_open(&f);
	warm_rule(&f);
	warm_biofix(&f, "2026-05-01");
	warm_days(&f, warm_station(&f, "Gauge"), "2026-05-01", "2026-05-10", 60);
	fixture_read(&f, "2026-06-30");
	assert_string_equal(egg_hatch(&f, &ev)->when,
		"should have come by Fri 22 May; temperatures end 10 May (at the last "
		"week's pace)");
	events_free(&ev);
	fixture_close(&f);
}

static void three_days_of_a_week_make_no_pace(void **state)
{
	static const struct {
		const char *why, *last;
		bool known;
	} row[] = {
		{ "three days, first bad", "2026-05-03", false },
		{ "four, last good", "2026-05-04", true },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct events ev = { 0 };
		fixture_open(&f);
		warm_rule(&f);
		warm_biofix(&f, "2026-05-01");
		warm_days(&f, warm_station(&f, "Gauge"), "2026-05-01", row[i].last, 60);
		fixture_read(&f, row[i].last);
		if ((egg_hatch(&f, &ev)->first != DAY_NONE) != row[i].known)
			fail_msg("%s: %s", row[i].why, egg_hatch(&f, &ev)->when);
		events_free(&ev);
		fixture_close(&f);
	}
}

static void too_cold_to_tell_is_said(void **state)
{
	struct fixture f;
	struct events ev = { 0 };

	(void)state;
	fixture_open(&f);
	warm_rule(&f);
	warm_biofix(&f, "2026-05-01");
	warm_days(&f, warm_station(&f, "Gauge"), "2026-05-01", "2026-05-10", 45);
	fixture_read(&f, "2026-05-10");
	assert_string_equal(
		egg_hatch(&f, &ev)->when, "not known: too cold at present to tell");
	events_free(&ev);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_sum_says_what_it_lacks),
		cmocka_unit_test(
			a_missing_day_makes_the_sum_a_lower_bound_and_is_never_zero),
		cmocka_unit_test(settings_fill_short_gaps_and_leave_out_the_biofix_day),
		cmocka_unit_test(what_settings_do_to_a_sum_is_said),
		cmocka_unit_test(with_two_stations_the_farm_must_choose),
		cmocka_unit_test(
			an_event_is_expected_at_the_last_weeks_pace_without_earlier_years),
		cmocka_unit_test(earlier_years_give_a_range_when_they_differ),
		cmocka_unit_test(a_passed_event_says_when),
		cmocka_unit_test(
			an_event_that_has_begun_is_under_way_until_its_range_is_over),
		cmocka_unit_test(a_year_that_never_got_so_far_is_told_of),
		cmocka_unit_test(a_day_that_is_over_is_no_day_to_expect),
		cmocka_unit_test(three_days_of_a_week_make_no_pace),
		cmocka_unit_test(too_cold_to_tell_is_said),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
