/* season_page.h - a farm's season for its owner, put together of what the pages say of
 * it: block by block what was caught, last season behind it, what was over and what was
 * decided, what was done, where it is hot. */
#ifndef ANSWERS_SEASON_PAGE_H
#define ANSWERS_SEASON_PAGE_H

#include "answers/hotspots.h"
#include "answers/season_chart.h"

/* One pest: all blocks together, its hot spots, its charts. */
struct season_pest {
	int64_t pest;
	char name[NAME_BYTES + CODE_BYTES + 4]; /* "codling moth (CM)" */
	struct flight_view all;                 /* of the farm; is_brief */
	struct hot_view hot;                    /* of this season and the last */
	size_t first, n;                        /* of season_page.charts */
};

/* A treatment, pick, fruit check, dispensers. */
struct season_act {
	int32_t day;
	char day_text[SAY_SHORT], block_name[NAME_BYTES];
	char text[SAY_LINE * 6];
	enum tone tone; /* TONE_OVER: a pick too early */
};

struct season_source {
	int rule; /* index in log.rules; NO_RULE: of the biofix or the degree-days */
	char text[SAY_LINE * 3 + NOTE_BYTES + SOURCE_BYTES];
};

struct season_page {
	char farm[NAME_BYTES];
	int season;                  /* year that it began in */
	int32_t day;                 /* that it is told on */
	int32_t start, end;          /* of the season; end may lie in the future */
	char span[SAY_LINE];         /* "1 Jan 2026 to 21 Jul 2026" */
	char says[SAY_LINE];         /* why there is nothing to see; "" */
	char *bare;                  /* names the blocks without a trap; owned; NULL */
	struct season_pest *pests;   /* owned, as is all below */
	struct season_chart *charts; /* by pest, then driving order */
	size_t n_pests, n_charts;
	int32_t from, to; /* days that all charts span; DAY_NONE: nothing was read */
	int32_t now_to;   /* of these, the end of this season's weeks; DAY_NONE: none */
	struct season_act *acts; /* by day */
	size_t n_acts, cap_acts;
	struct season_source *sources;
	size_t n_sources, cap_sources;
};

/* Of the farm's season that log.today lies in (for a past one read the log as of its
 * last day) and the one before it. Zero-initialise p; reading again replaces. */
bool season_page_read(struct season_page *p, struct book *b, const struct log *l,
	int64_t farm, struct err *e);
void season_page_free(struct season_page *p);

/* The last day of the farm's season that began in that year. */
int32_t season_page_last_day(const struct log *l, int64_t farm, int season);

#endif
