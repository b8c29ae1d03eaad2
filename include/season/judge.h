/* judge.h - a trap's or block's catch against one rule, from bounds.
 * OVER if the lower bound passes, under if the upper bound fails, else unknown.
 *
 * What goes in: counted [x, x]; floor [x, open); spoiled or missing [count or 0,
 * open); not read [0, open). For spans of several weeks an interval of 14 nights or
 * more is as many whole weeks as it has, each [0, its moths]. For a single week it
 * is [moths * 7 / nights, moths]: some week in it reached the average. A first
 * interval too short for a week (UNREAD_SHORT) is [moths, open): seven nights bring
 * at least what fewer brought.
 *
 * A visit that two scouts entered otherwise, until it is settled: [the least, the most]
 * of what they say, and without upper end when one of them did not read the trap.
 *
 * Spans of nights end where the trap was last cleared, unless it is unread (stale or
 * skipped after it): then they end on the asked day and the unread tail is [0, open).
 * The part of an interval inside a span that it straddles is [0, its moths]. Nights
 * within a span of N nights on which no trap hung are not read. A total since `hung`
 * starts with the series; since `treatment` at the later of the treatment and
 * hanging; since biofix or flight: unknown while that day is not known. */
#ifndef SEASON_JUDGE_H
#define SEASON_JUDGE_H

#include "season/exact.h"
#include "season/rule.h"
#include "season/service.h"
#include "season/weekly.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum lacking { /* what an unknown lacks */
	LACKING_NOTHING,
	LACKING_READING, /* see `unread` */
	LACKING_WEEKS,   /* the trap has not hung for all weeks or nights of the span */
	LACKING_SPLIT,   /* a long or straddling interval's catch cannot be divided */
	LACKING_FLOOR,   /* the card was full: at least, but how many more? */
	LACKING_TRAPS,   /* too few of the block's traps were read */
	LACKING_BIOFIX,
	LACKING_FLIGHT,
	LACKING_AGREEMENT, /* two scouts counted the same visit, nobody settled it */
	LACKING_HEAT,      /* temperatures are missing: the degree-days are not known */
	LACKING_COUNT
};

enum doubt {
	DOUBT_LURE = 1,    /* lure overdue: catch may be low */
	DOUBT_CARD = 2,    /* card at or beyond change_at */
	DOUBT_LONG = 4,    /* interval longer than a week and a half */
	DOUBT_TRAPS = 8,   /* block: not the same traps read in all weeks of the span */
	DOUBT_UNREAD = 16, /* block: some of its traps were left out, unread */
	DOUBT_COUNTS = 64, /* two scouts counted the same visit, not settled */
	DOUBT_CARD_AGE = 32, /* card overdue by age */
};

enum { JUDGE_WEEKS_MAX = 8 };

/* What stands behind one week (or the one span) of a judgement. */
struct seen {
	int32_t moths, nights; /* in the traps that were read; nights of the longest */
	int32_t from, to;      /* DAY_NONE: nothing was read */
	int32_t read;          /* traps */
};

struct judgement {
	enum verdict verdict;
	/* under or near, yet lure overdue, card loaded or a count not settled: "?" */
	bool questionable;
	struct bounds value; /* what was compared: the latest week, mean or total */
	enum lacking lacking;
	enum unread unread; /* with LACKING_READING */
	int32_t unread_nights;
	int32_t nights;      /* nights behind the value; 0 when none */
	int32_t from, to;    /* first night's day and last clearing used; DAY_NONE */
	int32_t moths;       /* counted in them (block: in all traps read) */
	int32_t read, traps; /* block measures: read of all; a trap: 1 or 0 of 1 */
	int32_t highest_x10; /* block-week: highest single trap a week in tenths; -1 */
	bool highest_open;   /* the highest is a floor: at least that many */
	int32_t weeks;       /* of the rule; 1 for spans of nights */
	int32_t weeks_over;  /* the latest of these running that pass for certain */
	struct seen week[JUDGE_WEEKS_MAX];                  /* the latest first */
	unsigned doubts;                                    /* enum doubt, or'ed */
	int32_t lure_overdue_days, card_moths, long_nights; /* worst of the traps */
};

/* One trap as the judge sees it. */
struct subject {
	const struct diary *diary;
	const struct lure_state *lure; /* may be NULL: no doubt arises */
	const struct card_state *card; /* may be NULL */
};

/* For a rule with a trap measure. `fit` FIT_MAYBE makes the answer unknown
 * (LACKING_BIOFIX). MEASURE_NONE gives VERDICT_NONE. */
struct judgement judge_trap(const struct rule *r, enum fit fit,
	const struct subject *trap, const struct moment *m, const struct limits *l);

/* For a rule with a block measure, over the n >= 1 traps of the block that it holds
 * for (those that hang or hung in the span). Mean over the traps that were read; when
 * fewer than limits.read_num of read_den were, unknown, unless the lower bounds of
 * all, divided by all, pass already. */
struct judgement judge_block(const struct rule *r, enum fit fit,
	const struct subject *traps, size_t n, const struct moment *m,
	const struct limits *l);

/* The worse of two answers: over, unknown, near, under, none. */
enum verdict verdict_worse(enum verdict a, enum verdict b);

/* True if `count` is odd enough to ask once more: limits.odd_count or more and over
 * odd_times the highest of the n (0..4) earlier counts; no earlier count: never. */
bool judge_odd_count(
	int32_t count, const int32_t *earlier, size_t n, const struct limits *l);

#endif
