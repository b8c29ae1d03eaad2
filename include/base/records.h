/* records.h - the plain records that the book keeps and the season reads. Values:
 * copied by =, no pointers into anything. An id is a row of the book, > 0; 0 = none. */
#ifndef BASE_RECORDS_H
#define BASE_RECORDS_H

#include "base/day.h"
#include "base/terms.h"

#include <stdbool.h>
#include <stdint.h>

enum {
	COUNT_MAX = 9999, /* insects on one trap at one visit */
	COUNT_NONE = -1,
	NIGHTS_MAX = 366,
	NAME_BYTES = 48, /* farm, block, trap, crop, variety, kind; with its NUL */
	SCOUT_BYTES = 24,
	NOTE_BYTES = 240,
	SOURCE_BYTES = 240,
	CODE_BYTES = 12, /* pest code, "CM" */
};

struct visit {
	int64_t trap;
	int32_t day;
	enum outcome outcome;
	enum reason reason;
	int32_t count;              /* 0..COUNT_MAX or COUNT_NONE */
	int32_t females, others;    /* the same; others are not the trap's pest */
	int64_t new_card, new_lure; /* kind put in at this visit, 0 = left as it was */
	bool stirred;               /* glue worked through, so that it grips again */
};

/* The words of a visit; kept apart so that a season of visits stays small. */
struct visit_words {
	char scout[SCOUT_BYTES];
	char note[NOTE_BYTES];
};

struct pest {
	int64_t id;
	char code[CODE_BYTES], name[NAME_BYTES], latin[NAME_BYTES];
};

struct lure_kind {
	int64_t id;
	char name[NAME_BYTES];
	int64_t pest;         /* 0 = of no single pest */
	int32_t life_days;    /* 1..366 */
	int32_t hot_days;     /* shorter life within the window below; 0 = none */
	int hot_from, hot_to; /* month-day, both included; may wrap */
	char source[SOURCE_BYTES];
};

struct card_kind {
	int64_t id;
	char name[NAME_BYTES];
	int32_t life_days; /* 1..366 */
	/* moths since it was new; 0 < stir <= change <= floor */
	int32_t stir_at, change_at, floor_at;
	char source[SOURCE_BYTES];
};

struct farm {
	int64_t id;
	char name[NAME_BYTES];
	int season_start; /* month-day, 101 = calendar year */
	int run_weekday;  /* 1 Monday .. 7 Sunday; 0 = a week after the last run */
};

struct block {
	int64_t id, farm;
	char name[NAME_BYTES], crop[NAME_BYTES], variety[NAME_BYTES];
	enum condition condition;
	int32_t area_x100; /* hectares in hundredths; -1 = not given */
};

struct trap {
	int64_t id, farm, block, pest;
	char label[NAME_BYTES]; /* unique within its farm */
	int64_t lure, card;     /* the kinds it usually gets */
	enum place place;
	bool has_position;
	double lat, lon; /* degrees, WGS 84 */
	int32_t order;   /* driving order within the farm, 1.. */
};

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

/* A treatment of a block (as far as running totals need it). */
struct treatment {
	int64_t id, block, pest; /* pest 0 = all */
	int32_t day;
};

/* The numbers of the judgement that the grower may set. */
struct limits {
	int32_t join_nights;  /* 5: shorter intervals are joined with earlier ones */
	int32_t long_nights;  /* 10: longer is an average over more than a week */
	int32_t stale_nights; /* 10: later than this, this week's catch is unknown */
	int32_t near_x100;    /* 70: from this part of the threshold an under is near */
	int32_t read_num, read_den; /* 2 of 3 traps must be read for a block mean */
	int32_t open_days; /* 2: a run may spill over into this many next days */
	/* 20 or more that is over 5 times the highest of the last four: ask */
	int32_t odd_count, odd_times;
};

/* The values above. */
extern const struct limits limits_usual;

/* Lists own their items. Zero-initialise; x.items may be freed with free(). */
struct visits {
	struct visit *items;
	size_t n, cap;
};
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
struct farms {
	struct farm *items;
	size_t n, cap;
};
struct blocks {
	struct block *items;
	size_t n, cap;
};
struct traps {
	struct trap *items;
	size_t n, cap;
};
struct rules {
	struct rule *items;
	size_t n, cap;
};
struct treatments {
	struct treatment *items;
	size_t n, cap;
};

#endif
