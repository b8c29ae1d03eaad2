/* two.c - two programs on one book, each in a window of its own, make edits through
 * their pages: two PROGRAM BOOK TODAY SEED EDITS. Which goes on next is drawn by lot
 * after each step, so that one has a form open, or waits for its save, while the other
 * changes the same record; at first some such meetings are made on purpose. Every value
 * that is typed is a number never typed before.
 *
 * Prints a line for each edit, the ticks being steps in the order of time:
 *     kind  value  window  read  sent  told  asked
 * read: when the page showed the record as it is in the book; sent: the key that saves;
 * told: the screen said that it is saved; asked 1: it first said that somebody else
 * changed it. */
#include "window.h"

#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { ROWS = 24, COLS = 80, TRAPS = 3, THRESHOLDS = 2, KEYS = 64, STEPS = 9 };

/* The sanitizers are slow. */
static const double patience_s = 30;

enum kind { COUNT, RENAME, NEW, THRESHOLD, KINDS };

static const char *const kind_names[KINDS] = { "count", "rename", "new", "threshold" };

/* What is typed, and what the screen shows then; %d: the value. `reads`: this takes the
 * record from the book; `saves`: this puts it there. */
struct step {
	const char *keys, *shows;
	bool picks, reads, saves;
};

/* Esc, at once followed by a key that does no harm: alone it would be waited for,
 * whether more of a sequence comes. */
#define BACK "\033\033OH"

static const struct step steps[KINDS][STEPS] = {
	[COUNT] = { { "\r", " done", .reads = true }, { "\033OH", NULL, .picks = true },
		{ .keys = "%d" }, { "\r", "kept: %d ", .saves = true },
		{ BACK, .shows = "q quit" } },
	[RENAME] = { { "b", .shows = " Book" },
		{ "\033OH\033OB\033OB\r", .shows = " Traps" },
		{ "f", .shows = " Traps of Addermoor" },
		{ "\033OH", NULL, .picks = true },
		{ "\r", " Form  trap", .reads = true },
		{ "\033OB\033OBR%d", .shows = "R%d" },
		{ "\033\r", "Saved: trap R%d", .saves = true },
		{ BACK BACK, .shows = "q quit" } },
	[NEW] = { { "b", .shows = " Book" },
		{ "\033OH\033OB\033OB\r", .shows = " Traps" },
		{ "f", .shows = " Traps of Addermoor" },
		{ "f", .shows = " Traps of Hather Bend" },
		{ "n", " Form  new trap", .reads = true }, { "N%dx", .shows = "N%dx" },
		{ "\033\r", "Saved: trap N%dx", .saves = true },
		{ BACK BACK BACK, .shows = "q quit" } },
	[THRESHOLD] = { { "b", .shows = " Book" },
		{ "\033OH\033OB\033OB\033OB\033OB\033OB\033OB\r",
			.shows = " Thresholds" },
		{ "\033OH", NULL, .picks = true },
		{ "\r", " Form  thr", .reads = true }, { "%v%d", .shows = "[ %d" },
		{ "\033\r", "Saved", .saves = true },
		{ BACK BACK, .shows = "q quit" } },
};

struct side {
	struct window window;
	enum kind kind;
	size_t at; /* the step that comes next; STEPS: the edit is made */
	int value, record;
	const char *who;
	int read, sent, told;
	bool asked, waits, reads;
	char shows[KEYS]; /* what it waits for */
};

static int tick, values = 100;

static _Noreturn void give_up(struct side *s, const char *why)
{
	fprintf(stderr, "two: %s %d: %s\n", kind_names[s->kind], s->value, why);
	window_print(&s->window);
	kill(s->window.pid, SIGTERM);
	exit(1);
}

static unsigned draw(unsigned n)
{
	return (unsigned)(random() % n);
}

/* How far below the hand the form has the field "value". */
static int fields_down(struct side *s)
{
	if (!window_wait(&s->window, "   value ", patience_s))
		give_up(s, "no field \"value\" on the form");
	window_settle(&s->window, 20); /* the cursor comes last */
	return glass_find(&s->window.glass, "   value ") - s->window.glass.row;
}

static void type(struct side *s, const char *keys)
{
	char out[512] = "";
	const char *down = "\033OB";

	for (const char *k = keys; *k; k++) {
		size_t n = strlen(out);

		if (strncmp(k, "%d", 2) == 0) {
			snprintf(out + n, sizeof out - n, "%d", s->value);
			k++;
		} else if (strncmp(k, "%v", 2) == 0) {
			for (int i = fields_down(s); i > 0; i--)
				strcat(out, down);
			k++;
		} else
			snprintf(out + n, sizeof out - n, "%c", *k);
	}
	window_type(&s->window, out);
}

