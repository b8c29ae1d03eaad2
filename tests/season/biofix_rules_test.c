/* What holds for every biofix rule, fixed dates, and what weekly visits cannot tell. */
#include "season/biofix.h"

#include "season/logs.h"

enum { FARMS = 3000, SEASON = 140, TRAPS = 3 };

static void every_rule_is_said_and_found_by_its_word(void **state)
{
	size_t n;
	const struct biofix_rule *rules = biofix_rules(&n);
	(void)state;
	assert_int_equal(n, 13);
	assert_string_equal(rules[0].word, "sustained");
	for (size_t i = 0; i < n; i++) {
		assert_ptr_equal(biofix_rule_find(rules[i].word), &rules[i]);
		assert_true(strlen(rules[i].said) > 0);
		assert_int_equal(rules[i].where[0] != '\0', i > 0);
		assert_int_equal(rules[i].source[0] != '\0', i > 0);
	}
	assert_null(biofix_rule_find("no-such"));
	for (int s = 0; s < BIOFIX_STATE_COUNT; s++)
		assert_true(strlen(biofix_state_word((enum biofix_state)s)) > 0);
}

/* UC IPM, apple maggot: fixed date 1 March. Jones, Doerr & Brunner 2008: summed from 1
 * January. Both are of the north; a season from July on meets them as written. */
static void a_fixed_date_needs_no_trap(void **state)
{
	static const struct {
		const char *word, *first, *last, *want; /* "": not yet */
	} row[] = {
		{ "march-1", "2026-01-01", "2026-12-31", "2026-03-01" },
		{ "march-1", "2026-01-01", "2026-03-01", "2026-03-01" },
		{ "march-1", "2026-01-01", "2026-02-28", "" },
		{ "march-1", "2025-07-01", "2026-06-30", "2026-03-01" },
		{ "january-1", "2026-01-01", "2026-01-01", "2026-01-01" },
		{ "january-1", "2025-07-01", "2025-12-31", "" },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		int32_t first, last, want = DAY_NONE;
		assert_true(day_parse(row[i].first, &first));
		assert_true(day_parse(row[i].last, &last));
		bool dated = day_parse(row[i].want, &want);
		struct biofix b = biofix_suggest(
			biofix_rule_find(row[i].word), NULL, 0, first, last);
		assert_int_equal(b.state, dated ? BIOFIX_DATED : BIOFIX_NONE_YET);
		assert_int_equal(b.by, dated ? want : DAY_NONE);
		assert_int_equal(b.after, dated ? want - 1 : DAY_NONE);
		assert_int_equal(b.n_seen, 0);
	}
}

/* Zalom, Barnett, Rice & Weakley 1992: peach twig borer, first male caught. */
static void a_female_is_not_the_first_male(void **state)
{
	struct log log;
	(void)state;
	log_read(&log, "0h 7c0 14c2 21c3");
	const struct diary *const list[] = { &log.diary };
	const struct biofix_rule *rule = biofix_rule_find("first-male");
	struct biofix b = biofix_suggest(rule, list, 1, log_day(0), log_day(99));
	assert_int_equal(b.by, log_day(14));
	log.visits[2].females = 1;
	b = biofix_suggest(rule, list, 1, log_day(0), log_day(99));
	assert_int_equal(b.by, log_day(14));
	log.visits[2].females = 2;
	b = biofix_suggest(rule, list, 1, log_day(0), log_day(99));
	assert_int_equal(b.by, log_day(21));
	assert_int_equal(b.n_seen, 1);
	log_free(&log);
}

