/* mem.h - growing lists. Out of memory ends the program here and nowhere else:
 * what was shown as saved is already on the disk. */
#ifndef BASE_MEM_H
#define BASE_MEM_H

#include <stddef.h>

/* Makes room for at least `need` items of `size` bytes and returns the block,
 * moved if necessary; *cap holds the number of items it has room for. The new
 * part is zeroed. Grows by half at least, so that adding n items costs O(n).
 * `need * size` beyond SIZE_MAX counts as out of memory. */
void *mem_grow(void *items, size_t *cap, size_t need, size_t size);

/* A zeroed block of n items; the caller frees it. n = 0 gives a block too. */
void *mem_new(size_t n, size_t size);

/* A copy of a text; the caller frees it. */
char *mem_text(const char *text);

#endif
