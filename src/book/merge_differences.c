/* merge_differences.c - what was changed in both books, for a person to read: the
 * fields that differ, and which of the two rows holds. */
#include "merge_parts.h"

#include "row.h"

#include "base/mem.h"
#include "base/text.h"

#include <stdlib.h>

/* The next column as a text: of a reference, which is the uid kept, its name. */
static void read_value(struct merge *m, struct query *q, const struct row_kind *parent,
	char out[static NAME_BYTES])
{
	struct query row;
	int64_t id = 0;

	query_get_copy(q, out, NAME_BYTES);
	if (!parent || !*out)
		return;
	query_start(&row, m->b, "SELECT id FROM temp.m_place WHERE hex = ?1");
	query_text(&row, out);
	if (query_row(&row))
		id = query_get(&row);
	merge_end(m, &row);
	row_name(m->b, parent, id, out, NAME_BYTES);
}

static void add_fields(struct merge *m, const struct row_kind *kind, const char *ours,
	const char *theirs, struct merge_difference *d)
{
	struct query q;

	query_start(&q, m->b,
		"SELECT o.key, o.atom, t.atom FROM json_each(?1) o JOIN json_each(?2) "
		"t ON t.key = o.key WHERE o.atom IS NOT t.atom ORDER BY o.id");
	query_text(&q, ours);
	query_text(&q, theirs);
	while (d->n_fields < MERGE_FIELDS && query_row(&q)) {
		struct merge_field *f = &d->fields[d->n_fields++];
		query_get_copy(&q, f->field, sizeof f->field);
		const struct row_kind *parent = row_parent(m->b, kind, f->field);
		read_value(m, &q, parent, f->ours);
		read_value(m, &q, parent, f->theirs);
	}
	merge_end(m, &q);
}

static void read_difference(
	struct merge *m, struct query *q, struct merge_difference *x)
{
	query_get_copy(q, x->kind, sizeof x->kind);
	const struct row_kind *kind = row_kind(x->kind);
	row_say(m->b, kind, query_get(q), x->name, sizeof x->name);
	x->how = query_get(q) ? MERGE_THEIRS : MERGE_OURS;
	query_get_copy(q, x->our_time, sizeof x->our_time);
	query_get_copy(q, x->our_name, sizeof x->our_name);
	query_get_copy(q, x->their_time, sizeof x->their_time);
	query_get_copy(q, x->their_name, sizeof x->their_name);
	char *ours = mem_text(query_get_text(q));
	add_fields(m, kind, ours, query_get_text(q), x);
	free(ours);
}

static void add_difference(struct merge *m, struct query *q)
{
	struct merge_differences *d = &m->report->differences;

	d->all++;
	if (d->n >= MERGE_LISTED)
		return;
	d->items = mem_grow(d->items, &d->cap, d->n + 1, sizeof *d->items);
	struct merge_difference *x = &d->items[d->n++];
	*x = (struct merge_difference){ 0 };
	read_difference(m, q, x);
}

/* Rows that were changed in both books, neither knowing of the other's change. */
void merge_differences(struct merge *m)
{
	struct query q;

	if (!m->ok)
		return;
	query_start_once(&q, m->b,
		"SELECT a.kind, p.id, (w.at, w.by, w.body) = (b.at, b.by, b.body), "
		"a.at, a.by, b.at, b.by, a.body, b.body FROM temp.m_row a JOIN "
		"temp.m_row b ON b.rep = a.rep JOIN temp.m_win w ON w.rep = a.rep JOIN temp.m_place p ON p.rep "
		"= a.rep WHERE a.side = 0 AND b.side = 1 AND w.shown AND a.body <> "
		"b.body AND NOT " MERGE_KNEW("a") " AND NOT " MERGE_KNEW(
			"b") " ORDER BY a.kind, "
			     "p.id");
	while (query_row(&q))
		add_difference(m, &q);
	merge_end(m, &q);
}
