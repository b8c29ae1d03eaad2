#include "hot.h"

static void open_orchard(struct fixture *f, struct hot_view *v)
{
	fixture_open(f);
	hot_traps(f, orchard, ORCHARD_TRAPS, "2026-04-20");
	hot_see(f, v, (struct hot_ask){ 0 });
}

static void shut(struct fixture *f, struct hot_view *v)
{
	hotspots_free(v);
	fixture_close(f);
}

/* Figures of R 4.2.2 for these twelve traps: rates, ratio, all 220 subsets, Holm. */
static void the_hot_block_stands_first_with_its_numbers(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	open_orchard(&f, &v);
	const struct hot_row *ash = &v.rows[0];
	assert_string_equal(ash->name, "Ash");
	assert_int_equal(ash->grade, HOT_CLEAR);
	assert_string_equal(ash->grade_text, "clear hot spot");
	near_to(ash->rate.at, 2.628571428571429);
	near_to(ash->ratio.at, 92.0 / 245 / (61.0 / 735));
	near_to(ash->p_shuffle, 1.0 / 220);
	near_to(ash->p_holm, 4.0 / 220);
	assert_string_equal(ash->says,
		"A clear hot spot: 4.5 times the rest (2.6 a trap and week, 0.6 "
		"elsewhere).");
	has_text(ash->numbers,
		"92 moths in 245 trap-nights of 3 traps against 61 moths "
		"in 735 trap-nights of 9 traps.");
	has_text(ash->numbers, "p 0.0045");
	has_text(v.says, "Ash is a clear hot spot: 4.5 times the rest");
	assert_string_equal(v.title, "Quillback · CM · season 2026");
	assert_string_equal(v.window, "20 Apr to 13 Jul, 980 trap-nights, 153 moths");
	shut(&f, &v);
}

static void other_blocks_are_not_accused(void **state)
{
	static const struct {
		const char *block;
		int64_t as_high; /* of 220, by R */
	} row[] = { { "Birch", 112 }, { "Cedar", 189 }, { "Dale", 218 } };
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	open_orchard(&f, &v);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		const struct hot_row *r = hot_row_named(&v, row[i].block);
		assert_int_equal(r->grade, HOT_LUCK);
		assert_string_equal(r->grade_text, "not higher");
		near_to(r->p_shuffle, (double)row[i].as_high / 220);
		near_to(r->p_holm, 1);
		near_to(r->p_bh, 218.0 / 220);
		has_text(r->says, "Not above the rest");
		assert_string_equal(r->next, "");
	}
	shut(&f, &v);
}

static void power_says_what_such_a_test_could_show(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	open_orchard(&f, &v);
	assert_string_equal(hot_row_named(&v, "Ash")->power, "");
	has_text(hot_row_named(&v, "Dale")->power,
		"With 3 traps here a threefold block would be shown ");
	assert_string_equal(
		hot_row_named(&v, "Dale")->power, hot_row_named(&v, "Cedar")->power);
	shut(&f, &v);
}

static void what_is_hot_asks_for_fruit_and_advice_and_the_next_flight(void **state)
{
	static const char *const parts[] = { "Sample fruit", "300", "up to about 1 %",
		"600: 0.5 %", "local adviser", "next flight" };
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	open_orchard(&f, &v);
	for (size_t i = 0; i < sizeof parts / sizeof *parts; i++)
		has_text(v.rows[0].next, parts[i]);
	shut(&f, &v);
}

static void one_trap_is_never_more_than_higher(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };
	int n = 0;

	(void)state;
	open_orchard(&f, &v);
	for (size_t i = 0; i < v.n; i++) {
		if (v.rows[i].what != HOT_OF_TRAP)
			continue;
		n++;
		assert_true(v.rows[i].grade <= HOT_HIGHER);
		assert_true(isnan(v.rows[i].p_shuffle));
	}
	assert_int_equal(n, ORCHARD_TRAPS);
	const struct hot_row *one = hot_row_named(&v, "trap 1");
	assert_int_equal(one->grade, HOT_HIGHER);
	has_text(one->says, "one trap proves nothing");
	has_text(one->next, "Hang another trap near it or move it");
	shut(&f, &v);
}

