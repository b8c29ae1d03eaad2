/* start_page.h - no book yet: three ways on. */
#ifndef SCREEN_START_PAGE_H
#define SCREEN_START_PAGE_H

#include "screen/line.h"
#include "screen/page.h"

struct start_page {
	size_t picked;
	bool asking; /* for the path of a file, in the message line */
	char path[NOTE_BYTES];
	size_t cursor;
	const char *book; /* where it will be kept; borrowed */
	bool begun;       /* there is a farm already: typing in goes on from there */
	struct message message;
};

struct key_rows start_page_keys(void);
struct wish start_page_key(struct start_page *p, struct input in);
void start_page_draw(struct start_page *p, struct canvas *c);

#endif
