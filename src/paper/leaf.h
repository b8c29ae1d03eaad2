/* leaf.h - inside src/paper: the pages of a PDF's part filled from the top down, each
 * with its heading and foot. */
#ifndef PAPER_LEAF_H
#define PAPER_LEAF_H

#include "paper/pdf_lines.h"

struct leaf_form {
	const char *title;   /* at the top of each page, large */
	const char *below;   /* in a line below it; "" = none */
	const char *legend;  /* at the foot of each page: what marks mean; "" */
	const char *caution; /* below the legend; "" */
};

struct leaf {
	struct pdf *pdf;
	const struct leaf_form *form;
	struct pdf_box body; /* what heading, foot and margins leave free */
	double y;            /* where the next thing begins, mm */
	int page;            /* of the part, from 1 on */
	/* Sets a table's titles on top of a new page while it goes on; NULL: none. */
	void (*titles)(struct leaf *l, const void *table);
	const void *table;
};

/* Sizes of type that all pages share. */
extern const struct pdf_type leaf_plain, leaf_bold, leaf_small, leaf_small_bold;

/* Begins a part with its first page. */
void leaf_begin(struct leaf *l, struct pdf *p, const struct leaf_form *form);
/* Goes on to a new page unless `h` mm are left on this one. */
void leaf_need(struct leaf *l, double h);
double leaf_left(const struct leaf *l);
/* A gap, but not at the top of a page. */
void leaf_gap(struct leaf *l, double h);
/* A heading that stays with the `h` mm after it. */
void leaf_heading(struct leaf *l, const char *text, double h);
/* A paragraph `indent` mm from the left; never split between two pages. */
void leaf_words(
	struct leaf *l, double indent, const struct pdf_type *type, const char *text);
/* A line right across. */
void leaf_rule(struct leaf *l, double width);
/* From here on a table with these titles, which are set at once. titles NULL: it
 * ends. */
void leaf_table(struct leaf *l, void (*titles)(struct leaf *l, const void *table),
	const void *table);

#endif
