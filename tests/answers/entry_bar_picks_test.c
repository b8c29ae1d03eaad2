#include "acts.h"

/* Earliest pick = day of the treatment + days (common practice, no source; the label
 * wins). 20 August + 14 = 3 September. */
static void a_pick_is_told_from_the_first_day_that_is_allowed(void **state)
{
	static const struct {
		const char *why;
		int32_t rei, phi;
		const char *pick;
		bool is_done;
		const char *says;
		enum tone tone;
	} row[] = {
		{ "the day before", 12, 14, "2026-09-02", false,
			"too early: earliest pick Thu 3 Sep (14 days after 20 Aug)",
			TONE_OVER },
		{ "the day itself", 12, 14, "2026-09-03", false,
			"not barred from Thu 3 Sep on (14 days after 20 Aug)",
			TONE_PLAIN },
		{ "done too early", 12, 14, "2026-09-02", true,
			"too early: earliest pick was Thu 3 Sep (14 days after 20 Aug)",
			TONE_OVER },
		{ "before the treatment", 12, 14, "2026-08-19", false,
			"nothing in the log bars it", TONE_PLAIN },
		{ "one day", 1, 1, "2026-08-20", false,
			"too early: earliest pick Fri 21 Aug (1 day after 20 Aug)",
			TONE_OVER },
		{ "no interval is not none", 12, -1, "2026-09-03", false,
			"not known: no preharvest interval entered for Brackwater oil, "
			"20 Aug",
			TONE_UNSURE },
		{ "re-entry after picking would be allowed", 72, 2, "2026-08-22", false,
			"too early: earliest pick Sun 23 Aug (no entry until Sun 23 "
			"Aug 10:30)",
			TONE_OVER },
		{ "the day on which re-entry ends", 72, 2, "2026-08-23", false,
			"only from Sun 23 Aug 10:30 on, when the re-entry interval is "
			"over",
			TONE_UNSURE },
		{ "the day after", 72, 2, "2026-08-24", false,
			"not barred from Sun 23 Aug on (no entry until Sun 23 Aug 10:30)",
			TONE_PLAIN },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct pick_rows p = { 0 };
		fixture_open(&f);
		acts_treat(&f, "2026-08-20 10:30", row[i].rei, row[i].phi);
		acts_pick(&f, row[i].pick, row[i].is_done);
		acts_read(&f, "2026-08-19 08:00");
		pick_rows_of(&f.log, 0, &p);
		if (p.n != 1 || strcmp(p.items[0].says, row[i].says) != 0 ||
			p.items[0].tone != row[i].tone)
			fail_msg("%s: %zu rows, \"%s\"", row[i].why, p.n,
				p.n ? p.items[0].says : "");
		pick_rows_free(&p);
		fixture_close(&f);
	}
}

