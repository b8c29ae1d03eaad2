#include "warm.h"

#include "answers/flight.h"
#include "answers/verdicts.h"

#include <stdlib.h>

/* Two clean flights of one trap, week by week from its hanging on Monday 6 April:
 * vector F01 of the flight rule. */
static const int two_flights[] = { 0, 2, 9, 20, 31, 22, 10, 4, 1, 0, 3, 12, 26, 30, 17,
	6, 2, 0 };

static int64_t fly(struct fixture *f, const char *hung, size_t weeks)
{
	char iso[DAY_ISO_SIZE];
	char label[2] = { (char)('1' + (f->log.traps.n % 9)), '\0' };
	int64_t trap = fixture_trap(f, label, hung);

	for (size_t i = 0; i < weeks; i++) {
		day_iso(day_of(hung) + 7 * ((int32_t)i + 1), iso);
		fixture_count(f, trap, iso, two_flights[i]);
	}
	return trap;
}

static struct flight_ask ask(const struct fixture *f, int season)
{
	return (struct flight_ask){
		.farm = f->farm.id, .pest = f->cm.id, .trap = NO_TRAP, .season = season
	};
}

static void see(struct fixture *f, struct flight_view *v, int season)
{
	struct err e = { 0 };
	const struct flight_ask a = ask(f, season);

	must(flight_read(v, f->book, &f->log, &a, &e), &e);
}

static void two_flights_stand_in_the_table_with_their_dates(void **state)
{
	struct fixture f;
	struct flight_view v = { 0 };

	(void)state;
	fixture_open(&f);
	fly(&f, "2026-04-06", 18);
	fixture_read(&f, "2026-08-12");
	see(&f, &v, 2026);
	assert_int_equal(v.n_rows, 2);
	assert_string_equal(v.rows[0].name, "flight 1");
	assert_string_equal(v.rows[0].moths, "99");
	/* 50 % after 32.18 nights from 6 April (vector F01) */
	assert_string_equal(v.rows[0].d50, "8 May");
	assert_string_equal(v.rows[1].moths, "96");
	assert_int_equal(v.now.n, 18);
	assert_true(fabs(v.now.rate[4] - 31) < 1e-9);
	assert_string_equal(v.biofix.set, "biofix not set");
	flight_free(&v);
	fixture_close(&f);
}

static void a_biofix_from_weekly_visits_is_suggested_as_an_interval(void **state)
{
	struct fixture f;
	struct flight_view v = { 0 };

	(void)state;
	fixture_open(&f);
	fly(&f, "2026-04-06", 18);
	fixture_read(&f, "2026-08-12");
	see(&f, &v, 2026);
	assert_int_equal(v.biofix.suggestion.state, BIOFIX_DATED);
	assert_int_equal(v.biofix.suggestion.after, day_of("2026-04-13"));
	assert_int_equal(v.biofix.suggestion.by, day_of("2026-04-20"));
	assert_non_null(strstr(v.biofix.suggested, "after Mon 13 Apr, by Mon 20 Apr"));
	flight_free(&v);
	fixture_close(&f);
}

static void last_years_line_lies_under_this_years_by_week_of_the_season(void **state)
{
	struct fixture f;
	struct flight_view v = { 0 };

	(void)state;
	fixture_open(&f);
	fly(&f, "2025-04-21", 18);
	fixture_read(&f, "2025-12-31");
	fly(&f, "2026-04-06", 18);
	fixture_read(&f, "2026-08-12");
	see(&f, &v, 2026);
	assert_int_equal(v.n_earlier, 1);
	assert_int_equal(v.earlier[0].season, 2025);
	assert_true(v.earlier[0].rate[0] < 0); /* two weeks later into the season */
	assert_true(fabs(v.earlier[0].rate[6] - 31) < 1e-9);
	assert_true(fabs(v.now.rate[4] - 31) < 1e-9);
	flight_free(&v);
	fixture_close(&f);
}

static void degree_days_stand_beside_weeks_and_half_catch(void **state)
{
	struct fixture f;
	struct flight_view v = { 0 };

	(void)state;
	fixture_open(&f);
	warm_rule(&f);
	warm_biofix(&f, "2026-04-20");
	warm_days(&f, warm_station(&f, "Gauge"), "2026-04-20", "2026-08-12", 60);
	fly(&f, "2026-04-06", 18);
	fixture_read(&f, "2026-08-12");
	see(&f, &v, 2026);
	assert_string_equal(
		v.rows[0].dd50, "190 F"); /* 20 April to 8 May, both counted */
	assert_true(v.now.dd[1] < 0);
	assert_true(fabs(v.now.dd[2] - 70) < 1e-9);
	assert_true(v.n_marks > 0);
	flight_free(&v);
	fixture_close(&f);
}

static enum verdict judged(struct fixture *f, const char *today)
{
	struct verdict_rows v = { 0 };

