/* diary.h - a trap's visits read as intervals between clearings.
 * A visit that closes (counted, floor, spoiled, missing, pulled) ends the interval
 * that began when the trap was last cleared; a skipped one lets it go on. */
#ifndef SEASON_DIARY_H
#define SEASON_DIARY_H

#include "base/records.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum catch_state {
	CATCH_COUNTED, /* exactly `moths` */
	CATCH_FLOOR,   /* `moths` or more: the card was full or fouled */
	CATCH_UNKNOWN, /* `moths` or more: no good card (0 when none was given) */
};

struct interval {
	int32_t from, to; /* cleared, closed; nights = to - from, 1.. */
	enum catch_state state;
	int32_t moths;
	/* What it can be when scouts do not agree on a visit of it, as moths; both are
	 * `moths` else. most -1: no upper end. */
	bool is_disputed;
	int32_t least, most;
	bool joins;   /* to the interval before: no spoiled, missing or hung between */
	size_t visit; /* index of the closing visit in the list given */
};

/* The interval as what adds up catches takes it, where only `moths` and `state` count:
 * of a disputed one, what no scout denies, as a floor; CATCH_UNKNOWN when that is
 * nothing and there is no upper end, since it may not have been read at all. */
struct interval interval_sure(const struct interval *it);

struct diary {
	struct interval *items; /* by date */
	size_t n, cap;
	const struct visit *visits; /* borrowed: the list given, of one trap, by date */
	size_t n_visits;
};

/* Reads the visits of one trap, sorted by day, one per day. A count with no hanging
 * before it clears the trap but has no nights, hence no interval. A `hung` on a trap
 * that hangs already closes its open interval as unknown. The list must outlive the
 * diary. Reuses d's memory. */
void diary_read(struct diary *d, const struct visit *visits, size_t n);
void diary_free(struct diary *d);

/* How a trap stands at the end of a day (visits up to and including it). */
enum standing {
	STANDING_NOT_HUNG, /* never hung so far */
	STANDING_HANGS,
	STANDING_MISSING, /* gone since `since` */
	STANDING_PULLED,
};

struct stand {
	enum standing standing;
	int32_t since;   /* day it got into this standing; DAY_NONE: never hung */
	int32_t cleared; /* day the open interval began; DAY_NONE when none is open */
	/* day of the `hung` (or first count) of this series or, when gone, of the one
	 * that ended; DAY_NONE */
	int32_t series_start;
	/* latest skipped visit since `cleared`, not counting a lure changed between
	 * runs; DAY_NONE */
	int32_t skipped;
	enum reason skip_reason;
};

struct stand diary_stand(const struct diary *d, int32_t day);

#endif
