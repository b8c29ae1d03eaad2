/* What blocks were treated with. */
#include "acts_parts.h"
#include "answers/entry_visited.h"
#include "answers/say.h"
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

static void warn_visited(void *arg, const char *sentence)
{
	taking_warn(arg, "%s", sentence);
}

/* Nor a visit within what it bars from a day's first minute to its last. */
static bool warn_visits(struct taking *t, struct err *e)
{
	static const struct zone utc = { .n = 0 };
	const struct zone *z = t->from->zone ? t->from->zone : &utc;
	const struct acts_state *s = t->state;
	const struct treatment *all = (const void *)s->records;
	const struct said said = { warn_visited, t };
	int64_t before = t->out->n_warnings;
	bool ok = true;

	for (size_t i = 0; ok && i < s->n; i++)
		ok = !s->touched[i] ||
		     treatment_visited(t->book, &s->known, &all[i], z, &said, e);
	/* Picks may have said it already. */
	if (t->out->n_warnings > before && t->out->notes.n == 0)
		sentences_add(&t->out->notes, say_caution_acts());
	return ok;
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
	return warn_visits(t, e);
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
