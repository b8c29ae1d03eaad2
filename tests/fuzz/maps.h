/* maps.h - files of positions into the invented season and out again. */
#ifndef TESTS_FUZZ_MAPS_H
#define TESTS_FUZZ_MAPS_H

#include "fuzz.h"

/* A format as src/exchange has it. */
struct map_format {
	bool (*take)(struct book *b, FILE *file, int64_t farm, struct imported *out,
		struct err *e);
	bool (*give)(struct book *b, int64_t farm, struct buf *out, struct err *e);
};

/* The bytes are taken in or refused; the book is sound, and what it gives out changes
 * nothing when it comes back. */
void maps_try(const struct map_format *f, const uint8_t *data, size_t n);

#endif
