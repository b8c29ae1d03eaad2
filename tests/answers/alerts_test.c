#include "acts.h"
#include "warm.h"

#include "answers/alerts.h"

static void an_alert_is_open_until_it_is_answered(void **state)
{
	struct fixture f;
	struct alerts a = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t t = acts_trap_over(&f);
	acts_read(&f, "2026-07-15 12:00");
	alerts_of(&f.log, 0, &a);
	assert_int_equal(a.n, 1);
	assert_false(a.items[0].is_answered);
	assert_int_equal(a.items[0].trap, t);
	assert_int_equal(a.items[0].day, day_of("2026-07-15"));
	assert_string_equal(a.items[0].name, "Upper Russet, CM, trap 3");
	assert_string_equal(a.items[0].amount, "12.0");
	assert_string_equal(a.items[0].says, "12.0 a week, threshold >=5");
	assert_string_equal(a.items[0].decided, "open");
	assert_string_equal(a.items[0].after, "");
	acts_answer(
		&f, a.items[0].answer, DECISION_TREATED, "2026-07-15", "border rows");
	acts_read(&f, "2026-07-15 12:00");
	alerts_of(&f.log, 0, &a);
	assert_int_equal(a.n, 1);
	assert_true(a.items[0].is_answered);
	assert_string_equal(a.items[0].decided, "treated Wed 15 Jul: border rows");
	alerts_free(&a);
	fixture_close(&f);
}

