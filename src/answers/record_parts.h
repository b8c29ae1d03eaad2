/* record_parts.h - what the record and the diary of a block share. */
#ifndef ANSWERS_RECORD_PARTS_H
#define ANSWERS_RECORD_PARTS_H

#include "answers/record.h"
#include "base/buf.h"

/* "1 Jan 2026 to 31 Dec 2026" */
void record_say_span(int32_t from, int32_t to, struct buf *out);
/* What one treatment bars by itself. */
void record_say_entry(const struct treatment *t, const struct zone *z, struct buf *out);
void record_say_pick(const struct treatment *t, const struct zone *z, struct buf *out);

#endif
