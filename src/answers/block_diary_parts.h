/* block_diary_parts.h - inside answers: what goes into the diary of a block. */
#ifndef ANSWERS_BLOCK_DIARY_PARTS_H
#define ANSWERS_BLOCK_DIARY_PARTS_H

#include "record_parts.h"

struct block_page {
	const struct log *log;
	const struct block *block;
	int32_t from, to; /* both included */
	struct block_diary *out;
};

/* Adds a line and empties *text; left out when the day is not of the page. */
void block_page_add(
	struct block_page *p, int32_t day, enum tone tone, struct buf *text);

/* Catches that were over, and the flight lines. */
void block_page_catches(struct block_page *p);
void block_page_check(struct block_page *p, const struct fruit_check *c);
void block_page_dispensers(struct block_page *p, const struct disruption *d);

#endif
