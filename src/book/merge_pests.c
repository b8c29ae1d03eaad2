/* merge_pests.c - a trap that was made one for another pest is another trap from then
 * on: the plastic keeps the scent, and somebody else may have counted on it meanwhile.
 * So the change is told as what it was, one trap that went and one that came in its
 * place, before the books are held against each other. What the other book counted for
 * the first pest then stays on a trap of its own, as with any trap that was removed
 * here and is needed there. */
#include "merge_parts.h"

#include <stdio.h>
#include <string.h>

struct change {
	int64_t id; /* in the history */
	unsigned char uid[STORE_UID_BYTES];
	char at[STORE_TIME_SIZE], by[SCOUT_BYTES];
	int64_t place;        /* in m_pest */
	bool back;            /* the trap was put right again since */
	bool leaves, returns; /* the pest that the trap had at first */
	unsigned char
		other[STORE_UID_BYTES]; /* the trap as which it was told till then */
};

/* Of these changes none was told yet: what a merge brought (undoes <= 0) was. A pest
 * that was mistyped and put right again (`back`) is no change. */
static void find_changes(struct merge *m, const char *side)
{
	merge_run(m,
		"DROP TABLE IF EXISTS temp.m_pest; CREATE TEMP TABLE m_pest AS SELECT "
		"*, first_value(was) OVER (PARTITION BY uid ORDER BY id) AS first, 0 "
		"AS back FROM (SELECT h.id AS id, h.uid AS uid, json_extract(h.old, "
		"'$.pest') AS was, coalesce((SELECT json_extract(x.old, '$.pest') FROM "
		"%s.history x WHERE x.uid = h.uid AND x.trap IS NULL AND x.id > h.id "
		"AND x.old IS NOT NULL ORDER BY x.id LIMIT 1), (SELECT t.pest FROM "
		"%s.trap t WHERE t.uid = h.uid)) AS became FROM %s.history h WHERE "
		"h.kind = 'trap' AND h.op = 'update' AND coalesce(h.undoes, 1) > 0) "
		"WHERE was <> became ORDER BY uid, id",
		side, side, side);
	merge_run(m,
		"UPDATE temp.m_pest SET back = 1 WHERE id IN (SELECT c.id FROM "
		"temp.m_pest c JOIN temp.m_pest r ON r.uid = c.uid AND r.id >= c.id "
		"WHERE r.became = c.first)");
}

static bool next_change(struct merge *m, const char *side, struct change *c)
{
	struct query q;
	char sql[320];

	if (!m->ok)
		return false;
	sqlite3_snprintf(sizeof sql, sql,
		"SELECT p.rowid, h.id, p.back, p.was = p.first, p.became = p.first, "
		"h.uid, h.at, h.by FROM temp.m_pest p JOIN %s.history h ON h.id = p.id "
		"WHERE p.rowid > ?1 ORDER BY p.rowid LIMIT 1",
		side);
	query_start_once(&q, m->b, sql);
	query_int(&q, c->place);
	bool found = query_row(&q);
	if (found) {
		c->place = query_get(&q);
		c->id = query_get(&q);
		c->back = query_get(&q) != 0;
		c->leaves = query_get(&q) != 0;
		c->returns = query_get(&q) != 0;
		query_get_uid(&q, c->uid);
		snprintf(c->at, sizeof c->at, "%s", query_get_text(&q));
		snprintf(c->by, sizeof c->by, "%s", query_get_text(&q));
	}
	merge_end(m, &q);
	return m->ok && found;
}

/* FNV-1a, 64 bits. */
static uint64_t mix(uint64_t sum, const void *bytes, size_t n)
{
	const unsigned char *at = bytes;

	for (size_t i = 0; i < n; i++)
		sum = (sum ^ at[i]) * UINT64_C(1099511628211);
	return sum;
}

/* The same in every copy of the book, or each would bring a trap of its own. */
static void new_uid(const struct change *c, const unsigned char *was,
	unsigned char out[static STORE_UID_BYTES])
{
	uint64_t sum = mix(UINT64_C(14695981039346656037), was, STORE_UID_BYTES);

	for (size_t i = 0; i < STORE_UID_BYTES; i++) {
		if (i % 8 == 0) {
			sum = mix(sum, c->at, strlen(c->at));
			sum = mix(sum, c->by, strlen(c->by) + 1);
		}
		out[i] = (unsigned char)(sum >> (56 - i % 8 * 8));
	}
}