/* R: 95 of 567 and 58 of 413 trap-nights; 23 of the 81 ways inside blocks. */
static void the_border_is_tested_inside_blocks(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	open_orchard(&f, &v);
	const struct hot_row *border = hot_row_named(&v, "border, all blocks");
	assert_int_equal(border->what, HOT_OF_BORDER);
	assert_int_equal(border->split.moths_in, 95);
	assert_int_equal(border->split.nights_in, 567);
	near_to(border->ratio.at, 95.0 / 567 / (58.0 / 413));
	near_to(border->p_shuffle, 23.0 / 81);
	has_text(border->says, "in the interior");
	const struct hot_row *ash = hot_row_named(&v, "border of Ash");
	assert_int_equal(ash->split.moths_in, 70);
	assert_int_equal(ash->split.moths_out, 22);
	assert_true(isnan(ash->p_shuffle));
	shut(&f, &v);
}

/* What is left out, and why; the comparison itself stays as it was. */
static void unlike_traps_are_left_out_and_counted_in_words(void **state)
{
	static const struct hot_spec other = { "L", "Ash", NAN, NAN, PLACE_NONE, 300,
		84 };
	static const struct hot_spec brief = { "S", "Ash", NAN, NAN, PLACE_NONE, 90,
		41 };
	static const struct hot_spec half = { "H", "Dale", NAN, NAN, PLACE_NONE, 0,
		42 };
	static const struct hot_spec apart = { "C", "Elm", NAN, NAN, PLACE_NONE, 80,
		30 };
	struct fixture f;
	struct hot_view v = { 0 };
	struct err e = { 0 };
	struct lure_kind combined = { .name = "combined", .life_days = 60 };

	(void)state;
	fixture_open(&f);
	hot_traps(&f, orchard, ORCHARD_TRAPS, "2026-04-20");
	hot_trap(&f, &brief, "2026-05-20");
	hot_trap(&f, &half, "2026-05-20");
	struct block elm = { .farm = f.farm.id,
		.name = "Elm",
		.condition = CONDITION_DISRUPTED,
		.area_x100 = -1 };
	must(book_put_block(f.book, &elm, &e), &e);
	hot_trap(&f, &apart, "2026-04-20");
	hot_hang(&f,
		hot_trap(&f, &(struct hot_spec){ "U", "Ash", NAN, NAN, 0, 0, 0 }, NULL),
		"2026-08-11");
	combined.pest = f.cm.id;
	must(book_put_lure(f.book, &combined, &e), &e);
	f.lure = combined;
	hot_trap(&f, &other, "2026-04-20");
	hot_see(&f, &v, (struct hot_ask){ 0 });
	assert_string_equal(v.left_out,
		"4 traps left out: 1 with another lure, 1 in blocks of another "
		"condition, 1 read for less than half the time, 1 not read at all.");
	assert_int_equal(v.n_alikes, 3);
	assert_int_equal(v.alikes[0].n, 13);
	assert_string_equal(v.alikes[0].text, "13 traps, three weeks, conventional");
	assert_int_equal(hot_row_named(&v, "Ash")->split.moths_in, 92);
	hot_see(&f, &v, (struct hot_ask){ .alike = 1 });
	assert_int_equal(v.alike, 1);
	assert_int_equal(v.alikes[1].n, 1);
	shut(&f, &v);
}

