#include "screen/diary_samples.h"

static void diary_page_shows_the_visits(void **state)
{
	static const struct {
		const char *name;
		int rows, cols;
		const char *keys;
	} row[] = {
		{ "diary-80x24", 24, 80, "~~~~" },
		{ "diary-120x30", 30, 120, "~" },
		{ "diary-40x16", 16, 40, "~~~~" },
		{ "diary-30x8", 8, 30, "" },
		{ "diary-80x24-typed", 24, 80, "~~~~\n14*" },
		{ "diary-40x16-typed", 16, 40, "~~~~\n14" },
		{ "diary-80x24-note", 24, 80, "~~~~\n. seen twice" },
		{ "diary-80x24-new", 24, 80, "n07-17\n5" },
		{ "diary-80x24-day", 24, 80, "n07-1" },
		{ "diary-80x24-changes", 24, 80, "c" },
		{ "diary-80x24-remove", 24, 80, "~#" },
		{ "diary-80x24-kind", 24, 80, "~k~" },
		{ "diary-40x16-kind", 16, 40, "~k~\n" },
		{ "diary-40x16-spoiled", 16, 40, "~\n7/" },
	};
	struct canvas c = { 0 };
	struct diary_page p = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct trap_diary d = sample_diary();

		diary_show(&p, &d);
		diary_press(&p, row[i].keys);
		canvas_size(&c, row[i].rows, row[i].cols);
		diary_page_draw(&p, &c);
		expect_golden(row[i].name, &c, row[i].cols == 80);
	}
	canvas_free(&c);
	diary_page_free(&p);
}

static void diary_page_corrects_as_a_run_does(void **state)
{
	static const struct {
		const char *why, *keys;
		size_t row;
		enum outcome outcome;
		enum reason reason;
		int32_t count;
		bool card, lure;
	} row[] = {
		{ "41 was 14", "~~~~\n14\n", 4, OUTCOME_COUNTED, 0, 14, false, false },
		{ "at least", "\n30+\n", 0, OUTCOME_FLOOR, 0, 30, true, false },
		{ "a card", "\n+\n", 0, OUTCOME_COUNTED, 0, 7, true, false },
		{ "a lure", "\n*\n", 0, OUTCOME_COUNTED, 0, 7, false, true },
		{ "the card taken back", "~\n+\n", 1, OUTCOME_COUNTED, 0, 4, false,
			true },
		{ "spoiled", "\n//\n", 0, OUTCOME_SPOILED, REASON_CARD_LOST, 7, true,
			false },
		{ "skipped", "\n-\n", 0, OUTCOME_SKIPPED, 0, COUNT_NONE, false, false },
		{ "skipped was counted", "222\n5\n", 3, OUTCOME_COUNTED, 0, 5, false,
			false },
		{ "0 is a count", "\n0\n", 0, OUTCOME_COUNTED, 0, 0, false, false },
	};
	struct diary_page p = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct trap_diary d = sample_diary();

		diary_show(&p, &d);
		struct wish w = diary_press(&p, row[i].keys);
		const struct visit *v = &w.visit;
		if (w.want != WANT_SAVE_PAST || v->trap != 103 ||
			v->day != d.rows[row[i].row].visit.day ||
			v->outcome != row[i].outcome || v->reason != row[i].reason ||
			v->count != row[i].count ||
			(v->new_card == SAMPLE_CARD) != row[i].card ||
			(v->new_lure == SAMPLE_LURE) != row[i].lure)
			fail_msg("%s: %d %d", row[i].why, (int)w.want, (int)v->count);
		assert_string_equal(w.words.scout, "JR"); /* who counted stays */
		assert_int_equal(p.mode, DIARY_VISIT);    /* until it is on the disk */
	}
	diary_page_free(&p);
}

