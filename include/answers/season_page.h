/* season_page.h - a farm's season for its owner, put together of what the pages say of
 * it: block by block what was caught, last season behind it, what was over and what was
 * decided, what was done, where it is hot. */
#ifndef ANSWERS_SEASON_PAGE_H
#define ANSWERS_SEASON_PAGE_H

#include "answers/flight.h"
#include "answers/hotspots.h"
#include "answers/say.h"

/* One trap's catch as it is judged at a visit: moths a week. */
struct season_dot {
	int trap;          /* index in log.traps */
	int32_t from, day; /* first night; day that it was read */
	double rate;
	bool at_least;
	char text[SAY_SHORT]; /* "52.0+" */
};

/* A threshold and the nights that it was compared with. */
struct season_limit {
	int rule;             /* index in log.rules */
	int32_t from, to;     /* first night and last clearing judged by it */
	double rate;          /* moths a week; -1: not of a weekly catch */
	bool is_block;        /* of the block's mean; else of any single trap */
	bool is_timing;       /* decides nothing */
	char text[SAY_SHORT]; /* ">=5" */
	int source;           /* 1 + index in season_page.sources */
};

enum season_mark_kind { SEASON_LURE, SEASON_TREATED, SEASON_BORDER, SEASON_PICKED };
struct season_mark {
	enum season_mark_kind kind;
	int32_t day;
	int n; /* traps with a new lure; else 1 */
};

/* A clearing after which the catch was over the threshold. */
struct season_alert {
	int trap; /* index in log.traps; NO_TRAP: the block's own rule */
	int32_t day;
	char day_text[SAY_SHORT]; /* "Tue 26 May" */
	char text[SAY_LINE * 2];  /* "trap 3: 14.0 (>=5)"; "mean of 4: 6.2 (>=4)" */
	bool is_answered;
	char decided[SAY_LINE + NOTE_BYTES]; /* "treated Thu 9 Jul: ..." */
	char after[SAY_LINE * 2];            /* as in alerts.h; "" unless answered */
};

/* One block and pest. */
struct season_chart {
	int64_t block, pest;
	char block_name[NAME_BYTES], pest_code[CODE_BYTES];
	char about[SAY_LINE * 2];  /* "apple, Amberlock, 4.2 ha, disrupted, 5 traps" */
	struct flight_view flight; /* is_brief */
	int32_t first_day; /* of week 0 of both seasons; DAY_NONE: neither was read */
	struct season_dot *dots; /* by trap and day */
	size_t n_dots, cap_dots;
	struct season_limit *limits; /* as they came into force */
	size_t n_limits, cap_limits;
	struct season_mark *marks; /* by day */
	size_t n_marks, cap_marks;
	struct season_alert *alerts; /* by day, in driving order */
	size_t n_alerts, cap_alerts;
	char lures[SAY_LINE * 4]; /* "12 May (4 traps), 9 Jun (5 traps)"; "" */
	/* for the table at a glance: "5", "344+", "24", "0" */
	char traps[SAY_SHORT], moths[SAY_SHORT], over[SAY_SHORT], answered[SAY_SHORT];
	char mean[SAY_SHORT * 2]; /* highest weekly mean, its week: "18.2, 19 May" */
	char highest[SAY_LINE];   /* highest catch of one trap: "52.0+, trap 1" */
};

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
	struct season_act *acts; /* by day */
	size_t n_acts, cap_acts;
	struct season_source *sources;
	size_t n_sources, cap_sources;
};

/* Of the farm's season that log.today lies in (for a past one read the log as of its last
 * day) and the one before it. Zero-initialise p; reading again replaces. */
bool season_page_read(struct season_page *p, struct book *b, const struct log *l,
	int64_t farm, struct err *e);
void season_page_free(struct season_page *p);

/* The last day of the farm's season that began in that year. */
int32_t season_page_last_day(const struct log *l, int64_t farm, int season);

#endif
