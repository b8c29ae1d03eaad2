/* today_lines.h - what stands on the rows of the Today page, top to bottom. */
#ifndef SCREEN_TODAY_LINES_H
#define SCREEN_TODAY_LINES_H

#include "today_parts.h"

/* What stands on one row of the page: one that can be picked, or another. */
enum line_kind {
	LINE_RUN = TODAY_RUN,
	LINE_VERDICT = TODAY_VERDICT,
	LINE_HOT = TODAY_HOT,
	LINE_NEXT = TODAY_NEXT,
	LINE_BLANK,
	LINE_HEAD,
	LINE_TEXT,
	LINE_BARRED,
	LINE_FREE, /* of a pick that nothing bars */
};
struct page_line {
	enum line_kind kind;
	size_t index;     /* of the run, verdict, hot block or what comes next */
	const char *text; /* of the others, translated */
	size_t bytes;     /* of it that stand on this row; 0: all */
};
struct lines {
	struct page_line *items;
	size_t n, cap;
};

enum { SAID_MOST = 6 };

/* Sentences that are put together for the page. */
struct said {
	char text[SAID_MOST][SAY_LINE * 3];
	size_t n, others; /* in `text`; and how many have no room there */
	char more[SAY_SHORT * 2], rest[SAY_LINE];
};

/* A row of the page. */
void today_add_line(
	struct lines *l, enum line_kind kind, size_t index, const char *text);
/* A sentence, whole: as many rows as it takes. */
void today_add_said(struct lines *l, enum line_kind kind, const char *text, int cols);
/* Column of a sentence. */
int today_left(enum line_kind kind);

/* Planned picks: those that are too early or in doubt first, lest they be among those
 * that have no room; then, unless something is looked for, those of the days to come
 * that nothing bars. */
void today_add_planned(
	struct lines *l, const struct today_page *p, int cols, struct said *s);
/* Blocks without a planned pick that may not be picked yet. */
void today_add_blocks(struct lines *l, const struct today *t, int cols, struct said *s);
/* True if either of them says something. */
bool today_tells_of_pick(const struct today_page *p);

#endif
