/* acts_parts.h - inside src/book: what the rows of acts share. */
#ifndef BOOK_ACTS_PARTS_H
#define BOOK_ACTS_PARTS_H

#include "query.h"

/* Binds what the lists are asked for: ?1 farm (NULL: all), ?2 and ?3 the days, moved
 * into the years that a book has. */
void acts_ask(struct query *q, int64_t farm, int32_t from, int32_t to);

/* True of a column that holds no day of the years that a book has: such a row is read
 * whatever span is asked for, so that the query fails. Left out it would take a bar or
 * a preharvest interval along, unsaid. */
#define ACTS_NO_DAY(column)                                                            \
	"(" column " = date(" column ", '+0 days') AND " column                        \
	" BETWEEN '1900-01-01' AND '2199-12-31') IS NOT 1"
#define ACTS_IN_SPAN "(x.day BETWEEN ?2 AND ?3 OR " ACTS_NO_DAY("x.day") ")"
/* The asked farm's, and those of a block that is not in the book. */
#define ACTS_OF_FARM "(?1 IS NULL OR k.farm = ?1 OR k.id IS NULL)"

/* Reads a row's id and its block, whose id stands before it once more, as the book has
 * it: the query fails where it has none. */
void acts_get_place(struct query *q, int64_t *id, int64_t *block);

/* Reads a day that every row has. */
int32_t acts_get_day(struct query *q);

/* False with a sentence unless it is a day of the years that a book has. */
bool acts_day_good(int32_t day, const char *what, struct err *e);

#endif
