#define _GNU_SOURCE /* mkostemp, environ, POSIX_SPAWN_SETSID */

#include "printer.h"

#include "base/text.h"
#include "base/words.h"

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

/* A file that is gone when it is closed; -1: see errno. With files in place of pipes
 * neither side ever waits for the other. */
static int nameless_file(void)
{
	const char *folder = getenv("TMPDIR");
	struct buf name = { 0 };

	buf_addf(&name, "%s/mothtally-print-XXXXXX",
		folder && *folder ? folder : "/tmp");
	int fd = mkostemp(name.text, O_CLOEXEC);
	if (fd >= 0)
		unlink(name.text);
	buf_free(&name);
	return fd;
}

static bool fill(int fd, const struct buf *bytes)
{
	size_t at = 0;

	while (at < bytes->n) {
		ssize_t n = write(fd, bytes->text + at, bytes->n - at);

		if (n < 0 && errno != EINTR)
			return false;
		at += n > 0 ? (size_t)n : 0;
	}
	return lseek(fd, 0, SEEK_SET) == 0;
}

/* lp begins with the signals as they are for any program. */
static int spawn(struct printer *j, char *const argv[], int in)
{
	int session = j->without_terminal ? POSIX_SPAWN_SETSID : 0;
	posix_spawn_file_actions_t files;
	posix_spawnattr_t manner;
	sigset_t none, all;

	sigemptyset(&none);
	sigfillset(&all);
	posix_spawn_file_actions_init(&files);
	posix_spawn_file_actions_adddup2(&files, in, STDIN_FILENO);
	posix_spawn_file_actions_adddup2(&files, j->said, STDOUT_FILENO);
	posix_spawn_file_actions_adddup2(&files, j->said, STDERR_FILENO);
	posix_spawnattr_init(&manner);
	posix_spawnattr_setflags(&manner,
		(short)(session | POSIX_SPAWN_SETSIGDEF | POSIX_SPAWN_SETSIGMASK));
	posix_spawnattr_setsigdefault(&manner, &all);
	posix_spawnattr_setsigmask(&manner, &none);
	int fault = posix_spawnp(&j->lp, "lp", &files, &manner, argv, environ);
	posix_spawnattr_destroy(&manner);
	posix_spawn_file_actions_destroy(&files);
	return fault;
}

static bool spawn_fault(int fault, struct err *e)
{
	if (fault == ENOENT)
		return err_set(e, ERR_NOT_FOUND,
			_("nothing was printed: this machine has no lp, the program "
			  "that sends to a printer; write a file with sheet -o and "
			  "print that"));
	return err_set(e, ERR_BOOK, _("nothing was printed: lp did not start: %s"),
		strerror(fault));
}

/* The options of lp are POSIX's. */
static bool hand_over(struct printer *j, const struct papers *p, const char *name,
	int in, struct err *e)
{
	char *argv[] = { "lp", "-t", (char *)p->title, "-d", (char *)name, NULL };

	if (!name)
		argv[3] = NULL;
	if (!fill(in, &p->bytes))
		return err_set(e, ERR_BOOK,
			_("nothing was printed: no room for the page: %s"),
			strerror(errno));
	int fault = spawn(j, argv, in);
	if (fault)
		j->lp = 0;
	return !fault || spawn_fault(fault, e);
}

bool printer_send(
	struct printer *j, const struct papers *p, const char *name, struct err *e)
{
	int in = nameless_file();

	j->said = nameless_file();
	bool ok = in >= 0 && j->said >= 0
			  ? hand_over(j, p, name, in, e)
			  : err_set(e, ERR_BOOK,
				    _("nothing was printed: no file could be made "
				      "for the page: %s"),
				    strerror(errno));
	if (in >= 0)
		close(in);
	if (!ok && j->said >= 0)
		close(j->said);
	return ok;
}

static void read_said(int fd, char says[static PRINTER_SAYS_BYTES])
{
	char line[PRINTER_SAYS_BYTES];
	ssize_t n = pread(fd, line, sizeof line - 1, 0);

	line[n > 0 ? n : 0] = '\0';
	line[strcspn(line, "\n")] = '\0';
	text_copy(says, PRINTER_SAYS_BYTES, line);
	text_trim(says);
}

enum printer_state printer_look(
	struct printer *j, bool wait, char says[static PRINTER_SAYS_BYTES])
{
	int status = 0;
	pid_t ended;

	says[0] = '\0';
	do
		ended = waitpid(j->lp, &status, wait ? 0 : WNOHANG);
	while (ended < 0 && errno == EINTR);
	if (ended == 0)
		return PRINTER_BUSY;
	read_said(j->said, says);
	close(j->said);
	j->lp = 0;
	return ended > 0 && WIFEXITED(status) && WEXITSTATUS(status) == 0
		       ? PRINTER_TOOK
		       : PRINTER_REFUSED;
}
