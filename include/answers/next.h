/* next.h - what comes next: published events of a pest in degree-days since biofix,
 * with the day they passed or are expected. */
#ifndef ANSWERS_NEXT_H
#define ANSWERS_NEXT_H

#include "answers/heat.h"
#include "answers/say.h"

struct event {
	char text[SAY_LINE];    /* "egg hatch begins (generation 1)" */
	char at[SAY_SHORT * 2]; /* "220-250 F" */
	char when
		[SAY_LINE]; /* "passed Thu 28 May", "about 4 to 9 Jun (3 earlier years)",
	                        * "about 6 Jun (at the last week's pace)", "not known: ..." */
	char source[SOURCE_BYTES];
	bool passed;         /* its whole range of degree-days */
	bool under_way;      /* begun; first and last are those of its end */
	bool at_least;       /* days are missing in the sum: all of it may be earlier */
	int32_t first, last; /* expected or passed days; DAY_NONE when not known */
};

struct events {
	struct event *items;
	size_t n, cap;
};

/* Events of the pest whose count starts at a catch (biofix), from share/phenology.csv,
 * in order of degree-days. Expected days come from the station's own earlier years by
 * day of the year (a range from the earliest to the latest when they differ), else from
 * the mean of the last 7 days with temperatures; which of the two is said. Empty, and
 * *why says so (DAY_TEXT_SIZE bytes or more), without a biofix, station or base. */
bool next_events(struct events *out, struct book *b, const struct log *l, int64_t farm,
	int64_t pest, char *why, size_t why_size, struct err *e);
void events_free(struct events *ev);

#endif
