/* merge_canon.c - which uids are one row. Each row has an origin for good: the key
 * under which it was first put in, and which of the rows with this key it was in its
 * book. Rows of one origin are one row, whatever they are called by now, so it does
 * not matter which books met first. The smallest of their uids is kept. */
#include "merge_parts.h"

#include <stdio.h>
#include <string.h>

/* The value of a column when the row was put in: the oldest form that the history
 * keeps, else the one that stands there. */
static void add_born(struct buf *sql, const char *column)
{
	buf_addf(sql,
		"CASE WHEN h.old IS NULL THEN t.%s ELSE json_extract(h.old, '$.%s') "
		"END",
		column, column);
}

static const char *parent_of(
	const struct merge_column *columns, size_t n, const char *name)
{
	for (size_t i = 0; i < n; i++)
		if (strcmp(columns[i].name, name) == 0)
			return columns[i].parent;
	return "";
}

static void add_refs(
	struct merge *m, const struct merge_kind *k, const char *side, struct buf *sql)
{
	struct merge_column columns[MERGE_COLUMNS];
	size_t n = merge_columns(m, k->table, columns);

	for (size_t i = 0; i < MERGE_REFS; i++) {
		const char *column = k->refs[i];
		if (!column) {
			buf_addf(sql, "NULL AS r%zu, ", i + 1);
			continue;
		}
		buf_addf(sql, "(SELECT p.uid FROM %s.%s p WHERE p.id = ", side,
			parent_of(columns, n, column));
		add_born(sql, column);
		buf_addf(sql, ") AS r%zu, ", i + 1);
	}
}

/* quote(a) || ',' || quote(b) */
static void add_words(const struct merge_kind *k, struct buf *sql)
{
	const char *at = k->words;

	while (*at) {
		char column[32];
		size_t n = strcspn(at, ",");
		snprintf(column, sizeof column, "%.*s", (int)n, at);
		buf_add(sql, at == k->words ? "quote(" : " || ',' || quote(");
		add_born(sql, column);
		buf_add(sql, ")");
		at += n;
		at += strspn(at, ", ");
	}
}

/* The rows that have no origin yet, and those that are gone: what came after them would
 * else have another turn in a book where they still stand. A row that is gone with what
 * it referred to shares its key with none. */
static void find_born(struct merge *m, const struct merge_kind *k, const char *side)
{
	struct buf sql = { 0 };

	add_refs(m, k, side, &sql);
	add_words(k, &sql);
	buf_add(&sql, " AS words, ");
	add_born(&sql, "changed_at");
	buf_addf(&sql,
		" AS born, coalesce(t.id, json_extract(h.old, '$.id')) AS id, t.uid IS "
		"NOT NULL AS here, (SELECT changed_at FROM %s.tombstone d WHERE d.uid "
		"= u.uid) AS gone FROM (SELECT uid FROM %s.%s UNION SELECT uid FROM "
		"temp.m_first) u LEFT JOIN %s.%s t ON t.uid = u.uid LEFT JOIN "
		"temp.m_first h ON h.uid = u.uid WHERE u.uid NOT IN (SELECT uid FROM "
		"%s.origin)",
		side, side, k->table, side, k->table, side);
	for (size_t i = 0; i < MERGE_REFS && k->refs[i]; i++)
		buf_addf(&sql,
			" AND (here OR (r%zu IS NULL) = (json_extract(h.old, '$.%s') "
			"IS NULL))",
			i + 1, k->refs[i]);
	merge_run(m,
		"DROP TABLE IF EXISTS temp.m_first; CREATE TEMP TABLE m_first (uid "
		"BLOB PRIMARY KEY, old TEXT, id INTEGER); INSERT INTO temp.m_first "
		"SELECT uid, old, min(id) FROM %s.history WHERE kind = '%s' AND old IS "
		"NOT NULL GROUP BY uid; DROP TABLE IF EXISTS temp.m_born; CREATE TEMP "
		"TABLE m_born AS SELECT *, row_number() OVER (PARTITION BY r1, r2, r3, "
		"r4, words ORDER BY id, here, born, uid) AS place, 0 AS turn FROM "
		"(SELECT u.uid AS uid, %s) WHERE id IS NOT NULL; CREATE INDEX "
		"temp.m_born_words ON m_born (words, place); CREATE INDEX "
		"temp.m_born_place ON m_born (place)",
		side, k->table, sql.text);
	buf_free(&sql);
}

