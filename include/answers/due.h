/* due.h - lures and cards by due date, runs, and what to bring. */
#ifndef ANSWERS_DUE_H
#define ANSWERS_DUE_H

#include "answers/today.h"

struct due_item {
	int64_t farm;
	int trap; /* index in log.traps */
	bool is_lure;
	int64_t kind;
	int32_t due;
	enum service_state state;
	char farm_name[NAME_BYTES], block_name[NAME_BYTES], label[NAME_BYTES];
	char kind_name[NAME_BYTES];
	char state_text[SAY_SHORT * 2]; /* "due today", "3 d overdue", "by next run" */
	const char *state_word;         /* for files: fine, next-run, due, overdue */
	char barred[SAY_SHORT * 3];     /* "no entry till Wed 06:00"; "" */
	/* for files: "2026-07-22T06:00+02:00", "unknown", "" */
	char no_entry_until[INSTANT_SIZE];
	enum tone tone;
};

struct due_bring {
	int64_t farm; /* 0: all together */
	bool is_lure;
	int n;
	char kind_name[NAME_BYTES];
	int64_t kind;
};

struct due {
	struct today today;         /* its runs; bars and picks of all farms */
	struct block_clocks clocks; /* of the farm asked for */
	struct due_item *items; /* by farm, due day, driving order; all but fine ones */
	size_t n, cap;
	struct due_bring *brings; /* by farm, lures first */
	size_t n_brings, cap_brings;
	/* The same of all farms together, whichever farm is asked for. */
	struct due_bring *totals;
	size_t n_totals, cap_totals;
	char unknown_text[SAY_SHORT * 2]; /* beside the totals, as beside a run's */
	/* Of a lure on the runs it is not known when it is due: what has no row may be
	 * due too. */
	bool has_unknown;
};

void due_of(const struct log *l, int64_t farm, struct due *out);
/* Its items by due day, whichever their farm. */
void due_by_day(struct due *d);
void due_free(struct due *d);

#endif
