/* alerts_parts.h - what the files of alerts share. */
#ifndef ANSWERS_ALERTS_PARTS_H
#define ANSWERS_ALERTS_PARTS_H

#include "answers/log.h"

/* The catch in the two weeks before the decision and after it, in one sentence. */
void alert_say_after(
	const struct log *l, const struct answer *x, char *out, size_t size);

#endif
