/* pdf_lines.h - lines, areas and marks on the pages of a PDF, in millimetres as in
 * pdf.h. */
#ifndef PAPER_PDF_LINES_H
#define PAPER_PDF_LINES_H

#include "paper/pdf.h"

#include <stddef.h>

enum pdf_dash { PDF_SOLID, PDF_DASHED, PDF_DOTTED, PDF_DASH_DOT };

struct pdf_pen {
	double width; /* mm; from 0.15 a photocopy keeps it */
	enum pdf_dash dash;
	double grey; /* 0 black .. 1 white */
};

void pdf_line(
	struct pdf *p, struct pdf_at from, struct pdf_at to, const struct pdf_pen *pen);
/* Through n points; n < 2 draws nothing. */
void pdf_lines(struct pdf *p, const struct pdf_at *points, size_t n,
	const struct pdf_pen *pen);
void pdf_frame(struct pdf *p, struct pdf_box box, const struct pdf_pen *pen);

/* All but PDF_TINT are lines or dots of black, which a photocopy keeps. */
enum pdf_fill {
	PDF_BLACK,
	PDF_WHITE,
	PDF_TINT,    /* a light grey that may vanish: for what a line bounds too */
	PDF_HATCHED, /* lines from lower left to upper right */
	PDF_CROSSED, /* lines both ways */
	PDF_SPOTTED, /* dots */
};

void pdf_fill(struct pdf *p, struct pdf_box box, enum pdf_fill fill);
/* The area that n points go round; n < 3 fills nothing. */
void pdf_area(struct pdf *p, const struct pdf_at *points, size_t n, enum pdf_fill fill);

enum pdf_mark {
	PDF_DOT,
	PDF_RING,
	PDF_BLOCK,
	PDF_SQUARE,
	PDF_UP, /* triangles: solid, then open */
	PDF_UP_OPEN,
	PDF_DOWN,
	PDF_DOWN_OPEN,
	PDF_DIAMOND,
	PDF_PLUS,
	PDF_TIMES,
};

/* `size` mm across, its middle at `at`. Open marks are white inside. */
void pdf_put_mark(struct pdf *p, struct pdf_at at, enum pdf_mark mark, double size);

/* What is drawn until pdf_unclip shows within the box only; may be nested, and is ended
 * before the page is. */
void pdf_clip(struct pdf *p, struct pdf_box box);
void pdf_unclip(struct pdf *p);

#endif
