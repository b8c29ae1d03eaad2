/* check.h - inside src/book: the parts of book_check. */
#ifndef BOOK_CHECK_H
#define BOOK_CHECK_H

#include "query.h"

struct finder {
	struct book *book;
	void (*tell)(void *arg, const char *text);
	void *arg;
	int *found;
	const char *passed; /* a table whose rows are not read; NULL: none */
};

void finder_say(struct finder *f, const char *text);

/* The file alone, page by page: damage. */
bool check_file(struct finder *f, const char *what, struct err *e);

/* All of the file but what only a grower can judge: damage, shape, references, rows
 * that cannot be used, texts that cannot be shown. */
bool check_sound(struct finder *f, const char *what, struct err *e);

/* Rows that reading refuses: each visit, and the first of every other list. */
bool check_readable(struct finder *f, const char *what, struct err *e);

/* True if it is UTF-8 and all of it can be shown. */
bool text_harmless(const char *text, size_t n);

/* Texts, in whatever table, that are no UTF-8 or hold what cannot be printed. */
bool check_texts(struct finder *f, const char *what, struct err *e);

#endif
