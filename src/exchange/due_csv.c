#include "exchange/report_csv.h"

#include "base/csv.h"

void due_csv(const struct due *d, struct buf *out)
{
	char day[DAY_ISO_SIZE];

	buf_add(out, "farm,trap,what,kind,due,state,no_entry_until\r\n");
	for (size_t i = 0; i < d->n; i++) {
		const struct due_item *item = &d->items[i];

		day_iso(item->due, day);
		csv_add(out, item->farm_name, true);
		csv_add(out, item->label, false);
		csv_add(out, item->is_lure ? "lure" : "card", false);
		csv_add(out, item->kind_name, false);
		csv_add(out, day, false);
		csv_add(out, item->state_word, false);
		csv_add(out, item->no_entry_until, false);
		csv_end_row(out);
	}
}
