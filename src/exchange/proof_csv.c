#include "exchange/report_csv.h"

#include "base/csv.h"

void proof_csv(const struct proof_case *cases, size_t n, struct buf *out)
{
	buf_add(out, "id,source,printed,remark,rule,input,expected,ours,holds\r\n");
	for (size_t i = 0; i < n; i++) {
		const struct proof_case *c = &cases[i];

		csv_add(out, c->id, true);
		csv_add(out, c->source, false);
		csv_add(out, c->printed, false);
		csv_add(out, c->remark, false);
		csv_add(out, c->rule, false);
		csv_add(out, c->input, false);
		csv_add(out, c->expected, false);
		csv_add(out, c->ours, false);
		csv_add(out, c->holds ? "yes" : "no", false);
		csv_end_row(out);
	}
}
