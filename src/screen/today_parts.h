/* today_parts.h - what the files of the Today page share. */
#ifndef SCREEN_TODAY_PARTS_H
#define SCREEN_TODAY_PARTS_H

#include "screen/frame.h"
#include "screen/list.h"
#include "screen/today_page.h"

/* What there is to pick from, in this order. */
enum today_kind { TODAY_RUN, TODAY_VERDICT, TODAY_HOT, TODAY_NEXT };
size_t today_count(const struct today *t);
/* Where those of a kind begin. */
size_t today_first(const struct today *t, enum today_kind kind);
/* Finds which of them are shown, if that is not known. */
void today_find(struct today_page *p);

/* The picked one; NULL: another kind is picked. */
const struct today_run *today_picked_run(const struct today_page *p);
const struct today_line *today_picked_line(const struct today_page *p);
const struct today_hot *today_picked_hot(const struct today_page *p);
const struct today_next *today_picked_next(const struct today_page *p);

void today_draw_rows(struct today_page *p, struct canvas *c, const struct frame *f);

/* The picked one in full, where its row may be cut. */
void today_say_picked(struct today_page *p, int cols, struct message *m);

enum { SPOT_FARM, SPOT_SAYS, SPOT_COLUMNS };
enum { NEXT_FARM, NEXT_PEST, NEXT_SAYS, NEXT_COLUMNS };

/* For a window of that width. */
struct today_columns today_columns_of(struct today_page *p, int cols);
void today_draw_run(const struct columns *s, struct canvas *c, int row, enum ink ink,
	const struct today_run *r);
void today_draw_verdict(const struct columns *s, struct canvas *c, int row,
	enum ink ink, const struct today_line *v);
void today_draw_hot(const struct columns *s, struct canvas *c, int row, enum ink ink,
	const struct today_hot *h);
void today_draw_next(const struct columns *s, struct canvas *c, int row, enum ink ink,
	const struct today_next *n);

#endif
