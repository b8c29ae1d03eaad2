/* merge_versions.c - every version of the small tables' rows side by side, and which of
 * them holds. A row that nobody has changed since it was put in gives way to one that
 * somebody has, so that a new book's shipped lures do not undo what a grower set; then
 * the later time holds, then author and content, so that the order is a total one. No
 * book is made with settings or biofixes: of these the later one holds in any case. */
#include "merge_parts.h"

#include "base/words.h"

#include <string.h>

/* The uid, kept in this merge, of what the column names. */
static void add_reference(
	const struct merge_column *c, const char *side, bool aside, struct buf *sql)
{
	if (aside)
		buf_addf(sql,
			"(SELECT hex(n.rep) FROM temp.m_canon n WHERE n.hex = "
			"json_extract(t.old, '$.%s'))",
			c->name);
	else
		buf_addf(sql,
			"(SELECT hex(n.rep) FROM %s.%s p JOIN temp.m_canon n ON n.uid "
			"= p.uid WHERE p.id = t.%s)",
			side, c->parent, c->name);
}

/* What was typed, where a merge shows something else. */
static void add_typed(const char *column, const char *side, struct buf *sql)
{
	bool order = strcmp(column, "driving_order") == 0;

	buf_addf(sql,
		"coalesce((SELECT %s FROM %s.renamed r WHERE r.uid = t.uid AND "
		"r.field = '%s' AND r.shown = CAST(t.%s AS TEXT)), t.%s)",
		order ? "CAST(r.base AS INTEGER)" : "r.base", side, column, column,
		column);
}

/* The pest that a lure was given, where a merge shows it as one of no single pest
 * (merge_rows.c) and nobody has changed it since. */
static void add_given_pest(const char *side, struct buf *sql)
{
	buf_addf(sql,
		"coalesce((SELECT hex(n.rep) FROM temp.m_canon n JOIN %s.renamed r ON "
		"r.base = n.hex WHERE t.pest IS NULL AND r.uid = t.uid AND r.field = "
		"'pest' AND r.shown = t.changed_at), ",
		side);
}

static void add_value(const struct merge_kind *k, const struct merge_column *c,
	const char *side, bool aside, struct buf *sql)
{
	bool bent = (k->name && strcmp(c->name, k->name) == 0) ||
		    strcmp(c->name, "driving_order") == 0;
	bool given = !aside && strcmp(k->table, "lure") == 0 && *c->parent;

	if (given)
		add_given_pest(side, sql);
	if (*c->parent)
		add_reference(c, side, aside, sql);
	else if (aside)
		buf_addf(sql, "json_extract(t.old, '$.%s')", c->name);
	else if (bent)
		add_typed(c->name, side, sql);
	else
		buf_addf(sql, "t.%s", c->name);
	if (given)
		buf_add(sql, ")");
}

/* A trap stands on the farm of its block. */
static void add_body(struct merge *m, const struct merge_kind *k, const char *side,
	bool aside, struct buf *sql)
{
	struct merge_column columns[MERGE_COLUMNS];
	size_t n = merge_columns(m, k->table, columns);
	bool more = false;

	buf_add(sql, "json_object(");
	for (size_t i = 0; i < n; i++) {
		if (strcmp(k->table, "trap") == 0 &&
			strcmp(columns[i].name, "farm") == 0)
			continue;
		buf_addf(sql, "%s'%s', ", more ? ", " : "", columns[i].name);
		add_value(k, &columns[i], side, aside, sql);
		more = true;
	}
	buf_add(sql, ")");
}

/* Not so the changes that a merge has noted itself; but so what was put in again (see
 * merge_history.c). */
#define EDITED                                                                         \
	"EXISTS (SELECT 1 FROM %s.history h WHERE h.uid = t.uid AND h.trap IS NULL "   \
	"AND h.at = t.changed_at AND h.by = t.changed_by AND (h.op = 'update' AND "    \
	"h.undoes IS NOT -1 OR h.undoes = -3))"

static void read_rows(struct merge *m, const struct merge_kind *k, int side, bool aside)
{
	const char *schema = merge_sides[side];
	struct buf body = { 0 };

	add_body(m, k, schema, aside, &body);
	merge_run(m,
		"INSERT INTO temp.m_row SELECT '%s', %d, %s, t.uid, n.rep, "
		"t.changed_at, t.changed_by, " EDITED ", %s FROM %s.%s t JOIN "
		"temp.m_canon n ON n.uid = t.uid%s%s%s",
		k->table, aside ? side + 2 : side, aside ? "NULL" : "t.id", schema,
		body.text, schema, aside ? "aside" : k->table,
		aside ? " WHERE t.kind = '" : "", aside ? k->table : "",
		aside ? "'" : "");
	buf_free(&body);
}

static void choose(struct merge *m)
{
	merge_run(m,
		"INSERT INTO temp.m_win SELECT rep, kind, at, by, body, 0, "
		"NULL FROM (SELECT *, row_number() OVER (PARTITION BY rep ORDER BY "
		"edited AND kind NOT IN ('setting', 'biofix') DESC, at DESC, by DESC, "
		"body DESC) AS place FROM temp.m_row) WHERE place = 1");
	for (size_t s = 0; s < 2; s++)
		merge_run(m,
			"INSERT INTO temp.m_dead SELECT coalesce(n.rep, d.uid), "
			"d.kind, d.changed_at, d.changed_by FROM %s.tombstone d LEFT "
			"JOIN temp.m_canon n ON n.uid = d.uid WHERE d.kind NOT IN "
			"('visit', 'weather') ORDER BY d.changed_at, d.changed_by ON "
			"CONFLICT (rep) DO UPDATE SET at = excluded.at, by = "
			"excluded.by WHERE (excluded.at, excluded.by) > (at, by)",
			merge_sides[s]);
}

