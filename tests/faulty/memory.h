/* memory.h - memory that gives out: takes the place of malloc for the whole process, for
 * the libraries too. Not under the sanitizers, which have their own. */
#ifndef TESTS_FAULTY_MEMORY_H
#define TESTS_FAULTY_MEMORY_H

#include <stdbool.h>

bool memory_is_ours(void);

/* The n-th call from now on gets nothing, with `on` all after it neither. n = 0: all
 * get what they ask for, and are counted. */
void memory_arm(long n, bool on);
long memory_calls(void); /* since it was armed */

#endif
