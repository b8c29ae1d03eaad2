#include "fixture.h"

static void book_keeps_a_visit_as_it_was_given(void **state)
{
	struct visit_words w = { "Ida", "wind, \"half\" the card; it's Zoë's row" },
			   got_w;
	struct desk d;
	struct visit got;

	(void)state;
	desk_memory(&d);
	struct visit v = counted(d.trap, day_from_ymd(2026, 7, 21), 14);
	v.outcome = OUTCOME_FLOOR;
	v.females = 3;
	v.others = 0;
	v.new_card = d.card;
	v.new_lure = d.lure;
	v.stirred = true;
	must(book_save_visit(d.book, &v, &w, e));
	must(book_visit(d.book, v.trap, v.day, &got, &got_w, e));
	assert_int_equal(got.outcome, OUTCOME_FLOOR);
	assert_int_equal(got.count, 14);
	assert_int_equal(got.females, 3);
	assert_int_equal(got.others, 0);
	assert_int_equal(got.new_card, d.card);
	assert_int_equal(got.new_lure, d.lure);
	assert_true(got.stirred);
	assert_int_equal(got.day, v.day);
	assert_string_equal(got_w.scout, w.scout);
	assert_string_equal(got_w.note, w.note);
	desk_clear(&d);
}

static void book_tells_no_count_from_zero(void **state)
{
	struct desk d;
	struct visit got;

	(void)state;
	desk_memory(&d);
	struct visit zero = counted(d.trap, 20000, 0);
	struct visit none = without_count(d.trap, 20001, OUTCOME_SPOILED);
	must(book_save_visit(d.book, &zero, NULL, e));
	must(book_save_visit(d.book, &none, NULL, e));
	must(book_visit(d.book, d.trap, 20000, &got, NULL, e));
	assert_int_equal(got.count, 0);
	assert_int_equal(got.others, COUNT_NONE);
	must(book_visit(d.book, d.trap, 20001, &got, NULL, e));
	assert_int_equal(got.count, COUNT_NONE);
	assert_int_equal(
		store_number(d.book, "SELECT count(*) FROM visit WHERE count = 0", -1),
		1);
	desk_clear(&d);
}

struct bad_visit {
	const char *why, *words;
	struct visit v;
	struct visit_words w;
	bool good;
};

static void check_visit(struct desk *d, const struct bad_visit *row)
{
	struct err err = { 0 };
	struct visit v = row->v;

	v.trap = v.trap ? v.trap : d->trap;
	v.new_lure = v.new_lure == 1 ? d->lure : v.new_lure == 2 ? d->other_lure : 0;
	if (book_save_visit(d->book, &v, &row->w, &err) != row->good)
		fail_msg("%s: %s", row->why, row->good ? err.text : "not refused");
	if (!row->good && !strstr(err.text, row->words))
		fail_msg("%s: \"%s\" has no \"%s\"", row->why, err.text, row->words);
}

#define V(o, n)                                                                        \
	.v = { .day = 20000, .outcome = o, .count = n, .females = -1, .others = -1 }

