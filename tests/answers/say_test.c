#include "fixture.h"

#include "answers/say.h"

static void a_visit_says_count_and_flags_in_a_narrow_column(void **state)
{
	static const struct {
		const char *why;
		struct visit v;
		const char *want;
	} row[] = {
		{ "a zero is a number", { .outcome = OUTCOME_COUNTED, .count = 0 },
			"0" },
		{ "a floor has a plus", { .outcome = OUTCOME_FLOOR, .count = 30 },
			"30+" },
		{ "a skipped trap has no number",
			{ .outcome = OUTCOME_SKIPPED, .count = COUNT_NONE }, "-" },
		{ "a spoiled one may have one",
			{ .outcome = OUTCOME_SPOILED, .count = 4 }, "spoiled 4+" },
		{ "a spoiled one without",
			{ .outcome = OUTCOME_SPOILED, .count = COUNT_NONE },
			"spoiled" },
		{ "a missing one is called so everywhere",
			{ .outcome = OUTCOME_MISSING, .count = COUNT_NONE },
			"missing" },
		{ "a pulled one too, with its last count",
			{ .outcome = OUTCOME_PULLED, .count = 3 }, "pulled 3" },
		{ "new card, new lure, stirred",
			{ .outcome = OUTCOME_COUNTED,
				.count = 1,
				.new_card = 1,
				.new_lure = 1,
				.stirred = true },
			"1 cls" },
		{ "hung has new things anyway",
			{ .outcome = OUTCOME_HUNG,
				.count = COUNT_NONE,
				.new_card = 1,
				.new_lure = 1 },
			"hung" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char got[SAY_SHORT];
		say_visit(&row[i].v, got);
		if (strcmp(got, row[i].want) != 0)
			fail_msg("%s: \"%s\"", row[i].why, got);
	}
}

static void a_threshold_is_said_short_and_whole(void **state)
{
	static const struct {
		const char *why;
		struct rule r;
		const char *small, *whole;
	} row[] = {
		{ "a weekly one",
			{ .measure = MEASURE_TRAP_WEEK, .span = 1, .value_x100 = 500 },
			">=5", "at least 5 a week, any single trap" },
		{ "two weeks running",
			{ .measure = MEASURE_TRAP_WEEK, .span = 2, .value_x100 = 200 },
			">=2 2w",
			"at least 2 a week in each of 2 weeks running, any single "
			"trap" },
		{ "more than, with a decimal, as a mean",
			{ .measure = MEASURE_BLOCK_WEEK,
				.span = 1,
				.comparator = MORE_THAN,
				.value_x100 = 250 },
			">2.5", "more than 2.5 a week, mean of the block's traps" },
		{ "per night",
			{ .measure = MEASURE_TRAP_NIGHT, .span = 3, .value_x100 = 500 },
			">=5/night",
			"at least 5 a night over 3 nights, any single trap" },
		{ "a total since hanging",
			{ .measure = MEASURE_TRAP_TOTAL,
				.span_kind = SPAN_HUNG,
				.value_x100 = 1000 },
			">=10 total",
			"at least 10 in all since hanging, any single trap" },
		{ "a total over nights",
			{ .measure = MEASURE_BLOCK_TOTAL,
				.span = 14,
				.value_x100 = 25 },
			">=0.25 total",
			"at least 0.25 in all in 14 nights, mean of the block's "
			"traps" },
		{ "timing only", { .measure = MEASURE_NONE }, "timing",
			"for timing only: this pest's traps decide nothing" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char small[SAY_SHORT], whole[SAY_LINE];
		say_rule_short(&row[i].r, small);
		say_rule(&row[i].r, whole, sizeof whole);
		if (strcmp(small, row[i].small) != 0 ||
			strcmp(whole, row[i].whole) != 0)
			fail_msg("%s: \"%s\", \"%s\"", row[i].why, small, whole);
	}
}

static void doubts_are_named_with_their_numbers(void **state)
{
	const struct judgement j = { .verdict = VERDICT_UNDER,
		.questionable = true,
		.doubts = DOUBT_LURE | DOUBT_CARD | DOUBT_LONG | DOUBT_UNREAD,
		.lure_overdue_days = 14,
		.card_moths = 32,
		.long_nights = 12,
		.read = 3,
		.traps = 4 };
	char got[SAY_LINE];

	(void)state;
	say_doubts(&j, got, sizeof got);
	assert_string_equal(got,
		"lure was 14 d overdue, card at 32 moths, average over 12 "
		"nights, 3 of 4 traps read");
	assert_string_equal(say_verdict(&j), "under?");
	assert_int_equal(say_verdict_tone(&j), TONE_UNSURE);
}

static void every_unknown_says_what_it_lacks(void **state)
{
	char got[SAY_LINE];

	(void)state;
	for (int lacking = LACKING_NOTHING + 1; lacking < LACKING_COUNT; lacking++)
		for (int unread = UNREAD_NO; unread < UNREAD_COUNT; unread++) {
			const struct judgement j = { .verdict = VERDICT_UNKNOWN,
				.lacking = (enum lacking)lacking,
				.unread = (enum unread)unread,
				.traps = 1 };
			say_lacking(&j, got, sizeof got);
			if (!*got)
				fail_msg("lacking %d, unread %d says nothing", lacking,
					unread);
		}
}

static void service_says_the_worst_of_lure_and_card(void **state)
{
	static const struct {
		const char *why;
		struct lure_state lure;
		struct card_state card;
		const char *want;
	} row[] = {
		{ "all fine", { .state = SERVICE_FINE, .kind = 1 },
			{ .state = SERVICE_FINE }, "" },
		{ "a lure that nobody named has no due date", { .state = SERVICE_NONE },
			{ .state = SERVICE_FINE }, "lure not known" },
		{ "lure overdue",
			{ .state = SERVICE_OVERDUE, .kind = 1, .overdue_days = 3 },
			{ .state = SERVICE_FINE }, "lure 3 d late" },
		{ "will not last until the run after: with its day",
			{ .state = SERVICE_NEXT_RUN, .kind = 1, .due = 20661 },
			{ .state = SERVICE_FINE }, "lure due 27 Jul" },
		{ "both", { .state = SERVICE_DUE, .kind = 1 }, { .state = SERVICE_DUE },
			"lure due, card due" },
		{ "a full card", { .state = SERVICE_FINE, .kind = 1 },
			{ .state = SERVICE_OVERDUE, .mark = CARD_FLOOR }, "card full" },
		{ "stir the glue", { .state = SERVICE_FINE, .kind = 1 },
			{ .state = SERVICE_FINE, .mark = CARD_STIR }, "stir glue" },
		{ "stirred already", { .state = SERVICE_FINE, .kind = 1 },
			{ .state = SERVICE_FINE,
				.mark = CARD_STIR,
				.stirred_since_mark = true },
			"" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char got[SAY_SHORT * 2];
		say_service(&row[i].lure, &row[i].card, got, sizeof got);
		if (strcmp(got, row[i].want) != 0)
			fail_msg("%s: \"%s\"", row[i].why, got);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_visit_says_count_and_flags_in_a_narrow_column),
		cmocka_unit_test(a_threshold_is_said_short_and_whole),
		cmocka_unit_test(doubts_are_named_with_their_numbers),
		cmocka_unit_test(every_unknown_says_what_it_lacks),
		cmocka_unit_test(service_says_the_worst_of_lure_and_card),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
