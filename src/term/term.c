#define _GNU_SOURCE /* ppoll */

#include "parts.h"

#include "base/words.h"

#include <curses.h>
#include <term.h> /* with it struct termios */

#include <ctype.h>
#include <errno.h>
#include <poll.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <time.h>
#include <unistd.h>

/* SIGTSTP is first: it is the one that is let go and caught again. */
static const int caught[] = { SIGTSTP, SIGTERM, SIGHUP, SIGINT, SIGQUIT, SIGWINCH,
	SIGCONT };
enum { CAUGHT = sizeof caught / sizeof *caught };
enum { ESC_MS = 25 };

static struct sigaction before[CAUGHT];
static volatile sig_atomic_t leave_came, stop_came, redraw_came;
static SCREEN *screen;
static bool gone;

static void on_signal(int sig)
{
	if (sig == SIGTSTP)
		stop_came = 1;
	else if (sig == SIGWINCH || sig == SIGCONT)
		redraw_came = 1;
	else
		leave_came = 1;
}

/* Without SA_RESTART: a waiting read must notice. What the caller ignores (nohup, a
 * shell without job control) stays ignored. */
static void catch_one(int i)
{
	struct sigaction mine = { .sa_handler = on_signal };

	sigemptyset(&mine.sa_mask);
	if (before[i].sa_handler != SIG_IGN)
		sigaction(caught[i], &mine, NULL);
}

static void catch_signals(void)
{
	for (int i = 0; i < CAUGHT; i++)
		catch_one(i);
}

/* Once leaving, a second signal (the shell's and the kernel's SIGHUP come in pairs)
 * must not cut short what is put away after this. */
static void release_signals(void)
{
	if (term_leaving())
		return;
	for (int i = 0; i < CAUGHT; i++)
		sigaction(caught[i], &before[i], NULL);
}

/* curses takes the size from LINES and COLUMNS, which may be stale. */
static void fit_size(void)
{
	struct winsize w = { 0 };

	if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &w) != 0 || w.ws_row == 0 || w.ws_col == 0)
		return;
	if (is_term_resized(w.ws_row, w.ws_col))
		resize_term(w.ws_row, w.ws_col);
}

static bool term_known(struct err *e)
{
	const char *name = getenv("TERM");
	int found = 0;

	if (!name || !*name)
		return err_set(e, ERR_USAGE,
			_("TERM is not set; it names the kind of terminal, "
			  "such as xterm or vt100"));
	if (setupterm(NULL, STDOUT_FILENO, &found) != OK)
		return err_set(e, ERR_USAGE,
			_("the terminal \"%.40s\" in TERM is not known here; "
			  "xterm or vt100 will do for most"),
			name);
	char *place_cursor = tigetstr("cup");
	del_curterm(cur_term);
	if (!place_cursor || place_cursor == (char *)-1)
		return err_set(e, ERR_USAGE,
			_("the terminal \"%.40s\" in TERM cannot place its cursor; "
			  "use a command, such as mothtally week"),
			name);
	return true;
}

/* The old terminals knew no UTF-8, and who sets TERM to one of them wants no more. */
static bool ascii_terminal(void)
{
	const char *name = getenv("TERM");

	return name[0] == 'v' && name[1] == 't' && isdigit((unsigned char)name[2]);
}

/* Ctrl-S must not freeze the pages. curses takes the mode over and gives the one of
 * before back to the shell. */
static void without_flow_control(void)
{
	struct termios mode;

	if (tcgetattr(STDIN_FILENO, &mode) != 0)
		return;
	mode.c_iflag &= ~(tcflag_t)(IXON | IXOFF);
	if (tcsetattr(STDIN_FILENO, TCSADRAIN, &mode) == 0)
		def_prog_mode();
}

static void set_modes(void)
{
	cbreak();
	noecho();
	nonl();
	without_flow_control();
	typeahead(-1); /* a frame is sent whole */
	keypad(stdscr, TRUE);
	keys_define();
	if (!getenv("ESCDELAY"))
		set_escdelay(ESC_MS);
	timeout(ESC_MS); /* the rest of a character that came in parts */
}

bool term_open(struct term_look look, struct err *e)
{
	static bool at_exit;

	if (!isatty(STDIN_FILENO) || !isatty(STDOUT_FILENO))
		return err_set(e, ERR_USAGE,
			_("the pages need a terminal; without one use a command, "
			  "such as mothtally week"));
	if (!term_known(e))
		return false;
	for (int i = 0; i < CAUGHT; i++)
		sigaction(caught[i], NULL, &before[i]);
	leave_came = stop_came = redraw_came = gone = 0;
	screen = newterm(NULL, stdout, stdin);
	if (!screen)
		return err_set(e, ERR_USAGE, _("the terminal could not be set up"));
	catch_signals();
	set_modes();
	fit_size();
	look.utf8 = look.utf8 && !ascii_terminal();
	paint_open(look);
	if (!at_exit)
		at_exit = atexit(term_close) == 0;
	return true;
}

void term_close(void)
{
	if (!screen)
		return;
	endwin();
	delscreen(screen);
	screen = NULL;
	release_signals();
}

void term_size(int *rows, int *cols)
{
	getmaxyx(stdscr, *rows, *cols);
}

void term_show(const struct canvas *c)
{
	paint_canvas(c);
	refresh();
}

bool term_leaving(void)
{
	return leave_came || gone;
}

static void stop_here(void)
{
	struct sigaction usual = { .sa_handler = SIG_DFL };

	stop_came = 0;
	endwin();
	sigaction(SIGTSTP, &usual, NULL);
	raise(SIGTSTP);
	catch_one(0);
	redraw_came = 1;
}

/* After a new size, or after a shell had the terminal in between. */
static struct input start_over(void)
{
	redraw_came = 0;
	reset_prog_mode();
	clearok(curscr, TRUE);
	fit_size();
	return (struct input){ INPUT_RESIZE, 0 };
}

/* What is there already, signals before keys. */
static struct input pending(void)
{
	if (term_leaving())
		return (struct input){ INPUT_LEAVE, 0 };
	if (stop_came)
		stop_here();
	return redraw_came ? start_over() : keys_next();
}

/* Waits for a key or a signal. Signals are held back until the wait has begun: one
 * that came just before it would go unnoticed until the next key. */
static void wait_for_input(int wait_ms)
{
	struct timespec wait = { wait_ms / 1000, wait_ms % 1000 * 1000000L };
	struct pollfd in = { .fd = STDIN_FILENO, .events = POLLIN };
	sigset_t held, usual;

	sigemptyset(&held);
	for (int i = 0; i < CAUGHT; i++)
		sigaddset(&held, caught[i]);
	sigprocmask(SIG_BLOCK, &held, &usual);
	if (!leave_came && !stop_came && !redraw_came &&
		ppoll(&in, 1, wait_ms < 0 ? NULL : &wait, &usual) > 0)
		gone = (in.revents & (POLLHUP | POLLERR | POLLNVAL)) != 0;
	sigprocmask(SIG_SETMASK, &usual, NULL);
}

struct input term_read(int wait_ms)
{
	struct input in = pending();

	if (in.kind == INPUT_NONE) {
		wait_for_input(wait_ms);
		in = pending();
	}
	return in;
}
