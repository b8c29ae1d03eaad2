/* today_page.h - opens first. */
#ifndef SCREEN_TODAY_PAGE_H
#define SCREEN_TODAY_PAGE_H

#include "answers/today.h"
#include "screen/page.h"

struct today_page {
	const struct today *today; /* borrowed; set anew after every read of the book */
	size_t picked, top;        /* over runs, lines, hots, nexts */
	struct message message;
	int rows; /* of the list in the last frame */
};

/* Columns of a run are dropped in this order: last run, traps. Of a verdict: farm,
 * pest. Of hot blocks
 * and of what comes next: farm. When one is dropped the message line holds the picked one in full. A book
 * without traps says how to begin. */
struct key_rows today_page_keys(void);
struct wish today_page_key(struct today_page *p, struct input in);
void today_page_draw(struct today_page *p, struct canvas *c);

#endif
