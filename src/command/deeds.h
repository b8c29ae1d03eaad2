/* deeds.h - what the loop does for each want of a page. */
#ifndef COMMAND_DEEDS_H
#define COMMAND_DEEDS_H

#include "session.h"

typedef void deed(struct session *s, const struct wish *w);

/* NULL: nothing is done. WANT_QUIT has none: it ends the loop. */
extern deed *const session_deeds[WANT_COUNT];

#endif
