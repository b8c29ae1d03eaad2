/* gradient.h - does the catch fall away from a source?
 * Two legs must agree: a quasi-Poisson log-linear slope whose upper limit is below 0,
 * and Spearman's rank correlation by shuffled distances; and both the slope's sign and
 * its limit must hold without the trap that caught most. */
#ifndef SEASON_GRADIENT_H
#define SEASON_GRADIENT_H

#include "season/hotspot.h"

extern const struct gradient_constants {
	int traps, distances;  /* 8, 5 */
	double far_near;       /* 3 */
	int moths;             /* 30 */
	double spearman;       /* 0.05 */
	int all_orders_to;     /* 8 traps: all orders, else HOT_SHUFFLES */
	double spacing, reach; /* 0.5 of the spacing, 3 times the range of distances */
	double step, stop;     /* Newton: 2, 1e-10 */
	int rounds;            /* 60 */
} gradient_constants;

/* Why there is no claim: the first that holds. */
enum gradient_say {
	GRADIENT_FALLS,         /* halving distance with limits */
	GRADIENT_FALLS_SOMEHOW, /* falls, but how fast cannot be said */
	GRADIENT_TRAPS,         /* fewer than 8 traps */
	GRADIENT_DISTANCES,     /* fewer than 5 distances, or not 3 times as far */
	GRADIENT_MOTHS,         /* fewer than 30, or none */
	GRADIENT_NEAREST,       /* all moths were in the nearest traps: no fit */
	GRADIENT_NO_CHANGE,     /* no clear change with distance */
	GRADIENT_DISAGREE,      /* one leg says that it falls, the other does not */
	GRADIENT_ONE_TRAP,      /* it hangs on the one trap that caught most */
	GRADIENT_COUNT
};
const char *gradient_word(enum gradient_say s); /* of files */

/* The numbers are there whatever is said, if they can be had at all. */
struct gradient {
	enum gradient_say say;
	bool is_fitted; /* else a .. b_hi and halving are NAN */
	/* of log moths per trap-night, per metre; phi as it came, used floored at 1 */
	double a, b, phi, se;
	double b_lo, b_hi;
	struct range halving; /* metres; hi INFINITY: no limit. NAN unless b < 0 */
	/* Spearman; S = sum of squared rank differences. rho NAN when all rates or all
	 * distances are equal. */
	double rho, s;
	double p; /* one-sided: falls */
	/* Orders of the distances whose rho is as low, or lower, of those looked at:
	 * p = as_low / of when all were, else with 1 added to both. */
	int64_t as_low, of;
	bool is_all;
	int n;
	int64_t moths;
	double nearest, farthest; /* metres; NAN without traps */
};

/* metres: of each trap from the source, 0 or more; in ranks and counts of distances a
 * millimetre makes no difference. spacing: ground_spacing of the traps; 0 = not
 * known. */
struct gradient gradient_of(const struct hot_catch *traps, const double *metres,
	size_t n, double spacing, uint64_t seed);

/* Spearman's rho with average ranks, on its own. s may be NULL. */
double gradient_spearman(const double *x, const double *y, size_t n, double *s);

#endif
