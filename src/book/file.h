/* file.h - inside src/book: files that are whole under their names, or not there. */
#ifndef BOOK_FILE_H
#define BOOK_FILE_H

#include "base/err.h"

#include <stddef.h>

/* The errno says that there is no room, on the disk or for this user. */
bool file_means_full(int system);
/* Both are there and the same, by whatever names. */
bool file_same(const char *a, const char *b);

/* An empty private file beside `target`, named in `part`. */
bool file_part(
	const char *target, char *part, size_t size, const char *what, struct err *e);
/* Syncs `part` and gives it the name `target` unless that is taken (*taken). */
bool file_publish(const char *part, const char *target, bool *taken, const char *what,
	struct err *e);
/* Syncs `part` and puts it in place of `target`, which is one of the two at any
 * time. */
bool file_replace(
	const char *part, const char *target, const char *what, struct err *e);
/* Makes the missing folders above path, mode 0700. */
bool file_folders(const char *path, const char *what, struct err *e);

#endif
