/* Visits of a day or two before the run's date. */
#include "screen/run_page.h"

#include "screen/run_samples.h"
#include "screen/run_typing.h"

/* The second trap was visited `before` days ago, the others are open. */
static struct run earlier_run(enum outcome was, int before)
{
	struct run r = sample_open_run(3);
	struct run_trap *t = &r.traps[1];
	struct visit v = sample_count(t, 2);

	v.day -= before;
	v.outcome = was;
	if (outcome_facts[was].count == COUNT_NEVER || was == OUTCOME_SPOILED)
		v.count = COUNT_NONE;
	t->n_last_count = 0;
	sample_visit(t, v);
	SET(t->words.scout, "KO");
	SET(t->words.note, "old note");
	return r;
}

static void run_page_adds_a_visit_beside_one_of_another_day(void **state)
{
	static const struct {
		const char *why, *keys;
		enum outcome was, outcome;
		int before;
		int32_t count;
		int days; /* after the visit */
	} row[] = {
		{ "counted that day: corrected", "6\n", OUTCOME_COUNTED,
			OUTCOME_COUNTED, 0, 6, 0 },
		{ "the day before: a new one", "6\n", OUTCOME_COUNTED, OUTCOME_COUNTED,
			1, 6, 1 },
		{ "two days before", "6\n", OUTCOME_COUNTED, OUTCOME_COUNTED, 2, 6, 2 },
		{ "the same count", "2\n", OUTCOME_COUNTED, OUTCOME_COUNTED, 1, 2, 1 },
		{ "a full card", "6\n", OUTCOME_FLOOR, OUTCOME_COUNTED, 1, 6, 1 },
		{ "skipped", "6\n", OUTCOME_SKIPPED, OUTCOME_COUNTED, 1, 6, 1 },
		{ "skipped again", "-\n", OUTCOME_SKIPPED, OUTCOME_SKIPPED, 1,
			COUNT_NONE, 1 },
		{ "skipped now", "-\n", OUTCOME_COUNTED, OUTCOME_SKIPPED, 1, COUNT_NONE,
			1 },
		{ "spoiled", "6\n", OUTCOME_SPOILED, OUTCOME_COUNTED, 2, 6, 2 },
		{ "spoiled now", "/\n", OUTCOME_COUNTED, OUTCOME_SPOILED, 1, COUNT_NONE,
			1 },
		{ "hung", "6\n", OUTCOME_HUNG, OUTCOME_COUNTED, 1, 6, 1 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = earlier_run(row[i].was, row[i].before);
		struct run_page p = page_of(&r);
		int32_t day = r.traps[1].visit.day;
		struct wish w;

		SET(p.scout, "JR");
		run_page_pick(&p, 102);
		w = type(&p, &r, row[i].keys);
		if (w.want != WANT_SAVE || w.visit.outcome != row[i].outcome ||
			w.visit.count != row[i].count ||
			w.visit.day != day + row[i].days)
			fail_msg("%s: want %d %s %d day %+d", row[i].why, (int)w.want,
				outcome_word(w.visit.outcome), (int)w.visit.count,
				(int)(w.visit.day - day));
		assert_string_equal(w.words.scout, row[i].days ? "JR" : "KO");
		assert_string_equal(w.words.note, row[i].days ? "" : "old note");
		free(r.traps);
	}
}

static void run_page_brings_no_card_or_digit_of_another_day(void **state)
{
	struct run r = earlier_run(OUTCOME_COUNTED, 1);
	struct run_page p = page_of(&r);
	struct wish w;

	(void)state;
	r.traps[1].visit.new_card = SAMPLE_CARD;
	run_page_pick(&p, 102);
	assert_int_equal(type(&p, &r, "+\n").want, WANT_NOTHING);
	assert_string_equal(p.message.text,
		"Type the count too (0 for none), or - to skip the trap.");
	w = type(&p, &r, "4\n");
	assert_int_equal(w.visit.count, 4);
	assert_int_equal(w.visit.new_card, SAMPLE_CARD);
	free(r.traps);
}

static void run_page_leaves_a_visit_of_another_day_without_a_key(void **state)
{
	struct run r = earlier_run(OUTCOME_COUNTED, 1);
	struct run_page p = page_of(&r);

	(void)state;
	run_page_pick(&p, 102);
	assert_int_equal(type(&p, &r, "\n").want, WANT_NOTHING);
	assert_int_equal(p.picked, 2);
	assert_int_equal(type(&p, &r, "^6\x1b\n").want, WANT_NOTHING);
	assert_int_equal(p.picked, 2);
	free(r.traps);
}

static void run_page_says_that_a_visit_is_new(void **state)
{
	static const struct {
		const char *why, *key;
		enum outcome was;
		int before, cols;
		const char *says;
	} row[] = {
		{ "counted", "1", OUTCOME_COUNTED, 1, 80,
			"Trap 2 was counted on Mon 20 Jul (2). This is a new visit; "
			"Esc and t 20 go to that run to correct it." },
		{ "in brief", "1", OUTCOME_COUNTED, 1, 40,
			"Trap 2: counted on Mon 20 Jul (2). This is a new visit; Esc "
			"and t 20 correct that one." },
		{ "skipped", "1", OUTCOME_SKIPPED, 2, 80,
			"Trap 2 was skipped on Sun 19 Jul. This is a new visit; Esc "
			"and t 19 go to that run to correct it." },
		{ "with what the key says", "-", OUTCOME_COUNTED, 2, 80,
			"Trap 2 was counted on Sun 19 Jul (2). This is a new visit; "
			"Esc and t 19 go to that run to correct it. Skipped. Once "
			"more for a reason: re-entry, weather, time, other." },
		{ "once only", "12", OUTCOME_COUNTED, 1, 80, "" },
		{ "after a note", ".a\n", OUTCOME_COUNTED, 1, 40,
			"Trap 2: counted on Mon 20 Jul (2). This is a new visit; Esc "
			"and t 20 correct that one." },
		{ "a correction", "1", OUTCOME_COUNTED, 0, 80, "" },
	};
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = earlier_run(row[i].was, row[i].before);
		struct run_page p = page_of(&r);
		const char *last = strrchr(row[i].says, ' ');

		run_page_pick(&p, 102);
		draw(&p, &c, 16, row[i].cols);
		type(&p, &r, row[i].key);
		if (strcmp(p.message.text, row[i].says) != 0)
			fail_msg("%s: \"%s\"", row[i].why, p.message.text);
		draw(&p, &c, 16, row[i].cols);
		expect_shows(row[i].why, &c, last ? last + 1 : "");
		free(r.traps);
	}
	canvas_free(&c);
}

