/* row.h - inside src/book: a row of any table that people enter. */
#ifndef BOOK_ROW_H
#define BOOK_ROW_H

#include "query.h"

#include "base/buf.h"

struct row_kind {
	const char *table;
	const char *word, *words; /* N_(): "trap", "traps" */
	const char *name;         /* SQL: what the row ?1 is called, and of what */
	const char *instead;      /* N_(): what is done when it cannot go; or NULL */
	/* SQL that finds a row beside its uid; ?1: the change. NULL: no need. */
	const char *at;
	bool logs; /* no trigger does: what was put in is written by hand */
};

/* NULL: no such table. */
const struct row_kind *row_kind(const char *table);

/* "7"; "number 17" for one that is gone. */
void row_name(
	struct book *b, const struct row_kind *k, int64_t id, char *out, size_t size);
/* "trap 7 of <farm>" */
void row_say(
	struct book *b, const struct row_kind *k, int64_t id, char *out, size_t size);
/* The same of the row that a change in the history is of. */
void row_say_change(struct book *b, const struct row_kind *k, int64_t change, char *out,
	size_t size);
/* Its id; 0: it is not in the book, or is a day of weather. */
int64_t row_of_change(struct book *b, const struct row_kind *k, int64_t change);

/* Begins to read SQL `columns` of a row; false: it is gone. End it with row_read. */
bool row_seek(struct query *q, struct book *b, const struct row_kind *k,
	const char *columns, int64_t id);
/* found: what row_seek said. False with ERR_NOT_FOUND when it is gone. */
bool row_read(struct query *q, const struct row_kind *k, bool found, struct err *e);
/* Takes a row out and leaves a tombstone; ERR_NOT_FOUND: there is none. */
bool row_bury(struct book *b, const struct row_kind *k, int64_t id, const char *what,
	struct err *e);

/* The kind whose rows a column names; NULL: the column is no reference. */
const struct row_kind *row_parent(
	struct book *b, const struct row_kind *k, const char *column);
/* Adds what refers to the row, "12 visits, 1 threshold", or nothing. */
bool row_users(struct book *b, const struct row_kind *k, int64_t id, struct buf *out,
	const char *what, struct err *e);

/* The columns of its table, each as `before`NAME`after`, with ", " between them; those
 * that every row has (uid, changed_at, changed_by) are left out. */
bool row_columns(struct book *b, const struct row_kind *k, const char *before,
	const char *after, struct buf *out);

#endif
