/* sheet.h - the weekly scouting sheet set for a printer of 10 characters and 6 lines
 * an inch, margins left free. */
#ifndef PAPER_SHEET_H
#define PAPER_SHEET_H

#include "answers/sheet.h"
#include "base/buf.h"

enum paper { PAPER_A4, PAPER_LETTER };

enum {
	SHEET_COLS = 78,
	SHEET_LINES_A4 = 64,
	SHEET_LINES_LETTER = 60,
};

struct sheet_form {
	enum paper paper;
	bool blank;                  /* to carry and write on; else filled in */
	bool utf8;                   /* else ASCII */
	const char *caution_short;   /* at the foot of every page */
	const char *const *cautions; /* on the last page; ends with NULL */
};

/* Adds the pages of one farm, each of exactly the paper's lines, a form feed between
 * two. Every page has its heading and foot. A trap is never split between pages. */
void paper_sheet(const struct sheet *s, const struct sheet_form *form, struct buf *out);

#endif
