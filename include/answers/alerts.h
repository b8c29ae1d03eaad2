/* alerts.h - catches over the threshold, what was decided, and what the catch did
 * after. It tells what followed; it claims no cause. */
#ifndef ANSWERS_ALERTS_H
#define ANSWERS_ALERTS_H

#include "answers/say.h"
#include "answers/verdicts.h"

struct alert {
	int64_t farm, block, pest, trap; /* trap 0: the block's own rule */
	int32_t day;                     /* last clearing that made it OVER */
	/* The first of the clearings in a row that made it OVER, none of which was
	 * answered by itself, and how many they are. */
	int32_t since, checks;
	/* The clearing before `since`; DAY_NONE: none, or it is not over by now. */
	int32_t before;
	int32_t today; /* of the log: an answer lies between `day` and it */
	bool is_answered;
	/* While it is open a blank one of this alert, ready to be filled in. */
	struct answer answer;
	/* "Old Kiln, CM, trap 3"; "Old Kiln (Stone Mill), CM, mean of 4" where another
	 * farm has a block of that name */
	char name[SAY_LINE];
	char amount[SAY_SHORT]; /* "14.0"; "" when it cannot be told any more */
	/* "14.0 a week, threshold >=5"; of an answered one, whose counts and thresholds
	 * may have been changed since, "14.0 a week, threshold >=5, as counts and
	 * thresholds stand now", "under as counts and thresholds stand now: ...".
	 * Of several checks: "...; over at each of 3 checks since Tue 30 Jun" */
	char says[SAY_LINE * 2];
	char decided[SAY_LINE + NOTE_BYTES]; /* "treated Wed 22 Jul: ..."; "open" */
	/* "before 12.0 a week, after 3.5 (14 and 8 nights; lure overdue before; the two
	 * weeks after are not over)"; "" while it is open */
	char after[SAY_LINE * 2];
	enum tone tone;
};
struct alerts {
	struct alert *items; /* open ones first, latest first */
	size_t n, cap;
};
/* OVER now or at an earlier clearing of this season and not answered, and answered ones
 * of this season. farm 0 = all. A catch that is OVER again at the next clearing is the
 * same alert while nobody answered, so that one answer is enough; after an answer, or a
 * clearing that was not over, it is a new one. An open one stays, whatever came after
 * it. Biofix, flight and degree-days of an earlier day are those of log_moment_at:
 * where it cannot tell, the answer is unknown. */
void alerts_of(const struct log *l, int64_t farm, struct alerts *out);
/* Of one block; answered ones of its farm are among them. */
void alerts_of_block(const struct log *l, int64_t block, struct alerts *out);
/* The answered ones alone. */
void alerts_answered(const struct log *l, int64_t farm, struct alerts *out);
void alerts_free(struct alerts *a);
/* Adds to a sentence about a verdict of the log's day what was decided about it:
 * "; treated 21 Jul"; nothing while it is open, or not over. */
void alert_say_answered(
	const struct log *l, const struct verdict_row *row, char *out, size_t size);

#endif
