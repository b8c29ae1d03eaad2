/* soak.c - one program stays open while keys are typed on all its pages, at sizes drawn
 * by lot: soak PROGRAM BOOK TODAY SEED KEYS. Now and then it goes back to Today and
 * from there to the next page.
 *
 * Prints "what value" lines; frames and work are those after the first quarter, in
 * which all warms up:
 *     pages N             that were seen, by the first word of their titles
 *     memory_kib N        that it grew: the most of the last quarter less the most of
 *                         the second, of its own and back on Today
 *     files N             open at the end beyond those after the warm-up
 *     frame_ms N KEY PAGE the longest from a key to the last byte that it brought
 *     work_ms N KEY PAGE  the most that the processor worked for one key
 *     print_ms N KEY PAGE the same for keys that may print, which the others leave out
 *     over N              keys whose frame took over 50 ms
 *     worked_over N       keys for which the processor worked for over 50 ms */
#include "window.h"

#include <ctype.h>
#include <dirent.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { FRAME_MS = 50, QUIET_MS = 8, STAY_MAX = 24, TITLES = 64, WORD = 24 };
enum { ROWS_MIN = 3, COLS_MIN = 12, FARMS = 3, PRINTS = 4 };

/* The sanitizers are slow. */
static const double patience_s = 60;

/* Up, down, left, right, page up, page down, home, end, delete; Escape is at once
 * followed by a key that does no harm: alone it would be waited for, whether more of a
 * sequence comes. No q: it ends the program. */
#define BACK "\033\033OH"
#define BACK_UNSAVED "\033\033\033OH" /* a form asks for it twice */
static const char *const keys[] = { "\033OA", "\033OB", "\033OB", "\033OB", "\033OD",
	"\033OC", "\033[5~", "\033[6~", "\033OH", "\033OF", "\033[3~", "\177", "\t",
	"\r", "\r", "\r", BACK, BACK, BACK, "?", "+", "-", "*", "/", ".", "0", "1", "2",
	"3", "4", "7", "12", "2026-07-14", "a", "b", "c", "d", "e", "f", "g", "h", "i",
	"j", "k", "l", "m", "n", "o", "p", "r", "s", "t", "u", "v", "w", "x", "y", "z",
	" ", "\303\251", "Weir", "CM" };

/* From Today; the last keys of Book lead to its lists. */
static const char *const doors[] = { "p", "fs", "\r", "w", "f", "h", "s", "a", "n",
	"w\r", "f?", "x", "b", "b\r", "b\033OB\r", "b\033OB\033OB\r",
	"b\033OB\033OB\033OB\r\r", "b\033OF\r", "b\033OF\033OA\r", "b\033[6~\r" };

#define LENGTH(array) (sizeof(array) / sizeof *(array))

struct worst {
	double ms;
	char key[WORD], page[WORD];
	long over;
};

struct soak {
	struct window window;
	char titles[TITLES][WORD];
	int n_titles;
	long n, all; /* keys typed, to be typed */
	struct worst frame, work, print;
	long peak_kib[4]; /* of each quarter */
	long files_warm;
};

static _Noreturn void give_up(struct soak *s, const char *why)
{
	fprintf(stderr, "soak: after %ld keys: %s\n", s->n, why);
	window_print(&s->window);
	kill(s->window.pid, SIGTERM);
	exit(1);
}

static FILE *of_process(struct soak *s, const char *name)
{
	char path[64];

	snprintf(path, sizeof path, "/proc/%d/%s", (int)s->window.pid, name);
	FILE *file = fopen(path, "r");
	if (!file)
		give_up(s, "the program has ended");
	return file;
}

/* Its own; what it has of libraries grows with each that it comes to use. */
static long resident_kib(struct soak *s)
{
	FILE *file = of_process(s, "status");
	char line[256];
	long kib = 0;

	while (fgets(line, sizeof line, file))
		if (sscanf(line, "RssAnon: %ld", &kib) == 1)
			break;
	fclose(file);
	return kib;
}

/* What the scheduler gave to it so far. */
struct worked {
	double ms;
	long turns;
};

static struct worked worked(struct soak *s)
{
	FILE *file = of_process(s, "schedstat");
	struct worked w = { 0 };

