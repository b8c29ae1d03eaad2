/* run_page.h - the truck page: count, Enter, next trap. */
#ifndef SCREEN_RUN_PAGE_H
#define SCREEN_RUN_PAGE_H

#include "answers/run.h"
#include "screen/page.h"

/* What is typed for the picked trap and not yet kept. */
struct run_entry {
	enum outcome outcome; /* OUTCOME_COUNTED unless a key said otherwise */
	enum reason reason;
	char digits[6]; /* the count as typed, up to 4 digits */
	char females[6], others[6];
	bool new_card, new_lure, stirred;
	char note[NOTE_BYTES];
	bool touched;     /* something was typed */
	bool asked;       /* about the odd count: the next Enter keeps it */
	bool asked_entry; /* that the block may not be entered: the same */
	bool old_digits;  /* digits are the visit's; the next one replaces them */
	bool auto_card, auto_lure; /* set by the outcome, so it takes them back too */
};

/* Where digits and characters go. */
enum typing {
	TYPING_COUNT,
	TYPING_FEMALES,
	TYPING_OTHERS,
	TYPING_NOTE,
	TYPING_DATE,
	TYPING_SCOUT
};

struct run_page {
	const struct run *run; /* borrowed; set by run_page_show */
	const struct limits *limits;
	size_t picked, top;
	struct run_entry entry;
	enum typing typing;
	char line[NOTE_BYTES]; /* the note, date or initials being typed */
	bool fresh;            /* the next character replaces the line */
	bool asked_date;       /* about a date far back: the next Enter takes it */
	char scout[SCOUT_BYTES];
	struct message message;
	char saved[64]; /* "saved 07:42:11"; "" before the first of this run */
	int64_t farm;   /* of the run */
	int32_t day;
	int64_t picked_trap; /* id of the picked trap: found again in a new run */
	bool said_done;      /* all is done was said: the next Enter goes back */
	bool unsaved;      /* what is typed could not be saved: digits would bend it */
	bool at_rest;      /* all is done: no key changes a trap till one is picked */
	int64_t told_trap; /* whose visit of another day a message named; 0: none */
	int32_t told_day;
	int rows; /* of the list in the last frame */
	int cols; /* of the last frame */
};

/* Keys change visits of the run's date; on a trap that was visited a day or two before
 * they make a new visit.
 * Columns are dropped in this order as the page gets narrower: note, lure kind (both
 * from 96 columns only), threshold, the older two of the last four, pest, catch a week,
 * border and disrupted marks, the last two, block. Trap, today and verdict stay; below
 * 60 columns the message line says what the picked row has no room for. */
struct key_rows run_page_keys(void);
/* What the marks on the page mean, for the help page: up to NULL, N_(). */
const char *const *run_page_notes(void);
struct wish run_page_key(struct run_page *p, struct input in);
void run_page_draw(struct run_page *p, struct canvas *c);

/* Shows a run (again). first: picks the trap that a message sent to this date, else the
 * first open one; when none is, no key changes one before a trap is picked. */
void run_page_show(struct run_page *p, const struct run *run, bool first);
/* Picks the trap, if it is on the run. */
void run_page_pick(struct run_page *p, int64_t trap);
/* The wish WANT_SAVE was done at `clock` ("07:42:11"): clears the entry and picks the
 * next open trap after the picked one (wrapping), else stays; says what was saved. */
void run_page_saved(struct run_page *p, const struct run *run, const char *clock);
/* WANT_PASS was done: says so and picks the next open trap. */
void run_page_passed(
	struct run_page *p, const struct run *run, int n, const char *clock);
/* It was not: keeps the entry as typed and says so in the message line. */
void run_page_not_saved(struct run_page *p, const char *why);

#endif
