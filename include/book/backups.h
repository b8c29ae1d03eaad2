/* backups.h - the copies beside the book, what is in them, and going back to one. */
#ifndef BOOK_BACKUPS_H
#define BOOK_BACKUPS_H

#include "book/book.h"

#include <stddef.h>

/* What a book holds, in numbers. */
struct book_contents {
	int version;
	int64_t farms, blocks, traps, visits, thresholds, weather_days;
	int32_t first_visit, last_visit; /* DAY_NONE: none */
	char changed_at[32];             /* the latest change in it, UTC; "" */
	char changed_by[SCOUT_BYTES];
};

struct backup {
	char *path;       /* owned */
	int32_t day;      /* from its name */
	bool is_replaced; /* a book that was replaced on that day, in UTC */
};
struct backups {
	struct backup *items; /* replaced books first; of each kind the latest first */
	size_t n, cap;
};
/* Those in `backups/` beside the book at `path`, and the books that book_restore kept
 * beside it; replaces what the list held. None: an empty list. */
bool book_backups(const char *path, struct backups *out, struct err *e);
void book_backups_free(struct backups *s);

/* Looks into a file without changing it: refused with the same sentences as book_open.
 * A book of an older version is looked into as it is. */
bool book_look_into(const char *path, struct book_contents *out, struct err *e);

/* Puts the backup in place of the book at `path`: the replaced book is kept beside it
 * under the file name in kept (`book-replaced-2026-07-21-074211.db`, in UTC; "" when
 * there was none), and what stands at `path` is at every moment one of the two, whole.
 * The backup itself stays. A damaged book is replaced too, and kept as it is. Refused:
 * a file that book_look_into refuses or one with a damaged page, a book that another
 * program is reading or writing, one of another program. The caller closes its own
 * handle first; handles that other programs hold refuse to write from then on, as for
 * a book that was moved. */
bool book_restore(
	const char *path, const char *backup, char *kept, size_t size, struct err *e);

#endif
