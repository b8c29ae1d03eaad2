/* hotspots.h - hot spots of one farm and pest as plain text: the answer as a whole, the
 * ranked rows with their numbers, the map, what the catch does with distance. */
#ifndef PAPER_HOTSPOTS_H
#define PAPER_HOTSPOTS_H

#include "answers/hotspots.h"
#include "base/buf.h"

/* No line wider than `cols` (40..) nor than 78. Blocks and borders have a row in the
 * table, and neighbourhoods and single traps that catch more than luck explains; the
 * others are counted. Every row has its sentence and numbers, but a single block's
 * border only if it catches more than luck explains. `caution` stands at the foot. */
void paper_hotspots(
	const struct hot_view *v, const char *caution, int cols, struct buf *out);

#endif
