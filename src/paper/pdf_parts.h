/* pdf_parts.h - inside src/paper/pdf*.c: a PDF while it is drawn. */
#ifndef PAPER_PDF_PARTS_H
#define PAPER_PDF_PARTS_H

#include "paper/pdf_lines.h"

#include <pango/pangocairo.h>

enum { PAGE_WORDS_BYTES = 80 };

struct pdf {
	const struct pdf_job *job;
	struct pdf_box page;
	cairo_t *cairo;
	PangoContext *context; /* of the fonts */
	PangoLayout *layout;   /* set anew for each text */
	int *part_pages;       /* how many each part has; owned */
	size_t parts, parts_cap;
	size_t part;     /* the one being drawn; valid while part_page > 0 */
	int part_page;   /* 1..; 0: no page of the part has begun */
	int pages;       /* begun in this round */
	bool has_counts; /* part_pages is of a round before */
	int without_font;
	char words[PAGE_WORDS_BYTES];
};

/* Millimetres to Cairo's unit, and Pango's units to millimetres. */
double pdf_units(double mm);
double pdf_mm(int pango);

#endif