static void what_the_catch_did_after_is_told_with_its_doubts(void **state)
{
	static const struct {
		const char *why, *today, *after;
	} row[] = {
		{ "nothing read yet", "2026-07-15 12:00",
			"before 12.0 a week, after not read (14 nights and -; the two "
			"weeks after are not over)" },
		{ "the last day of the two weeks is not over", "2026-07-28 12:00",
			"before 12.0 a week, after 3.0 a week (14 nights and 7 nights; "
			"the two weeks after are not over)" },
		{ "both weeks; the lure was due on 22 July", "2026-07-29 12:00",
			"before 12.0 a week, after 3.5 a week (14 nights and 14 "
			"nights; lure overdue after)" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct alerts a = { 0 };
		fixture_open(&f);
		int64_t t = acts_trap_over(&f);
		acts_read(&f, "2026-07-15 12:00");
		alerts_of(&f.log, 0, &a);
		assert_int_equal(a.n, 1);
		acts_answer(&f, a.items[0].answer, DECISION_LEFT, "2026-07-15", "");
		fixture_count(&f, t, "2026-07-22", 3);
		fixture_count(&f, t, "2026-07-29", 4);
		acts_read(&f, row[i].today);
		alerts_of(&f.log, 0, &a);
		assert_int_equal(a.n, 1);
		assert_string_equal(a.items[0].decided, "left as it was Wed 15 Jul");
		if (strcmp(a.items[0].after, row[i].after) != 0)
			fail_msg("%s: %s", row[i].why, a.items[0].after);
		alerts_free(&a);
		fixture_close(&f);
	}
}

static void over_again_at_a_later_clearing_is_a_new_alert_before_the_old(void **state)
{
	struct fixture f;
	struct alerts a = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t t = acts_trap_over(&f);
	acts_read(&f, "2026-07-15 12:00");
	alerts_of(&f.log, 0, &a);
	acts_answer(&f, a.items[0].answer, DECISION_LOOKED, "2026-07-16", "");
	fixture_count(&f, t, "2026-07-22", 9);
	acts_read(&f, "2026-07-22 12:00");
	alerts_of(&f.log, 0, &a);
	assert_int_equal(a.n, 2);
	assert_false(a.items[0].is_answered);
	assert_int_equal(a.items[0].day, day_of("2026-07-22"));
	assert_true(a.items[1].is_answered);
	assert_string_equal(a.items[1].decided, "looked Thu 16 Jul");
	assert_string_equal(a.items[1].says,
		"12.0 a week, threshold >=5, as counts and thresholds stand now");
	alerts_free(&a);
	fixture_close(&f);
}

/* The usual case: the run after it was made before anybody answered. */
static void an_alert_stays_open_whatever_the_next_runs_bring(void **state)
{
	struct fixture f;
	struct alerts a = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t t = acts_trap_over(&f);
	fixture_count(&f, t, "2026-07-22", 1);
	fixture_count(&f, t, "2026-07-29", 8);
	fixture_count(&f, t, "2026-08-05", 1);
	acts_read(&f, "2026-08-20 12:00");
	alerts_of(&f.log, 0, &a);
	assert_int_equal(a.n, 2);
	assert_int_equal(a.items[0].day, day_of("2026-07-29"));
	assert_int_equal(a.items[1].day, day_of("2026-07-15"));
	assert_string_equal(a.items[1].says, "12.0 a week, threshold >=5");
	alerts_of_block(&f.log, f.block.id, &a);
	assert_int_equal(a.n, 2);
	acts_answer(&f, a.items[1].answer, DECISION_LEFT, "2026-07-30", "");
	acts_read(&f, "2026-08-20 12:00");
	alerts_of(&f.log, 0, &a);
	assert_int_equal(a.n, 2);
	assert_int_equal(a.items[0].day, day_of("2026-07-29"));
	assert_false(a.items[0].is_answered);
	assert_true(a.items[1].is_answered);
	alerts_free(&a);
	fixture_close(&f);
}

/* A trap that stays hot is answered once, not once a week. */
static void checks_in_a_row_that_were_over_are_one_alert(void **state)
{
	static const struct {
		const char *why;
		int32_t counts[3]; /* 15, 22 and 29 July, after 14, 7 and 7 nights */
		int answered;      /* the check that was answered; -1: none */
		size_t n, n_open;
		const char *first, *says; /* of the first alert */
	} row[] = {
		{ "over three times", { 24, 9, 8 }, -1, 1, 1, "2026-07-29",
			"8.0 a week, threshold >=5; over at each of 3 checks since Wed "
			"15 Jul" },
		{ "on the threshold in between", { 24, 5, 8 }, -1, 1, 1, "2026-07-29",
			"8.0 a week, threshold >=5; over at each of 3 checks since Wed "
			"15 Jul" },
		{ "just below it in between", { 24, 4, 8 }, -1, 2, 2, "2026-07-29",
			"8.0 a week, threshold >=5" },
		{ "nobody can tell of the one between", { 24, COUNT_NONE, 8 }, -1, 2, 2,
			"2026-07-29", "8.0 a week, threshold >=5" },
		{ "the last answered: it is an answer to all", { 24, 9, 8 }, 2, 1, 0,
			"2026-07-29",
			"8.0 a week, threshold >=5, as counts and thresholds stand now; "
			"over at each of 3 checks since Wed 15 Jul" },
		{ "the second answered: what came after is new", { 24, 9, 8 }, 1, 2, 1,
			"2026-07-29", "8.0 a week, threshold >=5" },
		{ "the first answered: the two after it are one", { 24, 9, 8 }, 0, 2, 1,
			"2026-07-29",
			"8.0 a week, threshold >=5; over at each of 2 checks since Wed "
			"22 Jul" },
	};
	static const char *const days[] = { "2026-07-15", "2026-07-22", "2026-07-29" };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct alerts a = { 0 };
		size_t n_open = 0;

		fixture_open(&f);
		int64_t t = acts_trap_over(&f);
		for (int k = 0; k < 3; k++) {
			struct visit v = fixture_counted(t, days[k], row[i].counts[k]);
			if (row[i].counts[k] == COUNT_NONE)
				v.outcome = OUTCOME_SPOILED;
			fixture_save(&f, v);
			if (row[i].answered != k)
				continue;
			acts_read(&f, "2026-07-29 12:00");
			alerts_of(&f.log, 0, &a);
			acts_answer(&f, a.items[0].answer, DECISION_LOOKED,
				"2026-07-29", "");
		}
		acts_read(&f, "2026-08-20 12:00");
		alerts_of(&f.log, 0, &a);
		for (size_t k = 0; k < a.n; k++)
			n_open += !a.items[k].is_answered;
		if (a.n != row[i].n || n_open != row[i].n_open)
			fail_msg("%s: %zu, %zu of them open", row[i].why, a.n, n_open);
		assert_int_equal(a.items[0].day, day_of(row[i].first));
		assert_string_equal(a.items[0].says, row[i].says);
		alerts_free(&a);
		fixture_close(&f);
	}
}

