/* counts.c - what the program sends to a terminal of 80 x 24 while counts are typed on
 * the run of the first farm: counts PROGRAM BOOK TODAY N prints a line a count, two
 * digits and Enter: bytes sent, cells that look otherwise. */
#include "../e2e/window.h"

#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum {
	ROWS = 24,
	COLS = 80,
	FIRST_MS = 2000, /* a key that changes something has done so */
	QUIET_MS = 40,   /* nothing comes for so long: the frame has ended */
	PATIENCE_S = 60,
};

static struct window window;

static void await(const char *text)
{
	if (!window_wait(&window, text, PATIENCE_S)) {
		fprintf(stderr, "counts: \"%s\" did not appear\n", text);
		window_print(&window);
		exit(1);
	}
	window_settle(&window, QUIET_MS);
}

/* The cells that the key changed; `shows` appears, unless it is NULL. */
static long press(const char *key, const char *shows)
{
	static struct glass before;

	before = window.glass;
	window_type(&window, key);
	window_read(&window, FIRST_MS);
	window_settle(&window, QUIET_MS);
	if (shows)
		await(shows);
	return glass_changed(&before, &window.glass);
}

/* The n-th count of the run. */
static void count(int n)
{
	char digit[] = { (char)('0' + n % 7), '\0' }, done[32];
	long bytes = window.bytes, cells = press("1", NULL) + press(digit, NULL);

	snprintf(done, sizeof done, " %d of ", n);
	cells += press("\r", done);
	printf("%ld %ld\n", window.bytes - bytes, cells);
}

int main(int argc, char **argv)
{
	if (argc != 5)
		return fprintf(stderr, "usage: counts PROGRAM BOOK TODAY N\n"), 2;
	char *const command[] = { argv[1], "--book", argv[2], "--today", argv[3],
		NULL };
	if (!window_open(&window, command, ROWS, COLS))
		return fprintf(stderr, "counts: no terminal\n"), 1;
	await("? keys");
	window_type(&window, "\r");
	await("Run  ");
	for (int n = 1; n <= atoi(argv[4]); n++)
		count(n);
	kill(window.pid, SIGTERM);
	window_close(&window);
	return 0;
}
