/* biofix_parts.h - what the files about biofix rules share. */
#ifndef SEASON_BIOFIX_PARTS_H
#define SEASON_BIOFIX_PARTS_H

#include "rounds_parts.h"
#include "season/biofix.h"

/* What a rule is asked of. */
struct biofix_log {
	const struct diary *const *diaries;
	size_t n;
	int32_t first, last;
};

/* Numbers of a rule; each way takes those it needs. */
struct biofix_numbers {
	int32_t moths;  /* so many */
	int32_t traps;  /* in so many traps */
	int32_t run;    /* on so many nights running */
	int32_t zeros;  /* after so many nights without a moth */
	int32_t nights; /* readings over more nights tell nothing; 0: all tell */
	int md;         /* a fixed date */
	bool males;     /* females are left out */
};

/* Each fills state, after, by, or_earlier and seen of *out when its rule is met (or
 * waits for the next check), and leaves it alone otherwise. */
typedef void biofix_way(const struct biofix_numbers *k, const struct biofix_log *log,
	struct biofix *out);

biofix_way biofix_by_sustained; /* `moths` at a check and at the next; `zeros` */
biofix_way biofix_by_counts;    /* two successive counts with moths within `nights` */
biofix_way biofix_by_nights;    /* `run` nights: `traps` that catch, or with no `traps`
                                 * a mean above `moths` per trap */
biofix_way biofix_by_total;     /* `moths` of all traps so far; `males` */
biofix_way biofix_by_trap_week; /* `moths` in one trap in a week */
biofix_way biofix_by_mean;      /* `moths` per trap in a week, at one check */
biofix_way biofix_by_date;      /* `md` */

/* Sets state and date, and the readings of rounds i..last that caught as evidence. */
void biofix_found(struct biofix *out, enum biofix_state state, struct nights_between w);
void biofix_see(
	struct biofix *out, const struct biofix_log *log, const struct reading *x);
void biofix_see_rounds(struct biofix *out, const struct biofix_log *log,
	const struct rounds *r, size_t i, size_t last);

#endif
