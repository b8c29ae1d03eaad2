/* orchard.h - farms, their blocks, the traps in them. */
#ifndef BASE_ORCHARD_H
#define BASE_ORCHARD_H

#include "base/sizes.h"
#include "base/terms.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

struct farm {
	int64_t id;
	char name[NAME_BYTES];
	int season_start; /* month-day, 101 = calendar year */
	int64_t station;  /* whose weather it goes by; 0 = the only one there is */
	int run_weekday;  /* 1 Monday .. 7 Sunday; 0 = a week after the last run */
	bool retired;     /* put away: offered nowhere, stays in past seasons */
};

struct block {
	int64_t id, farm;
	char name[NAME_BYTES], crop[NAME_BYTES], variety[NAME_BYTES];
	enum condition condition;
	int32_t area_x100; /* hectares in hundredths; -1 = not given */
	bool retired;      /* as for a farm */
};

struct trap {
	int64_t id, farm, block, pest;
	char label[NAME_BYTES]; /* unique within its farm */
	int64_t lure, card;     /* the kinds it usually gets */
	enum place place;
	bool has_position;
	double lat, lon; /* degrees, WGS 84 */
	int32_t order;   /* driving order within the farm, 1.. */
};

/* Lists own their items. Zero-initialise; items may be freed with free(). */
struct farms {
	struct farm *items;
	size_t n, cap;
};
struct blocks {
	struct block *items;
	size_t n, cap;
};
struct traps {
	struct trap *items;
	size_t n, cap;
};

#endif
