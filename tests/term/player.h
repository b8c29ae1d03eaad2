/* player.h - plays the terminal on one end of a pty. The program side runs in a child
 * at the other end and tells over a pipe what it got. */
#ifndef TESTS_TERM_PLAYER_H
#define TESTS_TERM_PLAYER_H

#include "term/term.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <sys/types.h>
#include <termios.h>

#include <cmocka.h>

enum { ROWS = 6, COLS = 40, PATIENCE_MS = 10000, OUT_MAX = 16384 };

struct setting {
	const char *term; /* NULL = unset */
	struct term_look look;
	void (*play)(int told); /* runs in the child between open and close */
	bool hangs_up_after;    /* SIGHUP once it has closed */
};

struct session {
	pid_t pid;
	int tty, told;
	struct termios before;
};

struct told {
	struct input in;
	int rows, cols;
};

struct session start(const struct setting *s);
/* In the child: tells an input with the size at that moment. */
void tell(int told, struct input in);
/* A play that tells every key until it has to leave. */
void play_keys(int told);

bool readable(int fd, int wait_ms);
/* Waits for the next thing told; fails the test if nothing comes. */
struct told hear(struct session *s, const char *why);
void type(struct session *s, const char *bytes);
/* What has reached the screen by now and was not read before. */
size_t seen(struct session *s, char out[OUT_MAX]);
/* Waits for the end of the program and returns its exit status. */
int finish(struct session *s);

#endif