static void book_refuses_a_visit_that_cannot_be(void **state)
{
	static const struct bad_visit row[] = {
		{ "the highest count", "", V(OUTCOME_COUNTED, 9999), .good = true },
		{ "one over the highest", "0 to 9999", V(OUTCOME_COUNTED, 10000) },
		{ "the lowest count", "", V(OUTCOME_COUNTED, 0), .good = true },
		{ "below none", "0 to 9999", V(OUTCOME_COUNTED, -2) },
		{ "counted without a count", "needs a count", V(OUTCOME_COUNTED, -1) },
		{ "a floor without a count", "needs a count", V(OUTCOME_FLOOR, -1) },
		{ "skipped with a count", "has no count", V(OUTCOME_SKIPPED, 3) },
		{ "hung with a count", "has no count", V(OUTCOME_HUNG, 0) },
		{ "missing with a count", "has no count", V(OUTCOME_MISSING, 1) },
		{ "pulled without a count", "", V(OUTCOME_PULLED, -1), .good = true },
		{ "pulled with a count", "", V(OUTCOME_PULLED, 4), .good = true },
		{ "no such outcome", "the outcome", V(OUTCOME_COUNT, 1) },
		{ "last females", "",
			.v = { .day = 20000,
				.outcome = OUTCOME_COUNTED,
				.females = 9999,
				.others = 9999 },
			.good = true },
		{ "too many females", "females",
			.v = { .day = 20000,
				.outcome = OUTCOME_COUNTED,
				.females = 10000,
				.others = -1 } },
		{ "too many others", "other moths",
			.v = { .day = 20000,
				.outcome = OUTCOME_COUNTED,
				.females = -1,
				.others = 10000 } },
		{ "a reason that fits", "",
			.v = { .day = 20000,
				.outcome = OUTCOME_SKIPPED,
				.reason = REASON_WEATHER,
				.count = -1,
				.females = -1,
				.others = -1 },
			.good = true },
		{ "a reason of another outcome", "does not fit",
			.v = { .day = 20000,
				.outcome = OUTCOME_SKIPPED,
				.reason = REASON_DOWN,
				.count = -1,
				.females = -1,
				.others = -1 } },
		{ "no date", "no date",
			.v = { .day = DAY_NONE,
				.outcome = OUTCOME_COUNTED,
				.females = -1,
				.others = -1 } },
		{ "the first day", "",
			.v = { .day = -25567,
				.outcome = OUTCOME_COUNTED,
				.females = -1,
				.others = -1 },
			.good = true },
		{ "the day before it", "no date",
			.v = { .day = -25568,
				.outcome = OUTCOME_COUNTED,
				.females = -1,
				.others = -1 } },
		{ "the last day", "",
			.v = { .day = 84005,
				.outcome = OUTCOME_COUNTED,
				.females = -1,
				.others = -1 },
			.good = true },
		{ "the day after it", "no date",
			.v = { .day = 84006,
				.outcome = OUTCOME_COUNTED,
				.females = -1,
				.others = -1 } },
		{ "a trap that is not there", "the trap is not in the book",
			.v = { .trap = 4711,
				.day = 20000,
				.outcome = OUTCOME_COUNTED,
				.females = -1,
				.others = -1 } },
		{ "a card that is not there", "the card is not in the book",
			.v = { .day = 20000,
				.outcome = OUTCOME_COUNTED,
				.females = -1,
				.others = -1,
				.new_card = 4711 } },
		{ "a lure of its pest", "",
			.v = { .day = 20000,
				.outcome = OUTCOME_COUNTED,
				.females = -1,
				.others = -1,
				.new_lure = 1 },
			.good = true },
		{ "a lure of another pest", "the lure T2 test is for T2",
			.v = { .day = 20000,
				.outcome = OUTCOME_COUNTED,
				.females = -1,
				.others = -1,
				.new_lure = 2 } },
		{ "a note over two lines", "the note holds", V(OUTCOME_COUNTED, 1),
			.w = { "", "one\ntwo" } },
		{ "an escape in the scout", "the scout's name", V(OUTCOME_COUNTED, 1),
			.w = { "\033[2J", "" } },
		{ "a torn character", "at byte 3", V(OUTCOME_COUNTED, 1),
			.w = { "", "ab\xc3" } },
		{ "SQL in the note", "", V(OUTCOME_COUNTED, 1),
			.w = { "", "'); DROP TABLE visit; --" }, .good = true },
	};
	struct desk d;

	(void)state;
	desk_memory(&d);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		check_visit(&d, &row[i]);
	desk_clear(&d);
}

