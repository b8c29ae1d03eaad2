/* exact.h - fractions for comparing catches with thresholds, so that a catch on the
 * threshold never flips by rounding. Positive or zero; den > 0; lowest terms. */
#ifndef SEASON_EXACT_H
#define SEASON_EXACT_H

#include <stdbool.h>
#include <stdint.h>

struct ratio {
	int64_t num, den;
};

/* What a catch can be: from lo to hi, or without upper end. */
struct bounds {
	struct ratio lo, hi;
	bool open; /* no upper end; hi is then not used */
};

/* num >= 0, den > 0. */
struct ratio ratio_of(int64_t num, int64_t den);
/* Compares a with b: -1, 0, 1. Exact for all values. */
int ratio_cmp(struct ratio a, struct ratio b);

struct bounds bounds_exact(int64_t num, int64_t den);
struct bounds bounds_between(int64_t lo, int64_t hi, int64_t den);
struct bounds bounds_from(int64_t lo, int64_t den); /* [lo/den, open) */
/* Sum, and division by n > 0. Where a sum would not fit it is widened outwards
 * (lo down, hi up) by at most one part in a million: an answer may become unknown,
 * never wrong. */
struct bounds bounds_add(struct bounds a, struct bounds b);
struct bounds bounds_over(struct bounds a, int32_t n);

/* In tenths for showing, halves rounded up. */
int32_t ratio_x10(struct ratio r);

#endif
