/* Waiting times against published examples and rules. Each source stands beside its
 * check; common practice is marked as such. */
#include "season/waiting.h"

#include "season/typed.h"

struct pick_example {
	const char *why, *source;
	struct typed typed[TYPED_MAX];
	const char *day;
	enum waiting_state want;
	const char *earliest, *from;
};

static const char practice[] = "common practice, no source";

/* WSU Crop Protection Guide, entry and preharvest intervals. */
static const char wsu[] = "WSU Crop Protection Guide: where the restricted-entry "
			  "interval is longer than the preharvest interval, no "
			  "harvest until it ends";

static const char wsu_mix[] = "WSU Crop Protection Guide; 40 CFR 170.112 (older "
			      "section): in a tank mix the longest restricted-entry "
			      "interval holds";

static const char npic[] = "NPIC, preharvest interval: no picking before it is over; "
			   "products for the same crop differ; 0 days exist";

static const struct pick_example picks[] = {
	{ "treated 20 August, 14 days: 30 August is barred", practice,
		{ { "2026-08-20", "", "2026-08-20 10:30", 12, 14 } }, "2026-08-30",
		WAITING_BARRED, "2026-09-03", "" },
	{ "the day before the earliest pick", practice,
		{ { "2026-08-20", "", "2026-08-20 10:30", 12, 14 } }, "2026-09-02",
		WAITING_BARRED, "2026-09-03", "" },
	{ "the earliest pick, 3 September", practice,
		{ { "2026-08-20", "", "2026-08-20 10:30", 12, 14 } }, "2026-09-03",
		WAITING_FREE, "2026-09-03", "" },
	{ "4 September is free", practice,
		{ { "2026-08-20", "", "2026-08-20 10:30", 12, 14 } }, "2026-09-04",
		WAITING_FREE, "2026-09-03", "" },
	{ "72 hours against 48: no picking after 48", wsu,
		{ { "2026-08-20", "", "2026-08-20 00:00", 72, 2 } }, "2026-08-22",
		WAITING_BARRED, "2026-08-23", "2026-08-23 00:00" },
	{ "72 hours against 48: after 72", wsu,
		{ { "2026-08-20", "", "2026-08-20 00:00", 72, 2 } }, "2026-08-23",
		WAITING_FREE, "2026-08-23", "2026-08-23 00:00" },
	{ "72 hours against 48, ended in the morning", wsu,
		{ { "2026-08-20", "", "2026-08-20 10:30", 72, 2 } }, "2026-08-23",
		WAITING_FROM, "2026-08-23", "2026-08-23 10:30" },
	{ "two products, 7 and 14 days: the longer one rules", npic,
		{ { "2026-08-20", "", "2026-08-20 10:30", 12, 7 },
			{ "2026-08-20", "", "2026-08-20 10:30", 12, 14 } },
		"2026-09-02", WAITING_BARRED, "2026-09-03", "" },
	{ "0 days are an interval, that of a blank is not known", npic,
		{ { "2026-08-20", "", "2026-08-20 10:30", 4, 0 } }, "2026-08-21",
		WAITING_FREE, "2026-08-20", "2026-08-20 14:30" },
	{ "a blank", npic, { { "2026-08-20", "", "2026-08-20 10:30", 4, -1 } },
		"2026-08-21", WAITING_UNKNOWN, "", "" },
};

static void picks_wait_as_the_sources_say(void **state)
{
	struct zone z = clocks_zone(CLOCKS_WEST);

	(void)state;
	for (size_t i = 0; i < COUNT_OF(picks); i++) {
		const struct pick_example *p = &picks[i];
		struct treatment t[TYPED_MAX];
		size_t n = typed_read(p->typed, &z, t);
		int32_t day = DAY_NONE, earliest = DAY_NONE;
		day_parse(p->day, &day);
		day_parse(p->earliest, &earliest);
		struct pick_wait w = waiting_pick(t, n, &z, day);
		if (w.state != p->want || w.earliest != earliest ||
			w.from.minute != clocks_at(&z, p->from).minute)
			fail_msg("%s (%s): %s, %d days off", p->why, p->source,
				state_words[w.state], (int)(w.earliest - earliest));
	}
}

struct entry_example {
	const char *why, *source;
	struct typed typed[TYPED_MAX];
	const char *now, *until; /* "": free */
};

static const struct entry_example entries[] = {
	{ "ended 10:30, 12 hours: last barred minute", practice,
		{ { "2026-08-20", "", "2026-08-20 10:30", 12, 14 } },
		"2026-08-20 22:29", "2026-08-20 22:30" },
	{ "ended 10:30, 12 hours: clear at 22:30", practice,
		{ { "2026-08-20", "", "2026-08-20 10:30", 12, 14 } },
		"2026-08-20 22:30", "" },
	{ "counted from the end, not from the begin", practice,
		{ { "2026-08-20", "2026-08-20 06:00", "2026-08-20 10:30", 12, 14 } },
		"2026-08-20 18:00", "2026-08-20 22:30" },
	{ "a tank mix of 4 and 48 hours", wsu_mix,
		{ { "2026-08-20", "", "2026-08-20 10:30", 4, 14 },
			{ "2026-08-20", "", "2026-08-20 10:30", 48, 14 } },
		"2026-08-20 14:30", "2026-08-22 10:30" },
	{ "the same the other way round", wsu_mix,
		{ { "2026-08-20", "", "2026-08-20 10:30", 48, 14 },
			{ "2026-08-20", "", "2026-08-20 10:30", 4, 14 } },
		"2026-08-20 14:30", "2026-08-22 10:30" },
};

static void entry_waits_as_the_sources_say(void **state)
{
	struct zone z = clocks_zone(CLOCKS_WEST);

	(void)state;
	for (size_t i = 0; i < COUNT_OF(entries); i++) {
		const struct entry_example *p = &entries[i];
		struct treatment t[TYPED_MAX];
		size_t n = typed_read(p->typed, &z, t);
		struct waiting w = waiting_entry(t, n, &z, clocks_at(&z, p->now));
		char until[INSTANT_SIZE];
		instant_write(w.until, until);
		if (w.until.minute != clocks_at(&z, p->until).minute ||
			(w.state == WAITING_FREE) != (p->until[0] == '\0'))
			fail_msg("%s (%s): %s %s", p->why, p->source,
				state_words[w.state], until);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(picks_wait_as_the_sources_say),
		cmocka_unit_test(entry_waits_as_the_sources_say),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
