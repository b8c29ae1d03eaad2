/* answered.h - the treatments that bar entry and picks: those that were entered, and
 * those of which the book has no more than an answer "treated" to an alert. Of the
 * latter no interval is known, so nothing that they bar may read as free. */
#ifndef ANSWERS_ANSWERED_H
#define ANSWERS_ANSWERED_H

#include "book/book.h"

enum {
	TREATMENT_ANSWERED = -1, /* id of one that only an answer tells of */
	/* A treatment entered from so many days before the answer's day to so many
	 * after it is taken for the one that was answered with. */
	ANSWERED_DAYS_BEFORE = 2,
	ANSWERED_DAYS_AFTER = 7,
};

/* Like book_treatments; one that is only answered has the answer's block, pest and day,
 * and nothing else. One to a block and day. */
bool treatments_that_bar(struct book *b, int64_t farm, int32_t from, int32_t to,
	struct treatments *out, struct err *e);

/* True if `answered` is only answered, and t is the treatment it tells of. */
bool treatment_is_told_by(const struct treatment *t, const struct treatment *answered);

#endif
