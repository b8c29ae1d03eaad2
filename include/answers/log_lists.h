/* log_lists.h - lists of the log that neither the book nor the season has: how far each
 * pest has come, visits that are disputed, where a record stands. */
#ifndef ANSWERS_LOG_LISTS_H
#define ANSWERS_LOG_LISTS_H

#include "base/records.h"

/* How far a pest's season has come on a farm. */
struct season_state {
	int64_t farm, pest;
	int32_t biofix;       /* DAY_NONE: not set */
	int flight;           /* 1..; 0: not known */
	int32_t flight_start; /* DAY_NONE: not known */
	int32_t dd;           /* degree-days since biofix; -1: not known */
	bool dd_at_least;     /* days are missing */
	/* The same at the end of each day from then_from on: owned; none if no rule
	 * looks at them. */
	struct dd_then {
		int32_t dd;
		bool at_least;
	} * then;
	size_t n_then, cap_then;
	int32_t then_from;
};
struct season_states {
	struct season_state *items;
	size_t n, cap;
};

/* What another scout's book says of a visit, not settled. */
struct dispute {
	int64_t trap;
	int32_t day;
	struct visit said;
	char by[SCOUT_BYTES], shown_by[SCOUT_BYTES]; /* of what the diary shows */
};
struct disputes {
	struct dispute *items;
	size_t n, cap;
};

/* Where in a list the record of an id stands; by id. */
struct log_place {
	int64_t id;
	size_t at;
};
struct log_places {
	struct log_place *items;
	size_t n, cap;
};

#endif
