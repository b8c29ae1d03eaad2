#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/err.h"
#include "base/text.h"

#include <string.h>

static void err_set_fills_kind_and_text_and_returns_false(void **state)
{
	struct err e = { 0 };

	(void)state;
	assert_false(err_set(&e, ERR_INPUT, "%d is too many: up to %d", 10000, 9999));
	assert_int_equal(e.kind, ERR_INPUT);
	assert_string_equal(e.text, "10000 is too many: up to 9999");
}

static void err_set_takes_no_err_at_all(void **state)
{
	(void)state;
	assert_false(err_set(NULL, ERR_BOOK, "%s", "unheard"));
}

static void err_set_may_wrap_its_own_text(void **state)
{
	struct err e = { 0 };

	(void)state;
	err_set(&e, ERR_INPUT, "no such day");
	err_set(&e, ERR_INPUT, "line 3: %s", e.text);
	assert_string_equal(e.text, "line 3: no such day");
}

static void err_set_cuts_a_long_path_and_not_its_cause(void **state)
{
	char path[4000] = "/srv/", want[32];
	struct err e = { 0 };

	(void)state;
	while (strlen(path) + 5 < sizeof path)
		strcat(path, "\xC3\xBC/ab");
	err_set(&e, ERR_BOOK, "%s cannot be read: No such file", path);
	assert_string_equal(
		e.text + strlen(e.text) - strlen("cannot be read: No such file"),
		"cannot be read: No such file");
	assert_memory_equal(e.text, "/srv/", 5);
	assert_non_null(strstr(e.text, "..."));
	assert_true(text_valid(e.text, strlen(e.text), NULL));
	assert_true(strlen(e.text) > sizeof e.text - 8);
	strcpy(want, "/short/one and a word");
	text_shorten_paths(want, sizeof want);
	assert_string_equal(want, "/short/one and a word");
}

static void err_set_shows_what_is_no_text_as_question_marks(void **state)
{
	static const struct {
		const char *why, *value, *want;
	} row[] = {
		{ "plain text stays",
			"Gr\xC3\xBC"
			"ne",
			"Gr\xC3\xBC"
			"ne" },
		{ "an escape sequence", "\x1B[31mred", "?[31mred" },
		{ "a line break", "a\r\nb", "a??b" },
		{ "DEL", "a\x7F", "a?" },
		{ "a C1 control is one character",
			"a\xC2\x9B"
			"b",
			"a?b" },
		{ "a torn character", "a\xC3", "a?" },
		{ "a Latin-1 letter",
			"Gr\xFC"
			"ne",
			"Gr?ne" },
		{ "a real U+FFFD stays", "\xEF\xBF\xBD", "\xEF\xBF\xBD" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct err e = { 0 };
		err_set(&e, ERR_INPUT, "%s", row[i].value);
		if (strcmp(e.text, row[i].want) != 0)
			fail_msg("%s: \"%s\"", row[i].why, e.text);
	}
}

static void err_set_cuts_between_two_characters(void **state)
{
	enum { SIZE = sizeof(((struct err *)0)->text) };
	char text[2000];

	(void)state;
	/* A letter of two bytes at every place around the end of the room. */
	for (size_t n = SIZE - 4; n <= SIZE + 1; n++) {
		struct err e = { 0 };
		memset(text, 'a', n);
		strcpy(text + n, "\xC3\xBC"
				 "b");
		err_set(&e, ERR_INPUT, "%s", text);
		size_t want = n + 3 < SIZE   ? n + 3
			      : n + 2 < SIZE ? n + 2
			      : n < SIZE     ? n
					     : SIZE - 1;
		if (strlen(e.text) != want)
			fail_msg("%zu letters: %zu bytes stay", n, strlen(e.text));
		assert_true(text_valid(e.text, want, NULL));
	}
	memset(text, 'a', sizeof text - 1);
	text[sizeof text - 1] = '\0';
	struct err e = { 0 };
	err_set(&e, ERR_INPUT, "%s", text);
	assert_int_equal(strlen(e.text), SIZE - 1);
}

static void err_status_is_the_exit_status_of_each_kind(void **state)
{
	(void)state;
	assert_int_equal(err_status(ERR_NONE), 0);
	assert_int_equal(err_status(ERR_USAGE), 2);
	assert_int_equal(err_status(ERR_INPUT), 3);
	assert_int_equal(err_status(ERR_NOT_FOUND), 4);
	assert_int_equal(err_status(ERR_BOOK), 5);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(err_set_fills_kind_and_text_and_returns_false),
		cmocka_unit_test(err_set_takes_no_err_at_all),
		cmocka_unit_test(err_set_may_wrap_its_own_text),
		cmocka_unit_test(err_set_cuts_a_long_path_and_not_its_cause),
		cmocka_unit_test(err_set_shows_what_is_no_text_as_question_marks),
		cmocka_unit_test(err_set_cuts_between_two_characters),
		cmocka_unit_test(err_status_is_the_exit_status_of_each_kind),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
