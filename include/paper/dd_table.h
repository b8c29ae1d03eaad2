/* dd_table.h - degree-days day by day as plain text. */
#ifndef PAPER_DD_TABLE_H
#define PAPER_DD_TABLE_H

#include "answers/dd_table.h"
#include "base/buf.h"

/* No line of prose wider than `cols` (40..). `about` stands under the title: whose base
 * it is and its source; "" = nothing. */
void paper_dd_table(
	const struct dd_table *t, const char *about, int cols, struct buf *out);

#endif
