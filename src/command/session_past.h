/* session_past.h - what the loop does for the Diary, Service and Thresholds pages. */
#ifndef COMMAND_SESSION_PAST_H
#define COMMAND_SESSION_PAST_H

#include "session.h"

/* The diary of a trap. */
bool session_read_diary(struct session *s, struct err *e);
void session_diary(struct session *s, const struct wish *w);
void session_save_past(struct session *s, const struct wish *w);
void session_remove_visit(struct session *s, const struct wish *w);
void session_undo_past(struct session *s, const struct wish *w);
void session_turn_diary(struct session *s);

/* Lures, cards and the shelf. */
bool session_read_service(struct session *s, struct err *e);
void session_service(struct session *s, const struct wish *w);
void session_changed(struct session *s, const struct wish *w);
void session_undo_changed(struct session *s, const struct wish *w);
void session_turn_service(struct session *s);

/* Own and published thresholds. What the picked one would have called is worked out
 * after every key, in a book of many traps once no key has come for a while. */
bool session_read_thresholds(struct session *s, struct err *e);
void session_thresholds(struct session *s, const struct wish *w);
void session_take_rule(struct session *s, const struct wish *w);
void session_turn_thresholds(struct session *s);
/* That is still to be done, on the page that is shown. */
bool session_waits(const struct session *s);
/* Does it; false: there is nothing. */
bool session_catch_up(struct session *s);

#endif
