/* flights_parts.h - what the files about flights share. */
#ifndef SEASON_FLIGHTS_PARTS_H
#define SEASON_FLIGHTS_PARTS_H

#include "season/flights.h"

/* Comparisons with a share of something give way by this part of it, so that a catch
 * that stands exactly on the mark never falls by rounding. */
#define FLIGHT_SLACK 1e-12

/* Local maxima of the smoothed weeks, into f->candidates. */
void flights_add_candidates(struct flights *f);

/* The candidates that are peaks of flights of their own, in order; fills f->valley_week
 * and f->split_p. s: the series with its ends pooled. Returns how many. */
size_t flights_peaks(const struct flight_series *s, struct flights *f,
	int peaks[static FLIGHTS_MAX]);

#endif
