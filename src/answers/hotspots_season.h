/* hotspots_season.h - one season of the Hot spots page: its readings, and the nights of
 * it that are looked at. */
#ifndef ANSWERS_HOTSPOTS_SEASON_H
#define ANSWERS_HOTSPOTS_SEASON_H

#include "answers/hotspots.h"
#include "flight_parts.h"

/* One season of a pest on a farm: the present one out of the log, an earlier one read
 * from the book. */
struct hot_season {
	int year;
	int32_t start, end;          /* first and last day */
	const struct diary **of;     /* by index of log.traps; NULL: never visited */
	struct flight_series series; /* n = 0: nothing was read */
	struct flights found;
	struct flight_season read; /* of an earlier season */
};
bool hot_season_read(struct hot_season *s, struct book *b, const struct log *l,
	const struct hot_ask *ask, struct err *e);
void hot_season_free(struct hot_season *s);

/* Nights from..to-1. An interval belongs where its middle lies; its moths stay
 * whole. */
struct hot_window {
	int32_t from, to;
};
/* flight 0, or one that was not found: the whole season. */
struct hot_window hot_window_of(const struct hot_season *s, int flight);

#endif