	if (fscanf(file, "%lf %*s %ld", &w.ms, &w.turns) != 2)
		give_up(s, "this system does not tell what a program worked");
	fclose(file);
	w.ms /= 1e6;
	return w;
}

/* Where much goes on, a key takes its time until it has woken the program up. */
static void wait_for_turn(struct soak *s, long turns)
{
	double end = window_clock() + patience_s;

	while (worked(s).turns == turns && window_clock() < end)
		window_read(&s->window, 1);
}

static DIR *folder_of_process(struct soak *s, const char *name)
{
	char path[64];

	snprintf(path, sizeof path, "/proc/%d/%s", (int)s->window.pid, name);
	DIR *folder = opendir(path);
	if (!folder)
		give_up(s, "the program has ended");
	return folder;
}

/* A thread that has just ended sleeps for ever. */
static char state_of(struct soak *s, const char *thread)
{
	char path[300], state = 'S';

	snprintf(
		path, sizeof path, "/proc/%d/task/%s/stat", (int)s->window.pid, thread);
	FILE *file = fopen(path, "r");
	if (!file)
		return 'S';
	if (fscanf(file, "%*d (%*[^)]) %c", &state) != 1)
		state = 'S';
	fclose(file);
	return state;
}

/* It waits: for the next key, since nothing else is slept for by all of its threads;
 * the libraries that set a page have some look for fonts while the first one sleeps. */
static bool waits(struct soak *s)
{
	DIR *threads = folder_of_process(s, "task");
	bool all_sleep = true;

	for (struct dirent *d = readdir(threads); d; d = readdir(threads))
		if (d->d_name[0] != '.')
			all_sleep = state_of(s, d->d_name) == 'S' && all_sleep;
	closedir(threads);
	return all_sleep;
}

static long open_files(struct soak *s)
{
	DIR *files = folder_of_process(s, "fd");
	long n = 0;

	for (struct dirent *d = readdir(files); d; d = readdir(files))
		n += d->d_name[0] != '.';
	closedir(files);
	return n;
}

static void settle(struct soak *s)
{
	double end = window_clock() + patience_s;
	int quiet = 0;

	while (quiet < 2) {
		quiet = !window_read(&s->window, QUIET_MS) && waits(s) ? quiet + 1 : 0;
		if (window_clock() > end)
			give_up(s, "no end of what it sends");
	}
}

static void first_word(struct soak *s, char out[static WORD])
{
	char row[GLASS_TEXT];

	glass_row(&s->window.glass, 0, row);
	if (sscanf(row, " %23[A-Za-z -]", out) != 1)
		snprintf(out, WORD, "-");
	char *gap = strstr(out, "  ");
	if (gap)
		*gap = '\0';
}

static void note_page(struct soak *s, const char *title)
{
	int i = 0;

	while (i < s->n_titles && strcmp(s->titles[i], title) != 0)
		i++;
	if (i == s->n_titles && i < TITLES)
		snprintf(s->titles[s->n_titles++], WORD, "%s", title);
}

static void note(struct worst *w, double ms, const char *key, const char *page)
{
	w->over += ms > FRAME_MS;
	if (ms <= w->ms)
		return;
	w->ms = ms;
	snprintf(w->page, WORD, "%s", page);
	size_t n = 0;
	for (; *key && n + 3 < WORD; key++) {
		w->key[n] = isgraph((unsigned char)*key) ? *key : '^';
		n++;
	}
	w->key[n] = '\0';
}

/* These may set a whole page on paper before they answer. */
static bool may_print(const char *key)
{
	size_t n = strlen(key);

	return n > 0 && strchr("ps", key[n - 1]);
}

static void press(struct soak *s, const char *key)
{
	char page[WORD];
	long quarter = s->n * 4 / s->all;

	first_word(s, page);
	double began = window_clock();
	struct worked before = worked(s);
	s->window.last = began;
	window_type(&s->window, key);
	wait_for_turn(s, before.turns);
	settle(s);
	s->n++;
	if (quarter == 0)
		return;
	double ms = worked(s).ms - before.ms;
	if (may_print(key)) {
		note(&s->print, ms, key, page);
		return;
	}
	note(&s->frame, (s->window.last - began) * 1e3, key, page);
	note(&s->work, ms, key, page);
}

