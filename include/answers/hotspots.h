/* hotspots.h - which block, which edge, and does the catch fall away from a source?
 * Plain sentences with the numbers behind them, of one farm and pest. */
#ifndef ANSWERS_HOTSPOTS_H
#define ANSWERS_HOTSPOTS_H

#include "answers/hot_lines.h"
#include "answers/hot_map.h"
#include "answers/log.h"
#include "answers/say.h"
#include "season/gradient.h"
#include "season/ground.h"

enum { HOT_LATE_SEASONS = 8 };

struct hot_ask {
	int64_t farm, pest;
	int season;  /* year that it began in; 0: the present one */
	int flight;  /* of that season; 0: all of the season so far */
	int alike;   /* which of the groups of like traps; 0: the one with most traps */
	int earlier; /* seasons before it to look at; 0: HOT_LATE_SEASONS */
};

/* Traps that may be compared: one lure kind, one condition, all of the window. */
struct hot_alike {
	int64_t lure; /* 0: not known */
	enum condition condition;
	int n;
	char text[SAY_LINE]; /* "12 traps, 1 mg lure, conventional" */
};

enum hot_what { HOT_OF_BLOCK, HOT_OF_NEAR, HOT_OF_TRAP, HOT_OF_BORDER };

/* One answer: a block, a trap and those near it, one trap, the border of a block (or,
 * with block 0, of all blocks). */
struct hot_row {
	enum hot_what what;
	int64_t block;
	int trap;            /* index in log.traps; NO_TRAP */
	char name[SAY_LINE]; /* "Old Kiln", "trap 3 and near", "border of Old Kiln" */
	struct hot_split split;
	bool at_least, rest_at_least; /* a full card is among its traps; the rest */
	struct range rate;            /* moths per trap and week; counting luck only */
	struct range ratio; /* to the rest; quasi-Poisson, or exact when it must be */
	bool ratio_is_exact;
	double gi_star; /* HOT_OF_NEAR from 12 located traps; else NAN */
	double p_luck, p_shuffle, p_holm, p_bh; /* NAN: not tested */
	enum hot_grade grade;
	char grade_text[SAY_SHORT * 2]; /* "clear hot spot", "too little to tell" */
	char rate_text[SAY_SHORT];      /* "9.3"; "9.3+" at least; "-" not read */
	char ratio_text[SAY_SHORT * 2]; /* "4.5 (2.3 to 9.0)"; "-" none */
	char says[HOT_SAYS];            /* the sentence */
	char numbers[HOT_SAYS];         /* what stands behind it */
	char power[SAY_LINE];           /* what such a test could show at all; "" */
	char next[HOT_SAYS];            /* what would confirm it, what to do next; "" */
	char earlier[HOT_SAYS]; /* "hot in 3 of 4 seasons: 2023, 2024, 2026"; "" */
	enum tone tone;
};

struct hot_view {
	int64_t farm;
	char title[SAY_LINE];  /* "Addermoor · CM · season 2026" */
	char window[SAY_LINE]; /* "5 May to 20 Jul, 2 312 trap-nights, 214 moths" */
	int season, flight, n_flights;
	struct hot_alike *alikes; /* most traps first */
	size_t n_alikes;
	size_t alike;            /* the one shown */
	char left_out[HOT_SAYS]; /* "4 traps left out: 3 with another lure, ..."; "" */
	char says[HOT_SAYS];     /* the whole in a sentence or two, worst first */
	struct hot_row *rows;    /* blocks, hottest first, then border, near, traps */
	size_t n, cap;
	struct hot_trap *traps; /* of farm and pest in the window, by driving order */
	size_t n_traps;
	struct hot_source *sources;
	size_t n_sources;
	struct hot_points points; /* of the map */
	char *letters; /* "A Yard (bins)  B Lane (wild, off the map)"; owned; NULL */
	double band;   /* metres; 0: none */
	char clumping[SAY_LINE]; /* "clumped: ..." */
	char no_map[SAY_LINE];   /* why there is no map: no positions; "" */
	char missing[HOT_SAYS];  /* what cannot be said for want of positions; "" */
	const char *classes;     /* what the digits mean */
};

/* Answers ask. False only when the book fails; a farm with too little says so. */
bool hotspots_read(struct hot_view *v, struct book *b, const struct log *l,
	const struct hot_ask *ask, struct err *e);
void hotspots_free(struct hot_view *v);

#endif
