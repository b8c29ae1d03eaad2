/* remove.c - rows taken out for good, and traps put into another order. */
#include "book/steps.h"

#include "row.h"

#include "base/words.h"

#include <assert.h>
#include <string.h>

static bool not_in_use(struct book *b, const struct row_kind *k, int64_t id,
	const char *what, struct err *e)
{
	struct buf users = { 0 };
	char name[128];
	bool ok = row_users(b, k, id, &users, what, e);

	if (ok && users.n > 0) {
		row_say(b, k, id, name, sizeof name);
		ok = k->instead
			     ? err_set(e, ERR_INPUT, _("%s: %s is in use, by %s; %s"),
				       _(what), name, users.text, _(k->instead))
			     : err_set(e, ERR_INPUT, _("%s: %s is in use, by %s"),
				       _(what), name, users.text);
	}
	buf_free(&users);
	return ok;
}

bool row_bury(struct book *b, const struct row_kind *k, int64_t id, const char *what,
	struct err *e)
{
	struct query q;
	char sql[256];

	sqlite3_snprintf(sizeof sql, sql,
		"INSERT OR REPLACE INTO tombstone (changed_at, changed_by, kind, uid) "
		"SELECT ?1, ?2, '%q', uid FROM \"%w\" WHERE id = ?3",
		k->table, k->table);
	query_start_once(&q, b, sql);
	query_stamp(&q);
	query_int(&q, id);
	if (!query_end(&q, what, e))
		return false;
	if (sqlite3_changes(b->db) == 0)
		return err_set(e, ERR_NOT_FOUND, _("%s: the %s is not in the book"),
			_(what), _(k->word));
	sqlite3_snprintf(sizeof sql, sql, "DELETE FROM \"%w\" WHERE id = ?1", k->table);
	query_start_once(&q, b, sql);
	query_int(&q, id);
	return query_end(&q, what, e);
}

static bool take_out(struct book *b, const struct row_kind *k, int64_t id,
	const char *what, struct err *e)
{
	struct limits limits;
	struct err why = { 0 };

	if (!not_in_use(b, k, id, what, e) || !row_bury(b, k, id, what, e))
		return false;
	return strcmp(k->table, "setting") != 0 || store_limits(b, &limits, &why) ||
	       err_set(e, why.kind, "%s: %s", _(what), why.text);
}

bool book_remove(struct book *b, const char *kind, int64_t id, struct err *e)
{
	const struct row_kind *k = row_kind(kind);
	const char *what = N_("nothing is removed");

	assert(k && !k->logs);
	return store_begin(b, what, e) &&
	       store_end(b, take_out(b, k, id, what, e), what, e);
}

bool book_users(
	struct book *b, const char *kind, int64_t id, struct buf *out, struct err *e)
{
	const struct row_kind *k = row_kind(kind);

	assert(k && !k->logs);
	return row_users(b, k, id, out, N_("the book cannot be read"), e);
}

/* Traps with the same place in the order are told apart by their ids; each gets a
 * place of its own. */
static bool order_anew(struct book *b, int64_t trap, const char *what, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"UPDATE trap SET driving_order = r.n, changed_at = ?1, changed_by = ?2 "
		"FROM (SELECT id, row_number() OVER (ORDER BY driving_order, id) AS n "
		"FROM trap WHERE farm = (SELECT farm FROM trap WHERE id = ?3)) r "
		"WHERE trap.id = r.id AND trap.driving_order <> r.n AND EXISTS "
		"(SELECT 1 FROM trap a JOIN trap c ON c.farm = a.farm AND "
		"c.driving_order = a.driving_order AND c.id <> a.id WHERE a.farm = "
		"trap.farm)");
	query_stamp(&q);
	query_int(&q, trap);
	return query_end(&q, what, e);
}

static bool swap(
	struct book *b, int64_t trap, int64_t other, const char *what, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"UPDATE trap SET driving_order = r.n, changed_at = ?1, changed_by = ?2 "
		"FROM (SELECT a.id, c.driving_order AS n FROM trap a JOIN trap c ON "
		"c.farm = a.farm WHERE a.id IN (?3, ?4) AND c.id IN (?3, ?4) AND "
		"c.id <> a.id) r WHERE trap.id = r.id");
	query_stamp(&q);
	query_int(&q, trap);
	query_int(&q, other);
	if (!query_end(&q, what, e))
		return false;
	return sqlite3_changes(b->db) == 2 ||
	       err_set(e, ERR_NOT_FOUND, _("%s: they are not two traps of one farm"),
		       _(what));
}

bool book_swap_traps(struct book *b, int64_t trap, int64_t other, struct err *e)
{
	const char *what = N_("the traps stay in their order");

	return store_begin(b, what, e) &&
	       store_end(b,
		       order_anew(b, trap, what, e) && swap(b, trap, other, what, e),
		       what, e);
}
