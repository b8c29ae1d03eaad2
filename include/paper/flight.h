/* flight.h - one season of a pest as plain text: chart, marks, last year's line, table
 * of flights, biofix, degree-days, what comes next with its source. */
#ifndef PAPER_FLIGHT_H
#define PAPER_FLIGHT_H

#include "answers/flight.h"
#include "base/buf.h"

/* No line wider than `cols` (40..) nor than 78. Block characters in the chart
 * that out_text or paper_ascii turn into digits. */
void paper_flight(const struct flight_view *v, int cols, struct buf *out);

#endif
