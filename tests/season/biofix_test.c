/* The rules as printed, on logs made for each. What a source says of dates stands
 * beside its row; the counts are ours. */
#include "season/biofix.h"

#include "season/logs.h"

#include <stdio.h>

enum { SAID = 160 };

/* "dated 7-14 or earlier: 0@14 1@14 +2": state, interval, then trap @ day of the visits
 * and how many more. Days after the first of the log. */
static void print_biofix(
	const struct biofix *b, const struct logs *l, char *out, size_t size)
{
	size_t at = (size_t)snprintf(out, size, "%s", biofix_state_word(b->state));

	if (b->after != DAY_NONE)
		at += (size_t)snprintf(out + at, size - at, " %d-%d%s",
			(int)(b->after - log_day(0)), (int)(b->by - log_day(0)),
			b->or_earlier ? " or earlier" : "");
	for (size_t i = 0; i < b->n_seen; i++)
		at += (size_t)snprintf(out + at, size - at, "%s%zu@%d",
			i == 0 ? ": " : " ", b->seen[i].diary,
			(int)(l->log[b->seen[i].diary].visits[b->seen[i].visit].day -
				log_day(0)));
	if (b->n_unlisted > 0)
		snprintf(out + at, size - at, " +%zu", b->n_unlisted);
}

struct biofix_case {
	const char *why, *traps[LOGS_MAX];
	int last; /* the day it is asked */
	const char *want;
};

static void try_rule(const char *word, const struct biofix_case *row, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		struct logs l;
		char got[SAID];
		logs_read(&l, row[i].traps);
		struct biofix b = biofix_suggest(biofix_rule_find(word), l.list, l.n,
			log_day(0), log_day(row[i].last));
		print_biofix(&b, &l, got, sizeof got);
		logs_free(&l);
		if (strcmp(got, row[i].want) != 0)
			fail_msg("%s: %s: %s, not %s", word, row[i].why, got,
				row[i].want);
	}
}

/* Our own rule. */
static void sustained(void **state)
{
	static const struct biofix_case row[] = {
		{ "nothing yet", { "0h 7c0 14c0" }, 14, "none yet" },
		{ "no visit at all", { "" }, 14, "none yet" },
		{ "not read at all", { "0h 7x 14x" }, 14, "none yet" },
		{ "a stray moth, then a run", { "0h 7c0 14c1 21c0 28c2 35c5" }, 99,
			"dated 21-28: 0@28 0@35" },
		{ "the last check caught", { "0h 7c0 14c2" }, 14, "waits 7-14: 0@14" },
		{ "and the next is a fortnight away", { "0h 7c0 14c2" }, 28,
			"waits 7-14: 0@14" },
		{ "no next check any more", { "0h 7c0 14c2" }, 29, "none yet" },
		{ "waits over a spoiled check", { "0h 7c0 14c2 21x" }, 21,
			"waits 7-14: 0@14" },
		{ "at the first check", { "0h 7c2 14c2" }, 99,
			"dated 0-7 or earlier: 0@7 0@14" },
	};
	(void)state;
	try_rule("sustained", row, COUNT_OF(row));
}

/* University of Georgia advice in a Clemson Extension news article, 2021: Oriental
 * fruit moth, first sustained catch of 2 or more. */
static void sustained_two(void **state)
{
	static const struct biofix_case row[] = {
		{ "one moth a week is not enough", { "0h 7c0 14c1 21c1 28c1" }, 99,
			"none yet" },
		{ "two and two", { "0h 7c0 14c1 21c2 28c2" }, 99,
			"dated 14-21: 0@21 0@28" },
		{ "two, then one", { "0h 7c0 14c2 21c1 28c1" }, 99, "none yet" },
		{ "of two traps together", { "0h 7c0 14c1 21c1", "0h 7c0 14c1 21c1" },
			99, "dated 7-14: 0@14 1@14 0@21 1@21" },
		{ "reached on the second day of the run",
			{ "0h 7c0 14c1 21c1", "1h 8c0 15c1 22c1" }, 99,
			"dated 7-15: 0@14 1@15 0@21 1@22" },
	};
	(void)state;
	try_rule("sustained-two", row, COUNT_OF(row));
}

/* treefruit.com.au, Calculating degree days for moth pests: first sustained flight,
 * with about two weeks of zero catch before it. */
static void sustained_after_zeros(void **state)
{
	static const struct biofix_case row[] = {
		{ "two weeks of zeros", { "0h 7c0 14c0 21c1 28c1" }, 99,
			"dated 14-21: 0@21 0@28" },
		{ "one day fewer", { "1h 7c0 14c0 21c1 28c1" }, 99,
			"dated 14-21 or earlier: 0@21 0@28" },
		{ "one week of them not read", { "0h 7x 14c0 21c1 28c1" }, 99,
			"dated 14-21 or earlier: 0@21 0@28" },
		{ "a stray moth among them", { "0h 7c1 14c0 21c0 28c0 35c1 42c1" }, 99,
			"dated 28-35: 0@35 0@42" },
		{ "a stray moth just before", { "0h 7c0 14c1 21c0 28c1 35c1" }, 99,
			"dated 21-28 or earlier: 0@28 0@35" },
		{ "no zeros", { "0h 7c1 14c1" }, 99, "dated 0-7 or earlier: 0@7 0@14" },
	};
	(void)state;
	try_rule("sustained-after-zeros", row, COUNT_OF(row));
}

