/* merge_kinds.c - the small tables: what makes two rows the same row, and what two
 * rows must not share. */
#include "merge_parts.h"

#include "base/text.h"

#include <stdarg.h>

const char *const merge_sides[2] = { "main", "other" };

const struct merge_kind merge_kinds[] = {
	{ "station", { NULL }, "name", "name", NULL },
	{ "pest", { NULL }, "code", "code", NULL },
	{ "card", { NULL }, "name", "name", NULL },
	{ "lure", { NULL }, "name", "name", NULL },
	{ "farm", { NULL }, "name", "name", NULL },
	{ "block", { "farm" }, "name", "name", "farm" },
	{ "trap", { "farm", "pest" }, "label", "label", "farm" },
	{ "place", { "farm" }, "name", "name", "farm" },
	{ "setting", { NULL }, "name", NULL, NULL },
	{ "biofix", { "farm", "pest" }, "season", NULL, NULL },
	{ "threshold", { "pest", "lure", "farm", "block" },
		"crop, condition, place, flight, from_md, to_md, until_dd, measure, "
		"span_kind, span, comparator, value_x100",
		NULL, NULL },
	{ "treatment", { "block", "pest" },
		"day, started_at, ended_at, product, registration, amount, unit, "
		"area_x100",
		NULL, NULL },
	{ "dispensers", { "block", "pest" }, "day, type", NULL, NULL },
	{ "answer", { "block", "trap", "pest" }, "day", NULL, NULL },
	{ "pick", { "block" }, "day, planned", NULL, NULL },
	{ "fruit_check", { "block", "pest" },
		"day, part, tree, looked_at, stung, entered", NULL, NULL },
};
const size_t merge_n_kinds = sizeof merge_kinds / sizeof *merge_kinds;

static void run(struct merge *m, const char *format, va_list values)
{
	if (!m->ok)
		return;
	char *sql = sqlite3_vmprintf(format, values);
	m->ok = sql ? store_exec(m->b, sql, m->what, m->e)
		    : store_fail(m->b, SQLITE_NOMEM, m->what, m->e);
	sqlite3_free(sql);
}

void merge_run(struct merge *m, const char *format, ...)
{
	va_list values;

	va_start(values, format);
	run(m, format, values);
	va_end(values);
}

int64_t merge_write(struct merge *m, const char *format, ...)
{
	va_list values;

	int64_t before = sqlite3_total_changes(m->b->db);
	va_start(values, format);
	run(m, format, values);
	va_end(values);
	int64_t n = sqlite3_total_changes(m->b->db) - before;
	m->writes += n;
	return n;
}

int64_t merge_number(struct merge *m, const char *sql)
{
	struct query q;
	int64_t number = 0;

	if (!m->ok)
		return 0;
	query_start_once(&q, m->b, sql);
	if (query_row(&q))
		number = query_get(&q);
	merge_end(m, &q);
	return number;
}

void merge_end(struct merge *m, struct query *q)
{
	m->ok = query_end(q, m->what, m->ok ? m->e : NULL) && m->ok;
}

size_t merge_columns(
	struct merge *m, const char *table, struct merge_column out[MERGE_COLUMNS])
{
	struct query q;
	size_t n = 0;

	if (!m->ok)
		return 0;
	query_start(&q, m->b,
		"SELECT c.name, coalesce(f.\"table\", '') FROM "
		"pragma_table_info(?1, 'main') c LEFT JOIN "
		"pragma_foreign_key_list(?1, 'main') f ON f.\"from\" = c.name "
		"WHERE c.name NOT IN ('id', 'uid', 'changed_at', 'changed_by') "
		"ORDER BY c.cid");
	query_text(&q, table);
	while (n < MERGE_COLUMNS && query_row(&q)) {
		query_get_copy(&q, out[n].name, sizeof out->name);
		query_get_copy(&q, out[n].parent, sizeof out->parent);
		n++;
	}
	merge_end(m, &q);
	return n;
}
