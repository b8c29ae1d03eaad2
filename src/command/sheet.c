/* sheet.c - the command that sets the weekly sheet. */
#include "base/words.h"
#include "command/command.h"
#include "papers.h"
#include "report.h"

static bool has_farm(const struct report *r, struct err *e)
{
	return r->log.farms.n > 0 || err_set(e, ERR_NOT_FOUND,
					     _("the book holds no farm yet, so there "
					       "is no sheet; import traps first"));
}

bool papers_sheet(const struct context *ctx, int argc, char **argv, struct papers *p,
	struct err *e)
{
	const char *farm = NULL;
	struct sheet_form form = { .utf8 = ctx->utf8 };
	const struct option_row rows[] = {
		{ "farm", &farm, NULL, 0 },
		{ "blank", NULL, &form.blank, 0 },
		{ "paper", &p->paper, NULL, 0 },
		{ "format", &p->format, NULL, 0 },
		{ "o", &p->file, NULL, 'o' },
		{ 0 },
	};
	struct report r = { 0 };
	struct args a = { .rows = rows };

	if (!args_read(argc, argv, &a, e) || !papers_choose(p, e))
		return false;
	bool ok = report_open(ctx, farm, NULL, &r, e) && has_farm(&r, e) &&
		  papers_settle(p, r.book, e);
	form.paper = p->size;
	ok = ok && report_sheets(&r, &form, p, e);
	report_close(&r);
	return ok;
}

bool command_sheet(const struct context *ctx, int argc, char **argv, struct err *e)
{
	struct papers p = { 0 };
	bool ok = papers_sheet(ctx, argc, argv, &p, e) && papers_write(&p, e);

	papers_free(&p);
	return ok;
}
