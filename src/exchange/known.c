#include "exchange/kinds.h"

#include <stdlib.h>

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
