/* flight_parts.h - inside src/paper: the parts of a season's text. */
#ifndef PAPER_FLIGHT_PARTS_H
#define PAPER_FLIGHT_PARTS_H

#include "paper/flight.h"

/* Rows of bars with their axis, marks, months, degree-days, last year's line and a
 * legend; nothing where nobody looked at a trap. */
void flight_chart(const struct flight_view *v, int cols, struct buf *out);

#endif
