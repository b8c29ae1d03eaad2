/* why_parts.h - inside src/answers: what the files of why share. */
#ifndef ANSWERS_WHY_PARTS_H
#define ANSWERS_WHY_PARTS_H

#include "answers/why.h"

/* Of a row whose rule sums up since a treatment, two sentences: "it runs since the
 * treatment of Tue 18 Aug", and "" or that a later one of the border alone does not
 * restart it. */
void total_since_says(
	const struct log *l, const struct verdict_row *row, char (*out)[SAY_LINE]);

/* "no threshold set for this trap", and where those of its pest hold instead, with the
 * crop that the block has when they ask for one. */
void no_rule_says(const struct log *l, int trap, char *out, size_t size);

/* Adds a line, of 511 bytes at most, with the numbers of those who read. */
void why_add_line(struct why *w, enum tone tone, int indent, const char *fmt, ...)
	__attribute__((format(printf, 4, 5)));

/* The latest visits of a trap of the log, and its lure and card. */
void why_add_visits(struct why *w, const struct log *l, size_t trap);
void why_add_service(struct why *w, const struct log *l, size_t trap);

#endif
