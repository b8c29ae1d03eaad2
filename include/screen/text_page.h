/* text_page.h - lines to read: what changed in a record, why a file was refused. */
#ifndef SCREEN_TEXT_PAGE_H
#define SCREEN_TEXT_PAGE_H

#include "screen/page.h"

struct text_page {
	char title[256];
	const char *text; /* paragraphs, a newline between two; borrowed */
	size_t top;
	int rows; /* of the last frame */
	struct message message;
};

struct key_rows text_page_keys(void);
struct wish text_page_key(struct text_page *p, struct input in);
void text_page_draw(struct text_page *p, struct canvas *c);

#endif
