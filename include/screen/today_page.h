/* today_page.h - the page that opens first: what to run, what is over or barred. */
#ifndef SCREEN_TODAY_PAGE_H
#define SCREEN_TODAY_PAGE_H

#include "answers/today.h"
#include "screen/asking.h"
#include "screen/list.h"
#include "screen/sift.h"

/* Columns of each kind of row. */
struct today_columns {
	struct columns runs, verdicts, hots, nexts;
};

struct today_page {
	const struct today *today; /* borrowed; set by today_page_show */
	size_t picked; /* over runs, lines, hots, nexts; SIZE_MAX: none is shown */
	size_t top;    /* over the lines of the page */
	struct sift sift;
	struct today_columns columns; /* how wide they want to be */
	bool is_measured;
	struct asking asking; /* whether to print */
	struct message message;
	int rows; /* of the list in the last frame */
};

/* Columns of a run are dropped in this order: last run, traps. Of a verdict: farm,
 * pest. Of hot blocks and of what comes next: farm. When one is dropped the message
 * line holds the picked one in full. A book without traps says how to begin. */
struct key_rows today_page_keys(void);
struct wish today_page_key(struct today_page *p, struct input in);
void today_page_draw(struct today_page *p, struct canvas *c);

/* Shows what was read (again); the picked row stays picked. */
void today_page_show(struct today_page *p, const struct today *today);
void today_page_free(struct today_page *p);

#endif
