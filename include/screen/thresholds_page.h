/* thresholds_page.h - the grower's thresholds beside the published ones, and what the
 * picked one would have called. */
#ifndef SCREEN_THRESHOLDS_PAGE_H
#define SCREEN_THRESHOLDS_PAGE_H

#include "answers/trial.h"
#include "screen/list.h"
#include "screen/sift.h"

struct thresholds_page {
	const struct threshold_list *list; /* borrowed; set by thresholds_page_show */
	const struct trial *trial; /* of the picked one; borrowed; NULL: not yet */
	const char *right;         /* set to the right of the title; borrowed */
	size_t picked; /* over own, then published ones; SIZE_MAX: none is shown */
	struct sift sift;
	size_t top, top_published; /* side by side each list has its own */
	bool asked;                /* taking it once more: the next t does */
	bool next_pest;            /* set by a key; the loop filters and clears */
	struct message message;
	int rows; /* of the list in the last frame */
	/* How wide the columns want to be, of own and of published ones. */
	struct columns own, published;
	bool is_measured;
};

/* From THRESHOLDS_WIDE columns the lists stand side by side, else one below the other.
 * Columns are dropped in this order: source, mark. WANT_FORM: .kind and .id of an own
 * one. WANT_TAKE_RULE: .id is the row of the published one. */
enum { THRESHOLDS_WIDE = 100 };
struct key_rows thresholds_page_keys(void);
const char *const *thresholds_page_notes(void);
struct wish thresholds_page_key(struct thresholds_page *p, struct input in);
void thresholds_page_draw(struct thresholds_page *p, struct canvas *c);

/* Shows a list (again); the picked row stays picked. */
void thresholds_page_show(struct thresholds_page *p, const struct threshold_list *list);
void thresholds_page_free(struct thresholds_page *p);
/* The rule that is picked; NULL: there is none. */
const struct rule *thresholds_page_picked(const struct thresholds_page *p);
/* Picks an own one by its id; shows all when it would not be shown. */
void thresholds_page_pick(struct thresholds_page *p, int64_t id);

#endif
