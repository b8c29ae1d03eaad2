#include "base/words.h"
#include "command/command.h"
#include "report.h"

#include <string.h>

static bool read_paper(const char *word, enum paper *out, struct err *e)
{
	if (word && strcmp(word, "a4") != 0 && strcmp(word, "letter") != 0)
		return err_set(
			e, ERR_USAGE, _("--paper is a4 or letter, not \"%s\""), word);
	*out = word && strcmp(word, "letter") == 0 ? PAPER_LETTER : PAPER_A4;
	return true;
}

static bool has_farm(const struct report *r, struct err *e)
{
	return r->log.farms.n > 0 || err_set(e, ERR_NOT_FOUND,
					     _("the book holds no farm yet, so there "
					       "is no sheet; import traps first"));
}

bool command_sheet(const struct context *ctx, int argc, char **argv, struct err *e)
{
	const char *farm = NULL, *paper = NULL, *file = NULL;
	struct sheet_form form = { .utf8 = ctx->utf8 };
	const struct option_row rows[] = {
		{ "farm", &farm, NULL, 0 },
		{ "blank", NULL, &form.blank, 0 },
		{ "paper", &paper, NULL, 0 },
		{ "o", &file, NULL, 'o' },
	};
	struct report r = { 0 };
	struct buf text = { 0 };
	size_t n_rest;

	if (!args_read(argc, argv, rows, sizeof rows / sizeof *rows, NULL, 0, &n_rest,
		    e) ||
		!read_paper(paper, &form.paper, e))
		return false;
	bool ok = report_open(ctx, farm, NULL, &r, e) && has_farm(&r, e) &&
		  report_sheets(&r, form, &text, e);
	if (ok && file)
		ok = out_file(file, &text, e);
	else if (ok)
		ok = out_print(&text, e);
	report_close(&r);
	buf_free(&text);
	return ok;
}
