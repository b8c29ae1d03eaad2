#include "season/flightline.h"

#include "season/log.h"

#include <stdio.h>

/* "_ 4.0 9.0+ . -": zero, catch, at least, not read, nothing. */
static void print_marks(const struct mark *marks, size_t n, char *out, size_t size)
{
	size_t at = 0;

	out[0] = '\0';
	for (size_t i = 0; i < n && at < size; i++) {
		const struct mark *m = &marks[i];
		static const char *const signs[] = { "-", ".", "_", NULL, NULL };
		if (i > 0)
			at += (size_t)snprintf(out + at, size - at, " ");
		if (signs[m->kind] != NULL)
			at += (size_t)snprintf(
				out + at, size - at, "%s", signs[m->kind]);
		else
			at += (size_t)snprintf(out + at, size - at, "%d%s", (int)m->x10,
				m->kind == MARK_FLOOR ? "+" : "");
	}
}

static void flightline_counts_weeks_from_its_first_day(void **state)
{
	(void)state;
	assert_int_equal(flightline_weeks(log_day(0), log_day(6)), 1);
	assert_int_equal(flightline_weeks(log_day(0), log_day(7)), 2);
	assert_int_equal(flightline_weeks(log_day(6), log_day(12)), 1);
	assert_int_equal(flightline_weeks(log_day(6), log_day(13)), 2);
	assert_int_equal(flightline_weeks(log_day(7), log_day(6)), 0);
}

static void flightline_marks_each_week_of_a_trap(void **state)
{
	static const struct {
		const char *why, *visits;
		int last;
		const char *want;
	} row[] = {
		{ "before it hung, hung, counted", "8h 15c4 22c0", 22, "- . 40 _" },
		{ "a skipped week was not read, whatever came after", "1h 8c4 15s 22c9",
			22, ". 40 . 45" },
		{ "nor were two skipped weeks", "1h 8c4 15s 22s 29c9", 29,
			". 40 . . 30" },
		{ "a week wholly inside thirteen nights was read, last good",
			"6h 19c13", 19, ". 70 70" },
		{ "inside fourteen it was missed, first bad", "6h 20c14", 20,
			". . 70" },
		{ "a floor is at least", "1h 8f30", 8, ". 300+" },
		{ "spoiled is not read", "1h 8x 15c3", 15, ". . 30" },
		{ "several closings are joined", "1h 8c1 10c1 12c2", 12, ". 25" },
		{ "missing, then nothing", "1h 8m 22h", 28, ". . - . ." },
		{ "pulled, then nothing", "1h 8p7", 21, ". 70 - -" },
		{ "pulled on a Monday", "1h 7p6", 8, ". 70" },
		{ "later visits are not looked at", "1h 8c4 13c9", 12, ". 40" },
		{ "a Monday to Monday interval", "0h 7c7 14c14", 14, ". 70 140" },
		{ "one moth in a year is not zero", "0h 366c1", 14, ". . ." },
		{ "hung on the Sunday", "6h 13c7", 13, ". 70" },
		{ "never hung", "", 13, "- -" },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct log log;
		struct mark marks[8];
		char got[80];
		log_read(&log, row[i].visits);
		flightline_of_trap(&log.diary, log_day(0), log_day(row[i].last), marks);
		size_t n = flightline_weeks(log_day(0), log_day(row[i].last));
		print_marks(marks, n, got, sizeof got);
		log_free(&log);
		if (strcmp(got, row[i].want) != 0)
			fail_msg("%s: %s, not %s", row[i].why, got, row[i].want);
	}
}

static void a_tiny_catch_is_not_a_zero(void **state)
{
	struct mark marks[60];
	struct log log;
	(void)state;
	log_read(&log, "0h 366c1");
	flightline_of_trap(&log.diary, log_day(0), log_day(366), marks);
	assert_int_equal(marks[52].kind, MARK_CATCH);
	assert_int_equal(marks[52].x10, 1);
	log_free(&log);
}

static void flightline_mean_is_over_the_traps_read(void **state)
{
	static const struct {
		const char *why;
		struct mark trap[3];
		struct mark want;
	} row[] = {
		{ "of three",
			{ { MARK_CATCH, 10 }, { MARK_CATCH, 20 }, { MARK_ZERO, 0 } },
			{ MARK_CATCH, 10 } },
		{ "the one not read is left out",
			{ { MARK_CATCH, 10 }, { MARK_CATCH, 20 },
				{ MARK_NOT_READ, 0 } },
			{ MARK_CATCH, 15 } },
		{ "the one not hung too",
			{ { MARK_CATCH, 10 }, { MARK_NOTHING, 0 },
				{ MARK_NOTHING, 0 } },
			{ MARK_CATCH, 10 } },
		{ "all zero", { { MARK_ZERO, 0 }, { MARK_ZERO, 0 }, { MARK_ZERO, 0 } },
			{ MARK_ZERO, 0 } },
		{ "a floor makes it a floor",
			{ { MARK_FLOOR, 300 }, { MARK_ZERO, 0 }, { MARK_ZERO, 0 } },
			{ MARK_FLOOR, 100 } },
		{ "none read",
			{ { MARK_NOT_READ, 0 }, { MARK_NOTHING, 0 },
				{ MARK_NOTHING, 0 } },
			{ MARK_NOT_READ, 0 } },
		{ "none hung",
			{ { MARK_NOTHING, 0 }, { MARK_NOTHING, 0 },
				{ MARK_NOTHING, 0 } },
			{ MARK_NOTHING, 0 } },
		{ "halves round up",
			{ { MARK_CATCH, 10 }, { MARK_CATCH, 11 },
				{ MARK_NOT_READ, 0 } },
			{ MARK_CATCH, 11 } },
		{ "a tiny mean is not zero",
			{ { MARK_CATCH, 1 }, { MARK_ZERO, 0 }, { MARK_ZERO, 0 } },
			{ MARK_CATCH, 1 } },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct mark got;
		flightline_mean(row[i].trap, 3, 1, &got);
		if (got.kind != row[i].want.kind || got.x10 != row[i].want.x10)
			fail_msg("%s: kind %d, %d tenths", row[i].why, (int)got.kind,
				(int)got.x10);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(flightline_counts_weeks_from_its_first_day),
		cmocka_unit_test(flightline_marks_each_week_of_a_trap),
		cmocka_unit_test(a_tiny_catch_is_not_a_zero),
		cmocka_unit_test(flightline_mean_is_over_the_traps_read),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
