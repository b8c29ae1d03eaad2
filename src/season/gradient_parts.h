/* gradient_parts.h - the two legs of a gradient. */
#ifndef SEASON_GRADIENT_PARTS_H
#define SEASON_GRADIENT_PARTS_H

#include "season/gradient.h"

struct slope {
	bool is_fitted; /* else all NAN */
	double a, b, phi, se, lo, hi;
};

/* Fits log moths per trap-night = a + b metres to all but the trap `without` (n: to all
 * of them). Not fitted: fewer than 3 traps, no moths, or the best slope has no end. */
struct slope gradient_fit(
	const struct hot_catch *traps, const double *metres, size_t n, size_t without);

/* Average ranks, doubled: integers. */
void gradient_rank(const double *x, size_t n, int32_t *out);

/* Fills as_low, of, is_all and p of *g out of doubled ranks of distance and rate. */
void gradient_shuffle(const int32_t *far, const int32_t *rate, size_t n, uint64_t seed,
	struct gradient *g);

#endif
