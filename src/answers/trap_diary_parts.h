/* trap_diary_parts.h - the words of a trap's diary. */
#ifndef ANSWERS_TRAP_DIARY_PARTS_H
#define ANSWERS_TRAP_DIARY_PARTS_H

#include "answers/trap_diary.h"

/* Puts the texts to the row of visit i of the diary. */
void trap_diary_say_row(
	struct diary_row *row, const struct log *l, const struct diary *d, size_t i);

/* Moths that a card of the kind holds; 0: not known. */
int32_t trap_diary_card_holds(const struct log *l, int64_t card);

/* Reads the earlier forms of the season's visits, and counts each row's. */
bool trap_diary_add_olds(
	struct trap_diary *out, struct book *b, const struct log *l, struct err *e);

/* The kinds that visits of a trap for the pest may have put in. */
void trap_diary_list_kinds(struct trap_diary *out, const struct log *l, int64_t pest);
void kind_choices_free(struct kind_choices *k);
/* "new lure CM 1 mg, new card delta liner": what a visit put in; "" nothing. */
void trap_diary_say_kinds(
	const struct log *l, const struct visit *v, char out[static SAY_LINE]);
/* "; lure CM 1 mg, was CM standard", "; new lure CM standard" where it has none now; of
 * those that stayed nothing. `is` NULL: the visit was taken out. */
void trap_diary_say_other_kinds(const struct log *l, const struct visit *was,
	const struct visit *is, char out[static SAY_LINE]);

#endif
