/* hot_map.h - the traps and sources of a farm on a map, in metres east and north of the
 * middle of its traps. */
#ifndef ANSWERS_HOT_MAP_H
#define ANSWERS_HOT_MAP_H

#include "answers/say.h"
#include "base/source.h"
#include "season/gradient.h"
#include "season/ground.h"
#include "season/hotspot.h"

enum { HOT_SAYS = 320 };

/* One trap on the map. */
struct hot_trap {
	int trap; /* index in log.traps */
	int64_t block;
	char label[NAME_BYTES];
	char name[SAY_LINE]; /* "trap 3, Old Kiln" */
	bool has_position, is_alike;
	struct point at; /* metres east and north of the middle */
	int digit;       /* catch class 0..9; -1: not read */
	struct hot_catch catch;
	char text[SAY_SHORT];       /* "3.4" a week */
	bool is_border, is_outside; /* outside: counted to no block */
	unsigned char *near; /* by index of hot_view.traps: 1 within the band; owned */
};

struct hot_source {
	int64_t id;
	char letter; /* 'A'.. on the map; 0: it has no position */
	char name[NAME_BYTES];
	enum source_kind kind;
	bool has_point;
	bool is_on_map; /* one far away is left off: the traps are what it is for */
	struct point at;
	struct point outline[OUTLINE_MAX];
	size_t n_outline;
	struct gradient gradient; /* n = 0: no distance is known */
	char says[HOT_SAYS]; /* "Catch halves about every 150 m going away from ..." */
	char numbers[HOT_SAYS];
	char note[HOT_SAYS]; /* a clue, not a verdict: practice, by kind of source */
};

/* All that has to have room on the map: traps with a position, then the sources near
 * them with their outlines. */
struct hot_points {
	double *x, *y;     /* owned */
	size_t n, n_traps; /* all; the first of them are of traps */
};

#endif
