#define _XOPEN_SOURCE 700 /* nftw */

/* Memory gives out at the n-th call within each command: it ends with one sentence and
 * a status, and the book is sound. MEMORY=all tries every n, MEMORY=places the first
 * and the last call from each place in the program and its libraries (with the eight
 * callers above it) in the first command that comes by, MEMORY=100 so many of those
 * after the book is open, MEMORY_OF="week" that command alone. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../faulty/memory.h"
#include "base/shipped.h"
#include "book/backups.h"
#include "command/command.h"
#include "memory_tries.h"
#include "program.h"

#include <glob.h>
#include <signal.h>
#include <sys/mman.h>
#include <sys/resource.h>

enum { TODAY = 20655 }; /* 2026-07-21 */

static const struct context context = { .book_path = "b.db",
	.today = TODAY,
	.today_given = true,
	.minute = 450,
	.who = "JR",
	.utf8 = true };

/* Of one command: whence it asks for memory, seen by parent and child; the calls that
 * are to fail. Of all: the stacks that had their turn. */
static struct {
	struct memory_place *places;
	uint64_t done[MEMORY_PLACES];
	long *items;
	size_t n, cap;
} turns;

static int run_line(const struct context *ctx, const char *line, struct err *e)
{
	char words[256], *argv[PROGRAM_ARGS_MAX + 1] = { 0 };
	const struct command *c = commands;
	int argc = 0;

	snprintf(words, sizeof words, "%s", line);
	for (char *w = strtok(words, " "); w && argc < PROGRAM_ARGS_MAX;
		w = strtok(NULL, " ")) {
		argv[argc++] = w;
		for (; *w; w++)
			*w = *w == '~' ? ' ' : *w;
	}
	while (c->name && strcmp(c->name, argv[0]) != 0)
		c++;
	return c->name && c->run(ctx, argc, argv, e) ? 0 : (int)e->kind;
}

static int fill_book(void **state)
{
	static const char *const kinds[] = { "traps", "places", "visits", "thresholds",
		"weather", "biofix", "dispensers", "treatments", "picks",
		"fruit-checks" };
	struct context other = context;
	struct err e = { 0 };
	int failed = program_setup(state);

	fflush(stdout);
	int out = dup(STDOUT_FILENO);
	if (out < 0 || !freopen("/dev/null", "r", stdin) ||
		!freopen("/dev/null", "w", stdout))
		return -1;
	for (size_t i = 0; failed == 0 && i < sizeof kinds / sizeof *kinds; i++) {
		char name[64], line[128];

		snprintf(name, sizeof name, "demo/%s.csv", kinds[i]);
		const struct shipped *file = shipped_find(name);
		program_write(name + 5, file->text);
		snprintf(line, sizeof line, "import %s %s", kinds[i], name + 5);
		failed = run_line(&context, line, &e);
	}
	program_write("more.csv", "farm,trap,date,outcome,count\n"
				  "Addermoor,1,2026-07-20,counted,4\n");
	other.book_path = "other.db";
	if (failed == 0)
		failed = run_line(&context, "backup other.db", &e) ||
			 run_line(&other, "import visits more.csv", &e) ||
			 run_line(&context, "export gpx spots.gpx --farm Addermoor",
				 &e) ||
			 run_line(&context,
				 "export geojson spots.geojson --farm Addermoor", &e);
	dup2(out, STDOUT_FILENO);
	close(out);
	if (failed)
		fprintf(stderr, "%s\n", e.text);
	else
		program_copy("b.db", "base.db");
	return failed;
}

static bool one_sentence(const char *text)
{
	const char *end = strchr(text, '\n');

	return *text && (!end || !end[1]);
}

/* As main ends: the sentence to stderr. */
static void child(const struct try *t, long n, bool on, long *calls)
{
	static const int signals[] = { SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT,
		SIGALRM, SIGXCPU };
	const struct rlimit work = { .rlim_cur = 2, .rlim_max = 3 }; /* s */
	struct err e = { 0 };

	for (size_t i = 0; i < sizeof signals / sizeof *signals; i++)
		signal(signals[i], SIG_DFL); /* not cmocka's, which goes on */
	if (!freopen("told", "w", stdout) || !freopen("said", "w", stderr))
		_exit(90);
	setrlimit(RLIMIT_CPU, &work); /* fontconfig may ask for memory for ever */
	memory_note(n == 0 ? turns.places : NULL);
	memory_arm(n, on);
	int status = run_line(&context, t->line, &e);
	*calls = memory_calls();
	memory_arm(0, false);
	memory_note(NULL);
	if (*e.text)
		fprintf(stderr, "%s\n", e.text);
	fflush(stderr);
	_exit(status);
}

