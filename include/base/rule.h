/* rule.h - the grower's thresholds, and the numbers that they are judged with. */
#ifndef BASE_RULE_H
#define BASE_RULE_H

#include "base/sizes.h"
#include "base/terms.h"

#include <stddef.h>
#include <stdint.h>

/* When a rule decides. Empty fields (0, "") hold everywhere and always. */
struct rule {
	int64_t id, pest;
	/* where */
	char crop[NAME_BYTES];
	enum condition condition;
	int64_t lure;
	enum place place;
	int64_t farm, block;
	/* when */
	int flight;       /* 1.. ; 0 = any */
	int from, to;     /* month-day window, may wrap */
	int32_t until_dd; /* degree-days since biofix, in the pest's unit; 0 = no end */
	/* what */
	enum measure measure;
	enum span_kind span_kind;
	int32_t span; /* weeks 1..8, nights 1..366 */
	enum comparator comparator;
	int32_t value_x100;
	char note[NOTE_BYTES], source[SOURCE_BYTES];
};

/* The numbers of the judgement that the grower may set; the first number of each
 * comment is the usual one. */
struct limits {
	int32_t join_nights;  /* 5: shorter intervals are joined with earlier ones */
	int32_t long_nights;  /* 10: longer is an average over more than a week */
	int32_t stale_nights; /* 10: later than this, this week's catch is unknown */
	int32_t near_x100;    /* 70: from this part of the threshold an under is near */
	int32_t read_num, read_den; /* 2 of 3 traps must be read for a block mean */
	int32_t open_days; /* 2: a run may spill over into this many next days */
	int32_t fill_days; /* 0: no gap in the weather is filled; 1..3: so many days */
	/* 0: the biofix day itself counts; 1: the day after it is the first */
	int32_t skip_biofix_day;
	/* 20 or more that is over 5 times the highest of the last four: ask */
	int32_t odd_count, odd_times;
};

/* The values above. */
extern const struct limits limits_usual;

/* Lists own their items. Zero-initialise; items may be freed with free(). */
struct rules {
	struct rule *items;
	size_t n, cap;
};

#endif
