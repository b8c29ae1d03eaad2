#include "base/column.h"
#include "base/csv.h"
#include "exchange/report_csv.h"

#include <stdio.h>

static void add_number(struct buf *out, double value)
{
	char text[VALUE_BYTES];

	csv_add(out, value_number.write(NULL, &value, text), false);
}

void dd_csv(const struct dd_table *t, struct buf *out)
{
	char text[VALUE_BYTES];

	buf_add(out, "date,min,max,dd,sum,missing\r\n");
	for (size_t i = 0; i < t->n; i++) {
		const struct dd_line *l = &t->lines[i];

		day_iso(l->day, text);
		csv_add(out, text, true);
		add_number(out, l->min);
		add_number(out, l->max);
		add_number(out, l->dd);
		add_number(out, l->sum);
		snprintf(text, sizeof text, "%d", (int)l->missing);
		csv_add(out, text, false);
		csv_end_row(out);
	}
}
