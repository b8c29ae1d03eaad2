/* after.h - what the catch did around a decision: the mean weekly catch of the two
 * weeks before a day and of the two weeks after it. It tells what was counted, and
 * nothing of why. */
#ifndef SEASON_AFTER_H
#define SEASON_AFTER_H

#include "season/exact.h"
#include "season/service.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum { AFTER_NIGHTS = 14 };

/* Made of whole intervals, since a catch cannot be divided: before, those closed in the
 * AFTER_NIGHTS up to the day; after, those begun in the AFTER_NIGHTS from it on. So
 * each covers about two weeks however the visits fall. Left out: an interval that the
 * day falls into, one longer than AFTER_NIGHTS, one whose catch is not known. */
struct after_side {
	size_t read; /* traps with at least one such interval */
	/* nights of the trap with the fewest and the most; 0: none */
	int32_t least, most;
	/* mean of the traps' moths * 7 / nights, when read > 0; open with a full card
	 * among them */
	struct bounds week;
	size_t lures_overdue; /* read traps whose lure was past its life when counted */
	size_t lures_unknown; /* whose lure's age or life is not known */
	size_t intervals_lost; /* of all traps: catch not known, or too long */
};

struct after {
	size_t traps;  /* as given */
	size_t both;   /* read on both sides; fewer than either: other traps compared */
	size_t across; /* traps with an interval that the day falls into */
	struct after_side before, after;
	bool is_over; /* the two weeks after the day are over on `asked` */
};

/* Over n traps of one pest; visits after `asked` are not looked at. A visit on the day
 * itself closes what was before: the decision was made with its count in hand. */
struct after after_decision(const struct diary *const traps[], size_t n,
	const struct lure_kinds *kinds, int32_t day, int32_t asked);

#endif
