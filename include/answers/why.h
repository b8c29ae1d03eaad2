/* why.h - what stands behind a verdict: visits, nights, rule, source, doubts. */
#ifndef ANSWERS_WHY_H
#define ANSWERS_WHY_H

#include "answers/say.h"

struct why_line {
	enum tone tone;
	int indent; /* columns to the right; long texts wrap to it */
	char *text; /* owned */
};

struct why {
	char title[SAY_LINE]; /* "Creek Row · trap 7 · CM" */
	struct why_line *lines;
	size_t n, cap;
};

/* For a trap (index in log.traps) or, with trap = NO_TRAP, for a block and pest: every
 * rule that holds with its answer, what was compared, over which nights, the visits
 * read, doubts, the rule's note and source; for a block its traps; the rules that
 * were replaced by narrower ones; the cautions under every OVER. */
void why_of(
	const struct log *l, int trap, int64_t block, int64_t pest, struct why *out);
void why_free(struct why *w);

#endif