/* Rows of this book keep their numbers; others follow in their own book's order. */
static void number_rows(struct merge *m, const struct merge_kind *k)
{
	merge_run(m,
		"INSERT INTO temp.m_place SELECT rep, hex(rep), '%s', min(id), 1 FROM "
		"temp.m_row WHERE kind = '%s' AND side = 0 GROUP BY rep",
		k->table, k->table);
	merge_run(m,
		"INSERT INTO temp.m_place SELECT rep, hex(rep), '%s', (SELECT "
		"coalesce(max(id), 0) FROM main.%s) + row_number() OVER (ORDER BY "
		"min(side), min(id), rep), 0 FROM temp.m_row WHERE kind = '%s' AND "
		"rep NOT IN (SELECT rep FROM temp.m_place) GROUP BY rep",
		k->table, k->table, k->table);
	merge_run(m,
		"INSERT INTO temp.m_map SELECT '%s', r.id, p.id FROM temp.m_row r JOIN "
		"temp.m_place p ON p.rep = r.rep WHERE r.kind = '%s' AND r.side = 1",
		k->table, k->table);
}

/* The plastic keeps the scent: counts of one moth are none of another. A change of the
 * pest is another trap (merge_pests.c), so only a book whose history says nothing of it
 * comes here. */
static void refuse_other_pest(struct merge *m)
{
	for (size_t s = 0; m->ok && s < 2; s++) {
		char label[NAME_BYTES], farm[NAME_BYTES];
		struct query q;
		char sql[1024];

		sqlite3_snprintf(sizeof sql, sql,
			"SELECT t.label, f.name FROM temp.m_row r JOIN temp.m_win w ON "
			"w.rep = r.rep JOIN %s.trap t ON t.id = r.id JOIN %s.farm f ON "
			"f.id = t.farm WHERE r.kind = 'trap' AND r.side = %d AND "
			"json_extract(r.body, '$.pest') <> json_extract(w.body, "
			"'$.pest') AND EXISTS (SELECT 1 FROM %s.visit v WHERE v.trap = "
			"t.id) ORDER BY f.name, t.label",
			merge_sides[s], merge_sides[s], (int)s, merge_sides[s]);
		query_start_once(&q, m->b, sql);
		bool other = query_row(&q);
		if (other) {
			query_get_copy(&q, label, sizeof label);
			query_get_copy(&q, farm, sizeof farm);
		}
		merge_end(m, &q);
		if (m->ok && other)
			m->ok = err_set(m->e, ERR_INPUT,
				_("%s: trap %s of %s counts one pest in one book and "
				  "another in the other; hang a trap of its own for the "
				  "second pest first"),
				_(m->what), label, farm);
	}
}

/* Rows of one book are never joined: an origin is one row's in each book. Refused
 * whichever of the two books it is, since both must come to the same. */
static void refuse_joined(struct merge *m)
{
	int64_t n = merge_number(m,
		"SELECT count(*) FROM (SELECT 1 FROM temp.m_row WHERE side < 2 GROUP "
		"BY side, rep HAVING count(*) > 1)");

	if (m->ok && n > 0)
		m->ok = err_set(m->e, ERR_INPUT,
			_("%s: one of the two books knows two records of the other as "
			  "the same"),
			_(m->what));
}

void merge_versions(struct merge *m)
{
	merge_run(m,
		"CREATE TEMP TABLE m_row (kind TEXT, side INTEGER, id INTEGER, uid "
		"BLOB, rep BLOB, at TEXT, by TEXT, edited INTEGER, body TEXT);"
		"CREATE TEMP TABLE m_win (rep BLOB PRIMARY KEY, kind TEXT, at TEXT, by "
		"TEXT, body TEXT, shown INTEGER, name TEXT);"
		"CREATE TEMP TABLE m_dead (rep BLOB PRIMARY KEY, kind TEXT, at TEXT, "
		"by TEXT) WITHOUT ROWID;"
		"CREATE TEMP TABLE m_place (rep BLOB PRIMARY KEY, hex TEXT, kind TEXT, "
		"id INTEGER, was INTEGER) WITHOUT ROWID;"
		"CREATE INDEX temp.m_place_hex ON m_place (hex);"
		"CREATE TEMP TABLE m_map (kind TEXT, theirs INTEGER, ours INTEGER, "
		"PRIMARY KEY (kind, theirs)) WITHOUT ROWID;"
		"CREATE INDEX temp.m_map_ours ON m_map (kind, ours)");
	for (size_t i = 0; m->ok && i < merge_n_kinds; i++)
		for (int j = 0; j < 4; j++)
			read_rows(m, &merge_kinds[i], j % 2, j > 1);
	merge_run(m, "CREATE INDEX temp.m_row_rep ON m_row (rep); "
		     "CREATE INDEX temp.m_row_kind ON m_row (kind, side)");
	choose(m);
	for (size_t i = 0; m->ok && i < merge_n_kinds; i++)
		number_rows(m, &merge_kinds[i]);
	merge_run(m, "CREATE INDEX temp.m_win_kind ON m_win (kind)");
	refuse_joined(m);
	refuse_other_pest(m);
}
