#include "base/mem.h"
#include "base/words.h"
#include "exchange/kinds.h"

#include <stdlib.h>
#include <string.h>

struct card_state_in {
	struct card_kinds there;
	struct names names; /* index in there */
};

static bool cards_begin(struct taking *t, struct err *e)
{
	struct card_state_in *s = t->state = mem_new(1, sizeof *s);

	if (!book_cards(t->book, &s->there, e))
		return false;
	for (size_t i = 0; i < s->there.n; i++)
		names_add(&s->names, 0, s->there.items[i].name, (int64_t)i);
	return true;
}

static void cards_end(struct taking *t)
{
	struct card_state_in *s = t->state;

	free(s->there.items);
	names_free(&s->names);
	free(s);
}

static bool card_same(const struct card_kind *a, const struct card_kind *b)
{
	return a->life_days == b->life_days && a->stir_at == b->stir_at &&
	       a->change_at == b->change_at && a->floor_at == b->floor_at &&
	       strcmp(a->source, b->source) == 0 && stock_same(&a->stock, &b->stock) &&
	       a->retired == b->retired;
}

static bool cards_take(struct taking *t, const void *row, struct err *e)
{
	const struct card_row *r = row;
	struct card_state_in *s = t->state;
	int64_t i = names_find(&s->names, 0, r->card);
	struct card_kind k = i < 0 ? (struct card_kind){ 0 } : s->there.items[i];

	if (!card_over(&t->hear, r, &k))
		return true;
	if (i >= 0 && card_same(&k, &s->there.items[i])) {
		taking_count(t, TOOK_SAME);
		return true;
	}
	if (!book_put_card(t->book, &k, e))
		return false;
	taking_count(t, i < 0 ? TOOK_NEW : TOOK_CHANGED);
	if (i >= 0) {
		s->there.items[i] = k;
		return true;
	}
	s->there.items = mem_grow(
		s->there.items, &s->there.cap, s->there.n + 1, sizeof *s->there.items);
	names_add(&s->names, 0, k.name, (int64_t)s->there.n);
	s->there.items[s->there.n++] = k;
	return true;
}

static bool cards_give(struct giving *g, struct err *e)
{
	struct card_kinds all = { 0 };
	bool ok = book_cards(g->book, &all, e);

	for (size_t i = 0; ok && i < all.n; i++) {
		struct card_row r = card_row_of(&all.items[i]);
		ok = giving_row(g, &r);
	}
	free(all.items);
	return ok;
}

const struct kind kind_cards = {
	.name = "cards",
	.help = N_("card kinds, how long they last and how much they hold"),
	.columns = card_columns,
	.n_columns = CARD_COLUMNS,
	.row_bytes = sizeof(struct card_row),
	.begin = cards_begin,
	.take = cards_take,
	.end = cards_end,
	.give = cards_give,
	.starts = true,
};
