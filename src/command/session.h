/* session.h - the pages while they are open: what the loop and the deeds of the pages
 * share. Private to the page loop. */
#ifndef COMMAND_SESSION_H
#define COMMAND_SESSION_H

#include "answers/entry.h"
#include "answers/shelf.h"
#include "answers/today.h"
#include "answers/trap_diary.h"
#include "answers/trial.h"
#include "answers/week.h"
#include "answers/why.h"
#include "book/backups.h"
#include "command/command.h"
#include "page_table.h"
#include "session_print.h"

enum { DEPTH_MAX = 8, FILTER_BYTES = 128, MADE_MAX = 64 };

/* Where the steps later than one were made. */
struct made {
	int64_t after;
	enum page page;
	int kind; /* of the records, on a list */
};

/* What a page was asked to do and asked back about: the same key once more does it. */
struct asked {
	enum want want;
	int64_t about; /* a step, a farm; 0: nothing is asked */
	int64_t ms;
};

struct session {
	const struct context *ctx;
	const char *notice; /* "" = none */
	struct book *book;
	bool unmade;          /* nothing is saved yet: the book is one in memory */
	struct err lost;      /* the book could not be opened again: the pages end */
	int64_t data_version; /* of what was read last */
	int32_t day;          /* goes on at midnight, unless --today was given */

	enum page stack[DEPTH_MAX]; /* stack[depth] is shown */
	int depth;

	struct made made[MADE_MAX]; /* later ones last; of older ones it is not known */
	size_t n_made;
	struct asked asked;

	struct log log; /* all farms, today */
	struct today today;
	struct week week;
	struct why why;
	int64_t week_farm, week_pest; /* the Week page's filter, 0 = all */
	bool why_of_run; /* asked from the run page: as it stood on the run's date */
	int why_trap;    /* index in run_log then, else in log */
	int64_t why_block, why_pest;

	struct flight_view flight;
	struct flight_ask flight_ask;
	struct hot_view hotspots;
	struct hot_ask hot_ask;
	int64_t hot_block; /* to be picked once its page is read; 0: the first row */
	char hot_right[DAY_TEXT_SIZE];
	struct weather_list weather;
	int64_t weather_farm, weather_station, weather_pest; /* station 0: the farm's */

	struct log run_log; /* the run's farm, on its date */
	struct run run;
	int64_t run_farm;
	int32_t run_day;
	char scout[SCOUT_BYTES]; /* as the book has it */

	struct entry_ask entry_ask; /* of the list that is shown */
	struct entry_list entries;
	bool entries_anew; /* the list is shown from its first row on */
	struct entry_choices choices;
	bool beginning;   /* the first farm, block and traps are typed in */
	bool move_asked;  /* about the visits that go with a trap to its block */
	int64_t saved_id; /* by the form since it was opened; 0: nothing */
	bool then_traps;  /* after this block new traps in it */
	struct buf text;  /* of the text page */
	struct backups backups;
	struct backup_line *backup_lines;
	struct open_matters open_matters; /* of the Merge page */
	struct merging merging;

	struct trap_diary diary;
	int64_t diary_trap;
	int diary_season; /* 0: the present one */
	bool diary_anew;  /* it is shown from its latest visit on */
	struct due due;
	struct shelf shelf;
	int64_t service_farm; /* 0: all */
	char service_filter[NAME_BYTES];
	int64_t changed_trap; /* on the Service page, latest; 0: none */
	struct threshold_list thresholds;
	int64_t thresholds_pest; /* 0: all */
	struct trial trial;

	struct alerts alerts, why_alerts; /* of their pages */
	struct pick_rows picks;
	struct bars bars;
	bool acts_anew; /* Alerts or Picks are shown from their first row on */

	struct alerts_page alerts_page;
	struct picks_page picks_page;
	struct diary_page diary_page;
	struct service_page service_page;
	struct thresholds_page thresholds_page;
	struct book_page book_page;
	struct entry_page entry_page;
	struct form_page form_page;
	struct start_page start_page;
	struct text_page text_page;
	struct backups_page backups_page;
	struct merge_page merge_page;
	struct today_page today_page;
	struct run_page run_page;
	struct week_page week_page;
	struct why_page why_page;
	struct flight_page flight_page;
	struct hotspots_page hotspots_page;
	struct weather_page weather_page;
	struct help_page help_page;
	char filter[FILTER_BYTES];
	struct printing printing;
};

/* Frees all that it holds and closes the book. */
void session_free(struct session *s);

/* Reads the book again for the page that is shown. */
bool session_read(struct session *s, struct err *e);
/* Reads this season of all farms into s->log. */
bool session_read_log(struct session *s, struct err *e);
/* A page's title, whole and for narrow screens; DAY_TEXT_SIZE bytes each. */
struct title {
	char *whole, *brief;
};
/* Puts the notice, if there is one, before it; the part before its colon when brief. */
void session_mark(const struct session *s, struct title title);
/* Where the shown page says what just happened. */
struct message *session_message(struct session *s);

/* Opens a page over the shown one, or goes back to the one below. */
void session_open(struct session *s, enum page page);
void session_back(struct session *s);
/* Back to Today. */
void session_home(struct session *s);

/* Before every change: the day's backup, who makes it, and on which page. */
void session_before_change(struct session *s);
/* The last of it alone. */
void session_note_page(struct session *s);
/* Whether the book has a step since then: a key may have changed nothing. */
bool session_has_changed(const struct session *s);
/* Whether the key that was asked back about came once more, and not so soon that it was
 * one press; else it is asked about from now on. */
bool session_is_sure(struct session *s, enum want want, int64_t about);
const char *session_author(const struct session *s);

#endif
