/* What a visit put in, and what its card holds. */
#include "screen/diary_samples.h"

static void diary_page_corrects_a_kind_by_one_key(void **state)
{
	static const struct {
		const char *why, *keys;
		enum want want;
		int64_t lure, card;
		const char *says;
	} row[] = {
		{ "the next lure, the card stays", "~k~\n\n", WANT_SAVE_PAST, 1, 0,
			"" },
		{ "typed", "~kold\n\n", WANT_SAVE_PAST, 2, 0, "" },
		{ "by the signs of the number pad", "~k++-\n\n", WANT_SAVE_PAST, 1, 0,
			"" },
		{ "the card alone", "~k\n~\n", WANT_SAVE_PAST, 0, 1, "" },
		{ "both", "~k~\n~\n", WANT_SAVE_PAST, 1, 1, "" },
		{ "of a visit with a card only", "~~k~\n", WANT_SAVE_PAST, -1, 1, "" },
		{ "the same ones", "~k\n\n", WANT_NOTHING, 0, 0, "Left as it was." },
		{ "left", "~k~\n\x1b", WANT_NOTHING, 0, 0, "Left as it was." },
		{ "nothing of that name", "~kx\n", WANT_NOTHING, 0, 0,
			"Nothing here is called \"x\": Backspace shows more, Esc "
			"leaves it as it was." },
		{ "nothing was put in", "k", WANT_NOTHING, 0, 0,
			"No lure or card was put in there: k is for a visit with l, c "
			"or hung." },
	};
	struct diary_page p = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct trap_diary d = sample_diary();

		diary_show(&p, &d);
		struct wish w = diary_press(&p, row[i].keys);
		if (w.want != row[i].want || strcmp(p.message.text, row[i].says) != 0)
			fail_msg("%s: %d \"%s\"", row[i].why, (int)w.want,
				p.message.text);
		if (w.want == WANT_NOTHING)
			continue;
		const struct visit *was = &d.rows[p.picked].visit;
		assert_int_equal(w.visit.new_lure,
			row[i].lure < 0 ? 0 : SAMPLE_LURE + row[i].lure);
		assert_int_equal(w.visit.new_card, SAMPLE_CARD + row[i].card);
		assert_int_equal(w.visit.count, was->count);
		assert_int_equal(w.visit.day, was->day);
		assert_string_equal(w.words.scout, "JR"); /* who counted stays */
		assert_false(p.trap.open); /* the book is held against what it was */
		assert_true(visit_same(&p.trap.visit, was));
		d.rows[p.picked].visit = w.visit;
		diary_page_show(&p, &d, &limits_usual, false);
		assert_int_equal(p.mode, DIARY_LIST); /* it is another one now */
		diary_page_saved(&p, &d, "07:42:11");
		assert_int_equal(p.picked, row[i].lure < 0 ? 2 : 1);
	}
	diary_page_free(&p);
}

static void diary_page_says_which_kind_it_was(void **state)
{
	struct trap_diary d = sample_diary();
	struct diary_page p = { 0 };

	(void)state;
	diary_show(&p, &d);
	d.rows[1].visit = diary_press(&p, "~k~\n~\n").visit;
	diary_page_show(&p, &d, &limits_usual, false);
	diary_page_saved(&p, &d, "07:42:11");
	assert_string_equal(p.message.text,
		"Kept: Tue 14 Jul, 4 cl, 4.0 a week; lure CM standard, was CM 1 mg; "
		"card small liner, was delta liner");
	diary_page_free(&p);
}

static void diary_page_shuts_the_kinds_of_a_visit_that_was_changed(void **state)
{
	struct trap_diary d = sample_diary();
	struct diary_page p = { 0 };

	(void)state;
	diary_show(&p, &d);
	diary_press(&p, "~k~\n\n");
	diary_page_show(&p, &d, &limits_usual, false); /* the book was busy */
	diary_page_not_saved(&p, "the book is locked");
	assert_int_equal(p.mode, DIARY_KIND);
	assert_int_equal(diary_press(&p, "\n").want, WANT_SAVE_PAST);
	d.rows[1].visit.count = 9; /* somebody was quicker */
	diary_page_show(&p, &d, &limits_usual, false);
	diary_page_not_saved(&p, "trap 3 got 9 meanwhile");
	assert_int_equal(p.mode, DIARY_LIST);
	assert_true(p.message.is_fault);
	assert_non_null(strstr(p.message.text, "the kind is not saved"));
	diary_page_free(&p);
}