static void say_hex(
	const unsigned char uid[static STORE_UID_BYTES], char *hex, size_t size)
{
	for (size_t i = 0; i < STORE_UID_BYTES; i++)
		snprintf(hex + 2 * i, size - 2 * i, "%02X", uid[i]);
}

/* A tombstone of a trap that is gone is that of the last one in its place. */
static void tell(struct merge *m, const char *side, const struct change *c)
{
	char was[2 * STORE_UID_BYTES + 1], now[2 * STORE_UID_BYTES + 1];
	unsigned char uid[STORE_UID_BYTES];

	new_uid(c, c->uid, uid);
	say_hex(c->uid, was, sizeof was);
	say_hex(uid, now, sizeof now);
	merge_run(m,
		"UPDATE %s.history SET op = 'delete', undoes = -2 WHERE id = %lld;"
		"UPDATE %s.history SET uid = x'%s', old = CASE WHEN old IS NOT NULL "
		"THEN json_set(old, '$.uid', '%s') END WHERE uid = x'%s' AND trap IS "
		"NULL AND id > %lld;"
		"UPDATE OR REPLACE %s.tombstone SET uid = x'%s' WHERE uid = x'%s' AND "
		"NOT EXISTS (SELECT 1 FROM %s.trap t WHERE t.uid = x'%s')",
		side, (long long)c->id, side, now, now, was, (long long)c->id, side,
		now, was, side, was);
	merge_run(m,
		"UPDATE %s.trap SET uid = x'%s' WHERE uid = x'%s';"
		"UPDATE OR REPLACE %s.renamed SET uid = x'%s' WHERE uid = x'%s';"
		"INSERT INTO %s.tombstone (uid, kind, changed_at, changed_by) VALUES "
		"(x'%s', 'trap', %Q, %Q) ON CONFLICT (uid) DO UPDATE SET changed_at = "
		"excluded.changed_at, changed_by = excluded.changed_by WHERE "
		"(excluded.changed_at, excluded.changed_by) > (changed_at, "
		"changed_by)",
		side, now, was, side, now, was, side, was, c->at, c->by);
}

/* A book merged in between has the other trap: it went, and the first is there. */
static void put_right(struct merge *m, const char *side, struct change *c)
{
	char trap[2 * STORE_UID_BYTES + 1], other[2 * STORE_UID_BYTES + 1];

	say_hex(c->uid, trap, sizeof trap);
	say_hex(c->other, other, sizeof other);
	if (!c->leaves)
		merge_run(m,
			"INSERT INTO %s.history (kind, uid, op, old, undoes, at, by) "
			"SELECT 'trap', x'%s', 'delete', json_set(old, '$.uid', '%s'), "
			"0, at, by FROM %s.history WHERE id = %lld AND NOT EXISTS "
			"(SELECT 1 FROM %s.tombstone WHERE uid = x'%s'); INSERT OR "
			"IGNORE INTO %s.tombstone (uid, kind, changed_at, changed_by) "
			"VALUES (x'%s', 'trap', %Q, %Q)",
			side, other, other, side, (long long)c->id, side, other, side,
			other, c->at, c->by);
	if (c->returns)
		merge_run(m,
			"INSERT INTO %s.history (kind, uid, op, undoes, at, by) SELECT "
			"'trap', x'%s', 'insert', -3, %Q, %Q WHERE NOT EXISTS (SELECT "
			"1 FROM %s.history WHERE uid = x'%s' AND undoes = -3 AND at = "
			"%Q)",
			side, trap, c->at, c->by, side, trap, c->at);
	new_uid(c, c->leaves ? c->uid : c->other, c->other);
}

void merge_pests(struct merge *m)
{
	for (size_t s = 0; m->ok && s < 2; s++) {
		struct change c = { 0 };

		find_changes(m, merge_sides[s]);
		while (next_change(m, merge_sides[s], &c))
			if (c.back)
				put_right(m, merge_sides[s], &c);
			else
				tell(m, merge_sides[s], &c);
	}
}
