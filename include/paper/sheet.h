/* sheet.h - the weekly scouting sheet: as text, set for a printer of 10 characters and
 * 6 lines an inch, margins left free; and as a PDF. */
#ifndef PAPER_SHEET_H
#define PAPER_SHEET_H

#include "answers/sheet.h"
#include "base/buf.h"
#include "base/err.h"
#include "paper/size.h"

enum {
	SHEET_COLS = 78,
	SHEET_LINES_A4 = 64,
	SHEET_LINES_LETTER = 60,
};

struct sheet_form {
	enum paper paper;
	bool blank;                  /* to carry and write on; else filled in */
	bool utf8;                   /* of the text; else ASCII */
	const char *caution_short;   /* at the foot of every page */
	const char *const *cautions; /* on the last page; ends with NULL */
	const char *notice; /* before the day in each heading; NULL or "": none */
};

/* Adds the pages of one farm, each of exactly the paper's lines, a form feed between
 * two. Every page has its heading and foot. A trap is never split between pages. */
void paper_sheet(const struct sheet *s, const struct sheet_form *form, struct buf *out);

struct sheet_set {
	const struct sheet *items; /* of one farm each */
	size_t n;
	int32_t day;      /* that they were made for */
	int without_font; /* characters that stand as boxes: see paper/pdf.h */
};

/* Adds the PDF of them all: each begins on a new page and counts its pages. The same
 * heading, foot and words as the text's; titles of a table stand on each page. Fails
 * as pdf_make does. */
bool paper_sheets_pdf(struct sheet_set *set, const struct sheet_form *form,
	struct buf *out, struct err *e);

#endif
