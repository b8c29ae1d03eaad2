/* matters.h - what merges left for a person to settle. It stays in the book, and comes
 * along to other books, until somebody does. */
#ifndef BOOK_MATTERS_H
#define BOOK_MATTERS_H

#include "book/book.h"

#include <stddef.h>

enum { MATTER_TEXT = 120 };

enum matter_kind {
	MATTER_COUNTS,  /* a trap was counted twice on a day */
	MATTER_REMOVED, /* a visit removed in one book, changed in another: not shown */
	MATTER_KEPT, /* a row removed in one book, changed or used in another: shown */
	/* The same, not shown; or, with removed_at "", a row that does not go with a
	 * later one. */
	MATTER_ASIDE,
	MATTER_NAMES, /* two rows with one name */
	MATTER_COUNT
};
/* One version of a visit that a person may choose. */
struct matter_choice {
	int64_t rival; /* 0: the one that is in the diary */
	struct visit visit;
	struct visit_words words;
	char changed_at[32], changed_by[SCOUT_BYTES];
	char lure[NAME_BYTES], card[NAME_BYTES]; /* names of the new ones; "": none */
};
struct matter {
	enum matter_kind what;
	char table[24];
	char name[MATTER_TEXT];  /* of the row; with MATTER_NAMES as shown */
	char typed[MATTER_TEXT]; /* with MATTER_NAMES: the name that both have */
	/* MATTER_KEPT: the trap was made one for another pest, and its counts are of
	 * the first. */
	bool other_pest;
	int64_t id; /* of the row, 0: not in its table; of visits the trap */
	unsigned char uid[16];
	char removed_at[32], removed_by[SCOUT_BYTES];
	char changed_at[32], changed_by[SCOUT_BYTES];
	int32_t day;                   /* of a visit */
	struct matter_choice *choices; /* of a visit; owned, by time */
	size_t n_choices, cap_choices;
};
struct matters {
	struct matter *items;
	size_t n, cap;
};
/* All that is to be settled: visits by day and trap, then the others. */
bool book_open_matters(struct book *b, struct matters *out, struct err *e);
void book_matters_free(struct matters *m);

/* Unsettled counts of the farm's traps (0 = all) from..to, by trap and day: what the
 * rivals of the visit in the diary say, without those that say the same. */
struct rival_count {
	int64_t trap;
	int32_t day;
	struct visit visit;
	char by[SCOUT_BYTES], shown_by[SCOUT_BYTES]; /* who counted; or changed it */
};
struct rival_counts {
	struct rival_count *items;
	size_t n, cap;
};
bool book_rivals(struct book *b, int64_t farm, int32_t from, int32_t to,
	struct rival_counts *out, struct err *e);

/* Settles a trap's visits of a day: `v` holds from now on, by whoever the book is open
 * for; NULL: the trap has no visit that day. What stood there stays in the history.
 * ERR_NOT_FOUND: there is nothing to settle. One step. */
bool book_settle_visit(struct book *b, int64_t trap, int32_t day, const struct visit *v,
	const struct visit_words *w, struct err *e);
/* Settles a row of another table: kept (put back if it is not shown), or removed. */
bool book_settle_row(struct book *b, const struct matter *m, bool keep, struct err *e);

#endif
