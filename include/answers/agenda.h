/* agenda.h - what lies ahead, for a calendar: runs, lures and cards by the day they are
 * due, when nobody may enter a block, picks and from when on a block may be picked. */
#ifndef ANSWERS_AGENDA_H
#define ANSWERS_AGENDA_H

#include "answers/log.h"
#include "answers/say.h"
#include "book/book.h"
#include "book/uid.h"

enum { AGENDA_ENTRY_DAYS = 30 }; /* so long is a bar given that is over */

enum agenda_kind {
	AGENDA_RUN,
	AGENDA_LURE,
	AGENDA_CARD,
	AGENDA_ENTRY,    /* nobody may enter, from..until; all day: it is not known */
	AGENDA_PICK,     /* planned */
	AGENDA_EARLIEST, /* pick of a block without a planned one */
	AGENDA_KIND_COUNT
};

struct agenda_item {
	enum agenda_kind kind;
	/* The same for the same thing at every asking, so that a calendar that had it
	 * moves it: the uid of a farm, trap, treatment, pick or block and a word. */
	char uid[UID_TEXT + 16];
	bool is_off; /* it was in the calendar and is no more: the trap was pulled */
	int32_t day; /* all day; what was due before today stands on today */
	struct instant from, until; /* AGENDA_ENTRY; INSTANT_NONE: all day */
	char title[SAY_LINE * 2];
	char details[SAY_LINE * 3]; /* "" : no more is to be said */
};

struct agenda {
	struct instant now;
	struct agenda_item *items; /* by kind, then as the log has them */
	size_t n, cap;
};

/* Of the farm (0: all), as at the log's now. Zero-initialise; each call replaces. */
bool agenda_read(const struct log *l, struct book *b, int64_t farm, struct agenda *out,
	struct err *e);
void agenda_free(struct agenda *a);

#endif
