/* memory.h - memory that gives out: takes the place of malloc for the whole process,
 * for the libraries too. Not under the sanitizers, which have their own. */
#ifndef TESTS_FAULTY_MEMORY_H
#define TESTS_FAULTY_MEMORY_H

#include <stdbool.h>
#include <stdint.h>

/* A place that asks for memory, with the eight that called it one upon another. */
struct memory_place {
	uint64_t stack;   /* 0: this one is free */
	long first, last; /* calls from there, as they are counted */
};
enum { MEMORY_PLACES = 1 << 16 };

bool memory_is_ours(void);

/* Notes in `places`, MEMORY_PLACES of them, all free, whence memory is asked for from
 * now on; NULL: no longer. */
void memory_note(struct memory_place *places);

/* The n-th call from now on gets nothing, with `on` all after it neither. n = 0: all
 * get what they ask for, and are counted. */
void memory_arm(long n, bool on);
long memory_calls(void); /* since it was armed */

#endif
