/* acts.h - treatments, picks, fruit checks, dispensers and answers in the book. A
 * record is corrected, never rewritten: its old form stays in the history. */
#ifndef BOOK_ACTS_H
#define BOOK_ACTS_H

#include "book/book.h"

/* Of the farm's blocks (0 = all), dated from..to (both included), by block and day; the
 * dispensers that were up on a day of it. Each replaces what the list held. */
bool book_treatments(struct book *b, int64_t farm, int32_t from, int32_t to,
	struct treatments *out, struct err *e);
bool book_picks(struct book *b, int64_t farm, int32_t from, int32_t to,
	struct picks *out, struct err *e);
bool book_fruit_checks(struct book *b, int64_t farm, int32_t from, int32_t to,
	struct fruit_checks *out, struct err *e);
bool book_disruptions(struct book *b, int64_t farm, int32_t from, int32_t to,
	struct disruptions *out, struct err *e);
bool book_answers(struct book *b, int64_t farm, int32_t from, int32_t to,
	struct answers *out, struct err *e);

/* id 0 makes a new row and sets the id. Refused with one sentence: an unknown block, a
 * value out of range, an end before its start, more stung and entered than looked at,
 * an answer to no trap of the block, dispensers that overlap others of the block and
 * pest. */
bool book_put_treatment(struct book *b, struct treatment *t, struct err *e);
bool book_put_pick(struct book *b, struct pick *p, struct err *e);
bool book_put_fruit_check(struct book *b, struct fruit_check *c, struct err *e);
bool book_put_disruption(struct book *b, struct disruption *d, struct err *e);
bool book_put_answer(struct book *b, struct answer *a, struct err *e);

#endif
