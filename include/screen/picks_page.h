/* picks_page.h - picks, planned and done, beside the treatments before them, and the
 * blocks that may not be entered or picked today. */
#ifndef SCREEN_PICKS_PAGE_H
#define SCREEN_PICKS_PAGE_H

#include "answers/entry_bar.h"
#include "screen/page.h"
#include "screen/told.h"

struct picks_page {
	const struct pick_rows *picks; /* borrowed; set by picks_page_show */
	const struct bars *bars;       /* the same */
	const char *right;             /* set to the right of the title; borrowed */
	const char *caution;           /* borrowed */
	struct told list;              /* owned: bars, then picks */
	int64_t picked_id;             /* of the picked pick: found again */
	struct message message;
};

struct key_rows picks_page_keys(void);
struct wish picks_page_key(struct picks_page *p, struct input in);
void picks_page_draw(struct picks_page *p, struct canvas *c);

/* Shows a list (again). first: from its first row on. */
void picks_page_show(struct picks_page *p, const struct pick_rows *picks,
	const struct bars *bars, bool first);
void picks_page_free(struct picks_page *p);

#endif
