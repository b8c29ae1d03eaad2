/* shelf.h - what is on the shelf of lures and cards, and whether it is enough. */
#ifndef ANSWERS_SHELF_H
#define ANSWERS_SHELF_H

#include "answers/due.h"

struct shelf_row {
	bool is_lure;
	int64_t kind;
	char name[NAME_BYTES];
	int32_t left;    /* counted stock less what was put in since; -1: not kept */
	int32_t reorder; /* -1: none */
	int32_t needed;  /* by the bring lists of all farms */
	char text[SAY_LINE]; /* "14 left, 3 to bring: reorder (at 20)" */
	enum tone tone;      /* TONE_UNSURE: too few, or time to reorder */
};
struct shelf {
	struct shelf_row *items; /* kinds whose stock is kept or that are needed */
	size_t n, cap;
	bool is_kept; /* the stock of one of them, or of more */
};

/* Lures first, by name. What visits put in on the day of the count was on the shelf no
 * more when it was counted; what they put in later is taken off. */
bool shelf_read(struct shelf *out, struct book *b, const struct log *l,
	const struct due *d, struct err *e);
void shelf_free(struct shelf *s);

#endif
