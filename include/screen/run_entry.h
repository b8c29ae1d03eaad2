/* run_entry.h - what is typed for one trap of a run, key by key. */
#ifndef SCREEN_RUN_ENTRY_H
#define SCREEN_RUN_ENTRY_H

#include "screen/run_page.h"

/* True if a key corrects what the trap has; a visit of another day stays as it is. */
bool entry_corrects(const struct run_trap *t, int32_t day);

/* The trap as keys meet it in a run on `day`: open unless it was visited that day. All
 * that follow take such a trap. */
struct run_trap entry_trap(const struct run_trap *t, int32_t day);

/* The entry before anything is typed: empty for an open trap, else what its visit
 * holds, so that a key corrects it. */
struct entry entry_start(const struct run_trap *t);

/* One key for a trap. Some refuse, with a sentence in *m; m is left alone otherwise
 * except to say what the next press does. They do not set `touched`. */
typedef void entry_key(
	struct entry *e, const struct run_trap *t, struct input in, struct message *m);
entry_key entry_digit, entry_plus, entry_card, entry_lure, entry_stir, entry_skip,
	entry_spoil, entry_erase;

/* True if both would be saved as the same visit. */
bool entry_same(const struct entry *a, const struct entry *b);

/* Whether it can be kept; else *m says what is missing. An odd count is asked about
 * once (e->asked). */
bool entry_ready(struct entry *e, const struct run_trap *t, const struct limits *l,
	struct message *m);

/* What it says in the field: "14+ c", "skip weather". */
enum { ENTRY_TEXT = 96 };
void entry_text(const struct entry *e, char out[static ENTRY_TEXT]);

/* The visit to save, in a run on `day`. */
struct visit entry_visit(const struct entry *e, const struct run_trap *t, int32_t day);

#endif