static void diary_page_asks_about_an_odd_count_against_those_before_it(void **state)
{
	struct trap_diary d = sample_diary();
	struct diary_page p = { 0 };

	(void)state;
	diary_show(&p, &d);
	assert_int_equal(diary_press(&p, "~~~~~~~^\n20\n").want, WANT_SAVE_PAST);
	diary_show(&p, &d); /* of 4 weeks ago: 2 was the highest before */
	assert_int_equal(diary_press(&p, "~~~~\n20\n").want, WANT_NOTHING);
	assert_non_null(
		strstr(p.message.text, "highest of the last four counts was 2"));
	assert_int_equal(diary_press(&p, "\n").want, WANT_SAVE_PAST);
	diary_show(&p, &d);
	assert_int_equal(diary_press(&p, "~~~~\n19\n").want, WANT_SAVE_PAST);
	diary_page_free(&p);
}

static void diary_page_asks_once_before_a_visit_of_today_in_a_barred_block(void **state)
{
	static const struct {
		const char *why, *keys;
		enum waiting_state entry;
		enum outcome today;
		bool asks;
	} row[] = {
		{ "skipped, then counted", "\n5\n", WAITING_BARRED, OUTCOME_SKIPPED,
			true },
		{ "not known", "\n5\n", WAITING_UNKNOWN, OUTCOME_SKIPPED, true },
		{ "free", "\n5\n", WAITING_FREE, OUTCOME_SKIPPED, false },
		{ "was read already", "\n5\n", WAITING_BARRED, OUTCOME_COUNTED, false },
		{ "of another day", "n07-17\n5\n", WAITING_BARRED, OUTCOME_COUNTED,
			false },
	};
	struct diary_page p = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct trap_diary d = sample_diary();

		d.rows[0].visit.outcome = row[i].today;
		d.blank.entry = row[i].entry;
		SET(d.blank.barred, "no entry till Wed 06:00");
		diary_show(&p, &d);
		struct wish w = diary_press(&p, row[i].keys);
		if ((w.want == WANT_NOTHING) != row[i].asks)
			fail_msg("%s: %d", row[i].why, (int)w.want);
		if (!row[i].asks) {
			assert_int_equal(w.by, WAITING_FREE);
			continue;
		}
		assert_string_equal(p.message.text,
			"Old Kiln: no entry till Wed 06:00; Enter again if it was read "
			"all the same, Esc drops it.");
		w = diary_press(&p, "\n");
		assert_int_equal(w.want, WANT_SAVE_PAST);
		assert_int_equal(w.by, row[i].entry);
	}
	diary_page_free(&p);
}

static void diary_page_leaves_a_visit_as_it_was(void **state)
{
	static const char *const keys[] = { "\n\n", "\n\x1b", "\n14\x1b\x1b", "\n7\n",
		"\n8u\n", "\nywdq\x1b", "n\x1b", "n\n", "n17\b\b\n" };
	struct diary_page p = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
		struct trap_diary d = sample_diary();

		diary_show(&p, &d);
		if (diary_press(&p, keys[i]).want != WANT_NOTHING ||
			p.mode != DIARY_LIST)
			fail_msg("keys %zu: mode %d", i, (int)p.mode);
	}
	diary_page_free(&p);
}

static void diary_page_adds_a_visit_on_a_past_day(void **state)
{
	struct trap_diary d = sample_diary();
	struct diary_page p = { 0 };

	(void)state;
	diary_show(&p, &d);
	struct wish w = diary_press(&p, "n07-17\n5\n");
	assert_int_equal(w.want, WANT_SAVE_PAST);
	assert_int_equal(w.visit.day, day_from_ymd(2026, 7, 17));
	assert_int_equal(w.visit.count, 5);
	assert_string_equal(w.words.scout, "MB"); /* who types */
	assert_int_equal(p.picked, 1);
	diary_show(&p, &d); /* a day that has a visit opens it */
	w = diary_press(&p, "n14\n9\n");
	assert_int_equal(w.visit.day, d.rows[1].visit.day);
	assert_int_equal(w.visit.new_lure, SAMPLE_LURE);
	diary_show(&p, &d);
	assert_int_equal(diary_press(&p, "n2025-07-17\n").want, WANT_NOTHING);
	assert_non_null(strstr(p.message.text, "another season"));
	assert_int_equal(
		diary_press(&p, "\b\b\b\b\b\b\b\b\b\b2026-07-22\n").want, WANT_NOTHING);
	assert_non_null(strstr(p.message.text, "lies ahead"));
	diary_show(&p, &d); /* before it was hung there is nothing to count */
	diary_press(&p, "n06-01\n3");
	assert_non_null(strstr(p.message.text, "does not hang"));
	diary_page_free(&p);
}

