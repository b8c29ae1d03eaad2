/* How long what was typed on a form bars, in pairs: the last minute and day that it
 * does, the first that it does not. Hours are counted from the end of the application,
 * days from its day: common practice, no source; the label wins. What is published is
 * checked in tests/reference. */
#include "act_forms.h"

/* Of each row the last minute that is barred and the first that is free. */
static const struct span_row {
	const char *why, *date, *began, *ended, *rei, *free;
} spans[] = {
	{ "within a day", "2026-07-20", "06:00", "07:00", "4",
		"2026-07-20T11:00+02:00" },
	{ "into the next day", "2026-07-20", "21:00", "22:30", "4",
		"2026-07-21T02:30+02:00" },
	{ "to midnight itself", "2026-07-20", "19:00", "20:00", "4",
		"2026-07-21T00:00+02:00" },
	{ "applied across midnight", "2026-07-21", "23:30", "00:30", "1",
		"2026-07-21T01:30+02:00" },
	{ "into the next month", "2026-07-31", "21:00", "22:00", "4",
		"2026-08-01T02:00+02:00" },
	{ "into the next year", "2026-12-31", "19:00", "20:00", "12",
		"2027-01-01T08:00+01:00" },
	{ "into a leap day", "2028-02-28", "19:00", "20:00", "24",
		"2028-02-29T20:00+01:00" },
	{ "across a leap day", "2028-02-28", "19:00", "20:00", "48",
		"2028-03-01T20:00+01:00" },
	{ "across the end of another February", "2027-02-28", "19:00", "20:00", "24",
		"2027-03-01T20:00+01:00" },
	{ "clocks go forward", "2026-03-28", "21:00", "22:00", "12",
		"2026-03-29T11:00+02:00" },
	{ "clocks go back", "2026-10-24", "21:00", "22:00", "12",
		"2026-10-25T09:00+01:00" },
	{ "ended in the first of two hours", "2026-10-25", "01:00",
		"2026-10-25T02:30+02:00", "1", "2026-10-25T02:30+01:00" },
	{ "ended in the second", "2026-10-25", "01:00", "2026-10-25T02:30+01:00", "1",
		"2026-10-25T03:30+01:00" },
	{ "typed by the clocks of elsewhere", "2026-07-20", "2026-07-20T06:00-07:00",
		"2026-07-20T07:00-07:00", "4", "2026-07-20T20:00+02:00" },
	{ "no hour, clocks go forward: from the end of the day", "2026-03-29", "", "",
		"4", "2026-03-30T04:00+02:00" },
	{ "no hour, clocks go back", "2026-10-24", "", "", "4",
		"2026-10-25T03:00+01:00" },
};

static void what_is_typed_bars_to_the_minute(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof spans / sizeof *spans; i++) {
		const struct span_row *row = &spans[i];
		struct instant free_at;
		char brief[80], clock[16];
		struct fixture f;
		fixture_open(&f);
		set_clocks(&f);
		fixture_read(&f, row->date);
		struct entry *r = act(&f, ENTRY_TREATMENTS, row->date);
		form_type(r, "started_at", row->began);
		form_type(r, "ended_at", row->ended);
		form_type(r, "rei_hours", row->rei);
		form_put(r, f.book, &f.log);
		assert_true(instant_read(row->free, &free_at));
		snprintf(clock, sizeof clock, "%.5s", row->free + 11);
		if (!barred_at(&f, free_at.minute - 1, brief, sizeof brief) ||
			!strstr(brief, clock))
			fail_msg("%s: \"%s\" the minute before %s", row->why, brief,
				row->free);
		if (barred_at(&f, free_at.minute, brief, sizeof brief))
			fail_msg("%s: \"%s\" at %s", row->why, brief, row->free);
		free(r);
		fixture_close(&f);
	}
}

