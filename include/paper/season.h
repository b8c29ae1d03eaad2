/* season.h - a farm's season on paper: as pages of a PDF with charts and a map, and as
 * plain text. */
#ifndef PAPER_SEASON_H
#define PAPER_SEASON_H

#include "answers/season_page.h"
#include "base/buf.h"
#include "base/err.h"
#include "paper/size.h"

struct season_form {
	enum paper paper;            /* of the PDF */
	const char *caution_short;   /* at the foot of every page */
	const char *const *cautions; /* at the end; ends with NULL */
	const char *notice; /* before the days in each heading; NULL or "": none */
};

/* No line wider than `cols` (40..) nor than 78. Block characters in the flight lines
 * that out_text or paper_ascii turn into digits. */
void paper_season(const struct season_page *p, const struct season_form *form, int cols,
	struct buf *out);

struct season_set {
	const struct season_page *items; /* of one farm each */
	size_t n;
	int32_t day;      /* that they were made for */
	int without_font; /* characters that stand as boxes: see paper/pdf.h */
};

/* Adds the PDF of them all: each begins on a new page and counts its pages. Nothing is
 * cut; what has no room goes on on the next page. Fails as pdf_make does. */
bool paper_seasons_pdf(struct season_set *set, const struct season_form *form,
	struct buf *out, struct err *e);

#endif
