/* steps.h - taking back, step by step, what was entered, and reading what stood there
 * before. A step is all that one call or one group (book_begin .. book_commit) changed,
 * in any table; files of visits and of weather (book_add_*) leave none. */
#ifndef BOOK_STEPS_H
#define BOOK_STEPS_H

#include "base/buf.h"
#include "book/book.h"

#include <stddef.h>

/* The number of the latest step, 0: none; later steps have higher numbers. */
bool book_latest_step(struct book *b, int64_t *step, struct err *e);

enum { STEP_TEXT = 120 };

struct undone_step {
	int64_t step;
	int rows;             /* that were brought back */
	char kind[24];        /* table of its first row that is no visit: "trap" */
	char name[STEP_TEXT]; /* what it was of: "trap 7 of Addermoor"; "" */
	char changed_at[32];  /* UTC, when it was made */
	bool was_new;         /* it had put something in, which is out again */
};

/* Takes back the latest step after `after` that was made as `by` (NULL: by anybody) and
 * is not taken back yet; again: the one before it. All rows or none, itself in the
 * history. ERR_NOT_FOUND: nothing is left. ERR_INPUT, nothing changed: somebody else
 * changed one of its rows since, or something refers to what it put in; the sentence
 * says who or what, and when. */
bool book_undo_step(struct book *b, const char *by, int64_t after,
	struct undone_step *out, struct err *e);

/* The same of the steps that were made through this handle, under whatever name: never
 * one of another program, which may well go by the same name. */
bool book_undo_own(struct book *b, struct undone_step *out, struct err *e);
/* What book_undo_own would take back now; nothing is. */
bool book_would_undo(struct book *b, struct undone_step *out, struct err *e);

/* When and by whom a row was changed last: a form keeps it and compares it before it
 * saves, so that it never overwrites what somebody else put in meanwhile. */
struct row_stamp {
	char changed_at[32], changed_by[SCOUT_BYTES];
};
/* `kind`: a table that people enter ("farm", "block", "trap", "pest", "lure", "card",
 * "threshold", "station", "place", "biofix", "setting"). ERR_NOT_FOUND: it is gone. */
bool book_stamp(struct book *b, const char *kind, int64_t id, struct row_stamp *out,
	struct err *e);

/* What changed in a row, latest first: one item per field and change. */
struct row_change {
	char changed_at[32], changed_by[SCOUT_BYTES]; /* of the change */
	char field[24]; /* column of the table: "life_days"; "": it was put in or out */
	/* as texts; a reference as its name */
	char before[NOTE_BYTES], after[NOTE_BYTES];
};
struct row_changes {
	struct row_change *items;
	size_t n, cap;
};
bool book_row_changes(struct book *b, const char *kind, int64_t id,
	struct row_changes *out, struct err *e);

/* Takes a row out for good, which only what nothing refers to can be; the sentence says
 * what does ("12 visits") and that it can be put away instead. Leaves a tombstone. */
bool book_remove(struct book *b, const char *kind, int64_t id, struct err *e);
/* Adds what refers to a row and so keeps book_remove from it: "5 visits"; nothing. */
bool book_users(
	struct book *b, const char *kind, int64_t id, struct buf *out, struct err *e);

/* Puts two traps of a farm into each other's turn. One step. */
bool book_swap_traps(struct book *b, int64_t trap, int64_t other, struct err *e);

#endif
