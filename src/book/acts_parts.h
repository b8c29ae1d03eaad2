/* acts_parts.h - inside src/book: what the rows of acts share. */
#ifndef BOOK_ACTS_PARTS_H
#define BOOK_ACTS_PARTS_H

#include "query.h"

/* Binds what the lists are asked for: ?1 farm (NULL: all), ?2 and ?3 the days, moved into
 * the years that a book has. */
void acts_ask(struct query *q, int64_t farm, int32_t from, int32_t to);

/* Reads a day that every row has. */
int32_t acts_get_day(struct query *q);

/* False with a sentence unless it is a day of the years that a book has. */
bool acts_day_good(int32_t day, const char *what, struct err *e);

#endif
