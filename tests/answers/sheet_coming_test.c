/* A sheet says at each trap where nobody may go, and where that comes in the next
 * days. */
#include "acts.h"

#include "answers/sheet.h"

static void a_trap_says_what_bars_it_now_or_soon(void **state)
{
	static const struct {
		const char *why, *now, *says;
		bool attention;
	} row[] = {
		{ "eight days ahead", "2026-07-14 12:00", "", false },
		{ "seven days ahead", "2026-07-15 12:00",
			"treatment planned: Wed 22 Jul 09:30", false },
		{ "the last minute before it", "2026-07-22 09:29",
			"treatment planned: Wed 22 Jul 09:30", false },
		{ "it has begun", "2026-07-22 09:30", "no entry till Wed 22:30", true },
		{ "the last barred minute", "2026-07-22 22:29",
			"no entry till Wed 22:30", true },
		{ "the first free one", "2026-07-22 22:30", "", false },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct sheet s = { 0 };
		struct err e = { 0 };
		fixture_open(&f);
		int64_t t = fixture_trap(&f, "3", "2026-07-07");
		fixture_count(&f, t, "2026-07-14", 1);
		acts_treat(&f, "2026-07-22 10:30", 12, 7);
		acts_read(&f, row[i].now);
		must(sheet_of(&f.log, f.book, f.farm.id, &s, &e), &e);
		assert_int_equal(s.n, 1);
		if (strcmp(s.traps[0].barred, row[i].says) != 0 ||
			s.traps[0].needs_attention != row[i].attention)
			fail_msg("%s: \"%s\"", row[i].why, s.traps[0].barred);
		sheet_free(&s);
		fixture_close(&f);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_trap_says_what_bars_it_now_or_soon),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
