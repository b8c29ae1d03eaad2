/* due.h - runs, what to bring, lures and cards that are due, as plain text. */
#ifndef PAPER_DUE_H
#define PAPER_DUE_H

#include "answers/shelf.h"
#include "base/buf.h"

/* No line wider than `cols` (40..); ASCII unless `utf8`. A shelf whose stock nobody
 * keeps is left out. */
void paper_due(const struct due *d, const struct shelf *shelf, int cols, bool utf8,
	struct buf *out);

#endif
