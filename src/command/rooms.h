/* rooms.h - what the loop keeps for each page: what was asked, what the answers gave, and
 * the page that shows it. Private to the page loop. */
#ifndef COMMAND_ROOMS_H
#define COMMAND_ROOMS_H

#include "answers/entry.h"
#include "answers/shelf.h"
#include "answers/today.h"
#include "answers/trap_diary.h"
#include "answers/trial.h"
#include "answers/week.h"
#include "answers/why.h"
#include "book/backups.h"
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
	int trap; /* index in the run's log then, else in that of all farms; -1: a block */
	int64_t block, pest;
	struct why answer;
	struct alerts alerts;
	struct why_page page;
};

struct flight_room {
	struct flight_ask ask;
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

struct diary_room {
	int64_t trap;
	int season; /* 0: the present one */
	bool anew;  /* it is shown from its latest visit on */
	struct trap_diary answer;
	struct diary_page page;
};

struct service_room {
	int64_t farm; /* 0: all */
	char filter[NAME_BYTES];
	int64_t changed; /* the trap that was changed latest; 0: none */
	struct due due;
	struct shelf shelf;
	struct service_page page;
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

/* The list of a family of records. */
struct entry_room {
	struct entry_ask ask;
	bool anew; /* it is shown from its first row on */
	struct entry_list answer;
	struct entry_page page;
};

/* The form of one record. */
struct form_room {
	bool beginning;   /* the first farm, block and traps are typed in */
	bool move_asked;  /* about the visits that go with a trap to its block */
	bool then_traps;  /* after this block new traps in it */
	int64_t saved_id; /* since it was opened; 0: nothing */
	struct entry_choices choices;
	struct form_page page;
};

struct backups_room {
	struct backups found;
	struct backup_line *lines;
	struct backups_page page;
};

struct merge_room {
	struct open_matters matters;
	struct merging answer;
	struct merge_page page;
};

struct text_room {
	struct buf written;
	struct text_page page;
};

#endif
