#include "term/player.h"

#include <signal.h>
#include <stdlib.h>
#include <unistd.h>

static const struct term_look plain_look = { .utf8 = true, .colour = true };

static tcflag_t flow(int tty)
{
	struct termios now;

	assert_int_equal(tcgetattr(tty, &now), 0);
	return now.c_iflag & (IXON | IXOFF);
}

static void play_opened_twice(int told)
{
	struct err e = { 0 };

	term_close();
	if (term_open(plain_look, &e))
		play_keys(told);
}

static void term_does_not_freeze_on_ctrl_s(void **state)
{
	void (*const row[])(int) = { play_keys, play_opened_twice };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct session s =
			start(&(struct setting){ "xterm", plain_look, row[i], true });

		assert_true(s.before.c_iflag & IXON); /* or this shows nothing */
		hear(&s, "at start");
		assert_int_equal(flow(s.tty), 0);
		type(&s, "\023x");
		while (hear(&s, "a key after Ctrl-S").in.ch != 'x')
			;
		kill(s.pid, SIGTERM);
		while (hear(&s, "leaving").in.kind != INPUT_LEAVE)
			;
		int keep = dup(s.tty);
		assert_int_equal(finish(&s), 0);
		assert_int_equal(flow(keep), s.before.c_iflag & (IXON | IXOFF));
		close(keep);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(term_does_not_freeze_on_ctrl_s),
	};

	unsetenv("ESCDELAY");
	return cmocka_run_group_tests(tests, NULL, NULL);
}
