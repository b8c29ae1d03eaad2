/* main.c - the command line up to the command, and the exit status. */
#include "answers/say.h"
#include "base/text.h"
#include "base/words.h"
#include "command/clock.h"
#include "command/command.h"
#include "paper/ascii.h"

#include <fcntl.h>
#include <langinfo.h>
#include <limits.h>
#include <locale.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

enum { HELP_COLS = 78 };

/* A file that the program opens must never land on a standard stream that it was
 * started without. Writing to a missing stdout still fails: it is open to read. */
static bool hold_streams(void)
{
	int fd;

	do
		fd = open("/dev/null", O_RDONLY);
	while (fd >= 0 && fd <= STDERR_FILENO);
	return fd >= 0 && close(fd) == 0;
}

/* Where make installs the catalogues, or where MOTHTALLY_LOCALE says. */
static const char *locale_folder(void)
{
	const char *given = getenv("MOTHTALLY_LOCALE");

	return given && *given ? given : LOCALEDIR;
}

/* Text is UTF-8 inside whatever the locale. True if the terminal shows it as such. */
static bool set_language(void)
{
	setlocale(LC_MESSAGES, "");
	bool utf8 =
		setlocale(LC_CTYPE, "") && strcmp(nl_langinfo(CODESET), "UTF-8") == 0;

	if (!utf8)
		setlocale(LC_CTYPE, "C.UTF-8"); /* widths of characters need one */
	bindtextdomain("mothtally", locale_folder());
	bind_textdomain_codeset("mothtally", "UTF-8");
	textdomain("mothtally");
	words_set_numbers();
	return utf8;
}

/* The login name; only what the book takes as a scout's name. */
static void login_name(char out[static SCOUT_BYTES])
{
	const char *name = getenv("LOGNAME");

	if (!name || !*name)
		name = getenv("USER");
	if (!name || !text_valid(name, strlen(name), NULL))
		name = "";
	text_copy(out, SCOUT_BYTES, name);
}

/* What goes on over a line stands deeper than the command's name. */
static void add_command(const struct command *c, struct buf *out)
{
	struct buf line = { 0 }, wrapped = { 0 };

	buf_addf(&line, "%s %s", c->name, c->synopsis);
	paper_wrap(&wrapped, line.text, 4, HELP_COLS);
	buf_add(out, wrapped.text + 2);
	paper_wrap(out, _(c->help), 6, HELP_COLS);
	buf_free(&line);
	buf_free(&wrapped);
}

static bool print_help(bool utf8, struct err *e)
{
	struct buf text = { 0 };

	buf_add(&text,
		"mothtally [--book FILE] [--today YYYY-MM-DD] [COMMAND ...]\n\n");
	buf_add(&text,
		_("A log of pheromone-trap counts. Without a command it opens its "
		  "pages.\n\n"));
	for (const struct command *c = commands; c->name; c++)
		add_command(c, &text);
	buf_add(&text,
		_("\nA command with --help tells more. For example:\n"
		  "  mothtally --book orchard.db --today 2026-07-21 week --pest CM\n\n"
		  "Cautions\n"));
	for (size_t i = 0; say_caution(i); i++)
		paper_wrap(&text, say_caution(i), 2, HELP_COLS);
	bool ok = out_text(&text, utf8, e);
	buf_free(&text);
	return ok;
}

static bool print_version(struct err *e)
{
	struct buf text = { 0 };

	buf_add(&text, "mothtally " VERSION "\n");
	bool ok = out_print(&text, e);
	buf_free(&text);
	return ok;
}

static bool unknown_command(const char *name, struct err *e)
{
	struct buf there = { 0 };

	for (const struct command *c = commands; c->name; c++)
		buf_addf(&there, "%s%s", c == commands ? "" : ", ", c->name);
	err_set(e, ERR_USAGE, _("\"%s\" is no command; there are %s"), name,
		there.text);
	buf_free(&there);
	return false;
}

static bool run(const struct context *ctx, int argc, char **argv, struct err *e)
{
	if (argc == 0 && !ctx->out_is_terminal)
		return err_set(e, ERR_USAGE,
			_("the pages need a terminal; name a command instead "
			  "(mothtally --help lists them)"));
	if (argc == 0)
		return pages_run(ctx, NULL, e);
	for (const struct command *c = commands; c->name; c++)
		if (strcmp(c->name, argv[0]) == 0)
			return c->run(ctx, argc, argv, e);
	return unknown_command(argv[0], e);
}

