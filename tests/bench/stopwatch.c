/* stopwatch.c - times a command for tests/bench/run.
 *   stopwatch COMMAND ...             prints "seconds KiB CPU": wall clock, peak
 *                                     memory, seconds of work
 *   stopwatch --page TEXT COMMAND ... the same on a terminal of 80 x 24, up to the
 *                                     moment TEXT is on it; then the key q is sent
 * The command's standard output is thrown away. Exit status: 1 when it fails. */
#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <pty.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

enum { SEEN_BYTES = 1 << 20, WAIT_MS = 60000 };

static double now(void)
{
	struct timespec t;

	clock_gettime(CLOCK_MONOTONIC, &t);
	return (double)t.tv_sec + (double)t.tv_nsec / 1e9;
}

static double seconds(struct timeval t)
{
	return (double)t.tv_sec + (double)t.tv_usec / 1e6;
}

static _Noreturn void become(char **argv, bool quiet)
{
	int null = quiet ? open("/dev/null", O_WRONLY) : -1;

	if (null >= 0)
		dup2(null, STDOUT_FILENO);
	execvp(argv[0], argv);
	perror(argv[0]);
	_exit(127);
}

static int finish(pid_t pid, double from, double to)
{
	struct rusage used;
	int status;

	while (wait4(pid, &status, 0, &used) < 0)
		if (errno != EINTR)
			return 1;
	double took = (to > from ? to : now()) - from;
	printf("%.4f %ld %.4f\n", took, used.ru_maxrss,
		seconds(used.ru_utime) + seconds(used.ru_stime));
	return !WIFEXITED(status) || WEXITSTATUS(status) != 0;
}

/* Reads the terminal until the text was on it, or to the end if it is NULL. False: it
 * did not come. */
static bool read_until(int fd, const char *text)
{
	static char seen[SEEN_BYTES];
	size_t n = 0;

	for (;;) {
		struct pollfd p = { .fd = fd, .events = POLLIN };
		if (poll(&p, 1, WAIT_MS) <= 0)
			return false;
		if (n == sizeof seen - 1)
			n = 0;
		ssize_t got = read(fd, seen + n, sizeof seen - 1 - n);
		if (got <= 0)
			return text == NULL;
		n += (size_t)got;
		seen[n] = '\0';
		if (text && strstr(seen, text))
			return true;
	}
}

static int time_page(const char *text, char **argv)
{
	struct winsize size = { .ws_row = 24, .ws_col = 80 };
	double from = now();
	int fd;
	pid_t pid = forkpty(&fd, NULL, NULL, &size);

	if (pid < 0)
		return perror("forkpty"), 1;
	if (pid == 0)
		become(argv, false);
	bool shown = read_until(fd, text);
	double to = now();
	if (!shown)
		fprintf(stderr, "stopwatch: \"%s\" did not appear\n", text);
	if (write(fd, "q", 1) != 1 || !read_until(fd, NULL))
		fprintf(stderr, "stopwatch: the page did not close\n");
	close(fd);
	return finish(pid, from, to) || !shown;
}

int main(int argc, char **argv)
{
	if (argc > 3 && strcmp(argv[1], "--page") == 0)
		return time_page(argv[2], argv + 3);
	if (argc < 2)
		return fprintf(stderr, "usage: stopwatch [--page TEXT] COMMAND ...\n"),
		       2;
	double from = now();
	pid_t pid = fork();
	if (pid < 0)
		return perror("fork"), 1;
	if (pid == 0)
		become(argv + 1, true);
	return finish(pid, from, 0);
}
