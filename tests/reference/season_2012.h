/* season_2012.h - measured days for the checks: daily minimum and maximum of Seattle
 * and New York, 1 January 2012 to 1 January 2013, degrees C with one decimal, without a
 * gap (weather-2012.csv beside this file; tests run at the top of the source). Source:
 * NOAA, a work of the U.S. Government in the public domain, as redistributed in the
 * vega-datasets collection 3.2.1, weather.csv (SHA-256
 * 27219f1ca8dbd94c9b6f4b9f4f52ab2f1eb33dfdcf719cd9fc6481ed50b74549); the columns are in
 * another order there. */
#ifndef TESTS_REFERENCE_SEASON_2012_H
#define TESTS_REFERENCE_SEASON_2012_H

#include "season/degree_days.h"

enum { SEASON_DAYS = 367 }; /* the last one only gives a tomorrow */

/* The site's days, turned into degrees F. Fails the test if the file is not so. */
void season_2012(const char *site, struct dd_temps out[static SEASON_DAYS]);

#endif
