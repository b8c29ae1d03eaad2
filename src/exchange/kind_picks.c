/* Planned and done picks of blocks. */
#include "acts_parts.h"
#include "answers/answered.h"
#include "base/words.h"
#include "exchange/kinds.h"

#include <stdlib.h>

static bool read_all(struct book *b, void **records, size_t *n, struct err *e)
{
	struct picks all = { 0 };
	bool ok = book_picks(b, 0, ACTS_FIRST, ACTS_LAST, &all, e);

	*records = all.items;
	*n = all.n;
	return ok;
}

static int64_t block_of(const void *record)
{
	return ((const struct pick *)record)->block;
}

static void write_row(const struct known *k, const void *record, void *row)
{
	*(struct pick_entry_row *)row = pick_entry_row_of(k, record);
}

static bool row_over(
	struct hearing *h, const struct known *k, const void *row, void *record)
{
	return pick_over(h, k, row, record);
}

static bool put(struct book *b, void *record, struct err *e)
{
	return book_put_pick(b, record, e);
}

static const char *const keys[] = { "farm", "block", "date", NULL };

static const struct act_way way = { .kind = &kind_picks,
	.keys = keys,
	.record_bytes = sizeof(struct pick),
	.blank = &pick_blank,
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

/* Each pick of the file beside the treatments of its block. */
static bool finish(struct taking *t, struct err *e)
{
	const struct acts_state *s = t->state;
	struct treatments all = { 0 };
	const struct picks picks = { (void *)s->records, s->n, s->n };
	struct doubts d = {
		.picks = &picks, .treatments = &all, .picks_asked = s->touched
	};
	bool ok = treatments_that_bar(t->book, 0, ACTS_FIRST, ACTS_LAST, &all, e);

	if (ok)
		acts_warn_picks(t, &d);
	free(all.items);
	return ok;
}

const struct kind kind_picks = {
	.name = "picks",
	.help = N_("picks of blocks, planned and done"),
	.columns = pick_columns,
	.n_columns = PICK_COLUMNS,
	.row_bytes = sizeof(struct pick_entry_row),
	.begin = begin,
	.take = acts_take,
	.finish = finish,
	.end = acts_end,
	.give = give,
};
