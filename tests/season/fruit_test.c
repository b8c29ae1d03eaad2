#include "season/fruit.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static void fruit_hurt_adds_stings_and_entries(void **state)
{
	static const struct {
		const char *why;
		int32_t stung, entered, want;
	} row[] = {
		{ "both", 3, 2, 5 },
		{ "clean", 0, 0, 0 },
		{ "not told apart", -1, 4, 4 },
		{ "not told apart and clean", -1, 0, 0 },
		{ "not entered is not clean", -1, -1, -1 },
		{ "stings alone are not all", 3, -1, -1 },
	};
	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fruit_check c = fruit_check_blank;
		c.stung = row[i].stung;
		c.entered = row[i].entered;
		if (fruit_hurt(&c) != row[i].want)
			fail_msg("%s: %d", row[i].why, (int)fruit_hurt(&c));
	}
}

static void limits_enclose_the_share_and_close_in(void **state)
{
	(void)state;
	for (int32_t n = 1; n <= 99999; n = n * 3 + 1) {
		for (int32_t x = 0; x <= n; x += n / 7 + 1) {
			struct fruit_share s = fruit_share(x, n);
			assert_true(0 <= s.lo && s.lo <= s.at);
			assert_true(s.at <= s.hi && s.hi <= 100);
			assert_true(x == 0 ? s.lo == 0 : s.lo > 0);
			assert_true(x == n ? s.hi == 100 : s.hi < 100);
		}
		double clean = fruit_clean_hi(n);
		assert_true(clean > fruit_clean_hi(n + 1));
		assert_true(0 < clean && clean < fruit_share(0, n).hi);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(fruit_hurt_adds_stings_and_entries),
		cmocka_unit_test(limits_enclose_the_share_and_close_in),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
