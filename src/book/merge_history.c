/* merge_history.c - what rows were before comes along, with the numbers of this book.
 * It is history here, not a step: nobody takes back by it what others did in their
 * book. `undoes` says which: 0 for what comes from another book, -1 for a version that
 * this merge or an earlier one gave up for a later one, -2 for a trap that went since
 * it was made one for another pest, -3 beside a row's insertion when it was put in
 * again after a removal: no change of its own, and not listed. */
#include "merge_parts.h"

#include <string.h>

/* The row before, its numbers and those of what it names as they are in this book. */
static void add_old(struct merge *m, const char *table, struct buf *sql)
{
	struct merge_column columns[MERGE_COLUMNS];
	size_t n = merge_columns(m, table, columns);
	bool visit = strcmp(table, "visit") == 0,
	     weather = strcmp(table, "weather") == 0;

	buf_add(sql, "CASE WHEN h.old IS NULL THEN NULL ELSE json_set(h.old");
	if (visit)
		buf_add(sql, ", '$.id', json_extract(h.old, '$.id') - h.trap + t.ours");
	else if (!weather)
		buf_addf(sql,
			", '$.id', (SELECT ours FROM temp.m_map WHERE kind = '%s' AND "
			"theirs = json_extract(h.old, '$.id'))",
			table);
	for (size_t i = 0; i < n; i++)
		if (*columns[i].parent)
			buf_addf(sql,
				", '$.%s', (SELECT ours FROM temp.m_map WHERE kind = "
				"'%s' AND theirs = json_extract(h.old, '$.%s'))",
				columns[i].name, columns[i].parent, columns[i].name);
	buf_add(sql, ") END");
}

/* What makes two rows of two histories the same one. */
#define SAME_ROW                                                                       \
	"uid, op, at, by, coalesce(json_extract(old, '$.changed_at'), ''), "           \
	"coalesce(json_extract(old, '$.count'), '')"

/* What this book's history holds of the rows that the other one's speaks of. */
static void find_here(struct merge *m)
{
	merge_run(m,
		"CREATE TEMP TABLE m_here (uid BLOB, op TEXT, at TEXT, by TEXT, was "
		"TEXT, count, PRIMARY KEY (uid, op, at, by, was, count)) WITHOUT "
		"ROWID; CREATE TEMP TABLE m_spoken (uid BLOB PRIMARY KEY) WITHOUT "
		"ROWID; INSERT OR IGNORE INTO temp.m_spoken SELECT coalesce(n.rep, "
		"h.uid) FROM other.history h LEFT JOIN temp.m_canon n ON n.uid = "
		"h.uid; INSERT OR IGNORE INTO temp.m_here SELECT " SAME_ROW
		" FROM main.history WHERE uid IN (SELECT uid FROM temp.m_spoken)");
}

/* A visit whose trap is gone is told without it. */
static void import(struct merge *m, const char *table)
{
	struct buf old = { 0 };

	add_old(m, table, &old);
	merge_run(m,
		"DROP TABLE IF EXISTS temp.m_told; CREATE TEMP TABLE m_told AS SELECT "
		"h.id AS id, coalesce(n.rep, h.uid) AS uid, h.op AS op, %s AS old, "
		"t.ours AS trap, h.day AS day, s.ours AS station, CASE WHEN h.undoes < "
		"0 THEN h.undoes ELSE 0 END AS undoes, h.at AS at, h.by AS by FROM "
		"other.history h LEFT JOIN temp.m_canon n ON n.uid = h.uid LEFT JOIN "
		"temp.m_map t ON t.kind = 'trap' AND t.theirs = h.trap LEFT JOIN "
		"temp.m_map s ON s.kind = 'station' AND s.theirs = h.station WHERE "
		"h.kind = '%s'",
		old.text, table);
	merge_write(m,
		"INSERT INTO main.history (kind, uid, op, old, trap, day, station, "
		"undoes, at, by) SELECT '%s', uid, op, old, trap, day, station, "
		"undoes, at, by FROM temp.m_told WHERE (" SAME_ROW ") NOT IN (SELECT * "
		"FROM temp.m_here) ORDER BY id",
		table);
	buf_free(&old);
}

/* The farm of a trap is that of its block. */
static bool json_has(const struct merge_kind *k, const char *column)
{
	return strcmp(k->table, "trap") != 0 || strcmp(column, "farm") != 0;
}

/* A version that gave way and that no history holds, in this book's numbers. */
static void keep_losers(struct merge *m, const struct merge_kind *k)
{
	struct merge_column columns[MERGE_COLUMNS];
	size_t n = merge_columns(m, k->table, columns);
	struct buf sql = { 0 };

	if (strcmp(k->table, "trap") == 0)
		buf_add(&sql, ", '$.farm', (SELECT farm FROM main.trap x WHERE x.id = "
			      "p.id)");
	for (size_t i = 0; i < n; i++)
		if (*columns[i].parent && json_has(k, columns[i].name))
			buf_addf(&sql,
				", '$.%s', (SELECT id FROM temp.m_place WHERE hex = "
				"json_extract(r.body, '$.%s'))",
				columns[i].name, columns[i].name);
	merge_write(m,
		"INSERT INTO main.history (kind, uid, op, old, undoes, at, by) SELECT "
		"r.kind, r.rep, 'update', json_set(r.body, '$.id', p.id, '$.uid', "
		"p.hex, '$.changed_at', r.at, '$.changed_by', r.by%s), -1, w.at, w.by "
		"FROM temp.m_row r JOIN temp.m_win w ON w.rep = r.rep JOIN "
		"temp.m_place p ON p.rep = r.rep WHERE r.kind = '%s' AND r.side < 2 "
		"AND r.body <> w.body AND NOT " MERGE_KNEW("r") " ORDER BY r.at, r.by, "
								"r.body",
		sql.text ? sql.text : "", k->table);
	buf_free(&sql);
}

void merge_history(struct merge *m)
{
	merge_write(m,
		"UPDATE main.history SET uid = n.rep FROM temp.m_canon n WHERE n.uid = "
		"history.uid AND n.rep <> n.uid AND history.trap IS NULL");
	find_here(m);
	for (size_t i = 0; m->ok && i < merge_n_kinds; i++)
		import(m, merge_kinds[i].table);
	import(m, "visit");
	import(m, "weather");
	merge_keep_weather(m);
	merge_differences(m);
	for (size_t i = 0; m->ok && i < merge_n_kinds; i++)
		keep_losers(m, &merge_kinds[i]);
}
