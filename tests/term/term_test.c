#include "term/player.h"

#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <unistd.h>

static const struct term_look plain_look = { .utf8 = true, .colour = true };

/* A key shows the next frame. */
static void play_frames(int told)
{
	struct canvas c = { 0 };
	struct input in = { INPUT_RESIZE, 0 };

	canvas_size(&c, ROWS, COLS);
	for (; in.kind != INPUT_LEAVE; in = term_read(-1)) {
		if (in.kind == INPUT_NONE)
			continue;
		if (in.ch == 'i')
			for (int ink = 0; ink < INK_COUNT; ink++)
				canvas_textf(
					&c, 1, ink * 3, 2, (enum ink)ink, "i%d", ink);
		if (in.ch == 'o')
			canvas_text(&c, 0, 0, 0, INK_OVER, "OVER");
		if (in.ch == 'u')
			canvas_text(&c, 0, 0, 0, INK_UNSURE, "?");
		if (in.ch == 'b')
			canvas_text(
				&c, 2, 2, 0, INK_PLAIN, "\u2581\u2588\u00b7e\u0301|");
		if (in.ch == 'w')
			canvas_text(&c, 3, 0, 0, INK_PLAIN, "\u6843\u6843");
		if (in.ch == 'c')
			canvas_cursor(&c, 4, 7);
		term_show(&c);
		tell(told, in);
	}
	canvas_free(&c);
}

static size_t frame(struct session *s, const char *key, char out[OUT_MAX])
{
	seen(s, out);
	type(s, key);
	hear(s, key);
	return seen(s, out);
}

static void term_sends_only_what_changed(void **state)
{
	struct session s = start(
		&(struct setting){ "xterm-256color", plain_look, play_frames, false });
	char out[OUT_MAX];

	(void)state;
	hear(&s, "at start");
	assert_true(frame(&s, "i", out) > 20);
	assert_int_equal(frame(&s, "x", out), 0);
	size_t n = frame(&s, "u", out);
	if (n == 0 || n > 40)
		fail_msg("one cell took %zu bytes", n);
	n = frame(&s, "c", out);
	assert_non_null(strstr(out, "\033[5;8H"));
	if (n > 40)
		fail_msg("a cursor took %zu bytes", n);
	kill(s.pid, SIGTERM);
	assert_int_equal(finish(&s), 0);
}

static void term_inks_say_the_same_without_colour(void **state)
{
	static const struct {
		const char *why, *term;
		struct term_look look;
		const char *key, *has, *has_not;
	} row[] = {
		{ "over is reverse", "xterm", { true, true }, "o", "7m", NULL },
		{ "over is red", "xterm", { true, true }, "o", "\033[31m", NULL },
		{ "no colour, still reverse", "xterm", { true, false }, "o", "7m",
			"\033[3" },
		{ "unsure is underlined", "xterm", { true, true }, "u", "4m", NULL },
		{ "unsure is yellow", "xterm", { true, true }, "u", "\033[33m", NULL },
		{ "no colour, still underlined", "xterm", { true, false }, "u", "4m",
			"\033[3" },
		{ "underline beats colour where both do not go", "linux",
			{ true, true }, "u", "4m", "\033[33m" },
		{ "one colour: reverse", "vt100", { true, true }, "o", "7m", "\033[3" },
		{ "blocks", "xterm", { true, true }, "b", "\u2581\u2588\u00b7e\u0301|",
			NULL },
		{ "ASCII only", "xterm", { false, true }, "b", "18.e", "\302" },
		{ "an old terminal gets ASCII", "vt100", { true, true }, "b", "18.e",
			"\342" },
		{ "double width", "xterm", { true, true }, "w", "\u6843\u6843", NULL },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct session s = start(&(struct setting){
			row[i].term, row[i].look, play_frames, false });
		char out[OUT_MAX];

		hear(&s, "at start");
		frame(&s, row[i].key, out);
		if (!strstr(out, row[i].has))
			fail_msg("%s: %s", row[i].why, out);
		if (row[i].has_not && strstr(out, row[i].has_not))
			fail_msg("%s, but: %s", row[i].why, out);
		kill(s.pid, SIGTERM);
		assert_int_equal(finish(&s), 0);
	}
}