static void diary_page_takes_out_only_when_asked_twice(void **state)
{
	struct trap_diary d = sample_diary();
	struct diary_page p = { 0 };

	(void)state;
	diary_show(&p, &d);
	assert_int_equal(diary_press(&p, "~#").want, WANT_NOTHING);
	assert_non_null(
		strstr(p.message.text, "Take out the visit of Tue 14 Jul (4 cl)"));
	struct wish w = diary_press(&p, "#");
	assert_int_equal(w.want, WANT_REMOVE_VISIT);
	assert_int_equal(w.visit.trap, 103);
	assert_int_equal(w.day, day_from_ymd(2026, 7, 14));
	diary_show(&p, &d);
	assert_int_equal(diary_press(&p, "#~#").want, WANT_NOTHING); /* another row */
	diary_show(&p, &d);
	assert_int_equal(diary_press(&p, "#c#").want, WANT_NOTHING);
	diary_page_free(&p);
}

static void diary_page_keeps_what_is_typed_when_it_is_not_saved(void **state)
{
	struct trap_diary d = sample_diary();
	struct diary_page p = { 0 };

	(void)state;
	diary_show(&p, &d);
	diary_press(&p, "\n14\n");
	d.rows[0].visit.count = 9; /* somebody else was quicker */
	diary_page_show(&p, &d, &limits_usual, false);
	assert_non_null(strstr(p.message.text, "It got 7 meanwhile")); /* its text */
	diary_page_not_saved(&p, "trap 3 got 9 meanwhile");
	assert_true(p.message.is_fault);
	assert_int_equal(p.trap.visit.count, 9);
	assert_int_equal(
		diary_press(&p, "5").want, WANT_NOTHING); /* not bent into 145 */
	struct wish w = diary_press(&p, "\n");
	assert_int_equal(w.want, WANT_SAVE_PAST);
	assert_int_equal(w.visit.count, 14);
	d.rows++; /* and took it out */
	d.n--;
	diary_page_show(&p, &d, &limits_usual, false);
	assert_true(p.is_new);
	assert_non_null(strstr(p.message.text, "taken out meanwhile"));
	assert_int_equal(diary_press(&p, "\n").visit.count, 14);
	d.rows--;
	d.n++;
	diary_page_free(&p);
}

static void diary_page_says_what_was_kept_and_stays_on_it(void **state)
{
	struct trap_diary d = sample_diary();
	struct diary_page p = { 0 };

	(void)state;
	diary_show(&p, &d);
	diary_press(&p, "~~~~\n14\n");
	SET(d.rows[4].visit_text, "14");
	SET(d.rows[4].weekly_text, "14.0");
	diary_page_saved(&p, &d, "07:42:11");
	assert_int_equal(p.mode, DIARY_LIST);
	assert_int_equal(p.picked, 4);
	assert_string_equal(p.message.text, "Kept: Tue 23 Jun, 14, 14.0 a week");
	assert_string_equal(p.saved, "saved 07:42:11");
	diary_page_free(&p);
}

/* The page that the loop reads anew before it is told has the new visit in it. */
/* Its row says "hung" alone; a key would take its lure away unseen. */
static void diary_page_shows_the_marks_of_an_open_hung_visit(void **state)
{
	struct trap_diary d = sample_diary();
	struct canvas c = { 0 };
	struct diary_page p = { 0 };

	(void)state;
	d.rows[6].visit.outcome = OUTCOME_HUNG;
	d.rows[6].visit.new_card = SAMPLE_CARD;
	d.rows[6].visit.new_lure = SAMPLE_LURE;
	diary_show(&p, &d);
	diary_press(&p, "~~~~~~\n");
	canvas_size(&c, 24, 80);
	diary_page_draw(&p, &c);
	expect_shows("card and lure", &c, "[ hung cl ]");
	canvas_free(&c);
	diary_page_free(&p);
}