static bool is_sound(const char *path)
{
	struct book_contents in;
	struct err e = { 0 };
	struct book *b = book_open(path, BOOK_EXISTING, "", &e);

	book_close(b);
	if (b && book_look_into(path, &in, &e) && in.visits > 100)
		return true;
	print_error("%s: %s\n", path, e.text);
	return false;
}

/* What is told as an answer is the whole one; a file is there whole or not at all. */
static bool told_whole(const struct try *t, int status)
{
	bool out = access("out", F_OK) == 0, good = access("good.out", F_OK) == 0;
	bool same = t->does == WRITES || t->does == SAYS || !WIFEXITED(status) ||
		    WEXITSTATUS(status) != 0 ||
		    (program_same("told", "good.told") && out == good);

	same = same &&
	       (!out || !good || t->does >= STAMPS || program_same("out", "good.out"));
	if (!same)
		print_error("%s: it told less than it should\n", t->line);
	return same;
}

static void keep_good(void)
{
	unlink("good.out");
	rename("told", "good.told");
	rename("said", "good.said");
	rename("out", "good.out");
}

/* Status and sentence fit each other, and the book is as it was, or sound. */
static bool held(const struct try *t, int status)
{
	struct buf said = { 0 };

	program_read("said", &said);
	bool ok = t->does == BREAKS ||
		  (WIFEXITED(status) && WEXITSTATUS(status) <= 5 &&
			  (WEXITSTATUS(status) == 0 ? program_same("said", "good.said")
						    : one_sentence(said.text)));
	if (!ok)
		print_error("%s: ended with %s %d: %s\n", t->line,
			WIFSIGNALED(status) ? "signal" : "status",
			WIFSIGNALED(status) ? WTERMSIG(status) : WEXITSTATUS(status),
			said.text);
	buf_free(&said);
	return ok && told_whole(t, status) &&
	       (program_same("b.db", "base.db") ||
		       (t->does == WRITES && is_sound("b.db")));
}

/* What a merge or a restore kept. */
static void drop_kept(void)
{
	glob_t found = { 0 };

	if (glob("b-replaced-*", 0, NULL, &found) == 0)
		for (size_t i = 0; i < found.gl_pathc; i++)
			unlink(found.gl_pathv[i]);
	globfree(&found);
}

static int trial(const struct try *t, long n, bool on, long *calls)
{
	int status = 0;

	program_copy("base.db", "b.db");
	unlink("b.db-journal");
	unlink("out");
	drop_kept();
	fflush(NULL);
	pid_t pid = fork();
	if (pid == 0)
		child(t, n, on, calls);
	assert_int_equal(waitpid(pid, &status, 0), pid);
	return status;
}

static bool wants(const char *word)
{
	const char *wanted = getenv("MEMORY");

	return wanted && strcmp(wanted, word) == 0;
}

/* So many among the calls after the book is open. */
static long pace(void)
{
	const char *given = getenv("MEMORY");

	return given && atol(given) > 0 ? atol(given) : 12;
}

/* The first ones, some of the many of opening the book, more of those after it; every
 * one when asked for. */
static long next_of(long n, long all)
{
	enum { AFTER_OPENING = 3000 };
	long late = all > AFTER_OPENING ? all - AFTER_OPENING : 0;

	if (n < 4 || wants("all"))
		return n + 1;
	if (n < late)
		return n + (all / 8 < late - n ? all / 8 + 1 : late - n);
	return n + (all - late) / pace() + 1;
}

static void add_turn(long n)
{
	if (turns.n == turns.cap) {
		turns.cap = turns.cap * 2 + 1024;
		turns.items = realloc(turns.items, turns.cap * sizeof *turns.items);
		assert_non_null(turns.items);
	}
	turns.items[turns.n++] = n;
}

