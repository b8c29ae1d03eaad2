/* window.h - a program in a terminal of its own, TERM=xterm: keys are typed to it and
 * its screen is read. */
#ifndef TESTS_E2E_WINDOW_H
#define TESTS_E2E_WINDOW_H

#include "glass.h"

#include <sys/types.h>

struct window {
	int tty;
	pid_t pid;
	struct glass glass;
	long bytes;  /* that the program sent so far */
	double last; /* when the latest of them came, in seconds */
};

/* Seconds of a clock that only goes on. */
double window_clock(void);

/* Starts it; false: no terminal could be had. */
bool window_open(struct window *w, char *const argv[], int rows, int cols);
/* Another size, and a blank glass until the program has drawn anew; the same size does
 * nothing. */
void window_resize(struct window *w, int rows, int cols);
void window_type(struct window *w, const char *keys);
/* Reads what comes within so many milliseconds; false: nothing came. */
bool window_read(struct window *w, int wait_ms);
/* Reads until the program has sent nothing for so long. */
void window_settle(struct window *w, int quiet_ms);
/* Reads until the text stands in a row; false: not within so many seconds. */
bool window_wait(struct window *w, const char *text, double seconds);
/* Writes the whole screen to stderr. */
void window_print(const struct window *w);
/* Waits until the program has ended; its exit status. */
int window_close(struct window *w);

#endif
