/* week.c - the command that tells the week, trap by trap. */
#include "answers/verdicts.h"
#include "command/command.h"
#include "exchange/report_csv.h"
#include "report.h"

#include <stdlib.h>

static void add_csv(const struct report *r, struct buf *out)
{
	struct verdict_rows rows = { 0 };

	verdicts_of(&r->log, r->farm, r->pest, r->log.today, &rows);
	week_csv(&r->log, &rows, out);
	free(rows.items);
}

bool command_week(const struct context *ctx, int argc, char **argv, struct err *e)
{
	const char *farm = NULL, *pest = NULL;
	bool csv = false;
	const struct option_row rows[] = {
		{ "farm", &farm, NULL, 0 },
		{ "pest", &pest, NULL, 0 },
		{ "csv", NULL, &csv, 0 },
		{ 0 },
	};
	struct report r = { 0 };
	struct buf text = { 0 };
	struct args a = { .rows = rows };

	if (!args_read(argc, argv, &a, e))
		return false;
	bool ok = report_open(ctx, farm, pest, &r, e);
	if (ok && csv)
		add_csv(&r, &text);
	else if (ok)
		report_week(&r, out_cols(), &text);
	ok = ok && out_text(&text, ctx->utf8 || csv, e);
	report_close(&r);
	buf_free(&text);
	return ok;
}
