/* today_parts.h - what the files of the Today page share. */
#ifndef SCREEN_TODAY_PARTS_H
#define SCREEN_TODAY_PARTS_H

#include "screen/frame.h"
#include "screen/today_page.h"

/* How many there are to pick from: runs, then verdicts, then what comes next. */
size_t today_count(const struct today *t);

/* The picked one; NULL: another kind is picked. */
const struct today_run *today_picked_run(const struct today_page *p);
const struct today_line *today_picked_line(const struct today_page *p);
const struct today_next *today_picked_next(const struct today_page *p);

void today_draw_rows(struct today_page *p, struct canvas *c, const struct frame *f);

/* The picked one in full, where its row may be cut. */
void today_say_picked(const struct today_page *p, int cols, struct message *m);

#endif
