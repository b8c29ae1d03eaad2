#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/records.h"
#include "base/terms.h"

#include <string.h>

static void outcome_facts_say_what_each_outcome_means(void **state)
{
	static const struct {
		const char *word;
		int count;
		bool takes_reason, closes, opens;
	} row[OUTCOME_COUNT] = {
		{ "hung", COUNT_NEVER, false, true, true },
		{ "counted", COUNT_MUST, false, true, true },
		{ "floor", COUNT_MUST, false, true, true },
		{ "skipped", COUNT_NEVER, true, false, false },
		{ "spoiled", COUNT_MAY, true, true, true },
		{ "missing", COUNT_NEVER, false, true, false },
		{ "pulled", COUNT_MAY, false, true, false },
	};

	(void)state;
	for (int i = 0; i < OUTCOME_COUNT; i++) {
		const struct outcome_facts *f = &outcome_facts[i];
		if (strcmp(f->word, row[i].word) || (int)f->count != row[i].count ||
			f->takes_reason != row[i].takes_reason ||
			f->closes != row[i].closes || f->opens != row[i].opens)
			fail_msg("%s", row[i].word);
	}
}

static void words_come_back_as_what_they_name(void **state)
{
	enum outcome o;
	enum reason r;
	enum place p;
	enum condition c;
	enum measure m;
	enum span_kind s;
	enum comparator k;

	(void)state;
	for (int i = 0; i < OUTCOME_COUNT; i++)
		assert_true(
			outcome_read(outcome_word((enum outcome)i), &o) && (int)o == i);
	for (int i = 0; i < REASON_COUNT; i++)
		assert_true(
			reason_read(reason_word((enum reason)i), &r) && (int)r == i);
	for (int i = 0; i < PLACE_COUNT; i++)
		assert_true(place_read(place_word((enum place)i), &p) && (int)p == i);
	for (int i = 0; i < CONDITION_COUNT; i++)
		assert_true(condition_read(condition_word((enum condition)i), &c) &&
			    (int)c == i);
	for (int i = 0; i < MEASURE_COUNT; i++)
		assert_true(
			measure_read(measure_word((enum measure)i), &m) && (int)m == i);
	for (int i = 0; i < SPAN_COUNT; i++)
		assert_true(span_read(span_word((enum span_kind)i), &s) && (int)s == i);
	for (int i = 0; i < COMPARATOR_COUNT; i++)
		assert_true(comparator_read(comparator_word((enum comparator)i), &k) &&
			    (int)k == i);
}

static void words_are_those_of_the_files(void **state)
{
	(void)state;
	assert_string_equal(reason_word(REASON_NONE), "");
	assert_string_equal(reason_word(REASON_REENTRY), "re-entry");
	assert_string_equal(reason_word(REASON_CARD_LOST), "card lost");
	assert_string_equal(reason_word(REASON_LURE_MISSING), "lure missing");
	assert_string_equal(place_word(PLACE_OUTSIDE), "outside");
	assert_string_equal(condition_word(CONDITION_DISRUPTED), "disrupted");
	assert_string_equal(measure_word(MEASURE_TRAP_WEEK), "trap-week");
	assert_string_equal(measure_word(MEASURE_BLOCK_TOTAL), "block-total");
	assert_string_equal(measure_word(MEASURE_NONE), "none");
	assert_string_equal(span_word(SPAN_NUMBER), "");
	assert_string_equal(span_word(SPAN_TREATMENT), "treatment");
	assert_string_equal(comparator_word(AT_LEAST), ">=");
	assert_string_equal(comparator_word(MORE_THAN), ">");
	assert_string_equal(verdict_word(VERDICT_NONE), "none");
	assert_string_equal(verdict_word(VERDICT_UNDER), "under");
	assert_string_equal(verdict_word(VERDICT_NEAR), "near");
	assert_string_equal(verdict_word(VERDICT_UNKNOWN), "unknown");
	assert_string_equal(verdict_word(VERDICT_OVER), "over");
}

static void other_words_are_refused_and_change_nothing(void **state)
{
	static const char *const words[] = { "Counted", "count", "counted ",
		"trap week", "=>", "card", "nowhere" };

	(void)state;
	for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
		enum outcome o = OUTCOME_PULLED;
		enum reason r = REASON_TIME;
		enum place p = PLACE_BORDER;
		enum condition c = CONDITION_DISRUPTED;
		enum measure m = MEASURE_NONE;
		enum span_kind s = SPAN_HUNG;
		enum comparator k = MORE_THAN;

		assert_false(outcome_read(words[i], &o) || reason_read(words[i], &r) ||
			     place_read(words[i], &p) || condition_read(words[i], &c) ||
			     measure_read(words[i], &m) || span_read(words[i], &s) ||
			     comparator_read(words[i], &k));
		assert_true(o == OUTCOME_PULLED && r == REASON_TIME &&
			    p == PLACE_BORDER && c == CONDITION_DISRUPTED &&
			    m == MEASURE_NONE && s == SPAN_HUNG && k == MORE_THAN);
	}
	enum outcome o;
	enum measure m;
	assert_false(outcome_read("", &o));
	assert_false(measure_read("", &m));
}

static void reasons_fit_their_outcome_only(void **state)
{
	(void)state;
	for (int r = REASON_NONE; r < REASON_COUNT; r++)
		for (int o = 0; o < OUTCOME_COUNT; o++) {
			bool skipped = r >= REASON_REENTRY && r <= REASON_OTHER;
			bool want = r == REASON_NONE ||
				    o == (skipped ? OUTCOME_SKIPPED : OUTCOME_SPOILED);
			if (reason_fits((enum reason)r, (enum outcome)o) != want)
				fail_msg("%s of %s", reason_word((enum reason)r),
					outcome_word((enum outcome)o));
		}
}

static void measure_of_block_tells_blocks_from_traps(void **state)
{
	(void)state;
	for (int m = 0; m < MEASURE_COUNT; m++)
		assert_int_equal(measure_of_block((enum measure)m),
			strncmp(measure_word((enum measure)m), "block-", 6) == 0);
}

static void limits_usual_are_those_of_the_manual(void **state)
{
	(void)state;
	assert_int_equal(limits_usual.join_nights, 5);
	assert_int_equal(limits_usual.long_nights, 10);
	assert_int_equal(limits_usual.stale_nights, 10);
	assert_int_equal(limits_usual.near_x100, 70);
	assert_int_equal(limits_usual.read_num, 2);
	assert_int_equal(limits_usual.read_den, 3);
	assert_int_equal(limits_usual.open_days, 2);
	assert_int_equal(limits_usual.fill_days, 0);
	assert_int_equal(limits_usual.skip_biofix_day, 0);
	assert_int_equal(limits_usual.odd_count, 20);
	assert_int_equal(limits_usual.odd_times, 5);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(outcome_facts_say_what_each_outcome_means),
		cmocka_unit_test(words_come_back_as_what_they_name),
		cmocka_unit_test(words_are_those_of_the_files),
		cmocka_unit_test(other_words_are_refused_and_change_nothing),
		cmocka_unit_test(reasons_fit_their_outcome_only),
		cmocka_unit_test(measure_of_block_tells_blocks_from_traps),
		cmocka_unit_test(limits_usual_are_those_of_the_manual),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
