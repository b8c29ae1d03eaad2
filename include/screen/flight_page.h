/* flight_page.h - the season of a pest as a chart, with its flights and what comes
 * next. */
#ifndef SCREEN_FLIGHT_PAGE_H
#define SCREEN_FLIGHT_PAGE_H

#include "answers/flight.h"
#include "screen/asking.h"

/* Along what the chart runs. */
enum flight_ruler { RULER_WEEKS, RULER_HEAT };

struct flight_page {
	const struct flight_view *view; /* borrowed */
	size_t top, rows;               /* scrolled part below the chart */
	bool several; /* all earlier seasons, a line each, under the chart */
	enum flight_ruler ruler;
	bool typing; /* a biofix date in the message line */
	char line[16];
	struct asking asking; /* whether to print */
	struct message message;
	/* set by a key; the loop changes what is asked and clears them */
	int turn_farm, turn_block, turn_trap, turn_pest, turn_season; /* -1, 0, 1 */
};

/* A week takes as many columns as fit, up to 4; when not even one fits, the latest
 * weeks are shown. Weeks before the first that anybody looked at are blank, later ones
 * up to view->now.n get the mark for a week that nobody looked at: now.n ends with this
 * week while the season runs. As the page gets lower these go: chart rows down to 4,
 * degree-days at the months, earlier seasons (oldest first), marks, chart rows down to
 * 2, the chart. As it gets narrower the table of flights loses: 10 % day, 90 % day,
 * moths, catch of the peak, degree-days, first catch.
 *
 * WANT_BIOFIX: .day (DAY_NONE: take the biofix out), .farm, .pest; the page offers the
 * suggestion's `by` day and says that it may have been earlier. WANT_WEATHER: the
 * station of .farm. */
struct key_rows flight_page_keys(void);
/* What the marks on the page mean, for the help page: up to NULL, N_(). */
const char *const *flight_page_notes(void);
struct wish flight_page_key(struct flight_page *p, struct input in);
void flight_page_draw(struct flight_page *p, struct canvas *c);

#endif
