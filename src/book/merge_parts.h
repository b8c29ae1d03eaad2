/* merge_parts.h - inside src/book: one merge. The other book is attached as `other`, a
 * private copy of it; what is worked out stands in tables of its own, all of them
 * temporary:
 *
 * m_canon  every uid that either book knows, and the one kept for it
 * m_place  the row number in this book of every row of the small tables
 * m_map    row numbers of the other book to those of this one
 * m_row    every version of the small tables' rows, references as uids
 * m_win    the version that holds, and whether it is shown
 * m_dead   the latest removal of each row
 * m_leaf   versions of the visits that have to be looked at one by one */
#ifndef BOOK_MERGE_PARTS_H
#define BOOK_MERGE_PARTS_H

#include "query.h"

#include "base/buf.h"
#include "book/merge.h"

enum { MERGE_REFS = 4, MERGE_COLUMNS = 32 };

/* A table whose rows are known by a key rather than by uid alone. */
struct merge_kind {
	const char *table;
	const char *refs[MERGE_REFS]; /* columns of the key that name other rows */
	const char *words;            /* its other columns, with commas */
	const char *name;  /* that no two rows of a scope share; NULL: none is so */
	const char *scope; /* its column: "farm"; NULL: the book */
};

/* In the order in which they refer to each other: a row comes after what it names. */
extern const struct merge_kind merge_kinds[];
extern const size_t merge_n_kinds;

struct merge_column {
	char name[32];
	char parent[32]; /* the table that it names a row of; "" */
};

struct merge {
	struct book *b;
	const char *what;
	struct err *e;
	bool ok;        /* false: *e says why, and all that follows does nothing */
	int64_t writes; /* rows of this book that were changed so far */
	struct merge_report *report;
};

/* Runs SQL put together with sqlite3_mprintf out of names of our own; *m->ok. */
void merge_run(struct merge *m, const char *format, ...);
/* The same, and its changes count as the merge's; they are returned. */
int64_t merge_write(struct merge *m, const char *format, ...);
int64_t merge_number(struct merge *m, const char *sql);
/* Fails the merge with a sentence of the query. */
void merge_end(struct merge *m, struct query *q);

/* The columns of a table that a person fills, and their number. */
size_t merge_columns(
	struct merge *m, const char *table, struct merge_column out[MERGE_COLUMNS]);
/* "main" or "other". */
extern const char *const merge_sides[2];

/* This book knew that version of a row and gave it up: SQL. */
#define MERGE_KNEW(row)                                                                \
	"EXISTS (SELECT 1 FROM main.history h WHERE h.uid = " row ".rep AND h.trap "   \
	"IS NULL AND h.old IS NOT NULL AND json_extract(h.old, '$.changed_at') = " row \
	".at AND json_extract(h.old, '$.changed_by') = " row ".by)"

/* The steps of a merge, in this order. */
void merge_pests(struct merge *m);
void merge_canon(struct merge *m);    /* origins and which uids are one row */
void merge_versions(struct merge *m); /* m_row, m_place, m_map, m_dead, m_win */
void merge_visits(struct merge *m);
void merge_weather(struct merge *m);
void merge_rows(struct merge *m); /* writes the small tables */
void merge_history(struct merge *m);
void merge_fit_biofixes(struct merge *m);
void merge_fit_settings(struct merge *m);
void merge_names(struct merge *m, const struct merge_kind *k);
void merge_orders(struct merge *m);
void merge_differences(struct merge *m);
void merge_keep_weather(struct merge *m);

void merge_count_kind(
	struct merge *m, const char *kind, int64_t came, int64_t theirs, int64_t gone);

/* Looks through a stranger's visits: texts that can be shown, and what they name. */
bool merge_visits_sound(
	struct book *b, const char *path, const char *what, struct err *e);

/* Opens the other book and copies it into the schema `other` of b. */
bool merge_attach(struct book *b, const char *path, const char *what, struct err *e);

#endif
