/* kinds.h - what traps are for and what hangs in them. */
#ifndef BASE_KINDS_H
#define BASE_KINDS_H

#include "base/sizes.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* How a pest's degree-days are counted. Words as in season/degree_days.h. */
struct heat {
	char unit;        /* 'F' or 'C': of base and cap, and of the sums; 0: not set */
	double base, cap; /* cap NAN = none */
	char method[20], cutoff[16]; /* "sine", "horizontal" */
	char source[SOURCE_BYTES];
};

struct pest {
	int64_t id;
	char code[CODE_BYTES], name[NAME_BYTES], latin[NAME_BYTES];
	struct heat heat;
	char biofix_rule[24]; /* word of season/biofix.h; "" = the first there */
	bool retired;         /* put away: offered nowhere, stays in past seasons */
};

/* What is on the shelf, if the grower keeps it. What visits put in after `day` is taken
 * off when it is asked for, never stored. All zero, as { 0 } leaves it, is put into the
 * book as not kept; what is read back says so as below. */
struct stock {
	int32_t n;       /* counted on `day`; -1 = not kept */
	int32_t day;     /* DAY_NONE when not kept */
	int32_t reorder; /* reorder at this many or fewer; -1 = never said */
};

struct lure_kind {
	int64_t id;
	char name[NAME_BYTES];
	int64_t pest;         /* 0 = of no single pest */
	int32_t life_days;    /* 1..366 */
	int32_t hot_days;     /* shorter life within the window below; 0 = none */
	int hot_from, hot_to; /* month-day, both included; may wrap */
	char source[SOURCE_BYTES];
	struct stock stock;
	bool retired;
};

struct card_kind {
	int64_t id;
	char name[NAME_BYTES];
	int32_t life_days; /* 1..366 */
	/* moths since it was new; 0 < stir <= change <= floor */
	int32_t stir_at, change_at, floor_at;
	char source[SOURCE_BYTES];
	struct stock stock;
	bool retired;
};

/* Lists own their items. Zero-initialise; items may be freed with free(). */
struct pests {
	struct pest *items;
	size_t n, cap;
};
struct lure_kinds {
	struct lure_kind *items;
	size_t n, cap;
};
struct card_kinds {
	struct card_kind *items;
	size_t n, cap;
};

#endif
