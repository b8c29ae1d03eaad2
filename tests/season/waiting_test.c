#include "season/waiting.h"

#include "season/typed.h"

/* "barred 2026-08-20T22:30-07:00 0 ?1": state, until, the one that decides, the one
 * that is not known. */
static void entry_words(const struct waiting *w, char out[96])
{
	char until[INSTANT_SIZE], decides[8] = "", unknown[8] = "";

	instant_write(w->until, until);
	if (w->treatment >= 0)
		snprintf(decides, sizeof decides, " %d", w->treatment % 1000);
	if (w->unknown >= 0)
		snprintf(unknown, sizeof unknown, " ?%d", w->unknown % 1000);
	snprintf(out, 96, "%s%s%s%s%s", state_words[w->state], until[0] ? " " : "",
		until, decides, unknown);
}

struct entry_row {
	const char *why;
	struct typed typed[TYPED_MAX];
	const char *now, *want;
};

static void check_entry(enum clocks clocks, const struct entry_row *row)
{
	struct zone z = clocks_zone(clocks);
	struct treatment t[TYPED_MAX];
	size_t n = typed_read(row->typed, &z, t);
	struct waiting w = waiting_entry(t, n, &z, clocks_at(&z, row->now));
	char got[96];

	entry_words(&w, got);
	if (strcmp(got, row->want) != 0)
		fail_msg("%s: %s, not %s", row->why, got, row->want);
}

