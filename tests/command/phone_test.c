/* Every page can be worked from a phone: its keyboard has characters, Enter, Backspace
 * and, in a row above it, Esc, Tab and the arrows; nothing else is counted on. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/words.h"

#include "../src/command/page_table.h"

static bool is_plain(struct input in)
{
	switch (in.kind) {
	case INPUT_CHAR:
		return in.ch == 0 || (in.ch >= ' ' && in.ch <= '~');
	case INPUT_ENTER:
	case INPUT_ESC:
	case INPUT_TAB:
	case INPUT_BACKSPACE:
	case INPUT_UP:
	case INPUT_DOWN:
	case INPUT_LEFT:
	case INPUT_RIGHT:
		return true;
	default:
		return false;
	}
}

/* Goes in one step where the arrows go in several. */
static bool is_extra(struct input in)
{
	return in.kind == INPUT_PAGE_UP || in.kind == INPUT_PAGE_DOWN ||
	       in.kind == INPUT_HOME || in.kind == INPUT_END;
}

static bool has_plain_key(struct key_rows keys, int action)
{
	for (size_t i = 0; i < keys.n; i++)
		if (keys.rows[i].action == action &&
			(is_plain(keys.rows[i].in) || is_plain(keys.rows[i].alias)))
			return true;
	return false;
}

static bool has_key(struct key_rows keys, enum input_kind kind)
{
	for (size_t i = 0; i < keys.n; i++)
		if (keys.rows[i].in.kind == kind || keys.rows[i].alias.kind == kind)
			return true;
	return false;
}

static void every_deed_of_every_page_has_a_plain_key(void **state)
{
	(void)state;
	for (size_t p = 0; p < PAGE_COUNT; p++) {
		struct key_rows keys = session_pages[p].keys();
		for (size_t i = 0; i < keys.n; i++) {
			const struct key_row *k = &keys.rows[i];
			if (is_extra(k->in) ? !has_key(keys, INPUT_DOWN)
					    : !has_plain_key(keys, k->action))
				fail_msg("%s: \"%s\" has no plain key",
					session_pages[p].name, k->key);
		}
	}
}

static void every_page_is_left_by_esc(void **state)
{
	(void)state;
	for (size_t p = 0; p < PAGE_COUNT; p++) {
		struct key_rows keys = session_pages[p].keys();
		if (!has_key(keys, INPUT_ESC))
			fail_msg("%s: no Esc", session_pages[p].name);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_deed_of_every_page_has_a_plain_key),
		cmocka_unit_test(every_page_is_left_by_esc),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
