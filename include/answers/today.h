/* today.h - the first page: what to run, what is over, what is unknown, where entry is
 * barred. */
#ifndef ANSWERS_TODAY_H
#define ANSWERS_TODAY_H

#include "answers/entry_bar.h"

struct today_run {
	int64_t farm;
	char name[NAME_BYTES];
	int traps;                  /* that hang */
	int open;                   /* of these not visited in the present run */
	int32_t last_run;           /* DAY_NONE: never */
	int32_t next_run;           /* may lie in the past */
	bool due;                   /* next_run <= today and something is open */
	char traps_text[SAY_SHORT]; /* "18 traps", "16 of 18 left" */
	/* "last run Tue 14 Jul, 7 days"; "not run yet"; of one that is not due "next
	 * run Thu 23 Jul" */
	char last_text[SAY_SHORT * 2];
	char bring[SAY_SHORT * 2]; /* "bring 3 lures, 1 card" */
	/* "; 1 lure not known": when it is due is not; "" */
	char unknown_text[SAY_SHORT * 2];
	/* "no entry: Pond block until Wed 22 Jul 06:00"; "": all may be entered */
	char barred[SAY_LINE * 2];
};

/* One trap or block that is over or unknown. */
struct today_line {
	int64_t farm, block, pest;
	int trap; /* index in log.traps or NO_TRAP */
	int rule;
	enum verdict verdict;
	char farm_name[NAME_BYTES], block_name[NAME_BYTES], pest_code[CODE_BYTES];
	char where[NAME_BYTES + 8]; /* "trap 3", "mean of 4" */
	/* "14.0 a week, threshold >=5"; "...; treated 21 Jul" when that was answered */
	char says[SAY_LINE];
};

/* A hot block of a pest; its numbers are on the Hot spots page. */
struct today_hot {
	int64_t farm, block, pest;
	char name[NAME_BYTES]; /* of the farm */
	char says[SAY_LINE];   /* "Old Kiln, CM: clear hot spot, 4.5 times the rest" */
};

/* What comes next for a pest on a farm: one line. */
struct today_next {
	int64_t farm, pest;
	char name[NAME_BYTES], pest_code[CODE_BYTES];
	/* "about 30 Jul: egg hatch begins (generation: 2) (1100 F)" */
	char says[SAY_LINE];
};

struct today {
	int32_t day;
	char title[DAY_TEXT_SIZE];       /* "Tue 21 July 2026 · week 30" */
	char title_short[DAY_TEXT_SIZE]; /* "Tue 21 Jul" */
	struct today_run *runs;          /* due ones first, then by next run */
	size_t n_runs, cap_runs;
	/* Over first, then unknown: each trap and block mean by its worst rule; among
	 * the unknown no trap that was taken down uncounted. */
	struct today_line *lines;
	size_t n_lines, cap_lines, n_over;
	struct today_hot *hots; /* by farm and pest; today_read_hots fills them */
	size_t n_hots, cap_hots;
	struct today_next *nexts; /* by farm and pest; today_read_next fills them */
	size_t n_nexts, cap_nexts;
	int n_under; /* traps and block means that are under, not counting near ones */
	int n_near;
	/* Those that an old lure or a full card makes doubtful, in neither of the two:
	 * ", 1 near?, 3 under?"; "" */
	char doubted_text[SAY_SHORT * 2];
	/* "no threshold for 2 traps that catch: Low Pears, CM (2)"; "" when there is
	 * none, or the book has no threshold at all */
	char no_threshold[SAY_LINE * 2];
	bool no_rules;          /* the book holds no threshold at all */
	struct bars bars;       /* of all farms */
	struct pick_rows picks; /* the same */
};

/* What the farm's present run still needs (its open traps), or its next one when
 * nothing is open. */
void today_brings(const struct log *l, int64_t farm, struct brings *out);

void today_of(const struct log *l, struct today *out);
/* Fills nexts: for each farm and pest with a biofix and traps in this season, the next
 * published event that has not passed. */
bool today_read_next(
	const struct log *l, struct book *b, struct today *out, struct err *e);
/* Fills hots: blocks of this season that are hot (watch or clear), of all farms. */
bool today_read_hots(
	const struct log *l, struct book *b, struct today *out, struct err *e);
void today_free(struct today *t);

#endif
