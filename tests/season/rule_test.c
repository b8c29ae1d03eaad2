#include "season/rule.h"

#include "season/log.h"

static const struct spot spot = {
	.farm = 1,
	.block = 5,
	.pest = 2,
	.lure = 3,
	.crop = "apple",
	.condition = CONDITION_DISRUPTED,
	.place = PLACE_BORDER,
};

static struct moment moment_of(int month, int day)
{
	return (struct moment){ .day = day_from_ymd(2026, month, day),
		.biofix = DAY_NONE,
		.flight_start = DAY_NONE,
		.dd = -1,
		.treated = DAY_NONE };
}

static void rule_fits_where_every_field_it_sets_agrees(void **state)
{
	static const struct {
		const char *why;
		struct rule rule;
		enum fit want;
	} row[] = {
		{ "an empty rule of the pest", { .pest = 2 }, FIT_YES },
		{ "another pest", { .pest = 1 }, FIT_NO },
		{ "the crop", { .pest = 2, .crop = "apple" }, FIT_YES },
		{ "the crop written large", { .pest = 2, .crop = "Apple" }, FIT_YES },
		{ "another crop", { .pest = 2, .crop = "app" }, FIT_NO },
		{ "a longer crop", { .pest = 2, .crop = "apple tree" }, FIT_NO },
		{ "the condition", { .pest = 2, .condition = CONDITION_DISRUPTED },
			FIT_YES },
		{ "the other condition",
			{ .pest = 2, .condition = CONDITION_CONVENTIONAL }, FIT_NO },
		{ "the lure", { .pest = 2, .lure = 3 }, FIT_YES },
		{ "another lure", { .pest = 2, .lure = 4 }, FIT_NO },
		{ "the place", { .pest = 2, .place = PLACE_BORDER }, FIT_YES },
		{ "another place", { .pest = 2, .place = PLACE_INTERIOR }, FIT_NO },
		{ "the farm", { .pest = 2, .farm = 1 }, FIT_YES },
		{ "another farm", { .pest = 2, .farm = 2 }, FIT_NO },
		{ "the block", { .pest = 2, .block = 5 }, FIT_YES },
		{ "another block", { .pest = 2, .block = 6 }, FIT_NO },
		{ "one field of two", { .pest = 2, .farm = 1, .lure = 4 }, FIT_NO },
	};
	struct moment m = moment_of(7, 21);
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		if (rule_fits(&row[i].rule, &spot, &m) != row[i].want)
			fail_msg("%s", row[i].why);
	struct spot bare = { .pest = 2 };
	struct rule apple = { .pest = 2, .crop = "apple" };
	assert_int_equal(rule_fits(&apple, &bare, &m), FIT_NO);
}

static void rule_fits_within_its_window_both_days_included(void **state)
{
	static const struct {
		const char *why;
		int from, to, month, day;
		enum fit want;
	} row[] = {
		{ "the day before it starts", 501, 731, 4, 30, FIT_NO },
		{ "its first day", 501, 731, 5, 1, FIT_YES },
		{ "its last day", 501, 731, 7, 31, FIT_YES },
		{ "the day after it", 501, 731, 8, 1, FIT_NO },
		{ "over the new year: its first day", 1101, 228, 11, 1, FIT_YES },
		{ "over the new year: in January", 1101, 228, 1, 15, FIT_YES },
		{ "over the new year: its last day", 1101, 228, 2, 28, FIT_YES },
		{ "over the new year: after it", 1101, 228, 3, 1, FIT_NO },
		{ "over the new year: before it", 1101, 228, 10, 31, FIT_NO },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct rule r = { .pest = 2, .from = row[i].from, .to = row[i].to };
		struct moment m = moment_of(row[i].month, row[i].day);
		if (rule_fits(&r, &spot, &m) != row[i].want)
			fail_msg("%s", row[i].why);
	}
}

static void rule_may_fit_while_flight_or_degree_days_are_not_known(void **state)
{
	static const struct {
		const char *why;
		int rule_flight, until_dd, flight, dd;
		enum fit want;
	} row[] = {
		{ "its flight", 2, 0, 2, -1, FIT_YES },
		{ "another flight", 2, 0, 1, -1, FIT_NO },
		{ "flight not known", 2, 0, 0, -1, FIT_MAYBE },
		{ "before the degree-days", 0, 250, 0, 249, FIT_YES },
		{ "on the degree-days", 0, 250, 0, 250, FIT_NO },
		{ "degree-days not known", 0, 250, 0, -1, FIT_MAYBE },
		{ "one known not to fit is enough", 2, 250, 1, -1, FIT_NO },
		{ "one of them not known", 2, 250, 2, -1, FIT_MAYBE },
	};
	struct rule early = { .pest = 2, .until_dd = 250 };
	struct moment gaps = moment_of(7, 21);
	(void)state;
	gaps.dd_at_least = true; /* days of it are missing: it may be past them */
	gaps.dd = 249;
	assert_int_equal(rule_fits(&early, &spot, &gaps), FIT_MAYBE);
	gaps.dd = 250;
	assert_int_equal(rule_fits(&early, &spot, &gaps), FIT_NO);
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct rule r = { .pest = 2,
			.flight = row[i].rule_flight,
			.until_dd = row[i].until_dd };
		struct moment m = moment_of(7, 21);
		m.flight = row[i].flight;
		m.dd = row[i].dd;
		if (rule_fits(&r, &spot, &m) != row[i].want)
			fail_msg("%s", row[i].why);
	}
}

