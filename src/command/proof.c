/* proof.c - the command that tries the judgement on published values. */
#include "answers/proof.h"
#include "base/words.h"
#include "command/command.h"
#include "exchange/report_csv.h"
#include "paper/proof.h"

#include <stdlib.h>

static bool judge(const struct proof_case *cases, size_t n, struct err *e)
{
	for (size_t i = 0; i < n; i++)
		if (!cases[i].holds)
			return err_set(e, ERR_BOOK,
				_("not every published case holds: do not rely on this "
				  "program's verdicts (%s: %s)"),
				cases[i].id, cases[i].input);
	return true;
}

bool command_proof(const struct context *ctx, int argc, char **argv, struct err *e)
{
	bool csv = false;
	const struct option_row rows[] = { { "csv", NULL, &csv, 0 }, { 0 } };
	struct args a = { .rows = rows };
	struct proof_case *cases = NULL;
	struct buf text = { 0 };

	if (!args_read(argc, argv, &a, e))
		return false;
	if (csv)
		words_plain();
	size_t n = proof_run(&cases);
	const struct proof_text all = { cases, n, proof_legend() };
	if (csv)
		proof_csv(cases, n, &text);
	else
		paper_proof(&all, out_cols(), &text);
	bool ok = out_text(&text, ctx->utf8 || csv, e) && judge(cases, n, e);
	buf_free(&text);
	free(cases);
	return ok;
}
