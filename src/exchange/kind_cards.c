#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "exchange/kinds.h"

#include <stdlib.h>
#include <string.h>

enum { STIR_USUAL = 20, CHANGE_USUAL = 30, FLOOR_USUAL = 50 };

struct card_row {
	char card[NAME_BYTES];
	int32_t life_days, stir_at, change_at, floor_at;
	char source[SOURCE_BYTES];
};

struct card_state_in {
	struct card_kinds there;
	struct names names; /* index in there */
};

#define AT(field) .at = offsetof(struct card_row, field)
#define MOTHS .type = &value_int, .lo = 1, .hi = COUNT_MAX

static const struct column columns[] = {
	{ .name = "card",
		AT(card),
		.type = &value_text,
		.hi = NAME_BYTES,
		.needed = true,
		.help = N_("Name of the card kind.") },
	{ .name = "life_days",
		AT(life_days),
		.type = &value_int,
		.lo = 1,
		.hi = NIGHTS_MAX,
		.needed = true,
		.help = N_("Days after which it is changed in any case.") },
	{ .name = "stir_at",
		AT(stir_at),
		MOTHS,
		.help = N_("Moths after which its glue is stirred; empty: 20.") },
	{ .name = "change_at",
		AT(change_at),
		MOTHS,
		.help = N_("Moths after which it is changed; empty: 30.") },
	{ .name = "floor_at",
		AT(floor_at),
		MOTHS,
		.help = N_("Moths from which a count is a floor, at least so many; "
			   "empty: 50.") },
	{ .name = "source",
		AT(source),
		.type = &value_text,
		.hi = SOURCE_BYTES,
		.help = N_("Where these numbers come from.") },
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

/* The marks that the row leaves out: the usual ones, as far as they keep the order. */
static void usual_marks(struct taking *t, const struct card_row *r, struct card_kind *k)
{
	if (taking_has(t, "change_at") || !k->id)
		k->change_at = r->change_at ? r->change_at : CHANGE_USUAL;
	if (taking_has(t, "stir_at") || !k->id)
		k->stir_at = r->stir_at                  ? r->stir_at
			     : k->change_at < STIR_USUAL ? k->change_at
							 : STIR_USUAL;
	if (taking_has(t, "floor_at") || !k->id)
		k->floor_at = r->floor_at                  ? r->floor_at
			      : k->change_at > FLOOR_USUAL ? k->change_at
							   : FLOOR_USUAL;
}

/* Puts what the row says over the kind; false: it says something wrong. */
static bool card_over(struct taking *t, const struct card_row *r, struct card_kind *k)
{
	if (strcmp(r->card, "kept") == 0)
		return !taking_bad(t, "card",
			_("cannot name a card: in a file of visits it means that the "
			  "old one stays"));
	memcpy(k->name, r->card, sizeof k->name);
	k->life_days = r->life_days;
	usual_marks(t, r, k);
	if (taking_has(t, "source"))
		memcpy(k->source, r->source, sizeof k->source);
	if (k->stir_at <= k->change_at && k->change_at <= k->floor_at)
		return true;
	return !taking_bad(t, "change_at",
		_("does not fit: stir_at %d, change_at %d and floor_at %d must rise in "
		  "this order"),
		(int)k->stir_at, (int)k->change_at, (int)k->floor_at);
}

static bool card_same(const struct card_kind *a, const struct card_kind *b)
{
	return a->life_days == b->life_days && a->stir_at == b->stir_at &&
	       a->change_at == b->change_at && a->floor_at == b->floor_at &&
	       strcmp(a->source, b->source) == 0;
}

static bool cards_take(struct taking *t, const void *row, struct err *e)
{
	const struct card_row *r = row;
	struct card_state_in *s = t->state;
	int64_t i = names_find(&s->names, 0, r->card);
	struct card_kind k = i < 0 ? (struct card_kind){ 0 } : s->there.items[i];

	if (!card_over(t, r, &k))
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
		const struct card_kind *k = &all.items[i];
		struct card_row r = {
			.life_days = k->life_days,
			.stir_at = k->stir_at,
			.change_at = k->change_at,
			.floor_at = k->floor_at,
		};
		text_copy(r.card, sizeof r.card, k->name);
		text_copy(r.source, sizeof r.source, k->source);
		ok = giving_row(g, &r);
	}
	free(all.items);
	return ok;
}

const struct kind kind_cards = {
	.name = "cards",
	.help = N_("card kinds, how long they last and how much they hold"),
	.columns = columns,
	.n_columns = sizeof columns / sizeof *columns,
	.row_bytes = sizeof(struct card_row),
	.begin = cards_begin,
	.take = cards_take,
	.end = cards_end,
	.give = cards_give,
	.starts = true,
};