/* What was typed on a clock stands with what that clock was ahead of UTC. */
static void a_form_shows_the_hour_as_it_was_on_the_clocks_of_that_day(void **state)
{
	static const struct {
		const char *why, *date, *typed, *shown;
	} row[] = {
		{ "summer", "2026-10-24", "22:00", "2026-10-24T22:00+02:00" },
		{ "winter", "2026-10-26", "22:00", "2026-10-26T22:00+01:00" },
		{ "the first of two hours", "2026-10-25", "2026-10-25T02:30+02:00",
			"2026-10-25T02:30+02:00" },
		{ "the second", "2026-10-25", "2026-10-25T02:30+01:00",
			"2026-10-25T02:30+01:00" },
		{ "elsewhere", "2026-07-20", "2026-07-20T07:00-07:00",
			"2026-07-20T07:00-07:00" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		fixture_open(&f);
		set_clocks(&f);
		fixture_read(&f, "2026-10-26");
		struct entry *r = act(&f, ENTRY_TREATMENTS, row[i].date);
		form_type(r, "ended_at", row[i].typed);
		form_put(r, f.book, &f.log);
		struct entry *again = form_of(f.book, &f.log, ENTRY_TREATMENTS, r->id);
		if (strcmp(form_text(again, "ended_at"), row[i].shown) != 0)
			fail_msg("%s: %s", row[i].why, form_text(again, "ended_at"));
		free(again);
		free(r);
		fixture_close(&f);
	}
}

/* Of each row the last day on which a pick is asked about and the first on which
 * not. */
static void a_pick_on_the_last_barred_day_asks_and_on_the_first_free_one_does_not(
	void **state)
{
	static const struct {
		const char *why, *date, *phi, *barred, *free;
	} row[] = {
		{ "within a month", "2026-08-05", "14", "2026-08-18", "2026-08-19" },
		{ "into the next", "2026-08-20", "14", "2026-09-02", "2026-09-03" },
		{ "into the next year", "2026-12-30", "3", "2027-01-01", "2027-01-02" },
		{ "a leap day is a day", "2028-02-27", "3", "2028-02-29",
			"2028-03-01" },
		{ "to the leap day", "2028-02-27", "2", "2028-02-28", "2028-02-29" },
		{ "no leap year", "2027-02-27", "2", "2027-02-28", "2027-03-01" },
		{ "clocks go forward", "2026-03-27", "3", "2026-03-29", "2026-03-30" },
		{ "clocks go back", "2026-10-23", "3", "2026-10-25", "2026-10-26" },
		{ "the day itself", "2026-08-05", "1", "2026-08-05", "2026-08-06" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char says[256];
		struct fixture f;
		fixture_open(&f);
		set_clocks(&f);
		fixture_read(&f, row[i].date);
		struct entry *r = treatment(&f, row[i].date, "4", row[i].phi);
		form_put(r, f.book, &f.log);
		if (!asks_about(&f, row[i].barred, says, sizeof says) ||
			!strstr(says, "too early"))
			fail_msg("%s: \"%s\" on %s", row[i].why, says, row[i].barred);
		if (asks_about(&f, row[i].free, says, sizeof says))
			fail_msg("%s: \"%s\" on %s", row[i].why, says, row[i].free);
		free(r);
		fixture_close(&f);
	}
}

/* The longest of each rules, which may be of two products. */
static void a_tank_mix_bars_as_long_as_its_longest(void **state)
{
	static const struct {
		const char *why, *rei[2], *phi[2], *free;
		const char *barred_day, *free_day;
	} row[] = {
		{ "both of the first", { "24", "4" }, { "14", "1" },
			"2026-08-21T07:00+02:00", "2026-09-02", "2026-09-03" },
		{ "both of the second", { "4", "24" }, { "1", "14" },
			"2026-08-21T07:00+02:00", "2026-09-02", "2026-09-03" },
		{ "one of each", { "24", "4" }, { "1", "14" }, "2026-08-21T07:00+02:00",
			"2026-09-02", "2026-09-03" },
		{ "re-entry of one outlasts all days", { "72", "4" }, { "1", "2" },
			"2026-08-23T07:00+02:00", "2026-08-22", "2026-08-24" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct instant free_at;
		char says[256];
		struct fixture f;
		fixture_open(&f);
		set_clocks(&f);
		fixture_read(&f, "2026-08-20");
		for (int k = 0; k < 2; k++) {
			struct entry *r = treatment(
				&f, "2026-08-20", row[i].rei[k], row[i].phi[k]);
			form_put(r, f.book, &f.log);
			free(r);
		}
		assert_true(instant_read(row[i].free, &free_at));
		if (!barred_at(&f, free_at.minute - 1, says, sizeof says) ||
			barred_at(&f, free_at.minute, says, sizeof says))
			fail_msg("%s: not barred until %s", row[i].why, row[i].free);
		if (!asks_about(&f, row[i].barred_day, says, sizeof says) ||
			asks_about(&f, row[i].free_day, says, sizeof says))
			fail_msg("%s: \"%s\"", row[i].why, says);
		fixture_close(&f);
	}
}

/* A product of which an interval was not entered does not shorten the other's. */
static void in_a_mix_what_was_not_entered_stays_open(void **state)
{
	struct fixture f;
	char says[256];

	(void)state;
	fixture_open(&f);
	set_clocks(&f);
	fixture_read(&f, "2026-08-20");
	for (int k = 0; k < 2; k++) {
		struct entry *r =
			treatment(&f, "2026-08-20", k ? "" : "24", k ? "" : "14");
		form_put(r, f.book, &f.log);
		free(r);
	}
	assert_true(barred_at(
		&f, acts_at(&f, "2026-08-21 06:59").minute, says, sizeof says));
	assert_string_equal(says, "no entry till Fri 07:00, then not known");
	assert_true(barred_at(
		&f, acts_at(&f, "2026-08-21 07:00").minute, says, sizeof says));
	assert_string_equal(says, "entry not known");
	assert_true(asks_about(&f, "2026-09-03", says, sizeof says));
	assert_non_null(strstr(says, "not known"));
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(what_is_typed_bars_to_the_minute),
		cmocka_unit_test(
			a_form_shows_the_hour_as_it_was_on_the_clocks_of_that_day),
		cmocka_unit_test(
			a_pick_on_the_last_barred_day_asks_and_on_the_first_free_one_does_not),
		cmocka_unit_test(a_tank_mix_bars_as_long_as_its_longest),
		cmocka_unit_test(in_a_mix_what_was_not_entered_stays_open),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
