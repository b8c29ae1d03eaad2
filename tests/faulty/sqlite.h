/* sqlite.h - a SQLite that refuses: takes the place of those of its calls that do work,
 * where src/book makes them. What SQLite itself needs memory or a sound disk for fails
 * so in a grower's program. */
#ifndef TESTS_FAULTY_SQLITE_H
#define TESTS_FAULTY_SQLITE_H

#include <stdbool.h>
#include <stddef.h>

enum sqlite_way {
	REFUSES_ONCE,
	REFUSES_ON,
	GIVES_UP, /* once, and takes back what was begun, as for want of memory */
	SQLITE_WAYS
};

/* The n-th call from now on fails. n = 0: none does, and they are counted. */
void sqlite_arm(long n, enum sqlite_way way);
/* The next n pages to be copied find the book in use. Nobody sleeps over it. */
void sqlite_arm_busy(int n);
long sqlite_calls(void);  /* since it was armed */
bool sqlite_struck(void); /* one failed */

/* Calls with a statement that no call before them was made with, since it was told to
 * forget them: where a refusal meets what no other has met. Noted until it is called
 * with NULL. */
enum { SQLITE_NEWS = 1024 };
struct sqlite_news {
	long calls[SQLITE_NEWS]; /* in order */
	size_t n;
};
void sqlite_note(struct sqlite_news *news);
void sqlite_forget(void);

#endif