static void how_often_traps_are_read_is_said(void **state)
{
	static const struct {
		const char *why, *traps[LOGS_MAX];
		int want;
	} row[] = {
		{ "weekly", { "0h 7c0 14c1 21c1" }, 7 },
		{ "weekly, one missed", { "0h 7c0 14s 21c1 28c1" }, 7 },
		{ "daily", { "0h 1c0 2c0 3c0" }, 1 },
		{ "mostly daily", { "0h 7c0 8c0 9c0 10c0" }, 1 },
		{ "a spoiled one is no reading", { "0h 30x 37c1" }, 7 },
		{ "never", { "0h" }, 0 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct logs l;
		logs_read(&l, row[i].traps);
		struct biofix b = biofix_suggest(biofix_rule_find("three-evenings"),
			l.list, l.n, log_day(0), log_day(99));
		logs_free(&l);
		if (b.read_nights != row[i].want)
			fail_msg("%s: %d", row[i].why, (int)b.read_nights);
	}
}

static void evidence_beyond_the_list_is_counted(void **state)
{
	struct log log[TRAPS];
	const struct diary *list[5 * TRAPS];
	(void)state;
	for (int i = 0; i < TRAPS; i++)
		log_read(&log[i], "0h 7c0 14c1 21c1");
	for (int i = 0; i < 5 * TRAPS; i++)
		list[i] = &log[i % TRAPS].diary;
	struct biofix b = biofix_suggest(biofix_rule_find("sustained"), list,
		COUNT_OF(list), log_day(0), log_day(99));
	assert_int_equal(b.n_seen, BIOFIX_SEEN_MAX);
	assert_int_equal(b.n_seen + b.n_unlisted, 30);
	for (int i = 0; i < TRAPS; i++)
		log_free(&log[i]);
}

/* What flew into one trap, night by night, and what visits read of it. */
struct farm_truth {
	int32_t nightly[TRAPS][SEASON];
	struct log weekly[TRAPS];
	const struct diary *list[TRAPS];
	bool read_all; /* no visit was skipped or spoiled */
};

static void fly(struct farm_truth *f, uint32_t *seed)
{
	int start = draw(seed, SEASON - 30), rare = 2 + draw(seed, 40);

	for (int t = 0; t < TRAPS; t++)
		for (int night = 0; night < SEASON; night++)
			f->nightly[t][night] = night >= start && draw(seed, rare) == 0
						       ? 1 + draw(seed, 3)
						       : 0;
}

static void visit_trap(struct farm_truth *f, int t, int every, uint32_t *seed)
{
	struct log *log = &f->weekly[t];
	int32_t moths = 0, day = draw(seed, 2);
	struct visit hung = { .trap = 1, .day = log_day(day) };

	*log = (struct log){ .n = 0 };
	log->visits[log->n++] = hung;
	for (int32_t night = day; night < SEASON; night++) {
		struct visit v = hung;
		moths += f->nightly[t][night];
		if ((night + 1 - day) % every != 0 || log->n == LOG_MAX)
			continue;
		v.day = log_day(night + 1);
		v.females = v.count = COUNT_NONE;
		int luck = f->read_all ? 0 : draw(seed, 10);
		v.outcome = luck == 9   ? OUTCOME_SPOILED
			    : luck == 8 ? OUTCOME_SKIPPED
					: OUTCOME_COUNTED;
		if (v.outcome == OUTCOME_COUNTED)
			v.count = moths;
		if (v.outcome != OUTCOME_SKIPPED)
			moths = 0;
		log->visits[log->n++] = v;
	}
	diary_read(&log->diary, log->visits, log->n);
	f->list[t] = &log->diary;
}

static void farm_free(struct farm_truth *f)
{
	for (int t = 0; t < TRAPS; t++)
		log_free(&f->weekly[t]);
}

/* First night whose catch brings all traps that hung to so many moths. */
static int32_t true_night(const struct farm_truth *f, int32_t moths)
{
	int32_t sum = 0;

	for (int32_t night = 0; night < SEASON; night++)
		for (int t = 0; t < TRAPS; t++) {
			if (log_day(night) < f->weekly[t].visits[0].day)
				continue;
			sum += f->nightly[t][night];
			if (sum >= moths)
				return log_day(night);
		}
	return DAY_NONE;
}

/* The night that brought the first, or the third, moth lies in the interval; before it
 * only where `or earlier` is said. */
static void the_interval_holds_the_night_it_speaks_of(void **state)
{
	static const struct {
		const char *word;
		int moths;
	} row[] = { { "first-moth", 1 }, { "three-moths", 3 } };
	uint32_t seed = 3;
	(void)state;
	for (int i = 0; i < FARMS; i++) {
		struct farm_truth f = { .read_all = i % 2 == 0 };
		fly(&f, &seed);
		for (int t = 0; t < TRAPS; t++)
			visit_trap(&f, t, i % 3 == 0 ? 7 * (1 + t) : 7, &seed);
		for (size_t k = 0; k < COUNT_OF(row); k++) {
			int32_t night = true_night(&f, row[k].moths);
			struct biofix b = biofix_suggest(biofix_rule_find(row[k].word),
				f.list, TRAPS, log_day(0), log_day(SEASON));
			if (b.state != BIOFIX_DATED)
				continue;
			if (night >= b.by || (night < b.after && !b.or_earlier))
				fail_msg("farm %d, %s: night %d, not %d-%d", i,
					row[k].word, (int)(night - log_day(0)),
					(int)(b.after - log_day(0)),
					(int)(b.by - log_day(0)));
		}
		farm_free(&f);
	}
}

static bool is_fixed(const struct biofix_rule *r)
{
	return strcmp(r->word, "march-1") == 0 || strcmp(r->word, "january-1") == 0;
}

/* Weekly visits alone: no rule dates within fewer than the seven nights between two of
 * them, the interval ends with a check, and the rules of single nights say so. */
static void weekly_visits_never_claim_a_day_inside_the_week(void **state)
{
	uint32_t seed = 8;
	size_t n, dated = 0;
	const struct biofix_rule *rules = biofix_rules(&n);
	(void)state;
	for (int i = 0; i < FARMS; i++) {
		struct farm_truth f = { .read_all = i % 2 == 0 };
		fly(&f, &seed);
		for (int t = 0; t < TRAPS; t++)
			visit_trap(&f, t, 7, &seed);
		for (size_t k = 0; k < n; k++) {
			struct biofix b = biofix_suggest(
				&rules[k], f.list, TRAPS, log_day(0), log_day(SEASON));
			if (rules[k].nights_max > 0)
				assert_int_equal(b.state, BIOFIX_READ_TOO_SELDOM);
			if (b.after == DAY_NONE || is_fixed(&rules[k]))
				continue;
			dated++;
			assert_true(b.by - b.after >= 7);
			assert_true((b.by - log_day(0)) % 7 <= 1);
			assert_true(b.n_seen > 0);
		}
		farm_free(&f);
	}
	assert_true(dated > FARMS);
}

static void half_a_year_later_gives_the_same_biofix(void **state)
{
	int32_t first = day_from_ymd(2026, 1, 1), later = 181;
	struct log north, south;
	size_t n;
	const struct biofix_rule *rules = biofix_rules(&n);
	(void)state;
	log_read(&north, "0h 7c0 14c0 21c1 28c0 35c3 42c9 49x 56c4");
	log_read(&south, "0h 7c0 14c0 21c1 28c0 35c3 42c9 49x 56c4");
	for (size_t i = 0; i < south.n; i++)
		south.visits[i].day += later;
	diary_read(&south.diary, south.visits, south.n);
	const struct diary *const a[] = { &north.diary }, *const b[] = { &south.diary };
	for (size_t k = 0; k < n; k++) {
		if (is_fixed(&rules[k]))
			continue;
		struct biofix x = biofix_suggest(&rules[k], a, 1, first, first + 364);
		struct biofix y = biofix_suggest(
			&rules[k], b, 1, day_from_ymd(2026, 7, 1), first + later + 364);
		assert_int_equal(x.state, y.state);
		assert_int_equal(x.n_seen, y.n_seen);
		if (x.after != DAY_NONE) {
			assert_int_equal(x.after + later, y.after);
			assert_int_equal(x.by + later, y.by);
		}
	}
	log_free(&north);
	log_free(&south);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_rule_is_said_and_found_by_its_word),
		cmocka_unit_test(a_fixed_date_needs_no_trap),
		cmocka_unit_test(a_female_is_not_the_first_male),
		cmocka_unit_test(how_often_traps_are_read_is_said),
		cmocka_unit_test(evidence_beyond_the_list_is_counted),
		cmocka_unit_test(the_interval_holds_the_night_it_speaks_of),
		cmocka_unit_test(weekly_visits_never_claim_a_day_inside_the_week),
		cmocka_unit_test(half_a_year_later_gives_the_same_biofix),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