/* Fourteen traps with one lure show nothing; twelve with another are the orchard. */
static void what_is_hot_by_another_lure_is_told(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };
	struct err e = { 0 };
	struct lure_kind combined = { .name = "combined", .life_days = 60 };

	(void)state;
	fixture_open(&f);
	for (int i = 0; i < ORCHARD_TRAPS + 2; i++) {
		char label[16];
		snprintf(label, sizeof label, "z%d", i);
		hot_trap(&f,
			&(struct hot_spec){ label, i % 2 ? "Ash" : "Dale", NAN, NAN,
				PLACE_NONE, 3, 84 },
			"2026-04-20");
	}
	combined.pest = f.cm.id;
	must(book_put_lure(f.book, &combined, &e), &e);
	f.lure = combined;
	hot_traps(&f, orchard, ORCHARD_TRAPS, "2026-04-20");
	hot_see(&f, &v, (struct hot_ask){ 0 });
	assert_int_equal(v.alikes[0].n, ORCHARD_TRAPS + 2);
	has_text(v.left_out,
		"Another group (12 traps, combined, conventional) has Ash: clear hot "
		"spot.");
	hot_see(&f, &v, (struct hot_ask){ .alike = 1 });
	assert_null(strstr(v.left_out, "Another group"));
	shut(&f, &v);
}

static void a_trap_outside_its_block_is_not_counted_to_it(void **state)
{
	static const struct hot_spec out = { "O", "Dale", NAN, NAN, PLACE_OUTSIDE, 300,
		84 };
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	fixture_open(&f);
	hot_traps(&f, orchard, ORCHARD_TRAPS, "2026-04-20");
	hot_trap(&f, &out, "2026-04-20");
	hot_see(&f, &v, (struct hot_ask){ 0 });
	assert_int_equal(hot_row_named(&v, "Dale")->split.moths_in, 7);
	near_to(hot_row_named(&v, "Ash")->p_shuffle, 1.0 / 220);
	assert_int_equal(hot_row_named(&v, "trap O")->grade, HOT_HIGHER);
	has_text(v.left_out,
		"1 trap that hangs outside its block is not counted to it.");
	shut(&f, &v);
}

static void a_full_card_is_at_least_and_a_spoiled_one_is_nothing(void **state)
{
	static const struct hot_spec two[] = {
		{ "1", "Ash", NAN, NAN, PLACE_NONE, 30, 7 },
		{ "2", "Birch", NAN, NAN, PLACE_NONE, 9, 7 },
	};
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t full = hot_trap(&f, &two[0], "2026-05-01");
	int64_t spoiled = hot_trap(&f, &two[1], "2026-05-01");
	struct visit v1 = fixture_counted(full, "2026-05-15", 50);
	v1.outcome = OUTCOME_FLOOR;
	fixture_save(&f, v1);
	struct visit v2 = fixture_counted(spoiled, "2026-05-15", 40);
	v2.outcome = OUTCOME_SPOILED;
	v2.reason = REASON_DOWN;
	fixture_save(&f, v2);
	hot_see(&f, &v, (struct hot_ask){ 0 });
	assert_int_equal(v.traps[0].catch.moths, 80);
	assert_int_equal(v.traps[0].catch.nights, 14);
	assert_string_equal(v.traps[0].text, "40.0+");
	assert_int_equal(v.traps[1].catch.moths, 9);
	assert_int_equal(v.traps[1].catch.nights, 7);
	assert_string_equal(v.traps[1].text, "9.0");
	has_text(v.window, "at least 89 moths");
	has_text(hot_row_named(&v, "Ash")->numbers, "at least 80 moths");
	shut(&f, &v);
}

static void more_traps_than_can_be_compared_are_left_out(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };
	struct err e = { 0 };
	char label[16];

	(void)state;
	fixture_open(&f);
	must(book_begin(f.book, &e), &e);
	for (int i = 0; i <= HOT_TRAPS_MAX; i++) {
		const struct hot_spec spec = { label, i % 2 ? "Ash" : "Birch", NAN, NAN,
			PLACE_NONE, 1, 84 };
		snprintf(label, sizeof label, "%d", i);
		hot_trap(&f, &spec, "2026-04-20");
	}
	must(book_commit(f.book, &e), &e);
	hot_see(&f, &v, (struct hot_ask){ 0 });
	assert_int_equal(v.alikes[0].n, HOT_TRAPS_MAX);
	assert_string_equal(
		v.left_out, "1 trap left out: 1 more than can be compared.");
	shut(&f, &v);
}

