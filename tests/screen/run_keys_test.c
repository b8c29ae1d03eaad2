#include "screen/run_page.h"

#include "screen/run_samples.h"

static void run_page_keeps_what_the_keys_say(void **state)
{
	static const struct {
		const char *why, *keys;
		enum outcome outcome;
		enum reason reason;
		int32_t count;
		int64_t card, lure;
	} row[] = {
		{ "a count", "14\n", OUTCOME_COUNTED, 0, 14, 0, 0 },
		{ "none", "0\n", OUTCOME_COUNTED, 0, 0, 0, 0 },
		{ "a leading zero", "07\n", OUTCOME_COUNTED, 0, 7, 0, 0 },
		{ "four digits, asked once", "9999\n\n", OUTCOME_COUNTED, 0, 9999, 0,
			0 },
		{ "a fifth digit is refused", "99994\n\n", OUTCOME_COUNTED, 0, 9999, 0,
			0 },
		{ "a slip erased", "15\b4\n", OUTCOME_COUNTED, 0, 14, 0, 0 },
		{ "new card first", "+14\n", OUTCOME_COUNTED, 0, 14, SAMPLE_CARD, 0 },
		{ "new card taken back", "++14\n", OUTCOME_COUNTED, 0, 14, 0, 0 },
		{ "new card by letter", "14c\n", OUTCOME_COUNTED, 0, 14, SAMPLE_CARD,
			0 },
		{ "at least, the card goes too", "14+\n", OUTCOME_FLOOR, 0, 14,
			SAMPLE_CARD, 0 },
		{ "as many as the card holds", "+*70\n\n", OUTCOME_COUNTED, 0, 70,
			SAMPLE_CARD, SAMPLE_LURE },
		{ "more than it holds, asked once", "71\n\n", OUTCOME_COUNTED, 0, 71, 0,
			0 },
		{ "none and +: the card was changed, it was not full", "0+\n",
			OUTCOME_COUNTED, 0, 0, SAMPLE_CARD, 0 },
		{ "none, the card taken back", "0++\n", OUTCOME_COUNTED, 0, 0, 0, 0 },
		{ "at least one", "1+\n", OUTCOME_FLOOR, 0, 1, SAMPLE_CARD, 0 },
		{ "at least, taken back", "14++\n", OUTCOME_COUNTED, 0, 14, 0, 0 },
		{ "at least, erased", "14+\b\n", OUTCOME_COUNTED, 0, 14, 0, 0 },
		{ "at least, the card stays", "14+c\n", OUTCOME_FLOOR, 0, 14, 0, 0 },
		{ "a card of before stays", "+14++\n", OUTCOME_COUNTED, 0, 14,
			SAMPLE_CARD, 0 },
		{ "new lure", "14*\n", OUTCOME_COUNTED, 0, 14, 0, SAMPLE_LURE },
		{ "new lure by letter", "l14\n", OUTCOME_COUNTED, 0, 14, 0,
			SAMPLE_LURE },
		{ "new lure taken back", "14**\n", OUTCOME_COUNTED, 0, 14, 0, 0 },
		{ "skipped", "-\n", OUTCOME_SKIPPED, 0, COUNT_NONE, 0, 0 },
		{ "skipped by letter", "s\n", OUTCOME_SKIPPED, 0, COUNT_NONE, 0, 0 },
		{ "no entry", "--\n", OUTCOME_SKIPPED, REASON_REENTRY, COUNT_NONE, 0,
			0 },
		{ "rain", "---\n", OUTCOME_SKIPPED, REASON_WEATHER, COUNT_NONE, 0, 0 },
		{ "no time", "----\n", OUTCOME_SKIPPED, REASON_TIME, COUNT_NONE, 0, 0 },
		{ "other", "-----\n", OUTCOME_SKIPPED, REASON_OTHER, COUNT_NONE, 0, 0 },
		{ "once round gives the digits back", "14------\n", OUTCOME_COUNTED, 0,
			14, 0, 0 },
		{ "a skip keeps no count, card or lure", "14+*-\n", OUTCOME_SKIPPED, 0,
			COUNT_NONE, 0, 0 },
		{ "a digit ends a skip", "1-4\n", OUTCOME_COUNTED, 0, 4, 0, 0 },
		{ "down", "/\n", OUTCOME_SPOILED, REASON_DOWN, COUNT_NONE, 0, 0 },
		{ "down by letter", "x\n", OUTCOME_SPOILED, REASON_DOWN, COUNT_NONE, 0,
			0 },
		{ "down with some moths on it", "3/\n", OUTCOME_SPOILED, REASON_DOWN, 3,
			0, 0 },
		{ "the same, typed after", "/3\n", OUTCOME_SPOILED, REASON_DOWN, 3, 0,
			0 },
		{ "card lost: a new one", "//\n", OUTCOME_SPOILED, REASON_CARD_LOST,
			COUNT_NONE, SAMPLE_CARD, 0 },
		{ "lure missing: a new one", "///\n", OUTCOME_SPOILED,
			REASON_LURE_MISSING, COUNT_NONE, 0, SAMPLE_LURE },
		{ "blocked: neither", "////\n", OUTCOME_SPOILED, REASON_BLOCKED,
			COUNT_NONE, 0, 0 },
		{ "missing", "/////\n", OUTCOME_MISSING, 0, COUNT_NONE, 0, 0 },
		{ "missing keeps no count", "14/////\n", OUTCOME_MISSING, 0, COUNT_NONE,
			0, 0 },
		{ "once round", "14//////\n", OUTCOME_COUNTED, 0, 14, 0, 0 },
		{ "from skipped to down", "-/\n", OUTCOME_SPOILED, REASON_DOWN,
			COUNT_NONE, 0, 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = sample_open_run(2);
		struct run_page p = page_of(&r);
		struct wish w = type(&p, &r, row[i].keys);
		const struct visit *v = &w.visit;

		if (w.want != WANT_SAVE || v->outcome != row[i].outcome ||
			v->reason != row[i].reason || v->count != row[i].count ||
			v->new_card != row[i].card || v->new_lure != row[i].lure)
			fail_msg("%s: want %d %s %s %d card %d lure %d", row[i].why,
				(int)w.want, outcome_word(v->outcome),
				reason_word(v->reason), (int)v->count, (int)v->new_card,
				(int)v->new_lure);
		assert_int_equal(v->trap, 101);
		assert_int_equal(v->day, sample_day());
		assert_int_equal(w.farm, SAMPLE_FARM);
		assert_int_equal(p.picked, 1);
		free(r.traps);
	}
}

static void run_page_keeps_the_small_things(void **state)
{
	struct run r = sample_open_run(2);
	struct run_page p = page_of(&r);
	struct wish w = type(&p, &r,
		"iKO\n14g"
		"f3\n"
		"o2\n"
		".two ? wasps\n\n");

	(void)state;
	assert_int_equal(w.want, WANT_SAVE);
	assert_int_equal(w.visit.count, 14);
	assert_int_equal(w.visit.females, 3);
	assert_int_equal(w.visit.others, 2);
	assert_true(w.visit.stirred);
	assert_string_equal(w.words.scout, "KO");
	assert_string_equal(w.words.note, "two ? wasps");
	w = type(&p, &r, "5\n");
	assert_int_equal(w.visit.females, COUNT_NONE);
	assert_int_equal(w.visit.others, COUNT_NONE);
	assert_false(w.visit.stirred);
	assert_string_equal(w.words.scout, "KO");
	assert_string_equal(w.words.note, "");
	free(r.traps);
}

static void run_page_refuses_in_words(void **state)
{
	static const struct {
		const char *why, *keys, *says;
	} row[] = {
		{ "a blank is not zero", "\n",
			"Type the count (0 for none), or - to skip." },
		{ "a card without a count", "+\n",
			"Type the count too (0 for none), or - to skip the trap." },
		{ "a count erased", "1\b\n",
			"Type the count (0 for none), or - to skip." },
		{ "a fifth digit", "12345",
			"A count has at most 4 digits, up to 9999." },
		{ "moving on", "14~", "Not kept yet: Enter keeps 14, Esc drops it." },
		{ "moving on with a card", "+^",
			"Not kept yet: Enter keeps c, Esc drops it." },
		{ "to the week", "14+w",
			"Not kept yet: Enter keeps 14+ c, Esc drops it." },
		{ "to why", "-y", "Not kept yet: Enter keeps skip, Esc drops it." },
		{ "another date", "0t", "Not kept yet: Enter keeps 0, Esc drops it." },
		{ "dropped", "14\x1b", "Dropped what was typed." },
		{ "undone", "14u", "Dropped what was typed." },
		{ "odd", "31\n",
			"31 moths? The highest of the last four counts was 6. Enter "
			"once more keeps it." },
		{ "more females than moths", "2f3\n\n",
			"3 females of 2 moths cannot be: f corrects it." },
		{ "a skip drops the count", "14-",
			"Skipped: the 14 will not be kept." },
		{ "a spoiled count is a least one", "7/",
			"Spoiled (down): 7 becomes at least 7. / gives the next "
			"reason." },
		{ "spoiled without one", "//",
			"Spoiled (card lost). / gives the next reason." },
		{ "females are digits", "fx",
			"Only digits here: Enter ends it, Esc drops it." },
		{ "a key of no use", "z", "z does nothing here: ? shows the keys" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = sample_open_run(2);
		struct run_page p = page_of(&r);
		struct wish w = type(&p, &r, row[i].keys);

		if (w.want != WANT_NOTHING || strcmp(p.message.text, row[i].says) != 0)
			fail_msg("%s: want %d \"%s\"", row[i].why, (int)w.want,
				p.message.text);
		assert_int_equal(p.picked, 0);
		free(r.traps);
	}
}

/* The limits of judge_odd_count: 20 or more and over 5 times the highest of four. */
static void run_page_asks_for_odd_counts_once(void **state)
{
	static const struct {
		const char *why, *keys;
		int32_t last[RUN_LAST];
		size_t n;
		bool kept;
	} row[] = {
		{ "over 5 times 6", "31\n", { 2, 4, 3, 6 }, 4, false },
		{ "just 5 times 6", "30\n", { 2, 4, 3, 6 }, 4, true },
		{ "20 after none", "20\n", { 0, 0, 0, 0 }, 4, false },
		{ "19 after none", "19\n", { 0, 0, 0, 0 }, 4, true },
		{ "nothing before it", "70\n", { 0 }, 0, true },
		{ "more than the card holds", "71\n", { 0 }, 0, false },
		{ "at least that many is not asked about", "71+\n", { 0 }, 0, true },
		{ "asked and kept", "31\n\n", { 2, 4, 3, 6 }, 4, true },
		{ "another count is asked about again", "31\n\b5\n", { 2, 4, 3, 6 }, 4,
			false },
		{ "a card does not change that it was asked", "31\nc\n", { 2, 4, 3, 6 },
			4, true },
		{ "at least so many", "31+\n", { 2, 4, 3, 6 }, 4, false },
		{ "a skip is no count", "31-\n", { 2, 4, 3, 6 }, 4, true },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = sample_open_run(2);
		struct run_page p = page_of(&r);

		memcpy(r.traps[0].last_count, row[i].last, sizeof row[i].last);
		r.traps[0].n_last_count = row[i].n;
		if ((type(&p, &r, row[i].keys).want == WANT_SAVE) != row[i].kept)
			fail_msg("%s: \"%s\"", row[i].why, p.message.text);
		if (row[i].n == 0 && !row[i].kept)
			assert_string_equal(p.message.text,
				"71 on a card that is full at 70: + says at least, "
				"Enter again if it was counted.");
		free(r.traps);
	}
}

static void run_page_corrects_a_visit_of_the_run_s_date(void **state)
{
	static const struct {
		const char *why, *keys;
		enum outcome was, outcome;
		int32_t count;
		int64_t card;
	} row[] = {
		{ "another count", "6\n", OUTCOME_COUNTED, OUTCOME_COUNTED, 6, 77 },
		{ "one digit less", "\b\n", OUTCOME_COUNTED, OUTCOME_COUNTED, 4, 77 },
		{ "only the card", "+\n", OUTCOME_COUNTED, OUTCOME_COUNTED, 41, 0 },
		{ "to at least: the digits and +", "41+\n", OUTCOME_COUNTED,
			OUTCOME_FLOOR, 41, 77 },
		{ "to skipped", "-\n", OUTCOME_COUNTED, OUTCOME_SKIPPED, COUNT_NONE,
			0 },
		{ "a floor stays one when the lure is new", "*\n", OUTCOME_FLOOR,
			OUTCOME_FLOOR, 41, 77 },
		{ "a floor stays one after a round of reasons", "*------\n",
			OUTCOME_FLOOR, OUTCOME_FLOOR, 41, 77 },
		{ "typed anew it is no floor", "50\n", OUTCOME_FLOOR, OUTCOME_COUNTED,
			50, 77 },
		{ "skipped, but counted after all", "6\n", OUTCOME_SKIPPED,
			OUTCOME_COUNTED, 6, 0 },
		{ "skipped, another reason", "-\n", OUTCOME_SKIPPED, OUTCOME_SKIPPED,
			COUNT_NONE, 0 },
		{ "missing, counted after all", "6\n", OUTCOME_MISSING, OUTCOME_COUNTED,
			6, 0 },
		{ "missing, hung again at once", "/\n", OUTCOME_MISSING, OUTCOME_HUNG,
			COUNT_NONE, SAMPLE_CARD },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = sample_open_run(2);
		struct run_page p = page_of(&r);
		struct visit v = sample_count(&r.traps[0], 41);
		struct wish w;
		bool none = outcome_facts[row[i].was].count == COUNT_NEVER;

		v.outcome = row[i].was;
		v.count = none ? COUNT_NONE : 41;
		v.new_card = none ? 0 : 77; /* another kind than it usually gets */
		r.traps[0].n_last_count = 0;
		sample_visit(&r.traps[0], v);
		SET(r.traps[0].words.scout, "KO");
		SET(p.scout, "JR");
		w = type(&p, &r, row[i].keys);
		if (w.want != WANT_SAVE || w.visit.outcome != row[i].outcome ||
			w.visit.count != row[i].count ||
			w.visit.new_card != row[i].card || w.visit.day != v.day)
			fail_msg("%s: want %d %s %d card %d day %+d", row[i].why,
				(int)w.want, outcome_word(w.visit.outcome),
				(int)w.visit.count, (int)w.visit.new_card,
				(int)(w.visit.day - v.day));
		assert_string_equal(w.words.scout, "KO");
		free(r.traps);
	}
}

static void run_page_asks_nothing_about_a_count_that_stays(void **state)
{
	struct run r = sample_open_run(2);
	struct run_page p = page_of(&r);

	(void)state;
	sample_visit(&r.traps[0], sample_count(&r.traps[0], 41));
	run_page_show(&p, &r, false);
	assert_int_equal(type(&p, &r, "*\n").visit.count, 41);
	free(r.traps);
}

static void run_page_saves_nothing_that_is_the_same(void **state)
{
	struct run r = sample_open_run(2);
	struct run_page p = page_of(&r);

	(void)state;
	sample_visit(&r.traps[0], sample_count(&r.traps[0], 41));
	assert_int_equal(type(&p, &r, "41\n").want, WANT_NOTHING);
	assert_int_equal(p.picked, 1);
	assert_int_equal(type(&p, &r, "^cc~").want, WANT_NOTHING);
	assert_int_equal(p.picked, 1);
	free(r.traps);
}

static void run_page_counts_nothing_where_nothing_hangs(void **state)
{
	struct run r = sample_open_run(2);
	struct run_page p = page_of(&r);
	struct wish w;

	(void)state;
	r.traps[0].hangs = false;
	type(&p, &r, "1");
	assert_string_equal(p.message.text,
		"Trap 1 does not hang, so there is nothing to count: / when it is hung "
		"again.");
	assert_true(p.message.is_fault);
	assert_false(p.entry.touched);
	type(&p, &r, "\n");
	assert_string_equal(p.message.text,
		"This trap does not hang: / when it is hung again, - to leave it.");
	type(&p, &r, "//");
	assert_false(p.entry.touched);
	w = type(&p, &r, "/\n");
	assert_int_equal(w.visit.outcome, OUTCOME_HUNG);
	assert_int_equal(w.visit.new_card, SAMPLE_CARD);
	assert_int_equal(w.visit.new_lure, SAMPLE_LURE);
	type(&p, &r, "^1");
	assert_string_equal(p.message.text, "Trap 1 was hung in this run: its first "
					    "count comes with the next one. u "
					    "takes it back.");
	free(r.traps);
}

static void run_page_says_when_the_kind_is_not_known(void **state)
{
	struct run r = sample_open_run(1);
	struct run_page p = page_of(&r);
	struct wish w;

	(void)state;
	r.traps[0].card_kind = r.traps[0].lure_kind = 0;
	type(&p, &r, "+");
	assert_string_equal(
		p.message.text, "The book does not say which card trap 1 gets.");
	type(&p, &r, "*");
	assert_string_equal(
		p.message.text, "The book does not say which lure trap 1 gets.");
	w = type(&p, &r, "14+\n");
	assert_int_equal(w.visit.outcome, OUTCOME_FLOOR);
	assert_int_equal(w.visit.new_card, 0);
	free(r.traps);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(run_page_keeps_what_the_keys_say),
		cmocka_unit_test(run_page_keeps_the_small_things),
		cmocka_unit_test(run_page_refuses_in_words),
		cmocka_unit_test(run_page_asks_for_odd_counts_once),
		cmocka_unit_test(run_page_corrects_a_visit_of_the_run_s_date),
		cmocka_unit_test(run_page_asks_nothing_about_a_count_that_stays),
		cmocka_unit_test(run_page_saves_nothing_that_is_the_same),
		cmocka_unit_test(run_page_counts_nothing_where_nothing_hangs),
		cmocka_unit_test(run_page_says_when_the_kind_is_not_known),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
