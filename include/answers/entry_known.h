/* entry_known.h - the lists of the book as they stand, for giving names and finding
 * them. */
#ifndef ANSWERS_ENTRY_KNOWN_H
#define ANSWERS_ENTRY_KNOWN_H

#include "base/records.h"
#include "book/book.h"

/* An id of 0 or one that is not there has the name "". */
struct known {
	struct farms farms;
	struct blocks blocks;
	struct traps traps; /* by farm name and driving order */
	struct pests pests;
	struct lure_kinds lures;
	struct card_kinds cards;
	struct stations stations; /* known_read_all */
	struct rules rules;       /* the same */
	/* Of each trap, from known_read_hangings and those below; NULL: not read. */
	struct hanging {
		int32_t hung;   /* first; DAY_NONE */
		int32_t pulled; /* if the last visit was a pulling; DAY_NONE */
		int32_t last;   /* latest visit; DAY_NONE */
	} * hangings;
};
/* Farms to cards. */
bool known_read(struct known *k, struct book *b, struct err *e);
bool known_read_all(struct known *k, struct book *b, struct err *e);
/* Of the farm's traps (0: all); the others are as if never visited. */
bool known_read_hangings(struct known *k, struct book *b, int64_t farm, struct err *e);
/* Of none; the list is there to be filled. */
void known_clear_hangings(struct known *k);
/* Of the trap at this place in k->traps alone. */
bool known_read_hanging(struct known *k, struct book *b, size_t trap, struct err *e);
void known_free(struct known *k);

const char *known_farm(const struct known *k, int64_t id);
const char *known_pest(const struct known *k, int64_t id);
const char *known_lure(const struct known *k, int64_t id);
const char *known_card(const struct known *k, int64_t id);
const char *known_station(const struct known *k, int64_t id);
const struct block *known_block(const struct known *k, int64_t id);    /* NULL: none */
const struct lure_kind *known_kind(const struct known *k, int64_t id); /* NULL: none */
const struct trap *known_trap(const struct known *k, int64_t id);      /* NULL: none */

/* By name, to the letter; 0: none. */
int64_t known_find_farm(const struct known *k, const char *name);
int64_t known_find_block(const struct known *k, int64_t farm, const char *name);
int64_t known_find_pest(const struct known *k, const char *code);
int64_t known_find_lure(const struct known *k, const char *name);
int64_t known_find_card(const struct known *k, const char *name);
int64_t known_find_station(const struct known *k, const char *name);
int64_t known_find_trap(const struct known *k, int64_t farm, const char *label);

#endif
