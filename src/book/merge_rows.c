/* merge_rows.c - the versions that hold, written into the small tables: from what
 * refers to other rows down to what is referred to, since a row that was removed in one
 * book stays while something of the other book needs it. */
#include "merge_parts.h"

#include <string.h>

/* ", or one of these tables has the row's number": its users are written by now. */
static void add_users(struct merge *m, const struct merge_kind *k, struct buf *sql)
{
	struct query q;

	if (!m->ok)
		return;
	query_start(&q, m->b,
		"SELECT t.name, f.\"from\" FROM main.sqlite_schema t JOIN "
		"pragma_foreign_key_list(t.name, 'main') f WHERE t.type = 'table' AND "
		"f.\"table\" = ?1 ORDER BY t.name, f.\"from\"");
	query_text(&q, k->table);
	while (query_row(&q)) {
		const char *table = query_get_text(&q), *column = query_get_text(&q);
		buf_addf(sql,
			" OR p.id IN (SELECT u.%s FROM main.%s u WHERE u.%s IS NOT "
			"NULL)",
			column, table, column);
	}
	merge_end(m, &q);
}

static void decide_shown(struct merge *m, const struct merge_kind *k)
{
	struct buf users = { 0 };

	add_users(m, k, &users);
	merge_run(m,
		"UPDATE temp.m_win SET shown = EXISTS (SELECT 1 FROM temp.m_place p "
		"LEFT JOIN temp.m_dead d ON d.rep = p.rep WHERE p.rep = m_win.rep AND "
		"(d.rep IS NULL OR (m_win.at, m_win.by) > (d.at, d.by)%s)) WHERE kind "
		"= '%s'",
		users.text ? users.text : "", k->table);
	buf_free(&users);
}

static void add_column(const struct merge_kind *k, const struct merge_column *c,
	const char *body, struct buf *sql)
{
	bool farm_of_trap =
		strcmp(k->table, "trap") == 0 && strcmp(c->name, "farm") == 0;

	if (farm_of_trap)
		buf_addf(sql,
			"(SELECT q.id FROM temp.m_win b JOIN temp.m_place q ON q.hex = "
			"json_extract(b.body, '$.farm') WHERE b.rep = (SELECT rep FROM "
			"temp.m_place WHERE hex = json_extract(%s, '$.block')))",
			body);
	else if (*c->parent)
		buf_addf(sql,
			"(SELECT q.id FROM temp.m_place q WHERE q.hex = "
			"json_extract(%s, '$.%s'))",
			body, c->name);
	else if (k->name && strcmp(c->name, k->name) == 0)
		buf_addf(sql, "coalesce(w.name, json_extract(%s, '$.%s'))", body,
			c->name);
	else
		buf_addf(sql, "json_extract(%s, '$.%s')", body, c->name);
}

/* The rows as they will stand, in the columns of their table. */
static void shape_rows(struct merge *m, const struct merge_kind *k, struct buf *names)
{
	struct merge_column columns[MERGE_COLUMNS];
	size_t n = merge_columns(m, k->table, columns);
	struct buf sql = { 0 };

	for (size_t i = 0; i < n; i++) {
		buf_addf(names, ", %s", columns[i].name);
		buf_add(&sql, ", ");
		add_column(k, &columns[i], "w.body", &sql);
		buf_addf(&sql, " AS %s", columns[i].name);
	}
	merge_run(m,
		"DROP TABLE IF EXISTS temp.m_new; CREATE TEMP TABLE m_new AS SELECT "
		"p.id AS id%s, w.rep AS uid, w.at AS changed_at, w.by AS changed_by "
		"FROM temp.m_win w JOIN temp.m_place p ON p.rep = w.rep WHERE w.kind = "
		"'%s' AND w.shown",
		sql.text, k->table);
	buf_free(&sql);
}

/* Names may change places, so all that changes goes before any of it comes back. */
static void replace_rows(struct merge *m, const struct merge_kind *k, const char *names)
{
	merge_run(m,
		"DROP TABLE IF EXISTS temp.m_old; CREATE TEMP TABLE m_old AS SELECT "
		"id%s, uid, changed_at, changed_by FROM main.%s EXCEPT SELECT * FROM "
		"temp.m_new",
		names, k->table);
	merge_write(m, "DELETE FROM main.%s WHERE id IN (SELECT id FROM temp.m_old)",
		k->table);
	merge_write(m,
		"INSERT INTO main.%s (id%s, uid, changed_at, changed_by) SELECT * FROM "
		"temp.m_new WHERE id NOT IN (SELECT id FROM main.%s) ORDER BY id",
		k->table, names, k->table);
}

/* A row that only got another time or uid reads as it did. */
static int64_t count_changed(struct merge *m, const char *names)
{
	struct buf sql = { 0 };

	buf_addf(&sql,
		"SELECT count(*) FROM (SELECT id%s FROM temp.m_old WHERE id IN (SELECT "
		"id FROM temp.m_new) EXCEPT SELECT id%s FROM temp.m_new)",
		names, names);
	int64_t n = merge_number(m, sql.text);
	buf_free(&sql);
	return n;
}

