/* diary.h - the visits in the book. Raw counts and dates are kept for ever; a
 * correction keeps the old value in the history. */
#ifndef BOOK_DIARY_H
#define BOOK_DIARY_H

#include "book/book.h"

/* Lists of visits say which ones another scout's book disputes (base/visit.h). */
/* Visits of the farm's traps (0 = all) from..to, both included, by trap and day. */
bool book_visits(struct book *b, int64_t farm, int32_t from, int32_t to,
	struct visits *out, struct err *e);

/* All visits of one trap, of all years, by day. */
bool book_trap_visits(struct book *b, int64_t trap, struct visits *out, struct err *e);

/* Day of the trap's latest visit; DAY_NONE: it has none. */
bool book_last_visit(struct book *b, int64_t trap, int32_t *day, struct err *e);

/* One visit and its words. False with ERR_NOT_FOUND when there is none that day;
 * w may be NULL. */
bool book_visit(struct book *b, int64_t trap, int32_t day, struct visit *v,
	struct visit_words *w, struct err *e);

/* Saves a visit: new, or in place of the one that the trap has on that day (whose old
 * form is kept). w = NULL leaves the words that stand there. What is the same already
 * is no change. On return it is on the disk, unless within book_begin. Refused with
 * one sentence: a count out of range or not fitting the outcome, a reason that does
 * not fit, a lure of another pest, an unknown trap. */
bool book_save_visit(struct book *b, const struct visit *v, const struct visit_words *w,
	struct err *e);

/* The same for files with many visits: never replaces. *same is true when the very
 * same visit is there already (nothing is done then); a different one on that day is
 * refused with both values. Writes no undo step. */
bool book_add_visit(struct book *b, const struct visit *v, const struct visit_words *w,
	bool *same, struct err *e);

/* Takes a visit out; leaves a tombstone and its old form in the history. */
bool book_remove_visit(struct book *b, int64_t trap, int32_t day, struct err *e);

struct undone {
	int64_t trap;
	int32_t day;
	bool removed; /* the visit was taken out again; else its older form is back */
	/* What stood there before the undo; its trap is 0 if nothing did. */
	struct visit was;
};

struct undo_reach {
	int64_t farm, trap; /* 0: all */
	int32_t first, last;
	const char *by; /* NULL: whoever it was */
};

/* Takes back the latest change (by book_save_visit or book_remove_visit) of a visit
 * within reach that is not taken back yet; calling it again goes one step further. A
 * dispute that the change settled is open again. False with ERR_NOT_FOUND when there is
 * nothing left. The undo itself is in the history as well.
 * `by`: only what was saved under this name (see book_set_who) is taken back, and none
 * of it that somebody else has changed since, so that two programs on one book leave
 * each other's entries alone. */
bool book_undo_visit(struct book *b, const struct undo_reach *reach, struct undone *out,
	struct err *e);

/* What changed, latest first. */
struct old_visit {
	struct visit visit; /* as it was before the change */
	struct visit_words words;
	char changed_at[32]; /* UTC, ISO 8601 with milliseconds */
	char changed_by[SCOUT_BYTES];
	bool removed; /* the change was a removal */
};
struct old_visits {
	struct old_visit *items;
	size_t n, cap;
};
bool book_old_visits(struct book *b, int64_t trap, int32_t day, struct old_visits *out,
	struct err *e);
/* The same of all the trap's visits dated first..last, removed ones too. */
bool book_old_visits_of(struct book *b, int64_t trap, int32_t first, int32_t last,
	struct old_visits *out, struct err *e);

/* Days on which the farm was visited (any trap), newest first, at most n, up to and
 * including `upto`. *got is how many. */
bool book_visit_days(struct book *b, int64_t farm, int32_t upto, int32_t *days,
	size_t n, size_t *got, struct err *e);

/* Walks every visit in the book in the order farm, driving order, day, without
 * holding more than one in memory; stops when `each` returns false. from..to as
 * above. */
bool book_each_visit(struct book *b, int64_t farm, int32_t from, int32_t to,
	bool (*each)(void *arg, const struct visit *v, const struct visit_words *w),
	void *arg, struct err *e);

#endif
