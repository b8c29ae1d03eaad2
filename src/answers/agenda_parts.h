/* agenda_parts.h - what the files of agenda share. */
#ifndef ANSWERS_AGENDA_PARTS_H
#define ANSWERS_AGENDA_PARTS_H

#include "answers/agenda.h"

struct writing {
	const struct log *log;
	struct book *book;
	int64_t farm; /* 0: all */
	struct agenda *out;
};

/* An item of today, all day, named after that row of the book; NULL: *e. Borrowed until
 * the next. */
struct agenda_item *agenda_add(const struct writing *w, enum agenda_kind kind,
	const char *table, int64_t id, struct err *e);

bool agenda_add_entries(const struct writing *w, struct err *e);
bool agenda_add_picks(const struct writing *w, struct err *e);

#endif
