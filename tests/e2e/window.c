#include "window.h"

#include <poll.h>
#include <pty.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

enum { ALL_BYTES = 65536 };

double window_clock(void)
{
	struct timespec t;

	clock_gettime(CLOCK_MONOTONIC, &t);
	return (double)t.tv_sec + (double)t.tv_nsec / 1e9;
}

bool window_open(struct window *w, char *const argv[], int rows, int cols)
{
	struct winsize size = { .ws_row = (unsigned short)rows,
		.ws_col = (unsigned short)cols };

	w->bytes = 0;
	glass_open(&w->glass, rows, cols);
	w->pid = forkpty(&w->tty, NULL, NULL, &size);
	if (w->pid == 0) {
		setenv("TERM", "xterm", 1);
		execv(argv[0], argv);
		perror(argv[0]);
		_exit(127);
	}
	return w->pid > 0;
}

void window_resize(struct window *w, int rows, int cols)
{
	struct winsize size = { .ws_row = (unsigned short)rows,
		.ws_col = (unsigned short)cols };

	if (rows == w->glass.rows && cols == w->glass.cols)
		return;
	while (window_read(w, 0))
		;
	glass_open(&w->glass, rows, cols);
	ioctl(w->tty, TIOCSWINSZ, &size);
}

void window_type(struct window *w, const char *keys)
{
	size_t n = strlen(keys);

	if (write(w->tty, keys, n) != (ssize_t)n) {
		perror("typing");
		exit(3);
	}
}

bool window_read(struct window *w, int wait_ms)
{
	struct pollfd p = { .fd = w->tty, .events = POLLIN };
	static char bytes[ALL_BYTES];
	ssize_t n = 0;

	if (poll(&p, 1, wait_ms) <= 0)
		return false;
	n = read(w->tty, bytes, sizeof bytes);
	if (n <= 0)
		return false;
	w->last = window_clock();
	w->bytes += n;
	glass_take(&w->glass, bytes, (size_t)n);
	return true;
}

void window_settle(struct window *w, int quiet_ms)
{
	while (window_read(w, quiet_ms))
		;
}

bool window_wait(struct window *w, const char *text, double seconds)
{
	double end = window_clock() + seconds;

	while (glass_find(&w->glass, text) < 0) {
		int left_ms = (int)((end - window_clock()) * 1e3);

		if (left_ms <= 0 || !window_read(w, left_ms))
			return false;
	}
	return true;
}

void window_print(const struct window *w)
{
	char line[GLASS_TEXT];

	for (int row = 0; row < w->glass.rows; row++) {
		glass_row(&w->glass, row, line);
		fprintf(stderr, "  |%s\n", line);
	}
}

int window_close(struct window *w)
{
	int status = 0;

	while (window_read(w, -1))
		;
	close(w->tty);
	waitpid(w->pid, &status, 0);
	return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}
