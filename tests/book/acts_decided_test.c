/* Fruit checks, dispensers and answers in the book. */
#include "fixture.h"

enum { DAY = 20685 }; /* 2026-08-20 */

static void book_fruit_checks_add_up(void **state)
{
	static const struct {
		const char *why;
		int32_t looked_at, stung, entered;
		const char *words;
	} row[] = {
		{ "none of one", 1, 0, 0, NULL },
		{ "nothing looked at", 0, 0, 0, "1 to 99999" },
		{ "the most", 99999, -1, 99999, NULL },
		{ "one more", 100000, -1, 0, "1 to 99999" },
		{ "all of them", 300, 298, 2, NULL },
		{ "one more than all", 300, 299, 2, "301 are stung or entered" },
		{ "not told apart", 300, -1, 300, NULL },
		{ "one more than looked at", 300, -1, 301, "301" },
		{ "less than none entered", 300, 0, -1, "0 to" },
		{ "less than not told apart", 300, -2, 0, "-1 to" },
	};
	struct fruit_checks got = { 0 };
	struct err err;
	struct desk d;
	size_t n = 0;

	(void)state;
	desk_memory(&d);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fruit_check c = { 0, d.block, d.pest, DAY, PART_SHOOTS,
			TREE_GROUND, row[i].looked_at, row[i].stung, row[i].entered,
			"n" };
		bool good = book_put_fruit_check(d.book, &c, &err);
		if (good != !row[i].words || (!good && !strstr(err.text, row[i].words)))
			fail_msg("%s: %s", row[i].why, good ? "taken" : err.text);
		if (!good)
			continue;
		must(book_fruit_checks(d.book, d.farm, DAY, DAY, &got, e));
		assert_int_equal(got.n, ++n);
		const struct fruit_check *last = &got.items[n - 1];
		assert_int_equal(last->looked_at, row[i].looked_at);
		assert_int_equal(last->stung, row[i].stung);
		assert_int_equal(last->entered, row[i].entered);
		assert_int_equal(last->part, PART_SHOOTS);
		assert_int_equal(last->where, TREE_GROUND);
		assert_int_equal(last->pest, d.pest);
	}
	free(got.items);
	desk_clear(&d);
}

static void book_has_a_word_for_every_part_and_decision(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	for (int part = 0; part < PART_COUNT; part++)
		for (int where = 0; where < TREE_COUNT; where++) {
			struct fruit_check c = fruit_check_blank;
			c.block = d.block;
			c.day = DAY;
			c.part = (enum fruit_part)part;
			c.where = (enum tree_part)where;
			c.looked_at = 1;
			c.entered = 0;
			must(book_put_fruit_check(d.book, &c, e));
		}
	for (int i = 0; i < DECISION_COUNT; i++) {
		struct answer a = answer_blank;
		a.block = d.block;
		a.pest = d.pest;
		a.day = a.on = DAY;
		a.decision = (enum decision)i;
		must(book_put_answer(d.book, &a, e));
	}
	desk_clear(&d);
}

static void book_dispensers_do_not_overlap(void **state)
{
	static const struct {
		const char *why;
		int32_t up, down;
		bool other_pest, good;
	} row[] = {
		{ "up on the day the others came down", 200, 300, false, true },
		{ "the day before they come down", 199, 200, false, false },
		{ "down on the day the others went up", 50, 100, false, true },
		{ "a day later", 50, 101, false, false },
		{ "around them", 50, 250, false, false },
		{ "within them", 120, 130, false, false },
		{ "before them and still up", 50, DAY_NONE, false, false },
		{ "on the same day", 100, 100, false, false },
		{ "of another pest", 120, 130, true, true },
	};
	struct err err;
	struct desk d;

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		desk_memory(&d);
		struct disruption a = disruption_blank, b;
		a.block = d.block;
		a.pest = d.pest;
		a.up = 100;
		a.down = 200;
		must(book_put_disruption(d.book, &a, e));
		must(book_put_disruption(d.book, &a, e)); /* itself is no other */
		b = a;
		b.id = 0;
		b.pest = row[i].other_pest ? 0 : d.pest;
		b.up = row[i].up;
		b.down = row[i].down;
		if (book_put_disruption(d.book, &b, &err) != row[i].good ||
			(!row[i].good && !strstr(err.text, "are up then")))
			fail_msg(
				"%s: %s", row[i].why, row[i].good ? err.text : "taken");
		desk_clear(&d);
	}
}

