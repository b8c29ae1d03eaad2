/* ghcn.h - daily minimum and maximum from files of GHCN-Daily, the open archive of NOAA
 * (Menne et al. 2012, J. Atmos. Oceanic Technol. 29:897-910, and its readme):
 *
 * .dly: a line for each station, element and month, 269 characters: 1-11 station, 12-15
 * year, 16-17 month, 18-21 element, then 31 times value (5), measurement, quality and
 * source flag (1 each). By year: CSV without a header row: station, YYYYMMDD, element,
 * value, measurement, quality and source flag, time of observation. This layout and
 * that days past a month's end are -9999 are from memory, not read at the source.
 *
 * TMIN and TMAX are taken, in whole tenths of a degree C; other elements are passed
 * over. -9999 is missing, and so is a value whose quality flag is not blank. Years
 * before 1900 are left out. Nothing of this is silent: see ghcn_notes. */
#ifndef EXCHANGE_GHCN_H
#define EXCHANGE_GHCN_H

#include "base/err.h"
#include "exchange/exchange.h"

#include <stdint.h>
#include <stdio.h>

enum {
	GHCN_STATION_BYTES = 12, /* with its NUL */
	GHCN_FLAGS = 26,
	GHCN_VALUES_MAX = 4000000, /* in one file, of the stations that are wanted */
};

struct ghcn_day {
	char station[GHCN_STATION_BYTES];
	int32_t day;
	double min, max; /* degrees C; NAN = missing, never both */
};

struct ghcn {
	struct ghcn_day *items; /* by station and day */
	size_t n, cap;
	/* temperatures that are not among the items */
	int64_t n_missing, n_early, n_repeated;
	int64_t n_flagged[GHCN_FLAGS]; /* by quality flag, A first */
	struct sentences problems;     /* file, line, what is wrong; each a sentence */
	int64_t n_problems;            /* all; at most PROBLEMS_MAX are kept */
};

struct ghcn_from {
	FILE *file;          /* borrowed */
	const char *name;    /* for messages */
	const char *station; /* the only one that is wanted; NULL = all */
	int32_t today;       /* later days are refused */
};

/* All days or none: false when a line is wrong (see out->problems), there is no
 * temperature, or the file cannot be read. Refused beside what does not fit the layout:
 * a day that is not in the calendar or later than today, a value given twice and
 * unlike, and what season/temps.h says cannot be. Zero-initialise out; free it in any
 * case. Memory grows with the wanted temperatures, not with the file. */
bool ghcn_read_dly(const struct ghcn_from *from, struct ghcn *out, struct err *e);
bool ghcn_read_year(const struct ghcn_from *from, struct ghcn *out, struct err *e);

/* What was left out and what is half there, each a sentence. */
void ghcn_notes(const struct ghcn *g, struct sentences *out);

void ghcn_free(struct ghcn *g);

/* Reads the file with `read`, one of the two above, and takes its days into the book:
 * all or none, in one transaction. Stations are named as in the file. A day that the
 * book has otherwise is a problem. out->notes: those of ghcn_notes. */
bool ghcn_import(struct book *b,
	bool (*read)(const struct ghcn_from *from, struct ghcn *out, struct err *e),
	const struct ghcn_from *from, struct imported *out, struct err *e);

#endif
