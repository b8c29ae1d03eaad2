/* What was done in the blocks, as the log holds it, and the condition that it makes. */
#include "fixture.h"

#include "answers/verdicts.h"
#include "book/acts.h"

#define TODAY "2026-07-21"

static void put_dispensers(
	struct fixture *f, int64_t pest, const char *up, const char *down)
{
	struct disruption d = disruption_blank;
	struct err e = { 0 };

	d.block = f->block.id;
	d.pest = pest;
	d.up = day_of(up);
	d.down = down ? day_of(down) : DAY_NONE;
	must(book_put_disruption(f->book, &d, &e), &e);
}

static void the_condition_goes_by_the_dispensers_of_the_day(void **state)
{
	static const struct {
		const char *why, *day;
		bool ofm;
		enum condition want;
	} row[] = {
		{ "the day before they went up", "2026-04-19", false,
			CONDITION_CONVENTIONAL },
		{ "the day they went up", "2026-04-20", false, CONDITION_DISRUPTED },
		{ "the last day", "2026-06-30", false, CONDITION_DISRUPTED },
		{ "the day after", "2026-07-01", false, CONDITION_CONVENTIONAL },
		{ "those still up", "2026-07-10", false, CONDITION_DISRUPTED },
		{ "today", TODAY, false, CONDITION_DISRUPTED },
		{ "another pest goes by the block", "2026-05-01", true,
			CONDITION_NONE },
	};
	struct fixture f;
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	f.block.condition = CONDITION_NONE;
	must(book_put_block(f.book, &f.block, &e), &e);
	put_dispensers(&f, f.cm.id, "2026-04-20", "2026-06-30");
	put_dispensers(&f, f.cm.id, "2026-07-10", NULL);
	fixture_read(&f, TODAY);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		enum condition got = log_condition(&f.log, f.block.id,
			row[i].ofm ? f.ofm.id : f.cm.id, day_of(row[i].day));
		if (got != row[i].want)
			fail_msg("%s: \"%s\"", row[i].why, condition_word(got));
	}
	fixture_close(&f);
}

static void without_dispensers_the_block_says_its_condition(void **state)
{
	struct fixture f;
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	f.block.condition = CONDITION_DISRUPTED;
	must(book_put_block(f.book, &f.block, &e), &e);
	fixture_read(&f, TODAY);
	assert_int_equal(log_condition(&f.log, f.block.id, f.cm.id, day_of(TODAY)),
		CONDITION_DISRUPTED);
	put_dispensers(&f, 0, "2024-04-20", "2024-10-01"); /* of all pests */
	fixture_read(&f, TODAY);
	assert_int_equal(log_condition(&f.log, f.block.id, f.ofm.id, day_of(TODAY)),
		CONDITION_CONVENTIONAL);
	fixture_close(&f);
}

/* The threshold of the day is that of the condition on that day. */
static void a_threshold_follows_the_dispensers(void **state)
{
	static const struct {
		const char *day;
		int32_t value;
	} row[] = {
		{ "2026-05-15", 500 },
		{ "2026-05-22", 200 },
	};
	struct verdict_rows v = { 0 };
	struct fixture f;

	(void)state;
	fixture_open(&f);
	struct rule r = fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500);
	r.condition = CONDITION_CONVENTIONAL;
	fixture_put_rule(&f, r);
	r.condition = CONDITION_DISRUPTED;
	r.value_x100 = 200;
	fixture_put_rule(&f, r);
	int64_t t = fixture_trap(&f, "1", "2026-05-01");
	fixture_count(&f, t, "2026-05-08", 1);
	fixture_count(&f, t, "2026-05-15", 1);
	fixture_count(&f, t, "2026-05-22", 1);
	put_dispensers(&f, f.cm.id, "2026-05-16", NULL);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		fixture_read(&f, row[i].day);
		verdicts_of(&f.log, 0, 0, f.log.today, &v);
		assert_int_equal(v.n, 1);
		assert_int_equal(
			f.log.rules.items[v.items[0].rule].value_x100, row[i].value);
	}
	free(v.items);
	fixture_close(&f);
}

static void put_treatment(struct fixture *f, int32_t day)
{
	struct treatment t = treatment_blank;
	struct err e = { 0 };

	t.block = f->block.id;
	t.day = day;
	t.phi_days = 14;
	must(book_put_treatment(f->book, &t, &e), &e);
}

