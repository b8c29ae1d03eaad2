/* change.h - inside src/book: one change in the history, taken back. */
#ifndef BOOK_CHANGE_H
#define BOOK_CHANGE_H

#include "row.h"

struct change {
	int64_t id; /* in the history */
	const struct row_kind *kind;
	bool inserted, removed; /* neither: a row was changed */
	bool of_visit;
};

/* From what stands in the row now to what stood there before, itself in the history.
 * ERR_INPUT: the row was changed later, its place is taken, or it is in use. */
bool change_take_back(
	struct book *b, const struct change *c, const char *what, struct err *e);

/* False with a sentence when a visit that comes back would count for another pest:
 * that of its trap was changed since. */
bool change_pest_stays(struct book *b, int64_t change, const char *what, struct err *e);

/* The latest row of the history; 0: there is none. */
bool change_last(struct book *b, int64_t *id, const char *what, struct err *e);

/* What two books said of the visit stands again where the change settled it. */
bool change_unsettle(struct book *b, int64_t change, const char *what, struct err *e);

/* All that the history got after the row `after` takes that change back. */
bool change_mark(
	struct book *b, int64_t change, int64_t after, const char *what, struct err *e);

#endif
