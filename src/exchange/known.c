#include "exchange/kinds.h"

#include <stdlib.h>

const char *column_place(int i)
{
	return place_word((enum place)i);
}

const char *column_condition(int i)
{
	return condition_word((enum condition)i);
}

bool names_of_pests(struct book *b, struct names *out, struct err *e)
{
	struct pests all = { 0 };
	bool ok = book_pests(b, &all, e);

	for (size_t i = 0; ok && i < all.n; i++)
		names_add(out, 0, all.items[i].code, all.items[i].id);
	free(all.items);
	return ok;
}

bool names_of_farms(struct book *b, struct names *out, struct err *e)
{
	struct farms all = { 0 };
	bool ok = book_farms(b, &all, e);

	for (size_t i = 0; ok && i < all.n; i++)
		names_add(out, 0, all.items[i].name, all.items[i].id);
	free(all.items);
	return ok;
}

bool names_of_blocks(struct book *b, struct names *out, struct err *e)
{
	struct blocks all = { 0 };
	bool ok = book_blocks(b, 0, &all, e);

	for (size_t i = 0; ok && i < all.n; i++)
		names_add(out, all.items[i].farm, all.items[i].name, all.items[i].id);
	free(all.items);
	return ok;
}

bool names_of_cards(struct book *b, struct names *out, struct err *e)
{
	struct card_kinds all = { 0 };
	bool ok = book_cards(b, &all, e);

	for (size_t i = 0; ok && i < all.n; i++)
		names_add(out, 0, all.items[i].name, all.items[i].id);
	free(all.items);
	return ok;
}

bool known_read(struct known *k, struct book *b, struct err *e)
{
	return book_farms(b, &k->farms, e) && book_blocks(b, 0, &k->blocks, e) &&
	       book_traps(b, 0, &k->traps, e) && book_pests(b, &k->pests, e) &&
	       book_lures(b, &k->lures, e) && book_cards(b, &k->cards, e);
}

void known_free(struct known *k)
{
	free(k->farms.items);
	free(k->blocks.items);
	free(k->traps.items);
	free(k->pests.items);
	free(k->lures.items);
	free(k->cards.items);
	*k = (struct known){ 0 };
}

const char *known_farm(const struct known *k, int64_t id)
{
	for (size_t i = 0; i < k->farms.n; i++)
		if (k->farms.items[i].id == id)
			return k->farms.items[i].name;
	return "";
}

const char *known_pest(const struct known *k, int64_t id)
{
	for (size_t i = 0; i < k->pests.n; i++)
		if (k->pests.items[i].id == id)
			return k->pests.items[i].code;
	return "";
}

const char *known_lure(const struct known *k, int64_t id)
{
	for (size_t i = 0; i < k->lures.n; i++)
		if (k->lures.items[i].id == id)
			return k->lures.items[i].name;
	return "";
}

const char *known_card(const struct known *k, int64_t id)
{
	for (size_t i = 0; i < k->cards.n; i++)
		if (k->cards.items[i].id == id)
			return k->cards.items[i].name;
	return "";
}

const struct block *known_block(const struct known *k, int64_t id)
{
	for (size_t i = 0; i < k->blocks.n; i++)
		if (k->blocks.items[i].id == id)
			return &k->blocks.items[i];
	return NULL;
}
