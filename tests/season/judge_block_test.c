#include "season/judge.h"

#include "season/log.h"

enum { TRAPS_MAX = 6 };

struct want {
	enum verdict verdict;
	enum lacking lacking;
	int read;
	unsigned doubts;
};

/* The traps of a block, their diaries separated by '|'. */
static size_t read_block(struct log *logs, const char *text)
{
	size_t n = 0;

	while (n < TRAPS_MAX) {
		char one[160];
		size_t len = strcspn(text, "|");
		assert_true(len < sizeof one);
		memcpy(one, text, len);
		one[len] = '\0';
		log_read(&logs[n++], one + strspn(one, " "));
		if (text[len] == '\0')
			break;
		text += len + 1;
	}
	return n;
}

static struct judgement judge_at(const struct rule *r, const char *block, int asked)
{
	struct log logs[TRAPS_MAX];
	struct subject s[TRAPS_MAX];
	struct moment m = { .biofix = DAY_NONE,
		.flight_start = DAY_NONE,
		.dd = -1,
		.treated = DAY_NONE };
	size_t n = read_block(logs, block);

	m.day = log_day(asked);
	for (size_t i = 0; i < n; i++)
		s[i] = (struct subject){ .diary = &logs[i].diary };
	struct judgement j = judge_block(r, FIT_YES, s, n, &m, &limits_usual);
	for (size_t i = 0; i < n; i++)
		log_free(&logs[i]);
	return j;
}

static void expect(const char *why, const struct judgement *j, struct want want)
{
	if (j->verdict != want.verdict)
		fail_msg("%s: %s, not %s", why, verdict_word(j->verdict),
			verdict_word(want.verdict));
	if (j->lacking != want.lacking)
		fail_msg("%s: lacking %d", why, (int)j->lacking);
	if (j->read != want.read)
		fail_msg("%s: %d read", why, (int)j->read);
	if (j->doubts != want.doubts)
		fail_msg("%s: doubts %#x", why, j->doubts);
}

#define FIVE "0h 7c0 | 0h 7c1 | 0h 7c0 | 0h 7c2 | 0h 7c17"

static void a_mean_under_can_hide_one_trap_over(void **state)
{
	struct rule mean = {
		.measure = MEASURE_BLOCK_WEEK, .span = 1, .value_x100 = 500
	};
	struct rule any = {
		.measure = MEASURE_TRAP_WEEK, .span = 1, .value_x100 = 500
	};
	struct judgement j = judge_at(&mean, FIVE, 7);
	(void)state;
	/* 4.0 is under 5, and at four fifths of it near. */
	expect("the mean", &j, (struct want){ VERDICT_NEAR, 0, 5, 0 });
	assert_int_equal(ratio_cmp(j.value.lo, ratio_of(4, 1)), 0);
	assert_int_equal(ratio_cmp(j.value.hi, ratio_of(4, 1)), 0);
	assert_int_equal(j.highest_x10, 170);
	assert_int_equal(j.moths, 20);
	j = judge_at(&any, "0h 7c17", 7);
	expect("the trap", &j, (struct want){ VERDICT_OVER, 0, 1, 0 });
	mean.value_x100 = 400;
	j = judge_at(&mean, FIVE, 7);
	expect("exactly on 4", &j, (struct want){ VERDICT_OVER, 0, 5, 0 });
	mean.comparator = MORE_THAN;
	j = judge_at(&mean, FIVE, 7);
	expect("more than 4", &j, (struct want){ VERDICT_NEAR, 0, 5, 0 });
}

static void a_block_week_leaves_out_unread_traps_and_says_so(void **state)
{
	static const struct {
		const char *why, *block;
		int asked, span;
		struct want want;
	} row[] = {
		{ "all read, exactly on", "0h 7c4 | 0h 7c6", 7, 1,
			{ VERDICT_OVER, 0, 2, 0 } },
		{ "3 of 4 read: their mean is on it",
			"0h 7c4 | 0h 7c6 | 0h 7c5 | 0h 7s", 7, 1,
			{ VERDICT_OVER, 0, 3, DOUBT_UNREAD } },
		{ "3 of 4 read: their mean is under it",
			"0h 7c0 | 0h 7c1 | 0h 7c1 | 0h 7x", 7, 1,
			{ VERDICT_UNDER, 0, 3, DOUBT_UNREAD } },
		{ "2 of 3 are enough", "0h 7c0 | 0h 7c0 | 0h 7s", 7, 1,
			{ VERDICT_UNDER, 0, 2, DOUBT_UNREAD } },
		{ "1 of 2 is not", "0h 7c0 | 0h 7s", 7, 1,
			{ VERDICT_UNKNOWN, LACKING_TRAPS, 1, DOUBT_UNREAD } },
		{ "unless all have enough already", "0h 7c10 | 0h 7s", 7, 1,
			{ VERDICT_OVER, 0, 1, DOUBT_UNREAD } },
		{ "one less is not enough", "0h 7c9 | 0h 7s", 7, 1,
			{ VERDICT_UNKNOWN, LACKING_TRAPS, 1, DOUBT_UNREAD } },
		{ "a spoiled card with very many on it", "0h 7c0 | 0h 7c0 | 0h 7x99", 7,
			1, { VERDICT_OVER, 0, 2, DOUBT_UNREAD } },
		{ "none read", "0h 7s | 0h 7m", 7, 1,
			{ VERDICT_UNKNOWN, LACKING_TRAPS, 0, DOUBT_UNREAD } },
		{ "a floor leaves the mean open", "0h 7f4 | 0h 7c1", 7, 1,
			{ VERDICT_UNKNOWN, LACKING_FLOOR, 2, 0 } },
		{ "a floor that is enough", "0h 7f9 | 0h 7c1", 7, 1,
			{ VERDICT_OVER, 0, 2, 0 } },
		{ "a long interval cannot be split", "0h 14c8 | 0h 7c0 14c5", 14, 1,
			{ VERDICT_UNKNOWN, LACKING_SPLIT, 2, DOUBT_LONG } },
		{ "two weeks over", "0h 7c4 14c6 | 0h 7c6 14c6", 14, 2,
			{ VERDICT_OVER, 0, 2, 0 } },
		{ "the first of two under", "0h 7c4 14c6 | 0h 7c5 14c6", 14, 2,
			{ VERDICT_NEAR, 0, 2, 0 } },
		{ "another set of traps read in each week",
			"0h 7c5 14c5 | 0h 7c5 14c5 | 0h 7x 14c5", 14, 2,
			{ VERDICT_OVER, 0, 3, DOUBT_TRAPS | DOUBT_UNREAD } },
		{ "one trap alone", "0h 7c5", 7, 1, { VERDICT_OVER, 0, 1, 0 } },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct rule r = { .measure = MEASURE_BLOCK_WEEK,
			.span = row[i].span,
			.value_x100 = 500 };
		struct judgement j = judge_at(&r, row[i].block, row[i].asked);
		expect(row[i].why, &j, row[i].want);
	}
}

