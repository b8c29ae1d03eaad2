/* session_season.h - what the loop does for the Run, Week, Flight, Hot spots and
 * Weather pages. */
#ifndef COMMAND_SESSION_SEASON_H
#define COMMAND_SESSION_SEASON_H

#include "session.h"

/* Fills the Week page by its filter; turns the filter as the page's keys asked. */
void session_week(struct session *s);
void session_filter_week(struct session *s);

/* The Flight page: opens what a wish asks for, turns it as the page's keys asked. */
struct wish session_why_flight(const struct session *s, struct wish w);
void session_ask_flight(struct session *s, const struct wish *w);
bool session_read_flight(struct session *s, struct err *e);
void session_turn_flight(struct session *s);
/* The pest after `pest` for which the farm (0 = any) has traps, or before it; wraps. */
int64_t session_turn_pest(const struct session *s, int64_t farm, int64_t pest, int by);
void session_biofix(struct session *s, const struct wish *w);

/* The Hot spots page. */
void session_ask_hotspots(struct session *s, const struct wish *w);
bool session_read_hotspots(struct session *s, struct err *e);
void session_turn_hotspots(struct session *s);

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
/* Puts into the wish's note that it was asked about, when it was (.by). False: the note
 * has no room for that. */
bool session_note_asked(const struct session *s, struct wish *w, struct err *e);
/* What a page took to stand in the book where a visit is to be saved. */
struct shown_visit {
	const struct visit *visit; /* NULL: nothing */
	const char *label;         /* of its trap */
};
/* Looks whether the book still holds that, and saves the wish's visit, all in one
 * transaction: on the disk when it returns true. */
bool session_save_visit(struct session *s, const struct wish *w,
	const struct shown_visit *shown, struct err *e);
/* A refusal without "this count is not saved" at its start, which the page says. */
const char *session_reason(const char *text);
void session_pass(struct session *s, const struct wish *w);
void session_undo(struct session *s);

#endif