/* What is set aside since it does not go with another row was not removed. */
static int64_t count_gone(struct merge *m, const struct merge_kind *k)
{
	struct buf sql = { 0 };

	buf_addf(&sql,
		"SELECT count(*) FROM temp.m_old o JOIN temp.m_place p ON p.kind = "
		"'%s' AND p.id = o.id JOIN temp.m_dead d ON d.rep = p.rep WHERE o.id "
		"NOT IN (SELECT id FROM temp.m_new)",
		k->table);
	int64_t n = merge_number(m, sql.text);
	buf_free(&sql);
	return n;
}

static void count_rows(struct merge *m, const struct merge_kind *k, const char *names)
{
	int64_t came = merge_number(m,
		"SELECT count(*) FROM temp.m_new n JOIN temp.m_place p ON p.rep = "
		"n.uid WHERE NOT p.was");
	int64_t theirs = count_changed(m, names);

	merge_count_kind(m, k->table, came, theirs, count_gone(m, k));
}

/* A lure that traps of another pest get is shown as one of no single pest. Visits are
 * looked through only for one whose pest is not the same everywhere. */
static void free_lures(struct merge *m)
{
	merge_run(m,
		"DROP TABLE IF EXISTS temp.m_split; CREATE TEMP TABLE m_split AS "
		"SELECT r.rep AS uid FROM temp.m_row r JOIN temp.m_win w ON w.rep = "
		"r.rep WHERE r.kind = 'lure' AND json_extract(r.body, '$.pest') IS NOT "
		"json_extract(w.body, '$.pest') UNION SELECT n.rep FROM (SELECT * FROM "
		"main.renamed UNION SELECT * FROM other.renamed) x JOIN temp.m_canon n "
		"ON n.uid = x.uid WHERE x.field = 'pest'");
	merge_run(m,
		"DROP TABLE IF EXISTS temp.m_free; CREATE TEMP TABLE m_free AS SELECT "
		"n.id AS id, n.uid AS uid, n.pest AS pest, n.changed_at AS at FROM "
		"temp.m_new n WHERE n.pest IS NOT NULL AND (EXISTS (SELECT 1 FROM "
		"main.trap t WHERE t.lure = n.id AND t.pest <> n.pest) OR n.uid IN "
		"(SELECT uid FROM temp.m_split) AND EXISTS (SELECT 1 FROM main.visit v "
		"JOIN main.trap t ON t.id = v.trap WHERE v.new_lure = n.id AND t.pest "
		"<> n.pest));"
		"UPDATE temp.m_new SET pest = NULL WHERE id IN (SELECT id FROM "
		"temp.m_free);"
		"INSERT INTO temp.m_names SELECT f.uid, 'pest', p.hex, f.at FROM "
		"temp.m_free f JOIN temp.m_place p ON p.kind = 'pest' AND p.id = "
		"f.pest");
}

/* What does not stand in its table. */
static void put_aside(struct merge *m)
{
	merge_write(m, "DELETE FROM main.aside WHERE uid NOT IN (SELECT rep FROM "
		       "temp.m_win WHERE NOT shown)");
	merge_write(m,
		"INSERT INTO main.aside (uid, kind, old, changed_at, changed_by) "
		"SELECT rep, kind, body, at, by FROM temp.m_win WHERE NOT shown ON "
		"CONFLICT (uid) DO UPDATE SET old = excluded.old, changed_at = "
		"excluded.changed_at, changed_by = excluded.changed_by WHERE old <> "
		"excluded.old OR changed_at <> excluded.changed_at OR changed_by <> "
		"excluded.changed_by");
}

static void bury(struct merge *m)
{
	merge_write(m, "DELETE FROM main.tombstone WHERE uid IN (SELECT uid FROM "
		       "temp.m_canon WHERE rep <> uid)");
	merge_write(m,
		"INSERT INTO main.tombstone (uid, kind, changed_at, changed_by) SELECT "
		"rep, kind, at, by FROM temp.m_dead WHERE 1 ON CONFLICT (uid) DO "
		"UPDATE SET changed_at = excluded.changed_at, changed_by = "
		"excluded.changed_by WHERE (excluded.changed_at, excluded.changed_by) "
		"> (changed_at, changed_by)");
}

void merge_rows(struct merge *m)
{
	merge_run(m, "CREATE TEMP TABLE m_names (uid BLOB, field TEXT, base TEXT, "
		     "shown TEXT)");
	for (size_t i = merge_n_kinds; m->ok && i-- > 0;) {
		const struct merge_kind *k = &merge_kinds[i];
		struct buf names = { 0 };

		decide_shown(m, k);
		if (strcmp(k->table, "biofix") == 0)
			merge_fit_biofixes(m);
		if (strcmp(k->table, "setting") == 0)
			merge_fit_settings(m);
		if (k->name)
			merge_names(m, k);
		shape_rows(m, k, &names);
		if (strcmp(k->table, "trap") == 0)
			merge_orders(m);
		if (strcmp(k->table, "lure") == 0)
			free_lures(m);
		replace_rows(m, k, names.text);
		count_rows(m, k, names.text);
		buf_free(&names);
	}
	put_aside(m);
	bury(m);
	merge_write(m, "DELETE FROM main.renamed WHERE (uid, field, base, shown) NOT "
		       "IN (SELECT * FROM temp.m_names); INSERT INTO main.renamed "
		       "SELECT * FROM temp.m_names EXCEPT SELECT * FROM main.renamed");
}
