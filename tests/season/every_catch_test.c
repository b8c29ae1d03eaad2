/* Every true catch that fits a small diary is tried: none may contradict a verdict.
 * The judge only sees the visits; here the moths of each night (or week) are known. */
#include "season/judge.h"

#include "season/log.h"

#include <stdio.h>

enum { NIGHTS = 7, CASES = 4000 };

static uint32_t next_random(uint32_t *seed, uint32_t n)
{
	*seed = *seed * 1664525U + 1013904223U;
	return (*seed >> 8) % n;
}

/* One diary of a few nights, all possible truths of it, and what they say. */
struct trial {
	struct log log;
	int32_t hung, asked;
	int32_t caught[NIGHTS + 1]; /* night i is that before day i + 1 */
	bool all_pass, none_pass;
	struct rule rule;
	int32_t from, end; /* the nights that the rule is about */
};

static bool truth_passes(const struct trial *t)
{
	int64_t sum = 0;
	int64_t per = t->rule.measure == MEASURE_TRAP_NIGHT ? t->rule.span : 1;

	for (int32_t i = t->from; i < t->end; i++)
		sum += t->caught[i];
	int64_t left = sum * 100, right = t->rule.value_x100 * per;
	return t->rule.comparator == AT_LEAST ? left >= right : left > right;
}

static void truth_noted(struct trial *t)
{
	if (truth_passes(t))
		t->none_pass = false;
	else
		t->all_pass = false;
}

static void try_nights(struct trial *t, int32_t day, size_t visit, int32_t sum);

/* After the visit of `day`, if there was one, the next interval begins. */
static void try_visit(struct trial *t, int32_t day, size_t visit, int32_t sum)
{
	while (visit < t->log.n && t->log.visits[visit].day <= log_day(day)) {
		const struct visit *v = &t->log.visits[visit++];
		if (v->outcome == OUTCOME_COUNTED && sum != v->count)
			return;
		if (v->outcome != OUTCOME_SKIPPED && sum < v->count)
			return;
		sum = v->outcome == OUTCOME_SKIPPED ? sum : 0;
	}
	try_nights(t, day, visit, sum);
}

static void try_nights(struct trial *t, int32_t day, size_t visit, int32_t sum)
{
	static const int32_t nightly[] = { 0, 1, 2, 3, 20 };

	if (day == t->asked) {
		truth_noted(t);
		return;
	}
	for (size_t i = 0; i < COUNT_OF(nightly); i++) {
		t->caught[day] = nightly[i];
		try_visit(t, day + 1, visit, sum + nightly[i]);
	}
}

/* A random diary: hung, then on some days a visit; counts from a random truth. */
static void make_diary(struct trial *t, uint32_t *seed)
{
	static const enum outcome outcomes[] = { OUTCOME_COUNTED, OUTCOME_COUNTED,
		OUTCOME_COUNTED, OUTCOME_FLOOR, OUTCOME_SKIPPED, OUTCOME_SPOILED };
	int32_t sum = 0;

	t->hung = (int32_t)next_random(seed, 2);
	t->log.n = 0;
	for (int32_t day = t->hung; day <= t->asked; day++) {
		struct visit v = { .day = log_day(day), .count = COUNT_NONE };
		sum += day > t->hung ? (int32_t)next_random(seed, 4) : 0;
		if (day > t->hung && next_random(seed, 2) == 0)
			continue;
		v.outcome =
			day == t->hung ? OUTCOME_HUNG : outcomes[next_random(seed, 6)];
		if (v.outcome == OUTCOME_COUNTED || v.outcome == OUTCOME_FLOOR)
			v.count = sum;
		if (v.outcome == OUTCOME_SPOILED && next_random(seed, 2) == 0)
			v.count = sum / 2;
		sum = v.outcome == OUTCOME_SKIPPED ? sum : 0;
		t->log.visits[t->log.n++] = v;
	}
	diary_read(&t->log.diary, t->log.visits, t->log.n);
}