static void book_reads_dispensers_that_were_up_on_a_day_of_it(void **state)
{
	static const struct {
		const char *why;
		int32_t from, to;
		size_t n;
	} row[] = {
		{ "the day before", 90, 99, 0 },
		{ "the day they went up", 90, 100, 1 },
		{ "the day they came down", 200, 210, 1 },
		{ "the day after", 201, 210, 0 },
		{ "those still up", 500, 600, 1 },
	};
	struct disruptions got = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct disruption a = { 0, d.block, d.pest, 100, 200, 100050, "hand-tied", "" };
	struct disruption b = { 0, d.block, d.pest, 400, DAY_NONE, -1, "", "n" };
	must(book_put_disruption(d.book, &a, e));
	must(book_put_disruption(d.book, &b, e));
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		must(book_disruptions(d.book, d.farm, row[i].from, row[i].to, &got, e));
		if (got.n != row[i].n)
			fail_msg("%s: %d", row[i].why, (int)got.n);
	}
	assert_int_equal(got.items[0].down, DAY_NONE);
	assert_int_equal(got.items[0].per_ha_x100, -1);
	must(book_disruptions(d.book, d.farm, 100, 100, &got, e));
	assert_int_equal(got.items[0].per_ha_x100, 100050);
	assert_int_equal(got.items[0].pest, d.pest);
	assert_string_equal(got.items[0].type, "hand-tied");
	a.down = 99;
	refused(book_put_disruption(d.book, &a, e), ERR_INPUT, "before they went up");
	a.down = 100;
	a.per_ha_x100 = 0;
	refused(book_put_disruption(d.book, &a, e), ERR_INPUT, "1 to 9999999");
	a.per_ha_x100 = 1;
	must(book_put_disruption(d.book, &a, e));
	free(got.items);
	desk_clear(&d);
}

static void book_answers_belong_to_a_trap_of_the_block_or_to_the_block(void **state)
{
	struct answers got = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct answer a = { 0, d.block, d.pest, d.trap, DAY, DAY + 1, DECISION_TREATED,
		"the south rows" };
	struct answer whole = { 0, d.block, d.pest, 0, DAY, DAY, DECISION_LOOKED, "" };
	must(book_put_answer(d.book, &a, e));
	must(book_put_answer(d.book, &whole, e));
	must(book_answers(d.book, d.farm, DAY, DAY, &got, e));
	assert_int_equal(got.n, 2);
	assert_int_equal(got.items[0].trap, 0);
	assert_int_equal(got.items[1].trap, d.trap);
	assert_int_equal(got.items[1].on, DAY + 1);
	assert_int_equal(got.items[1].decision, DECISION_TREATED);
	assert_string_equal(got.items[1].note, "the south rows");
	a.trap = 99;
	refused(book_put_answer(d.book, &a, e), ERR_INPUT, "no trap of that farm");
	a.trap = d.trap;
	a.pest = d.other_pest;
	refused(book_put_answer(d.book, &a, e), ERR_INPUT, "no trap of that farm");
	a.pest = d.pest;
	a.on = DAY - 1;
	refused(book_put_answer(d.book, &a, e), ERR_INPUT, "before the alert");
	a.on = DAY;
	must(book_put_answer(d.book, &a, e));
	free(got.items);
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_fruit_checks_add_up),
		cmocka_unit_test(book_has_a_word_for_every_part_and_decision),
		cmocka_unit_test(book_dispensers_do_not_overlap),
		cmocka_unit_test(book_reads_dispensers_that_were_up_on_a_day_of_it),
		cmocka_unit_test(
			book_answers_belong_to_a_trap_of_the_block_or_to_the_block),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
