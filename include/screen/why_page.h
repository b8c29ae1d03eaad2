/* why_page.h - texts to read: why a verdict, and the help of a page. */
#ifndef SCREEN_WHY_PAGE_H
#define SCREEN_WHY_PAGE_H

#include "answers/why.h"
#include "screen/answering.h"

struct why_page {
	const struct why *why; /* borrowed */
	const char *right;     /* set to the right of the title; borrowed */
	/* That what it is about is over, or was and is answered; borrowed; NULL. */
	const struct alert *alert;
	struct answering answering;
	size_t top;
	struct message message;
	int rows; /* of the text in the last frame */
};

/* WANT_FLIGHT, WANT_DIARY, WANT_ANSWER: of what the page is about, which the loop
 * knows. */
struct key_rows why_page_keys(void);
struct wish why_page_key(struct why_page *p, struct input in);
void why_page_draw(struct why_page *p, struct canvas *c);

/* Draws the keys of a page as a help page: `title` names the page. */
struct help_page {
	const char *title;
	struct key_rows keys;
	size_t top;
	struct message message;
	int rows;
	const char *const *notes; /* of the page: run_page_notes() ...; may be NULL */
};
struct key_rows help_page_keys(void);
struct wish help_page_key(struct help_page *p, struct input in);
void help_page_draw(struct help_page *p, struct canvas *c);

#endif
