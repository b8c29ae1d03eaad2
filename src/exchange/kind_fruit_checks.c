/* Fruit and shoots that were looked at. */
#include "acts_parts.h"
#include "base/words.h"
#include "exchange/kinds.h"

static bool read_all(struct book *b, void **records, size_t *n, struct err *e)
{
	struct fruit_checks all = { 0 };
	bool ok = book_fruit_checks(b, 0, ACTS_FIRST, ACTS_LAST, &all, e);

	*records = all.items;
	*n = all.n;
	return ok;
}

static int64_t block_of(const void *record)
{
	return ((const struct fruit_check *)record)->block;
}

static void write_row(const struct known *k, const void *record, void *row)
{
	*(struct fruit_check_row *)row = fruit_check_row_of(k, record);
}

static bool row_over(
	struct hearing *h, const struct known *k, const void *row, void *record)
{
	return fruit_check_over(h, k, row, record);
}

static bool put(struct book *b, void *record, struct err *e)
{
	return book_put_fruit_check(b, record, e);
}

static const char *const keys[] = { "farm", "block", "pest", "date", "part", "tree",
	NULL };

static const struct act_way way = { .kind = &kind_fruit_checks,
	.keys = keys,
	.record_bytes = sizeof(struct fruit_check),
	.blank = &fruit_check_blank,
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

const struct kind kind_fruit_checks = {
	.name = "fruit-checks",
	.help = N_("fruit and shoots looked at in blocks"),
	.columns = fruit_check_columns,
	.n_columns = FRUIT_CHECK_COLUMNS,
	.row_bytes = sizeof(struct fruit_check_row),
	.begin = begin,
	.take = acts_take,
	.end = acts_end,
	.give = give,
};
