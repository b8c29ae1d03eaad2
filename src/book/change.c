/* change.c - takes one change of any row back out of what the history keeps of it. The
 * values go from there into the row within SQL; only names of our own tables and
 * columns are put together. Parameters of all: ?1 the change, ?2 now, ?3 who. */
#include "change.h"
#include "visit.h"

#include "base/words.h"

#include <stdio.h>
#include <string.h>

/* What else was done to the row later and is not taken back; an undo is no change: it
 * stands where the change that it took back stood. What a merge brought (0 and -1)
 * counts when it was done later; what the change itself settled (0 too) is of its own
 * step, though it may have been written a moment after it. */
#define LATER                                                                          \
	"x.id > h.id AND (x.undoes IS NULL OR x.undoes <= 0 AND x.at > h.at) "         \
	"AND coalesce(x.step = h.step, 0) = 0 "                                        \
	"AND NOT EXISTS (SELECT 1 FROM history u WHERE u.undoes = x.id) "

/* "Ida on 2026-07-21 at 07:42 UTC" */
static void say_author(const char *by, const char *at, char *out, size_t size)
{
	snprintf(out, size, _("%s on %.10s at %.5s UTC"), *by ? by : _("somebody"), at,
		strlen(at) > 11 ? at + 11 : "");
}

static bool not_changed_since(
	struct book *b, const struct change *c, const char *what, struct err *e)
{
	char at[32] = "", by[SCOUT_BYTES] = "", author[96], name[128];
	struct query q;

	query_start(&q, b,
		c->of_visit
			? "SELECT x.at, x.by FROM history h JOIN history x ON x.trap = "
			  "h.trap AND x.day = h.day WHERE h.id = ?1 AND " LATER
			  "ORDER BY x.id DESC LIMIT 1"
			: "SELECT x.at, x.by FROM history h JOIN history x ON x.uid = "
			  "h.uid AND x.trap IS NULL WHERE h.id = ?1 AND " LATER
			  "ORDER BY x.id DESC LIMIT 1");
	query_int(&q, c->id);
	bool changed = query_row(&q);
	if (changed) {
		query_get_copy(&q, at, sizeof at);
		query_get_copy(&q, by, sizeof by);
	}
	if (!query_end(&q, what, e))
		return false;
	if (!changed)
		return true;
	say_author(by, at, author, sizeof author);
	row_say_change(b, c->kind, c->id, name, sizeof name);
	return err_set(e, ERR_INPUT, _("%s: %s was changed since by %s"), _(what), name,
		author);
}

/* A merge tells a change of the pest as another trap in its place (-2). */
bool change_pest_stays(struct book *b, int64_t change, const char *what, struct err *e)
{
	struct query q;
	bool other = false;

	query_start(&q, b,
		"SELECT coalesce((SELECT json_extract(x.old, '$.pest') <> t.pest FROM "
		"history x WHERE x.uid = t.uid AND x.trap IS NULL AND x.op = 'update' "
		"AND " LATER "ORDER BY x.id LIMIT 1), 0) OR EXISTS (SELECT 1 FROM "
		"history x WHERE x.undoes = -2 AND x.id > h.id AND "
		"json_extract(x.old, '$.id') = h.trap AND json_extract(x.old, "
		"'$.pest') <> t.pest) FROM history h JOIN trap t ON "
		"t.id = h.trap WHERE h.id = ?1");
	query_int(&q, change);
	if (query_row(&q))
		other = query_get(&q) != 0;
	if (!query_end(&q, what, e))
		return false;
	return !other || err_set(e, ERR_INPUT,
				 _("%s: the pest of its trap was changed since, and a "
				   "count of one moth is none of another"),
				 _(what));
}

/* The same of a trap whose pest would change under its visits. */
static bool visits_keep_pest(
	struct book *b, const struct change *c, const char *what, struct err *e)
{
	struct query q;
	bool other = false;

