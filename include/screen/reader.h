/* reader.h - texts wrapped to the width of a page. */
#ifndef SCREEN_READER_H
#define SCREEN_READER_H

#include "screen/canvas.h"

/* Bytes of the start of s that make one line of `cols` columns: cut at a blank if
 * there is one, else between characters. At least one character unless s is "". */
size_t reader_wrap(const char *s, int cols);
/* The same for a text that is shown in one line only: of parts with commas between
 * them whole ones while one fits, and no comma at the end. */
size_t reader_cut(const char *s, int cols);
/* Lines that s takes; "" takes one. */
size_t reader_lines(const char *s, int cols);
/* Draws s wrapped, from row, col, in at most `rows` rows of `cols` columns; the rows
 * before `skip` are left out. Returns the rows drawn. */
struct reader_box {
	int row, col, cols, rows;
	size_t skip;
};
int reader_text(struct canvas *c, struct reader_box box, enum ink ink, const char *s);

struct paragraph {
	enum ink ink;
	int indent;       /* columns */
	const char *lead; /* in front of the indent in the first line; NULL: none */
	const char *text;
};

/* Draws paragraphs in rows first..last, from line *top on, which is kept in bounds.
 * Returns the number of lines of all. */
size_t reader_draw(struct canvas *c, int first, int last, size_t *top,
	const struct paragraph *p, size_t n);

/* Marks the rule below row `last` when `below` lines are still to be read. */
void reader_more(struct canvas *c, int last, size_t below);

#endif