static void put_pick(struct fixture *f, int32_t day)
{
	struct pick p = pick_blank;
	struct err e = { 0 };

	p.block = f->block.id;
	p.day = day;
	must(book_put_pick(f->book, &p, &e), &e);
}

static void put_answer(struct fixture *f, int32_t day)
{
	struct answer a = answer_blank;
	struct err e = { 0 };

	a.block = f->block.id;
	a.pest = f->cm.id;
	a.day = a.on = day;
	must(book_put_answer(f->book, &a, &e), &e);
}

/* A pick of next month is barred by what is done today, and one of last month by what
 * was done the year before it. */
static void the_log_holds_what_may_bar_a_pick(void **state)
{
	const int32_t today = day_of(TODAY), first = day_of("2026-01-01") - 42;
	struct fixture f;

	(void)state;
	fixture_open(&f);
	put_treatment(&f, today - LOG_ACT_DAYS - 1);
	put_treatment(&f, today - LOG_ACT_DAYS);
	put_treatment(&f, today + 1);
	put_pick(&f, today - LOG_ACT_DAYS - 1);
	put_pick(&f, today - LOG_ACT_DAYS);
	put_pick(&f, today + 30);
	put_answer(&f, first - 1);
	put_answer(&f, first);
	put_answer(&f, today);
	put_answer(&f, today + 1);
	fixture_read(&f, TODAY);
	assert_int_equal(f.log.treatments.n, 2);
	assert_int_equal(f.log.treatments.items[0].day, today - LOG_ACT_DAYS);
	assert_int_equal(f.log.treatments.items[0].phi_days, 14);
	assert_int_equal(f.log.picks.n, 2);
	assert_int_equal(f.log.answers.n, 2);
	fixture_read(&f, TODAY); /* again: nothing twice */
	assert_int_equal(f.log.treatments.n, 2);
	assert_int_equal(f.log.picks.n, 2);
	fixture_close(&f);
}

/* A treatment that is read for the picks alone, or lies ahead, restarts no total. */
static void only_what_was_done_this_season_restarts_a_total(void **state)
{
	static const struct {
		const char *why, *treated, *want;
	} row[] = {
		{ "before what is read of visits", "2025-11-19", NULL },
		{ "its first day", "2025-11-20", "2025-11-20" },
		{ "today", TODAY, TODAY },
		{ "tomorrow", "2026-07-22", NULL },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		fixture_open(&f);
		put_treatment(&f, day_of(row[i].treated));
		fixture_read(&f, TODAY);
		struct moment m =
			log_moment(&f.log, f.block.id, f.cm.id, day_of(TODAY));
		if (m.treated != (row[i].want ? day_of(row[i].want) : DAY_NONE))
			fail_msg("%s: %d", row[i].why, (int)m.treated);
		fixture_close(&f);
	}
}

/* A border-only treatment says nothing of the traps inside or of the block. */
static void a_treated_border_restarts_the_totals_of_traps_there_alone(void **state)
{
	static const struct {
		const char *why;
		bool border;
		enum place place;
		const char *want;
	} row[] = {
		{ "border, trap there", true, PLACE_BORDER, TODAY },
		{ "border, trap inside", true, PLACE_INTERIOR, NULL },
		{ "border, trap outside the block", true, PLACE_OUTSIDE, NULL },
		{ "border, the block", true, PLACE_NONE, NULL },
		{ "all, trap there", false, PLACE_BORDER, TODAY },
		{ "all, trap inside", false, PLACE_INTERIOR, TODAY },
		{ "all, the block", false, PLACE_NONE, TODAY },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		fixture_open(&f);
		put_treatment(&f, day_of(TODAY));
		fixture_read(&f, TODAY);
		f.log.treatments.items[0].border = row[i].border;
		struct moment m = log_moment_at(
			&f.log, f.block.id, f.cm.id, row[i].place, day_of(TODAY));
		if (m.treated != (row[i].want ? day_of(row[i].want) : DAY_NONE))
			fail_msg("%s: %d", row[i].why, (int)m.treated);
		fixture_close(&f);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_condition_goes_by_the_dispensers_of_the_day),
		cmocka_unit_test(without_dispensers_the_block_says_its_condition),
		cmocka_unit_test(a_threshold_follows_the_dispensers),
		cmocka_unit_test(the_log_holds_what_may_bar_a_pick),
		cmocka_unit_test(only_what_was_done_this_season_restarts_a_total),
		cmocka_unit_test(
			a_treated_border_restarts_the_totals_of_traps_there_alone),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