static void a_block_without_a_pick_is_told_when_it_may_be_picked(void **state)
{
	static const struct {
		const char *why;
		int32_t rei, phi;
		const char *now, *says; /* NULL: no row */
	} row[] = {
		{ "the last barred day", 12, 14, "2026-09-02 08:00",
			"earliest pick Thu 3 Sep (14 days after 20 Aug)" },
		{ "the first free one", 12, 14, "2026-09-03 08:00", NULL },
		{ "re-entry ends today", 72, 2, "2026-08-23 08:00",
			"earliest pick from Sun 23 Aug 10:30 on (re-entry interval)" },
		{ "not known", 12, -1, "2026-09-03 08:00",
			"earliest pick not known: no preharvest interval entered for "
			"Brackwater oil, 20 Aug" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct pick_rows p = { 0 };
		fixture_open(&f);
		acts_treat(&f, "2026-08-20 10:30", row[i].rei, row[i].phi);
		acts_read(&f, row[i].now);
		pick_rows_of(&f.log, 0, &p);
		if (p.n != (row[i].says != NULL) ||
			(p.n && strcmp(p.items[0].says, row[i].says) != 0))
			fail_msg("%s: %zu rows, \"%s\"", row[i].why, p.n,
				p.n ? p.items[0].says : "");
		pick_rows_free(&p);
		fixture_close(&f);
	}
}

static void picks_go_back_two_weeks_and_come_by_day(void **state)
{
	struct fixture f;
	struct pick_rows p = { 0 };

	(void)state;
	fixture_open(&f);
	acts_pick(&f, "2026-09-10", false);
	acts_pick(&f, "2026-08-20", true);
	acts_pick(&f, "2026-08-19", true);
	acts_pick(&f, "2026-09-01", false);
	acts_read(&f, "2026-09-03 08:00");
	pick_rows_of(&f.log, 0, &p);
	assert_int_equal(p.n, 3);
	assert_string_equal(p.items[0].day_text, "Thu 20 Aug");
	assert_string_equal(p.items[1].day_text, "Tue 1 Sep");
	assert_string_equal(p.items[2].day_text, "Thu 10 Sep");
	assert_int_equal(p.items[0].tone, TONE_QUIET);
	pick_rows_free(&p);
	fixture_close(&f);
}

/* The first of several picks is the one that sets the limit. */
static void a_treatment_says_which_picks_it_would_bar(void **state)
{
	static const struct {
		const char *why;
		int32_t phi;
		size_t n;
		const char *first;
	} row[] = {
		{ "none", 1, 0, NULL },
		{ "the first of three", 5, 1,
			"Upper Russet, pick planned for Tue 25 Aug: too early: "
			"earliest pick Wed 26 Aug (5 days after 21 Aug)" },
		{ "all three", 30, 3,
			"Upper Russet, pick planned for Tue 25 Aug: too early: "
			"earliest pick Sun 20 Sep (30 days after 21 Aug)" },
		{ "not entered: all left open", -1, 3,
			"Upper Russet, pick planned for Tue 25 Aug: not known: no "
			"preharvest interval entered for Brackwater oil, 21 Aug" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		char says[4][SAY_LINE * 2] = { "" };
		fixture_open(&f);
		acts_pick(&f, "2026-08-25", false);
		acts_pick(&f, "2026-08-29", false);
		acts_pick(&f, "2026-09-03", false);
		acts_pick(&f, "2026-08-20", true);
		acts_read(&f, "2026-08-21 08:00");
		struct treatment t =
			acts_treatment(&f, "2026-08-21 10:00", 4, row[i].phi);
		size_t n = treatment_bars_picks(&f.log, &t, says, 4);
		if (n != row[i].n || (n && strcmp(says[0], row[i].first) != 0))
			fail_msg("%s: %zu, \"%s\"", row[i].why, n, says[0]);
		fixture_close(&f);
	}
}

static void a_corrected_treatment_bars_by_its_new_form_alone(void **state)
{
	struct fixture f;
	char says[1][SAY_LINE * 2] = { "" };

	(void)state;
	fixture_open(&f);
	acts_treat(&f, "2026-08-21 10:00", 4, 30);
	acts_pick(&f, "2026-08-25", false);
	acts_read(&f, "2026-08-21 12:00");
	struct treatment t = f.log.treatments.items[0];
	assert_int_equal(treatment_bars_picks(&f.log, &t, says, 1), 1);
	t.phi_days = 4;
	assert_int_equal(treatment_bars_picks(&f.log, &t, says, 1), 0);
	t.phi_days = 5;
	assert_int_equal(treatment_bars_picks(&f.log, &t, says, 1), 1);
	assert_non_null(strstr(says[0], "earliest pick Wed 26 Aug"));
	fixture_close(&f);
}

/* A day on which nobody knows is no headline. */
static void behind_a_bar_what_is_not_known_comes_first(void **state)
{
	struct fixture f;
	struct pick_rows p = { 0 };

	(void)state;
	fixture_open(&f);
	acts_treat(&f, "2026-08-20 10:30", 12, 14);
	struct treatment t = acts_treatment(&f, "2026-08-21 10:30", 12, -1);
	text_copy(t.product, sizeof t.product, "Stuff");
	acts_put(&f, t);
	acts_pick(&f, "2026-08-30", false);
	acts_read(&f, "2026-08-25 08:00");
	pick_rows_of(&f.log, 0, &p);
	assert_int_equal(p.n, 2);
	assert_string_equal(p.items[1].says,
		"pick not known, not before Thu 3 Sep (14 days after 20 Aug): no "
		"preharvest interval entered for Stuff, 21 Aug");
	assert_string_equal(p.items[0].says,
		"too early: not before Thu 3 Sep (14 days after 20 Aug), then not "
		"known: no preharvest interval entered for Stuff, 21 Aug");
	pick_rows_free(&p);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_pick_is_told_from_the_first_day_that_is_allowed),
		cmocka_unit_test(a_block_without_a_pick_is_told_when_it_may_be_picked),
		cmocka_unit_test(behind_a_bar_what_is_not_known_comes_first),
		cmocka_unit_test(picks_go_back_two_weeks_and_come_by_day),
		cmocka_unit_test(a_treatment_says_which_picks_it_would_bar),
		cmocka_unit_test(a_corrected_treatment_bars_by_its_new_form_alone),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
