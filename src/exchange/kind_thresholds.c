#include "thresholds_parts.h"

#include "base/words.h"

#include <stdlib.h>

static bool thresholds_give(struct giving *g, struct err *e)
{
	struct known k = { 0 };
	struct rules all = { 0 };
	bool ok = known_read(&k, g->book, e) && book_rules(g->book, &all, e);

	for (size_t i = 0; ok && i < all.n; i++) {
		struct threshold_row r = threshold_row_of(&k, &all.items[i]);
		ok = giving_row(g, &r);
	}
	free(all.items);
	known_free(&k);
	return ok;
}

const struct kind kind_thresholds = {
	.name = "thresholds",
	.help = N_("the thresholds that catches are compared with"),
	.columns = threshold_columns,
	.n_columns = THRESHOLD_COLUMNS,
	.row_bytes = sizeof(struct threshold_row),
	.begin = thresholds_begin,
	.take = thresholds_take,
	.look = thresholds_look,
	.finish = thresholds_finish,
	.end = thresholds_end,
	.give = thresholds_give,
};
