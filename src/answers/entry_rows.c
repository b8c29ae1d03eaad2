#include "answers/entry_rows.h"

#include "base/words.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

enum {
	WHAT_BYTES = 400,
	LIST_BYTES = 300,   /* of the names that there are */
	BLOCKS_BYTES = 200, /* of a farm's blocks */
};

bool row_bad(struct hearing *h, const char *column, const char *fmt, ...)
{
	char what[WHAT_BYTES];
	va_list args;

	va_start(args, fmt);
	vsnprintf(what, sizeof what, fmt, args);
	va_end(args);
	h->n_bad++;
	h->bad(h->arg, column, what);
	return false;
}

void row_warn(struct hearing *h, const char *column, const char *fmt, ...)
{
	char what[WHAT_BYTES];
	va_list args;

	va_start(args, fmt);
	vsnprintf(what, sizeof what, fmt, args);
	va_end(args);
	h->n_warned++;
	h->warn(h->arg, column, what);
}

bool row_has(const struct hearing *h, const char *column)
{
	return h->has(h->arg, column);
}

bool row_unknown(struct hearing *h, const char *column, const struct names *there,
	int64_t parent)
{
	struct buf list = { 0 };

	names_list(there, parent, LIST_BYTES, &list);
	if (list.n)
		row_bad(h, column, _("is not in the book; it has: %s"), list.text);
	else
		row_bad(h, column, _("is not in the book, which has none yet"));
	buf_free(&list);
	return false;
}

/* Ends a look-up; `there` is freed. */
static bool found(struct hearing *h, const char *column, struct names *there)
{
	row_unknown(h, column, there, 0);
	names_free(there);
	return false;
}

bool row_find_farm(
	struct hearing *h, const struct known *k, const char *name, int64_t *id)
{
	struct names there = { 0 };

	*id = *name ? known_find_farm(k, name) : 0;
	if (!*name || *id)
		return true;
	for (size_t i = 0; i < k->farms.n; i++)
		names_add(&there, 0, k->farms.items[i].name, 0);
	return found(h, "farm", &there);
}

bool row_find_pest(
	struct hearing *h, const struct known *k, const char *code, int64_t *id)
{
	struct names there = { 0 };

	*id = *code ? known_find_pest(k, code) : 0;
	if (!*code || *id)
		return true;
	for (size_t i = 0; i < k->pests.n; i++)
		names_add(&there, 0, k->pests.items[i].code, 0);
	return found(h, "pest", &there);
}

bool row_find_card(
	struct hearing *h, const struct known *k, const char *name, int64_t *id)
{
	struct names there = { 0 };

	*id = *name ? known_find_card(k, name) : 0;
	if (!*name || *id)
		return true;
	for (size_t i = 0; i < k->cards.n; i++)
		names_add(&there, 0, k->cards.items[i].name, 0);
	return found(h, "card", &there);
}

bool row_find_station(
	struct hearing *h, const struct known *k, const char *name, int64_t *id)
{
	struct names there = { 0 };

	*id = *name ? known_find_station(k, name) : 0;
	if (!*name || *id)
		return true;
	for (size_t i = 0; i < k->stations.n; i++)
		names_add(&there, 0, k->stations.items[i].name, 0);
	return found(h, "station", &there);
}

bool row_find_block(struct hearing *h, const struct known *k, int64_t farm,
	const char *name, int64_t *id)
{
	struct names there = { 0 };
	struct buf list = { 0 };

	*id = *name ? known_find_block(k, farm, name) : 0;
	if (!*name || *id)
		return true;
	for (size_t i = 0; i < k->blocks.n; i++)
		if (k->blocks.items[i].farm == farm)
			names_add(&there, 0, k->blocks.items[i].name, 0);
	names_list(&there, 0, BLOCKS_BYTES, &list);
	row_bad(h, "block", _("is no block of %s, which has: %s"),
		h->value(h->arg, "farm"), list.n ? list.text : _("none"));
	buf_free(&list);
	names_free(&there);
	return false;
}

/* The kinds that draw the pest, then those of no single one. */
static void list_lures(const struct lure_kinds *all, int64_t pest, struct buf *out)
{
	struct names some = { 0 };

	for (size_t i = 0; i < all->n; i++)
		if (all->items[i].pest == pest)
			names_add(&some, 0, all->items[i].name, all->items[i].id);
	for (size_t i = 0; pest && i < all->n; i++)
		if (all->items[i].pest == 0)
			names_add(&some, 0, all->items[i].name, all->items[i].id);
	names_list(&some, 0, LIST_BYTES, out);
	names_free(&some);
}

bool row_find_lure(struct hearing *h, const struct lure_kinds *lures, int64_t pest,
	const char *name, int64_t *id)
{
	struct buf there = { 0 };

	*id = 0;
	if (!*name)
		return true;
	for (size_t i = 0; i < lures->n; i++)
		if (strcmp(lures->items[i].name, name) == 0) {
			*id = lures->items[i].id;
			return true;
		}
	list_lures(lures, pest, &there);
	if (there.n)
		row_bad(h, "lure",
			pest ? _("is not in the book; lures of that pest: %s")
			     : _("is not in the book; lures: %s"),
			there.text);
	else
		row_bad(h, "lure",
			_("is not in the book, which has no lure of that pest"));
	buf_free(&there);
	return false;
}

const char *column_place(int i)
{
	return place_word((enum place)i);
}

const char *column_condition(int i)
{
	return condition_word((enum condition)i);
}

const char *column_yes_no(int i)
{
	return i ? N_("yes") : N_("no");
}

const char *column_unit(int i)
{
	static const char *const units[] = { "", "C", "F" };

	return units[i];
}

int column_unit_of(char unit)
{
	return unit == 'C' ? 1 : unit == 'F' ? 2 : 0;
}