/* n traps in the first block and k in the second, each with its count. */
struct sparse {
	const char *why;
	int n, k, counts[8];
	const char *says;  /* of the page */
	const char *block; /* of the first block, or "" */
};

static void see_sparse(const struct sparse *s)
{
	struct fixture f;
	struct hot_view v = { 0 };

	fixture_open(&f);
	for (int i = 0; i < s->n + s->k; i++) {
		const char label[2] = { (char)('1' + i), '\0' };
		const struct hot_spec spec = { label, i < s->n ? "Ash" : "Birch", NAN,
			NAN, PLACE_NONE, s->counts[i], 84 };
		hot_trap(&f, &spec, "2026-04-20");
	}
	hot_see(&f, &v, (struct hot_ask){ 0 });
	if (!strstr(v.says, s->says))
		fail_msg("%s: \"%s\"", s->why, v.says);
	if (s->n && !strstr(hot_row_named(&v, "Ash")->says, s->block))
		fail_msg("%s: \"%s\"", s->why, hot_row_named(&v, "Ash")->says);
	for (size_t i = 0; i < v.n; i++)
		assert_true(v.rows[i].grade < HOT_WATCH);
	assert_true(v.missing[0] || v.n_traps == 0);
	shut(&f, &v);
}

static void too_little_is_said_in_a_sentence_each(void **state)
{
	static const struct sparse cases[] = {
		{ "no trap", 0, 0, { 0 }, "No trap of this pest was read", "" },
		{ "one trap", 1, 0, { 30 }, "all like traps are in one block",
			"Nothing to compare with" },
		{ "one block", 4, 0, { 9, 8, 7, 6 }, "all like traps are in one block",
			"Nothing to compare with" },
		{ "all zeros", 4, 4, { 0 }, "Nothing caught", "Nothing caught" },
		{ "one moth", 4, 4, { 1 }, "1 moth in all: too little to tell",
			"1 moth in all" },
		{ "the last that is too few", 4, 4, { 5, 5, 5, 4 },
			"19 moths in all: too little to tell", "19 moths in all" },
		{ "all in one trap", 4, 4, { 40 },
			"All 40 moths were in trap 1: one trap cannot show",
			"Trap 1 alone caught 40 of the 40." },
		{ "one trap here", 1, 5, { 40, 1, 1, 1, 1, 1 }, "One trap only",
			"One trap only" },
		{ "two to compare with", 3, 2, { 9, 9, 9, 1, 1 },
			"Too few traps to tell",
			"Too few traps to tell: 3 here and 2 to compare with." },
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
		see_sparse(&cases[i]);
}

static void no_word_of_the_page_tells_to_treat(void **state)
{
	static const char *const words[] = { "spray", "treat", "insecticide",
		"product" };
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	open_orchard(&f, &v);
	for (size_t w = 0; w < sizeof words / sizeof *words; w++)
		for (size_t i = 0; i < v.n; i++) {
			assert_null(strstr(v.rows[i].says, words[w]));
			assert_null(strstr(v.rows[i].next, words[w]));
		}
	shut(&f, &v);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_hot_block_stands_first_with_its_numbers),
		cmocka_unit_test(other_blocks_are_not_accused),
		cmocka_unit_test(power_says_what_such_a_test_could_show),
		cmocka_unit_test(
			what_is_hot_asks_for_fruit_and_advice_and_the_next_flight),
		cmocka_unit_test(one_trap_is_never_more_than_higher),
		cmocka_unit_test(the_border_is_tested_inside_blocks),
		cmocka_unit_test(unlike_traps_are_left_out_and_counted_in_words),
		cmocka_unit_test(what_is_hot_by_another_lure_is_told),
		cmocka_unit_test(a_trap_outside_its_block_is_not_counted_to_it),
		cmocka_unit_test(a_full_card_is_at_least_and_a_spoiled_one_is_nothing),
		cmocka_unit_test(more_traps_than_can_be_compared_are_left_out),
		cmocka_unit_test(too_little_is_said_in_a_sentence_each),
		cmocka_unit_test(no_word_of_the_page_tells_to_treat),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
