/* log_parts.h - inside src/answers: how a log is read. */
#ifndef ANSWERS_LOG_PARTS_H
#define ANSWERS_LOG_PARTS_H

#include "answers/log.h"

/* What merges left open of those visits; replaces what was there. */
bool log_read_disputes(struct log *l, struct book *b, int64_t farm, struct err *e);

/* Treatments, picks, dispensers, answers; replaces those that were there. */
bool log_read_acts(struct log *l, struct book *b, int64_t farm, struct err *e);

#endif
