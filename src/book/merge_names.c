/* merge_names.c - rows that share a name but are not one row: the one with the smaller
 * uid keeps it, the others are shown as "3 (2)". And traps that share a turn. What was
 * typed is kept beside it (table renamed), since another book may change it yet. */
#include "merge_parts.h"

#include "base/mem.h"
#include "base/text.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct twin {
	unsigned char rep[STORE_UID_BYTES];
	char name[NAME_BYTES], scope[2 * STORE_UID_BYTES + 1];
};
struct twins {
	struct twin *items;
	size_t n, cap;
};

/* The uid of the farm, or '' for the whole book. */
static void add_scope(const struct merge_kind *k, const char *body, struct buf *sql)
{
	if (!k->scope)
		buf_add(sql, "''");
	else if (strcmp(k->table, "trap") == 0)
		buf_addf(sql,
			"(SELECT json_extract(x.body, '$.farm') FROM temp.m_place y "
			"JOIN temp.m_win x ON x.rep = y.rep WHERE y.hex = "
			"json_extract(%s, '$.block'))",
			body);
	else
		buf_addf(sql, "json_extract(%s, '$.%s')", body, k->scope);
}

static void read_twins(struct merge *m, struct twins *out)
{
	struct query q;

	if (!m->ok)
		return;
	query_start_once(&q, m->b,
		"SELECT rep, name, scope FROM (SELECT *, row_number() OVER (PARTITION "
		"BY scope, name ORDER BY rep) AS place FROM temp.m_called) WHERE place "
		"> 1 ORDER BY scope, name, rep");
	while (query_row(&q)) {
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		struct twin *t = &out->items[out->n++];
		query_get_uid(&q, t->rep);
		query_get_copy(&q, t->name, sizeof t->name);
		query_get_copy(&q, t->scope, sizeof t->scope);
	}
	merge_end(m, &q);
}

static bool is_taken(struct merge *m, const char *scope, const char *name)
{
	struct query q;
	bool taken = false;

	query_start_once(&q, m->b,
		"SELECT 1 FROM temp.m_called WHERE scope = ?1 AND (name = ?2 OR shown "
		"= ?2)");
	query_text(&q, scope);
	query_text(&q, name);
	taken = query_row(&q);
	merge_end(m, &q);
	return taken;
}

/* "3 (2)", or the next free number; cut between characters where the field is short. */
static void find_name(struct merge *m, const struct twin *t, size_t size, char *out)
{
	char end[16];

	for (int i = 2; m->ok; i++) {
		snprintf(end, sizeof end, " (%d)", i);
		text_copy(out, size - strlen(end), t->name);
		size_t n = strlen(out);
		text_copy(out + n, size - n, end);
		if (!is_taken(m, t->scope, out))
			return;
	}
}

static void give_name(struct merge *m, const struct twin *t, const char *name)
{
	struct query q;

	if (!m->ok)
		return;
	query_start_once(
		&q, m->b, "UPDATE temp.m_called SET shown = ?1 WHERE rep = ?2");
	query_text(&q, name);
	query_blob(&q, t->rep);
	merge_end(m, &q);
}

void merge_names(struct merge *m, const struct merge_kind *k)
{
	size_t size = strcmp(k->table, "pest") == 0 ? CODE_BYTES : NAME_BYTES;
	struct twins twins = { 0 };
	struct buf scope = { 0 };
	char name[NAME_BYTES];

	add_scope(k, "w.body", &scope);
	merge_run(m,
		"DROP TABLE IF EXISTS temp.m_called; CREATE TEMP TABLE m_called AS "
		"SELECT rep, json_extract(body, '$.%s') AS name, %s AS scope, NULL AS "
		"shown FROM temp.m_win w WHERE kind = '%s' AND shown; "
		"CREATE INDEX temp.m_called_name ON m_called (scope, name)",
		k->name, scope.text, k->table);
	read_twins(m, &twins);
	for (size_t i = 0; m->ok && i < twins.n; i++) {
		find_name(m, &twins.items[i], size, name);
		give_name(m, &twins.items[i], name);
	}
	merge_run(m,
		"UPDATE temp.m_win SET name = c.shown FROM temp.m_called c WHERE c.rep "
		"= m_win.rep AND c.shown IS NOT NULL; INSERT INTO temp.m_names SELECT "
		"rep, '%s', name, shown FROM temp.m_called WHERE shown IS NOT NULL",
		k->name);
	free(twins.items);
	buf_free(&scope);
}

/* Each trap of a farm has a turn of its own: its order, or one after the last. */
void merge_orders(struct merge *m)
{
	merge_run(m,
		"DROP TABLE IF EXISTS temp.m_turn; CREATE TEMP TABLE m_turn AS SELECT "
		"id, uid, driving_order AS base, row_number() OVER w + "
		"max(driving_order - n) OVER w AS turn FROM (SELECT id, uid, farm, "
		"driving_order, row_number() OVER (PARTITION BY farm ORDER BY "
		"driving_order, uid) AS n FROM temp.m_new) WINDOW w AS (PARTITION BY "
		"farm ORDER BY driving_order, uid ROWS UNBOUNDED PRECEDING);"
		"UPDATE temp.m_new SET driving_order = t.turn FROM temp.m_turn t WHERE "
		"t.id = m_new.id;"
		"INSERT INTO temp.m_names SELECT uid, 'driving_order', CAST(base AS "
		"TEXT), CAST(turn AS TEXT) FROM temp.m_turn WHERE turn <> base");
}
