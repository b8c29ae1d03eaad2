/* line.h - one line of text under the hand: any characters, in a window that may be
 * narrower than it. */
#ifndef SCREEN_LINE_H
#define SCREEN_LINE_H

#include "screen/page.h"

struct line {
	char *text;  /* borrowed; UTF-8 */
	size_t size; /* of text in bytes, with the NUL */
	size_t at;   /* bytes in front of the cursor */
	bool fresh;  /* the first character typed replaces the whole text */
};

/* The hand comes to a text; the cursor goes behind it. fresh: what is typed replaces
 * it, and Left, Right, Home, End, Backspace or Delete edit it. */
struct line line_open(char *text, size_t size, bool fresh);

/* Types, moves or erases; a character goes with the combining ones on it. False: the
 * key is for the page. A refusal stands in *m: control characters, no more room. */
bool line_key(struct line *l, struct input in, struct message *m);

struct line_box {
	int row, col, width;
	enum ink ink;
};
/* Draws the part round the cursor in `width` columns; < or > stands at an end where
 * there is more. Returns the column of the cursor, which is within the width. */
int line_draw(const struct line *l, struct canvas *c, struct line_box box);

/* Draws it over a whole row behind its prompt, which goes where there is no room for
 * both, and sets the cursor. */
void line_ask(const struct line *l, struct canvas *c, int row, const char *prompt);

#endif
