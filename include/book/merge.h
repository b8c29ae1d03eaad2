/* merge.h - another book's rows into this one. Merging is a join: in whatever order
 * books are merged, and however often, the same rows come out, and none of what a
 * merge has to choose between is lost. See "How books are merged" in DEVELOPERS.md. */
#ifndef BOOK_MERGE_H
#define BOOK_MERGE_H

#include "book/book.h"
#include "book/matters.h"

#include <stddef.h>

enum { MERGE_TEXT = 120, MERGE_FIELDS = 3 };

/* What a merge does, kind by kind, in the order of the book. */
struct merge_count {
	char kind[24];  /* the table: "visit" */
	char words[40]; /* "visits", translated */
	int64_t came;   /* rows that this book did not have */
	int64_t theirs; /* rows of both that read as in the other book from now on */
	int64_t gone;   /* rows that go, since they were removed there */
};

enum merge_how {
	MERGE_THEIRS, /* both have it, theirs was changed later and holds */
	MERGE_OURS,   /* ours was changed later and stays */
};
struct merge_field {
	char field[24];                            /* column of the table: "label" */
	char ours[NAME_BYTES], theirs[NAME_BYTES]; /* cut; a reference as its name */
};
struct merge_difference {
	enum merge_how how;
	char kind[24];
	char name[MERGE_TEXT];                    /* "3, Addermoor" */
	char our_time[32], our_name[SCOUT_BYTES]; /* of the last change; UTC */
	char their_time[32], their_name[SCOUT_BYTES];
	struct merge_field fields[MERGE_FIELDS]; /* the first that differ */
	size_t n_fields;
};
struct merge_differences {
	struct merge_difference *items;
	size_t n, cap;
	int64_t all; /* n is at most MERGE_LISTED of them */
};
enum { MERGE_LISTED = 500 };

struct merge_report {
	struct merge_count *counts; /* of kinds of which something comes or changes */
	size_t n_counts, cap_counts;
	struct merge_differences differences;
	struct matters matters; /* to be settled afterwards */
	char kept[MERGE_TEXT]; /* the file with the book as it was; "": none was made */
	bool nothing_new;      /* the book is as it was, and was not written to */
};
void book_merge_free(struct merge_report *r);

/* What book_merge would do, by doing it and taking it back; what a file is refused for
 * is refused here too. `other` is read, never changed; an older book is brought to
 * this version in a copy. */
bool book_merge_look(
	struct book *b, const char *other, struct merge_report *out, struct err *e);

/* Merges, in one transaction after a copy of the book beside it. Refused, and nothing
 * is changed: what book_open refuses, a book that book_check finds fault with or this
 * book itself; and what no program of ours brings about, a trap whose pest differs
 * without a change in either history, or two records of one book that the other knows
 * as one. Not within a group. */
bool book_merge(
	struct book *b, const char *other, struct merge_report *out, struct err *e);

/* The latest merge that can be taken back: the copy from before it, and the file that
 * was merged. ERR_NOT_FOUND: there was none. ERR_INPUT: the book was changed since;
 * the sentence names the copy. book_restore (book/backups.h) with it takes it back. */
struct merge_undo {
	char *kept; /* whole path; owned */
	char file[MERGE_TEXT];
	char at[32]; /* UTC */
};
bool book_merge_undo(struct book *b, struct merge_undo *out, struct err *e);

#endif