/* Intermountain fruit guide, leafrollers; Omeg 2001, M.S. thesis, Oregon State Univ.:
 * first moth, on its date. */
static void first_moth(void **state)
{
	static const struct biofix_case row[] = {
		{ "weekly", { "0h 7c0 14c1 21c0" }, 99, "dated 7-14: 0@14" },
		{ "daily", { "0h 1c0 2c0 3c1" }, 99, "dated 2-3: 0@3" },
		{ "another trap was unread before",
			{ "0h 7c0 14c0 21c1", "0h 7c0 14x 21c0" }, 99,
			"dated 14-21 or earlier: 0@21" },
		{ "the same trap was", { "0h 7c0 14x 21c1" }, 99, "dated 7-21: 0@21" },
		{ "a trap read less often", { "0h 7c0 14c1", "0h 21c1" }, 99,
			"dated 0-14: 0@14" },
		{ "a moth on a spoiled card", { "0h 7c0 14x1" }, 99,
			"dated 7-14: 0@14" },
		{ "none", { "0h 7c0 14c0" }, 99, "none yet" },
	};
	(void)state;
	try_rule("first-moth", row, COUNT_OF(row));
}

/* Purdue, Facts for Fancy Fruit, codling moth: not the first moth, 3 to 5 in all. Its
 * worked case: 1 in one week, 3 more after. */
static void three_moths(void **state)
{
	static const struct biofix_case row[] = {
		{ "1 in one week, 3 more after", { "0h 7c0 14c1 21c3" }, 99,
			"dated 14-21: 0@14 0@21" },
		{ "two in all", { "0h 7c0 14c1 21c1" }, 99, "none yet" },
		{ "three in all", { "0h 7c0 14c1 21c1 28c1" }, 99,
			"dated 21-28: 0@14 0@21 0@28" },
		{ "three traps with one",
			{ "0h 7c0 14c1", "0h 7c0 14c1", "0h 7c0 14c1" }, 99,
			"dated 7-14: 0@14 1@14 2@14" },
		{ "an unread trap may have had the third",
			{ "0h 7c0 14c2 21c0 28c1", "0h 7c0 14c0 21x 28c0" }, 99,
			"dated 21-28 or earlier: 0@14 0@28" },
	};
	(void)state;
	try_rule("three-moths", row, COUNT_OF(row));
}

/* Strand 1999, UC ANR Publ. 3389: peach twig borer, two or more successive counts with
 * moths at intervals of 2 to 3 days; the first of them. */
static void two_counts(void **state)
{
	static const struct biofix_case row[] = {
		{ "every third day", { "0h 3c0 6c1 9c0 12c1 15c2" }, 99,
			"dated 9-12: 0@12 0@15" },
		{ "every other day", { "0h 2c0 4c1 6c1" }, 99, "dated 2-4: 0@4 0@6" },
		{ "four days apart", { "0h 3c0 6c1 10c1" }, 99, "read too seldom" },
		{ "weekly", { "0h 7c0 14c1 21c2" }, 99, "read too seldom" },
		{ "caught weekly, then read often", { "0h 7c1 10c1 13c2" }, 99,
			"dated 7-10 or earlier: 0@10 0@13" },
		{ "the last count caught", { "0h 3c0 6c1" }, 6, "waits 3-6: 0@6" },
		{ "nothing caught", { "0h 3c0 6c0" }, 6, "none yet" },
	};
	(void)state;
	try_rule("two-counts", row, COUNT_OF(row));
}

/* Virginia Tech, tree-fruit note on biofix dates, 2018: at least 2 traps, read daily,
 * catch on at least 3 consecutive evenings; the first of those. */
