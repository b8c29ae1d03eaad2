/* err.h - how a failure travels up to the person.
 * The code that fails picks the kind and writes one sentence; whoever was called
 * first (a command, the page loop) shows it. Nothing below prints or exits. */
#ifndef BASE_ERR_H
#define BASE_ERR_H

#include <stdbool.h>

enum err_kind {
	ERR_NONE,
	ERR_USAGE,     /* the command line */
	ERR_INPUT,     /* what was typed or read from a file */
	ERR_NOT_FOUND, /* a name that the book does not hold */
	ERR_BOOK,      /* the book, a disk or an output that failed */
};

struct err {
	enum err_kind kind;
	char text[512]; /* one sentence for the grower, UTF-8, no newline */
};

/* Fills *e (which may be NULL) and returns false: `return err_set(e, ...);`
 * In a text that is too long paths lose their middle; then it is cut between two
 * characters. Control characters and bytes that are no UTF-8 become '?', whatever value
 * was put in. e->text itself may be an argument. */
bool err_set(struct err *e, enum err_kind kind, const char *fmt, ...)
	__attribute__((format(printf, 3, 4)));

/* The exit status for a kind: 0, 2, 3, 4 or 5. */
int err_status(enum err_kind kind);

#endif
