/* parted.h - two books of one start, or of none, that are merged. */
#ifndef TESTS_BOOK_PARTED_H
#define TESTS_BOOK_PARTED_H

#include "merging.h"

#include "book/backups.h"
#include "book/matters.h"

/* Two books parted from one with a trap that was hung and counted once. */
struct two {
	struct shelf shelf;
	char a[96], b[96];
	struct desk desk; /* numbers of the rows, the same in both */
};

static inline void part(struct two *t)
{
	struct visit hung, v;

	*t = (struct two){ 0 };
	shelf_make(&t->shelf);
	desk_memory(&t->desk);
	hung = without_count(t->desk.trap, DAY0, OUTCOME_HUNG);
	v = counted(t->desk.trap, DAY0 + 7, 4);
	must(book_save_visit(t->desk.book, &hung, NULL, e));
	must(book_save_visit(t->desk.book, &v, NULL, e));
	assert_int_equal(raw(t->desk.book, "UPDATE visit SET changed_at = "
					   "'2024-10-11T07:00:00.000Z'"),
		SQLITE_OK);
	shelf_put(&t->shelf, t->desk.book, t->a);
	shelf_put(&t->shelf, t->desk.book, t->b);
	book_close(t->desk.book);
}

static inline void rejoin(struct two *t)
{
	drop_folder(t->shelf.folder);
}

static inline void count(const char *book, const char *who, struct visit v)
{
	struct book *b;

	must(b = book_open(book, BOOK_EXISTING, who, e));
	must(book_save_visit(b, &v, NULL, e));
	book_close(b);
}

static inline void run_sql(const char *book, const char *who, const char *sql)
{
	struct book *b;

	must(b = book_open(book, BOOK_EXISTING, who, e));
	if (raw(b, sql) != SQLITE_OK)
		fail_msg("%s: %s", sql, sqlite3_errmsg(b->db));
	book_close(b);
}

static inline void merge(const char *into, const char *from)
{
	struct merge_report report = { 0 };
	struct book *b;

	must(b = book_open(into, BOOK_EXISTING, "Office", e));
	must(book_merge(b, from, &report, e));
	book_merge_free(&report);
	book_close(b);
}

static inline int64_t number(const char *book, const char *sql)
{
	struct book *b;

	must(b = book_open(book, BOOK_READ, "", e));
	int64_t n = store_number(b, sql, -99);
	book_close(b);
	return n;
}

static inline void open_matters(const char *book, struct matters *m)
{
	struct book *b;

	*m = (struct matters){ 0 };
	must(b = book_open(book, BOOK_READ, "", e));
	must(book_open_matters(b, m, e));
	book_close(b);
}

static inline void assert_alike(const char *a, const char *b)
{
	struct book *x, *y;

	must(x = book_open(a, BOOK_READ, "", e));
	must(y = book_open(b, BOOK_READ, "", e));
	char *p = book_content(x), *q = book_content(y);
	assert_same_content(p, q, "not alike", 0);
	free(p);
	free(q);
	book_close(x);
	book_close(y);
}

static inline void both_ways(struct two *t)
{
	char a[96];

	shelf_copy(&t->shelf, t->a, a);
	merge(t->a, t->b);
	merge(t->b, a);
	assert_alike(t->a, t->b);
}

static inline struct matter *find_matter(
	struct matters *m, enum matter_kind what, const char *table)
{
	for (size_t i = 0; i < m->n; i++)
		if (m->items[i].what == what && strcmp(m->items[i].table, table) == 0)
			return &m->items[i];
	fail_msg("no matter %d of %s among %zu", (int)what, table, m->n);
	return NULL;
}

/* Books that were typed each by itself. */
static inline void typed_alone(struct two *t, const char *who, char out[static 96],
	const char *label, int64_t pest_of)
{
	struct desk d = { 0 };

	must(d.book = book_open(":memory:", BOOK_CREATE, who, e));
	desk_fill(&d);
	struct trap trap = { .farm = d.farm, .block = d.block };
	trap.pest = pest_of ? d.other_pest : d.pest;
	snprintf(trap.label, sizeof trap.label, "%s", label);
	must(book_put_trap(d.book, &trap, e));
	shelf_put(&t->shelf, d.book, out);
	book_close(d.book);
}

#endif