static void book_correction_keeps_the_old_value(void **state)
{
	struct old_visits old = { 0 };
	struct desk d;
	struct visit got;

	(void)state;
	desk_memory(&d);
	struct visit v = counted(d.trap, 20000, 14);
	struct visit_words w = { "Ida", "first \"look\"" }, got_w;
	must(book_save_visit(d.book, &v, &w, e));
	book_set_who(d.book, "Office");
	v.count = 41;
	must(book_save_visit(d.book, &v, NULL, e));
	must(book_visit(d.book, v.trap, v.day, &got, &got_w, e));
	assert_int_equal(got.count, 41);
	assert_string_equal(got_w.note, w.note); /* no words given: the old ones stay */
	must(book_remove_visit(d.book, v.trap, v.day, e));
	refused(book_visit(d.book, v.trap, v.day, &got, NULL, e), ERR_NOT_FOUND,
		"trap 1 of Hollow Reach has no visit on 2024-10-04");
	must(book_old_visits(d.book, v.trap, v.day, &old, e));
	assert_int_equal(old.n, 2);
	assert_true(old.items[0].removed);
	assert_int_equal(old.items[0].visit.count, 41);
	assert_false(old.items[1].removed);
	assert_int_equal(old.items[1].visit.count, 14);
	assert_int_equal(old.items[1].visit.females, COUNT_NONE);
	assert_string_equal(old.items[1].words.scout, "Ida");
	assert_string_equal(old.items[1].words.note, w.note);
	assert_string_equal(old.items[1].changed_by, "Office");
	assert_int_equal(strlen(old.items[1].changed_at), 24);
	assert_int_equal(store_number(d.book, "SELECT count(*) FROM tombstone", 0), 1);
	refused(book_remove_visit(d.book, v.trap, v.day, e), ERR_NOT_FOUND, "no visit");
	free(old.items);
	desk_clear(&d);
}

static void book_saving_the_same_again_is_no_change(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct visit v = counted(d.trap, 20000, 14);
	must(book_save_visit(d.book, &v, NULL, e));
	must(book_save_visit(d.book, &v, NULL, e));
	assert_int_equal(
		store_number(d.book, "SELECT count(*) FROM history WHERE trap > 0", 0),
		1);
	desk_clear(&d);
}

static void book_adding_never_replaces(void **state)
{
	struct visit_words w = { "Ida", "" }, noted = { "Ida", "other note" };
	struct desk d;
	bool same = true;

	(void)state;
	desk_memory(&d);
	struct visit v = counted(d.trap, 20000, 12);
	must(book_add_visit(d.book, &v, &w, &same, e));
	assert_false(same);
	must(book_add_visit(d.book, &v, &w, &same, e));
	assert_true(same);
	refused(book_add_visit(d.book, &v, &noted, &same, e), ERR_INPUT,
		"other details");
	v.count = 14;
	refused(book_add_visit(d.book, &v, &w, &same, e), ERR_INPUT,
		"trap 1 of Hollow Reach has a visit on 2024-10-04 already: \"counted "
		"12\", "
		"not \"counted 14\"");
	assert_int_equal(
		store_number(d.book, "SELECT count(*) FROM history WHERE trap > 0", 9),
		0);
	desk_clear(&d);
}

static void book_group_is_all_or_none(void **state)
{
	struct desk d;
	struct visit got;
	bool same;

	(void)state;
	desk_disk(&d);
	struct visit v = counted(d.trap, 20000, 12), bad = counted(4711, 20000, 1);
	must(book_begin(d.book, e));
	must(book_add_visit(d.book, &v, NULL, &same, e));
	refused(book_add_visit(d.book, &bad, NULL, &same, e), ERR_NOT_FOUND, "trap");
	v.day++;
	must(book_save_visit(d.book, &v, NULL, e)); /* the group goes on */
	refused(book_save_visit(d.book, &bad, NULL, e), ERR_NOT_FOUND, "trap");
	book_rollback(d.book);
	refused(book_visit(d.book, d.trap, 20000, &got, NULL, e), ERR_NOT_FOUND,
		"no visit");
	must(book_begin(d.book, e));
	must(book_add_visit(d.book, &v, NULL, &same, e));
	must(book_commit(d.book, e));
	must(book_visit(d.book, d.trap, 20001, &got, NULL, e));
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_keeps_a_visit_as_it_was_given),
		cmocka_unit_test(book_tells_no_count_from_zero),
		cmocka_unit_test(book_refuses_a_visit_that_cannot_be),
		cmocka_unit_test(book_correction_keeps_the_old_value),
		cmocka_unit_test(book_saving_the_same_again_is_no_change),
		cmocka_unit_test(book_adding_never_replaces),
		cmocka_unit_test(book_group_is_all_or_none),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
