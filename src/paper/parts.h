/* parts.h - inside src/paper: what the two forms of the sheet put on its pages. */
#ifndef PAPER_PARTS_H
#define PAPER_PARTS_H

#include "pager.h"
#include "paper/sheet.h"

enum { SHEET_BELOW = 4 }; /* blanks before what is said below a row */

void sheet_filled(const struct sheet *s, struct pager *p);
void sheet_blank(const struct sheet *s, struct pager *p);

/* "  ", "b ", " d" or "bd": border, disrupted. */
const char *sheet_marks(const struct sheet_trap *t);
/* A rule across the page, with its newline. */
void sheet_rule(struct buf *out);
/* What to bring, in a chunk of its own. */
void sheet_bring(const struct sheet *s, struct pager *p);
/* Who may enter and pick which block from when; nothing when nothing is barred. */
void sheet_clocks(const struct sheet *s, struct pager *p);
/* The table of traps and block means needing attention. */
void sheet_needs(const struct sheet *s, struct pager *p);
/* Adds that entry is barred, what is amiss (unless it stands elsewhere) and what is
 * due, after what *out holds. */
void sheet_concerns(const struct sheet_trap *t, bool amiss, struct buf *out);

#endif
