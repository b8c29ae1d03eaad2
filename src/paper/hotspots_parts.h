/* hotspots_parts.h - inside src/paper: the parts of the hot-spot text. */
#ifndef PAPER_HOTSPOTS_PARTS_H
#define PAPER_HOTSPOTS_PARTS_H

#include "paper/hotspots.h"

/* The map with its scale and legend; a sentence where no trap has a position. */
void hotspots_map(const struct hot_view *v, int cols, struct buf *out);

#endif
