/* week.h - the week's answers as plain text. */
#ifndef PAPER_WEEK_H
#define PAPER_WEEK_H

#include "answers/week.h"
#include "base/buf.h"

/* Adds the tree of farms, blocks and traps, no line wider than `cols` (40..). Where it
 * is narrow, columns go in this order: flight line, highest trap, marks. The flight
 * lines of one pest share a scale. ASCII unless `utf8`. */
void paper_week(const struct week *w, int cols, bool utf8, struct buf *out);

#endif