static void run_page_goes_to_the_trap_that_it_named(void **state)
{
	struct run r = earlier_run(OUTCOME_COUNTED, 1);
	struct run_page p = page_of(&r);

	(void)state;
	r.traps[0].open = r.traps[2].open = false;
	run_page_pick(&p, 102);
	assert_int_equal(type(&p, &r, "6\x1bt20\n").want, WANT_RUN_DAY);
	r.day--;
	run_page_show(&p, &r, true);
	assert_int_equal(p.picked, 1);
	assert_string_equal(p.message.text, "This is the run of Mon 20 July 2026.");
	assert_int_equal(type(&p, &r, "6\n").visit.day, sample_day() - 1);
	run_page_show(&p, &r, true);
	assert_int_equal(p.picked, 0);
	free(r.traps);
}

static void typing_short_date_reads_back_as_the_day(void **state)
{
	static const struct {
		const char *why;
		int year, month, day;
		const char *want;
	} row[] = {
		{ "today", 2026, 7, 21, "21" },
		{ "this month", 2026, 7, 1, "01" },
		{ "last month, day to come", 2026, 6, 22, "22" },
		{ "last month, day gone by", 2026, 6, 21, "06-21" },
		{ "last year, day to come", 2025, 7, 22, "07-22" },
		{ "a year ago", 2025, 7, 21, "2025-07-21" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		int32_t day = day_from_ymd(row[i].year, row[i].month, row[i].day);
		int32_t got = DAY_NONE;
		char text[DAY_ISO_SIZE];
		struct message m;

		typing_short_date(day, sample_day(), text);
		if (strcmp(text, row[i].want) != 0 ||
			!typing_date(text, sample_day(), &got, &m) || got != day)
			fail_msg("%s: %s", row[i].why, text);
	}
}

static void run_page_shows_which_visits_are_of_another_day(void **state)
{
	static const struct {
		const char *name;
		int rows, cols;
		const char *keys;
	} row[] = {
		{ "run-80x24-earlier", 24, 80, "^^" },
		{ "run-80x24-new-visit", 24, 80, "^^6" },
		{ "run-40x16-earlier", 16, 40, "^^" },
		{ "run-40x16-new-visit", 16, 40, "^^6" },
	};
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = sample_run();
		struct run_page p = page_of(&r);

		r.traps[0].visit.day -= 1;
		r.traps[1].visit.day -= 2;
		r.traps[6].visit.day -= 1;
		draw(&p, &c, row[i].rows, row[i].cols);
		type(&p, &r, row[i].keys);
		draw(&p, &c, row[i].rows, row[i].cols);
		expect_golden(row[i].name, &c, row[i].cols == 80);
		free(r.traps);
	}
	canvas_free(&c);
}