static void three_evenings(void **state)
{
	static const struct biofix_case row[] = {
		{ "two traps on three evenings",
			{ "0h 1c0 2c1 3c1 4c1", "0h 1c0 2c2 3c1 4c1" }, 99,
			"dated 1-2: 0@2 1@2 0@3 1@3 0@4 1@4" },
		{ "two of three in turn",
			{ "0h 1c0 2c1 3c0 4c1", "0h 1c0 2c1 3c1 4c0",
				"0h 1c0 2c0 3c1 4c1" },
			99, "dated 1-2: 0@2 1@2 1@3 2@3 0@4 2@4" },
		{ "one trap alone", { "0h 1c0 2c9 3c9 4c9", "0h 1c0 2c0 3c0 4c0" }, 99,
			"none yet" },
		{ "two evenings", { "0h 1c0 2c1 3c1 4c0", "0h 1c0 2c2 3c1 4c1" }, 99,
			"none yet" },
		{ "two evenings so far", { "0h 1c0 2c1 3c1", "0h 1c0 2c2 3c1" }, 3,
			"waits 1-2: 0@2 1@2 0@3 1@3" },
		{ "two evenings, and the traps not read since",
			{ "0h 1c0 2c1 3c1", "0h 1c0 2c2 3c1" }, 5, "none yet" },
		{ "a day without reading breaks it",
			{ "0h 1c0 2c1 3c1 5c1 6c0", "0h 1c0 2c2 3c1 5c1 6c0" }, 99,
			"read too seldom" },
		{ "so does a night without a trap",
			{ "0h 1c0 2c1 3p1 4h 5c1 6c0", "0h 1c0 2c1 3p1 4h 5c1 6c0" },
			99, "none yet" },
		{ "from the first evening", { "0h 1c1 2c1 3c1", "0h 1c1 2c1 3c1" }, 99,
			"dated 0-1 or earlier: 0@1 1@1 0@2 1@2 0@3 1@3" },
		{ "weekly visits cannot tell",
			{ "0h 7c0 14c3 21c9 28c9", "0h 7c0 14c3 21c9 28c9" }, 99,
			"read too seldom" },
		{ "weekly, with nothing caught", { "0h 7c0 14c0" }, 99,
			"read too seldom" },
	};
	(void)state;
	try_rule("three-evenings", row, COUNT_OF(row));
}

/* UW-Madison Fruit Program, 15 June 2018: a mean over 1 per trap on two consecutive
 * nights. Which of the two is not stated: both are given. */
static void two_nights(void **state)
{
	static const struct biofix_case row[] = {
		{ "over 1 twice", { "0h 1c0 2c1 3c1", "0h 1c0 2c2 3c2" }, 99,
			"dated 1-3: 0@2 1@2 0@3 1@3" },
		{ "just 1", { "0h 1c0 2c1 3c1", "0h 1c0 2c1 3c1" }, 99, "none yet" },
		{ "once", { "0h 1c0 2c3 3c1" }, 99, "none yet" },
		{ "weekly", { "0h 7c0 14c30 21c30" }, 99, "read too seldom" },
	};
	(void)state;
	try_rule("two-nights", row, COUNT_OF(row));
}

/* NIAB apple guide, niab.com/node/2213: summer fruit tortrix, first catch of 5 or more
 * moths per trap, read weekly. */
static void five_in_a_trap(void **state)
{
	static const struct biofix_case row[] = {
		{ "four", { "0h 7c0 14c4" }, 99, "none yet" },
		{ "five", { "0h 7c0 14c4 21c5" }, 99, "dated 14-21: 0@21" },
		{ "five in two traps is not five", { "0h 7c0 14c3", "0h 7c0 14c2" }, 99,
			"none yet" },
		{ "nine in two weeks", { "0h 7c0 21c9" }, 99, "none yet" },
		{ "ten in two weeks", { "0h 7c0 21c10" }, 99, "dated 7-21: 0@21" },
		{ "five within seven nights of short readings", { "0h 3c2 7c2 10c3" },
			99, "dated 7-10: 0@7 0@10" },
		{ "five in eight nights", { "0h 3c2 7c0 11c3" }, 99, "none yet" },
		{ "a full card", { "0h 7c0 14f5" }, 99, "dated 7-14: 0@14" },
	};
	(void)state;
	try_rule("five-in-a-trap", row, COUNT_OF(row));
}

/* Ohio State University, Wayne County, 9 May 2014: a mean of 3 or more per trap. */
static void mean_three(void **state)
{
	static const struct biofix_case row[] = {
		{ "3 a trap", { "0h 7c0 14c5", "0h 7c0 14c1" }, 99,
			"dated 7-14: 0@14 1@14" },
		{ "one moth fewer", { "0h 7c0 14c4", "0h 7c0 14c1" }, 99, "none yet" },
		{ "of the traps read", { "0h 7c0 14c3", "0h 7c0 14x" }, 99,
			"dated 7-14: 0@14" },
		{ "six in two weeks", { "0h 7c0 21c6" }, 99, "dated 7-21: 0@21" },
		{ "five in two weeks", { "0h 7c0 21c5" }, 99, "none yet" },
	};
	(void)state;
	try_rule("mean-three", row, COUNT_OF(row));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(sustained),
		cmocka_unit_test(sustained_two),
		cmocka_unit_test(sustained_after_zeros),
		cmocka_unit_test(first_moth),
		cmocka_unit_test(three_moths),
		cmocka_unit_test(two_counts),
		cmocka_unit_test(three_evenings),
		cmocka_unit_test(two_nights),
		cmocka_unit_test(five_in_a_trap),
		cmocka_unit_test(mean_three),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
