/* log_parts.h - inside src/answers: which part of the book a log holds. */
#ifndef ANSWERS_LOG_PARTS_H
#define ANSWERS_LOG_PARTS_H

#include "answers/log.h"

/* The first day whose visits are read of all traps: some weeks before the season. */
int32_t log_first_day(const struct log *l);

/* Treatments, picks, dispensers, answers; replaces those that were there. */
bool log_read_acts(struct log *l, struct book *b, int64_t farm, struct err *e);

#endif
