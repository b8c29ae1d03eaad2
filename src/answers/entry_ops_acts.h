/* entry_ops_acts.h - inside src/answers: what the families of acts share. */
#ifndef ENTRY_OPS_ACTS_H
#define ENTRY_OPS_ACTS_H

#include "entry_family.h"

/* Whether something done in that block is of the asked farm and block. */
bool act_wanted(const struct shelves *s, int64_t block, const struct entry_ask *ask);

/* Where a new record says that it is: NAME_BYTES of farm, `size` of block. */
struct act_place {
	char *farm, *block;
	size_t size;
};
void act_guess(
	const struct shelves *s, const struct entry_ask *ask, struct act_place place);

/* "pick of Pond block, Thu 3 Sep"; before: "pick of". */
void act_say(
	const char *before, const char *block, int32_t day, char *out, size_t size);

#endif
