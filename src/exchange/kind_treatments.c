/* What blocks were treated with. */
#include "acts_parts.h"
#include "base/words.h"
#include "exchange/kinds.h"

#include <stdlib.h>

static bool read_all(struct book *b, void **records, size_t *n, struct err *e)
{
	struct treatments all = { 0 };
	bool ok = book_treatments(b, 0, ACTS_FIRST, ACTS_LAST, &all, e);

	*records = all.items;
	*n = all.n;
	return ok;
}

static int64_t block_of(const void *record)
{
	return ((const struct treatment *)record)->block;
}

static void write_row(const struct known *k, const void *record, void *row)
{
	*(struct treatment_row *)row = treatment_row_of(k, record);
}

static bool row_over(
	struct hearing *h, const struct known *k, const void *row, void *record)
{
	return treatment_over(h, k, row, record);
}

static bool put(struct book *b, void *record, struct err *e)
{
	return book_put_treatment(b, record, e);
}

static const char *const keys[] = { "farm", "block", "pest", "date", "product",
	"border", "job", NULL };

static const struct act_way way = { .kind = &kind_treatments,
	.keys = keys,
	.record_bytes = sizeof(struct treatment),
	.blank = &treatment_blank,
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

static void warn_to_come(struct taking *t, const struct treatment *one)
{
	const struct acts_state *s = t->state;
	struct treatment_row r = treatment_row_of(&s->known, one);
	char day[DAY_ISO_SIZE];

	day_iso(one->day, day);
	taking_warn(t, _("%s, %s: the treatment of %s lies after today"), r.farm,
		r.block, day);
}

/* No pick is left within what a treatment of the file bars, or leaves open, unsaid. */
static bool finish(struct taking *t, struct err *e)
{
	const struct acts_state *s = t->state;
	const struct treatments all = { (void *)s->records, s->n, s->n };
	struct picks picks = { 0 };
	struct doubts d = {
		.picks = &picks, .treatments = &all, .treatments_asked = s->touched
	};

	if (!book_picks(t->book, 0, ACTS_FIRST, ACTS_LAST, &picks, e))
		return false;
	acts_warn_picks(t, &d);
	free(picks.items);
	for (size_t i = 0; i < s->n; i++)
		if (s->touched[i] && all.items[i].day > t->from->today)
			warn_to_come(t, &all.items[i]);
	return true;
}

const struct kind kind_treatments = {
	.name = "treatments",
	.help = N_("treatments of blocks, with re-entry and preharvest intervals"),
	.columns = treatment_columns,
	.n_columns = TREATMENT_COLUMNS,
	.row_bytes = sizeof(struct treatment_row),
	.begin = begin,
	.take = acts_take,
	.finish = finish,
	.end = acts_end,
	.give = give,
};