/* Another season's catch is no alert of this one. */
static void an_alert_goes_with_its_season(void **state)
{
	static const struct {
		const char *why, *today;
		size_t n;
	} row[] = {
		{ "the last day of the season", "2026-12-31 12:00", 1 },
		{ "the first of the next", "2027-01-01 12:00", 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct alerts a = { 0 };
		fixture_open(&f);
		acts_trap_over(&f);
		acts_read(&f, row[i].today);
		alerts_of(&f.log, 0, &a);
		if (a.n != row[i].n)
			fail_msg("%s: %zu alerts", row[i].why, a.n);
		alerts_free(&a);
		fixture_close(&f);
	}
}

static void a_count_corrected_since_is_said(void **state)
{
	struct fixture f;
	struct alerts a = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t t = acts_trap_over(&f);
	acts_read(&f, "2026-07-15 12:00");
	alerts_of(&f.log, 0, &a);
	acts_answer(&f, a.items[0].answer, DECISION_LOOKED, "2026-07-15", "");
	fixture_count(&f, t, "2026-07-15", 2);
	acts_read(&f, "2026-07-15 12:00");
	alerts_of(&f.log, 0, &a);
	assert_int_equal(a.n, 1);
	assert_string_equal(a.items[0].says,
		"under as counts and thresholds stand now: 1.0 a week, threshold >=5");
	alerts_free(&a);
	fixture_close(&f);
}

/* The log knows the season as it stands today: flight 2 since 10 July, and the sums of
 * degree-days since the biofix of 12 May, of which the 15th and all later ones lack a
 * day. */
static void an_earlier_day_is_judged_by_what_is_known_of_it(void **state)
{
	static const struct {
		const char *why, *day;
		int biofix, flight;
		int32_t dd;
		bool at_least;
	} row[] = {
		{ "today", "2026-07-21", 1, 2, 900, true },
		{ "the first day of the flight", "2026-07-10", 1, 2, 40, true },
		{ "the day before was the flight before", "2026-07-09", 1, 1, 40,
			true },
		{ "the day that lacks", "2026-05-15", 1, 1, 40, true },
		{ "the day before it", "2026-05-14", 1, 1, 30, false },
		{ "the day of the biofix", "2026-05-12", 1, 1, 10, false },
		{ "the day before had none yet", "2026-05-11", 0, 0, -1, false },
	};
	struct dd_then then[] = { { 10, false }, { 20, false }, { 30, false },
		{ 40, true } };
	struct fixture f;

	(void)state;
	fixture_open(&f);
	acts_trap_over(&f);
	acts_read(&f, "2026-07-21 12:00");
	struct season_state s = { .farm = f.farm.id,
		.pest = f.cm.id,
		.biofix = day_of("2026-05-12"),
		.flight = 2,
		.flight_start = day_of("2026-07-10"),
		.dd = 900,
		.dd_at_least = true,
		.then = then,
		.n_then = sizeof then / sizeof *then,
		.then_from = day_of("2026-05-12") };
	struct season_states read = f.log.seasons;
	f.log.seasons = (struct season_states){ &s, 1, 1 };
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct moment m =
			log_moment(&f.log, f.block.id, f.cm.id, day_of(row[i].day));
		if ((m.biofix != DAY_NONE) != row[i].biofix ||
			m.flight != row[i].flight || m.dd != row[i].dd ||
			(m.dd >= 0 && m.dd_at_least != row[i].at_least))
			fail_msg("%s: flight %d, %d degree-days", row[i].why, m.flight,
				(int)m.dd);
	}
	f.log.seasons = read;
	fixture_close(&f);
}

