#include "season/temps.h"

#include "base/words.h"

#include <math.h>

/* A comparison with NAN is false, so that what is not known is no fault. */
const char *temps_fault(double min, double max)
{
	if (min > max)
		return _("the minimum is above the maximum");
	if (min > TEMPS_HIGHEST_C || max > TEMPS_HIGHEST_C)
		return _(
			"no weather is hotter than 60 degrees C; are these degrees F?");
	if (min < TEMPS_LOWEST_C || max < TEMPS_LOWEST_C)
		return _("no weather is colder than -90 degrees C");
	if (max - min > TEMPS_RANGE_C)
		return _(
			"no day goes through more than 60 degrees C; is one of them in "
			"degrees F?");
	return NULL;
}

const char *temps_jump_fault(const struct dd_temps *day, const struct dd_temps *next)
{
	double change = (next->min + next->max - day->min - day->max) / 2;

	if (next->day - day->day != 1 || !(fabs(change) > TEMPS_JUMP_C))
		return NULL;
	return _("no weather changes a day's mean by more than 30 degrees C overnight; "
		 "is one of the days in degrees F?");
}
