/* service_page.h - lures and cards in the order in which they are due, what to bring,
 * and what is on the shelf. */
#ifndef SCREEN_SERVICE_PAGE_H
#define SCREEN_SERVICE_PAGE_H

#include "answers/shelf.h"
#include "screen/list.h"
#include "screen/sift.h"

enum { SERVICE_BOUNCE_MS = 300 }; /* a key that was meant once is not read as two */

/* What the page waits for after + or *. */
enum service_ask {
	SERVICE_ASKS_NOTHING,
	SERVICE_ASKS_VISIT, /* the same key once more: into today's visit */
	SERVICE_ASKS_COUNT, /* moths on the old card, typed in the message line */
};

/* A line as it is drawn: (part of) a row that can be picked, or of another text. */
struct service_line {
	size_t row;       /* SIZE_MAX: none */
	size_t part;      /* of a text that takes several lines: which of them */
	const char *text; /* of the other: translated */
	enum ink ink;
};
/* All of them, for a window of `cols` columns. */
struct service_lines {
	struct service_line *items;
	size_t n, cap;
	int cols; /* 0: they are to be laid anew */
};

struct service_page {
	const struct due *due;     /* borrowed; set by service_page_show */
	const struct shelf *shelf; /* borrowed; the same */
	const char *filter;        /* "all farms"; borrowed, translated */
	size_t picked; /* over items, bring lists, shelf; SIZE_MAX: none is shown */
	size_t top;    /* over the lines */
	struct sift sift;
	struct columns columns; /* how wide they want to be */
	bool is_measured;
	struct service_lines lines; /* owned */
	enum service_ask ask;
	bool ask_lure;      /* what was asked about; else the card */
	char digits[6];     /* of the count */
	int64_t now_ms;     /* monotonic; the loop sets it before a key */
	int64_t changed_ms; /* of a change, until another key comes; 0: none */
	bool next_farm;     /* set by a key; the loop filters and clears */
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

/* Shows the lists (again); the picked row stays picked. */
void service_page_show(
	struct service_page *p, const struct due *due, const struct shelf *shelf);
void service_page_free(struct service_page *p);

/* After WANT_CHANGED was done: the next row stands under the hand now, and + and * are
 * not read while they come within SERVICE_BOUNCE_MS of the change or of each other, and
 * no other key came between. */
void service_page_changed(struct service_page *p);

/* The loop's answer to WANT_CHANGED .by 0: the trap has a visit today, `text` says
 * which; or (text NULL) the moths on the old card are asked for. */
void service_page_ask(struct service_page *p, const char *text);

#endif
