/* merge_stranger.c - the other book's visits, looked at once, row by row: what the
 * checks of the table do not say, their texts and what they refer to. */
#include "merge_parts.h"

#include "check.h"

#include "base/mem.h"
#include "base/words.h"

#include <stdlib.h>

/* Row numbers, in order. */
struct ids {
	int64_t *items;
	size_t n, cap;
};

static bool read_ids(struct book *b, const char *sql, struct ids *out, const char *what,
	struct err *e)
{
	struct query q;

	query_start_once(&q, b, sql);
	while (query_row(&q)) {
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		out->items[out->n++] = query_get(&q);
	}
	return query_end(&q, what, e);
}

static int by_number(const void *a, const void *b)
{
	const int64_t *x = a, *y = b;

	return (*x > *y) - (*x < *y);
}

static const int64_t *find_id(const struct ids *ids, int64_t id)
{
	return ids->n == 0 ? NULL
			   : bsearch(&id, ids->items, ids->n, sizeof id, by_number);
}

struct known {
	struct ids traps, cards, lures;
	const int64_t *at; /* the trap of the visit before, in traps; NULL: none */
};

/* Visits come in the order of their numbers, and so do the traps of a day. */
static bool has_trap(struct known *k, int64_t trap)
{
	const int64_t *next = k->at ? k->at + 1 : k->traps.items;

	if (k->traps.n == 0 || next == k->traps.items + k->traps.n || *next != trap)
		next = find_id(&k->traps, trap);
	k->at = next;
	return next != NULL;
}

/* The columns trap, new_card and new_lure. */
static bool refers_well(struct known *k, sqlite3_stmt *row)
{
	return has_trap(k, sqlite3_column_int64(row, 0)) &&
	       (sqlite3_column_type(row, 1) == SQLITE_NULL ||
		       find_id(&k->cards, sqlite3_column_int64(row, 1))) &&
	       (sqlite3_column_type(row, 2) == SQLITE_NULL ||
		       find_id(&k->lures, sqlite3_column_int64(row, 2)));
}

/* Most texts are empty or plain. */
static bool column_harmless(sqlite3_stmt *row, int i)
{
	const char *text = (const char *)sqlite3_column_text(row, i);
	size_t n = (size_t)sqlite3_column_bytes(row, i);

	for (size_t at = 0; text && at < n; at++)
		if ((unsigned char)text[at] - 0x20u > 0x7e - 0x20u)
			return text_harmless(text, n);
	return true;
}

enum fault { FAULT_NONE, FAULT_REFERENCE, FAULT_TEXT };

static enum fault fault_of(struct known *k, sqlite3_stmt *row)
{
	if (!refers_well(k, row))
		return FAULT_REFERENCE;
	for (int i = 3; i < 7; i++)
		if (!column_harmless(row, i))
			return FAULT_TEXT;
	return FAULT_NONE;
}

static bool first_fault(struct book *b, struct known *k, enum fault *out,
	const char *what, struct err *e)
{
	sqlite3_stmt *row = NULL;
	int code = sqlite3_prepare_v2(b->db,
		"SELECT trap, new_card, new_lure, note, scout, changed_by, changed_at "
		"FROM visit",
		-1, &row, NULL);

	*out = FAULT_NONE;
	while (code == SQLITE_OK && *out == FAULT_NONE &&
		(code = sqlite3_step(row)) == SQLITE_ROW) {
		*out = fault_of(k, row);
		code = SQLITE_OK;
	}
	sqlite3_finalize(row);
	return code == SQLITE_DONE || code == SQLITE_OK || store_fail(b, code, what, e);
}

static bool say_fault(
	enum fault fault, const char *path, const char *what, struct err *e)
{
	if (fault == FAULT_REFERENCE)
		return err_set(e, ERR_INPUT,
			_("%s: %s: a visit names a trap, a card or a lure that is not "
			  "in the book"),
			_(what), path);
	return fault == FAULT_NONE ||
	       err_set(e, ERR_INPUT,
		       _("%s: %s: a visit holds a character that cannot be printed"),
		       _(what), path);
}

bool merge_visits_sound(
	struct book *b, const char *path, const char *what, struct err *e)
{
	struct known k = { 0 };
	enum fault fault = FAULT_NONE;
	bool ok = read_ids(b, "SELECT id FROM trap ORDER BY id", &k.traps, what, e) &&
		  read_ids(b, "SELECT id FROM card ORDER BY id", &k.cards, what, e) &&
		  read_ids(b, "SELECT id FROM lure ORDER BY id", &k.lures, what, e) &&
		  first_fault(b, &k, &fault, what, e);

	free(k.traps.items);
	free(k.cards.items);
	free(k.lures.items);
	return ok && say_fault(fault, path, what, e);
}
