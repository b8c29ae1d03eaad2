/* sources.h - what the moths of a farm may come from. */
#ifndef BOOK_SOURCES_H
#define BOOK_SOURCES_H

#include "book/book.h"

/* By farm name, then by name; replaces what the list held and reuses its memory.
 * farm = 0: all. */
bool book_sources(struct book *b, int64_t farm, struct sources *out, struct err *e);

/* Id 0 makes a new row and sets the id, else that row is changed (its old form is kept
 * in the history). Corners are kept to 1e-7 degrees. Refused with one sentence: a name
 * that is taken on the farm or empty, a position or corner out of range, an outline of
 * 1 or 2 corners or of more than OUTLINE_MAX. */
bool book_put_source(struct book *b, struct source *s, struct err *e);
bool book_remove_source(struct book *b, int64_t id, struct err *e);

#endif
