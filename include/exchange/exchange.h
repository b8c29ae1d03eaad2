/* exchange.h - the book's CSV files: what kinds there are, taking one in, giving one
 * out. An export imports again unchanged. */
#ifndef EXCHANGE_EXCHANGE_H
#define EXCHANGE_EXCHANGE_H

#include "base/buf.h"
#include "base/column.h"
#include "base/err.h"
#include "base/zone.h"
#include "book/book.h"

#include <stdio.h>

struct taking;
struct giving;

/* A kind of file; one file of src/exchange and one row of `kinds` each. */
struct kind {
	const char *name; /* "traps" */
	const char *help; /* N_(): one line */
	const struct column *columns;
	size_t n_columns;
	size_t row_bytes; /* of the struct that the columns lie in */
	/* See taking.h. */
	bool (*begin)(struct taking *t, struct err *e);
	bool (*take)(struct taking *t, const void *row, struct err *e);
	void (*look)(struct taking *t, const void *row); /* may be NULL */
	bool (*finish)(struct taking *t, struct err *e); /* may be NULL */
	void (*end)(struct taking *t);
	bool (*give)(struct giving *g, struct err *e);
	bool starts; /* a new book has some, shipped with the program */
};

extern const struct kind *const kinds[]; /* ends with NULL */

/* NULL and *e with the kinds that there are. */
const struct kind *kind_find(const char *name, struct err *e);

enum { PROBLEMS_MAX = 50 };

struct sentences {
	char **items;
	size_t n, cap;
};
void sentences_add(struct sentences *s, const char *text);
void sentences_free(struct sentences *s);

/* What came of an import. */
struct imported {
	int64_t n_new, n_changed, n_same; /* rows */
	int64_t n_removed;                /* thresholds, with replace */
	struct sentences notes;           /* worth telling, each a sentence */
	struct sentences warnings;        /* taken in, but likely not meant */
	int64_t n_warnings;        /* all; at most PROBLEMS_MAX of them are kept */
	struct sentences problems; /* file, line, column, value, what would be right */
	int64_t n_problems;        /* all; at most PROBLEMS_MAX of them are kept */
};
void imported_free(struct imported *i);
/* "1 204 new, 3 changed, 12 already there" */
void imported_say(const struct imported *i, struct buf *out);

/* Where the rows come from and which are wanted. */
struct import_from {
	FILE *file;                                 /* borrowed */
	const char *name;                           /* for messages */
	int32_t today;                              /* later dates are refused */
	bool (*wanted)(void *arg, const void *row); /* NULL: all */
	void *arg;
	bool replace; /* thresholds: those that the file lacks leave the book */
	const struct zone *zone; /* of times without an offset; borrowed; NULL: UTC */
	/* An invented book's: notes are put in as words_shipped() has them. */
	bool shipped;
};

/* Takes the file into the book: all rows or none, in one transaction. The first row
 * names the columns. Streams: memory grows by some 12 bytes a visit of the file or of
 * the book, no more; what is sorted beyond that, of a hundred thousand visits and more,
 * lies in files without a name where the system has its temporary ones. False with
 * ERR_INPUT when a row is wrong (see out->problems), the book then being as it was.
 * Zero-initialise out; free it in any case. */
bool exchange_import(struct book *b, const struct kind *kind,
	const struct import_from *from, struct imported *out, struct err *e);

/* Gives out the whole kind. `put` gets the text in pieces and empties it. */
bool exchange_export(struct book *b, const struct kind *kind,
	bool (*put)(void *arg, struct buf *text, struct err *e), void *arg,
	struct err *e);

/* Which of the published thresholds are meant: NULL = any. Each is compared with what
 * the row says; `source` is looked for in its source, as whole words. */
struct published {
	const char *pest, *crop, *condition, *source;
};

/* Takes the thresholds that come with the program and pass the filter; out->notes
 * begins with one line for each. ERR_NOT_FOUND when none passes. */
bool exchange_take_published(struct book *b, const struct published *filter,
	int32_t today, struct imported *out, struct err *e);

#endif