static void fill(char out[KEYS], const char *pattern, int value)
{
	const char *at = strstr(pattern, "%d");

	if (at)
		snprintf(out, KEYS, "%.*s%d%s", (int)(at - pattern), pattern, value,
			at + 2);
	else
		snprintf(out, KEYS, "%s", pattern);
}

static bool shown(const struct side *s, const char *text)
{
	return glass_find(&s->window.glass, text) >= 0;
}

/* One word: a longer piece of the sentence may be broken over two rows. */
static bool refused(const struct side *s)
{
	return shown(s, "meanwhile") && !shown(s, "stands now");
}

/* Waits until what was typed last has been answered; a refusal is answered by Enter. */
static void finish_step(struct side *s)
{
	double end = window_clock() + patience_s;

	if (!s->waits)
		return;
	while (!shown(s, s->shows)) {
		if (s->sent && refused(s)) {
			s->asked = true;
			s->sent = ++tick;
			window_type(&s->window, "\r");
			while (refused(s) && window_clock() < end)
				window_read(&s->window, 1000);
		}
		if (window_clock() > end ||
			(!window_read(&s->window, 1000) && window_clock() > end))
			give_up(s, s->shows);
	}
	s->waits = false;
	if (s->reads)
		s->read = ++tick;
	s->reads = false;
	if (s->sent && !s->told) {
		s->told = ++tick;
		printf("%s\t%d\t%s\t%d\t%d\t%d\t%d\n", kind_names[s->kind], s->value,
			s->who, s->read, s->sent, s->told, s->asked);
	}
}

static void begin(struct side *s)
{
	static const enum kind often[] = { COUNT, COUNT, COUNT, RENAME, NEW,
		THRESHOLD };

	s->kind = often[draw(sizeof often / sizeof *often)];
	s->record = (int)draw(s->kind == THRESHOLD ? THRESHOLDS : TRAPS);
	s->value = values++;
	s->at = 0;
	s->read = s->sent = s->told = 0;
	s->asked = false;
}

static void pick(struct side *s)
{
	for (int i = 0; i < s->record; i++)
		window_type(&s->window, "\033OB");
}

static void next_step(struct side *s)
{
	const struct step *step = &steps[s->kind][s->at];

	s->at++;
	if (step->shows) {
		fill(s->shows, step->shows, s->value);
		s->waits = true;
	}
	s->reads = step->reads;
	if (step->saves)
		s->sent = ++tick;
	type(s, step->keys);
	if (step->picks)
		pick(s);
	if (s->at < STEPS && !steps[s->kind][s->at].keys)
		s->at = STEPS;
}

static bool is_busy(const struct side *s)
{
	return s->at < STEPS || s->waits;
}

static void go_on(struct side *s)
{
	finish_step(s);
	if (s->at < STEPS)
		next_step(s);
}

/* The first has the form of a threshold open while the second changes the same one. */
static void meet(struct side *first, struct side *second)
{
	struct side *both[] = { first, second };

	for (int i = 0; i < 2; i++) {
		begin(both[i]);
		both[i]->kind = THRESHOLD;
		both[i]->record = 0;
	}
	while (!first->read)
		go_on(first);
	while (is_busy(second))
		go_on(second);
	while (is_busy(first))
		go_on(first);
}

int main(int argc, char **argv)
{
	static struct side sides[2];

	if (argc != 6)
		return fprintf(stderr, "usage: two PROGRAM BOOK TODAY SEED EDITS\n"), 2;
	char *const command[] = { argv[1], "--book", argv[2], "--today", argv[3],
		NULL };
	int left = atoi(argv[5]);

	srandom((unsigned)atoi(argv[4]));
	for (int i = 0; i < 2; i++) {
		sides[i].who = i ? "BB" : "AA";
		setenv("LOGNAME", sides[i].who, 1);
		if (!window_open(&sides[i].window, command, ROWS, COLS))
			return perror("two: no terminal"), 4;
		sides[i].at = STEPS;
		if (!window_wait(&sides[i].window, "q quit", patience_s))
			give_up(&sides[i], "the pages do not open");
	}
	for (int i = left / 50; i > 0; i--, left -= 2)
		meet(&sides[i % 2], &sides[(i + 1) % 2]);
	for (bool busy = true; busy;) {
		struct side *s = &sides[draw(2)];

		go_on(s);
		if (!is_busy(s) && left > 0) {
			begin(s);
			left--;
		}
		busy = is_busy(&sides[0]) || is_busy(&sides[1]) || left > 0;
	}
	for (int i = 0; i < 2; i++) {
		window_type(&sides[i].window, "q");
		if (window_close(&sides[i].window) != 0)
			return fprintf(stderr, "two: a program failed\n"), 1;
	}
	return 0;
}
