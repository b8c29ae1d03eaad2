/* visit.h - one look at one trap. */
#ifndef BASE_VISIT_H
#define BASE_VISIT_H

#include "base/sizes.h"
#include "base/terms.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

struct visit {
	int64_t trap;
	int32_t day;
	enum outcome outcome;
	enum reason reason;
	int32_t count;              /* 0..COUNT_MAX or COUNT_NONE */
	int32_t females, others;    /* the same; others are not the trap's pest */
	int64_t new_card, new_lure; /* kind put in at this visit, 0 = left as it was */
	bool stirred;               /* glue worked through, so that it grips again */
	/* Another scout's book says otherwise, and nobody has settled it: the counts of
	 * all that is said, or most = COUNT_NONE when one of them is no plain count.
	 * Never saved with the visit. */
	bool is_disputed;
	int32_t least, most;
};

/* True if the two say the same of the same trap and day. */
bool visit_same(const struct visit *a, const struct visit *b);

/* True for a lure changed between two runs: nobody counted, and no reading was missed
 * by it. It stands in the book as skipped, without a reason, with a new lure: the
 * lure's age begins anew, the count stays open, and what was read before still
 * holds. */
bool visit_is_service(const struct visit *v);

/* The words of a visit; kept apart so that a season of visits stays small. */
struct visit_words {
	char scout[SCOUT_BYTES];
	char note[NOTE_BYTES];
};

/* Lists own their items. Zero-initialise; items may be freed with free(). */
struct visits {
	struct visit *items;
	size_t n, cap;
};

#endif
