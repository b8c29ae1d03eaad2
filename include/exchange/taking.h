/* taking.h - inside src/exchange: what a kind gets to work with while a file is taken
 * in or given out. */
#ifndef EXCHANGE_TAKING_H
#define EXCHANGE_TAKING_H

#include "answers/entry_rows.h"
#include "base/csv.h"
#include "base/kinds.h"
#include "base/names.h"
#include "exchange/exchange.h"

/* An import under way. A kind's `begin` sets t->state and `end` frees it. `take` sees
 * rows whose every value reads; it complains with taking_bad and goes on (true). `look`
 * sees the others, their bad values empty, and names what the book lacks. False
 * is a failure of the book: of this row (ERR_INPUT, ERR_NOT_FOUND: noted as the row's
 * problem) or of everything (ERR_BOOK). */
struct taking {
	struct book *book;
	const struct kind *kind;
	const struct import_from *from;
	struct imported *out;
	struct csv csv;
	int field_of[CSV_FIELDS_MAX];  /* by column of the kind; -1 = not in the file */
	int column_of[CSV_FIELDS_MAX]; /* by field of the file */
	size_t n_fields;
	struct hearing hear; /* what is wrong with the present row is heard by it */
	void *state;
};

/* Notes that the value of `column` in the present row is wrong; the text goes on
 * after the value: `is no lure of the book; there are: ...`. Returns true. */
bool taking_bad(struct taking *t, const char *column, const char *fmt, ...)
	__attribute__((format(printf, 3, 4)));

/* Looks a name up (0 and nothing noted when `name` is empty); notes an unknown one
 * with those that there are. False then. `what`: "lure". */
bool taking_find(struct taking *t, const struct names *names, const char *column,
	const char *name, int64_t *id);

/* True if the file has the column: an empty value then means what the column's help
 * says; without the column what is in the book stays as it is. */
bool taking_has(const struct taking *t, const char *column);

/* The column's value in the present row as it stands there; "" without the column. */
const char *taking_value(const struct taking *t, const char *column);

/* Notes a problem of a whole row. */
void taking_bad_row(struct taking *t, int64_t line, const char *what);

/* Notes something that was taken in and is likely not meant: a whole sentence. */
void taking_warn(struct taking *t, const char *fmt, ...)
	__attribute__((format(printf, 2, 3)));

/* Counts a row: new, changed or already there. */
enum took { TOOK_NEW, TOOK_CHANGED, TOOK_SAME };
void taking_count(struct taking *t, enum took what);

/* An export under way. */
struct giving {
	struct book *book;
	const struct kind *kind;
	struct buf text;
	bool (*put)(void *arg, struct buf *text, struct err *e);
	void *arg;
	struct err *e;
};
bool giving_row(struct giving *g, const void *row);

#endif
