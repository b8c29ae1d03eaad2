/* weekly.h - the weekly catch of one trap.
 * The latest closed interval; when shorter than limits.join_nights it is joined
 * with earlier whole intervals until it is not. Catch = moths * 7 / nights. */
#ifndef SEASON_WEEKLY_H
#define SEASON_WEEKLY_H

#include "season/diary.h"

#include <stdbool.h>
#include <stdint.h>

/* Why this week's catch is not known. */
enum unread {
	UNREAD_NO,
	UNREAD_NOT_HUNG,
	UNREAD_NOT_YET, /* hung, not visited since: the first interval is open */
	UNREAD_SHORT,   /* too few nights closed, and none earlier to join them with */
	UNREAD_STALE,   /* last closed over limits.stale_nights before the asked day */
	UNREAD_SKIPPED, /* a skipped visit came after the last closed interval */
	UNREAD_SPOILED,
	UNREAD_MISSING,
	UNREAD_PULLED,
	UNREAD_SINCE, /* of a total: it hung before the total began, not read since */
	UNREAD_COUNT
};

struct weekly {
	enum unread unread; /* UNREAD_NO: moths and nights hold */
	bool at_least;      /* a floor is among them */
	bool is_disputed; /* scouts do not agree on a visit: it is least..most moths */
	int32_t least, most; /* else both `moths`; most -1: no upper end */
	bool is_long;        /* more than limits.long_nights: an average over weeks */
	int32_t moths;       /* when unread: caught at least, 0 if nothing is known */
	/* when unread: nights not read up to the asked day, 0..; UNREAD_SHORT: the few
	 * nights that were closed */
	int32_t nights;
	int32_t from, to;   /* DAY_NONE when nothing was ever closed */
	size_t first, last; /* intervals of the diary used; valid when UNREAD_NO */
};

/* As it stood at the end of `asked`: later visits are not looked at.
 * "4, skipped, 9" read week by week: 4 in 7 nights; unread (skipped); 9 in 14. */
struct weekly weekly_catch(
	const struct diary *d, int32_t asked, const struct limits *l);

/* The week before w (w.unread is UNREAD_NO): ends where w begins, same rules, never
 * stale. Not read across a spoiled or missing interval: that one is the answer. */
struct weekly weekly_before(
	const struct diary *d, const struct weekly *w, const struct limits *l);

/* Catch per week in tenths, halves rounded up; -1 when unread. Only for showing:
 * comparisons are made on moths and nights. */
int32_t weekly_x10(const struct weekly *w);

#endif
