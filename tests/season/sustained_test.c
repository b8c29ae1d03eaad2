#include "season/sustained.h"

#include "season/logs.h"

/* Weekly checks unless said otherwise. The first two are the worked examples of the
 * rule, ours: farm counts 0 0 1 0 2 5 9 and 3 6 1. */
static void the_first_sustained_catch_is_an_interval(void **state)
{
	static const struct {
		const char *why, *traps[LOGS_MAX];
		bool found;
		int after, by;
		bool or_earlier;
	} row[] = {
		{ "a stray moth, a zero, then a run",
			{ "0h 7c0 14c0 21c1 28c0 35c2 42c5 49c9" }, true, 28, 35,
			false },
		{ "at the very first check", { "0h 7c3 14c6 21c1" }, true, 0, 7, true },
		{ "never a moth", { "0h 7c0 14c0" }, false, 0, 0, false },
		{ "nothing read", { "0h 7x 14x" }, false, 0, 0, false },
		{ "no visit", { "" }, false, 0, 0, false },
		{ "the next check is not there yet", { "0h 7c0 14c3" }, false, 0, 0,
			false },
		{ "next check after 14 days", { "0h 7c0 14c1 28c1" }, true, 7, 14,
			false },
		{ "next check after 15", { "0h 7c0 14c1 29c1" }, false, 0, 0, false },
		{ "not read in between", { "0h 7c0 14c1 21x 28c1" }, true, 7, 14,
			false },
		{ "a skipped visit before", { "0h 7c0 14s 21c2 28c1" }, true, 7, 21,
			false },
		{ "a spoiled one before", { "0h 7c0 14x 21c2 28c2" }, true, 7, 21,
			false },
		{ "nothing read before", { "0h 7x 14c1 21c1" }, true, 0, 14, true },
		{ "moths on a spoiled card were there", { "0h 7c0 14x2 21c1" }, true, 7,
			14, false },
		{ "a full card", { "0h 7c0 14f30 21c0 28f30 35c1" }, true, 21, 28,
			false },
		{ "a run over two days",
			{ "0h 7c0 14c1 21c0 28c2 35c1", "1h 8c0 15c0 22c0 29c0 36c1" },
			true, 21, 28, false },
		{ "the second day of a run is no next check",
			{ "0h 7c0 14c1 21c0", "1h 8c0 15c1 22c0" }, false, 0, 0,
			false },
		{ "two traps take turns", { "0h 7c0 14c1 21c0", "0h 7c0 14c0 21c1" },
			true, 7, 14, false },
		{ "a trap read less often may have caught before",
			{ "0h 7c0 14c0 21c1 28c1", "0h 7c0 28c3" }, true, 7, 21,
			false },
		{ "a trap hung later does not",
			{ "0h 7c0 14c0 21c0 28c0", "21h 28c1 35c1" }, true, 21, 28,
			false },
		{ "hung where another was lost", { "0h 7c0 14m", "14h 21c1 28c1" },
			true, 7, 21, false },
		{ "spoiled while others were read",
			{ "0h 7c0 14x 21c1 28c1", "0h 7c0 14c0 21c0 28c0" }, true, 7,
			21, false },
		{ "read daily", { "0h 1c0 2c0 3c1 4c2 5c0" }, true, 2, 3, false },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct sustained s = { 0 };
		struct logs l;
		logs_read(&l, row[i].traps);
		bool found = flight_sustained(l.list, l.n, log_day(0), log_day(99), &s);
		logs_free(&l);
		if (found != row[i].found)
			fail_msg("%s: %s", row[i].why, found ? "found" : "none");
		if (found && (s.after != log_day(row[i].after) ||
				     s.by != log_day(row[i].by) ||
				     s.or_earlier != row[i].or_earlier))
			fail_msg("%s: (%d, %d] %d", row[i].why,
				(int)(s.after - log_day(0)), (int)(s.by - log_day(0)),
				s.or_earlier);
	}
}

static void checks_outside_the_season_are_not_looked_at(void **state)
{
	static const struct {
		const char *why;
		int first, last;
		bool found;
		int by;
	} row[] = {
		{ "all of it", 0, 35, true, 14 },
		{ "up to the confirming check", 0, 21, true, 14 },
		{ "up to the day before it", 0, 20, false, 0 },
		{ "from the catch on", 14, 35, true, 14 },
		{ "from the day after", 15, 35, true, 21 },
	};
	struct log log;
	(void)state;
	log_read(&log, "0h 7c0 14c2 21c3 28c4 35c1");
	const struct diary *const list[] = { &log.diary };
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct sustained s;
		bool found = flight_sustained(
			list, 1, log_day(row[i].first), log_day(row[i].last), &s);
		if (found != row[i].found || (found && s.by != log_day(row[i].by)))
			fail_msg("%s", row[i].why);
	}
	log_free(&log);
}

static void the_season_ends_with_two_zeros_and_nothing_later(void **state)
{
	static const struct {
		const char *why, *traps[LOGS_MAX];
		int want; /* -1: not finished */
	} row[] = {
		{ "three zeros", { "0h 7c5 14c2 21c0 28c0 35c0" }, 21 },
		{ "one zero", { "0h 7c5 14c2 21c0" }, -1 },
		{ "a moth later", { "0h 7c5 14c2 21c0 28c0 35c1" }, -1 },
		{ "zeros after it again", { "0h 7c5 14c2 21c0 28c0 35c1 42c0 49c0" },
			42 },
		{ "an unread check is no zero", { "0h 7c5 14c2 21c0 28x 35c0" }, -1 },
		{ "two zeros after it", { "0h 7c5 14c2 21c0 28x 35c0 42c0" }, 35 },
		{ "unread after the end", { "0h 7c5 14c0 21c0 28x" }, 14 },
		{ "a skipped visit closes nothing", { "0h 7c5 14c0 21s 28c0" }, 14 },
		{ "moths on a spoiled card", { "0h 7c5 14c0 21c0 28x1" }, -1 },
		{ "a trap still catches", { "0h 7c5 14c0 21c0", "0h 7c1 14c0 21c1" },
			-1 },
		{ "no visit after the peak", { "0h 7c5" }, -1 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct logs l;
		logs_read(&l, row[i].traps);
		int32_t got = flight_season_end(l.list, l.n, log_day(7), log_day(99));
		logs_free(&l);
		if (got != (row[i].want < 0 ? DAY_NONE : log_day(row[i].want)))
			fail_msg("%s: %d", row[i].why, (int)(got - log_day(0)));
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_first_sustained_catch_is_an_interval),
		cmocka_unit_test(checks_outside_the_season_are_not_looked_at),
		cmocka_unit_test(the_season_ends_with_two_zeros_and_nothing_later),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
