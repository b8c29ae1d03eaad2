/* parts.h - inside src/paper: what the two forms of the sheet put on its pages. */
#ifndef PAPER_PARTS_H
#define PAPER_PARTS_H

#include "pager.h"
#include "paper/sheet.h"

void sheet_filled(const struct sheet *s, struct pager *p);
void sheet_blank(const struct sheet *s, struct pager *p);

/* "  ", "b ", " d" or "bd": border, disrupted. */
const char *sheet_marks(const struct sheet_trap *t);
/* A rule across the page, with its newline. */
void sheet_rule(struct buf *out);
/* What to bring, in a chunk of its own. */
void sheet_bring(const struct sheet *s, struct pager *p);
/* Lines to write on, the heading with them. */
void sheet_notes(int lines, struct pager *p);

#endif
