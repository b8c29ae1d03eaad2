/* sqlite.h - a SQLite that refuses: takes the place of those of its calls that do work,
 * where src/book makes them. What SQLite itself needs memory or a sound disk for fails
 * so in a grower's program. */
#ifndef TESTS_FAULTY_SQLITE_H
#define TESTS_FAULTY_SQLITE_H

#include <stdbool.h>

/* The n-th call from now on fails, with `on` all after it as well. n = 0: none does, and
 * they are counted. */
void sqlite_arm(long n, bool on);
/* The next n pages to be copied find the book in use. Nobody sleeps over it. */
void sqlite_arm_busy(int n);
long sqlite_calls(void);  /* since it was armed */
bool sqlite_struck(void); /* one failed */

#endif
