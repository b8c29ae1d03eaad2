/* session_act.h - what the loop does for alerts, picks and a block's season. */
#ifndef COMMAND_SESSION_ACT_H
#define COMMAND_SESSION_ACT_H

#include "session.h"

bool session_read_alerts(struct session *s, struct err *e);
void session_alerts(struct session *s, const struct wish *w);
/* The alert that the Why page is about; NULL: nothing is over there. */
const struct alert *session_why_alert(struct session *s);
void session_answer(struct session *s, const struct wish *w);

bool session_read_picks(struct session *s, struct err *e);
void session_picks(struct session *s, const struct wish *w);

/* The season of a block as a text. */
void session_block_diary(struct session *s, int64_t block);
/* The record of the season's treatments as a text. */
void session_record(struct session *s, const struct wish *w);

#endif
