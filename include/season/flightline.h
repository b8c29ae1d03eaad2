/* flightline.h - a season of weekly catches as one row of marks, one per week. */
#ifndef SEASON_FLIGHTLINE_H
#define SEASON_FLIGHTLINE_H

#include "season/weekly.h"

enum mark_kind {
	MARK_NOTHING,  /* the trap did not hang */
	MARK_NOT_READ, /* it hung, but the week was not read */
	MARK_ZERO,     /* counted, none */
	MARK_CATCH,
	MARK_FLOOR, /* at least this many */
};

struct mark {
	enum mark_kind kind;
	int32_t x10; /* catch per week in tenths; 0 unless MARK_CATCH or MARK_FLOOR */
};

/* One mark per week, the first of which begins on `first`, up to that of `last`: an
 * interval's rate stands in each week in which it closed or which lies wholly inside it
 * and began after it, unless the interval is of two weeks or more: then that week was
 * missed. Several closings in a week are joined. Visits after `last` are not looked at.
 * out has room for flightline_weeks(first, last). */
size_t flightline_weeks(int32_t first, int32_t last);
void flightline_of_trap(
	const struct diary *d, int32_t first, int32_t last, struct mark *out);

/* Mean over traps, week by week, of those with a reading; MARK_NOT_READ when some
 * hung and none was read. `marks` holds n_traps rows of n_weeks. */
void flightline_mean(
	const struct mark *marks, size_t n_traps, size_t n_weeks, struct mark *out);

#endif
