/* sustained.h - when the farm's checks began to catch, and when they ended.
 * A check is one round of the traps, which may take up to three days; it caught when
 * any trap did. A check at which nothing could be read is no zero. */
#ifndef SEASON_SUSTAINED_H
#define SEASON_SUSTAINED_H

#include "season/diary.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* The day lies in (after, by]: after the check `after`, at the latest on the check
 * `by`. `after` goes back over what was not read. */
struct sustained {
	int32_t after, by;
	bool or_earlier; /* it was the very first check */
};

/* First sustained catch: the first check with a moth whose next check, within 14 days,
 * has one too. Checks of first..last only. False: none. */
bool flight_sustained(const struct diary *const *diaries, size_t n, int32_t first,
	int32_t last, struct sustained *out);

/* First of two zero checks in a row after the day `peak` with no moth up to last;
 * DAY_NONE: not finished. */
int32_t flight_season_end(
	const struct diary *const *diaries, size_t n, int32_t peak, int32_t last);

#endif
