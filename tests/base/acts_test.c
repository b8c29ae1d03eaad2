#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/acts.h"
#include "base/day.h"

#include <string.h>

static void words_come_back_as_what_they_name(void **state)
{
	enum fruit_part p;
	enum tree_part t;
	enum decision d;

	(void)state;
	for (int i = 0; i < PART_COUNT; i++)
		assert_true(fruit_part_read(fruit_part_word((enum fruit_part)i), &p) &&
			    (int)p == i);
	for (int i = 0; i < TREE_COUNT; i++)
		assert_true(tree_part_read(tree_part_word((enum tree_part)i), &t) &&
			    (int)t == i);
	for (int i = 0; i < DECISION_COUNT; i++)
		assert_true(decision_read(decision_word((enum decision)i), &d) &&
			    (int)d == i);
}

static void words_are_those_of_the_files(void **state)
{
	(void)state;
	assert_string_equal(fruit_part_word(PART_FRUIT), "fruit");
	assert_string_equal(fruit_part_word(PART_SHOOTS), "shoots");
	assert_string_equal(tree_part_word(TREE_ANY), "");
	assert_string_equal(tree_part_word(TREE_TOP), "top");
	assert_string_equal(tree_part_word(TREE_GROUND), "ground");
	assert_string_equal(decision_word(DECISION_LOOKED), "looked");
	assert_string_equal(decision_word(DECISION_TREATED), "treated");
	assert_string_equal(decision_word(DECISION_LEFT), "left");
}

static void another_word_is_refused_and_changes_nothing(void **state)
{
	enum fruit_part p = PART_SHOOTS;
	enum tree_part t = TREE_LOW;
	enum decision d = DECISION_LEFT;

	(void)state;
	assert_false(fruit_part_read("", &p));
	assert_false(fruit_part_read("Fruit", &p));
	assert_false(tree_part_read("top ", &t));
	assert_false(decision_read("sprayed", &d));
	assert_false(decision_read("", &d));
	assert_int_equal(p, PART_SHOOTS);
	assert_int_equal(t, TREE_LOW);
	assert_int_equal(d, DECISION_LEFT);
}

static void in_a_blank_nothing_is_entered(void **state)
{
	const struct treatment *t = &treatment_blank;

	(void)state;
	assert_int_equal(t->rei_hours, -1);
	assert_int_equal(t->phi_days, -1);
	assert_int_equal(t->area_x100, -1);
	assert_int_equal(t->day, DAY_NONE);
	assert_true(t->from.minute == INSTANT_NONE && t->until.minute == INSTANT_NONE);
	assert_string_equal(t->product, "");
	assert_int_equal(pick_blank.day, DAY_NONE);
	assert_false(pick_blank.is_done);
	assert_int_equal(fruit_check_blank.day, DAY_NONE);
	assert_int_equal(fruit_check_blank.looked_at, -1);
	assert_int_equal(fruit_check_blank.stung, -1);
	assert_int_equal(fruit_check_blank.entered, -1);
	assert_int_equal(disruption_blank.up, DAY_NONE);
	assert_int_equal(disruption_blank.down, DAY_NONE);
	assert_int_equal(disruption_blank.per_ha_x100, -1);
	assert_int_equal(answer_blank.day, DAY_NONE);
	assert_int_equal(answer_blank.on, DAY_NONE);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(words_come_back_as_what_they_name),
		cmocka_unit_test(words_are_those_of_the_files),
		cmocka_unit_test(another_word_is_refused_and_changes_nothing),
		cmocka_unit_test(in_a_blank_nothing_is_entered),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
