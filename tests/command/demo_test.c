#define _XOPEN_SOURCE 700 /* nftw */

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "program.h"

#include <dirent.h>
#include <poll.h>
#include <pty.h>
#include <signal.h>
#include <stdbool.h>
#include <sys/stat.h>

enum { PATIENCE_MS = 20000, STEP_MS = 50 };

/* Names in the working folder (TMPDIR) that the demo made. */
static int count_folders(void)
{
	DIR *d = opendir(".");
	struct dirent *found;
	int n = 0;

	while ((found = readdir(d)))
		n += strncmp(found->d_name, "mothtally-demo-", 15) == 0;
	closedir(d);
	return n;
}

static pid_t start_demo(int *screen)
{
	const struct winsize size = { .ws_row = 24, .ws_col = 80 };
	char path[PATH_MAX];

	program_path(path, sizeof path);
	pid_t child = forkpty(screen, NULL, NULL, &size);
	if (child < 0)
		skip(); /* a bare chroot has no terminals to give */
	if (child == 0) {
		signal(SIGHUP, SIG_DFL); /* the tests may run under nohup */
		setenv("TERM", "vt100", 1);
		setenv("ASAN_OPTIONS", "detect_leaks=0", 1); /* hangs after a hang-up */
		execl(path, path, "demo", (char *)NULL);
		_exit(127);
	}
	return child;
}

/* Reads the screen until `what` was on it. False: the program ended, or time is up. */
static bool wait_for(int screen, const char *what)
{
	struct buf all = { 0 };
	bool seen = false;

	buf_add(&all, "");
	for (int ms = 0; !seen && ms < PATIENCE_MS; ms += STEP_MS) {
		struct pollfd p = { .fd = screen, .events = POLLIN };
		char bytes[4096];

		if (poll(&p, 1, STEP_MS) <= 0)
			continue;
		ssize_t n = read(screen, bytes, sizeof bytes);
		if (n <= 0)
			break;
		buf_add_n(&all, bytes, (size_t)n);
		seen = strstr(all.text, what) != NULL;
	}
	buf_free(&all);
	return seen;
}

/* The exit status, 256 + signal; reads on, so that the program never waits for us. */
static int wait_end(pid_t child, int screen)
{
	int status;

	for (int ms = 0; ms < PATIENCE_MS; ms += STEP_MS) {
		struct pollfd p = { .fd = screen, .events = POLLIN };
		char bytes[4096];

		if (waitpid(child, &status, WNOHANG) == child)
			return WIFEXITED(status) ? WEXITSTATUS(status)
						 : 256 + WTERMSIG(status);
		if (screen >= 0 && poll(&p, 1, STEP_MS) > 0 &&
			read(screen, bytes, sizeof bytes) <= 0)
			usleep(STEP_MS * 1000);
		else if (screen < 0)
			usleep(STEP_MS * 1000);
	}
	kill(child, SIGKILL);
	waitpid(child, &status, 0);
	return -1;
}

static void demo_says_that_it_is_invented_and_leaves_nothing_behind(void **state)
{
	int screen;
	pid_t child = start_demo(&screen);

	(void)state;
	assert_true(wait_for(screen, "invented"));
	assert_int_equal(count_folders(), 1);
	assert_int_equal(write(screen, "q", 1), 1);
	assert_int_equal(wait_end(child, screen), 0);
	close(screen);
	assert_int_equal(count_folders(), 0);
}

static void demo_leaves_nothing_behind_when_told_to_end(void **state)
{
	static const struct {
		const char *why;
		int signal; /* 0: the terminal goes away */
	} row[] = { { "SIGTERM", SIGTERM }, { "SIGHUP", SIGHUP },
		{ "no terminal", 0 } };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		int screen;
		pid_t child = start_demo(&screen);

		if (!wait_for(screen, "invented"))
			fail_msg("%s: no page", row[i].why);
		if (row[i].signal)
			kill(child, row[i].signal);
		else
			close(screen);
		int end = wait_end(child, row[i].signal ? screen : -1);
		if (row[i].signal)
			close(screen);
		if (end < 0 || count_folders() != 0)
			fail_msg("%s: end %d, %d folders left", row[i].why, end,
				count_folders());
	}
}

static void demo_prints_week_bring_list_and_sheet_without_a_file(void **state)
{
	static const char *const parts[] = { "invented", "\nWeek  Tue 21 July 2026",
		"\nBring on the next run\n", "\nFlight  CM  Addermoor",
		"\nScouting sheet: ", "\nCautions\n" };
	struct ran r = { 0 };

	(void)state;
	program_run(&r, "demo --print");
	assert_int_equal(r.status, 0);
	const char *at = r.out.text;
	for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) {
		const char *found = strstr(at, parts[i]);
		if (!found)
			fail_msg("no \"%s\" where it belongs", parts[i]);
		at = found;
	}
	assert_int_equal(count_folders(), 0);
	program_forget(&r);
}

static void demo_takes_another_day(void **state)
{
	struct ran r = { 0 };

	(void)state;
	program_run(&r, "--today 2026-06-02 demo --print");
	assert_int_equal(r.status, 0);
	assert_non_null(strstr(r.out.text, "\nWeek  Tue 2 June 2026"));
	program_forget(&r);
}

/* What was decided and done is part of what it is all about. */
static void printed_it_tells_what_was_done_in_a_block(void **state)
{
	static const char *const says[] = { "Season of a block", "treated Thu 9 Jul",
		"fruit check", "shoot check", "pick planned: too early",
		"Record of treatments", "7 CFR 110.3", "Entry and picks" };
	struct ran r = { 0 };

	(void)state;
	program_run(&r, "demo --print");
	assert_int_equal(r.status, 0);
	for (size_t i = 0; i < sizeof says / sizeof *says; i++)
		if (!strstr(r.out.text, says[i]))
			fail_msg("no \"%s\"", says[i]);
	program_forget(&r);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			demo_says_that_it_is_invented_and_leaves_nothing_behind),
		cmocka_unit_test(demo_leaves_nothing_behind_when_told_to_end),
		cmocka_unit_test(demo_prints_week_bring_list_and_sheet_without_a_file),
		cmocka_unit_test(demo_takes_another_day),
		cmocka_unit_test(printed_it_tells_what_was_done_in_a_block),
	};

	return cmocka_run_group_tests(tests, program_setup, program_teardown);
}
