/* Degree-days for another program: what is filled never shows as read. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "exchange/report_csv.h"

#include <math.h>

static void a_filled_day_has_degree_days_and_no_temperatures(void **state)
{
	static struct dd_line lines[] = {
		{ .min = 48.25,
			.max = 71,
			.used_min = 48.25,
			.used_max = 71,
			.dd = 9.625 },
		{ .min = NAN,
			.max = 72,
			.filled = true,
			.used_min = 50,
			.used_max = 72 },
		{ .min = NAN, .max = NAN, .used_min = NAN, .used_max = NAN, .dd = NAN },
	};
	const struct dd_table t = { .lines = lines, .n = 3 };
	struct buf out = { 0 };

	(void)state;
	for (int32_t i = 0; i < 3; i++)
		lines[i].day = day_from_ymd(2026, 5, 1) + i;
	lines[0].sum = 9.625;
	lines[1].dd = 11;
	lines[1].sum = lines[2].sum = 20.625;
	lines[2].missing = 1;
	dd_csv(&t, &out);
	assert_string_equal(out.text, "date,min,max,dd,sum,missing\r\n"
				      "2026-05-01,48.2500,71,9.6250,9.6250,0\r\n"
				      "2026-05-02,,72,11,20.6250,0\r\n"
				      "2026-05-03,,,,20.6250,1\r\n");
	buf_free(&out);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_filled_day_has_degree_days_and_no_temperatures),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
