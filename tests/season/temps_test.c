#include "season/temps.h"

#include "season/log.h"

#include <math.h>

static bool same(const char *a, const char *b)
{
	return (a == NULL) == (b == NULL) && (a == NULL || strstr(a, b) == a);
}

static void a_day_that_cannot_be_is_told(void **state)
{
	static const struct {
		const char *why;
		double min, max;
		const char *want;
	} row[] = {
		{ "a spring day", 4.4, 15.6, NULL },
		{ "one that stands still", 10, 10, NULL },
		{ "swapped", 10.1, 10, "the minimum is above" },
		{ "as hot as we let it be", 20, 60, NULL },
		{ "72 F taken for C", 45, 72, "no weather is hotter" },
		{ "a tenth too hot", 20, 60.1, "no weather is hotter" },
		{ "the minimum alone, in F", 65, NAN, "no weather is hotter" },
		{ "as cold as we let it be", -90, -60, NULL },
		{ "a tenth too cold", -90.1, -60, "no weather is colder" },
		{ "the maximum alone", NAN, -99.9, "no weather is colder" },
		{ "the widest day", -20, 40, NULL },
		{ "a minimum in C, a maximum in F", -5, 55.1, "no day goes through" },
		{ "nothing known", NAN, NAN, NULL },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		const char *got = temps_fault(row[i].min, row[i].max);
		if (!same(got, row[i].want))
			fail_msg("%s: %s", row[i].why, got ? got : "nothing");
	}
}

static void a_jump_overnight_is_told(void **state)
{
	static const struct {
		const char *why;
		struct dd_temps day, next;
		bool told;
	} row[] = {
		{ "an ordinary change", { 5, 4, 16, false }, { 6, 2, 8, false },
			false },
		{ "30 degrees up", { 5, 0, 10, false }, { 6, 30, 40, false }, false },
		{ "a tenth more", { 5, 0, 10, false }, { 6, 30, 40.2, false }, true },
		{ "down", { 5, 30, 40.2, false }, { 6, 0, 10, false }, true },
		{ "a spring day in F among days in C", { 5, 2, 12, false },
			{ 6, 36, 55, false }, true },
		{ "with a day between", { 5, 0, 10, false }, { 7, 45, 58, false },
			false },
		{ "one not known", { 5, NAN, 10, false }, { 6, 45, 58, false }, false },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		const char *got = temps_jump_fault(&row[i].day, &row[i].next);
		if ((got != NULL) != row[i].told)
			fail_msg("%s: %s", row[i].why, got ? got : "nothing");
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_day_that_cannot_be_is_told),
		cmocka_unit_test(a_jump_overnight_is_told),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
