/* args.c - the options and words of a command, and its help. */
#include "base/words.h"
#include "command/command.h"
#include "exchange/exchange.h"
#include "paper/ascii.h"

#include <stdint.h>
#include <string.h>

enum { HELP_COLS = 78 };

/* What reading a command's arguments goes along with. */
struct reading {
	const char *command;
	char **argv;
	int argc, at;
	struct args *args;
	size_t n_rows;
	uint32_t seen; /* bit i: rows[i] was given */
};

static void add_kinds(struct buf *out)
{
	buf_addf(out, "\n%s\n", _("KIND is one of"));
	for (size_t i = 0; kinds[i]; i++) {
		struct buf line = { 0 };

		buf_addf(&line, "%s: %s", kinds[i]->name, _(kinds[i]->help));
		paper_wrap(out, line.text, 2, HELP_COLS);
		buf_free(&line);
	}
}

static void add_help(const struct command *c, struct buf *out)
{
	struct buf line = { 0 };

	buf_addf(&line, "mothtally %s %s", c->name, c->synopsis);
	paper_wrap(out, line.text, 0, HELP_COLS);
	buf_add(out, "\n");
	paper_wrap(out, _(c->help), 0, HELP_COLS);
	if (strstr(c->synopsis, "KIND"))
		add_kinds(out);
	buf_addf(out, "\n%s\n  %s\n", _("For example"), c->example);
	buf_free(&line);
}

/* False as args_read has it: nothing is left to do. */
static bool print_help(const char *name, struct err *e)
{
	const struct command *c = commands;
	struct buf text = { 0 };

	while (c->name && strcmp(c->name, name) != 0)
		c++;
	if (c->name)
		add_help(c, &text);
	if (out_print(&text, e) && e)
		*e = (struct err){ ERR_NONE, "" };
	buf_free(&text);
	return false;
}

/* "--farm, --csv and --help" */
static void name_options(const struct reading *r, struct buf *out)
{
	for (size_t i = 0; i < r->n_rows; i++)
		buf_addf(out, "%s%s%s", i ? ", " : "",
			r->args->rows[i].name[1] ? "--" : "-", r->args->rows[i].name);
	buf_addf(out, "%s--help", r->n_rows ? _(" and ") : "");
}

static bool unknown_option(const struct reading *r, const char *given, struct err *e)
{
	struct buf there = { 0 };

	if (strncmp(given, "--book", 6) == 0 || strncmp(given, "--today", 7) == 0)
		return err_set(e, ERR_USAGE,
			_("%s stands before the command: mothtally %s ... %s"), given,
			given, r->command);
	name_options(r, &there);
	err_set(e, ERR_USAGE, _("\"%s\" is no option of %s; it takes %s"), given,
		r->command, there.text);
	buf_free(&there);
	return false;
}

/* Takes the option of row i; inline_value (NULL: none) stood behind = or the letter. */
static bool take(struct reading *r, size_t i, const char *inline_value, struct err *e)
{
	const struct option_row *row = &r->args->rows[i];
	const char *given = r->argv[r->at];

	if (r->seen >> i & 1)
		return err_set(
			e, ERR_USAGE, _("%s is given twice; give it once"), given);
	r->seen |= UINT32_C(1) << i;
	if (row->flag) {
		*row->flag = true;
		return !inline_value ||
		       err_set(e, ERR_USAGE, _("\"%s\": --%s takes no value"), given,
			       row->name);
	}
	if (!inline_value && r->at + 1 >= r->argc)
		return err_set(e, ERR_USAGE, _("%s wants a value after it"), given);
	*row->value = inline_value ? inline_value : r->argv[++r->at];
	return true;
}

static bool take_long(struct reading *r, struct err *e)
{
	const char *name = r->argv[r->at] + 2;
	size_t n = strcspn(name, "=");

	for (size_t i = 0; i < r->n_rows; i++)
		if (strlen(r->args->rows[i].name) == n &&
			strncmp(r->args->rows[i].name, name, n) == 0)
			return take(r, i, name[n] ? name + n + 1 : NULL, e);
	return unknown_option(r, r->argv[r->at], e);
}

static bool take_letter(struct reading *r, struct err *e)
{
	const char *given = r->argv[r->at];

	for (size_t i = 0; i < r->n_rows; i++)
		if (r->args->rows[i].letter && r->args->rows[i].letter == given[1])
			return take(r, i, given[2] ? given + 2 : NULL, e);
	return unknown_option(r, given, e);
}

static bool keep(const struct reading *r, struct err *e)
{
	struct args *a = r->args;

	if (a->n_rest == a->max)
		return err_set(e, ERR_USAGE,
			_("%s has no use for \"%s\"; mothtally %s --help tells what it "
			  "takes"),
			r->command, r->argv[r->at], r->command);
	a->rest[a->n_rest++] = r->argv[r->at];
	return true;
}

bool args_read(int argc, char **argv, struct args *a, struct err *e)
{
	struct reading r = { argv[0], argv, argc, 1, a, 0, 0 };
	bool options = true;

	while (a->rows && a->rows[r.n_rows].name)
		r.n_rows++;
	for (; r.at < argc; r.at++) {
		const char *given = argv[r.at];
		bool ok;

		if (options && strcmp(given, "--help") == 0)
			return print_help(argv[0], e);
		if (options && strcmp(given, "--") == 0) {
			options = false;
			continue;
		}
		if (!options || given[0] != '-' || !given[1])
			ok = keep(&r, e);
		else if (given[1] == '-')
			ok = take_long(&r, e);
		else
			ok = take_letter(&r, e);
		if (!ok)
			return false;
	}
	return true;
}
