/* run_entry.h - what is typed for one trap of a run, key by key. */
#ifndef SCREEN_RUN_ENTRY_H
#define SCREEN_RUN_ENTRY_H

#include "screen/run_page.h"

/* True if a key corrects what the trap has; a visit of another day stays as it is. */
bool run_entry_corrects(const struct run_trap *t, int32_t day);

/* The trap as keys meet it in a run on `day`: open unless it was visited that day. All
 * that follow take such a trap. */
struct run_trap run_entry_trap(const struct run_trap *t, int32_t day);

/* The entry before anything is typed: empty for an open trap, else what its visit
 * holds, so that a key corrects it. */
struct run_entry run_entry_start(const struct run_trap *t);

/* One key for a trap. Some refuse, with a sentence in *m; m is left alone otherwise
 * except to say what the next press does. They do not set `touched`. */
typedef void run_entry_key(struct run_entry *e, const struct run_trap *t,
	struct input in, struct message *m);
run_entry_key run_entry_digit, run_entry_plus, run_entry_card, run_entry_lure,
	run_entry_stir, run_entry_skip, run_entry_spoil, run_entry_erase;

/* True if both would be saved as the same visit. */
bool run_entry_same(const struct run_entry *a, const struct run_entry *b);

/* Whether it can be kept; else *m says what is missing. An odd count, or a plain one
 * of more than the card holds, is asked about once (e->asked). */
bool run_entry_ready(struct run_entry *e, const struct run_trap *t,
	const struct limits *l, struct message *m);

/* True if somebody went to a trap that may not be entered, or of which that is not
 * known, and the book does not say yet that it was asked about. */
bool run_entry_goes_in(const struct run_entry *e, const struct run_trap *t);
/* Asks about it, once. */
void run_entry_ask(struct run_entry *e, const struct run_trap *t, struct message *m);

/* What it says in the field: "14+ c", "skip weather", "spoiled 7+ c". */
enum { RUN_ENTRY_TEXT = 96 };
void run_entry_text(const struct run_entry *e, char out[static RUN_ENTRY_TEXT]);

/* The visit to save, in a run on `day`. */
struct visit run_entry_visit(
	const struct run_entry *e, const struct run_trap *t, int32_t day);

#endif
