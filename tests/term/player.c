#include "term/player.h"

#include <locale.h>
#include <poll.h>
#include <pty.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <unistd.h>
#include <utmp.h>

void tell(int told, struct input in)
{
	struct told t = { .in = in };

	term_size(&t.rows, &t.cols);
	if (write(told, &t, sizeof t) != sizeof t)
		_exit(9);
}

static void run_child(const struct setting *s, int told)
{
	struct err e = { 0 };

	/* The tests themselves may run under nohup or in the background. */
	signal(SIGHUP, SIG_DFL);
	signal(SIGINT, SIG_DFL);
	signal(SIGQUIT, SIG_DFL);
	if (s->term)
		setenv("TERM", s->term, 1);
	else
		unsetenv("TERM");
	setlocale(LC_CTYPE, s->look.utf8 ? "C.UTF-8" : "C");
	if (term_open(s->look, &e)) {
		s->play(told);
		term_close();
		if (s->hangs_up_after)
			raise(SIGHUP);
		_exit(0);
	}
	if (write(told, e.text, strlen(e.text)) < 0)
		_exit(9);
	_exit(err_status(e.kind));
}

struct session start(const struct setting *s)
{
	struct winsize size = { .ws_row = ROWS, .ws_col = COLS };
	struct session now = { 0 };
	int ends[2], slave;

	assert_int_equal(pipe(ends), 0);
	if (openpty(&now.tty, &slave, NULL, NULL, &size) != 0)
		skip(); /* a bare chroot has no /dev/pts */
	assert_int_equal(tcgetattr(slave, &now.before), 0);
	now.pid = fork();
	assert_true(now.pid >= 0);
	if (now.pid == 0) {
		close(now.tty);
		close(ends[0]);
		login_tty(slave);
		run_child(s, ends[1]);
	}
	close(slave);
	close(ends[1]);
	now.told = ends[0];
	return now;
}

bool readable(int fd, int wait_ms)
{
	struct pollfd p = { .fd = fd, .events = POLLIN };

	return poll(&p, 1, wait_ms) > 0;
}

struct told hear(struct session *s, const char *why)
{
	struct told t = { 0 };

	if (!readable(s->told, PATIENCE_MS) || read(s->told, &t, sizeof t) != sizeof t)
		fail_msg("the program told nothing: %s", why);
	return t;
}

void type(struct session *s, const char *bytes)
{
	size_t n = strlen(bytes);

	assert_int_equal(write(s->tty, bytes, n), n);
}

size_t seen(struct session *s, char out[OUT_MAX])
{
	size_t n = 0;

	while (n < OUT_MAX - 1 && readable(s->tty, 0)) {
		ssize_t got = read(s->tty, out + n, OUT_MAX - 1 - n);
		if (got <= 0)
			break;
		n += (size_t)got;
	}
	out[n] = '\0';
	return n;
}

int finish(struct session *s)
{
	int status = 0;

	for (int waited = 0; waitpid(s->pid, &status, WNOHANG) == 0; waited += 10) {
		if (waited > PATIENCE_MS)
			kill(s->pid, SIGKILL);
		poll(NULL, 0, 10);
	}
	if (s->tty >= 0)
		close(s->tty);
	close(s->told);
	return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

void play_keys(int told)
{
	struct input in = { INPUT_RESIZE, 0 };
	struct canvas c = { 0 };

	canvas_size(&c, ROWS, COLS);
	term_show(&c);
	for (; in.kind != INPUT_LEAVE; in = term_read(-1))
		if (in.kind != INPUT_NONE)
			tell(told, in);
	if (term_leaving())
		tell(told, in);
	canvas_free(&c);
}