static void diary_page_asks_about_a_count_that_its_card_does_not_hold(void **state)
{
	struct trap_diary d = sample_diary();
	struct diary_page p = { 0 };

	(void)state;
	d.rows[4].card_full_at = 50;
	diary_show(&p, &d);
	assert_int_equal(
		diary_press(&p, "~~~~\n50\n").want, WANT_NOTHING); /* odd alone */
	assert_null(strstr(p.message.text, "full at"));
	d.rows[4].card_full_at = 10;
	diary_show(&p, &d);
	assert_int_equal(diary_press(&p, "~~~~\n10\n").want, WANT_SAVE_PAST);
	diary_show(&p, &d);
	assert_int_equal(diary_press(&p, "~~~~\n11\n").want, WANT_NOTHING);
	assert_string_equal(p.message.text,
		"11 on a card that is full at 10: + says at least, Enter again if it "
		"was counted.");
	assert_int_equal(diary_press(&p, "\n").want, WANT_SAVE_PAST);
	d.rows[0].card_full_at = 10; /* a new visit has the card of the one after it */
	diary_show(&p, &d);
	assert_int_equal(diary_press(&p, "n07-17\n11\n").want, WANT_NOTHING);
	diary_page_free(&p);
}

static void diary_page_takes_a_day_without_its_dash(void **state)
{
	struct trap_diary d = sample_diary();
	struct diary_page p = { 0 };

	(void)state;
	diary_show(&p, &d);
	diary_press(&p, "n0717\n");
	assert_int_equal(p.mode, DIARY_VISIT);
	assert_int_equal(p.day, day_from_ymd(2026, 7, 17));
	diary_show(&p, &d);
	diary_press(&p, "n1341\n");
	assert_non_null(strstr(p.message.text, "1341 is no date"));
	diary_page_free(&p);
}

static void diary_page_names_what_went_when_the_diary_was_read_again(void **state)
{
	struct trap_diary d = sample_diary();
	struct diary_page p = { 0 };

	(void)state;
	diary_show(&p, &d);
	diary_press(&p, "~\n*\n");
	d.rows[1].visit.new_lure = 0;
	SET(d.rows[1].visit_text, "4 c");
	diary_page_show(&p, &d, &limits_usual, false);
	diary_page_saved(&p, &d, "07:42:11");
	assert_string_equal(p.message.text,
		"Kept: Tue 14 Jul, 4 c, 4.0 a week, no new lure any more");
	diary_page_free(&p);
}

static void diary_page_says_which_marks_went(void **state)
{
	struct trap_diary d = sample_diary();
	struct diary_page p = { 0 };

	(void)state;
	diary_show(&p, &d);
	diary_press(&p, "~\n*\n");
	d.rows[1].visit.new_lure = 0;
	SET(d.rows[1].visit_text, "4 c");
	diary_page_saved(&p, &d, "07:42:11");
	assert_string_equal(p.message.text,
		"Kept: Tue 14 Jul, 4 c, 4.0 a week, no new lure any more");
	diary_page_free(&p);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			diary_page_names_what_went_when_the_diary_was_read_again),
		cmocka_unit_test(diary_page_says_which_marks_went),
		cmocka_unit_test(diary_page_corrects_a_kind_by_one_key),
		cmocka_unit_test(diary_page_says_which_kind_it_was),
		cmocka_unit_test(
			diary_page_shuts_the_kinds_of_a_visit_that_was_changed),
		cmocka_unit_test(
			diary_page_asks_about_a_count_that_its_card_does_not_hold),
		cmocka_unit_test(diary_page_takes_a_day_without_its_dash),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
