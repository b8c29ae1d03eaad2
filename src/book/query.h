/* query.h - inside src/book: statements and the values bound to them. */
#ifndef BOOK_QUERY_H
#define BOOK_QUERY_H

#include "store.h"

enum { QUERY_DAYS = 2 }; /* that a statement takes at most */

/* A statement in use. A failure is remembered and makes every later call do nothing,
 * so that only query_end needs to be asked. */
struct query {
	struct book *book;
	sqlite3_stmt *statement;
	bool once;         /* the statement ends with the query */
	int code;          /* SQLite's extended code; SQLITE_OK while all is well */
	int at;            /* next value to bind or column to read */
	const char *table; /* named when a row is damaged; NULL: none is named */
	char damage[160];  /* what is wrong with the row just read; "": nothing */
	char now[STORE_TIME_SIZE]; /* bound by address, as are all texts */
	char days[QUERY_DAYS][DAY_ISO_SIZE];
	int n_days;
	unsigned char uid[STORE_UID_BYTES];
};

/* `sql` is a literal: its address finds the prepared statement again. */
void query_start(struct query *q, struct book *b, const char *sql);
/* The same for SQL put together out of names of our own tables and columns: prepared
 * for this use alone. */
void query_start_once(struct query *q, struct book *b, const char *sql);

/* Bind the next value. A text is borrowed until query_end. */
void query_int(struct query *q, int64_t value);
void query_id(struct query *q, int64_t id);       /* 0: NULL */
void query_count(struct query *q, int64_t count); /* below 0: NULL */
void query_text(struct query *q, const char *text);
void query_word(struct query *q, const char *word); /* "": NULL */
void query_day(struct query *q, int32_t day);       /* DAY_NONE: NULL */
void query_limit(struct query *q, int32_t day); /* moved into the years a book has */
void query_real(struct query *q, bool given, double value);
void query_stamp(struct query *q); /* changed_at, changed_by */
void query_uid(struct query *q);   /* a new one */
void query_blob(struct query *q, const unsigned char uid[static STORE_UID_BYTES]);

/* The next row; false at the end and on failure. */
bool query_row(struct query *q);

/* Read the next column. A book may come from somebody else or from a failing disk: a
 * number beyond what the type holds, or a text that is no day, fails the query. */
int64_t query_get(struct query *q);       /* NULL: 0 */
int32_t query_get32(struct query *q);     /* the same */
int32_t query_get_count(struct query *q); /* 0 or more; NULL: -1 */
int32_t query_get_day(struct query *q);   /* NULL: DAY_NONE */
double query_get_real(struct query *q, bool *given);
double query_get_degrees(struct query *q); /* NULL: NAN */
char query_get_unit(struct query *q);      /* 'C', 'F'; NULL: 0 */
/* Fails the query unless it is lo..hi; NULL reads as 0. */
int32_t query_get_within(struct query *q, int32_t lo, int32_t hi);
/* As it stands in the book, NULL as "", until the next row: for words of the program
 * and dates alone. */
const char *query_get_text(struct query *q);
/* A text to be shown. Control characters and bytes that are no UTF-8 become '?'
 * rather than fail the query: one bad byte in a note must not take the season's
 * counts away from the grower. book_check names the text. */
void query_get_copy(struct query *q, char *out, size_t size);
/* Any other length is damage; out is zeros then. */
void query_get_uid(struct query *q, unsigned char out[static STORE_UID_BYTES]);

/* Fails the query unless good: the column just read holds what it never may, which is
 * named with its table and value. */
void query_require(struct query *q, bool good);

/* True when the row is refused because another one has its name. */
bool query_taken(const struct query *q);

/* Ends the use; runs a statement that gives no rows. False: *e says "what: why". */
bool query_end(struct query *q, const char *what, struct err *e);

/* Ends putting a row whose statement takes the stamp and then the uid of a new row
 * (*id = 0, which gets its id) or the id of an old one. Ends the change as well. */
bool store_put(struct query *q, int64_t *id, const char *name, const char *what,
	struct err *e);

#endif
