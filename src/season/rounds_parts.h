/* rounds_parts.h - the traps' intervals put together as checks of the farm.
 * A round is one trip: no trap twice, done within `spill` days after its first day. */
#ifndef SEASON_ROUNDS_PARTS_H
#define SEASON_ROUNDS_PARTS_H

#include "season/diary.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum { ROUND_SPILL_DAYS = 2 };

struct reading {
	int32_t from, to;
	int32_t moths; /* at least these when not counted */
	bool more;     /* scouts do not agree: it may have been more */
	bool read;     /* a count, or moths that were seen on a bad card */
	size_t diary, interval;
};

struct round {
	size_t first, n;  /* readings, by day */
	int32_t day, end; /* first and last day */
	int64_t moths;
	size_t read; /* traps; 0: nobody could read any */
};

struct rounds {
	struct reading *readings;
	size_t n_readings, cap_readings;
	struct round *items;
	size_t n, cap;
};

/* Intervals that ended within first..last. r is zeroed; rounds_free it. */
void rounds_read(struct rounds *r, const struct diary *const *diaries, size_t n,
	int32_t first, int32_t last, int32_t spill);
void rounds_free(struct rounds *r);

/* Next round from i on that anyone could read; r->n if none. */
size_t rounds_next_read(const struct rounds *r, size_t i);
/* The same backwards, before i; r->n if none. */
size_t rounds_read_before(const struct rounds *r, size_t i);

/* When the moths that meet a rule in round i flew: in (after, by]. by: the check that
 * found the last one needed. after: the check before the round, or earlier where a trap
 * that caught hung unread for longer. */
struct nights_between {
	int32_t after, by;
	bool or_earlier; /* there was no check before */
};
struct nights_between rounds_when(const struct rounds *r,
	const struct diary *const *diaries, size_t i, int32_t by);

/* Day of the reading that brings round i to `least` moths; its last day when none. */
int32_t rounds_reach(const struct rounds *r, size_t i, int64_t least);

/* First round i with at least `least` moths whose next check that was read, within
 * flight_constants.sustained_days, has as many; r->n: none. *next: that check. */
size_t rounds_sustained(const struct rounds *r, int64_t least, size_t *next);

#endif