/* In the order of their numbers, which no clock that was set bends: the turn after
 * those of the rows with this key that stood there. A row that was gone was no other:
 * it was put in again. */
static void take_turns(struct merge *m, const struct merge_kind *k, const char *side)
{
	int64_t n = merge_number(m, "SELECT coalesce(max(place), 0) FROM temp.m_born");

	for (int64_t place = 1; m->ok && place <= n; place++)
		merge_run(m,
			"UPDATE temp.m_born AS n SET turn = 1 + max(coalesce((SELECT "
			"max(o.turn) FROM %s.origin o WHERE o.kind = '%s' AND o.words "
			"= n.words AND o.ref1 IS n.r1 AND o.ref2 IS n.r2 AND o.ref3 IS "
			"n.r3 AND o.ref4 IS n.r4 AND NOT EXISTS (SELECT 1 FROM "
			"%s.tombstone d WHERE d.uid = o.of AND d.changed_at <= n.born "
			"AND d.uid NOT IN (SELECT uid FROM %s.%s))), 0), "
			"coalesce((SELECT max(x.turn) FROM temp.m_born x WHERE x.words "
			"= n.words AND x.place < n.place AND x.r1 IS n.r1 AND x.r2 IS "
			"n.r2 AND x.r3 IS n.r3 AND x.r4 IS n.r4 AND (x.here OR x.gone "
			"IS NULL OR x.gone > n.born)), 0)) WHERE place = %lld",
			side, k->table, side, side, k->table, (long long)place);
}

/* What was put in again after a removal is as good as changed: whoever did so knew what
 * had stood there. */
static void note_put_in_again(
	struct merge *m, const struct merge_kind *k, const char *side)
{
	merge_run(m,
		"INSERT INTO %s.history (kind, uid, op, undoes, at, by) SELECT '%s', "
		"n.uid, 'insert', -3, t.changed_at, t.changed_by FROM temp.m_born n "
		"JOIN %s.%s t ON t.uid = n.uid WHERE t.changed_at = n.born AND (EXISTS "
		"(SELECT 1 FROM temp.m_born x WHERE NOT x.here AND x.gone <= n.born "
		"AND x.words = n.words AND x.r1 IS n.r1 AND x.r2 IS n.r2 AND x.r3 IS "
		"n.r3 AND x.r4 IS n.r4) OR EXISTS (SELECT 1 FROM %s.origin o JOIN "
		"%s.tombstone d ON d.uid = o.of WHERE o.kind = '%s' AND d.changed_at "
		"<= n.born AND o.words = n.words AND o.ref1 IS n.r1 AND o.ref2 IS n.r2 "
		"AND o.ref3 IS n.r3 AND o.ref4 IS n.r4 AND o.of NOT IN (SELECT uid "
		"FROM %s.%s)))",
		side, k->table, side, k->table, side, side, k->table, side, k->table);
}

static void add_origins(struct merge *m, const struct merge_kind *k, const char *side)
{
	find_born(m, k, side);
	take_turns(m, k, side);
	note_put_in_again(m, k, side);
	merge_run(m,
		"INSERT INTO %s.origin (uid, kind, of, ref1, ref2, ref3, ref4, words, "
		"turn) SELECT uid, '%s', uid, r1, r2, r3, r4, words, turn FROM "
		"temp.m_born WHERE here",
		side, k->table);
}

/* What each uid is known by: two of them that share one of these are one row. */
static void claim(struct merge *m, const struct merge_kind *k, const char *side)
{
	merge_run(m,
		"INSERT OR IGNORE INTO temp.m_canon (uid, kind, rep, hex) SELECT uid, "
		"kind, uid, hex(uid) FROM %s.origin WHERE kind = '%s';"
		"INSERT INTO temp.m_claim SELECT uid, hex(of) FROM %s.origin WHERE "
		"kind = '%s';"
		"INSERT INTO temp.m_claim SELECT uid, turn || ',' || "
		"coalesce((SELECT hex(rep) FROM temp.m_canon WHERE uid = ref1), '') || "
		"',' || "
		"coalesce((SELECT hex(rep) FROM temp.m_canon WHERE uid = ref2), '') || "
		"',' || "
		"coalesce((SELECT hex(rep) FROM temp.m_canon WHERE uid = ref3), '') || "
		"',' || "
		"coalesce((SELECT hex(rep) FROM temp.m_canon WHERE uid = ref4), '') || "
		"',' || words FROM %s.origin WHERE kind = '%s'",
		side, k->table, side, k->table, side, k->table);
}

