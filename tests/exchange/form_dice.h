/* form_dice.h - random entries of every family, made as the pages make them; some are
 * refused. The values come from the families' own tables of fields, so that a new field
 * and a new family take part by themselves. */
#ifndef TESTS_EXCHANGE_FORM_DICE_H
#define TESTS_EXCHANGE_FORM_DICE_H

#include "answers/entry.h"
#include "answers/log.h"

enum { DICE_OPS = 13 }; /* ways to change the book */

/* Zero but for book, the seed and today. */
struct dice {
	struct book *book;
	struct log log;
	unsigned first, seed; /* it was seeded with; as it stands */
	int32_t today;
	int done, refused;
	int of_family[ENTRY_KINDS], of_op[DICE_OPS]; /* that were not refused */
};

/* 0..n-1 */
int dice_roll(struct dice *d, int n);
/* Reads the log anew. */
void dice_read(struct dice *d);
/* One entry, of a random way; a refused one is counted and changes nothing. */
void dice_edit(struct dice *d);
const char *dice_op_name(int op); /* "put away, brought back" */

#endif
