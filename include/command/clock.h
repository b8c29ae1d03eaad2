/* clock.h - the only place that asks what time it is, and how local clocks go. */
#ifndef COMMAND_CLOCK_H
#define COMMAND_CLOCK_H

#include "base/zone.h"

#include <stddef.h>
#include <stdint.h>

/* The day on the local calendar; DAY_NONE when the clock shows none that is usable. */
int32_t clock_day(void);
/* "07:42:11", local; "" when it is not known. */
void clock_text(char *out, size_t size);
/* Milliseconds since some moment; never goes back. */
int64_t clock_ms(void);
/* This minute; minute INSTANT_NONE when it is not known. */
struct instant clock_now(void);
/* How local clocks go from 15 years before the day to 15 years after it; beyond that
 * the nearest offset holds. Where clocks changed so often that z is full, the oldest
 * steps are left out. DAY_NONE: UTC. */
void clock_zone(struct zone *z, int32_t around);
/* What a log of `day` goes by: how local clocks go, and what they show. On today's day
 * that is this minute, on another the same hour of it; with a minute of the day 1..1440
 * given (0: none) that one. */
void clock_stand(int32_t day, int32_t minute, struct instant *now, struct zone *z);

#endif