/* The smallest uid goes from each row to those that share a claim with it, until none
 * changes any more. */
static void join(struct merge *m)
{
	int64_t n = 1;

	merge_run(m, "ANALYZE temp.m_claim");
	while (m->ok && n > 0) {
		merge_run(m, "DELETE FROM temp.m_least; INSERT INTO temp.m_least "
			     "SELECT c.token, min(x.rep) FROM temp.m_claim c JOIN "
			     "temp.m_canon x ON x.uid = c.uid GROUP BY c.token");
		merge_run(m,
			"UPDATE temp.m_canon SET rep = l.rep FROM (SELECT c.uid, "
			"min(l.rep) AS rep FROM temp.m_claim c JOIN temp.m_least l ON "
			"l.token = c.token GROUP BY c.uid) l WHERE l.uid = "
			"temp.m_canon.uid AND l.rep < temp.m_canon.rep");
		n = sqlite3_changes(m->b->db);
	}
}

/* Both books hold origins by the uids kept in this merge from now on. */
static void keep_origins(struct merge *m)
{
	merge_run(m,
		"CREATE TEMP TABLE m_origin AS SELECT * FROM main.origin UNION SELECT "
		"* FROM other.origin;"
		"UPDATE temp.m_origin SET of = n.rep FROM temp.m_canon n WHERE n.uid = "
		"of; UPDATE temp.m_origin SET ref1 = n.rep FROM temp.m_canon n WHERE "
		"n.uid = ref1; UPDATE temp.m_origin SET ref2 = n.rep FROM temp.m_canon "
		"n WHERE n.uid = ref2; UPDATE temp.m_origin SET ref3 = n.rep FROM "
		"temp.m_canon n WHERE n.uid = ref3; UPDATE temp.m_origin SET ref4 = "
		"n.rep FROM temp.m_canon n WHERE n.uid = ref4");
	merge_write(m,
		"INSERT INTO main.origin SELECT * FROM temp.m_origin WHERE 1 ORDER BY "
		"turn, ref1, ref2, ref3, ref4 ON CONFLICT (uid) DO UPDATE SET of = "
		"excluded.of, ref1 = excluded.ref1, ref2 = excluded.ref2, ref3 = "
		"excluded.ref3, ref4 = excluded.ref4, turn = min(turn, excluded.turn) WHERE of <> "
		"excluded.of OR ref1 IS NOT excluded.ref1 OR ref2 IS NOT excluded.ref2 "
		"OR ref3 IS NOT excluded.ref3 OR ref4 IS NOT excluded.ref4 OR turn > "
		"excluded.turn");
}

void merge_canon(struct merge *m)
{
	merge_run(m,
		"CREATE TEMP TABLE m_canon (uid BLOB PRIMARY KEY, kind TEXT, rep BLOB, "
		"hex TEXT) WITHOUT ROWID; CREATE INDEX temp.m_canon_hex ON m_canon "
		"(hex);"
		"CREATE TEMP TABLE m_claim (uid BLOB, token TEXT);"
		"CREATE INDEX temp.m_claim_token ON m_claim (token);"
		"CREATE TEMP TABLE m_least (token TEXT PRIMARY KEY, rep BLOB) WITHOUT "
		"ROWID");
	for (size_t i = 0; m->ok && i < merge_n_kinds; i++) {
		merge_run(m, "DELETE FROM temp.m_claim");
		for (size_t s = 0; s < 2; s++) {
			add_origins(m, &merge_kinds[i], merge_sides[s]);
			claim(m, &merge_kinds[i], merge_sides[s]);
		}
		join(m);
	}
	keep_origins(m);
}
