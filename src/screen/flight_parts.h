/* flight_parts.h - what the files of the Flight page share. */
#ifndef SCREEN_FLIGHT_PARTS_H
#define SCREEN_FLIGHT_PARTS_H

#include "screen/flight_page.h"

/* The chart and the rows under it in rows first..last; returns the first row after
 * them. At least two rows are left for the text. Nothing is drawn when nobody looked at
 * a trap, or when there are fewer than 5 rows. */
int flight_chart_draw(
	const struct flight_page *p, struct canvas *c, int first, int last);

/* True if degree-days of the season are known, so that the chart can go along them. */
bool flight_has_heat(const struct flight_view *v);

/* Biofix, degree-days, flights and what comes next in rows first..last, from line
 * p->top on; keeps p->top and p->rows. True: it goes on below. */
bool flight_text_draw(struct flight_page *p, struct canvas *c, int first, int last);

/* A biofix date in the message line: Enter wants WANT_BIOFIX, Esc changes nothing. */
void flight_typing_start(struct flight_page *p);
struct wish flight_typing_key(struct flight_page *p, struct input in);
/* What is typed behind its prompt, and the last message behind that; returns the
 * column of the cursor. */
int flight_typing_say(const struct flight_page *p, struct message *m);

#endif
