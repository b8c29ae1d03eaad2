/* narrow.h - a list that shows only what contains the letters typed. */
#ifndef SCREEN_NARROW_H
#define SCREEN_NARROW_H

#include "base/sizes.h"
#include "screen/line.h"
#include "screen/prompt.h"

enum { NARROW_KEYS = 32 }; /* at least as many as a page with a list has */

struct narrow {
	bool typing; /* keys go into the text; else they are the page's */
	char text[NAME_BYTES];
	size_t at;
	struct key_row keys[NARROW_KEYS]; /* where narrow_keys puts them */
};

/* True if `text` contains `part`, in either case of letters; "" is in every text. */
bool narrow_contains(const char *text, const char *part);
/* True if it begins with it. */
bool narrow_begins(const char *text, const char *part);

/* Starts typing, or goes on with what is there. */
void narrow_start(struct narrow *n);
/* Ends it and shows all again. */
void narrow_end(struct narrow *n);
/* While it is typed: characters and editing go into the text, Esc ends it. False: the
 * key is for the page (Enter, Up ...). *changed: other rows are to be shown. */
bool narrow_key(struct narrow *n, struct input in, struct message *m, bool *changed);

/* What is looked for and how many rows have it, for the message line; nothing when the
 * list is not narrowed. Returns the column of the cursor in that line, -1: none. */
int narrow_say(const struct narrow *n, size_t shown, size_t all, struct message *m);
/* The keys of the key line: those that are the page's give way while it is typed, and
 * as long as the list is narrowed Esc shows all. Valid until the next call. */
struct key_rows narrow_keys(struct narrow *n, size_t shown, struct key_rows page);
/* Adds " · 3 of 40" to the list's title while it is narrowed. */
void narrow_title(
	const struct narrow *n, size_t shown, size_t all, char *title, size_t size);

#endif
