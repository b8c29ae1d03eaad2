/* program.h - runs the program itself ($MOTHTALLY, else beside the test program's
 * folder) in an empty folder of its own. */
#ifndef TESTS_COMMAND_PROGRAM_H
#define TESTS_COMMAND_PROGRAM_H

#include "base/buf.h"

#include <fcntl.h>
#include <ftw.h>
#include <limits.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

enum { PROGRAM_ARGS_MAX = 32 };

struct ran {
	int status; /* exit status; -1: ended by a signal */
	struct buf out, err;
};

static inline void program_path(char *path, size_t size)
{
	const char *given = getenv("MOTHTALLY");
	char self[PATH_MAX - 16];

	if (given && *given) {
		snprintf(path, size, "%s", given);
		return;
	}
	ssize_t n = readlink("/proc/self/exe", self, sizeof self - 1);
	self[n > 0 ? n : 0] = '\0';
	for (int up = 0; up < 3 && strrchr(self, '/'); up++)
		*strrchr(self, '/') = '\0';
	snprintf(path, size, "%s/mothtally", self);
}

static inline int program_remove(
	const char *path, const struct stat *status, int what, struct FTW *where)
{
	(void)status, (void)what, (void)where;
	return remove(path);
}

/* An lp before the machine's own, which ends as `ends`, lines of shell, says: no test
 * reaches a printer. Its arguments go to lp-words, one a line. */
static inline int program_put_lp(const char *ends)
{
	FILE *f;

	mkdir("bin", 0700);
	f = fopen("bin/lp", "w");
	if (!f ||
		fprintf(f,
			"#!/bin/sh\nfor word; do echo \"$word\"; done >lp-words\n%s\n",
			ends) < 0 ||
		fclose(f) != 0)
		return -1;
	return chmod("bin/lp", 0700);
}

static inline int program_set_path(const char *folder)
{
	char path[PATH_MAX + 4096];

	snprintf(path, sizeof path, "%s/bin:%s", folder,
		getenv("PATH") ? getenv("PATH") : "/usr/bin:/bin");
	return setenv("PATH", path, 1);
}

/* Group set-up: a fresh folder, which becomes HOME, TMPDIR and the working folder. */
static inline int program_setup(void **state)
{
	static const char *const unset[] = { "MOTHTALLY_BOOK", "XDG_DATA_HOME",
		"LC_ALL", "LANGUAGE", "LC_MESSAGES" };
	char name[PATH_MAX];

	snprintf(name, sizeof name, "%s/mothtally-test-XXXXXX",
		getenv("TMPDIR") ? getenv("TMPDIR") : "/tmp");
	if (!mkdtemp(name) || chdir(name) != 0)
		return -1;
	for (size_t i = 0; i < sizeof unset / sizeof *unset; i++)
		unsetenv(unset[i]);
	setenv("LC_CTYPE", "C.UTF-8", 1);
	setenv("HOME", name, 1);
	setenv("TMPDIR", name, 1);
	*state = strdup(name);
	return program_set_path(name) == 0 ? program_put_lp("cat >lp-data") : -1;
}

static inline int program_teardown(void **state)
{
	int ok = chdir("/") == 0
			 ? nftw(*state, program_remove, 16, FTW_DEPTH | FTW_PHYS)
			 : -1;

	free(*state);
	return ok;
}

static inline void program_read(const char *file, struct buf *out)
{
	char bytes[4096];
	FILE *f = fopen(file, "rb");
	size_t n;

	buf_add(out, "");
	while (f && (n = fread(bytes, 1, sizeof bytes, f)) > 0)
		buf_add_n(out, bytes, n);
	if (f)
		fclose(f);
}

/* Words of `line` are divided by single blanks; ~ in a word stands for a blank. stdout
 * goes to the file `to` (NULL: is kept). Empties *r first. */
static inline void program_run_to(struct ran *r, const char *to, const char *line)
{
	char path[PATH_MAX], words[1024], *argv[PROGRAM_ARGS_MAX + 1] = { path };
	int status = 0, n = 1;

	buf_free(&r->out);
	buf_free(&r->err);
	program_path(path, sizeof path);
	snprintf(words, sizeof words, "%s", line);
	for (char *w = strtok(words, " "); w && n < PROGRAM_ARGS_MAX;
		w = strtok(NULL, " ")) {
		argv[n++] = w;
		for (; *w; w++)
			*w = *w == '~' ? ' ' : *w;
	}
	pid_t child = fork();
	if (child == 0) {
		if (!freopen("/dev/null", "r", stdin) ||
			!freopen(to ? to : "stdout.txt", "w", stdout) ||
			!freopen("stderr.txt", "w", stderr))
			_exit(126);
		execv(path, argv);
		_exit(127);
	}
	waitpid(child, &status, 0);
	r->status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
	program_read("stdout.txt", &r->out);
	program_read("stderr.txt", &r->err);
}

static inline void program_run(struct ran *r, const char *line)
{
	program_run_to(r, NULL, line);
}

static inline void program_forget(struct ran *r)
{
	buf_free(&r->out);
	buf_free(&r->err);
}

/* Words may stand on two lines: blanks and line ends are taken as one blank. */
static inline bool program_tells(const char *text, const char *words)
{
	struct buf flat = { 0 };

	for (; text && *text; text++) {
		bool blank = strchr(" \r\n", *text) != NULL;
		if (!blank || (flat.n && flat.text[flat.n - 1] != ' '))
			buf_add_n(&flat, blank ? " " : text, 1);
	}
	bool found = flat.text && strstr(flat.text, words);
	buf_free(&flat);
	return found;
}

static inline void program_write(const char *file, const char *text)
{
	FILE *f = fopen(file, "wb");

	if (f) {
		fputs(text, f);
		fclose(f);
	}
}

static inline void program_copy(const char *from, const char *to)
{
	struct buf bytes = { 0 };

	program_read(from, &bytes);
	FILE *f = fopen(to, "wb");
	if (!f || fwrite(bytes.text, 1, bytes.n, f) != bytes.n || fclose(f) != 0)
		fail_msg("%s: not copied", from);
	chmod(to, 0600);
	buf_free(&bytes);
}

static inline bool program_same(const char *a, const char *b)
{
	struct buf x = { 0 }, y = { 0 };

	program_read(a, &x);
	program_read(b, &y);
	bool same = x.n == y.n && memcmp(x.text, y.text, x.n) == 0;
	buf_free(&x);
	buf_free(&y);
	return same;
}

#endif
