/* merging_parts.h - what the files about merging share. */
#ifndef ANSWERS_MERGING_PARTS_H
#define ANSWERS_MERGING_PARTS_H

#include "answers/merging.h"

/* Choice i of a matter: "14 c"; where another reads the same, with what tells it from
 * that: "hung, lure CM 1 mg". */
void merging_say_choice(const struct matter *m, size_t i, char out[static SAY_LINE]);

#endif
