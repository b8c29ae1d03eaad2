/* flight.h - one season of one pest: chart, flights, biofix, degree-days, what comes
 * next. */
#ifndef ANSWERS_FLIGHT_H
#define ANSWERS_FLIGHT_H

#include "answers/next.h"
#include "season/biofix.h"
#include "season/flights.h"

enum { FLIGHT_SEASONS = 5, FLIGHT_MARKS_MAX = 64 };

/* What is asked. farm 0 = all farms; block 0 = all blocks; trap NO_TRAP = all traps
 * (index in log.traps). */
struct flight_ask {
	int64_t farm, block, pest;
	int trap;
	int season; /* year that it begins in */
	/* Last season alone behind it, and nothing of what comes next. */
	bool is_brief;
};

/* The kinds of marks under the chart, one letter each on screen and paper. */
enum flight_mark_kind { FLIGHT_BIOFIX, FLIGHT_PEAK, FLIGHT_LURE, FLIGHT_TREATMENT };

struct flight_mark {
	enum flight_mark_kind kind;
	int week; /* of the season's chart */
};

/* Weeks of one season. Week k starts on first_day + 7 k. */
struct flight_line {
	int season;
	int32_t first_day;
	size_t n;
	double rate[FLIGHT_WEEKS_MAX]; /* moths per trap and week; -1 = nobody looked */
	bool at_least[FLIGHT_WEEKS_MAX];
	double dd[FLIGHT_WEEKS_MAX]; /* degree-days at the week's end; -1 = not known */
	bool dd_at_least[FLIGHT_WEEKS_MAX]; /* days are missing: dd or more */
};

/* A row of the table of flights, in words. */
struct flight_row {
	struct flight flight;
	int32_t first_day, peak_day; /* first days of its first and its peak week */
	int32_t day10, day50, day90;
	char name[SAY_SHORT];                   /* "flight 1" */
	char first[SAY_SHORT], peak[SAY_SHORT]; /* "5 May", week of "26 May" */
	char peak_rate[SAY_SHORT];              /* "9.5" */
	char d10[SAY_SHORT], d50[SAY_SHORT], d90[SAY_SHORT];
	char moths[SAY_SHORT], dd50[SAY_SHORT]; /* "312 F" at the 50 % day; "" */
	char flags[SAY_LINE]; /* "open start, gap at peak"; "too few to call ..." */
};

struct flight_biofix {
	bool is_set;
	int32_t day;
	char set[SAY_LINE]; /* "biofix Sat 9 May 2026, by hand"; "biofix not set" */
	struct biofix suggestion; /* of the pest's rule */
	const struct biofix_rule *rule;
	char suggested[SAY_LINE *
		       2];      /* "first sustained catch: after 2 May, by 9 May" */
	char earlier[SAY_LINE]; /* "2025: 6 May, 2024: 12 May"; "" */
};

struct flight_view {
	struct flight_ask ask;
	char title[SAY_LINE]; /* "Flight  CM  all farms"; with farm, block, trap */
	char right[DAY_TEXT_SIZE];
	struct flight_line now; /* the season asked for */
	/* seasons before it, latest first, aligned by week of the season */
	struct flight_line earlier[FLIGHT_SEASONS];
	size_t n_earlier;
	double threshold; /* per trap and week, the one in force; -1: none */
	struct flight_mark marks[FLIGHT_MARKS_MAX];
	size_t n_marks;
	struct flights found;
	struct flight_row rows[FLIGHTS_MAX];
	size_t n_rows;
	struct flight_biofix biofix; /* of ask.farm; not for all farms together */
	struct heat_sum heat;
	char heat_text[SAY_LINE];
	struct events events;
	char says[SAY_LINE]; /* nothing caught yet; no trap for this pest; "" */
};

/* Month-day that the farm's season starts on; farm 0: the one that all farms share,
 * else the calendar year's. */
int log_season_start(const struct log *l, int64_t farm);
/* season: year that the season of `day` began in, for the farm (0: calendar year). */
int log_season(const struct log *l, int64_t farm, int32_t day);

/* Zero-initialise v; reading again reuses it. */
bool flight_read(struct flight_view *v, struct book *b, const struct log *l,
	const struct flight_ask *ask, struct err *e);
void flight_free(struct flight_view *v);

#endif
