/* entry_visited.h - visits on days on which the block was barred by a treatment that
 * was entered after them. */
#ifndef ANSWERS_ENTRY_VISITED_H
#define ANSWERS_ENTRY_VISITED_H

#include "answers/entry_known.h"
#include "base/acts.h"
#include "book/book.h"

/* Who hears sentences. */
struct said {
	void (*say)(void *arg, const char *sentence);
	void *arg;
};
/* "trap 1 of Addermoor was visited on 2026-07-21; nobody was to enter Pond block before
 * 2026-07-22T10:30+02:00", of each visit in the book on a day that the treatment bars
 * from its first minute to its last. False: the book failed. */
bool treatment_visited(struct book *b, const struct known *k, const struct treatment *t,
	const struct zone *z, const struct said *out, struct err *e);

#endif
