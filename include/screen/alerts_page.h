/* alerts_page.h - catches over the threshold: open ones first, then what was decided
 * about the others and what the catch did after. */
#ifndef SCREEN_ALERTS_PAGE_H
#define SCREEN_ALERTS_PAGE_H

#include "screen/answering.h"
#include "screen/told.h"

struct alerts_page {
	const struct alerts *alerts; /* borrowed; set by alerts_page_show */
	const char *right;           /* set to the right of the title; borrowed */
	const char *caution;         /* borrowed */
	struct told list;            /* owned */
	struct answering answering;
	struct message message;
};

/* WANT_ANSWER: .id is the index in alerts of the one that was answered, which may have
 * moved meanwhile; -1: it is not among them any more. */
struct key_rows alerts_page_keys(void);
struct wish alerts_page_key(struct alerts_page *p, struct input in);
void alerts_page_draw(struct alerts_page *p, struct canvas *c);

/* Shows a list (again). first: from its first row on; else an answer that is being
 * typed stays. */
void alerts_page_show(struct alerts_page *p, const struct alerts *alerts, bool first);
void alerts_page_free(struct alerts_page *p);

#endif
