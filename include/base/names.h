/* names.h - names of the book found by hashing, each within a parent (a block within
 * its farm; 0 where names are unique in the book). */
#ifndef BASE_NAMES_H
#define BASE_NAMES_H

#include "base/buf.h"

#include <stddef.h>
#include <stdint.h>

struct name_entry {
	char *text; /* owned */
	int64_t parent, value;
	uint64_t hash;
};

struct names {
	struct name_entry *items;
	size_t n, cap;
	uint32_t *slots; /* index + 1 into items; 0 = free */
	size_t n_slots;  /* a power of two */
};

/* Adds a name that is not there yet. */
void names_add(struct names *s, int64_t parent, const char *text, int64_t value);
/* -1: no such name. */
int64_t names_find(const struct names *s, int64_t parent, const char *text);
/* The text of a value; "": no such value. */
const char *names_text(const struct names *s, int64_t value);
/* "CM, OFM and 12 more", within the parent; cut after about `bytes`.
 * A name with a comma stands in quotes. */
void names_list(const struct names *s, int64_t parent, size_t bytes, struct buf *out);
void names_free(struct names *s);

#endif
