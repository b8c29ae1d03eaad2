/* log_parts.h - inside src/answers: how a log is read. */
#ifndef ANSWERS_LOG_PARTS_H
#define ANSWERS_LOG_PARTS_H

#include "answers/log.h"

/* What merges left open of those visits; replaces what was there. */
bool log_read_disputes(struct log *l, struct book *b, int64_t farm, struct err *e);

/* Treatments, picks, dispensers, answers; replaces those that were there. */
bool log_read_acts(struct log *l, struct book *b, int64_t farm, struct err *e);

/* Sets down where blocks and traps stand, for log_block and log_trap. */
void log_set_places(struct log *l);
/* Until then they are looked for one by one. */
void log_clear_places(struct log *l);
void log_free_places(struct log *l);
/* Where the record of the id stands; SIZE_MAX: nowhere. */
size_t log_place_of(const struct log_places *p, int64_t id);

#endif
