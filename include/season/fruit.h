/* fruit.h - what a sample of fruit or shoots says of the whole block: the share that is
 * hurt, with what it can be. The limits suppose that the sample was drawn at random;
 * one drawn where the catch is highest tells of that place. */
#ifndef SEASON_FRUIT_H
#define SEASON_FRUIT_H

#include "base/acts.h"

#include <stdint.h>

/* Stung and entered together; -1: not entered. */
int32_t fruit_hurt(const struct fruit_check *c);

struct fruit_share {
	double lo, at, hi; /* percent */
};

/* Exact 95 % limits (Clopper and Pearson 1934) for x of n; 0 <= x <= n, n >= 1. */
struct fruit_share fruit_share(int32_t x, int32_t n);

/* No fruit of n was hurt: with 95 % confidence at most so many percent are, n >= 1.
 * 100 (1 - 0.05^(1/n)), about 300 / n: "0 of 300 means up to 1 %". Lower than
 * fruit_share(0, n).hi, which looks both ways and so leaves out half as much above. */
double fruit_clean_hi(int32_t n);

#endif
