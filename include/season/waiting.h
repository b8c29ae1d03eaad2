/* waiting.h - how long people stay out of a block, and from which day it may be picked.
 * Re-entry interval (REI): hours from the end of the application. Preharvest interval
 * (PHI): earliest pick = day of the treatment + PHI days (common practice; the label
 * wins). In a tank mix the longest of each rules. An REI longer than the PHI bars picks
 * as well (no picking until it ends). What was not entered is not zero: the answer is
 * then not known, and says so. */
#ifndef SEASON_WAITING_H
#define SEASON_WAITING_H

#include "base/records.h"

#include <stdbool.h>

enum {
	/* An interval that was not entered leaves the answer open for so long. */
	WAITING_REI_DAYS = 30,  /* from the end of the application */
	WAITING_PHI_DAYS = 366, /* the longest PHI that can be entered */
};

enum waiting_state {
	WAITING_FREE,
	WAITING_BARRED,
	WAITING_UNKNOWN, /* an interval or an hour that decides was not entered */
	WAITING_FROM, /* waiting_pick alone: free that day, but only from `from` on */
};

struct waiting {
	enum waiting_state state;
	/* BARRED: the first minute that none of them bars, those that begin before it
	 * counted as well; INSTANT_NONE else. Where only the day is known, counted from
	 * the end of that day. */
	struct instant until;
	int treatment; /* index that decides; -1: none */
	/* Index of one whose REI was not entered and that counts at `now`, or when
	 * BARRED at `until`, which then is not the end of it; -1: none. */
	int unknown;
};

/* May people enter the block at `now`? Over n treatments of that block, any order. One
 * bars from its begin, or from the beginning of its day where the hour was not entered,
 * so a treatment still to come does not. One whose REI was not entered leaves it
 * unknown until WAITING_REI_DAYS after it, unless another bars it anyway. Border-only
 * treatments bar the block: entry leads through it. `now` not known: unknown, if n > 0.
 */
struct waiting waiting_entry(
	const struct treatment *t, size_t n, const struct zone *z, struct instant now);

struct pick_wait {
	enum waiting_state state; /* for the day asked */
	/* First day on which a pick is allowed, for a FREE day the one that came before
	 * it; DAY_NONE: none bars it, or not known. */
	int32_t earliest;
	int treatment;       /* that decides; -1: none */
	bool by_reentry;     /* the REI outlasts the PHI */
	struct instant from; /* by_reentry: the first minute; else INSTANT_NONE */
	int unknown; /* as above: counts on the day asked, BARRED: on `earliest` */
};

/* May the block be picked on `day`? Only treatments up to that day count; for
 * `earliest` also those up to it. No PHI entered: unknown for WAITING_PHI_DAYS; no REI:
 * as above. */
struct pick_wait waiting_pick(
	const struct treatment *t, size_t n, const struct zone *z, int32_t day);

#endif
