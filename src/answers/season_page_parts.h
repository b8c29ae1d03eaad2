/* season_page_parts.h - what the files of the season page share. */
#ifndef ANSWERS_SEASON_PAGE_PARTS_H
#define ANSWERS_SEASON_PAGE_PARTS_H

#include "answers/season_page.h"

/* What is being filled, and out of what. */
struct season_work {
	struct season_page *page;
	struct book *book;
	const struct log *log;
	int64_t farm;
	int32_t last; /* day that is looked at last */
};

/* NULL: the page has no such chart. */
struct season_chart *season_chart_of(
	struct season_page *p, int64_t block, int64_t pest);
/* True if the trap (index in log.traps) is one of the chart's. */
bool season_is_of(
	const struct season_work *w, const struct season_chart *c, size_t trap);

/* What each trap caught, its threshold, what was over, how that was answered. */
void season_fill_catches(struct season_work *w);
/* Lures, treatments, picks, fruit checks, dispensers. */
bool season_fill_acts(struct season_work *w, struct err *e);
/* Names, the row at a glance, blocks without a trap. */
void season_say_chart(const struct season_work *w, struct season_chart *c);
void season_say_page(struct season_work *w);
/* The threshold's number among the sources, 1 .. */
int season_source_of(struct season_work *w, int rule);
/* What biofix and degree-days go by; after all thresholds. */
void season_say_sources(struct season_work *w);

#endif
