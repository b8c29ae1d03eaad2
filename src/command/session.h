/* session.h - the pages while they are open: what the loop and the deeds of the pages
 * share. Private to the page loop. */
#ifndef COMMAND_SESSION_H
#define COMMAND_SESSION_H

#include "command/command.h"
#include "rooms.h"
#include "rooms_book.h"
#include "session_print.h"

enum { DEPTH_MAX = 8, MADE_MAX = 64 };

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

	struct log log;          /* all farms, today */
	char scout[SCOUT_BYTES]; /* as the book has it */
	bool acts_anew;          /* Alerts or Picks are shown from their first row on */
	struct printing printing;

	struct today_room today;
	struct run_room run;
	struct week_room week;
	struct why_room why;
	struct flight_room flight;
	struct hot_room hot;
	struct weather_room weather;
	struct diary_room diary;
	struct service_room service;
	struct thresholds_room thresholds;
	struct alerts_room alerts;
	struct picks_room picks;
	struct entry_room entry;
	struct form_room form;
	struct backups_room backups;
	struct merge_room merge;
	struct text_room text;
	struct start_page start_page;
	struct book_page book_page;
	struct help_page help_page;
};

/* Frees all that it holds and closes the book. */
void session_free(struct session *s);

/* Reads the book again for the page that is shown. */
bool session_read(struct session *s, struct err *e);
/* A page left open over midnight is of the new day. */
void session_turn_day(struct session *s);
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

enum page session_shown(const struct session *s);
/* The hand goes to a record, where the shown page lists it. */
void session_pick(struct session *s, int64_t id);
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
