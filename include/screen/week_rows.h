/* week_rows.h - the rows of the Week page and their flight lines. */
#ifndef SCREEN_WEEK_ROWS_H
#define SCREEN_WEEK_ROWS_H

#include "screen/week_page.h"

/* Indices of the rows that are shown, for the caller to free: all, or with only_open
 * those that are over, unknown or near, and of them those that contain what is looked
 * for, with the farms and blocks above them. */
size_t *week_shown(const struct week_page *p, size_t *n);

/* Returns how many rows there are in all. */
size_t week_draw_rows(struct week_page *p, struct canvas *c, int first, int last);

/* One mark of a flight line; highest_x10 is what a full block stands for. */
const char *week_mark(const struct mark *m, int32_t highest_x10);

#endif
