#include "season/waiting.h"

#include "season/typed.h"

/* "barred 2026-09-03 0 re-entry 2026-09-03T10:30-07:00 ?1": state, earliest, the one
 * that decides, when its re-entry does from when on, the one that is not known. */
static void pick_words(const struct pick_wait *w, char out[96])
{
	char day[DAY_ISO_SIZE], from[INSTANT_SIZE], decides[8] = "", unknown[8] = "";

	day_iso(w->earliest, day);
	instant_write(w->from, from);
	if (w->treatment >= 0)
		snprintf(decides, sizeof decides, " %d", w->treatment % 1000);
	if (w->unknown >= 0)
		snprintf(unknown, sizeof unknown, " ?%d", w->unknown % 1000);
	snprintf(out, 96, "%s%s%s%s%s%s%s", state_words[w->state], day[0] ? " " : "",
		day, decides, w->by_reentry ? " re-entry " : "", from, unknown);
}

struct pick_row {
	const char *why;
	struct typed typed[TYPED_MAX];
	const char *day, *want;
};

static void check_pick(enum clocks clocks, const struct pick_row *row)
{
	struct zone z = clocks_zone(clocks);
	struct treatment t[TYPED_MAX];
	size_t n = typed_read(row->typed, &z, t);
	int32_t day = DAY_NONE;
	char got[96];

	day_parse(row->day, &day);
	struct pick_wait w = waiting_pick(t, n, &z, day);
	pick_words(&w, got);
	if (strcmp(got, row->want) != 0)
		fail_msg("%s: %s, not %s", row->why, got, row->want);
}

