/* hotspot_parts.h - what the files of hotspot.h share. */
#ifndef SEASON_HOTSPOT_PARTS_H
#define SEASON_HOTSPOT_PARTS_H

#include "season/hotspot.h"

/* How far a shuffle goes: all subsets if there are so few, else a sample of a size. */
struct hot_effort {
	int64_t all_to;
	int64_t sample;
};
struct hot_shuffle hot_shuffle_by(const struct hot_catch *traps, size_t n,
	const bool *in, const int *stratum, struct hot_effort effort,
	struct dice *dice);

#endif
