/* entry_forms.h - one record read, judged, put into the book, put away. */
#ifndef ANSWERS_ENTRY_FORMS_H
#define ANSWERS_ENTRY_FORMS_H

#include "answers/entry.h"

/* The record `id`; 0: a new one with what may be guessed: farm and pest of the ask, the
 * label after the last one ("7" after "6", "B8" after "B7"), block, pest, lure, card
 * and place of the trap before it, hung today. ERR_NOT_FOUND when it is gone. */
bool entry_read(struct entry *out, struct book *b, const struct entry_ask *ask,
	int64_t id, const struct log *l, struct err *e);

/* Writes out days typed short, as day_typed has them; that of a pick may lie ahead. */
void entry_settle_days(struct entry *r, const struct log *l);

/* Looks at one field as it is typed; false: fault says what would be right. */
bool entry_field_good(const struct entry *r, int field, struct entry_fault *fault);

/* Puts the record into the book: on the disk when it returns true; r->id, r->stamp and
 * r->name are then those of the book. One step, also where a new treatment names
 * several blocks and so becomes several records of one job; r is then the first of
 * them. `how`: ENTRY_OVER | ENTRY_SURE. False with fault filled: nothing is changed. */
bool entry_put(struct entry *r, struct book *b, const struct log *l, int how,
	struct entry_fault *fault);

/* Of a field of the record as it is typed now; replaces what out held. */
void entry_choices_of(const struct entry *r, int field, const struct log *l,
	struct entry_choices *out);
void entry_choices_free(struct entry_choices *c);

/* The threshold that a form holds as it is typed now; false: it is none yet. The log's
 * lists are looked at, not the book. */
bool entry_rule(const struct entry *r, const struct log *l, struct rule *out);

/* What a pick or a treatment would mean as it is typed now: out[0] until when it bars
 * or from when it is allowed, out[1] what speaks against it; "" each, and of other
 * kinds. */
void entry_live(const struct entry *r, const struct log *l, char (*out)[SAY_LINE]);

/* What changes in a block when the treatment is taken out, sentences that each begin
 * with a blank; "" of other kinds, and when nothing does. */
void entry_removal_says(
	const struct log *l, enum entry_kind kind, int64_t id, char *out, size_t size);

/* Puts a record away or brings it back. Refused: a farm or block in which traps hang
 * (it says how many). */
bool entry_retire(struct book *b, enum entry_kind kind, int64_t id, bool retired,
	const struct log *l, struct err *e);
/* Takes out what nothing refers to; else ERR_INPUT says what does. */
bool entry_remove(struct book *b, enum entry_kind kind, int64_t id, struct err *e);
/* Adds what refers to it, as "5 visits"; nothing: entry_remove would take it out. */
bool entry_users(struct book *b, enum entry_kind kind, int64_t id, struct buf *out,
	struct err *e);

#endif
