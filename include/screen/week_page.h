/* week_page.h - the week's answers as a tree. */
#ifndef SCREEN_WEEK_PAGE_H
#define SCREEN_WEEK_PAGE_H

#include "answers/week.h"
#include "screen/list.h"
#include "screen/sift.h"

/* What a full block of the flight lines of a pest stands for. */
struct week_scale {
	int64_t pest;
	int32_t highest_x10;
};

struct week_page {
	const struct week *week; /* borrowed; set by week_page_show */
	const char *filter;      /* "all farms, CM"; borrowed, translated */
	size_t picked, top;      /* over the rows that are shown */
	bool only_open;          /* only rows that are over, unknown or near */
	struct sift sift;
	struct columns columns;    /* how wide they want to be */
	struct week_scale *scales; /* owned */
	size_t n_scales, cap_scales;
	bool is_measured;
	struct message message;
	int rows;                  /* of the list in the last frame */
	bool next_farm, next_pest; /* set by a key: the loop filters and clears */
	int64_t one_farm; /* the same: this one only, or all if it is so; 0: no key */
};

/* Columns are dropped in this order: what is missing (the message line has it for the
 * picked row), flight line, nights, threshold, marks, pest, highest trap. Name, catch
 * and verdict stay.
 * Flight lines are scaled to the highest counted week of their pest on this page, so
 * that rows of one pest compare: eight blocks, `_` a counted zero, `+` a full card (at
 * least), a middle dot not read, blank not hung. They show the latest weeks that fit.
 */
struct key_rows week_page_keys(void);
/* What the marks on the page mean, for the help page: up to NULL, N_(). */
const char *const *week_page_notes(void);
struct wish week_page_key(struct week_page *p, struct input in);
void week_page_draw(struct week_page *p, struct canvas *c);

/* Shows what was read (again). */
void week_page_show(struct week_page *p, const struct week *week);
void week_page_free(struct week_page *p);

#endif
