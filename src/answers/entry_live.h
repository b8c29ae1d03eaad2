/* entry_live.h - inside src/answers: a form that is still being filled in, as a row. */
#ifndef ENTRY_LIVE_H
#define ENTRY_LIVE_H

#include "entry_family.h"

/* Reads all fields into the row; empty ones are cleared. False: a text is wrong, or one
 * that is needed is missing (`all`: also such as may come later). */
bool live_row(const struct entry *r, bool all, void *row);
/* What is wrong is said when the form is saved: this one says nothing. */
struct hearing live_hearing(const struct log *l);
struct known live_known(const struct log *l);

#endif
