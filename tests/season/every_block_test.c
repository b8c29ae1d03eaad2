/* Every true catch of a small block that fits its visits is tried: none may contradict
 * the verdict on the block's mean. */
#include "season/judge.h"

#include "season/log.h"

enum { CASES = 1000 };

static uint32_t next_random(uint32_t *seed, uint32_t n)
{
	*seed = *seed * 1664525U + 1013904223U;
	return (*seed >> 8) % n;
}

/* A block of three traps over one or two weeks; the mean is over the traps read. */
enum { TRAPS = 3 };

struct block_trial {
	struct log log[TRAPS];
	struct rule rule;
	int32_t caught[TRAPS];
	bool all_pass, none_pass;
};

static bool is_read(const struct block_trial *t, int32_t trap)
{
	enum outcome o = t->log[trap].visits[1].outcome;

	return o == OUTCOME_COUNTED || o == OUTCOME_FLOOR;
}

static bool mean_passes(const struct block_trial *t, bool of_all)
{
	int32_t sum = 0, n = 0;

	for (int32_t i = 0; i < TRAPS; i++) {
		if (!of_all && !is_read(t, i))
			continue;
		sum += t->caught[i];
		n++;
	}
	return n > 0 &&
	       (t->rule.comparator == AT_LEAST ? sum * 100 >= t->rule.value_x100 * n
					       : sum * 100 > t->rule.value_x100 * n);
}

static void try_traps(struct block_trial *t, int32_t trap)
{
	if (trap == TRAPS) {
		/* OVER may rest on either mean, under on that of the traps read. */
		if (mean_passes(t, false))
			t->none_pass = false;
		else if (!mean_passes(t, true))
			t->all_pass = false;
		return;
	}
	const struct visit *v = &t->log[trap].visits[1];
	int32_t least = v->count < 0 ? 0 : v->count;
	int32_t most = v->outcome == OUTCOME_COUNTED ? least : least + 20;
	for (t->caught[trap] = least; t->caught[trap] <= most; t->caught[trap]++)
		try_traps(t, trap + 1);
}

static void make_block(struct block_trial *t, uint32_t *seed)
{
	static const enum outcome outcomes[] = { OUTCOME_COUNTED, OUTCOME_COUNTED,
		OUTCOME_COUNTED, OUTCOME_FLOOR, OUTCOME_SKIPPED, OUTCOME_SPOILED };

	for (int32_t i = 0; i < TRAPS; i++) {
		struct visit *v = t->log[i].visits;
		v[0] = (struct visit){ .day = log_day(0), .count = COUNT_NONE };
		v[1] = (struct visit){ .day = log_day(7), .count = COUNT_NONE };
		v[1].outcome = outcomes[next_random(seed, 6)];
		if (v[1].outcome != OUTCOME_SKIPPED)
			v[1].count = (int32_t)next_random(seed, 7);
		diary_read(&t->log[i].diary, v, 2);
	}
	t->rule = (struct rule){ .measure = MEASURE_BLOCK_WEEK, .span = 1 };
	t->rule.comparator = next_random(seed, 2) == 0 ? AT_LEAST : MORE_THAN;
	t->rule.value_x100 = 50 * (int32_t)(1 + next_random(seed, 12));
}

static void no_catch_of_a_block_contradicts_its_verdict(void **state)
{
	uint32_t seed = 7;
	int told[VERDICT_COUNT] = { 0 };
	(void)state;

	for (int i = 0; i < CASES; i++) {
		struct moment m = { .day = log_day(7),
			.biofix = DAY_NONE,
			.flight_start = DAY_NONE,
			.dd = -1,
			.treated = DAY_NONE };
		struct block_trial t = { .all_pass = true, .none_pass = true };
		struct subject s[TRAPS] = { 0 };
		uint32_t began = seed;

		make_block(&t, &seed);
		for (size_t k = 0; k < TRAPS; k++)
			s[k].diary = &t.log[k].diary;
		struct judgement j =
			judge_block(&t.rule, FIT_YES, s, TRAPS, &m, &limits_usual);
		told[j.verdict]++;
		try_traps(&t, 0);
		for (size_t k = 0; k < TRAPS; k++)
			log_free(&t.log[k]);
		if (j.verdict == VERDICT_OVER && !t.all_pass)
			fail_msg("seed %u: OVER, yet a mean that fits is not", began);
		if ((j.verdict == VERDICT_UNDER || j.verdict == VERDICT_NEAR) &&
			!t.none_pass)
			fail_msg("seed %u: under, yet a mean that fits is over", began);
	}
	assert_true(told[VERDICT_OVER] > CASES / 10);
	assert_true(told[VERDICT_UNDER] + told[VERDICT_NEAR] > CASES / 10);
	assert_true(told[VERDICT_UNKNOWN] > CASES / 10);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(no_catch_of_a_block_contradicts_its_verdict),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