static void make_rule(struct trial *t, uint32_t *seed)
{
	bool night = next_random(seed, 2) == 0;

	t->rule = (struct rule){ .pest = 1 };
	t->rule.measure = night ? MEASURE_TRAP_NIGHT : MEASURE_TRAP_TOTAL;
	t->rule.comparator = next_random(seed, 2) == 0 ? AT_LEAST : MORE_THAN;
	t->rule.span = 1 + (int32_t)next_random(seed, 4);
	t->rule.value_x100 = 50 * (int32_t)(1 + next_random(seed, night ? 6 : 16));
	if (!night && next_random(seed, 2) == 0)
		t->rule.span_kind = next_random(seed, 2) == 0 ? SPAN_HUNG : SPAN_BIOFIX;
}

/* The nights as the header says: to the last clearing, or to the asked day when the
 * trap is stale or was skipped. */
static void find_nights(
	struct trial *t, struct moment *m, const struct limits *l, uint32_t *seed)
{
	struct stand s = diary_stand(&t->log.diary, log_day(t->asked));
	bool unread = s.skipped != DAY_NONE ||
		      log_day(t->asked) - s.cleared > l->stale_nights;

	m->biofix = log_day(t->hung + (int32_t)next_random(seed, 3));
	t->end = unread ? t->asked : s.cleared - log_day(0);
	t->from = t->end - t->rule.span;
	if (t->rule.span_kind == SPAN_HUNG)
		t->from = t->hung;
	if (t->rule.span_kind == SPAN_BIOFIX)
		t->from = m->biofix - log_day(0);
}

static void check_trial(struct trial *t, enum verdict v, uint32_t seed)
{
	bool under = v == VERDICT_UNDER || v == VERDICT_NEAR;

	if (v == VERDICT_OVER && !t->all_pass)
		fail_msg("seed %u: OVER, yet a catch that fits is not", seed);
	if (under && !t->none_pass)
		fail_msg("seed %u: under, yet a catch that fits is over", seed);
}

static void no_nightly_catch_contradicts_a_verdict(void **state)
{
	struct limits l = limits_usual;
	uint32_t seed = 20260504;
	int told[VERDICT_COUNT] = { 0 };
	(void)state;

	l.stale_nights = 2;
	for (int i = 0; i < CASES; i++) {
		struct moment m = { .day = log_day(0),
			.biofix = DAY_NONE,
			.flight_start = DAY_NONE,
			.dd = -1,
			.treated = DAY_NONE };
		struct trial t = { .all_pass = true, .none_pass = true };
		uint32_t began = seed;

		t.asked = 4 + (int32_t)next_random(&seed, NIGHTS - 4);
		make_diary(&t, &seed);
		make_rule(&t, &seed);
		find_nights(&t, &m, &l, &seed);
		m.day = log_day(t.asked);
		struct subject s = { .diary = &t.log.diary };
		struct judgement j = judge_trap(&t.rule, FIT_YES, &s, &m, &l);
		told[j.verdict]++;
		/* Nights before the first day stand for any catch as well. */
		if (t.from >= 0 && t.from < t.end && j.verdict != VERDICT_UNKNOWN) {
			try_visit(&t, 0, 0, 0);
			check_trial(&t, j.verdict, began);
		}
		log_free(&t.log);
	}
	assert_true(told[VERDICT_OVER] > CASES / 20);
	assert_true(told[VERDICT_UNDER] + told[VERDICT_NEAR] > CASES / 20);
	assert_true(told[VERDICT_UNKNOWN] > CASES / 20);
}

/* The same by weeks: visits a week apart, the catch of each week 0 to 7. */
enum { WEEKS = 4, WEEKLY_MAX = 7 };

struct weekly_trial {
	struct log log;
	struct rule rule;
	int32_t caught[WEEKS];
	bool all_pass, none_pass;
};

static bool week_passes(const struct weekly_trial *t, int32_t week)
{
	int32_t x100 = t->caught[week] * 100;

	return t->rule.comparator == AT_LEAST ? x100 >= t->rule.value_x100
					      : x100 > t->rule.value_x100;
}

