/* weather.h - stations, their days, and the biofix dates that sums start from. */
#ifndef BASE_WEATHER_H
#define BASE_WEATHER_H

#include "base/sizes.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

struct station {
	int64_t id;
	char name[NAME_BYTES];
	bool has_position;
	double lat, lon; /* degrees, WGS 84 */
};

/* A day as it was read, in the unit it was read in. */
struct weather_day {
	int64_t station;
	int32_t day;
	double min, max; /* NAN = not read; a missing day is never 0 */
	char unit;       /* 'C' or 'F' */
};

/* The grower's biofix of a pest on a farm in a season. */
struct biofix_date {
	int64_t id, farm, pest;
	int season; /* year that the season began in */
	int32_t day;
	/* a word of season/biofix.h, or own words; "" = by hand */
	char rule[SOURCE_BYTES];
};

struct stations {
	struct station *items;
	size_t n, cap;
};
struct weather_days {
	struct weather_day *items;
	size_t n, cap;
};
struct biofix_dates {
	struct biofix_date *items;
	size_t n, cap;
};

#endif
