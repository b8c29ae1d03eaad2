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
	enum tone tone;
};

struct due_bring {
	int64_t farm;
	bool is_lure;
	int n;
	char kind_name[NAME_BYTES];
};

struct due {
	struct today today;     /* its runs */
	struct due_item *items; /* by farm, due day, driving order; all but fine ones */
	size_t n, cap;
	struct due_bring *brings; /* by farm, lures first */
	size_t n_brings, cap_brings;
};

void due_of(const struct log *l, int64_t farm, struct due *out);
void due_free(struct due *d);

#endif
