#include "term/player.h"

#include <signal.h>
#include <stdlib.h>

static const struct term_look plain_look = { .utf8 = true, .colour = true };

struct press {
	const char *why, *bytes;
	struct input want;
};

static void expect_keys(const char *term, const struct press *p, size_t n)
{
	struct session s =
		start(&(struct setting){ term, plain_look, play_keys, false });

	hear(&s, "at start");
	for (size_t i = 0; i < n; i++) {
		type(&s, p[i].bytes);
		struct input in = hear(&s, p[i].why).in;
		if (in.kind != p[i].want.kind || in.ch != p[i].want.ch)
			fail_msg("%s, %s: kind %d, character %#x", term, p[i].why,
				(int)in.kind, (unsigned)in.ch);
	}
	kill(s.pid, SIGTERM);
	assert_int_equal(finish(&s), 0);
}

static void term_reads_the_number_pad(void **state)
{
	static const struct press row[] = {
		{ "digit", "7", { INPUT_CHAR, '7' } },
		{ "pad 0", "\033Op", { INPUT_CHAR, '0' } },
		{ "pad 1", "\033Oq", { INPUT_CHAR, '1' } },
		{ "pad 2", "\033Or", { INPUT_CHAR, '2' } },
		{ "pad 3", "\033Os", { INPUT_CHAR, '3' } },
		{ "pad 4", "\033Ot", { INPUT_CHAR, '4' } },
		{ "pad 5", "\033Ou", { INPUT_CHAR, '5' } },
		{ "pad 6", "\033Ov", { INPUT_CHAR, '6' } },
		{ "pad 7", "\033Ow", { INPUT_CHAR, '7' } },
		{ "pad 8", "\033Ox", { INPUT_CHAR, '8' } },
		{ "pad 9", "\033Oy", { INPUT_CHAR, '9' } },
		{ "pad times", "\033Oj", { INPUT_CHAR, '*' } },
		{ "pad plus", "\033Ok", { INPUT_CHAR, '+' } },
		{ "pad comma", "\033Ol", { INPUT_CHAR, ',' } },
		{ "pad minus", "\033Om", { INPUT_CHAR, '-' } },
		{ "pad point", "\033On", { INPUT_CHAR, '.' } },
		{ "pad over", "\033Oo", { INPUT_CHAR, '/' } },
		{ "pad Enter", "\033OM", { INPUT_ENTER, 0 } },
		{ "pad 5 without its lock", "\033[E", { INPUT_CHAR, '5' } },
	};
	static const char *const terms[] = { "xterm-256color", "xterm", "vt100",
		"vt220", "linux", "screen", "rxvt" };

	(void)state;
	for (size_t i = 0; i < sizeof terms / sizeof *terms; i++)
		expect_keys(terms[i], row, sizeof row / sizeof *row);
}

static void term_reads_the_other_keys(void **state)
{
	static const struct press row[] = {
		{ "Enter", "\r", { INPUT_ENTER, 0 } },
		{ "line feed", "\n", { INPUT_ENTER, 0 } },
		{ "Tab", "\t", { INPUT_TAB, 0 } },
		{ "rubout", "\177", { INPUT_BACKSPACE, 0 } },
		{ "backspace", "\b", { INPUT_BACKSPACE, 0 } },
		{ "up", "\033OA", { INPUT_UP, 0 } },
		{ "up, cursor mode", "\033[A", { INPUT_UP, 0 } },
		{ "down", "\033OB", { INPUT_DOWN, 0 } },
		{ "right", "\033OC", { INPUT_RIGHT, 0 } },
		{ "left", "\033[D", { INPUT_LEFT, 0 } },
		{ "Home", "\033[1~", { INPUT_HOME, 0 } },
		{ "Home, the other", "\033OH", { INPUT_HOME, 0 } },
		{ "End", "\033[4~", { INPUT_END, 0 } },
		{ "page up", "\033[5~", { INPUT_PAGE_UP, 0 } },
		{ "page down", "\033[6~", { INPUT_PAGE_DOWN, 0 } },
		{ "Delete", "\033[3~", { INPUT_DELETE, 0 } },
		{ "redraw", "\f", { INPUT_RESIZE, 0 } },
		{ "the first printable", " ", { INPUT_CHAR, ' ' } },
		{ "a letter beyond ASCII", "\u00e9", { INPUT_CHAR, 0xE9 } },
		{ "four bytes", "\U0001f98b", { INPUT_CHAR, 0x1F98B } },
	};

	(void)state;
	expect_keys("xterm-256color", row, sizeof row / sizeof *row);
	expect_keys("vt100", row, sizeof row / sizeof *row);
}

static void term_reads_escape_alone_and_drops_unknown_sequences(void **state)
{
	static const struct press row[] = {
		{ "Esc", "\033", { INPUT_ESC, 0 } },
		{ "a letter after it", "a", { INPUT_CHAR, 'a' } },
		{ "focus told: dropped", "\033[Ib", { INPUT_CHAR, 'b' } },
		{ "a paste begun: dropped", "\033[200~c", { INPUT_CHAR, 'c' } },
		{ "a key with modifiers: dropped", "\033[15;2~d", { INPUT_CHAR, 'd' } },
		{ "a control byte: dropped", "\001e", { INPUT_CHAR, 'e' } },
		{ "torn UTF-8: dropped", "\303f", { INPUT_CHAR, 'f' } },
	};

	(void)state;
	expect_keys("xterm-256color", row, sizeof row / sizeof *row);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(term_reads_the_number_pad),
		cmocka_unit_test(term_reads_the_other_keys),
		cmocka_unit_test(term_reads_escape_alone_and_drops_unknown_sequences),
	};

	unsetenv("ESCDELAY");
	return cmocka_run_group_tests(tests, NULL, NULL);
}
