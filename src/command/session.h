/* session.h - the pages while they are open: what the loop and the run page's deeds
 * share. Private to the page loop. */
#ifndef COMMAND_SESSION_H
#define COMMAND_SESSION_H

#include "answers/today.h"
#include "answers/week.h"
#include "answers/why.h"
#include "command/command.h"
#include "screen/flight_page.h"
#include "screen/run_page.h"
#include "screen/today_page.h"
#include "screen/weather_page.h"
#include "screen/week_page.h"
#include "screen/why_page.h"

enum page {
	PAGE_TODAY,
	PAGE_RUN,
	PAGE_WEEK,
	PAGE_WHY,
	PAGE_FLIGHT,
	PAGE_WEATHER,
	PAGE_HELP,
	PAGE_COUNT
};

enum { DEPTH_MAX = 8, FILTER_BYTES = 128 };

struct session {
	const struct context *ctx;
	const char *notice; /* "" = none */
	struct book *book;
	int64_t data_version; /* of what was read last */
	int32_t day;          /* goes on at midnight, unless --today was given */

	enum page stack[DEPTH_MAX]; /* stack[depth] is shown */
	int depth;

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
	struct weather_list weather;
	int64_t weather_farm, weather_station, weather_pest; /* station 0: the farm's */

	struct log run_log; /* the run's farm, on its date */
	struct run run;
	int64_t run_farm;
	int32_t run_day;
	char scout[SCOUT_BYTES]; /* as the book has it */

	struct today_page today_page;
	struct run_page run_page;
	struct week_page week_page;
	struct why_page why_page;
	struct flight_page flight_page;
	struct weather_page weather_page;
	struct help_page help_page;
	char filter[FILTER_BYTES];
};

/* One page of the loop: everything that the loop does with it. */
struct page_row {
	const char *name; /* N_() */
	struct key_rows (*keys)(void);
	const char *const *(*notes)(void); /* what its marks mean; NULL: it has none */
	bool (*read)(struct session *s, struct err *e); /* from the book, to be shown */
	struct wish (*key)(struct session *s, struct input in);
	void (*draw)(struct session *s, struct canvas *c);
	struct message *(*message)(struct session *s);
};

extern const struct page_row session_pages[PAGE_COUNT];

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

/* Fills the Week page by its filter; turns the filter as the page's keys asked. */
void session_week(struct session *s);
void session_filter_week(struct session *s);

/* The Flight page: opens what a wish asks for, turns it as the page's keys asked. */
struct wish session_why_flight(const struct session *s, struct wish w);
void session_ask_flight(struct session *s, const struct wish *w);
bool session_read_flight(struct session *s, struct err *e);
void session_turn_flight(struct session *s);
void session_biofix(struct session *s, const struct wish *w);

/* The Weather page. */
void session_ask_weather(struct session *s, const struct wish *w);
bool session_read_weather(struct session *s, struct err *e);
void session_turn_weather(struct session *s);
void session_save_weather(struct session *s, const struct wish *w);
void session_new_station(struct session *s, const struct wish *w);

/* Opens the run of a farm on a day; first: picks its first open trap. */
bool session_open_run(
	struct session *s, int64_t farm, int32_t day, bool first, struct err *e);
/* Reads the run that is open again, for pages that stand on it. */
bool session_read_run(struct session *s, struct err *e);
void session_save(struct session *s, const struct wish *w);
void session_undo(struct session *s);
/* Writes the farm's weekly sheet beside where the program was started. */
void session_sheet(struct session *s, int64_t farm);

#endif