/* What stands before the command. */
struct opening {
	const char *book, *today; /* NULL: not given */
	bool help, version;
	int first; /* index of the command in argv */
};

/* The value of option `name` at argv[*at], as --name=V or --name V; NULL: it is not. */
static const char *value_of(
	const char *name, int argc, char **argv, int *at, bool *lacks)
{
	size_t n = strlen(name);

	if (strncmp(argv[*at], name, n) != 0 || (argv[*at][n] && argv[*at][n] != '='))
		return NULL;
	if (argv[*at][n])
		return argv[*at] + n + 1;
	*lacks = *at + 1 >= argc;
	return *lacks ? "" : argv[++*at];
}

static bool read_opening(int argc, char **argv, struct opening *o, struct err *e)
{
	for (o->first = 1; o->first < argc && argv[o->first][0] == '-'; o->first++) {
		const char *given = argv[o->first], *value;
		bool lacks = false;

		if (strcmp(given, "--help") == 0)
			o->help = true;
		else if (strcmp(given, "--version") == 0)
			o->version = true;
		else if ((value = value_of("--book", argc, argv, &o->first, &lacks)))
			o->book = value;
		else if ((value = value_of("--today", argc, argv, &o->first, &lacks)))
			o->today = value;
		else
			return err_set(e, ERR_USAGE,
				_("\"%s\" is no option of mothtally; it takes --book, "
				  "--today, --help and --version before the command"),
				given);
		if (lacks)
			return err_set(
				e, ERR_USAGE, _("%s wants a value after it"), given);
	}
	return true;
}

static bool fill_context(
	const struct opening *o, struct context *ctx, char *path, struct err *e)
{
	ctx->today_given = o->today;
	if (!o->today)
		ctx->today = clock_day();
	else if (!day_parse(o->today, &ctx->today))
		return err_set(e, ERR_USAGE,
			_("--today wants a date such as 2026-07-21, not \"%s\""),
			o->today);
	if (ctx->today == DAY_NONE)
		return err_set(e, ERR_USAGE,
			_("the clock shows no usable date; give one with --today "
			  "YYYY-MM-DD"));
	ctx->book_path = o->book ? o->book : path;
	if (!o->book && !book_path(getenv("MOTHTALLY_BOOK"), getenv("XDG_DATA_HOME"),
				getenv("HOME"), path, PATH_MAX, e))
		return false;
	/* Of what is in the memory alone nothing is left in the end. */
	return (*ctx->book_path && strcmp(ctx->book_path, ":memory:") != 0) ||
	       err_set(e, ERR_USAGE, _("%s wants the name of a file"),
		       o->book ? "--book" : "MOTHTALLY_BOOK");
}

static bool start(int argc, char **argv, bool utf8, struct err *e)
{
	struct opening o = { 0 };
	char path[PATH_MAX] = "", who[SCOUT_BYTES];
	struct context ctx = {
		.settings = getenv("MOTHTALLY_SETTINGS"), .who = who, .utf8 = utf8
	};

	if (!read_opening(argc, argv, &o, e))
		return false;
	if (o.help)
		return print_help(utf8, e);
	if (o.version)
		return print_version(e);
	login_name(who);
	ctx.out_is_terminal = isatty(STDIN_FILENO) && isatty(STDOUT_FILENO);
	return fill_context(&o, &ctx, path, e) &&
	       run(&ctx, argc - o.first, argv + o.first, e);
}

static void complain(const char *text, bool utf8)
{
	struct buf ascii = { 0 };

	if (*text)
		fprintf(stderr, "mothtally: %s\n",
			utf8 ? text : paper_ascii(text, &ascii));
	buf_free(&ascii);
}

int main(int argc, char **argv)
{
	struct err e = { ERR_NONE, "" };

	if (!hold_streams())
		return err_status(ERR_BOOK);
	signal(SIGPIPE, SIG_IGN);
	signal(SIGXFSZ, SIG_IGN); /* a write that fails says so; it must not kill */
	bool utf8 = set_language();
	if (start(argc, argv, utf8, &e) || e.kind == ERR_NONE)
		return 0;
	complain(e.text, utf8);
	return err_status(e.kind);
}
