/* ruled.h - inside src/paper: a table on a PDF's pages, its columns as wide as what is
 * in them while there is room, its titles on each page. */
#ifndef PAPER_RULED_H
#define PAPER_RULED_H

#include "leaf.h"

enum { RULED_COLUMNS_MAX = 14 };

struct ruled {
	struct {
		const char *title;    /* borrowed */
		enum pdf_align align; /* PDF_LEFT: narrowed where there is no room */
		double w;             /* mm */
		size_t span; /* columns under this title; 0: under one before */
	} column[RULED_COLUMNS_MAX];
	size_t n;
	double gap;    /* between two columns, mm; 0: the usual */
	double points; /* of its type; 0: as leaf_plain */
};

void ruled_column(struct ruled *r, const char *title, enum pdf_align align);
/* n columns under one title, all set to the right. */
void ruled_columns(struct ruled *r, const char *title, size_t n);
/* Widens the columns to what a row of cells wants. */
void ruled_note(struct ruled *r, struct pdf *p, const char *const *cells);
/* Narrows the widest columns until all have room on the leaf, or sets them further
 * apart where there is more. What does not fit takes more lines where its column is set
 * to the left; else it is shrunk, then cut. */
void ruled_fit(struct ruled *r, const struct leaf *l);
/* Begins the table: its titles, now and on each page, until ruled_end. Its first row
 * stays with them if it is `h` mm high. */
void ruled_begin(const struct ruled *r, struct leaf *l, double h);
void ruled_end(struct leaf *l);
/* A row, all bold or not, at l->y, which moves below it; goes to no new page. */
void ruled_row(
	const struct ruled *r, struct leaf *l, bool bold, const char *const *cells);
/* Of a row of one line, as large as rows are; of one with these cells. */
double ruled_row_height(struct leaf *l);
double ruled_height(
	const struct ruled *r, struct leaf *l, bool bold, const char *const *cells);
/* Where a column begins, mm from the page's left edge. */
double ruled_x(const struct ruled *r, const struct leaf *l, size_t column);

#endif
