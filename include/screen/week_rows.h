/* week_rows.h - the rows of the Week page and their flight lines. */
#ifndef SCREEN_WEEK_ROWS_H
#define SCREEN_WEEK_ROWS_H

#include "screen/week_page.h"

/* Finds which rows are shown, p->sift.rows, if that is not known: all, or with
 * only_open those that are over, unknown or near, and of them those that contain what
 * is looked for, with the farms and blocks above them. */
void week_find(struct week_page *p);

/* Why no row is shown, as a sentence. */
const char *week_says_none(const struct week_page *p);

void week_draw_rows(struct week_page *p, struct canvas *c, int first, int last);

/* One mark of a flight line; highest_x10 is what a full block stands for. */
const char *week_mark(const struct mark *m, int32_t highest_x10);

#endif
