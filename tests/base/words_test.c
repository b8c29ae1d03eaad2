#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/shipped.h"
#include "base/words.h"

#include <string.h>

/* No catalogue is bound here; tests/e2e/spanish.sh has what one changes. */

static void words_stand_as_they_are_without_a_catalogue(void **state)
{
	static const char *const month = NC_("month", "May");

	(void)state;
	assert_string_equal(_("the trap is gone"), "the trap is gone");
	assert_string_equal(_(""), "");
	assert_string_equal(C_("key", "open"), "open");
	assert_string_equal(words_in(month), "May");
	assert_string_equal(words_in("no context"), "no context");
	assert_string_equal(words_in(""), "");
}

static void words_of_tables_stand_as_they_are_without_a_catalogue(void **state)
{
	(void)state;
	assert_string_equal(words_shipped("codling moth"), "codling moth");
	assert_string_equal(words_shipped("my own words"), "my own words");
	assert_string_equal(words_as_shipped("Apple"), "Apple");
	assert_string_equal(words_shipped(""), "");
}

static void words_of_tables_are_those_of_the_files(void **state)
{
	static const struct {
		const char *why, *word;
		bool is_there;
	} row[] = {
		{ "a pest's name", "codling moth", true },
		{ "a crop of thresholds", "cranberry", true },
		{ "a lure", "AM apple volatile", true },
		{ "a field with commas, quoted", "common practice, no source", true },
		{ "quotes within a field",
			"\"About 5\" is what the source says: a soft number. August, "
			"blocks without disruption. The report does not say over how "
			"long; taken as one week. Any one trap or the mean: not said; "
			"taken as any one trap.",
			true },
		{ "a pest's code is the same everywhere", "CM", false },
		{ "a published title stays in its language",
			"CM2: NIAB (UK), monitoring codling moth, "
			"niab.com/monitoring-codling-moth",
			false },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		bool found = false;
		for (size_t k = 0; shipped_words[k]; k++)
			if (strcmp(strchr(shipped_words[k], '\004') + 1, row[i].word) ==
				0)
				found = true;
		if (found != row[i].is_there)
			fail_msg("%s: %s", row[i].why, row[i].word);
	}
}

static void words_print_like_printf_with_a_point(void **state)
{
	char text[8];
	struct buf b = { 0 };

	(void)state;
	words_set_numbers();
	assert_false(words_comma());
	assert_int_equal(words_print(text, sizeof text, "%.1f", 2.5), 3);
	assert_string_equal(text, "2.5");
	assert_int_equal(words_print(text, sizeof text, "%s", "as long as it is"), 16);
	assert_string_equal(text, "as long");
	words_addf(&b, "%.2f of %d", 0.25, 4);
	words_addf(&b, ", %s", "no more");
	assert_string_equal(b.text, "0.25 of 4, no more");
	buf_free(&b);
}

static void words_leave_marks_alone_where_a_point_is_usual(void **state)
{
	char comma[] = "2,5", point[] = "2.5";

	(void)state;
	words_to_point(comma);
	assert_string_equal(comma, "2,5");
	words_from_point(point);
	assert_string_equal(point, "2.5");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(words_stand_as_they_are_without_a_catalogue),
		cmocka_unit_test(words_of_tables_stand_as_they_are_without_a_catalogue),
		cmocka_unit_test(words_of_tables_are_those_of_the_files),
		cmocka_unit_test(words_print_like_printf_with_a_point),
		cmocka_unit_test(words_leave_marks_alone_where_a_point_is_usual),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
