/* lists.c - the long lists of the real program, scrolled by arrow keys on a terminal of
 * 80 x 24: lists PROGRAM BOOK TODAY [LIST] prints a line for each, or for that one
 *     name  milliseconds a frame: middle, slowest  bytes a key  changed cells a key
 *     milliseconds until the list is opened
 * A frame is what comes between the key and its last byte; the cells are compared as
 * they stand on the glass. The same keys are pressed in several runs of the program,
 * and of each frame its quickest counts: what this machine does besides falls on
 * another frame each time, what the program does on the same. Opening a list reads the
 * book and is counted apart. A run in which a frame came so late that its key seems to
 * change nothing is left out, and another takes its place. */
#include "../e2e/window.h"

#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

enum {
	ROWS = 24,
	COLS = 80,
	KEYS = 60,      /* each way */
	RUNS = 3,       /* that count */
	TRIES = 12,     /* at most */
	FIRST_MS = 400, /* nothing comes for so long: the key changes nothing */
	QUIET_MS = 40,  /* nothing comes for so long: the frame has ended */
	PATIENCE_S = 60,
	TABS_MAX = 40,
};

static const char key_down[] = "\033OB", key_up[] = "\033OA", key_end[] = "\033OF";

/* How a list is reached from the Today page: keys, then the row of that page with this
 * text is opened, its page has a title, then more keys, and what they show. */
struct list {
	const char *name, *keys, *row, *title, *more, *shows;
};

static const struct list lists[] = {
	{ "farms to run", "", NULL, "mothtally", NULL, NULL },
	{ "run", "\r", NULL, "Run  ", NULL, NULL },
	{ "week", "w", NULL, "Week", NULL, NULL },
	{ "service", "s", NULL, "Service", NULL, NULL },
	{ "alerts", "a", NULL, "Alerts", NULL, NULL },
	{ "farms", "b", " farms ", "Farms", NULL, NULL },
	{ "blocks", "b", " blocks ", "Blocks", NULL, NULL },
	{ "traps", "b", " traps ", "Traps", NULL, NULL },
	{ "diary of a trap", "b", " traps ", "Traps", "\033OFd", "season 2026" },
	{ "pests", "b", " pests ", "Pests", NULL, NULL },
	{ "lures", "b", " lures ", "Lures", NULL, NULL },
	{ "cards", "b", " cards ", "Cards", NULL, NULL },
	{ "thresholds", "b", " thresholds ", "Thresholds", NULL, NULL },
	{ "stations", "b", " stations ", "Stations", NULL, NULL },
	{ "sources", "b", " sources ", "Sources", NULL, NULL },
};

struct measured {
	double ms[2 * KEYS]; /* of each frame; of several runs the quickest */
	size_t n;
	long bytes, cells; /* of the latest run */
	double opening_ms; /* the quickest */
	int runs;
};

static _Noreturn void give_up(const struct window *w, const char *list, const char *why)
{
	fprintf(stderr, "lists: %s: %s\n", list, why);
	window_print(w);
	exit(1);
}

static void await(struct window *w, const struct list *l, const char *text)
{
	if (!window_wait(w, text, PATIENCE_S))
		give_up(w, l->name, text);
	window_settle(w, QUIET_MS);
}

/* The text stands in the title: below it a page may name the one it leads to. */
static void await_page(struct window *w, const struct list *l, const char *title)
{
	double end = window_clock() + PATIENCE_S;
	char line[GLASS_TEXT];

	for (glass_row(&w->glass, 0, line); !strstr(line, title);
		glass_row(&w->glass, 0, line))
		if (!window_read(w, PATIENCE_S * 1000) || window_clock() > end)
			give_up(w, l->name, title);
	window_settle(w, QUIET_MS);
}

/* The hand goes down to the row with that text. */
static void go_to_row(struct window *w, const struct list *l)
{
	char line[GLASS_TEXT];

	for (int i = 0; i < TABS_MAX; i++) {
		glass_row(&w->glass, w->glass.row, line);
		if (strstr(line, l->row))
			return;
		window_type(w, key_down);
		window_settle(w, QUIET_MS);
	}
	give_up(w, l->name, l->row);
}

