/* temps.h - daily temperatures that cannot be. Degrees C. The limits are rules of our
 * own, wide of the weather that orchards stand in, so that a day they stop is a slip:
 * degrees F taken for C, a lost decimal point, swapped columns. */
#ifndef SEASON_TEMPS_H
#define SEASON_TEMPS_H

#include "season/degree_days.h"

enum {
	TEMPS_LOWEST_C = -90,
	TEMPS_HIGHEST_C = 60,
	TEMPS_RANGE_C = 60, /* between minimum and maximum of a day */
	TEMPS_JUMP_C = 30,  /* between the means of two days running */
};

/* What is wrong with a day, to stand behind its date and numbers, or NULL. Either may
 * be NAN: not known. Given through _(). */
const char *temps_fault(double min, double max);

/* The same for two days with both temperatures known; NULL too if they do not follow
 * each other. */
const char *temps_jump_fault(const struct dd_temps *day, const struct dd_temps *next);

#endif
