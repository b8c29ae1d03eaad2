/* trap_diary_parts.h - the words of a trap's diary. */
#ifndef ANSWERS_TRAP_DIARY_PARTS_H
#define ANSWERS_TRAP_DIARY_PARTS_H

#include "answers/trap_diary.h"

/* Puts the texts to the row of visit i of the diary. */
void trap_diary_say_row(
	struct diary_row *row, const struct log *l, const struct diary *d, size_t i);

/* Reads the earlier forms of the season's visits, and counts each row's. */
bool trap_diary_add_olds(struct trap_diary *out, struct book *b, struct err *e);

#endif
