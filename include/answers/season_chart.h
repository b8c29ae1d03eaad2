/* season_chart.h - the season of one block and pest: catches, thresholds, what was
 * over, what was done. */
#ifndef ANSWERS_SEASON_CHART_H
#define ANSWERS_SEASON_CHART_H

#include "answers/flight.h"
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
	/* for the table at a glance: "344+", "24", "1", "23" not answered; "-" */
	char moths[SAY_SHORT], over[SAY_SHORT], answered[SAY_SHORT], open[SAY_SHORT];
	char mean[SAY_SHORT * 2]; /* highest weekly mean, its week: "18.2, 19 May" */
	char highest[SAY_LINE];   /* highest catch of one trap: "52.0+, trap 1" */
	/* treatments entered, of the block or its border; "-" none */
	char treated[SAY_SHORT];
	/* fruit stung or entered of all looked at, "1 of 150"; "-" nobody looked */
	char damage[SAY_SHORT];
	int32_t hurt, looked_at; /* the same as numbers */
};

#endif
