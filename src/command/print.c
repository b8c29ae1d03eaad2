/* print.c - the command that prints a sheet or season page. */
#include "base/words.h"
#include "command/command.h"
#include "papers.h"
#include "printer.h"

#include <string.h>

/* What can be printed: the words of the command that sets it. */
static const struct printable {
	const char *name;
	bool (*make)(const struct context *ctx, int argc, char **argv, struct papers *p,
		struct err *e);
} printables[] = {
	{ "sheet", papers_sheet },
	{ "season", papers_season },
};

static const struct printable *find(const char *name)
{
	for (size_t i = 0; i < sizeof printables / sizeof *printables; i++)
		if (strcmp(printables[i].name, name) == 0)
			return &printables[i];
	return NULL;
}

/* Where in argv what is printed is named; argc: nowhere. */
static int named_at(int argc, char **argv)
{
	int i = 1;

	while (i < argc && !find(argv[i]))
		i += strcmp(argv[i], "--printer") == 0 ? 2 : 1;
	return i < argc ? i : argc;
}

static bool tell(struct printer *j, struct err *e)
{
	char says[PRINTER_SAYS_BYTES];
	struct buf line = { 0 };

	if (printer_look(j, true, says) == PRINTER_REFUSED)
		return err_set(e, ERR_BOOK, _("nothing was printed: lp refused: %s"),
			says[0] ? says : _("it did not say why"));
	if (says[0])
		out_sentence(&line, _("Given to the printer: %s"), says);
	else
		out_sentence(&line, _("Given to the printer."));
	bool ok = out_print(&line, e);
	buf_free(&line);
	return ok;
}

bool command_print(const struct context *ctx, int argc, char **argv, struct err *e)
{
	const char *printer = NULL;
	const struct option_row rows[] = { { "printer", &printer, NULL, 0 }, { 0 } };
	struct args a = { .rows = rows };
	char sheet[] = "sheet", *usual[] = { sheet, NULL };
	struct papers p = { .to_printer = true };
	struct printer job = { 0 };
	int at = named_at(argc, argv);

	if (!args_read(at, argv, &a, e))
		return false;
	if (at == argc)
		argv = usual, argc = 1, at = 0;
	bool ok = find(argv[at])->make(ctx, argc - at, argv + at, &p, e) &&
		  printer_send(&job, &p, printer, e) && tell(&job, e);
	papers_free(&p);
	return ok;
}
