/* checks.h - fruit and shoot checks in words, beside the catches of their block. */
#ifndef ANSWERS_CHECKS_H
#define ANSWERS_CHECKS_H

#include "answers/why.h"
#include "base/buf.h"

/* "none of 300 still means up to 1.0 %"; "2.0 %, can be 0.7 to 4.3 %"; nothing when it
 * was not entered. */
void check_say_share(const struct fruit_check *c, struct buf *out);

/* Adds the checks of the block in this season to the reasons, latest first: those of
 * the pest and those that were not told apart. */
bool why_read_checks(const struct log *l, struct book *b, int64_t block, int64_t pest,
	struct why *out, struct err *e);

#endif
