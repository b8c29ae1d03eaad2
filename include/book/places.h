/* places.h - farms, blocks, traps and the kinds that hang in them. */
#ifndef BOOK_PLACES_H
#define BOOK_PLACES_H

#include "book/book.h"

/* Whole lists; each replaces what the list held and reuses its memory.
 * Farms, blocks and kinds by name; traps by farm name and driving order. farm = 0:
 * all. */
bool book_farms(struct book *b, struct farms *out, struct err *e);
bool book_blocks(struct book *b, int64_t farm, struct blocks *out, struct err *e);
bool book_traps(struct book *b, int64_t farm, struct traps *out, struct err *e);
bool book_pests(struct book *b, struct pests *out, struct err *e);
bool book_lures(struct book *b, struct lure_kinds *out, struct err *e);
bool book_cards(struct book *b, struct card_kinds *out, struct err *e);

/* Puts a record into the book: id 0 makes a new row and sets the id, else that row is
 * changed (its old form is kept in the history). Names are unique: farms, pest codes,
 * kinds in the book, blocks and trap labels within their farm. Refused with one
 * sentence: a name that is taken or empty, a value out of its range, a trap whose
 * pest changes while it has visits ("the plastic keeps the scent": a trap has one
 * pest for life), a lure of another pest than the trap's, another farm for a block
 * with traps. A new trap with order 0 goes to the end of its farm's driving order. */
bool book_put_farm(struct book *b, struct farm *f, struct err *e);
bool book_put_block(struct book *b, struct block *r, struct err *e);
bool book_put_trap(struct book *b, struct trap *t, struct err *e);
bool book_put_pest(struct book *b, struct pest *p, struct err *e);
bool book_put_lure(struct book *b, struct lure_kind *k, struct err *e);
bool book_put_card(struct book *b, struct card_kind *k, struct err *e);

#endif
