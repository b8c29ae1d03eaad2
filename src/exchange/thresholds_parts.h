/* thresholds_parts.h - the thresholds file in pieces: taking in, telling. */
#ifndef THRESHOLDS_PARTS_H
#define THRESHOLDS_PARTS_H

#include "exchange/kinds.h"

/* A rule of the book or of the file. */
struct rule_in {
	struct rule rule;
	int64_t line; /* of the file; 0: not in it */
	bool is_new;
};

struct rule_state {
	struct known known;
	struct rule_in *there;
	size_t n, cap;
};

bool thresholds_begin(struct taking *t, struct err *e);
/* With a filter (t->from->wanted) each threshold that is taken leaves a note. */
bool thresholds_take(struct taking *t, const void *row, struct err *e);
/* Names what the book lacks in a row with other faults. */
void thresholds_look(struct taking *t, const void *row);
/* Takes out what a replacing file lacks; tells of rules that wait or contradict. */
bool thresholds_finish(struct taking *t, struct err *e);
void thresholds_end(struct taking *t);

/* "trap-week, 1 week: >= 5", "block-total since flight: > 3" */
void rule_words(const struct rule *r, struct buf *out);
/* One threshold that was taken: where, when, what, its note and its source. */
void thresholds_tell(struct taking *t, const struct threshold_row *row,
	const struct rule *r, bool same);

#endif
