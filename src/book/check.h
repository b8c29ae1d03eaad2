/* check.h - inside src/book: the parts of book_check. */
#ifndef BOOK_CHECK_H
#define BOOK_CHECK_H

#include "query.h"

struct finder {
	struct book *book;
	void (*tell)(void *arg, const char *text);
	void *arg;
	int *found;
};

void finder_say(struct finder *f, const char *text);

/* Rows that reading refuses: each visit, and the first of every other list. */
bool check_readable(struct finder *f, const char *what, struct err *e);

/* Texts, in whatever table, that are no UTF-8 or hold what cannot be printed. */
bool check_texts(struct finder *f, const char *what, struct err *e);

#endif
