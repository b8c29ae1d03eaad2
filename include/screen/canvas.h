/* canvas.h - a page as cells, before any terminal. canvas_text is the only way to put
 * text on a page: it clips, pads, measures double-width and combining characters and
 * turns control bytes into '?'. */
#ifndef SCREEN_CANVAS_H
#define SCREEN_CANVAS_H

#include "base/buf.h"

#include <stdbool.h>
#include <stdint.h>

/* What a text means. The terminal makes it bold, reverse or underlined first and adds
 * colour last, so that one colour is enough. */
enum ink {
	INK_PLAIN,
	INK_TITLE,  /* bold */
	INK_PICKED, /* reverse: where the hand is */
	INK_FIELD,  /* reverse and bold: what is being typed */
	INK_OVER,   /* reverse and bold (red) */
	INK_UNSURE, /* underlined (yellow): unknown, doubtful, overdue */
	INK_QUIET,  /* plain (dim where dim is readable): rules, labels, key line */
	INK_FAULT,  /* reverse (red): an error in the message line */
	INK_COUNT
};

enum { CELL_CHARS = 3 }; /* a character and up to two combining ones */

struct cell {
	uint32_t ch[CELL_CHARS]; /* ch[0] = 0: right half of a double-width character */
	uint8_t ink;             /* enum ink */
};

struct canvas {
	struct cell *cells; /* rows * cols, owned */
	int rows, cols;
	int cursor_row, cursor_col; /* on the focused item: screen readers follow it */
	bool cursor_shown;
};

/* Any size from 1x1; smaller counts as 1. Empties the canvas. Zero-initialise before
 * the first call. */
void canvas_size(struct canvas *c, int rows, int cols);
void canvas_clear(struct canvas *c);
void canvas_free(struct canvas *c);

/* Writes utf8 at row, col in a field of `width` columns (0 = to the right edge, no
 * padding; negative: set to the right), padded with blanks in the same ink, cut
 * between characters. Parts outside the canvas are left out. Returns the column after
 * the field (width 0: after the text). */
int canvas_text(
	struct canvas *c, int row, int col, int width, enum ink ink, const char *utf8);
int canvas_textf(struct canvas *c, int row, int col, int width, enum ink ink,
	const char *fmt, ...) __attribute__((format(printf, 6, 7)));

/* A line of U+2500 across the whole row. */
void canvas_line(struct canvas *c, int row);

void canvas_cursor(struct canvas *c, int row, int col);

/* The canvas as text, a line a row, trailing blanks dropped. With inks: a second block
 * of lines after a line of dashes, one letter a cell (' ' plain, t p f o u q !). */
void canvas_dump(const struct canvas *c, bool inks, struct buf *out);

/* The same character for a terminal that shows ASCII only: flight-line blocks become
 * digits 1..8, lines '-', the middle dot '.', others '?'. */
uint32_t canvas_ascii(uint32_t ch);

#endif
