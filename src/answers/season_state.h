/* season_state.h - how far a pest's season has come on a farm, for thresholds that
 * look at flight, biofix or degree-days. */
#ifndef ANSWERS_SEASON_STATE_H
#define ANSWERS_SEASON_STATE_H

#include "answers/log.h"

/* Fills l->seasons for each farm and pest that a rule with such a field or span is
 * about; the others cost nothing. */
bool season_states_read(struct log *l, struct book *b, struct err *e);

/* Takes them out; the list keeps its room. */
void season_states_clear(struct season_states *s);

#endif
