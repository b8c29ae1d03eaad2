/* heat.h - degree-days of a pest at a farm's station. */
#ifndef ANSWERS_HEAT_H
#define ANSWERS_HEAT_H

#include "answers/log.h"
#include "season/degree_days.h"

struct heat_days {
	struct dd_temps *items;
	size_t n, cap;
};

/* Why there is no sum, or how good it is. */
enum heat_state {
	HEAT_SUM,      /* whole */
	HEAT_AT_LEAST, /* days are missing: a lower bound */
	HEAT_NO_BIOFIX,
	HEAT_NO_RULE,    /* the pest has no base */
	HEAT_NO_STATION, /* none, or none chosen */
	HEAT_NO_WEATHER, /* nothing read in the span */
};

struct heat_sum {
	enum heat_state state;
	struct dd_sum sum;
	int64_t station; /* whose days; 0 without one */
	char unit;
	int32_t from, to;  /* days summed */
	bool skips_biofix; /* `from` is the day after biofix (limits.skip_biofix_day) */
	int32_t last_day;  /* last day with temperatures; DAY_NONE */
};

/* The rule that a pest's heat stands for; false when it is not set or has a word that
 * is none (*e says so). */
bool heat_rule(const struct pest *p, struct dd_rule *out, struct err *e);

/* The station whose weather a farm goes by: its own, else the only one in the book;
 * NULL: none, or several and none chosen. */
const struct station *heat_station(const struct log *l, int64_t farm);

/* Which days of which station. */
struct heat_want {
	int64_t station;
	int32_t from, to;
	char unit;         /* 'C' or 'F', whatever they were typed in */
	int32_t fill_days; /* gaps of up to so many are filled; 0: none */
};
bool heat_read(struct heat_days *out, struct book *b, const struct heat_want *want,
	struct err *e);
/* The days that a sum from..to is made of, gaps filled as the book's setting says: with
 * those around it that filling needs, and the day after it, which double methods need;
 * none after the log's day. */
bool heat_read_span(struct heat_days *out, struct book *b, const struct log *l,
	const struct heat_sum *span, struct err *e);
void heat_free(struct heat_days *h);

/* Since the biofix of farm and pest in the season of `day`, up to `day`. */
struct heat_ask {
	int64_t farm, pest;
	int32_t day;
	dd_each *each; /* is told every day of it; NULL: nobody is */
	void *arg;
};
bool heat_since(struct heat_sum *out, struct book *b, const struct log *l,
	const struct heat_ask *ask, struct err *e);

/* "1 014 F degree-days, Sat 9 May to Mon 20 Jul", "at least 970 ..., 3 days missing",
 * with the days that were filled and whether the biofix day counts; or why not. */
void say_heat(const struct heat_sum *h, char *out, size_t size);

/* The biofix that the grower set; NULL: none. season: log_season(). */
const struct biofix_date *heat_biofix(
	const struct log *l, int64_t farm, int64_t pest, int season);

#endif
