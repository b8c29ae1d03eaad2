#include "base/mem.h"
#include "base/words.h"
#include "exchange/kinds.h"

#include <stdlib.h>
#include <string.h>

struct lure_state_in {
	struct known known;
	struct names names; /* index in known.lures */
};

static bool lures_begin(struct taking *t, struct err *e)
{
	struct lure_state_in *s = t->state = mem_new(1, sizeof *s);

	if (!known_read(&s->known, t->book, e))
		return false;
	for (size_t i = 0; i < s->known.lures.n; i++)
		names_add(&s->names, 0, s->known.lures.items[i].name, (int64_t)i);
	return true;
}

static void lures_end(struct taking *t)
{
	struct lure_state_in *s = t->state;

	known_free(&s->known);
	names_free(&s->names);
	free(s);
}

static bool lure_same(const struct lure_kind *a, const struct lure_kind *b)
{
	return a->pest == b->pest && a->life_days == b->life_days &&
	       a->hot_days == b->hot_days && a->hot_from == b->hot_from &&
	       a->hot_to == b->hot_to && strcmp(a->source, b->source) == 0 &&
	       stock_same(&a->stock, &b->stock) && a->retired == b->retired;
}

static void lures_look(struct taking *t, const void *row)
{
	const struct lure_row *r = row;
	const struct lure_state_in *s = t->state;
	int64_t id;

	row_find_pest(&t->hear, &s->known, r->pest, &id);
}

static bool lures_take(struct taking *t, const void *row, struct err *e)
{
	const struct lure_row *r = row;
	struct lure_state_in *s = t->state;
	int64_t i = names_find(&s->names, 0, r->lure);
	struct lure_kind k = i < 0 ? (struct lure_kind){ 0 } : s->known.lures.items[i];

	if (!lure_over(&t->hear, &s->known, r, &k))
		return true;
	if (i >= 0 && lure_same(&k, &s->known.lures.items[i])) {
		taking_count(t, TOOK_SAME);
		return true;
	}
	if (!book_put_lure(t->book, &k, e))
		return false;
	taking_count(t, i < 0 ? TOOK_NEW : TOOK_CHANGED);
	if (i >= 0) {
		s->known.lures.items[i] = k;
		return true;
	}
	s->known.lures.items = mem_grow(s->known.lures.items, &s->known.lures.cap,
		s->known.lures.n + 1, sizeof *s->known.lures.items);
	names_add(&s->names, 0, k.name, (int64_t)s->known.lures.n);
	s->known.lures.items[s->known.lures.n++] = k;
	return true;
}

static bool lures_give(struct giving *g, struct err *e)
{
	struct known known = { 0 };
	bool ok = known_read(&known, g->book, e);

	for (size_t i = 0; ok && i < known.lures.n; i++) {
		struct lure_row r = lure_row_of(&known, &known.lures.items[i]);
		ok = giving_row(g, &r);
	}
	known_free(&known);
	return ok;
}

const struct kind kind_lures = {
	.name = "lures",
	.help = N_("lure kinds and how long they last"),
	.columns = lure_columns,
	.n_columns = LURE_COLUMNS,
	.row_bytes = sizeof(struct lure_row),
	.begin = lures_begin,
	.take = lures_take,
	.look = lures_look,
	.end = lures_end,
	.give = lures_give,
	.starts = true,
};