/* True the first time; when there is no room left, always. */
static bool is_new(uint64_t stack)
{
	size_t at = (size_t)(stack >> 32) % MEMORY_PLACES;

	for (size_t i = 0; i < MEMORY_PLACES; i++, at = (at + 1) % MEMORY_PLACES) {
		if (turns.done[at] == stack)
			return false;
		if (turns.done[at] == 0) {
			turns.done[at] = stack;
			break;
		}
	}
	return true;
}

static void add_some(long all)
{
	for (long n = 1; n <= all; n = next_of(n, all))
		add_turn(n);
}

static void add_places(void)
{
	for (size_t i = 0; i < MEMORY_PLACES; i++) {
		const struct memory_place *p = &turns.places[i];
		if (p->stack == 0 || !is_new(p->stack))
			continue;
		add_turn(p->first);
		if (p->last != p->first)
			add_turn(p->last);
	}
}

/* Which calls are to fail; of a library that breaks, some are enough. */
static void choose_turns(const struct try *t, long all)
{
	turns.n = 0;
	if (wants("places") && t->does != BREAKS)
		add_places();
	else
		add_some(all);
}

static void try_turn(const struct try *t, long n, bool on, long counts[3])
{
	long calls;

	counts[1]++;
	if (held(t, trial(t, n, on, &calls)))
		counts[2]++;
	else
		print_error("%s: call %ld of %ld%s: NOT HELD\n", t->line, n, counts[0],
			on ? " and after" : "");
}

static void try_line(const struct try *t, long *calls, long sums[2])
{
	long counts[3] = { 0 }; /* calls, tried, held */

	memset(turns.places, 0, MEMORY_PLACES * sizeof *turns.places);
	trial(t, 0, false, calls);
	keep_good();
	counts[0] = *calls;
	choose_turns(t, *calls);
	for (size_t i = 0; i < turns.n; i++)
		for (int on = 0; on < 2; on++)
			if (getenv("MEMORY") || on == turns.items[i] % 2)
				try_turn(t, turns.items[i], on, counts);
	printf("%-52s %7ld %6ld %6ld\n", t->line, counts[0], counts[1], counts[2]);
	fflush(stdout);
	sums[0] += counts[1];
	sums[1] += counts[2];
}

/* With the children. */
static void *shared(size_t size)
{
	void *p = mmap(
		NULL, size, PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);

	assert_ptr_not_equal(p, MAP_FAILED);
	return p;
}

static bool is_of(const char *line, const char *command)
{
	size_t n = strlen(command);

	return strncmp(line, command, n) == 0 && (line[n] == ' ' || !line[n]);
}

static void every_command_meets_the_end_of_memory_with_a_sentence(void **state)
{
	const char *alone = getenv("MEMORY_OF");
	long *calls = shared(sizeof *calls), sums[2] = { 0, 0 };

	(void)state;
	if (!memory_is_ours())
		skip();
	turns.places = shared(MEMORY_PLACES * sizeof *turns.places);
	printf("%-52s %7s %6s %6s\n", "", "calls", "tried", "held");
	for (size_t i = 0; i < sizeof tries / sizeof *tries; i++)
		if (!alone || is_of(tries[i].line, alone))
			try_line(&tries[i], calls, sums);
	printf("%-52s %7s %6ld %6ld\n", "all", "", sums[0], sums[1]);
	munmap(calls, sizeof *calls);
	munmap(turns.places, MEMORY_PLACES * sizeof *turns.places);
	free(turns.items);
	assert_true(sums[0] > 0);
	assert_int_equal(sums[1], sums[0]);
}

static void every_command_is_among_them(void **state)
{
	(void)state;
	for (const struct command *c = commands; c->name; c++) {
		bool found = false;

		for (size_t i = 0; i < sizeof tries / sizeof *tries; i++)
			found = found || is_of(tries[i].line, c->name);
		if (!found)
			fail_msg("%s is not tried", c->name);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_command_is_among_them),
		cmocka_unit_test(every_command_meets_the_end_of_memory_with_a_sentence),
	};
	return cmocka_run_group_tests(tests, fill_book, program_teardown);
}