	fixture_read(f, today);
	verdicts_of(&f->log, 0, 0, f->log.today, &v);
	enum verdict verdict = v.items[0].rule == NO_RULE
				       ? VERDICT_NONE
				       : v.items[0].judgement.verdict;
	free(v.items);
	return verdict;
}

static void a_threshold_for_a_flight_decides_once_the_flight_is_known(void **state)
{
	struct fixture f;

	(void)state;
	fixture_open(&f);
	struct rule r = fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 1000);
	r.flight = 2;
	fixture_put_rule(&f, r);
	fly(&f, "2026-04-06", 18);
	assert_int_equal(judged(&f, "2026-04-13"), VERDICT_UNKNOWN); /* nothing yet */
	assert_int_equal(judged(&f, "2026-05-11"), VERDICT_NONE);    /* flight 1 */
	assert_int_equal(judged(&f, "2026-07-13"), VERDICT_OVER); /* 30 in flight 2 */
	fixture_close(&f);
}

static void a_threshold_until_so_many_degree_days_ends_there(void **state)
{
	static const struct {
		const char *why, *today;
		enum verdict want;
	} row[] = {
		{ "90 so far, last good", "2026-04-28", VERDICT_OVER },
		{ "100, first bad", "2026-04-29", VERDICT_NONE },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		fixture_open(&f);
		warm_rule(&f);
		warm_biofix(&f, "2026-04-20");
		warm_days(
			&f, warm_station(&f, "Gauge"), "2026-04-20", "2026-05-30", 60);
		struct rule r = fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500);
		r.until_dd = 100;
		fixture_put_rule(&f, r);
		fly(&f, "2026-04-06", 18);
		enum verdict got = judged(&f, row[i].today);
		if (got != row[i].want)
			fail_msg("%s: %s", row[i].why, verdict_word(got));
		fixture_close(&f);
	}
}

static void a_total_since_biofix_counts_from_the_day_that_is_set(void **state)
{
	struct fixture f;

	(void)state;
	fixture_open(&f);
	struct rule r = fixture_rule(&f, MEASURE_TRAP_TOTAL, 0, 3000);
	r.span_kind = SPAN_BIOFIX;
	fixture_put_rule(&f, r);
	fly(&f, "2026-04-06", 18);
	assert_int_equal(judged(&f, "2026-05-04"), VERDICT_UNKNOWN);
	warm_biofix(&f, "2026-04-13");
	assert_int_equal(judged(&f, "2026-05-04"), VERDICT_OVER); /* 2 + 9 + 20 */
	fixture_close(&f);
}

enum { HALF_YEAR = 182 }; /* 26 weeks, so that weekdays stay */

static const char *later(const char *iso, int32_t days, char out[static DAY_ISO_SIZE])
{
	day_iso(day_of(iso) + days, out);
	return out;
}

/* Two seasons on a farm of that start, every date so many days later. */
static void grow(struct fixture *f, struct flight_view *v, int start, int32_t days)
{
	char one[DAY_ISO_SIZE], two[DAY_ISO_SIZE];
	struct err e = { 0 };

	fixture_open(f);
	f->farm.season_start = start;
	must(book_put_farm(f->book, &f->farm, &e), &e);
	warm_rule(f);
	int64_t station = warm_station(f, "Gauge");
	warm_days(f, station, later("2025-04-20", days, one),
		later("2026-03-31", days, two), 58);
	warm_days(f, station, later("2026-04-20", days, one),
		later("2026-08-10", days, two), 60);
	warm_biofix(f, later("2026-04-20", days, one));
	fly(f, later("2025-04-21", days, one), 18);
	fixture_read(f, later("2025-12-01", days, one));
	fly(f, later("2026-04-06", days, one), 18);
	fixture_read(f, later("2026-08-12", days, one));
	see(f, v, 2026);
}

static void expect_line(
	const struct flight_line *south, const struct flight_line *north)
{
	assert_int_equal(south->season, north->season);
	assert_int_equal(south->first_day, north->first_day + HALF_YEAR);
	assert_int_equal(south->n, north->n);
	for (size_t w = 0; w < north->n; w++) {
		assert_true(fabs(south->rate[w] - north->rate[w]) < 1e-9);
		assert_true(fabs(south->dd[w] - north->dd[w]) < 1e-9);
	}
}

static void expect_row(const struct flight_row *south, const struct flight_row *north)
{
	assert_int_equal(south->first_day, north->first_day + HALF_YEAR);
	assert_int_equal(south->peak_day, north->peak_day + HALF_YEAR);
	assert_int_equal(south->day10, north->day10 + HALF_YEAR);
	assert_int_equal(south->day50, north->day50 + HALF_YEAR);
	assert_int_equal(south->day90, north->day90 + HALF_YEAR);
	assert_string_equal(south->name, north->name);
	assert_string_equal(south->peak_rate, north->peak_rate);
	assert_string_equal(south->moths, north->moths);
	assert_string_equal(south->dd50, north->dd50);
	assert_string_equal(south->flags, north->flags);
}

