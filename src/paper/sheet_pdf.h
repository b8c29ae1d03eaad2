/* sheet_pdf.h - inside src/paper: the parts of a sheet on a PDF's pages. */
#ifndef PAPER_SHEET_PDF_H
#define PAPER_SHEET_PDF_H

#include "leaf.h"
#include "paper/sheet.h"
#include "ruled.h"

void sheet_pdf_filled(const struct sheet *s, struct leaf *l);
void sheet_pdf_carry(const struct sheet *s, struct leaf *l);

/* Who may enter and pick which block from when; nothing when nothing is barred. */
void sheet_pdf_clocks(const struct sheet *s, struct leaf *l);
/* Traps (unless they say so themselves, further down), block means and hot blocks
 * needing attention. */
void sheet_pdf_needs(const struct sheet *s, bool traps, struct leaf *l);
void sheet_pdf_bring(const struct sheet *s, struct leaf *l);

/* A row of a table, what is said below it, and a fine rule; all on one page. */
struct pdf_entry {
	const char *const *cells;
	const char *below; /* "" = none */
	bool bold;
};
void sheet_pdf_entry(
	const struct ruled *r, struct leaf *l, const struct pdf_entry *entry);

#endif