static void diary_page_wishes_and_turns(void **state)
{
	struct trap_diary d = sample_diary();
	struct diary_page p = { 0 };

	(void)state;
	diary_show(&p, &d);
	assert_int_equal(diary_press(&p, "u").want, WANT_UNDO_PAST);
	assert_int_equal(diary_press(&p, "?").want, WANT_HELP);
	assert_int_equal(diary_press(&p, "\x1b").want, WANT_BACK);
	assert_int_equal(
		diary_press(&p, "c\x1b").want, WANT_NOTHING); /* closes the changes */
	assert_int_equal(p.mode, DIARY_LIST);
	assert_false(p.turn_season);
	diary_press(&p, "y");
	assert_true(p.turn_season);
	d.n = 0;
	diary_show(&p, &d);
	assert_int_equal(diary_press(&p, "\n#u").want, WANT_UNDO_PAST);
	assert_int_equal(diary_press(&p, "n07-17\n").want, WANT_NOTHING);
	assert_int_equal(p.mode, DIARY_VISIT);
	expect_keys(diary_page_keys());
	diary_page_free(&p);
}

static void diary_page_moves_with_the_number_pad(void **state)
{
	static const struct {
		char key;
		size_t at;
	} row[] = { { '2', 1 }, { '2', 2 }, { '8', 1 }, { '1', 6 }, { '7', 0 },
		{ '3', 6 }, { '9', 0 } };
	struct trap_diary d = sample_diary();
	struct diary_page p = { 0 };

	(void)state;
	diary_show(&p, &d);
	p.rows = 10;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		diary_page_key(&p, sample_key(row[i].key));
		if (p.picked != row[i].at || p.day != d.rows[p.picked].visit.day)
			fail_msg("%c: row %zu", row[i].key, p.picked);
	}
	diary_page_free(&p);
}

static void draw_everywhere(struct diary_page *p)
{
	struct canvas c = { 0 };

	for (int rows = 1; rows <= 30; rows++)
		for (int cols = 1; cols <= 90; cols++) {
			canvas_size(&c, rows, cols);
			diary_page_draw(p, &c);
		}
	canvas_free(&c);
}

static void diary_page_draws_at_every_size(void **state)
{
	static const char *const keys[] = { "", "~~~~\n14", "\n. long note",
		"n07-17\n5", "n07", "c", "n06-01\n", "~k", "~k\nx", "/4", "/zz",
		"/4\n" };
	struct diary_page p = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
		struct trap_diary d = sample_diary();
		diary_show(&p, &d);
		diary_press(&p, keys[i]);
		draw_everywhere(&p);
	}
	struct trap_diary wide = sample_diary();
	for (size_t i = 0; i < wide.n; i++) {
		sample_long(wide.rows[i].visit_text, sizeof wide.rows[i].visit_text, 0);
		sample_long(wide.rows[i].words.note, sizeof wide.rows[i].words.note, 1);
	}
	sample_long(wide.title, sizeof wide.title, 1);
	diary_show(&p, &wide);
	draw_everywhere(&p);
	wide.n = wide.n_olds = 0;
	diary_show(&p, &wide);
	draw_everywhere(&p);
	diary_press(&p, "c");
	draw_everywhere(&p);
	diary_page_free(&p);
	draw_everywhere(&p);
	diary_page_free(&p);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(diary_page_shows_the_visits),
		cmocka_unit_test(diary_page_corrects_as_a_run_does),
		cmocka_unit_test(
			diary_page_asks_about_an_odd_count_against_those_before_it),
		cmocka_unit_test(
			diary_page_asks_once_before_a_visit_of_today_in_a_barred_block),
		cmocka_unit_test(diary_page_leaves_a_visit_as_it_was),
		cmocka_unit_test(diary_page_adds_a_visit_on_a_past_day),
		cmocka_unit_test(diary_page_takes_out_only_when_asked_twice),
		cmocka_unit_test(diary_page_keeps_what_is_typed_when_it_is_not_saved),
		cmocka_unit_test(diary_page_says_what_was_kept_and_stays_on_it),
		cmocka_unit_test(diary_page_shows_the_marks_of_an_open_hung_visit),
		cmocka_unit_test(diary_page_wishes_and_turns),
		cmocka_unit_test(diary_page_moves_with_the_number_pad),
		cmocka_unit_test(diary_page_draws_at_every_size),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