static void a_pick_waits_for_the_day_and_the_interval(void **state)
{
	static const struct pick_row row[] = {
		{ "nothing was done", { { 0 } }, "2026-08-30", "free" },
		{ "the day before", { MORNING }, "2026-08-19", "free" },
		{ "the day itself", { MORNING }, "2026-08-20", "barred 2026-09-03 0" },
		{ "last barred day", { MORNING }, "2026-09-02", "barred 2026-09-03 0" },
		{ "first free day", { MORNING }, "2026-09-03", "free 2026-09-03 0" },
		{ "long after it", { MORNING }, "2027-09-03", "free 2026-09-03 0" },
		{ "29 February is a day, last barred",
			{ { "2028-02-28", "", "2028-02-28 10:30", 12, 3 } },
			"2028-03-01", "barred 2028-03-02 0" },
		{ "29 February is a day, first free",
			{ { "2028-02-28", "", "2028-02-28 10:30", 12, 3 } },
			"2028-03-02", "free 2028-03-02 0" },
		{ "no 29 February", { { "2027-02-28", "", "2027-02-28 10:30", 12, 3 } },
			"2027-03-03", "free 2027-03-03 0" },
		{ "over the new year",
			{ { "2026-12-30", "", "2026-12-30 10:30", 12, 7 } },
			"2027-01-05", "barred 2027-01-06 0" },
		{ "ended after midnight: the day on which it ended",
			{ { "2026-08-21", "2026-08-20 23:00", "2026-08-21 01:00", 12,
				14 } },
			"2026-09-03", "barred 2026-09-04 0" },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		check_pick(CLOCKS_WEST, &row[i]);
}

static void a_pick_waits_for_re_entry_as_well(void **state)
{
	static const struct pick_row row[] = {
		{ "72 hours against 2 days, the second day",
			{ { "2026-08-20", "", "2026-08-20 10:30", 72, 2 } },
			"2026-08-22",
			"barred 2026-08-23 0 re-entry 2026-08-23T10:30-07:00" },
		{ "the third day, but only from half past ten on",
			{ { "2026-08-20", "", "2026-08-20 10:30", 72, 2 } },
			"2026-08-23",
			"from 2026-08-23 0 re-entry 2026-08-23T10:30-07:00" },
		{ "the fourth", { { "2026-08-20", "", "2026-08-20 10:30", 72, 2 } },
			"2026-08-24",
			"free 2026-08-23 0 re-entry 2026-08-23T10:30-07:00" },
		{ "12 hours against 0 days: that evening",
			{ { "2026-08-20", "", "2026-08-20 10:30", 12, 0 } },
			"2026-08-20",
			"from 2026-08-20 0 re-entry 2026-08-20T22:30-07:00" },
		{ "12 hours against 1 day, over before it",
			{ { "2026-08-20", "", "2026-08-20 12:00", 12, 1 } },
			"2026-08-21", "free 2026-08-21 0" },
		{ "a minute into the day",
			{ { "2026-08-20", "", "2026-08-20 12:01", 12, 1 } },
			"2026-08-21",
			"from 2026-08-21 0 re-entry 2026-08-21T00:01-07:00" },
		{ "no hour: from the end of the day",
			{ { "2026-08-20", "", "", 24, 0 } }, "2026-08-21",
			"barred 2026-08-22 0 re-entry 2026-08-22T00:00-07:00" },
		{ "no hour, the first day", { { "2026-08-20", "", "", 24, 0 } },
			"2026-08-22",
			"free 2026-08-22 0 re-entry 2026-08-22T00:00-07:00" },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		check_pick(CLOCKS_WEST, &row[i]);
}

static void what_was_not_entered_bars_no_day_and_frees_none(void **state)
{
	static const struct pick_row row[] = {
		{ "no PHI", { { "2026-08-20", "", "2026-08-20 10:30", 12, -1 } },
			"2026-08-30", "unknown 0 ?0" },
		{ "no PHI, but re-entry bars",
			{ { "2026-08-20", "", "2026-08-20 10:30", 48, -1 } },
			"2026-08-21",
			"barred 2026-08-22 0 re-entry 2026-08-22T10:30-07:00 ?0" },
		{ "no PHI, the day on which re-entry ends",
			{ { "2026-08-20", "", "2026-08-20 10:30", 48, -1 } },
			"2026-08-22", "unknown 0 ?0" },
		{ "no PHI, the last day on which one could count",
			{ { "2026-08-20", "", "2026-08-20 10:30", 12, -1 } },
			"2027-08-20", "unknown 0 ?0" },
		{ "no PHI, a day later",
			{ { "2026-08-20", "", "2026-08-20 10:30", 12, -1 } },
			"2027-08-21",
			"free 2026-08-20 0 re-entry 2026-08-20T22:30-07:00" },
		{ "no REI, the PHI bars",
			{ { "2026-08-20", "", "2026-08-20 10:30", -1, 14 } },
			"2026-09-02", "barred 2026-09-03 0 ?0" },
		{ "no REI, the PHI is over",
			{ { "2026-08-20", "", "2026-08-20 10:30", -1, 14 } },
			"2026-09-03", "unknown 0 ?0" },
		{ "no REI, 30 days later",
			{ { "2026-08-20", "", "2026-08-20 10:30", -1, 14 } },
			"2026-09-20", "free 2026-09-03 0" },
		{ "no REI, the PHI is longer than that",
			{ { "2026-08-20", "", "2026-08-20 10:30", -1, 60 } },
			"2026-10-18", "barred 2026-10-19 0" },
		{ "neither, before it",
			{ { "2026-08-20", "", "2026-08-20 10:30", -1, -1 } },
			"2026-08-19", "free" },
		{ "no day", { { "", "", "", 12, 14 } }, "2026-08-30", "unknown 0 ?0" },
		{ "no day asked", { MORNING }, "", "unknown" },
		{ "no day asked, nothing was done", { { 0 } }, "", "free" },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		check_pick(CLOCKS_WEST, &row[i]);
}

static void of_several_the_last_to_free_it_rules(void **state)
{
	static const struct pick_row row[] = {
		{ "a tank mix",
			{ MORNING, { "2026-08-20", "2026-08-20 08:00",
					   "2026-08-20 10:30", 4, 21 } },
			"2026-08-30", "barred 2026-09-10 1" },
		{ "an early one that lasts longer",
			{ { "2026-08-01", "", "2026-08-01 10:30", 12, 45 }, MORNING },
			"2026-08-30", "barred 2026-09-15 0" },
		{ "the re-entry of one, the PHI of the other",
			{ { "2026-08-20", "", "2026-08-20 10:30", 96, 0 },
				{ "2026-08-20", "", "2026-08-20 10:30", 4, 3 } },
			"2026-08-23",
			"barred 2026-08-24 0 re-entry 2026-08-24T10:30-07:00" },
		{ "one after the pick does not bar it",
			{ MORNING, { "2026-09-04", "", "2026-09-04 10:30", 12, 7 } },
			"2026-09-03", "free 2026-09-03 0" },
		{ "but moves the day that would come after it",
			{ MORNING, { "2026-09-02", "", "2026-09-02 10:30", 12, 7 } },
			"2026-08-30", "barred 2026-09-09 1" },
		{ "also one on that day itself",
			{ MORNING, { "2026-09-03", "", "2026-09-03 10:30", 12, 7 } },
			"2026-08-30", "barred 2026-09-10 1" },
		{ "not one that is later still",
			{ MORNING, { "2026-09-04", "", "2026-09-04 10:30", 12, 7 } },
			"2026-08-30", "barred 2026-09-03 0" },
		{ "one bars, the other is not known",
			{ MORNING, { "2026-08-21", "", "2026-08-21 10:30", 12, -1 } },
			"2026-08-30", "barred 2026-09-03 0 ?1" },
		{ "then it is not known",
			{ MORNING, { "2026-08-21", "", "2026-08-21 10:30", 12, -1 } },
			"2026-09-03", "unknown 1 ?1" },
		{ "both are over: the later end is told",
			{ { "2026-08-01", "", "2026-08-01 10:30", 12, 3 }, MORNING },
			"2026-09-30", "free 2026-09-03 1" },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		check_pick(CLOCKS_WEST, &row[i]);
}

static void days_are_days_when_clocks_change(void **state)
{
	static const struct {
		enum clocks clocks;
		struct pick_row row;
	} row[] = {
		{ CLOCKS_HOUR,
			{ "forward, last barred",
				{ { "2026-03-28", "", "2026-03-28 10:30", 12, 2 } },
				"2026-03-29", "barred 2026-03-30 0" } },
		{ CLOCKS_HOUR,
			{ "forward, first free",
				{ { "2026-03-28", "", "2026-03-28 10:30", 12, 2 } },
				"2026-03-30", "free 2026-03-30 0" } },
		{ CLOCKS_HOUR,
			{ "back, last barred",
				{ { "2026-10-24", "", "2026-10-24 10:30", 12, 2 } },
				"2026-10-25", "barred 2026-10-26 0" } },
		{ CLOCKS_HOUR,
			{ "back, first free",
				{ { "2026-10-24", "", "2026-10-24 10:30", 12, 2 } },
				"2026-10-26", "free 2026-10-26 0" } },
		{ CLOCKS_MIDNIGHT,
			{ "a day that begins at one",
				{ { "2026-09-05", "", "2026-09-05 10:30", 12, 1 } },
				"2026-09-06", "free 2026-09-06 0" } },
		{ CLOCKS_MIDNIGHT,
			{ "the day before a day that begins at one",
				{ { "2026-09-05", "", "2026-09-05 10:30", 12, 1 } },
				"2026-09-05", "barred 2026-09-06 0" } },
		{ CLOCKS_MIDNIGHT,
			{ "an evening shown twice",
				{ { "2026-04-04", "", "2026-04-04 10:30", 12, 1 } },
				"2026-04-05", "free 2026-04-05 0" } },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		check_pick(row[i].clocks, &row[i].row);
}

static int roll(uint32_t *seed, int n)
{
	*seed = *seed * 1664525U + 1013904223U;
	return (int)((*seed >> 8) % (uint32_t)n);
}

static struct treatment any_treatment(uint32_t *seed, const struct zone *z)
{
	struct treatment t = treatment_blank;

	t.day = day_from_ymd(2026, 3, 1) + roll(seed, 40);
	if (roll(seed, 2))
		t.until = zone_local(z, t.day, roll(seed, MINUTES_A_DAY));
	t.rei_hours = roll(seed, 5) ? roll(seed, 100) : -1;
	t.phi_days = roll(seed, 5) ? roll(seed, 30) : -1;
	return t;
}

/* Against each treatment alone, by the rule as it is said. */
static void no_day_is_free_that_a_treatment_bars(void **state)
{
	struct zone z = clocks_zone(CLOCKS_HOUR);
	uint32_t seed = 9;

	(void)state;
	for (int round = 0; round < 5000; round++) {
		struct treatment t[TYPED_MAX];
		int32_t day = day_from_ymd(2026, 3, 1) + roll(&seed, 70);
		bool inside = false, unknown = false;
		for (int i = 0; i < TYPED_MAX; i++) {
			t[i] = any_treatment(&seed, &z);
			inside |= t[i].day <= day && t[i].phi_days > day - t[i].day;
			unknown |= t[i].day <= day && t[i].phi_days < 0;
		}
		struct pick_wait w = waiting_pick(t, TYPED_MAX, &z, day);
		if (inside)
			assert_int_equal(w.state, WAITING_BARRED);
		if (unknown)
			assert_true(w.state != WAITING_FREE && w.unknown >= 0);
		if (w.state != WAITING_BARRED || w.unknown >= 0)
			continue;
		assert_true(w.earliest > day);
		w = waiting_pick(t, TYPED_MAX, &z, w.earliest);
		assert_true(w.state == WAITING_FREE || w.state == WAITING_FROM);
		w = waiting_pick(t, TYPED_MAX, &z, w.earliest - 1);
		assert_true(w.state != WAITING_FREE && w.state != WAITING_FROM);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_pick_waits_for_the_day_and_the_interval),
		cmocka_unit_test(a_pick_waits_for_re_entry_as_well),
		cmocka_unit_test(what_was_not_entered_bars_no_day_and_frees_none),
		cmocka_unit_test(of_several_the_last_to_free_it_rules),
		cmocka_unit_test(days_are_days_when_clocks_change),
		cmocka_unit_test(no_day_is_free_that_a_treatment_bars),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