/* Milliseconds from the last of these keys to the last byte of the list; from the start
 * of the program for a list on its first page. */
static double reach(struct window *w, const struct list *l)
{
	double from = window_clock();

	await(w, l, "? keys");
	if (l->keys[0]) {
		from = window_clock();
		window_type(w, l->keys);
	}
	if (l->row) {
		await_page(w, l, "Book");
		go_to_row(w, l);
		from = window_clock();
		window_type(w, "\r");
	}
	await_page(w, l, l->title);
	if (l->more) {
		from = window_clock();
		window_type(w, l->more);
		await(w, l, l->shows);
	}
	return (w->last - from) * 1e3;
}

static void press(struct window *w, const char *key, struct measured *m)
{
	static struct glass before;
	long bytes = w->bytes;
	double from = 0;

	before = w->glass;
	from = window_clock();
	window_type(w, key);
	if (!window_read(w, FIRST_MS))
		return;
	window_settle(w, QUIET_MS);
	m->ms[m->n++] = (w->last - from) * 1e3;
	m->bytes += w->bytes - bytes;
	m->cells += glass_changed(&before, &w->glass);
}

static int by_size(const void *a, const void *b)
{
	const double *x = a, *y = b;

	return (*x > *y) - (*x < *y);
}

static struct measured run(const struct list *l, char *const argv[])
{
	static struct window w;
	struct measured m = { .runs = 1 };

	if (!window_open(&w, argv, ROWS, COLS))
		give_up(&w, l->name, "no terminal");
	m.opening_ms = reach(&w, l);
	for (int i = 0; i < KEYS; i++)
		press(&w, key_down, &m);
	window_type(&w, key_end);
	window_settle(&w, QUIET_MS);
	for (int i = 0; i < KEYS; i++)
		press(&w, key_up, &m);
	if (m.n == 0 || m.cells == 0)
		give_up(&w, l->name, "the arrow keys change nothing");
	kill(w.pid, SIGTERM);
	window_close(&w);
	return m;
}

static double quicker(double a, double b)
{
	return a < b ? a : b;
}

/* Takes up another run. The one with more frames is right: in the other a late frame
 * was taken for none. */
static void take(struct measured *m, const struct measured *other)
{
	if (other->n > m->n)
		*m = *other;
	else if (other->n == m->n) {
		for (size_t i = 0; i < m->n; i++)
			m->ms[i] = quicker(m->ms[i], other->ms[i]);
		m->opening_ms = quicker(m->opening_ms, other->opening_ms);
		m->runs++;
	}
}

static void measure(const struct list *l, char *const argv[])
{
	struct measured m = { 0 };

	for (int i = 0; i < TRIES && m.runs < RUNS; i++) {
		struct measured other = run(l, argv);
		take(&m, &other);
	}
	if (m.runs < RUNS) {
		fprintf(stderr, "lists: %s: each run has other frames\n", l->name);
		exit(1);
	}
	qsort(m.ms, m.n, sizeof *m.ms, by_size);
	printf("%s\t%.3f\t%.3f\t%.1f\t%.1f\t%.0f\n", l->name, m.ms[m.n / 2],
		m.ms[m.n - 1], (double)m.bytes / (double)m.n,
		(double)m.cells / (double)m.n, m.opening_ms);
	fflush(stdout);
}

int main(int argc, char **argv)
{
	if (argc != 4 && argc != 5)
		return fprintf(stderr, "usage: lists PROGRAM BOOK TODAY [LIST]\n"), 2;
	char *const command[] = { argv[1], "--book", argv[2], "--today", argv[3],
		NULL };

	for (size_t i = 0; i < sizeof lists / sizeof *lists; i++)
		if (argc == 4 || strcmp(argv[4], lists[i].name) == 0)
			measure(&lists[i], command);
	return 0;
}
