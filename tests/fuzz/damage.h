/* damage.h - a book is damaged as the bytes say, eight at a time: a kind of damage and
 * its arguments. So an input is some dozens of bytes, and what the engine makes of it
 * is again bits flipped and pieces moved in a real book. */
#ifndef TESTS_FUZZ_DAMAGE_H
#define TESTS_FUZZ_DAMAGE_H

#include <stddef.h>
#include <stdint.h>

enum { DAMAGE_BYTES = 8, DAMAGE_MOST = 24 };

/* In the file: a bit flipped, a byte set, a piece copied elsewhere, an end cut off. */
void damage_file(const char *path, const uint8_t *data, size_t n);
/* In the rows, past every CHECK: a value set, a row taken out. */
void damage_rows(const char *path, const uint8_t *data, size_t n);

#endif
