/* uid.h - what other programs may know a row by, whichever truck's book it is in. */
#ifndef BOOK_UID_H
#define BOOK_UID_H

#include "book/book.h"

enum { UID_TEXT = 33 }; /* 128 random bits as hexadecimal digits, and the NUL */

/* `kind` as for book_stamp. ERR_NOT_FOUND: the row is gone. */
bool book_uid(struct book *b, const char *kind, int64_t id, char out[static UID_TEXT],
	struct err *e);

#endif
