#include "season/service.h"

#include "season/log.h"

/* A 1 mg lure: three weeks, two in summer; the kind of the worked examples. */
static const struct lure_kind one_mg = {
	.id = 1, .life_days = 21, .hot_days = 14, .hot_from = 601, .hot_to = 831
};
static struct lure_kind lure_items[3];
static struct card_kind card_items[2];
static struct lure_kinds lures = { lure_items, 3, 3 };
static struct card_kinds cards = { card_items, 2, 2 };

static int set_up(void **state)
{
	(void)state;
	lure_items[0] = one_mg;
	lure_items[1] = (struct lure_kind){ .id = 2, .life_days = 60 };
	lure_items[2] = (struct lure_kind){ .id = 3,
		.life_days = 30,
		.hot_days = 10,
		.hot_from = 1215,
		.hot_to = 115 };
	card_items[0] = (struct card_kind){
		.id = 1, .life_days = 42, .stir_at = 20, .change_at = 30, .floor_at = 50
	};
	card_items[1] = (struct card_kind){
		.id = 2, .life_days = 7, .stir_at = 20, .change_at = 30, .floor_at = 50
	};
	return 0;
}

static void service_lure_due_counts_the_days_of_its_life(void **state)
{
	static const struct {
		const char *why, *since, *want;
		size_t kind;
	} row[] = {
		{ "1 mg, 21 days, hung 1 May", "2026-05-01", "2026-05-22", 0 },
		{ "the same hung 1 July lives 14 days", "2026-07-01", "2026-07-15", 0 },
		{ "60 days, hung 1 May", "2026-05-01", "2026-06-30", 1 },
		/* 22 to 31 May is 10/21; 11/21 of a hot life of 14 is 7 1/3 days. */
		{ "half of its life in the heat", "2026-05-22", "2026-06-09", 0 },
		{ "its last day is 31 May", "2026-05-11", "2026-06-01", 0 },
		{ "the last hot days", "2026-08-31", "2026-09-21", 0 },
		/* 15 Dec to 24 Dec are ten days within a window over the new year. */
		{ "a window over the new year", "2026-12-15", "2026-12-25", 2 },
		{ "29 February is a day", "2028-02-20", "2028-03-12", 0 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		int32_t since;
		char got[DAY_ISO_SIZE];
		assert_true(day_parse(row[i].since, &since));
		day_iso(service_lure_due(&lure_items[row[i].kind], since), got);
		if (strcmp(got, row[i].want) != 0)
			fail_msg("%s: %s, not %s", row[i].why, got, row[i].want);
	}
}

static void a_lure_hung_on_1_May_is_14_days_overdue_on_5_June(void **state)
{
	struct visit v = {
		.outcome = OUTCOME_HUNG, .count = COUNT_NONE, .new_lure = 1
	};
	struct diary d = { 0 };
	(void)state;
	v.day = day_from_ymd(2026, 5, 1);
	diary_read(&d, &v, 1);
	struct lure_state s =
		service_lure(&d, &lures, day_from_ymd(2026, 6, 5), DAY_NONE);
	assert_int_equal(s.state, SERVICE_OVERDUE);
	assert_int_equal(s.due, day_from_ymd(2026, 5, 22));
	assert_int_equal(s.overdue_days, 14);
	assert_int_equal(s.age_days, 35);
	diary_free(&d);
}

static void service_lure_tells_its_state(void **state)
{
	static const struct {
		const char *why, *visits;
		int today, next;
		enum service_state want;
		int overdue;
	} row[] = {
		/* Hung on 4 May: due on day 21, the 25th. */
		{ "fine", "0h*", 7, 14, SERVICE_FINE, 0 },
		{ "due the day after the next run", "0h*", 13, 20, SERVICE_FINE, 0 },
		{ "due on the next run", "0h*", 14, 21, SERVICE_NEXT_RUN, 0 },
		{ "no next run is known", "0h*", 14, -1, SERVICE_FINE, 0 },
		{ "due today", "0h*", 21, 28, SERVICE_DUE, 0 },
		{ "a day overdue", "0h*", 22, 28, SERVICE_OVERDUE, 1 },
		{ "changed in time", "0h* 20c1*", 22, 28, SERVICE_FINE, 0 },
		{ "a change later than today is not known", "0h* 25c1*", 22, 28,
			SERVICE_OVERDUE, 1 },
		{ "no lure was written down", "0h", 22, 28, SERVICE_NONE, 0 },
		{ "not hung", "", 22, 28, SERVICE_NONE, 0 },
		{ "pulled", "0h* 7p1", 22, 28, SERVICE_NONE, 0 },
		{ "missing", "0h* 7m", 22, 28, SERVICE_NONE, 0 },
		{ "hung again after missing: another lure", "0h* 7m 14h", 22, 28,
			SERVICE_NONE, 0 },
		{ "found without its lure, none put in", "0h* 7xL", 9, 28,
			SERVICE_OVERDUE, 2 },
		{ "found without its lure, a new one put in", "0h* 7xL*", 9, 27,
			SERVICE_FINE, 0 },
		{ "down, the lure still in it", "0h* 7x", 22, 28, SERVICE_OVERDUE, 1 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct log log;
		log_read(&log, row[i].visits);
		int32_t next = row[i].next < 0 ? DAY_NONE : log_day(row[i].next);
		struct lure_state s =
			service_lure(&log.diary, &lures, log_day(row[i].today), next);
		log_free(&log);
		if (s.state != row[i].want || s.overdue_days != row[i].overdue)
			fail_msg("%s: state %d, %d overdue", row[i].why, (int)s.state,
				(int)s.overdue_days);
	}
}

static void a_kind_that_is_not_listed_has_no_state(void **state)
{
	struct lure_kinds no_lures = { 0 };
	struct card_kinds no_cards = { 0 };
	struct log log;
	(void)state;
	log_read(&log, "0h*+ 7c40");
	assert_int_equal(
		service_lure(&log.diary, &no_lures, log_day(90), DAY_NONE).state,
		SERVICE_NONE);
	struct card_state c =
		service_card(&log.diary, &no_cards, log_day(90), DAY_NONE);
	assert_int_equal(c.state, SERVICE_NONE);
	assert_int_equal(c.moths, 40);
	log_free(&log);
}

static void service_card_adds_up_the_moths_on_it(void **state)
{
	static const struct {
		const char *why, *visits;
		int today;
		int moths;
		enum card_mark mark;
		enum service_state want;
		bool stirred;
	} row[] = {
		{ "8 + 11 + 13 = 32: change", "0h+ 7c8 14c11 21c13", 21, 32,
			CARD_CHANGE, SERVICE_DUE, false },
		{ "the same a day later", "0h+ 7c8 14c11 21c13", 22, 32, CARD_CHANGE,
			SERVICE_OVERDUE, false },
		{ "19 is clean", "0h+ 7c19", 7, 19, CARD_CLEAN, SERVICE_FINE, false },
		{ "20 is to be stirred", "0h+ 7c20", 7, 20, CARD_STIR, SERVICE_FINE,
			false },
		{ "stirred", "0h+ 7c20~", 7, 20, CARD_STIR, SERVICE_FINE, true },
		{ "stirred before it was needed", "0h+ 7c5~ 14c15", 14, 20, CARD_STIR,
			SERVICE_FINE, false },
		{ "29 is to be stirred", "0h+ 7c29", 7, 29, CARD_STIR, SERVICE_FINE,
			false },
		{ "30 is to be changed", "0h+ 7c30", 7, 30, CARD_CHANGE, SERVICE_DUE,
			false },
		{ "49 is to be changed", "0h+ 7c49", 7, 49, CARD_CHANGE, SERVICE_DUE,
			false },
		{ "from 50 a count is a floor", "0h+ 7f50", 7, 50, CARD_FLOOR,
			SERVICE_DUE, false },
		{ "changed: what was counted is off it", "0h+ 7c45+ 14c2", 14, 2,
			CARD_CLEAN, SERVICE_FINE, false },
		{ "other moths load it too", "0h+ 7c10o25", 7, 35, CARD_CHANGE,
			SERVICE_DUE, false },
		{ "the card is lost, none put in", "0h+ 7c10 14xC", 14, 0, CARD_CLEAN,
			SERVICE_DUE, false },
		{ "due by age after 42 days", "0h+ 7c1", 42, 1, CARD_CLEAN, SERVICE_DUE,
			false },
		{ "fine the day before", "0h+ 7c1", 41, 1, CARD_CLEAN, SERVICE_FINE,
			false },
		{ "pulled", "0h+ 7p40", 8, 0, CARD_CLEAN, SERVICE_NONE, false },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct log log;
		log_read(&log, row[i].visits);
		struct card_state s = service_card(
			&log.diary, &cards, log_day(row[i].today), DAY_NONE);
		log_free(&log);
		if (s.moths != row[i].moths || s.mark != row[i].mark ||
			s.state != row[i].want ||
			s.stirred_since_mark != row[i].stirred)
			fail_msg("%s: %d moths, mark %d, state %d, stirred %d",
				row[i].why, (int)s.moths, (int)s.mark, (int)s.state,
				(int)s.stirred_since_mark);
	}
}

static void service_bring_lists_what_would_not_last(void **state)
{
	static const struct {
		const char *why, *visits;
		int run, after;
		int lures, cards;
	} row[] = {
		{ "lure due on the run after it", "0h*", 14, 21, 0, 0 },
		{ "lure due the day before the run after it", "0h*", 15, 22, 1, 0 },
		{ "lure overdue", "0h*", 28, 35, 1, 0 },
		{ "card full", "0h+ 7c30", 14, 21, 0, 1 },
		{ "card by age", "0h+", 36, 43, 0, 1 },
		{ "both", "0h*+ 7c99", 42, 49, 1, 1 },
		{ "changed on this run already", "0h*+ 28c1*+", 28, 35, 0, 0 },
		{ "no lure in it", "0h*+ 7xL", 14, 21, 1, 0 },
		{ "nothing for a trap that is gone", "0h*+ 7m", 42, 49, 0, 0 },
		{ "nor for one that was pulled", "0h*+ 7p1", 42, 49, 0, 0 },
		{ "nor for one that never hung", "", 42, 49, 0, 0 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct log log;
		struct brings b = { 0 };
		int got[2] = { 0, 0 };
		log_read(&log, row[i].visits);
		service_bring(&b, &log.diary, &lures, &cards, log_day(row[i].run),
			log_day(row[i].after));
		for (size_t k = 0; k < b.n; k++)
			got[b.items[k].is_lure ? 0 : 1] += b.items[k].n;
		free(b.items);
		log_free(&log);
		if (got[0] != row[i].lures || got[1] != row[i].cards)
			fail_msg("%s: %d lures, %d cards", row[i].why, got[0], got[1]);
	}
}

static void service_bring_counts_the_lures_that_are_not_known(void **state)
{
	static const struct {
		const char *why, *visits;
		int32_t unknown;
	} row[] = {
		{ "one that is known", "0h*+", 0 },
		{ "hung without one being noted", "0h+ 7c3", 1 },
		{ "found gone: one is due", "0h*+ 7xL", 0 },
		{ "none in a trap that was pulled", "0h+ 7p1", 0 },
		{ "nor in one that never hung", "", 0 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct brings b = { 0 };
		struct log log;

		log_read(&log, row[i].visits);
		service_bring(&b, &log.diary, &lures, &cards, log_day(14), log_day(21));
		if (b.unknown != row[i].unknown)
			fail_msg("%s: %d", row[i].why, (int)b.unknown);
		free(b.items);
		log_free(&log);
	}
}

static void service_bring_adds_up_by_kind(void **state)
{
	struct brings b = { 0 };
	struct log log;
	(void)state;
	log_read(&log, "0h*+");
	for (int i = 0; i < 3; i++)
		service_bring(&b, &log.diary, &lures, &cards, log_day(42), log_day(49));
	log.visits[0].new_lure = 2;
	service_bring(&b, &log.diary, &lures, &cards, log_day(60), log_day(67));
	assert_int_equal(b.n, 3);
	assert_int_equal(b.items[0].n, 3);
	assert_int_equal(b.items[1].n, 4);
	assert_int_equal(b.items[2].kind, 2);
	free(b.items);
	log_free(&log);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(service_lure_due_counts_the_days_of_its_life),
		cmocka_unit_test(a_lure_hung_on_1_May_is_14_days_overdue_on_5_June),
		cmocka_unit_test(service_lure_tells_its_state),
		cmocka_unit_test(a_kind_that_is_not_listed_has_no_state),
		cmocka_unit_test(service_card_adds_up_the_moths_on_it),
		cmocka_unit_test(service_bring_lists_what_would_not_last),
		cmocka_unit_test(service_bring_counts_the_lures_that_are_not_known),
		cmocka_unit_test(service_bring_adds_up_by_kind),
	};
	return cmocka_run_group_tests(tests, set_up, NULL);
}
