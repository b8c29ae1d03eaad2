/* why_parts.h - inside src/answers: what the files of why share. */
#ifndef ANSWERS_WHY_PARTS_H
#define ANSWERS_WHY_PARTS_H

#include "answers/say.h"

/* Of a row whose rule sums up since a treatment, two sentences: "it runs since the
 * treatment of Tue 18 Aug", and "" or that a later one of the border alone does not
 * restart it. */
void total_since_says(
	const struct log *l, const struct verdict_row *row, char (*out)[SAY_LINE]);

/* "no threshold set for this trap", and where those of its pest hold instead, with the
 * crop that the block has when they ask for one. */
void no_rule_says(const struct log *l, int trap, char *out, size_t size);

#endif
