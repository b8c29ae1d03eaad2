/* Dispensers of mating disruption. */
#include "acts_parts.h"
#include "base/words.h"
#include "exchange/kinds.h"

static bool read_all(struct book *b, void **records, size_t *n, struct err *e)
{
	struct disruptions all = { 0 };
	bool ok = book_disruptions(b, 0, ACTS_FIRST, ACTS_LAST, &all, e);

	*records = all.items;
	*n = all.n;
	return ok;
}

static int64_t block_of(const void *record)
{
	return ((const struct disruption *)record)->block;
}

static void write_row(const struct known *k, const void *record, void *row)
{
	*(struct dispenser_row *)row = dispenser_row_of(k, record);
}

static bool row_over(
	struct hearing *h, const struct known *k, const void *row, void *record)
{
	return dispenser_over(h, k, row, record);
}

static bool put(struct book *b, void *record, struct err *e)
{
	return book_put_disruption(b, record, e);
}

static const char *const keys[] = { "farm", "block", "pest", "up", NULL };

static const struct act_way way = { .kind = &kind_dispensers,
	.keys = keys,
	.record_bytes = sizeof(struct disruption),
	.blank = &disruption_blank,
	.read = read_all,
	.block = block_of,
	.row = write_row,
	.over = row_over,
	.put = put };

static bool begin(struct taking *t, struct err *e)
{
	return acts_begin(t, &way, e);
}

static bool give(struct giving *g, struct err *e)
{
	return acts_give(g, &way, e);
}

const struct kind kind_dispensers = {
	.name = "dispensers",
	.help = N_("dispensers of mating disruption in blocks"),
	.columns = dispenser_columns,
	.n_columns = DISPENSER_COLUMNS,
	.row_bytes = sizeof(struct dispenser_row),
	.begin = begin,
	.take = acts_take,
	.end = acts_end,
	.give = give,
};