	query_start(&q, b,
		"SELECT EXISTS (SELECT 1 FROM history h JOIN trap t ON t.uid = h.uid "
		"WHERE h.id = ?1 AND json_extract(h.old, '$.pest') <> t.pest AND "
		"EXISTS (SELECT 1 FROM visit WHERE id IN " VISIT_IDS(
			"t.id") " AND trap = t.id))");
	query_int(&q, c->id);
	if (query_row(&q))
		other = query_get(&q) != 0;
	if (!query_end(&q, what, e))
		return false;
	return !other ||
	       err_set(e, ERR_INPUT,
		       _("%s: the trap has visits since, so its pest stays"), _(what));
}

static bool fits(
	struct book *b, const struct change *c, const char *what, struct err *e)
{
	if (c->of_visit)
		return !c->removed || change_pest_stays(b, c->id, what, e);
	if (strcmp(c->kind->table, "trap") == 0 && !c->inserted)
		return visits_keep_pest(b, c, what, e);
	return true;
}

static void add_values(struct book *b, const struct row_kind *k, struct buf *sql)
{
	row_columns(b, k, "json_extract(old, '$.", "')", sql);
}

static void add_where(const struct row_kind *k, struct buf *sql)
{
	buf_add(sql, " WHERE uid = (SELECT uid FROM history WHERE id = ?1)");
	if (k->at)
		buf_addf(sql, " AND %s", k->at);
}

static void write_update(struct book *b, const struct row_kind *k, struct buf *sql)
{
	buf_addf(sql, "UPDATE %s SET (", k->table);
	row_columns(b, k, "", "", sql);
	buf_add(sql, ", changed_at, changed_by) = (SELECT ");
	add_values(b, k, sql);
	buf_add(sql, ", ?2, ?3 FROM history WHERE id = ?1)");
	add_where(k, sql);
}

static void write_insert(struct book *b, const struct row_kind *k, struct buf *sql)
{
	buf_addf(sql, "INSERT INTO %s (", k->table);
	row_columns(b, k, "", "", sql);
	buf_add(sql, ", changed_at, changed_by, uid) SELECT ");
	add_values(b, k, sql);
	buf_add(sql, ", ?2, ?3, uid FROM history WHERE id = ?1");
}

static void write_delete(const struct row_kind *k, struct buf *sql)
{
	buf_addf(sql, "DELETE FROM %s", k->table);
	add_where(k, sql);
}

/* Runs it; the result stays in q->code. False: the sentence is written, but for what
 * a constraint refused. */
static bool run(
	struct query *q, struct book *b, const struct change *c, const char *sql)
{
	query_start_once(q, b, sql);
	query_int(q, c->id);
	if (q->code == SQLITE_OK && sqlite3_bind_parameter_count(q->statement) > 1)
		query_stamp(q);
	query_row(q);
	return q->code == SQLITE_DONE;
}

/* Why SQLite refused what was to come back. */
static bool refuse(
	struct query *q, const struct change *c, const char *what, struct err *e)
{
	bool taken = query_taken(q), missing = q->code == SQLITE_CONSTRAINT_FOREIGNKEY;
	bool ok = query_end(q, what, e);

	if (taken)
		return err_set(e, ERR_INPUT,
			_("%s: there is another %s in its place since"), _(what),
			_(c->kind->word));
	if (missing)
		return err_set(e, ERR_INPUT,
			_("%s: something that the %s belongs to is gone since"),
			_(what), _(c->kind->word));
	return ok;
}

static bool run_change(struct book *b, const struct change *c, const char *sql,
	const char *what, struct err *e)
{
	struct query q;
	char name[128];

	if (!run(&q, b, c, sql))
		return refuse(&q, c, what, e);
	bool gone = sqlite3_changes(b->db) == 0;
	query_end(&q, what, e);
	row_say_change(b, c->kind, c->id, name, sizeof name);
	return !gone ||
	       err_set(e, ERR_INPUT, _("%s: %s is not as it was left any more"),
		       _(what), name);
}

static bool not_in_use(
	struct book *b, const struct change *c, const char *what, struct err *e)
{
	struct buf users = { 0 };
	char name[128];
	int64_t id = row_of_change(b, c->kind, c->id);
	bool ok = id == 0 || row_users(b, c->kind, id, &users, what, e);

	if (ok && users.n > 0) {
		row_say(b, c->kind, id, name, sizeof name);
		ok = err_set(e, ERR_INPUT, _("%s: %s is in use since, by %s"), _(what),
			name, users.text);
	}
	buf_free(&users);
	return ok;
}

