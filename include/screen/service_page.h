/* service_page.h - lures and cards in the order in which they are due, what to bring,
 * and what is on the shelf. */
#ifndef SCREEN_SERVICE_PAGE_H
#define SCREEN_SERVICE_PAGE_H

#include "answers/shelf.h"
#include "screen/page.h"

/* What the page waits for after + or *. */
enum service_ask {
	SERVICE_ASKS_NOTHING,
	SERVICE_ASKS_VISIT, /* the same key once more: into today's visit */
	SERVICE_ASKS_COUNT, /* moths on the old card, typed in the message line */
};

struct service_page {
	const struct due *due;     /* borrowed */
	const struct shelf *shelf; /* borrowed */
	const char *filter;        /* "all farms"; borrowed, translated */
	size_t picked, top;        /* over items, bring lists, shelf */
	enum service_ask ask;
	bool ask_lure;  /* what was asked about; else the card */
	char digits[6]; /* of the count */
	bool next_farm; /* set by a key; the loop filters and clears */
	struct message message;
	int rows; /* of the list in the last frame */
};

/* WANT_CHANGED: .trap (index in the log), .kind 1 for a lure, 0 for a card, .id the
 * kind that was due (0: the usual one); .by 0 at first, then as the loop asks: 1 into
 * today's visit, 2 a new one with .visit.count (COUNT_NONE: nobody counted).
 * WANT_DIARY: .trap. Columns are dropped in this order as the page gets narrower: farm,
 * block, kind. Due day, trap, what and state stay; the message line has the picked row
 * in full. */
struct key_rows service_page_keys(void);
const char *const *service_page_notes(void);
struct wish service_page_key(struct service_page *p, struct input in);
void service_page_draw(struct service_page *p, struct canvas *c);

/* The loop's answer to WANT_CHANGED .by 0: the trap has a visit today, `text` says
 * which; or (text NULL) the moths on the old card are asked for. */
void service_page_ask(struct service_page *p, const char *text);

#endif
