/* thresholds_parts.h - what the files of the thresholds page share. */
#ifndef SCREEN_THRESHOLDS_PARTS_H
#define SCREEN_THRESHOLDS_PARTS_H

#include "screen/thresholds_page.h"

/* Own ones, then published ones. */
size_t thresholds_count(const struct thresholds_page *p);
/* Finds which of them are shown, if that is not known. */
void thresholds_find(struct thresholds_page *p);
/* Own ones that are shown: they come first in p->sift. */
size_t thresholds_shown_own(const struct thresholds_page *p);
/* True if row i has the text in a column or in what is said of it. */
bool thresholds_has(const void *page, size_t i, const char *text);
/* Row i if it is an own one, or a published one; else NULL. */
const struct own_row *thresholds_own(const struct thresholds_page *p, size_t i);
const struct published_row *thresholds_published(
	const struct thresholds_page *p, size_t i);

#endif
