/* weather_page.h - a station's days, typed in: two numbers and Enter for each. */
#ifndef SCREEN_WEATHER_PAGE_H
#define SCREEN_WEATHER_PAGE_H

#include "answers/weather.h"
#include "screen/page.h"

struct weather_page {
	const struct weather_list *list; /* borrowed; set by weather_page_show */
	size_t picked, top, rows;
	int32_t picked_day;    /* found again in a new list */
	char min[12], max[12]; /* as typed: "-" first for frost, one decimal point */
	bool on_max;           /* Enter after the minimum goes to the maximum */
	bool asked;            /* about the odd pair: the next Enter saves it */
	bool asked_farm;       /* whether the farm goes by it: o again says yes */
	bool naming;           /* the name of a new station in the message line */
	char line[NAME_BYTES];
	struct message message;
	bool turn_station, turn_unit,
		use_for_farm; /* set by a key; the loop clears them */
};

/* WANT_SAVE_WEATHER: .weather, one of its temperatures NAN when only the other is
 * known. WANT_NEW_STATION: .words.note holds its name. After the last missing day
 * below the cursor the page says so. The number pad alone does it: digits, `.`, `-`,
 * Enter; Enter on an empty field leaves what the book has, also when that is nothing.
 * Asked about once: a mean 15 C (27 F) or more away from that of the day before or
 * after, and a minimum that is the maximum. Columns are dropped in this order: sum,
 * degree-days. */
struct key_rows weather_page_keys(void);
/* What is said of the page below its keys on the help page: up to NULL, N_(). */
const char *const *weather_page_notes(void);
struct wish weather_page_key(struct weather_page *p, struct input in);
void weather_page_draw(struct weather_page *p, struct canvas *c);

/* Shows a list (again). first: picks the latest missing day. What is typed stays as
 * long as its day is in the list. */
void weather_page_show(
	struct weather_page *p, const struct weather_list *list, bool first);
/* The wish WANT_SAVE_WEATHER was done: says so and picks the next missing day. */
void weather_page_saved(struct weather_page *p, const struct weather_list *list);
/* It was not: what is typed stays, and the message says why. */
void weather_page_not_saved(struct weather_page *p, const char *why);

#endif
