/* Whatever the visits are, answers stay within their contracts: no fault, no unknown
 * that does not say what it lacks, no number where nothing was read. */
#include "season/flightline.h"
#include "season/judge.h"

#include "season/log.h"

enum { CASES = 20000, TRAPS = 3 };

static uint32_t next_random(uint32_t *seed, uint32_t n)
{
	*seed = *seed * 1664525U + 1013904223U;
	return (*seed >> 8) % n;
}

static int32_t odd_number(uint32_t *seed)
{
	static const int32_t odd[] = { 0, 1, 2, 7, 30, 9999, 10000, -1, -2, INT32_MIN,
		INT32_MAX };

	return odd[next_random(seed, COUNT_OF(odd))];
}

/* Days from 1900 on, at times two visits on one day, at times a year apart. */
static void make_visits(struct log *log, uint32_t *seed)
{
	static const int32_t steps[] = { 0, 1, 3, 5, 7, 7, 7, 7, 14, 21, 366, 4000 };
	int32_t day = day_from_ymd(1900, 1, 1);

	log->n = next_random(seed, 12);
	for (size_t i = 0; i < log->n; i++) {
		struct visit v = { .trap = 1 };
		day += steps[next_random(seed, COUNT_OF(steps))];
		v.day = day;
		v.outcome = (enum outcome)next_random(seed, OUTCOME_COUNT);
		v.reason = (enum reason)next_random(seed, REASON_COUNT);
		v.count = odd_number(seed);
		v.others = odd_number(seed);
		v.new_card = (int64_t)next_random(seed, 3);
		v.new_lure = (int64_t)next_random(seed, 3);
		v.stirred = next_random(seed, 2) == 0;
		log->visits[i] = v;
	}
	diary_read(&log->diary, log->visits, log->n);
}

static struct rule make_rule(uint32_t *seed)
{
	static const int32_t values[] = { 0, 50, 100, 500, 3000, 99999999 };

	return (struct rule){ .measure = (enum measure)next_random(seed, MEASURE_COUNT),
		.span_kind = (enum span_kind)next_random(seed, SPAN_COUNT),
		.span = odd_number(seed),
		.comparator = (enum comparator)next_random(seed, COMPARATOR_COUNT),
		.value_x100 = values[next_random(seed, COUNT_OF(values))] };
}

static int32_t some_day(const struct log *log, uint32_t *seed)
{
	int32_t last = log->n > 0 ? log->visits[log->n - 1].day : 0;

	return last - 20 + (int32_t)next_random(seed, 60);
}

static void check_judgement(const struct judgement *j, uint32_t seed)
{
	bool unknown = j->verdict == VERDICT_UNKNOWN;

	if (unknown != (j->lacking != LACKING_NOTHING))
		fail_msg("seed %u: %s lacks %d", seed, verdict_word(j->verdict),
			(int)j->lacking);
	if (j->lacking == LACKING_READING && j->unread == UNREAD_NO)
		fail_msg("seed %u: a reading lacks, but not why", seed);
	if (j->unread_nights < 0 || j->nights < 0 || j->moths < 0 || j->read < 0 ||
		j->read > j->traps)
		fail_msg("seed %u: a number below none", seed);
	if (!j->value.open && ratio_cmp(j->value.lo, j->value.hi) > 0)
		fail_msg("seed %u: bounds the wrong way round", seed);
	if ((j->verdict == VERDICT_UNDER || j->verdict == VERDICT_NEAR) &&
		j->nights == 0 && j->to == DAY_NONE)
		fail_msg("seed %u: under, with nothing read", seed);
}

static void any_diary_gives_judgements_that_keep_their_contract(void **state)
{
	uint32_t seed = 1;
	(void)state;
	for (int i = 0; i < CASES; i++) {
		struct log logs[TRAPS];
		struct subject s[TRAPS];
		uint32_t began = seed;
		struct rule r = make_rule(&seed);

		for (size_t t = 0; t < TRAPS; t++) {
			logs[t] = (struct log){ .n = 0 };
			make_visits(&logs[t], &seed);
			s[t] = (struct subject){ .diary = &logs[t].diary };
		}
		struct moment m = { .day = some_day(&logs[0], &seed), .dd = -1 };
		m.biofix = next_random(&seed, 2) ? DAY_NONE : some_day(&logs[0], &seed);
		m.flight_start = next_random(&seed, 2) ? DAY_NONE : m.day - 9;
		m.treated =
			next_random(&seed, 2) ? DAY_NONE : some_day(&logs[0], &seed);
		enum fit fit = (enum fit)next_random(&seed, 3);
		struct judgement j =
			measure_of_block(r.measure)
				? judge_block(&r, fit, s, TRAPS, &m, &limits_usual)
				: judge_trap(&r, fit, s, &m, &limits_usual);
		check_judgement(&j, began);
		for (size_t t = 0; t < TRAPS; t++)
			log_free(&logs[t]);
	}
}

static void check_week(const struct weekly *w, uint32_t seed)
{
	if (w->unread == UNREAD_NO && (w->nights < 1 || w->to - w->from != w->nights))
		fail_msg("seed %u: read over %d nights", seed, (int)w->nights);
	if (w->moths < 0 || w->nights < 0)
		fail_msg("seed %u: less than none", seed);
	if ((weekly_x10(w) < 0) != (w->unread != UNREAD_NO))
		fail_msg("seed %u: a rate of what was not read", seed);
}

static void any_diary_gives_weeks_marks_and_service(void **state)
{
	static struct lure_kind lure[] = { { .id = 1, .life_days = 21 },
		{ .id = 2,
			.life_days = 0,
			.hot_days = -4,
			.hot_from = 1101,
			.hot_to = 31 } };
	static struct card_kind card[] = { { .id = 1,
		.life_days = 30,
		.stir_at = 20,
		.change_at = 30,
		.floor_at = 50 } };
	struct lure_kinds lures = { lure, 2, 2 };
	struct card_kinds cards = { card, 1, 1 };
	static struct mark marks[4];
	uint32_t seed = 2;
	(void)state;
	for (int i = 0; i < CASES; i++) {
		struct log log = { .n = 0 };
		struct brings b = { 0 };
		uint32_t began = seed;

		make_visits(&log, &seed);
		int32_t day = some_day(&log, &seed);
		struct weekly w = weekly_catch(&log.diary, day, &limits_usual);
		check_week(&w, began);
		for (int k = 0; k < 9 && w.unread == UNREAD_NO; k++) {
			w = weekly_before(&log.diary, &w, &limits_usual);
			check_week(&w, began);
		}
		flightline_of_trap(&log.diary, day - 21, day, marks);
		struct lure_state l = service_lure(&log.diary, &lures, day, day + 7);
		struct card_state c = service_card(&log.diary, &cards, day, day + 7);
		assert_true(l.overdue_days >= 0 && c.overdue_days >= 0 && c.moths >= 0);
		service_bring(&b, &log.diary, &lures, &cards, day, day + 7);
		free(b.items);
		log_free(&log);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(any_diary_gives_judgements_that_keep_their_contract),
		cmocka_unit_test(any_diary_gives_weeks_marks_and_service),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
