/* flights.h - flights and their peaks from counts.
 * The rule is our own, built from published ideas: share of the catch as the mark of a
 * flight's course (Knight 2007, Environ. Entomol. 36:1485; Joshi et al. 2016, Front.
 * Physiol. 7:408), a drop to half between peaks, and an exact test whether the dip is
 * more than luck. No published rule gives an exact algorithm. Weeks that nobody looked
 * at are gaps, never zeros. */
#ifndef SEASON_FLIGHTS_H
#define SEASON_FLIGHTS_H

#include "season/diary.h"
#include "season/sustained.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum {
	FLIGHT_WEEKS_MAX = 60,              /* of one season */
	FLIGHTS_MAX = FLIGHT_WEEKS_MAX / 2, /* two peaks have a week between them */
	FLIGHT_FLAG_COUNT = 9,
};

/* Constants of the rule, as published with it in the manual. */
extern const struct flight_constants {
	double least_height; /* 0.10 of the highest smoothed week */
	double drop;         /* 0.5 */
	double dip_p;        /* 0.05 */
	int wide_from;       /* 3 weeks from peak to valley: wide windows */
	double edge_share;   /* 0.10: open start, not finished */
	double spike_share;  /* 0.60 */
	double too_few;      /* 10 moths */
	int sustained_days;  /* 14 */
} flight_constants;

/* Moths and trap-nights by week. Week 0 starts on first_day. */
struct flight_series {
	int32_t first_day;
	size_t n;
	double moths[FLIGHT_WEEKS_MAX];  /* fractions: spread over the nights */
	double nights[FLIGHT_WEEKS_MAX]; /* 0 = nobody looked */
	/* a floor, or a disputed count, is among them */
	bool at_least[FLIGHT_WEEKS_MAX];
	bool traps_changed[FLIGHT_WEEKS_MAX]; /* not the traps of the last week read */
};

/* Adds up traps: each count is spread evenly over the nights from..to-1 of its
 * interval; the anchor is the weekday of most checks (Monday first on ties), week 0
 * starts on the latest anchor day on or before the first interval. Intervals with
 * unknown catch bring neither moths nor nights, disputed ones what interval_sure takes
 * of them. Only intervals that end after first and
 * by last; of one that began before first, the nights since first with their share of
 * the moths. False: nothing read, or more than FLIGHT_WEEKS_MAX weeks. */
bool flight_series_of(const struct diary *const *diaries, size_t n, int32_t first,
	int32_t last, struct flight_series *out);

enum flight_flag {
	FLIGHT_OPEN_START = 1,
	FLIGHT_STILL_RISING = 2,
	FLIGHT_NOT_FINISHED = 4,
	FLIGHT_GAP_AT_PEAK = 8,
	FLIGHT_GAP_AT_VALLEY = 16,
	FLIGHT_SPIKE = 32,
	FLIGHT_TOO_FEW = 64,
	FLIGHT_AT_LEAST = 128,      /* a floor or a disputed count is in it */
	FLIGHT_TRAPS_CHANGED = 256, /* the set of traps changed within it */
};

/* Words of files for the flag 1 << i, i < FLIGHT_FLAG_COUNT: "open start". */
const char *flight_flag_word(int i);

/* Weeks keep their numbers from first_day. */
struct flight {
	int first_week, last_week, peak_week;
	double moths;     /* counted */
	double peak_rate; /* moths per trap and week in the peak week */
	/* Nights from first_day, fractions; print the whole night. */
	double d10, d50, d90;
	unsigned flags;
};

struct flight_candidate {
	int week;
	double height, prominence;
};

struct flights {
	double rate[FLIGHT_WEEKS_MAX]; /* moths per trap and week; filled in gaps */
	double smooth[FLIGHT_WEEKS_MAX];
	bool filled[FLIGHT_WEEKS_MAX];
	size_t first, end; /* weeks after trimming: first..end-1; first = end: none */
	struct flight_candidate candidates[FLIGHTS_MAX];
	size_t n_candidates;
	struct flight items[FLIGHTS_MAX];
	size_t n;
	int valley_week[FLIGHTS_MAX]; /* n - 1 of them, closing flights 0..n-2 */
	double split_p[FLIGHTS_MAX];
};

void flights_find(const struct flight_series *s, struct flights *out);

/* One-sided exact test that the peak's window has no higher rate than the valley's: the
 * chance of so many of all moths, or more, in the peak's nights. 1 when a window has no
 * nights. Moths >= 0. */
double flight_dip_p(int32_t peak_moths, double peak_nights, int32_t valley_moths,
	double valley_nights);

/* True if two flights' half-catch dates lie less than half the degree-days of a
 * generation apart: two humps, probably one flight. This is said; nothing is merged. */
bool flight_same_hump(double dd50_before, double dd50, double generation);

#endif
