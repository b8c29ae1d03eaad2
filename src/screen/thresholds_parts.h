/* thresholds_parts.h - what the files of the thresholds page share. */
#ifndef SCREEN_THRESHOLDS_PARTS_H
#define SCREEN_THRESHOLDS_PARTS_H

#include "screen/thresholds_page.h"

/* Own ones, then published ones. */
size_t thresholds_count(const struct thresholds_page *p);
/* Row i if it is an own one, or a published one; else NULL. */
const struct own_row *thresholds_own(const struct thresholds_page *p, size_t i);
const struct published_row *thresholds_published(
	const struct thresholds_page *p, size_t i);

#endif
