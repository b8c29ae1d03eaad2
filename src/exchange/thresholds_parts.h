/* thresholds_parts.h - the thresholds file in pieces: taking in. */
#ifndef THRESHOLDS_PARTS_H
#define THRESHOLDS_PARTS_H

#include "exchange/kinds.h"

bool thresholds_begin(struct taking *t, struct err *e);
/* With a filter (t->from->wanted) each threshold that is taken leaves a note. */
bool thresholds_take(struct taking *t, const void *row, struct err *e);
void thresholds_end(struct taking *t);

#endif