/* On Today, with all other pages closed. */
static void weigh(struct soak *s)
{
	long kib = resident_kib(s), quarter = s->n * 4 / s->all;

	if (quarter < 4 && kib > s->peak_kib[quarter])
		s->peak_kib[quarter] = kib;
}

static unsigned draw(unsigned n)
{
	return (unsigned)random() % n;
}

static void change_size(struct soak *s)
{
	int rows = ROWS_MIN + (int)draw(GLASS_ROWS - ROWS_MIN + 1);
	int cols = COLS_MIN + (int)draw(GLASS_COLS - COLS_MIN + 1);

	if (draw(3) == 0)
		rows = 24, cols = 80;
	window_resize(&s->window, rows, cols);
	settle(s);
	press(s, "\033OH");
}

static void home(struct soak *s)
{
	for (int i = 0; i < 5; i++)
		press(s, BACK_UNSAVED);
}

static void visit(struct soak *s, const char *door)
{
	char title[WORD];

	home(s);
	weigh(s);
	if (draw(2) == 0)
		press(s, draw(2) ? "\033OB" : "\033OA");
	press(s, door);
	for (long i = 0; i < STAY_MAX && i < s->all / 100; i++) {
		first_word(s, title);
		note_page(s, title);
		press(s, keys[draw(LENGTH(keys))]);
		if (draw(8) == 0)
			change_size(s);
	}
}

/* The libraries that set a page keep what they found out about fonts: pages of every
 * farm are printed until they have found out all. */
static void print_first(struct soak *s)
{
	for (int farm = 0; farm < FARMS; farm++) {
		home(s);
		for (int i = 0; i < farm; i++)
			press(s, "\033OB");
		press(s, "p");
		press(s, "\r");
		press(s, "f");
		for (int i = 0; i < PRINTS; i++) {
			press(s, "s");
			press(s, "\r");
			window_settle(&s->window, 200);
		}
	}
}

/* Printing may still be under way. */
static long files_left(struct soak *s)
{
	double end = window_clock() + patience_s;

	home(s);
	while (open_files(s) > s->files_warm && window_clock() < end)
		window_read(&s->window, 200);
	return open_files(s) - s->files_warm;
}

static void run(struct soak *s)
{
	bool warm = false;

	print_first(s);
	for (size_t i = 0; s->n < s->all; i++) {
		visit(s, doors[i % LENGTH(doors)]);
		if (!warm && s->n >= s->all / 4) {
			home(s);
			s->files_warm = open_files(s);
			warm = true;
		}
	}
}

static void tell(struct soak *s)
{
	printf("keys %ld\npages %d\n", s->n, s->n_titles);
	printf("memory_kib %ld\n", s->peak_kib[3] - s->peak_kib[1]);
	printf("resident_kib %ld\n", s->peak_kib[3]);
	printf("files %ld\n", files_left(s));
	printf("frame_ms %.1f %s %s\n", s->frame.ms, s->frame.key, s->frame.page);
	printf("work_ms %.1f %s %s\n", s->work.ms, s->work.key, s->work.page);
	printf("print_ms %.1f %s %s\n", s->print.ms, s->print.key, s->print.page);
	printf("over %ld\nworked_over %ld\n", s->frame.over, s->work.over);
}

int main(int argc, char **argv)
{
	static struct soak s;

	if (argc != 6)
		return fprintf(stderr, "usage: soak PROGRAM BOOK TODAY SEED KEYS\n"), 2;
	char *const command[] = { argv[1], "--book", argv[2], "--today", argv[3],
		NULL };
	srandom((unsigned)atoi(argv[4]));
	s.all = atol(argv[5]);
	if (!window_open(&s.window, command, 24, 80))
		return perror("soak: no terminal"), 4;
	if (!window_wait(&s.window, "q quit", patience_s))
		give_up(&s, "the pages do not open");
	run(&s);
	tell(&s);
	window_resize(&s.window, 24, 80);
	home(&s);
	if (glass_find(&s.window.glass, "q quit") < 0)
		give_up(&s, "Esc does not lead back to Today");
	window_type(&s.window, "q");
	return window_close(&s.window) == 0 ? 0
					    : (fputs("soak: it failed\n", stderr), 1);
}