static void term_leaves_on_a_signal_and_gives_the_terminal_back(void **state)
{
	static const int row[] = { SIGTERM, SIGHUP, SIGINT, SIGQUIT };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct session s = start(
			&(struct setting){ "xterm", plain_look, play_keys, true });
		struct termios after;
		char out[OUT_MAX];

		hear(&s, "at start");
		kill(s.pid, row[i]);
		assert_int_equal(hear(&s, "leaving").in.kind, INPUT_LEAVE);
		int keep = dup(s.tty);
		assert_int_equal(finish(&s), 0);
		s.tty = keep;
		seen(&s, out);
		if (!strstr(out, "\033[?1049l"))
			fail_msg("signal %d: the screen was not given back", row[i]);
		assert_int_equal(tcgetattr(keep, &after), 0);
		assert_int_equal(after.c_lflag & (ICANON | ECHO | ISIG),
			s.before.c_lflag & (ICANON | ECHO | ISIG));
		assert_int_equal(after.c_iflag, s.before.c_iflag);
		close(keep);
	}
}

static void play_keys_deaf_to_hangup(int told)
{
	signal(SIGHUP, SIG_IGN);
	play_keys(told);
}

static void term_leaves_when_the_terminal_is_gone(void **state)
{
	void (*const row[])(int) = { play_keys, play_keys_deaf_to_hangup };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct session s =
			start(&(struct setting){ "xterm", plain_look, row[i], false });

		hear(&s, "at start");
		close(s.tty);
		s.tty = -1;
		while (hear(&s, "leaving").in.kind != INPUT_LEAVE)
			; /* the hang-up also wakes it: it draws once more */
		assert_int_equal(finish(&s), 0);
	}
}

static void term_follows_the_size(void **state)
{
	static const struct winsize row[] = { { .ws_row = 24, .ws_col = 80 },
		{ .ws_row = 1, .ws_col = 1 }, { .ws_row = 40, .ws_col = 120 } };

	(void)state;
	setenv("COLUMNS", "77", 1);
	setenv("LINES", "33", 1);
	struct session s =
		start(&(struct setting){ "xterm", plain_look, play_keys, false });
	unsetenv("COLUMNS");
	unsetenv("LINES");
	struct told t = hear(&s, "at start");
	assert_int_equal(t.rows, ROWS);
	assert_int_equal(t.cols, COLS);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		assert_int_equal(ioctl(s.tty, TIOCSWINSZ, &row[i]), 0);
		t = hear(&s, "a new size");
		assert_int_equal(t.in.kind, INPUT_RESIZE);
		assert_int_equal(t.rows, row[i].ws_row);
		assert_int_equal(t.cols, row[i].ws_col);
	}
	kill(s.pid, SIGTERM);
	assert_int_equal(finish(&s), 0);
}

static void term_refuses_a_terminal_it_cannot_use(void **state)
{
	static const struct {
		const char *why, *term, *says;
	} row[] = {
		{ "not known", "no-such-terminal", "\"no-such-terminal\" in TERM" },
		{ "a kind of no terminal", "unknown", "\"unknown\" in TERM" },
		{ "no cursor to place", "dumb", "\"dumb\" in TERM cannot place" },
		{ "empty", "", "TERM is not set" },
		{ "unset", NULL, "TERM is not set" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct session s = start(
			&(struct setting){ row[i].term, plain_look, play_keys, false });
		char text[512] = "";

		assert_true(readable(s.told, PATIENCE_MS));
		assert_true(read(s.told, text, sizeof text - 1) > 0);
		if (!strstr(text, row[i].says))
			fail_msg("%s: %s", row[i].why, text);
		assert_int_equal(finish(&s), err_status(ERR_USAGE));
	}
}

static void term_refuses_what_is_no_terminal(void **state)
{
	struct err e = { 0 };
	int ends[2];

	(void)state;
	assert_int_equal(pipe(ends), 0);
	int keep = dup(STDIN_FILENO);
	dup2(ends[0], STDIN_FILENO);
	bool opened = term_open(plain_look, &e);
	dup2(keep, STDIN_FILENO);
	close(keep);
	close(ends[0]);
	close(ends[1]);
	assert_false(opened);
	assert_int_equal(e.kind, ERR_USAGE);
	assert_non_null(strstr(e.text, "need a terminal"));
	term_close();
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(term_sends_only_what_changed),
		cmocka_unit_test(term_inks_say_the_same_without_colour),
		cmocka_unit_test(term_leaves_on_a_signal_and_gives_the_terminal_back),
		cmocka_unit_test(term_leaves_when_the_terminal_is_gone),
		cmocka_unit_test(term_follows_the_size),
		cmocka_unit_test(term_refuses_a_terminal_it_cannot_use),
		cmocka_unit_test(term_refuses_what_is_no_terminal),
	};

	unsetenv("ESCDELAY");
	return cmocka_run_group_tests(tests, NULL, NULL);
}
