/* today_parts.h - what the files of today share. */
#ifndef ANSWERS_TODAY_PARTS_H
#define ANSWERS_TODAY_PARTS_H

#include "answers/say.h"
#include "answers/verdicts.h"

/* "; 2 lures not known"; "" of 0. */
void today_say_unknown(int32_t n, char out[static SAY_SHORT * 2]);

/* Which traps catch and have no threshold; see struct today. */
void today_say_no_threshold(
	const struct log *l, const struct verdict_rows *v, char *out, size_t size);

#endif