static void expect_heat(const struct heat_sum *south, const struct heat_sum *north)
{
	assert_int_equal(south->state, north->state);
	assert_true(fabs(south->sum.sum - north->sum.sum) < 1e-9);
	assert_int_equal(south->from, north->from + HALF_YEAR);
	assert_int_equal(south->to, north->to + HALF_YEAR);
}

/* October to February is the season that began in July. */
static void a_southern_season_is_the_northern_one_half_a_year_later(void **state)
{
	struct fixture north, south;
	struct flight_view n = { 0 }, s = { 0 };

	(void)state;
	grow(&north, &n, 101, 0);
	grow(&south, &s, 701, HALF_YEAR);
	assert_int_equal(n.n_rows, 2);
	assert_int_equal(s.n_rows, n.n_rows);
	for (size_t i = 0; i < n.n_rows; i++)
		expect_row(&s.rows[i], &n.rows[i]);
	assert_string_equal(s.rows[0].d50, "6 Nov"); /* 8 May and 182 days */
	assert_string_equal(s.rows[0].dd50, "190 F");
	expect_line(&s.now, &n.now);
	assert_int_equal(n.n_earlier, 1);
	assert_int_equal(s.n_earlier, 1);
	expect_line(&s.earlier[0], &n.earlier[0]);
	assert_int_equal(s.biofix.suggestion.by, n.biofix.suggestion.by + HALF_YEAR);
	assert_string_equal(s.biofix.set, "biofix Mon 19 October 2026, by hand");
	assert_int_equal(n.heat.state, HEAT_SUM);
	expect_heat(&s.heat, &n.heat);
	assert_true(n.events.n > 0);
	assert_int_equal(s.events.n, n.events.n);
	for (size_t i = 0; i < n.events.n; i++) {
		assert_string_equal(s.events.items[i].text, n.events.items[i].text);
		if (n.events.items[i].first != DAY_NONE)
			assert_int_equal(s.events.items[i].first,
				n.events.items[i].first + HALF_YEAR);
	}
	flight_free(&n);
	flight_free(&s);
	fixture_close(&north);
	fixture_close(&south);
}

/* Nothing is known before the first day with temperatures, and a gap is told of. */
static void degree_days_of_nothing_are_not_zero(void **state)
{
	struct fixture f;
	struct flight_view v = { 0 };

	(void)state;
	fixture_open(&f);
	warm_rule(&f);
	warm_biofix(&f, "2026-04-20");
	warm_days(&f, warm_station(&f, "Gauge"), "2026-06-01", "2026-08-12", 60);
	fly(&f, "2026-04-06", 18);
	fixture_read(&f, "2026-08-12");
	see(&f, &v, 2026);
	assert_string_equal(v.rows[0].dd50, ""); /* 8 May */
	assert_true(v.now.dd[4] < 0);
	assert_true(v.now.dd[9] > 0 && v.now.dd_at_least[9]);
	flight_free(&v);
	fixture_close(&f);
}

static void a_threshold_for_a_flight_waits_when_the_start_was_not_seen(void **state)
{
	struct fixture f;

	(void)state;
	fixture_open(&f);
	struct rule r = fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 100);
	r.flight = 1;
	fixture_put_rule(&f, r);
	int64_t trap = fixture_trap(&f, "1", "2026-05-04");
	fixture_count(&f, trap, "2026-05-11", 30);
	fixture_count(&f, trap, "2026-05-18", 18);
	fixture_count(&f, trap, "2026-05-25", 7);
	assert_int_equal(judged(&f, "2026-05-25"), VERDICT_UNKNOWN);
	warm_biofix(&f, "2026-05-11");
	assert_int_equal(judged(&f, "2026-05-25"), VERDICT_OVER);
	fixture_close(&f);
}

static void a_season_without_the_pest_says_so(void **state)
{
	struct fixture f;
	struct flight_view v = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_read(&f, "2026-05-10");
	see(&f, &v, 2026);
	assert_string_equal(v.says, "no trap for this pest was visited in this season");
	assert_int_equal(v.n_rows, 0);
	flight_free(&v);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(two_flights_stand_in_the_table_with_their_dates),
		cmocka_unit_test(
			a_biofix_from_weekly_visits_is_suggested_as_an_interval),
		cmocka_unit_test(
			last_years_line_lies_under_this_years_by_week_of_the_season),
		cmocka_unit_test(degree_days_stand_beside_weeks_and_half_catch),
		cmocka_unit_test(
			a_threshold_for_a_flight_decides_once_the_flight_is_known),
		cmocka_unit_test(a_threshold_until_so_many_degree_days_ends_there),
		cmocka_unit_test(a_total_since_biofix_counts_from_the_day_that_is_set),
		cmocka_unit_test(
			a_southern_season_is_the_northern_one_half_a_year_later),
		cmocka_unit_test(degree_days_of_nothing_are_not_zero),
		cmocka_unit_test(
			a_threshold_for_a_flight_waits_when_the_start_was_not_seen),
		cmocka_unit_test(a_season_without_the_pest_says_so),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
