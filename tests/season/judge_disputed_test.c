/* A count that two scouts do not agree on: no fact of the trade, but our own rule that
 * what is not known never reads as under. */
#include "log.h"

#include "season/judge.h"

struct said {
	int32_t least, most; /* most -1: one of them did not read the trap */
};

static struct judgement judged(int32_t shown, struct said said, enum measure measure,
	int32_t span, int32_t value_x100)
{
	struct visit v[] = {
		{ .trap = 1, .day = 100, .outcome = OUTCOME_HUNG, .count = COUNT_NONE },
		{ .trap = 1, .day = 107, .outcome = OUTCOME_COUNTED, .count = 2 },
		{ .trap = 1,
			.day = 114,
			.outcome = OUTCOME_COUNTED,
			.count = shown,
			.is_disputed = true,
			.least = said.least,
			.most = said.most },
	};
	struct rule r = { .pest = 1,
		.measure = measure,
		.span = span,
		.comparator = AT_LEAST,
		.value_x100 = value_x100 };
	struct moment m = { .day = 114,
		.biofix = DAY_NONE,
		.flight_start = DAY_NONE,
		.treated = DAY_NONE };
	struct diary d = { 0 };

	diary_read(&d, v, 3);
	struct subject s = { .diary = &d };
	struct judgement j = judge_trap(&r, FIT_YES, &s, &m, &limits_usual);
	diary_free(&d);
	return j;
}

static void judge_takes_a_disputed_count_as_all_that_is_said(void **state)
{
	static const struct {
		const char *why;
		int32_t shown;
		struct said said;
		enum verdict want;
	} row[] = {
		{ "both are under", 3, { 2, 3 }, VERDICT_UNDER },
		{ "the one not shown is over", 3, { 3, 10 }, VERDICT_UNKNOWN },
		{ "the one shown is over, the other is not", 10, { 3, 10 },
			VERDICT_UNKNOWN },
		{ "just below: the most is 9 of 10", 3, { 3, 9 }, VERDICT_NEAR },
		{ "the least is over as well", 14, { 10, 14 }, VERDICT_OVER },
		{ "one of them did not read the trap", 3, { 0, -1 }, VERDICT_UNKNOWN },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct judgement j =
			judged(row[i].shown, row[i].said, MEASURE_TRAP_WEEK, 1, 1000);
		if (j.verdict != row[i].want)
			fail_msg("%s: %d, not %d", row[i].why, (int)j.verdict,
				(int)row[i].want);
		if (j.verdict == VERDICT_UNKNOWN)
			assert_int_equal(j.lacking, LACKING_AGREEMENT);
		assert_true(j.doubts & DOUBT_COUNTS);
		if (j.verdict == VERDICT_UNDER || j.verdict == VERDICT_NEAR)
			assert_true(j.questionable);
	}
}

static void judge_sums_up_disputed_counts_as_bounds(void **state)
{
	(void)state;
	assert_int_equal(
		judged(3, (struct said){ 3, 7 }, MEASURE_TRAP_TOTAL, 14, 1000).verdict,
		VERDICT_NEAR);
	assert_int_equal(
		judged(3, (struct said){ 3, 8 }, MEASURE_TRAP_TOTAL, 14, 1000).verdict,
		VERDICT_UNKNOWN);
	assert_int_equal(
		judged(9, (struct said){ 8, 9 }, MEASURE_TRAP_TOTAL, 14, 1000).verdict,
		VERDICT_OVER);
}

/* The moths of a skip that another scout counted may be those of the week before. */
static void diary_disputes_what_lies_over_a_disputed_skip(void **state)
{
	struct visit v[] = {
		{ .trap = 1, .day = 100, .outcome = OUTCOME_HUNG, .count = COUNT_NONE },
		{ .trap = 1,
			.day = 107,
			.outcome = OUTCOME_SKIPPED,
			.count = COUNT_NONE,
			.is_disputed = true,
			.least = 0,
			.most = COUNT_NONE },
		{ .trap = 1, .day = 114, .outcome = OUTCOME_COUNTED, .count = 6 },
	};
	struct diary d = { 0 };

	(void)state;
	diary_read(&d, v, 3);
	assert_int_equal(d.n, 1);
	assert_true(d.items[0].is_disputed);
	assert_int_equal(d.items[0].least, 0);
	assert_int_equal(d.items[0].most, -1);
	assert_int_equal(d.items[0].moths, 6);
	diary_free(&d);
}

/* Four nights are too few for a week, so the count before is taken along, and with it
 * what the scouts say of it. */
static void a_week_that_joins_a_disputed_count_is_disputed(void **state)
{
	static const struct {
		const char *why;
		int which; /* of the two counts is disputed */
		struct said said, want;
	} row[] = {
		{ "the earlier", 1, { 2, 9 }, { 5, 12 } },
		{ "the later", 2, { 3, 9 }, { 5, 11 } },
		{ "the earlier was not read", 1, { 0, -1 }, { 0, -1 } },
		{ "the later was not read", 2, { 0, -1 }, { 2, -1 } },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct visit v[] = {
			{ .trap = 1,
				.day = 100,
				.outcome = OUTCOME_HUNG,
				.count = COUNT_NONE },
			{ .trap = 1,
				.day = 107,
				.outcome = OUTCOME_COUNTED,
				.count = 2 },
			{ .trap = 1,
				.day = 111,
				.outcome = OUTCOME_COUNTED,
				.count = 3 },
		};
		struct diary d = { 0 };

		v[row[i].which].is_disputed = true;
		v[row[i].which].least = row[i].said.least;
		v[row[i].which].most = row[i].said.most;
		diary_read(&d, v, 3);
		struct weekly w = weekly_catch(&d, 111, &limits_usual);
		diary_free(&d);
		if (w.nights != 11 || !w.is_disputed || w.least != row[i].want.least ||
			w.most != row[i].want.most)
			fail_msg("%s: %d to %d in %d nights", row[i].why, (int)w.least,
				(int)w.most, (int)w.nights);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(judge_takes_a_disputed_count_as_all_that_is_said),
		cmocka_unit_test(judge_sums_up_disputed_counts_as_bounds),
		cmocka_unit_test(a_week_that_joins_a_disputed_count_is_disputed),
		cmocka_unit_test(diary_disputes_what_lies_over_a_disputed_skip),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