/* Ten degree-days a day from 12 May on; the threshold holds until there are 250. */
static void an_alert_stays_over_when_the_thresholds_time_is_past(void **state)
{
	static const struct {
		const char *why, *caught, *says;
	} row[] = {
		{ "the 24th day since, 240", "2026-06-04",
			"12.0 a week, threshold >=5, as counts and thresholds stand "
			"now" },
		{ "the 25th day since, 250: no threshold then", "2026-06-05",
			"no threshold holds for that day as they stand now" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct alerts a = { 0 };
		struct answer one = answer_blank;
		fixture_open(&f);
		warm_rule(&f);
		warm_days(
			&f, warm_station(&f, "Ridge"), "2026-05-12", "2026-07-20", 60);
		warm_biofix(&f, "2026-05-12");
		struct rule r = fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500);
		r.until_dd = 250;
		fixture_put_rule(&f, r);
		one.trap = fixture_trap(&f, "3", "2026-05-01");
		one.block = f.block.id;
		one.pest = f.cm.id;
		one.day = day_of(row[i].caught);
		fixture_count(&f, one.trap, "2026-05-28", 1);
		fixture_count(&f, one.trap, row[i].caught, i == 0 ? 12 : 14);
		acts_answer(&f, one, DECISION_LOOKED, row[i].caught, "");
		acts_read(&f, "2026-07-21 12:00");
		alerts_of(&f.log, 0, &a);
		assert_int_equal(a.n, 1);
		if (strcmp(a.items[0].says, row[i].says) != 0)
			fail_msg("%s: \"%s\"", row[i].why, a.items[0].says);
		alerts_free(&a);
		fixture_close(&f);
	}
}

static void what_cannot_be_judged_now_is_not_called_missing(void **state)
{
	struct fixture f;
	struct alerts a = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500));
	int64_t t = fixture_trap(&f, "3", "2026-07-01");
	fixture_count(&f, t, "2026-07-15", 12);
	acts_read(&f, "2026-07-15 12:00");
	alerts_of(&f.log, 0, &a);
	assert_int_equal(a.n, 1);
	acts_answer(&f, a.items[0].answer, DECISION_LOOKED, "2026-07-15", "");
	fixture_count(&f, t, "2026-07-22", 1);
	acts_read(&f, "2026-07-22 12:00");
	f.log.rules.items[0].until_dd = 250;
	alerts_of(&f.log, 0, &a);
	assert_int_equal(a.n, 1);
	assert_null(strstr(a.items[0].says, "missing"));
	assert_non_null(strstr(a.items[0].says, "is not known now"));
	alerts_free(&a);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(an_alert_is_open_until_it_is_answered),
		cmocka_unit_test(what_the_catch_did_after_is_told_with_its_doubts),
		cmocka_unit_test(
			over_again_at_a_later_clearing_is_a_new_alert_before_the_old),
		cmocka_unit_test(an_alert_stays_open_whatever_the_next_runs_bring),
		cmocka_unit_test(checks_in_a_row_that_were_over_are_one_alert),
		cmocka_unit_test(an_alert_goes_with_its_season),
		cmocka_unit_test(a_count_corrected_since_is_said),
		cmocka_unit_test(an_earlier_day_is_judged_by_what_is_known_of_it),
		cmocka_unit_test(an_alert_stays_over_when_the_thresholds_time_is_past),
		cmocka_unit_test(what_cannot_be_judged_now_is_not_called_missing),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
