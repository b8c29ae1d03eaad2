/* rooms.h - what the loop keeps for each page that tells of the season: what was asked,
 * what the answers gave, and the page that shows it. Private to the page loop. */
#ifndef COMMAND_ROOMS_H
#define COMMAND_ROOMS_H

#include "answers/today.h"
#include "answers/trial.h"
#include "answers/week.h"
#include "answers/why.h"
#include "page_table.h"

struct today_room {
	struct today answer;
	struct today_page page;
};

struct run_room {
	int64_t farm;
	int32_t day;
	struct log log; /* the farm, on that day */
	struct run answer;
	struct run_page page;
};

struct week_room {
	int64_t farm, pest; /* 0: all */
	char filter[128];   /* the same in words */
	struct week answer;
	struct week_page page;
};

struct why_room {
	bool of_run; /* asked from the run page: as it stood on the run's date */
	int64_t trap, block, pest; /* trap 0: of the block */
	struct why answer;
	struct alerts alerts;
	struct why_page page;
};

struct flight_room {
	struct flight_ask ask;
	int64_t trap; /* that of ask.trap, wherever it stands in the log by now; 0 */
	struct flight_view answer;
	struct flight_page page;
};

struct hot_room {
	struct hot_ask ask;
	int64_t block; /* to be picked once its page is read; 0: the first row */
	char right[DAY_TEXT_SIZE];
	struct hot_view answer;
	struct hotspots_page page;
};

struct weather_room {
	int64_t farm, station, pest; /* station 0: the farm's */
	struct weather_list answer;
	struct weather_page page;
};

struct thresholds_room {
	int64_t pest; /* 0: all */
	struct threshold_list answer;
	struct trial trial;
	struct thresholds_page page;
};

struct alerts_room {
	struct alerts answer;
	struct alerts_page page;
};

struct picks_room {
	struct pick_rows answer;
	struct bars bars;
	struct picks_page page;
};

#endif
