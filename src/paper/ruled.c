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

static struct pdf_type type_of(const struct ruled *r, size_t column, bool bold)
{
	struct pdf_type type = bold ? leaf_bold : leaf_plain;

	type.points = r->points > 0 ? r->points : type.points;
	type.align = r->column[column].align;
	return type;
}

/* Any cell may be bold, and titles are. */
void ruled_note(struct ruled *r, struct pdf *p, const char *const *cells)
{
	for (size_t i = 0; i < r->n; i++) {
		struct pdf_type type = type_of(r, i, true);

		if (r->column[i].span == 1)
			widen(r, i, pdf_text_width(p, &type, r->column[i].title));
		widen(r, i, pdf_text_width(p, &type, cells[i]));
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
	const double gap_least = r->gap;
	size_t i;

	for (i = 0; i < r->n; i++)
		level(r, i);
	while (width(r) > l->body.w && (i = widest(r)) < r->n)
		r->column[i].w -= narrow_step;
	if (r->n > 1)
		r->gap += (l->body.w - width(r)) / (double)(r->n - 1);
	if (r->gap > gap_most)
		r->gap = gap_most;
	if (r->gap < gap_least)
		r->gap = gap_least;
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

static void set_titles(struct leaf *l, const void *table)
{
	const struct ruled *r = table;
	struct pdf_box box = { l->body.x, l->y, 0, 0 };

	for (size_t i = 0; i < r->n; i++) {
		struct pdf_type type = type_of(r, i, true);

		type.fit = PDF_SHRINK;
		box.w = span_width(r, i) + 0.1; /* as measured, and no rounding */
		if (r->column[i].span)
			pdf_text(l->pdf, box, &type, r->column[i].title);
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

double ruled_x(const struct ruled *r, const struct leaf *l, size_t column)
{
	double x = l->body.x;

	for (size_t i = 0; i < column; i++)
		x += r->column[i].w + r->gap;
	return x;
}

/* What may take more lines is set a hair wider than it was measured, so that it does
 * not. */
static double cell_of(
	const struct ruled *r, size_t column, bool bold, struct pdf_type *type)
{
	static const double hair = 0.1;

	*type = type_of(r, column, bold);
	type->fit = type->align == PDF_LEFT ? PDF_WRAP : PDF_SHRINK;
	return r->column[column].w + (type->fit == PDF_WRAP ? hair : 0);
}

double ruled_height(
	const struct ruled *r, struct leaf *l, bool bold, const char *const *cells)
{
	double most = 0;

	for (size_t i = 0; i < r->n; i++) {
		struct pdf_type type;
		double w = cell_of(r, i, bold, &type);
		double h = pdf_text_height(l->pdf, w, &type, cells[i]);
		most = h > most ? h : most;
	}
	return most;
}

void ruled_row(
	const struct ruled *r, struct leaf *l, bool bold, const char *const *cells)
{
	for (size_t i = 0; i < r->n; i++) {
		struct pdf_box box = { ruled_x(r, l, i), l->y, 0, 0 };
		struct pdf_type type;

		box.w = cell_of(r, i, bold, &type);
		pdf_text(l->pdf, box, &type, cells[i]);
	}
	l->y += ruled_height(r, l, bold, cells);
}