static void entry_waits_for_the_interval_from_the_end(void **state)
{
	static const struct entry_row row[] = {
		{ "nothing was done", { { 0 } }, "2026-08-20 09:00", "free" },
		{ "not begun", { MORNING }, "2026-08-20 07:59", "free" },
		{ "it runs", { MORNING }, "2026-08-20 08:00",
			"barred 2026-08-20T22:30-07:00 0" },
		{ "last barred minute", { MORNING }, "2026-08-20 22:29",
			"barred 2026-08-20T22:30-07:00 0" },
		{ "first free minute", { MORNING }, "2026-08-20 22:30", "free" },
		{ "over midnight, last barred",
			{ { "2026-08-20", "", "2026-08-20 22:00", 12, 0 } },
			"2026-08-21 09:59", "barred 2026-08-21T10:00-07:00 0" },
		{ "over midnight, first free",
			{ { "2026-08-20", "", "2026-08-20 22:00", 12, 0 } },
			"2026-08-21 10:00", "free" },
		{ "begun before midnight",
			{ { "2026-08-21", "2026-08-20 23:00", "2026-08-21 01:00", 4,
				0 } },
			"2026-08-20 23:00", "barred 2026-08-21T05:00-07:00 0" },
		{ "over the end of a month, last barred",
			{ { "2026-08-31", "", "2026-08-31 12:00", 48, 0 } },
			"2026-09-02 11:59", "barred 2026-09-02T12:00-07:00 0" },
		{ "over the end of a month, first free",
			{ { "2026-08-31", "", "2026-08-31 12:00", 48, 0 } },
			"2026-09-02 12:00", "free" },
		{ "over 29 February, last barred",
			{ { "2028-02-28", "", "2028-02-28 12:00", 48, 0 } },
			"2028-03-01 11:59", "barred 2028-03-01T12:00-07:00 0" },
		{ "over 29 February, first free",
			{ { "2028-02-28", "", "2028-02-28 12:00", 48, 0 } },
			"2028-03-01 12:00", "free" },
		{ "over the new year",
			{ { "2026-12-31", "", "2026-12-31 18:00", 24, 0 } },
			"2027-01-01 17:59", "barred 2027-01-01T18:00-07:00 0" },
		{ "0 hours bar as long as it runs",
			{ { "2026-08-20", "2026-08-20 08:00", "2026-08-20 10:30", 0,
				0 } },
			"2026-08-20 10:29", "barred 2026-08-20T10:30-07:00 0" },
		{ "and no longer",
			{ { "2026-08-20", "2026-08-20 08:00", "2026-08-20 10:30", 0,
				0 } },
			"2026-08-20 10:30", "free" },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		check_entry(CLOCKS_WEST, &row[i]);
}

static void entry_waits_whole_hours_when_clocks_change(void **state)
{
	static const struct entry_row row[] = {
		{ "forward, last barred",
			{ { "2026-03-28", "", "2026-03-28 22:00", 12, 0 } },
			"2026-03-29 10:59", "barred 2026-03-29T11:00+02:00 0" },
		{ "forward, first free",
			{ { "2026-03-28", "", "2026-03-28 22:00", 12, 0 } },
			"2026-03-29 11:00", "free" },
		{ "back, last barred",
			{ { "2026-10-24", "", "2026-10-24 22:00", 12, 0 } },
			"2026-10-25 08:59", "barred 2026-10-25T09:00+01:00 0" },
		{ "back, first free",
			{ { "2026-10-24", "", "2026-10-24 22:00", 12, 0 } },
			"2026-10-25 09:00", "free" },
		{ "ended in an hour shown twice: the later one",
			{ { "2026-10-25", "", "2026-10-25 02:30", 4, 0 } },
			"2026-10-25 06:29", "barred 2026-10-25T06:30+01:00 0" },
		{ "ended in an hour that no clock shows: the later one",
			{ { "2026-03-29", "", "2026-03-29 02:30", 4, 0 } },
			"2026-03-29 07:29", "barred 2026-03-29T07:30+02:00 0" },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		check_entry(CLOCKS_HOUR, &row[i]);
}

static void what_was_not_entered_is_not_zero(void **state)
{
	static const struct entry_row row[] = {
		{ "no hours: from the beginning of the day",
			{ { "2026-08-20", "", "", 12, 14 } }, "2026-08-20 00:00",
			"barred 2026-08-21T12:00-07:00 0" },
		{ "and not before", { { "2026-08-20", "", "", 12, 14 } },
			"2026-08-19 23:59", "free" },
		{ "to the interval after its end, last barred",
			{ { "2026-08-20", "", "", 12, 14 } }, "2026-08-21 11:59",
			"barred 2026-08-21T12:00-07:00 0" },
		{ "first free", { { "2026-08-20", "", "", 12, 14 } },
			"2026-08-21 12:00", "free" },
		{ "no hour of its end",
			{ { "2026-08-20", "2026-08-20 08:00", "", 12, 14 } },
			"2026-08-20 08:00", "barred 2026-08-21T12:00-07:00 0" },
		{ "no hour of its begin",
			{ { "2026-08-20", "", "2026-08-20 10:30", 12, 14 } },
			"2026-08-20 00:00", "barred 2026-08-20T22:30-07:00 0" },
		{ "0 hours after an unknown hour", { { "2026-08-20", "", "", 0, 14 } },
			"2026-08-20 23:59", "barred 2026-08-21T00:00-07:00 0" },
		{ "no interval", { { "2026-08-20", "", "2026-08-20 10:30", -1, 14 } },
			"2026-08-20 12:00", "unknown 0 ?0" },
		{ "no interval, not begun",
			{ { "2026-08-20", "", "2026-08-20 10:30", -1, 14 } },
			"2026-08-19 12:00", "free" },
		{ "no interval, last unknown minute",
			{ { "2026-08-20", "", "2026-08-20 10:30", -1, 14 } },
			"2026-09-19 10:29", "unknown 0 ?0" },
		{ "no interval, 30 days later",
			{ { "2026-08-20", "", "2026-08-20 10:30", -1, 14 } },
			"2026-09-19 10:30", "free" },
		{ "no day", { { "", "", "", 12, 14 } }, "2026-08-20 12:00",
			"unknown 0 ?0" },
		{ "the clock is not known", { MORNING }, "", "unknown" },
		{ "the clock is not known, nothing was done", { { 0 } }, "", "free" },
		{ "an end before its begin is not believed",
			{ { "2026-08-20", "2026-08-20 18:00", "2026-08-20 10:30", 12,
				14 } },
			"2026-08-20 12:00", "barred 2026-08-20T22:30-07:00 0" },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		check_entry(CLOCKS_WEST, &row[i]);
}

static void of_several_the_longest_rules(void **state)
{
	static const struct entry_row row[] = {
		{ "a tank mix",
			{ MORNING, { "2026-08-20", "2026-08-20 08:00",
					   "2026-08-20 10:30", 48, 3 } },
			"2026-08-20 12:00", "barred 2026-08-22T10:30-07:00 1" },
		{ "the other way round",
			{ { "2026-08-20", "2026-08-20 08:00", "2026-08-20 10:30", 48,
				  3 },
				MORNING },
			"2026-08-20 12:00", "barred 2026-08-22T10:30-07:00 0" },
		{ "an earlier one that lasts longer",
			{ { "2026-08-18", "", "2026-08-18 10:30", 96, 3 }, MORNING },
			"2026-08-20 12:00", "barred 2026-08-22T10:30-07:00 0" },
		{ "one begins before the other is over",
			{ MORNING, { "2026-08-20", "2026-08-20 20:00",
					   "2026-08-20 21:00", 4, 3 } },
			"2026-08-20 12:00", "barred 2026-08-21T01:00-07:00 1" },
		{ "one begins when the other is over",
			{ MORNING, { "2026-08-20", "2026-08-20 22:30",
					   "2026-08-20 23:00", 4, 3 } },
			"2026-08-20 12:00", "barred 2026-08-21T03:00-07:00 1" },
		{ "one begins a minute later",
			{ MORNING, { "2026-08-20", "2026-08-20 22:31",
					   "2026-08-20 23:00", 4, 3 } },
			"2026-08-20 12:00", "barred 2026-08-20T22:30-07:00 0" },
		{ "known until then, not known after",
			{ MORNING, { "2026-08-19", "", "2026-08-19 10:30", -1, 3 } },
			"2026-08-20 12:00", "barred 2026-08-20T22:30-07:00 0 ?1" },
		{ "then not known",
			{ MORNING, { "2026-08-19", "", "2026-08-19 10:30", -1, 3 } },
			"2026-08-20 22:30", "unknown 1 ?1" },
		{ "of two that are not known the later",
			{ { "2026-08-19", "", "2026-08-19 10:30", -1, 3 },
				{ "2026-08-18", "", "2026-08-18 10:30", -1, 3 } },
			"2026-08-20 12:00", "unknown 0 ?0" },
		{ "one that was free long ago",
			{ { "2026-08-01", "", "2026-08-01 10:30", 12, 3 }, MORNING },
			"2026-08-20 12:00", "barred 2026-08-20T22:30-07:00 1" },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		check_entry(CLOCKS_WEST, &row[i]);
}

static void a_border_bars_the_block(void **state)
{
	struct zone z = clocks_zone(CLOCKS_WEST);
	struct treatment t[TYPED_MAX];
	static const struct typed typed[TYPED_MAX] = { MORNING };

	(void)state;
	assert_int_equal(typed_read(typed, &z, t), 1);
	t[0].border = true;
	struct waiting w = waiting_entry(t, 1, &z, clocks_at(&z, "2026-08-20 12:00"));
	assert_int_equal(w.state, WAITING_BARRED);
}

/* On 25 October clocks show midnight at 0:00 UTC, and once more an hour later. */
static void a_day_begins_with_the_first_of_two_midnights(void **state)
{
	struct zone z = clocks_zone(CLOCKS_TWICE);
	int64_t first = clocks_minute(2026, 10, 25, 0, 0);
	struct treatment t = treatment_blank;

	(void)state;
	t.day = day_from_ymd(2026, 10, 25);
	t.rei_hours = 12;
	assert_int_equal(
		waiting_entry(&t, 1, &z, zone_at(&z, first - 1)).state, WAITING_FREE);
	assert_int_equal(
		waiting_entry(&t, 1, &z, zone_at(&z, first)).state, WAITING_BARRED);
}

/* Minute by minute around every step of the clocks. */
static void no_minute_of_the_interval_is_free(void **state)
{
	(void)state;
	for (int c = CLOCKS_UTC; c <= CLOCKS_WEST; c++) {
		struct zone z = clocks_zone((enum clocks)c);
		for (size_t s = 0; s < (z.n ? z.n : 1); s++) {
			int64_t end = (z.n ? z.steps[s].from : 0) - 90;
			struct treatment t = treatment_blank;
			t.until = zone_at(&z, end);
			t.from = zone_at(&z, end - 120);
			t.day = instant_day(t.until);
			t.rei_hours = 4;
			for (int64_t m = end - 200; m < end + 400; m++) {
				struct waiting w =
					waiting_entry(&t, 1, &z, zone_at(&z, m));
				bool barred = m >= end - 120 && m < end + 240;
				assert_int_equal(w.state == WAITING_BARRED, barred);
				assert_int_equal(w.state == WAITING_FREE, !barred);
			}
		}
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(entry_waits_for_the_interval_from_the_end),
		cmocka_unit_test(entry_waits_whole_hours_when_clocks_change),
		cmocka_unit_test(what_was_not_entered_is_not_zero),
		cmocka_unit_test(of_several_the_longest_rules),
		cmocka_unit_test(a_border_bars_the_block),
		cmocka_unit_test(a_day_begins_with_the_first_of_two_midnights),
		cmocka_unit_test(no_minute_of_the_interval_is_free),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
