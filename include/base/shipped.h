/* shipped.h - the files of share/ carried inside the program, so that a book can be
 * opened and started wherever the program alone was copied to. Made at build time. */
#ifndef BASE_SHIPPED_H
#define BASE_SHIPPED_H

#include <stddef.h>

struct shipped {
	const char *name; /* "schema.sql", "thresholds.csv", "demo/traps.csv" */
	const char *text; /* NUL-terminated */
	size_t n;
};

/* NULL if the program carries no such file. */
const struct shipped *shipped_find(const char *name);

/* The words in these files that people see, each with its context as NC_() of
 * base/words.h gives it; NULL after the last. Made by share/words.sh. */
extern const char *const shipped_words[];

#endif
