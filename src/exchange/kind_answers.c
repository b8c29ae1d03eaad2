/* What was decided about alerts. */
#include "acts_parts.h"
#include "base/words.h"
#include "exchange/kinds.h"

static bool read_all(struct book *b, void **records, size_t *n, struct err *e)
{
	struct answers all = { 0 };
	bool ok = book_answers(b, 0, ACTS_FIRST, ACTS_LAST, &all, e);

	*records = all.items;
	*n = all.n;
	return ok;
}

static int64_t block_of(const void *record)
{
	return ((const struct answer *)record)->block;
}

static void write_row(const struct known *k, const void *record, void *row)
{
	*(struct answer_row *)row = answer_row_of(k, record);
}

static bool row_over(
	struct hearing *h, const struct known *k, const void *row, void *record)
{
	return answer_over(h, k, row, record);
}

static bool put(struct book *b, void *record, struct err *e)
{
	return book_put_answer(b, record, e);
}

static const char *const keys[] = { "farm", "block", "pest", "trap", "date", "decided",
	NULL };

static const struct act_way way = { .kind = &kind_answers,
	.keys = keys,
	.record_bytes = sizeof(struct answer),
	.blank = &answer_blank,
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

const struct kind kind_answers = {
	.name = "answers",
	.help = N_("what was decided when a catch was over its threshold"),
	.columns = answer_columns,
	.n_columns = ANSWER_COLUMNS,
	.row_bytes = sizeof(struct answer_row),
	.begin = begin,
	.take = acts_take,
	.end = acts_end,
	.give = give,
};
