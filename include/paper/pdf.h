/* pdf.h - pages of a PDF and text on them, black on white; pdf_lines.h draws.
 * Places and sizes are millimetres from the page's upper left corner, y downwards; text
 * is in points. What means something is black; grey only sets back what could be missed
 * on a bad photocopy. src/paper/pdf*.c alone know Cairo and Pango; a build without them
 * has pdf_none.c in their place, where pdf_make fails and nothing draws. */
#ifndef PAPER_PDF_H
#define PAPER_PDF_H

#include "base/buf.h"
#include "base/err.h"
#include "paper/size.h"

#include <stdbool.h>
#include <stdint.h>

struct pdf;

struct pdf_at {
	double x, y;
};

struct pdf_box {
	double x, y, w, h;
};

struct pdf_job {
	const char *title, *author; /* in the file's properties; "" = none */
	int32_t day; /* its date of creation: the same answers give the same bytes */
	enum paper paper;
	bool landscape;
	/* Begins the first page and draws them all. It is called twice, the first time
	 * to learn how many pages there are, and must do the same both times. */
	void (*draw)(struct pdf *p, const void *what);
	const void *what;
	/* Filled by pdf_make: how many pages; how many characters stand as a box with
	 * their number, since no font of this machine has them. */
	int pages, without_font;
};

/* False: this build writes text only. */
bool pdf_built_in(void);
/* Adds the file's bytes to *out. ERR_USAGE: this build writes text only; ERR_BOOK: the
 * machine has no font at all, or Cairo gave up. *out is as before then. */
bool pdf_make(struct pdf_job *job, struct buf *out, struct err *e);

/* A page, a part. A part (a farm's sheet) counts its pages from 1. */
void pdf_begin_part(struct pdf *p);
void pdf_begin_page(struct pdf *p);
/* The page's size. */
struct pdf_box pdf_page(const struct pdf *p);
/* "page 2 of 3" of the part: words for the foot, until the next page begins. */
const char *pdf_page_words(const struct pdf *p);

enum pdf_align { PDF_LEFT, PDF_CENTRE, PDF_RIGHT };
enum pdf_fit {
	PDF_WRAP,   /* lines of the box's width; where its height (0: any) ends, so do
		     * they, with an ellipsis */
	PDF_CUT,    /* one line, cut with an ellipsis */
	PDF_SHRINK, /* one line, down to half the size, then cut */
};

struct pdf_type {
	double points;
	bool bold, mono; /* mono: all characters as wide; else a sans serif */
	enum pdf_align align;
	enum pdf_fit fit;
	bool middle; /* between the box's top and foot; else at its top */
	double grey; /* 0 black .. 1 white */
};

/* Sets UTF-8 of any script into the box and returns the height that it took, in mm; ""
 * takes none. Control characters and torn bytes stand as '?'. A script that
 * runs to the left does so within its line, which begins where any other does. */
double pdf_text(struct pdf *p, struct pdf_box box, const struct pdf_type *type,
	const char *text);
/* The same from the foot of the box to its top, for the name of an axis. */
void pdf_text_upward(struct pdf *p, struct pdf_box box, const struct pdf_type *type,
	const char *text);
/* What pdf_text would return for a box `w` wide and of any height. */
double pdf_text_height(
	struct pdf *p, double w, const struct pdf_type *type, const char *text);
/* Of the text in one line, neither shrunk nor cut. */
double pdf_text_width(struct pdf *p, const struct pdf_type *type, const char *text);

#endif
