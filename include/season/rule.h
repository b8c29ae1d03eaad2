/* rule.h - which of the grower's thresholds hold for a trap on a day. */
#ifndef SEASON_RULE_H
#define SEASON_RULE_H

#include "base/records.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* Where a trap stands and what hangs in it. */
struct spot {
	int64_t farm, block, pest, lure; /* lure: the kind in it now */
	const char *crop;
	enum condition condition;
	enum place place;
};

/* When it is asked, as far as it is known. */
struct moment {
	int32_t day;
	int32_t biofix;       /* DAY_NONE: not set */
	int32_t flight_start; /* first day of the present flight; DAY_NONE: not known */
	int flight;           /* 1..; 0: not known */
	int32_t dd;           /* degree-days since biofix; -1: not known */
	bool dd_at_least;     /* days are missing: dd or more */
	int32_t treated; /* latest treatment of the block (for the pest); DAY_NONE */
};

enum fit {
	FIT_NO,
	FIT_YES,
	FIT_MAYBE, /* fits, but for a flight or degree-days not known */
};

/* Empty fields of the rule fit everything. until_dd fits while dd < until_dd. */
enum fit rule_fits(const struct rule *r, const struct spot *s, const struct moment *m);

/* True if a sets every field of where and when that b sets, to the same value, and
 * at least one more. A rule for a block counts as set for the block's farm too, if
 * block_farm (the farm of a->block) is given. The window from..to is one field. */
bool rule_narrower(const struct rule *a, const struct rule *b, int64_t block_farm);

/* The rules that decide for this spot: those that fit, less those replaced by a
 * narrower one of the same pest and measure that fits (FIT_YES; one that only may
 * fit replaces nothing). Writes indices into `rules`, in their order; returns how
 * many. out has room for n. */
size_t rule_choose(const struct rule *rules, size_t n, const struct spot *s,
	const struct moment *m, size_t *out);

/* One sentence that is wrong with the rule itself, or NULL: span out of range for its
 * measure (1..8 weeks, 1..366 nights; words only for totals), value above 999999.99,
 * flight over 9, half a window. Not translated for files, given through _(). */
const char *rule_fault(const struct rule *r);

#endif
