/* merging.h - books that part, go their own ways and are merged, and what is in them
 * whatever their row numbers are. */
#ifndef TESTS_BOOK_MERGING_H
#define TESTS_BOOK_MERGING_H

#include "entries.h"

#include "base/buf.h"
#include "book/merge.h"

struct shelf { /* a folder for books, gone at the end */
	char folder[64];
	int n;
};

static inline void shelf_make(struct shelf *s)
{
	s->n = 0;
	folder_make(s->folder, sizeof s->folder, "merge-test");
}

static inline void shelf_path(struct shelf *s, char out[static 96])
{
	snprintf(out, 96, "%s/%d.db", s->folder, s->n++);
}

/* A copy of a book as a file. */
static inline void shelf_put(struct shelf *s, struct book *b, char out[static 96])
{
	shelf_path(s, out);
	must(book_backup(b, out, e));
}

static inline void shelf_copy(struct shelf *s, const char *from, char out[static 96])
{
	size_t n;
	char *bytes = file_bytes(from, &n);

	shelf_path(s, out);
	file_write(out, bytes, n);
	free(bytes);
}

/* SELECT of a row's values with uids for numbers. */
static inline void content_sql(struct book *b, const char *table, struct buf *sql)
{
	struct query q;

	buf_clear(sql);
	buf_addf(sql, "SELECT '%s'", table);
	query_start_once(&q, b,
		"SELECT c.name, coalesce(f.\"table\", '') FROM pragma_table_info(?1) c "
		"LEFT JOIN pragma_foreign_key_list(?1) f ON f.\"from\" = c.name WHERE "
		"c.name <> 'id' ORDER BY c.cid");
	query_text(&q, table);
	while (query_row(&q)) {
		const char *name = query_get_text(&q), *parent = query_get_text(&q);
		if (*parent)
			buf_addf(sql,
				" || ' ' || coalesce((SELECT hex(p.uid) FROM %s p "
				"WHERE p.id = t.%s), '-')",
				parent, name);
		else
			buf_addf(sql, " || ' %s=' || quote(t.%s)", name, name);
	}
	must(query_end(&q, "", e));
	buf_addf(sql, " FROM %s t ORDER BY 1", table);
}

/* All that a book says, but for its history, and for origins, which are noted when
 * they are needed. */
static inline char *book_content(struct book *b)
{
	struct query tables, rows;
	struct buf out = { 0 }, sql = { 0 };

	query_start_once(&tables, b,
		"SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE "
		"'sqlite%' AND name NOT IN ('history', 'merged', 'origin') ORDER BY "
		"name");
	while (query_row(&tables)) {
		content_sql(b, query_get_text(&tables), &sql);
		query_start_once(&rows, b, sql.text);
		while (query_row(&rows))
			buf_addf(&out, "%s\n", query_get_text(&rows));
		must(query_end(&rows, "", e));
	}
	must(query_end(&tables, "", e));
	buf_add(&out, "");
	buf_free(&sql);
	return out.text;
}

static inline void assert_same_content(
	const char *got, const char *want, const char *why, unsigned seed)
{
	size_t at = 0;

	while (got[at] && got[at] == want[at])
		at++;
	if (got[at] == want[at])
		return;
	while (at > 0 && got[at - 1] != '\n')
		at--;
	fail_msg("seed %u: %s:\n%.700s\nnot\n%.700s", seed, why, got + at, want + at);
}

/* Counts what a merge may be blamed for: the random entries hang no trap. */
static inline void tell_fault(void *arg, const char *text)
{
	if (strstr(text, "before it was ever hung"))
		return;
	print_error("%s\n", text);
	(*(int *)arg)++;
}

#endif
