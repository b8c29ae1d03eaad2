/* today_parts.h - what the files of today share. */
#ifndef ANSWERS_TODAY_PARTS_H
#define ANSWERS_TODAY_PARTS_H

#include "answers/verdicts.h"

/* Which traps catch and have no threshold; see struct today. */
void today_say_no_threshold(
	const struct log *l, const struct verdict_rows *v, char *out, size_t size);

#endif