static void block_nights_and_totals_are_means_over_traps(void **state)
{
	static const struct {
		const char *why, *block;
		enum measure measure;
		enum span_kind kind;
		int span, asked;
		struct want want;
	} row[] = {
		{ "mean per night on it", "0h 3c12 | 0h 3c18", MEASURE_BLOCK_NIGHT,
			SPAN_NUMBER, 3, 3, { VERDICT_OVER, 0, 2, 0 } },
		{ "one less", "0h 3c12 | 0h 3c17", MEASURE_BLOCK_NIGHT, SPAN_NUMBER, 3,
			3, { VERDICT_NEAR, 0, 2, 0 } },
		{ "mean total on it", "0h 7c1 14c3 | 0h 7c6", MEASURE_BLOCK_TOTAL,
			SPAN_HUNG, 0, 14, { VERDICT_OVER, 0, 2, 0 } },
		{ "one less in all", "0h 7c1 14c2 | 0h 7c6", MEASURE_BLOCK_TOTAL,
			SPAN_HUNG, 0, 14, { VERDICT_NEAR, 0, 2, 0 } },
		{ "a trap with a spoiled week is left out",
			"0h 7c1 14c1 | 0h 7c1 14c1 | 0h 7x 14c4", MEASURE_BLOCK_TOTAL,
			SPAN_HUNG, 0, 14, { VERDICT_UNDER, 0, 2, DOUBT_UNREAD } },
		{ "unless what is known of it is over by itself",
			"0h 7c1 14c1 | 0h 7c1 14c1 | 0h 7x 14c5", MEASURE_BLOCK_TOTAL,
			SPAN_HUNG, 0, 14,
			{ VERDICT_UNKNOWN, LACKING_TRAPS, 2, DOUBT_UNREAD } },
		{ "biofix not set", "0h 7c9 | 0h 7c9", MEASURE_BLOCK_TOTAL, SPAN_BIOFIX,
			0, 7, { VERDICT_UNKNOWN, LACKING_BIOFIX, 0, 0 } },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct rule r = { .measure = row[i].measure,
			.span_kind = row[i].kind,
			.span = row[i].span,
			.value_x100 = 500 };
		struct judgement j = judge_at(&r, row[i].block, row[i].asked);
		expect(row[i].why, &j, row[i].want);
	}
}

static void the_moths_of_a_block_are_those_of_the_traps_read(void **state)
{
	struct rule r = { .measure = MEASURE_BLOCK_TOTAL, .span_kind = SPAN_HUNG };
	(void)state;
	r.value_x100 = 99900;
	struct judgement j = judge_at(&r, "0h 7c1 14c1 | 0h 7c1 14c1 | 0h 7x 14c9", 14);
	assert_int_equal(j.moths, 4);
	assert_int_equal(j.nights, 14);
	assert_int_equal(j.to, log_day(14));
	assert_int_equal(j.traps, 3);
}

static void no_traps_have_no_verdict(void **state)
{
	struct rule r = { .measure = MEASURE_BLOCK_WEEK, .span = 1, .value_x100 = 500 };
	struct moment m = { .day = 0 };
	(void)state;
	assert_int_equal(judge_block(&r, FIT_YES, NULL, 0, &m, &limits_usual).verdict,
		VERDICT_NONE);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_mean_under_can_hide_one_trap_over),
		cmocka_unit_test(a_block_week_leaves_out_unread_traps_and_says_so),
		cmocka_unit_test(block_nights_and_totals_are_means_over_traps),
		cmocka_unit_test(the_moths_of_a_block_are_those_of_the_traps_read),
		cmocka_unit_test(no_traps_have_no_verdict),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
