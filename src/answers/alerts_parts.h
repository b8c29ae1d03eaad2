/* alerts_parts.h - what the files of alerts share. */
#ifndef ANSWERS_ALERTS_PARTS_H
#define ANSWERS_ALERTS_PARTS_H

#include "answers/alerts.h"
#include "answers/log.h"

/* The catch in the two weeks before the decision and after it, in one sentence. */
void alert_say_after(
	const struct log *l, const struct answer *x, char *out, size_t size);

/* Makes one of those that came at checks in a row; their order afterwards is open. */
void alerts_join_spells(struct alerts *a);

#endif
