/* due.c - the command that tells which lures and cards are due. */
#include "answers/due.h"
#include "command/command.h"
#include "exchange/report_csv.h"
#include "report.h"

static void add_csv(const struct report *r, struct buf *out)
{
	struct due due = { 0 };

	due_of(&r->log, r->farm, &due);
	due_csv(&due, out);
	due_free(&due);
}

bool command_due(const struct context *ctx, int argc, char **argv, struct err *e)
{
	const char *farm = NULL;
	bool csv = false;
	const struct option_row rows[] = {
		{ "farm", &farm, NULL, 0 },
		{ "csv", NULL, &csv, 0 },
		{ 0 },
	};
	struct report r = { 0 };
	struct buf text = { 0 };
	struct args a = { .rows = rows };

	if (!args_read(argc, argv, &a, e))
		return false;
	bool ok = report_open(ctx, farm, NULL, &r, e);
	if (ok && csv)
		add_csv(&r, &text);
	else if (ok)
		ok = report_due(&r, out_cols(), &text, e);
	ok = ok && out_text(&text, ctx->utf8 || csv, e);
	report_close(&r);
	buf_free(&text);
	return ok;
}
