/* acts_parts.h - inside src/exchange: the kinds of files of what was done in blocks.
 * Their records have no name: a row is about the one in the book that has its key
 * values, each once, one that the row leaves as it is before others. */
#ifndef EXCHANGE_ACTS_PARTS_H
#define EXCHANGE_ACTS_PARTS_H

#include "answers/entry_acts.h"
#include "book/acts.h"
#include "exchange/taking.h"

/* What a kind has of its own; records and rows are structs behind plain pointers. */
struct act_way {
	const struct kind *kind;
	const char *const *keys; /* columns, ends with NULL */
	size_t record_bytes;
	const void *blank; /* the record that a new one begins as */
	/* All of the book; *records is the caller's to free. */
	bool (*read)(struct book *b, void **records, size_t *n, struct err *e);
	int64_t (*block)(const void *record);
	void (*row)(const struct known *k, const void *record, void *row);
	bool (*over)(struct hearing *h, const struct known *k, const void *row,
		void *record);
	bool (*put)(struct book *b, void *record, struct err *e);
};

struct acts_state {
	const struct act_way *way;
	struct known known;
	char *records; /* of the book, as the file leaves them */
	char *rows;    /* of each, as it was before */
	bool *touched; /* by index: the file has it */
	size_t n, cap, n_before, touched_cap;
	/* From the first row taken on, when the file's columns are known: the first
	 * record of each key, and by index the next one of the same; SIZE_MAX: none. */
	struct names first_alike;
	size_t *next_alike;
};

bool acts_begin(struct taking *t, const struct act_way *way, struct err *e);
bool acts_take(struct taking *t, const void *row, struct err *e);
void acts_end(struct taking *t);
/* By farm, block and day. */
bool acts_give(struct giving *g, const struct act_way *way, struct err *e);

/* Warns of each pick that is doubted, and says what to heed; d->known and d->zone are
 * filled in. */
void acts_warn_picks(struct taking *t, struct doubts *d);

/* The first and the last day that a book has. */
enum { ACTS_FIRST = -25567, ACTS_LAST = 84005 };

#endif