static bool visits_agree(const struct weekly_trial *t)
{
	int32_t sum = 0;

	for (int32_t w = 0; w < WEEKS; w++) {
		const struct visit *v = &t->log.visits[w + 1];
		sum += t->caught[w];
		if (v->outcome == OUTCOME_SKIPPED)
			continue;
		if (v->outcome == OUTCOME_COUNTED ? sum != v->count : sum < v->count)
			return false;
		sum = 0;
	}
	return true;
}

static void try_weeks(struct weekly_trial *t, int32_t week)
{
	if (week < WEEKS) {
		for (t->caught[week] = 0; t->caught[week] <= WEEKLY_MAX;
			t->caught[week]++)
			try_weeks(t, week + 1);
		return;
	}
	if (!visits_agree(t))
		return;
	bool pass = true;
	for (int32_t w = WEEKS - t->rule.span; w < WEEKS; w++)
		pass = pass && week_passes(t, w);
	if (pass)
		t->none_pass = false;
	else
		t->all_pass = false;
}

static void make_weeks(struct weekly_trial *t, uint32_t *seed)
{
	static const enum outcome outcomes[] = { OUTCOME_COUNTED, OUTCOME_COUNTED,
		OUTCOME_COUNTED, OUTCOME_FLOOR, OUTCOME_SKIPPED, OUTCOME_SPOILED };
	int32_t sum = 0;

	t->log.n = WEEKS + 1;
	t->log.visits[0] = (struct visit){ .day = log_day(0), .count = COUNT_NONE };
	for (int32_t w = 0; w < WEEKS; w++) {
		struct visit v = { .day = log_day(7 * w + 7), .count = COUNT_NONE };
		sum += (int32_t)next_random(seed, WEEKLY_MAX - 1);
		v.outcome = outcomes[next_random(seed, 6)];
		if (v.outcome == OUTCOME_COUNTED || v.outcome == OUTCOME_FLOOR)
			v.count = sum;
		if (v.outcome == OUTCOME_SPOILED && next_random(seed, 2) == 0)
			v.count = sum;
		sum = v.outcome == OUTCOME_SKIPPED ? sum : 0;
		t->log.visits[w + 1] = v;
	}
	diary_read(&t->log.diary, t->log.visits, t->log.n);
	t->rule = (struct rule){ .pest = 1, .measure = MEASURE_TRAP_WEEK };
	t->rule.span = 2 + (int32_t)next_random(seed, 2);
	t->rule.comparator = next_random(seed, 2) == 0 ? AT_LEAST : MORE_THAN;
	t->rule.value_x100 = 50 * (int32_t)(1 + next_random(seed, 10));
}

static void no_weekly_catch_contradicts_a_verdict(void **state)
{
	uint32_t seed = 30;
	int told[VERDICT_COUNT] = { 0 };
	(void)state;

	for (int i = 0; i < CASES / 2; i++) {
		struct moment m = { .day = log_day(7 * WEEKS),
			.biofix = DAY_NONE,
			.flight_start = DAY_NONE,
			.dd = -1,
			.treated = DAY_NONE };
		struct weekly_trial t = { .all_pass = true, .none_pass = true };
		uint32_t began = seed;

		make_weeks(&t, &seed);
		struct subject s = { .diary = &t.log.diary };
		struct judgement j =
			judge_trap(&t.rule, FIT_YES, &s, &m, &limits_usual);
		told[j.verdict]++;
		try_weeks(&t, 0);
		log_free(&t.log);
		if (j.verdict == VERDICT_OVER && !t.all_pass)
			fail_msg("seed %u: OVER, yet weeks that fit are not", began);
		if ((j.verdict == VERDICT_UNDER || j.verdict == VERDICT_NEAR) &&
			!t.none_pass)
			fail_msg("seed %u: under, yet weeks that fit are over", began);
	}
	assert_true(told[VERDICT_OVER] > CASES / 100);
	assert_true(told[VERDICT_UNDER] + told[VERDICT_NEAR] > CASES / 20);
	assert_true(told[VERDICT_UNKNOWN] > CASES / 20);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(no_nightly_catch_contradicts_a_verdict),
		cmocka_unit_test(no_weekly_catch_contradicts_a_verdict),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
