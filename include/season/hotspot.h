/* hotspot.h - do these traps catch more than the others by more than chance and
 * ordinary differences between traps explain?
 * The claim rests on shuffling whole traps: traps are exchangeable if there is no hot
 * spot, whatever the spread of their counts. The exact test of counts is only the floor
 * below which luck alone would do. All traps given must be alike: one pest, lure class,
 * condition and window. Methods and constants are judgement backed by simulation
 * (tests/reference), not a published rule; sources stand beside the checks. */
#ifndef SEASON_HOTSPOT_H
#define SEASON_HOTSPOT_H

#include "season/chance.h"

#include <stdbool.h>

enum {
	HOT_SEED = 1,
	HOT_SHUFFLES = 9999,
	HOT_ENUMERATE_MAX = 200000, /* subsets; more are sampled */
	HOT_TRAPS_MAX = 2000,
};

extern const struct hot_constants {
	double ratio_named;                      /* 2 */
	int traps_in, traps_out, subsets, moths; /* 2, 3, 20, 20 */
	double luck, watch, clear;               /* 0.05, BH 0.10, Holm 0.05 */
	double clump_phi, clump_expected;        /* 1.5, 5 */
	int clump_traps, clump_moths;            /* 6, 20 */
	int near_traps, near_members;            /* 12, 3 */
} hot_constants;

/* What one trap caught in the window, over the nights of its readable visits. */
struct hot_catch {
	int64_t moths, nights; /* 0.., 1.. ; sums of all traps below 2^31 */
};

/* Moths per trap and week with exact limits (counting luck only). nights >= 1. */
struct range hot_rate(int64_t moths, int64_t nights);

/* The traps of a set and the rest, added up. */
struct hot_split {
	int64_t moths_in, nights_in, moths_out, nights_out;
	int n_in, n_out;
};
struct hot_split hot_split_of(const struct hot_catch *traps, size_t n, const bool *in);

/* Chance of so many of all moths, or more, in the set's share of the nights. */
double hot_luck(const struct hot_split *s);
/* Ratio of the two rates with exact limits; at is NAN or INFINITY when the rest caught
 * none. Counting luck only. */
struct range hot_ratio_exact(const struct hot_split *s);

/* Two-group quasi-Poisson: ratio with limits that count in the spread between traps. */
struct hot_quasi {
	bool is_defined;              /* both sides caught something, n > 2 */
	double lambda, phi, se, t, p; /* phi as it came; used floored at 1 */
	struct range ratio;
};
struct hot_quasi hot_ratio_quasi(
	const struct hot_catch *traps, size_t n, const bool *in);

/* Shuffles whole traps; `stratum` (NULL: none): within equal numbers only, strata that
 * lie wholly in or out of the set do not count. Exact integers: ties are ties. */
struct hot_shuffle {
	bool is_all; /* every subset was looked at; else HOT_SHUFFLES of them */
	/* Subsets with as much over their share, or more; when all are looked at the
	 * observed one is among them. */
	int64_t as_high;
	int64_t of; /* subsets looked at */
	double p;   /* as_high / of, or (as_high + 1) / (of + 1) */
};
struct hot_shuffle hot_shuffle(const struct hot_catch *traps, size_t n, const bool *in,
	const int *stratum, uint64_t seed);
/* Number of subsets of m of n, at most `most`. */
int64_t hot_subsets(int n, int m, int64_t most);

/* Adjusted for n looked at together (Holm 1979; Benjamini and Hochberg 1995). */
void hot_holm(const double *p, size_t n, double *out);
void hot_bh(const double *p, size_t n, double *out);

enum hot_grade {
	HOT_TOO_LITTLE, /* too little to tell */
	HOT_LUCK,       /* could be luck */
	HOT_HIGHER,     /* higher, not beyond ordinary differences between traps */
	HOT_WATCH,
	HOT_CLEAR,
	HOT_GRADE_COUNT
};
const char *hot_grade_word(enum hot_grade g); /* of files: "too little", "clear" */

/* Enough to be tested: traps on both sides, subsets, moths in all. */
bool hot_is_enough(const struct hot_split *s);
struct hot_evidence {
	double luck, holm, bh, ratio; /* ratio INFINITY: the rest caught none */
};
enum hot_grade hot_grade_of(const struct hot_split *s, const struct hot_evidence *e);

/* Chance that the engine and the floor show (watch or better, alone: p <= 0.05) a set
 * of n_in of n traps that truly catches `times` as much, by simulation with seed
 * HOT_SEED, a mean of `mean` moths per trap elsewhere and the spread k = 1 between
 * traps. 0 where nothing can be shown. */
double hot_power(int n, int n_in, double mean, double times);

struct hot_clumping {
	bool is_enough;
	double x2, phi, p; /* NAN with fewer than two traps, or no moths */
	double morisita;   /* NAN unless nights are equal */
	/* p by throwing all moths HOT_SHUFFLES times: some expected count is small. Not
	 * with more than 2000 moths, where one such trap counts for little. */
	bool is_shuffled;
	int64_t as_high;
	bool is_clumped;
};
struct hot_clumping hot_clumping_of(
	const struct hot_catch *traps, size_t n, uint64_t seed);

#endif
