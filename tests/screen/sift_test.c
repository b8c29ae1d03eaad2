#include "base/words.h"
#include "screen/list.h"
#include "screen/sift.h"

#include "samples.h"

/* The list of these tests. */
static const char *const names[] = { "Old Kiln", "Ridge", "Ridge End", "Hollow",
	"Kiln End" };
enum { NAMES = sizeof names / sizeof *names };

static bool has(const void *page, size_t i, const char *text)
{
	(void)page;
	return narrow_contains(names[i], text);
}

static void type(struct sift *s, const char *keys, size_t *picked)
{
	struct message m;

	for (; *keys; keys++) {
		if (*keys == '/')
			narrow_start(&s->narrow);
		else
			sift_key(s, sample_key(*keys), &m);
		sift_find(s, NAMES, has, NULL, picked);
	}
}

static void sift_keeps_what_contains_the_text_and_a_picked_row(void **state)
{
	static const struct {
		const char *why, *keys;
		size_t picked, n, want;
	} row[] = {
		{ "all", "", 3, 5, 3 },
		{ "the picked one stays", "/ridge", 2, 2, 2 },
		{ "the next one below a row that is out", "/end", 1, 2, 2 },
		{ "the last one above it", "/ridge", 4, 2, 2 },
		{ "none", "/zz", 3, 0, SIZE_MAX },
		{ "the same one again when all come back", "/zz\x1b", 3, 5, 3 },
		{ "where the hand was", "/ridge\x1b", 4, 5, 2 },
		{ "Esc without a text ends it too", "/\x1b", 3, 5, 3 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct sift s = { 0 };
		size_t picked = row[i].picked;

		sift_find(&s, NAMES, has, NULL, &picked);
		type(&s, row[i].keys, &picked);
		if (s.n != row[i].n || picked != row[i].want)
			fail_msg("%s: %zu rows, %zu picked", row[i].why, s.n, picked);
		sift_free(&s);
	}
}

static void sift_moves_among_what_is_shown(void **state)
{
	static const struct {
		const char *why;
		int action;
		size_t from, want;
	} row[] = {
		{ "down over hidden rows", LIST_DOWN, 0, 4 },
		{ "down at the end stays", LIST_DOWN, 4, 4 },
		{ "up over hidden rows", LIST_UP, 4, 0 },
		{ "up at the start stays", LIST_UP, 0, 0 },
		{ "to the last", LIST_END, 0, 4 },
		{ "to the first", LIST_HOME, 4, 0 },
	};
	struct sift s = { 0 };
	size_t at = 0;

	(void)state;
	type(&s, "/kiln", &at);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		size_t picked = row[i].from;

		assert_true(sift_move(&s, row[i].action, 10, &picked));
		if (picked != row[i].want)
			fail_msg("%s: %zu", row[i].why, picked);
	}
	assert_false(sift_move(&s, LIST_OTHERS, 10, &at));
	assert_true(sift_shows(&s, 4));
	assert_false(sift_shows(&s, 3));
	assert_int_equal(sift_place(&s, 3), 1);
	assert_int_equal(sift_place(&s, SIZE_MAX), 2);
	sift_free(&s);
}

static void sift_of_an_empty_list_picks_the_first_place(void **state)
{
	struct sift s = { 0 };
	size_t picked = 4;

	(void)state;
	sift_find(&s, 0, has, NULL, &picked);
	assert_int_equal(picked, 0);
	assert_true(sift_move(&s, LIST_DOWN, 10, &picked));
	assert_int_equal(picked, 0);
	sift_free(&s);
}

static void sift_looks_again_when_other_rows_came(void **state)
{
	struct sift s = { 0 };
	size_t picked = 3;

	(void)state;
	sift_find(&s, NAMES, has, NULL, &picked);
	sift_find(&s, 2, has, NULL, &picked);
	assert_int_equal(s.n, 2);
	assert_int_equal(picked, 1);
	text_copy(s.narrow.text, sizeof s.narrow.text, "ridge");
	sift_find(&s, 2, has, NULL, &picked);
	assert_int_equal(s.n, 2); /* nobody said so */
	sift_forget(&s);
	sift_find(&s, 2, has, NULL, &picked);
	assert_int_equal(s.n, 1);
	sift_free(&s);
}

static void sift_says_how_many_in_title_and_message(void **state)
{
	struct sift s = { 0 };
	struct message m = { 0 };
	char title[32] = "Kinds";
	size_t picked = 0;

	(void)state;
	sift_find(&s, NAMES, has, NULL, &picked);
	sift_title(&s, title, sizeof title);
	assert_string_equal(title, "Kinds");
	assert_int_equal(sift_say(&s, &m), -1);
	assert_string_equal(m.text, "");
	type(&s, "/kiln", &picked);
	sift_title(&s, title, sizeof title);
	assert_string_equal(title, "Kinds \u00b7 2 of 5");
	assert_int_equal(sift_say(&s, &m), 15);
	assert_string_equal(m.text, "look for: kiln  (2 of 5)");
	s.narrow.typing = false;
	assert_int_equal(sift_say(&s, &m), -1);
	assert_string_equal(m.text, "only with \"kiln\": 2 of 5, Esc shows all");
	sift_free(&s);
}

static void sift_keys_are_those_that_do_something(void **state)
{
	static const struct key_row page[] = {
		{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, 1, "Enter", "diary", "" },
		{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, 2, "Esc", "back", "" },
		{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, 3, "?", "keys", "" },
	};
	static const struct {
		const char *why, *keys;
		bool ended; /* the typing, not what is looked for */
		const char *shown;
	} row[] = {
		{ "all", "", false, "Enter diary, Esc back, ? keys, " },
		{ "typing", "/kiln", false,
			"Enter open, Up Down pick, Esc show all, " },
		{ "nothing is found", "/zz", false, "Esc show all, " },
		{ "typed", "/kiln", true, "Enter diary, Esc show all, ? keys, " },
		{ "all again", "/kiln\x1b", false, "Enter diary, Esc back, ? keys, " },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct sift s = { 0 };
		struct buf text = { 0 };
		size_t picked = 0;

		sift_find(&s, NAMES, has, NULL, &picked);
		type(&s, row[i].keys, &picked);
		s.narrow.typing = s.narrow.typing && !row[i].ended;
		struct key_rows keys = sift_keys(&s, (struct key_rows){ page, 3 });
		for (size_t k = 0; k < keys.n; k++)
			buf_addf(&text, "%s %s, ", keys.rows[k].key,
				words_in(keys.rows[k].word));
		if (strcmp(text.text, row[i].shown) != 0)
			fail_msg("%s: %s", row[i].why, text.text);
		buf_free(&text);
		sift_free(&s);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(sift_keeps_what_contains_the_text_and_a_picked_row),
		cmocka_unit_test(sift_moves_among_what_is_shown),
		cmocka_unit_test(sift_of_an_empty_list_picks_the_first_place),
		cmocka_unit_test(sift_looks_again_when_other_rows_came),
		cmocka_unit_test(sift_says_how_many_in_title_and_message),
		cmocka_unit_test(sift_keys_are_those_that_do_something),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