static void rule_narrower_sets_all_that_the_other_sets_and_more(void **state)
{
	static const struct {
		const char *why;
		struct rule a, b;
		bool want;
	} row[] = {
		{ "one more field", { .farm = 1 }, { .pest = 0 }, true },
		{ "the same fields", { .farm = 1 }, { .farm = 1 }, false },
		{ "fewer fields", { .pest = 0 }, { .farm = 1 }, false },
		{ "another value", { .farm = 1, .lure = 3 }, { .farm = 2 }, false },
		{ "other fields", { .lure = 3 }, { .farm = 1 }, false },
		{ "block against its farm", { .block = 5 }, { .farm = 1 }, true },
		{ "block against another farm", { .block = 5 }, { .farm = 2 }, false },
		{ "block and its farm against the block", { .block = 5, .farm = 1 },
			{ .block = 5 }, false },
		{ "block against the block and its farm", { .block = 5 },
			{ .block = 5, .farm = 1 }, false },
		{ "block and lure against the block and its farm",
			{ .block = 5, .lure = 3 }, { .block = 5, .farm = 1 }, true },
		{ "crop by any case", { .crop = "Pear", .lure = 3 }, { .crop = "pear" },
			true },
		{ "a window is one field", { .from = 501, .to = 731 }, { .pest = 0 },
			true },
		{ "another window", { .from = 501, .to = 731, .lure = 3 },
			{ .from = 501, .to = 630 }, false },
		{ "a flight", { .flight = 2, .lure = 3 }, { .flight = 2 }, true },
		{ "degree-days", { .until_dd = 250 }, { .pest = 0 }, true },
		{ "condition", { .condition = CONDITION_DISRUPTED }, { .pest = 0 },
			true },
		{ "place", { .place = PLACE_BORDER }, { .place = PLACE_INTERIOR },
			false },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		if (rule_narrower(&row[i].a, &row[i].b, 1) != row[i].want)
			fail_msg("%s", row[i].why);
}

/* Rules that are chosen at a spot, as bits. */
static unsigned chosen(const struct rule *rules, size_t n)
{
	struct moment m = moment_of(7, 21);
	size_t out[8];
	unsigned bits = 0;

	size_t k = rule_choose(rules, n, &spot, &m, out);
	for (size_t i = 0; i < k; i++)
		bits |= 1U << out[i];
	return bits;
}

static void rule_choose_replaces_the_wider_of_the_same_measure(void **state)
{
	static const struct {
		const char *why;
		struct rule rules[3];
		size_t n;
		unsigned want;
	} row[] = {
		{ "none", { { .pest = 1 } }, 1, 0 },
		{ "the narrower replaces", { { .pest = 2 }, { .pest = 2, .block = 5 } },
			2, 2 },
		{ "in any order", { { .pest = 2, .block = 5 }, { .pest = 2 } }, 2, 1 },
		{ "not one of another measure",
			{ { .pest = 2 }, { .pest = 2,
						 .block = 5,
						 .measure = MEASURE_BLOCK_WEEK } },
			2, 3 },
		{ "not one of another pest",
			{ { .pest = 2 }, { .pest = 1, .block = 5 } }, 2, 1 },
		{ "not one that does not fit",
			{ { .pest = 2 }, { .pest = 2, .block = 6 } }, 2, 1 },
		{ "not one that only may fit",
			{ { .pest = 2 }, { .pest = 2, .flight = 2 } }, 2, 3 },
		{ "two that are neither both stay",
			{ { .pest = 2, .farm = 1 }, { .pest = 2, .lure = 3 } }, 2, 3 },
		{ "the farm's by the block's",
			{ { .pest = 2, .farm = 1 }, { .pest = 2, .block = 5 } }, 2, 2 },
		{ "the narrowest of three",
			{ { .pest = 2 }, { .pest = 2, .farm = 1 },
				{ .pest = 2, .farm = 1, .block = 5 } },
			3, 4 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		unsigned got = chosen(row[i].rules, row[i].n);
		if (got != row[i].want)
			fail_msg("%s: %#x, not %#x", row[i].why, got, row[i].want);
	}
}

static void rule_fault_names_what_is_wrong(void **state)
{
	static const struct {
		const char *why;
		struct rule rule;
		bool sound;
	} row[] = {
		{ "a week", { .pest = 1, .span = 1, .value_x100 = 500 }, true },
		{ "eight weeks", { .pest = 1, .span = 8, .value_x100 = 1 }, true },
		{ "nine weeks", { .pest = 1, .span = 9, .value_x100 = 1 }, false },
		{ "no week", { .pest = 1, .span = 0, .value_x100 = 1 }, false },
		{ "weeks since biofix",
			{ .pest = 1,
				.span = 1,
				.value_x100 = 1,
				.span_kind = SPAN_BIOFIX },
			false },
		{ "366 nights",
			{ .pest = 1,
				.measure = MEASURE_TRAP_NIGHT,
				.span = 366,
				.value_x100 = 1 },
			true },
		{ "367 nights",
			{ .pest = 1,
				.measure = MEASURE_BLOCK_NIGHT,
				.span = 367,
				.value_x100 = 1 },
			false },
		{ "a night",
			{ .pest = 1,
				.measure = MEASURE_BLOCK_NIGHT,
				.span = 1,
				.value_x100 = 1 },
			true },
		{ "no night",
			{ .pest = 1,
				.measure = MEASURE_TRAP_NIGHT,
				.span = 0,
				.value_x100 = 1 },
			false },
		{ "nights since hung",
			{ .pest = 1,
				.measure = MEASURE_TRAP_NIGHT,
				.span = 7,
				.span_kind = SPAN_HUNG,
				.value_x100 = 1 },
			false },
		{ "a total since hung",
			{ .pest = 1,
				.measure = MEASURE_TRAP_TOTAL,
				.span_kind = SPAN_HUNG,
				.value_x100 = 1 },
			true },
		{ "a total over 14 nights",
			{ .pest = 1,
				.measure = MEASURE_BLOCK_TOTAL,
				.span = 14,
				.value_x100 = 1 },
			true },
		{ "a total over no nights",
			{ .pest = 1, .measure = MEASURE_BLOCK_TOTAL, .value_x100 = 1 },
			false },
		{ "a total over 366 nights",
			{ .pest = 1,
				.measure = MEASURE_TRAP_TOTAL,
				.span = 366,
				.value_x100 = 1 },
			true },
		{ "a total over 367 nights",
			{ .pest = 1,
				.measure = MEASURE_TRAP_TOTAL,
				.span = 367,
				.value_x100 = 1 },
			false },
		{ "for timing only", { .pest = 1, .measure = MEASURE_NONE }, true },
		{ "the highest value", { .pest = 1, .span = 1, .value_x100 = 99999999 },
			true },
		{ "a higher one", { .pest = 1, .span = 1, .value_x100 = 100000000 },
			false },
		{ "a negative one", { .pest = 1, .span = 1, .value_x100 = -1 }, false },
		{ "at least nothing", { .pest = 1, .span = 1 }, false },
		{ "more than nothing",
			{ .pest = 1, .span = 1, .comparator = MORE_THAN }, true },
		{ "flight 9", { .pest = 1, .span = 1, .value_x100 = 1, .flight = 9 },
			true },
		{ "flight -1", { .pest = 1, .span = 1, .value_x100 = 1, .flight = -1 },
			false },
		{ "flight 10", { .pest = 1, .span = 1, .value_x100 = 1, .flight = 10 },
			false },
		{ "half a window",
			{ .pest = 1, .span = 1, .value_x100 = 1, .from = 501 }, false },
		{ "the other half",
			{ .pest = 1, .span = 1, .value_x100 = 1, .to = 501 }, false },
		{ "29 February",
			{ .pest = 1,
				.span = 1,
				.value_x100 = 1,
				.from = 229,
				.to = 301 },
			true },
		{ "30 February",
			{ .pest = 1,
				.span = 1,
				.value_x100 = 1,
				.from = 230,
				.to = 301 },
			false },
		{ "month 0",
			{ .pest = 1,
				.span = 1,
				.value_x100 = 1,
				.from = 15,
				.to = 301 },
			false },
		{ "day 0",
			{ .pest = 1,
				.span = 1,
				.value_x100 = 1,
				.from = 100,
				.to = 301 },
			false },
		{ "month 13",
			{ .pest = 1,
				.span = 1,
				.value_x100 = 1,
				.from = 101,
				.to = 1301 },
			false },
		{ "negative degree-days",
			{ .pest = 1, .span = 1, .value_x100 = 1, .until_dd = -1 },
			false },
		{ "no pest", { .span = 1, .value_x100 = 1 }, false },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		const char *fault = rule_fault(&row[i].rule);
		if ((fault == NULL) != row[i].sound)
			fail_msg("%s: %s", row[i].why,
				fault == NULL ? "no fault" : fault);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(rule_fits_where_every_field_it_sets_agrees),
		cmocka_unit_test(rule_fits_within_its_window_both_days_included),
		cmocka_unit_test(
			rule_may_fit_while_flight_or_degree_days_are_not_known),
		cmocka_unit_test(rule_narrower_sets_all_that_the_other_sets_and_more),
		cmocka_unit_test(rule_choose_replaces_the_wider_of_the_same_measure),
		cmocka_unit_test(rule_fault_names_what_is_wrong),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
