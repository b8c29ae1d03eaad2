/* row_changes.c - when a row was changed, and what stood in it before. */
#include "book/steps.h"

#include "row.h"

#include "base/mem.h"
#include "base/words.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

bool book_stamp(struct book *b, const char *kind, int64_t id, struct row_stamp *out,
	struct err *e)
{
	const struct row_kind *k = row_kind(kind);
	struct query q;

	assert(k);
	bool found = row_seek(&q, b, k, "changed_at, changed_by", id);
	if (found) {
		query_get_copy(&q, out->changed_at, sizeof out->changed_at);
		query_get_copy(&q, out->changed_by, sizeof out->changed_by);
	}
	return row_read(&q, k, found, e);
}

/* "'name', name, ": what json_object() is given to make the row a text. */
static bool add_pairs(struct book *b, const struct row_kind *k, struct buf *sql,
	const char *what, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"SELECT group_concat(printf('%Q, %s', name, name), ', ') "
		"FROM pragma_table_info(?1)");
	query_text(&q, k->table);
	if (query_row(&q))
		buf_add(sql, query_get_text(&q));
	return query_end(&q, what, e);
}

/* The row as the history would keep it; NULL: it is gone. Freed by the caller. */
static bool read_row(struct book *b, const struct row_kind *k, int64_t id, char **out,
	unsigned char uid[static STORE_UID_BYTES], struct err *e)
{
	const char *what = N_("the book cannot be read");
	struct buf sql = { 0 };
	struct query q;

	*out = NULL;
	buf_add(&sql, "SELECT json_object(");
	bool ok = add_pairs(b, k, &sql, what, e);
	buf_addf(&sql, "), uid FROM %s WHERE id = ?1", k->table);
	if (ok) {
		query_start_once(&q, b, sql.text);
		query_int(&q, id);
		if (query_row(&q)) {
			*out = mem_text(query_get_text(&q));
			query_get_uid(&q, uid);
		}
		ok = query_end(&q, what, e);
	}
	buf_free(&sql);
	return ok;
}

struct reader {
	struct book *book;
	const struct row_kind *kind;
	int64_t id;
	struct row_changes *out;
	char *after; /* the row after the change that is read; never NULL then */
	const char *what;
};

static struct row_change *next_change(struct reader *r, const struct row_change *head)
{
	struct row_changes *out = r->out;

	out->items = mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
	out->items[out->n] = *head;
	return &out->items[out->n++];
}

/* The next column as a text: of a reference its name. */
static void read_value(struct reader *r, struct query *q, const struct row_kind *parent,
	char out[static NOTE_BYTES])
{
	query_get_copy(q, out, NOTE_BYTES);
	if (parent && *out)
		row_name(r->book, parent, strtoll(out, NULL, 10), out, NOTE_BYTES);
}

/* One item for each field in which the forms differ. */
static bool compare(
	struct reader *r, const struct row_change *head, const char *old, struct err *e)
{
	struct query q;

	query_start(&q, r->book,
		"SELECT o.key, o.atom, n.atom FROM json_each(?1) o JOIN json_each(?2) "
		"n ON n.key = o.key WHERE o.atom IS NOT n.atom AND o.key NOT IN "
		"('id', 'uid', 'changed_at', 'changed_by') ORDER BY o.id");
	query_text(&q, old);
	query_text(&q, r->after);
	while (query_row(&q)) {
		struct row_change *c = next_change(r, head);
		query_get_copy(&q, c->field, sizeof c->field);
		const struct row_kind *parent = row_parent(r->book, r->kind, c->field);
		read_value(r, &q, parent, c->before);
		read_value(r, &q, parent, c->after);
	}
	return query_end(&q, r->what, e);
}

static bool read_step(struct reader *r, struct query *q, struct err *e)
{
	struct row_change head = { 0 };
	char op[8];

	query_get_copy(q, head.changed_at, sizeof head.changed_at);
	query_get_copy(q, head.changed_by, sizeof head.changed_by);
	query_get_copy(q, op, sizeof op);
	char *old = mem_text(query_get_text(q));
	bool ok = true;
	if (strcmp(op, "update") == 0) {
		ok = compare(r, &head, old, e);
	} else {
		struct row_change *c = next_change(r, &head);
		bool in = strcmp(op, "insert") == 0;
		row_name(
			r->book, r->kind, r->id, in ? c->after : c->before, NOTE_BYTES);
	}
	free(r->after);
	r->after = old;
	return ok;
}

bool book_row_changes(struct book *b, const char *kind, int64_t id,
	struct row_changes *out, struct err *e)
{
	struct reader r = { .book = b, .kind = row_kind(kind), .id = id, .out = out };
	unsigned char uid[STORE_UID_BYTES];
	struct query q;

	assert(r.kind);
	out->n = 0;
	r.what = N_("the history cannot be read");
	bool ok = read_row(b, r.kind, id, &r.after, uid, e);
	if (ok && r.after) {
		query_start(&q, b,
			"SELECT at, by, op, old FROM history WHERE uid = ?1 AND "
			"trap IS NULL AND undoes IS NOT -3 ORDER BY id DESC");
		query_blob(&q, uid);
		while (ok && query_row(&q))
			ok = read_step(&r, &q, e);
		ok = query_end(&q, r.what, ok ? e : NULL) && ok;
	}
	free(r.after);
	return ok;
}