static bool take_out(
	struct book *b, const struct change *c, const char *what, struct err *e)
{
	struct buf sql = { 0 };

	if (!not_in_use(b, c, what, e) ||
		!run_change(b, c,
			"INSERT OR REPLACE INTO tombstone (uid, kind, changed_at, "
			"changed_by) SELECT uid, kind, ?2, ?3 FROM history WHERE id = "
			"?1",
			what, e))
		return false;
	write_delete(c->kind, &sql);
	bool ok = run_change(b, c, sql.text, what, e);
	buf_free(&sql);
	return ok;
}

static bool bring_back(
	struct book *b, const struct change *c, const char *what, struct err *e)
{
	struct buf sql = { 0 };
	struct query q;

	query_start(&q, b,
		"DELETE FROM tombstone WHERE uid = (SELECT uid FROM history WHERE id = "
		"?1)");
	query_int(&q, c->id);
	if (!query_end(&q, what, e))
		return false;
	write_insert(b, c->kind, &sql);
	bool ok = run_change(b, c, sql.text, what, e);
	buf_free(&sql);
	return ok &&
	       (!c->kind->logs ||
		       run_change(b, c,
			       "INSERT INTO history (kind, uid, op, trap, day, "
			       "station, at, by) SELECT kind, uid, 'insert', trap, "
			       "day, station, ?2, ?3 FROM history WHERE id = ?1",
			       what, e));
}

static bool change_back(
	struct book *b, const struct change *c, const char *what, struct err *e)
{
	struct buf sql = { 0 };

	write_update(b, c->kind, &sql);
	bool ok = run_change(b, c, sql.text, what, e);
	buf_free(&sql);
	return ok;
}

bool change_take_back(
	struct book *b, const struct change *c, const char *what, struct err *e)
{
	if (!not_changed_since(b, c, what, e) || !fits(b, c, what, e))
		return false;
	memset(b->fits, 0, sizeof b->fits); /* a trap or a lure may change its pest */
	if (c->inserted)
		return take_out(b, c, what, e);
	return (c->removed ? bring_back(b, c, what, e) : change_back(b, c, what, e)) &&
	       (!c->of_visit || change_unsettle(b, c->id, what, e));
}

bool change_last(struct book *b, int64_t *id, const char *what, struct err *e)
{
	struct query q;

	query_start(&q, b, "SELECT max(id) FROM history");
	if (query_row(&q))
		*id = query_get(&q);
	return query_end(&q, what, e);
}

/* What the change h settled when it was made. */
#define SETTLED                                                                        \
	"history h JOIN history x ON x.trap = h.trap AND x.day = h.day AND x.id > "    \
	"h.id AND x.undoes = 0 AND x.step = h.step WHERE h.id = ?1"

bool change_unsettle(struct book *b, int64_t change, const char *what, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"INSERT INTO rival (trap, day, outcome, reason, count, females, "
		"others, new_card, new_lure, stirred, scout, note, uid, changed_at, "
		"changed_by) SELECT x.trap, x.day, json_extract(x.old, '$.outcome'), "
		"json_extract(x.old, '$.reason'), json_extract(x.old, '$.count'), "
		"json_extract(x.old, '$.females'), json_extract(x.old, '$.others'), "
		"json_extract(x.old, '$.new_card'), json_extract(x.old, "
		"'$.new_lure'), json_extract(x.old, '$.stirred'), "
		"json_extract(x.old, '$.scout'), json_extract(x.old, '$.note'), "
		"x.uid, json_extract(x.old, '$.changed_at'), json_extract(x.old, "
		"'$.changed_by') FROM " SETTLED);
	query_int(&q, change);
	if (!query_end(&q, what, e))
		return false;
	query_start(&q, b,
		"DELETE FROM history WHERE id IN (SELECT x.id FROM " SETTLED ")");
	query_int(&q, change);
	return query_end(&q, what, e);
}

bool change_mark(
	struct book *b, int64_t change, int64_t after, const char *what, struct err *e)
{
	struct query q;

	query_start(&q, b, "UPDATE history SET undoes = ?1 WHERE id > ?2");
	query_int(&q, change);
	query_int(&q, after);
	return query_end(&q, what, e);
}