/* Changed this morning, outside the run: the count of the run keeps it. */
static void run_page_keeps_the_lure_that_was_changed_that_day(void **state)
{
	static const struct {
		const char *why, *keys;
		enum outcome outcome;
		enum reason reason;
	} row[] = {
		{ "counted", "6\n", OUTCOME_COUNTED, REASON_NONE },
		{ "skipped is not that lure alone", "-\n", OUTCOME_SKIPPED,
			REASON_OTHER },
		{ "skipped with a reason", "--\n", OUTCOME_SKIPPED, REASON_REENTRY },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = sample_open_run(3);
		struct run_trap *t = &r.traps[1];
		t->is_serviced = true;
		t->serviced = sample_count(t, COUNT_NONE);
		t->serviced.outcome = OUTCOME_SKIPPED;
		t->serviced.new_lure = SAMPLE_LURE + 1;
		SET(t->serviced_words.note, "by hand");
		struct run_page p = page_of(&r);
		run_page_pick(&p, 102);
		struct wish w = type(&p, &r, row[i].keys);
		if (w.want != WANT_SAVE || w.visit.outcome != row[i].outcome ||
			w.visit.reason != row[i].reason ||
			w.visit.new_lure != SAMPLE_LURE + 1 ||
			strcmp(w.words.note, "by hand") != 0)
			fail_msg("%s: outcome %d, reason %d, lure %d, \"%s\"",
				row[i].why, (int)w.visit.outcome, (int)w.visit.reason,
				(int)w.visit.new_lure, w.words.note);
		free(r.traps);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(run_page_adds_a_visit_beside_one_of_another_day),
		cmocka_unit_test(run_page_brings_no_card_or_digit_of_another_day),
		cmocka_unit_test(run_page_leaves_a_visit_of_another_day_without_a_key),
		cmocka_unit_test(run_page_keeps_the_lure_that_was_changed_that_day),
		cmocka_unit_test(run_page_says_that_a_visit_is_new),
		cmocka_unit_test(run_page_goes_to_the_trap_that_it_named),
		cmocka_unit_test(typing_short_date_reads_back_as_the_day),
		cmocka_unit_test(run_page_shows_which_visits_are_of_another_day),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
