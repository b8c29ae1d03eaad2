/* diary_parts.h - what the files of this folder share about diaries and weeks. */
#ifndef SEASON_DIARY_PARTS_H
#define SEASON_DIARY_PARTS_H

#include "season/weekly.h"

/* How many intervals had closed by the end of the day. */
size_t diary_closed(const struct diary *d, int32_t day);

/* Moths of the trap's pest that a visit found; 0 when it has no count. */
int32_t visit_moths(const struct visit *v);

/* The weekly catch whose last interval is number i, as asked on a day that needs no
 * look at what came after it. */
struct weekly weekly_closing(
	const struct diary *d, size_t i, int32_t asked, const struct limits *l);

/* What keeps an interval with CATCH_UNKNOWN from being read. */
enum unread unread_why(const struct diary *d, size_t i);

#endif
