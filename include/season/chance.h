/* chance.h - tails of the distributions that the hot-spot tests need, exact limits of
 * counts and shares, and the fixed generator behind every shuffle. Checked to 1e-9
 * relative against R 4.2.2 and printed tables, see tests/reference. */
#ifndef SEASON_CHANCE_H
#define SEASON_CHANCE_H

#include <stddef.h>
#include <stdint.h>

/* More moths than a farm ever counts. Larger counts are divided down to this, both of a
 * share alike: limits get wider and chances larger, never bolder. */
enum { CHANCE_COUNT_MAX = 500000 };

/* Upper tails. k, n >= 0; 0 <= p <= 1; df >= 1. */
double chance_binomial(int64_t k, int64_t n, double p); /* P(X >= k) */
double chance_chi_square(double x, double df);          /* P(X > x) */
double chance_t(double t, double df);                   /* P(X > t) */
double chance_t_quantile(double df);                    /* 0.975 quantile */

struct range {
	double at, lo, hi; /* hi may be INFINITY: no limit */
};

/* Exact 95 % limits (Garwood 1936) of the mean behind a count y >= 0. */
struct range chance_count(int64_t y);
/* Exact 95 % limits (Clopper and Pearson 1934) of the share behind x of n, n >= 1. */
struct range chance_share(int64_t x, int64_t n);

/* SplitMix64 (Steele, Lea and Flood 2014). The same numbers on every machine. */
struct dice {
	uint64_t state; /* the seed */
};
uint64_t dice_next(struct dice *d);
/* 0..n-1, each as likely: redraws while below 2^64 mod n. n >= 1. */
uint64_t dice_below(struct dice *d, uint64_t n);

#endif
