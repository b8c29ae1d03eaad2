/* next.h - what comes next: published events of a pest in degree-days since biofix,
 * with the day they passed or are expected. */
#ifndef ANSWERS_NEXT_H
#define ANSWERS_NEXT_H

#include "answers/heat.h"
#include "answers/say.h"

struct event {
	char text[SAY_LINE];    /* "egg hatch begins (generation 1)" */
	char at[SAY_SHORT * 2]; /* "220-250 F" */
	/* "passed Thu 28 May", "about 4 to 9 Jun (3 earlier years)", "about 6 Jun (at
	 * the last week's pace)", "not known: ..." */
	char when[SAY_LINE];
	char source[SOURCE_BYTES];
	bool passed;         /* its whole range of degree-days */
	bool under_way;      /* begun; first and last are those of its end */
	bool at_least;       /* days are missing in the sum: all of it may be earlier */
	int32_t first, last; /* expected or passed days; DAY_NONE when not known */
};

struct events {
	struct event *items;
	size_t n, cap;
	char none[SAY_LINE]; /* why there are none; "" */
};

/* Events of the pest whose count starts at a catch (biofix), from share/phenology.csv,
 * in order of degree-days. Expected days come from the station's own earlier years by
 * day of the year (a range from the earliest to the latest when they differ), else from
 * the mean of the last 7 days with temperatures; which of the two is said. Empty
 * without a biofix, station or base. Of ask the farm, the pest and the day count, which
 * is the log's; `each` is told as by heat_since. */
bool next_events(struct events *out, struct book *b, const struct log *l,
	const struct heat_ask *ask, struct err *e);
void events_free(struct events *ev);

#endif
