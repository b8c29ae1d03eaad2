#include "answers/answered.h"

#include "base/mem.h"
#include "book/acts.h"

#include <stdlib.h>

bool treatment_is_told_by(const struct treatment *t, const struct treatment *answered)
{
	return answered->id == TREATMENT_ANSWERED && t->block == answered->block &&
	       t->day != DAY_NONE && t->day >= answered->day - ANSWERED_DAYS_BEFORE &&
	       t->day <= answered->day + ANSWERED_DAYS_AFTER;
}

/* True if it stands among them already, entered or answered. */
static bool is_among(const struct treatments *all, const struct treatment *answered)
{
	for (size_t i = 0; i < all->n; i++) {
		const struct treatment *t = &all->items[i];
		if (t->id == TREATMENT_ANSWERED
				? t->block == answered->block && t->day == answered->day
				: treatment_is_told_by(t, answered))
			return true;
	}
	return false;
}

static void add(const struct answer *a, struct treatments *out)
{
	struct treatment t = treatment_blank;

	t.id = TREATMENT_ANSWERED;
	t.block = a->block;
	t.pest = a->pest;
	t.day = a->on;
	if (is_among(out, &t))
		return;
	out->items = mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
	out->items[out->n++] = t;
}

static int by_block_and_day(const void *a, const void *b)
{
	const struct treatment *x = a, *y = b;

	if (x->block != y->block)
		return x->block < y->block ? -1 : 1;
	if (x->day != y->day)
		return x->day < y->day ? -1 : 1;
	return (x->id > y->id) - (x->id < y->id);
}

bool treatments_that_bar(struct book *b, int64_t farm, int32_t from, int32_t to,
	struct treatments *out, struct err *e)
{
	struct answers answers = { 0 };
	bool ok = book_treatments(b, farm, from, to, out, e) &&
		  book_answers(b, farm, from, to, &answers, e);
	size_t entered = out->n;

	for (size_t i = 0; ok && i < answers.n; i++)
		if (answers.items[i].decision == DECISION_TREATED)
			add(&answers.items[i], out);
	if (ok && out->n > entered)
		qsort(out->items, out->n, sizeof *out->items, by_block_and_day);
	free(answers.items);
	return ok;
}
