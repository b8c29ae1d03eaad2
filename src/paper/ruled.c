#include "ruled.h"

#include <assert.h>

static const double gap_usual = 2.5, gap_most = 5, narrow_step = 0.5, least = 12;
static const double title_rule = 0.3, title_gap = 1;

void ruled_column(struct ruled *r, const char *title, enum pdf_align align)
{
	assert(r->n < RULED_COLUMNS_MAX);
	if (r->gap == 0)
		r->gap = gap_usual;
	r->column[r->n].title = title;
	r->column[r->n].align = align;
	r->column[r->n].span = 1;
	r->column[r->n++].w = 0;
}

void ruled_columns(struct ruled *r, const char *title, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		ruled_column(r, i ? "" : title, PDF_RIGHT);
		r->column[r->n - 1].span = i ? 0 : n;
	}
}

static void widen(struct ruled *r, size_t i, double w)
{
	if (w > r->column[i].w)
		r->column[i].w = w;
}

/* Any cell may be bold, and titles are. */
void ruled_note(struct ruled *r, struct pdf *p, const char *const *cells)
{
	for (size_t i = 0; i < r->n; i++) {
		if (r->column[i].span == 1)
			widen(r, i, pdf_text_width(p, &leaf_bold, r->column[i].title));
		widen(r, i, pdf_text_width(p, &leaf_bold, cells[i]));
	}
}

static double width(const struct ruled *r)
{
	double w = -r->gap;

	for (size_t i = 0; i < r->n; i++)
		w += r->column[i].w + r->gap;
	return w;
}

/* The widest column of texts that can still be narrower; r->n: none. */
static size_t widest(const struct ruled *r)
{
	size_t found = r->n;

	for (size_t i = 0; i < r->n; i++)
		if (r->column[i].align == PDF_LEFT && r->column[i].w > least &&
			(found == r->n || r->column[i].w > r->column[found].w))
			found = i;
	return found;
}

/* Columns under one title are as wide as the widest of them. */
static void level(struct ruled *r, size_t first)
{
	double most = 0;

	for (size_t i = first; i < first + r->column[first].span; i++)
		most = r->column[i].w > most ? r->column[i].w : most;
	for (size_t i = first; i < first + r->column[first].span; i++)
		r->column[i].w = most;
}

void ruled_fit(struct ruled *r, const struct leaf *l)
{
	size_t i;

	for (i = 0; i < r->n; i++)
		level(r, i);
	while (width(r) > l->body.w && (i = widest(r)) < r->n)
		r->column[i].w -= narrow_step;
	if (r->n > 1)
		r->gap += (l->body.w - width(r)) / (double)(r->n - 1);
	if (r->gap > gap_most)
		r->gap = gap_most;
	if (r->gap < gap_usual)
		r->gap = gap_usual;
}

double ruled_row_height(struct leaf *l)
{
	return pdf_text_height(l->pdf, l->body.w, &leaf_bold, "1");
}

/* Of a title's columns together. */
static double span_width(const struct ruled *r, size_t first)
{
	double w = -r->gap;

	for (size_t i = first; i < first + r->column[first].span; i++)
		w += r->column[i].w + r->gap;
	return w;
}

static double set_cell(struct leaf *l, struct pdf_box box, const struct pdf_type *type,
	const char *text)
{
	struct pdf_type cell = *type;

	cell.fit = PDF_SHRINK;
	return pdf_text(l->pdf, box, &cell, text);
}

static void set_titles(struct leaf *l, const void *table)
{
	const struct ruled *r = table;
	struct pdf_box box = { l->body.x, l->y, 0, 0 };

	for (size_t i = 0; i < r->n; i++) {
		struct pdf_type type = leaf_bold;

		type.align = r->column[i].align;
		box.w = span_width(r, i);
		if (r->column[i].span)
			set_cell(l, box, &type, r->column[i].title);
		box.x += r->column[i].w + r->gap;
	}
	l->y += ruled_row_height(l);
	leaf_rule(l, title_rule);
	l->y += title_gap;
}

void ruled_begin(const struct ruled *r, struct leaf *l, double h)
{
	leaf_need(l, ruled_row_height(l) + title_gap + h);
	leaf_table(l, set_titles, r);
}

void ruled_end(struct leaf *l)
{
	leaf_table(l, NULL, NULL);
}

void ruled_row(
	const struct ruled *r, struct leaf *l, bool bold, const char *const *cells)
{
	double x = l->body.x, most = ruled_row_height(l);

	for (size_t i = 0; i < r->n; i++) {
		struct pdf_box box = { x, l->y, r->column[i].w, 0 };
		struct pdf_type type = bold ? leaf_bold : leaf_plain;

		type.align = r->column[i].align;
		double h = set_cell(l, box, &type, cells[i]);
		most = h > most ? h : most;
		x += r->column[i].w + r->gap;
	}
	l->y += most;
}
