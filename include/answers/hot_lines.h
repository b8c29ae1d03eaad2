/* hot_lines.h - the hot blocks of a farm in a line each. */
#ifndef ANSWERS_HOT_LINES_H
#define ANSWERS_HOT_LINES_H

#include "answers/log.h"
#include "answers/say.h"
#include "season/hotspot.h"

/* One line per hot block (watch or clear) of the farm and any pest, for the weekly
 * sheet and Today: "Old Kiln, CM: clear hot spot, 4.5 times the rest". Of the present
 * season; the same grades as the page, without its simulations and earlier seasons. */
struct hot_line {
	int64_t block, pest;
	enum hot_grade grade;
	char text[SAY_LINE];
};
struct hot_lines {
	struct hot_line *items;
	size_t n, cap;
};
bool hot_lines_read(struct hot_lines *out, struct book *b, const struct log *l,
	int64_t farm, struct err *e);
void hot_lines_free(struct hot_lines *h);

#endif
