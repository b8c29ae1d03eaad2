#include "leaf.h"

/* The left margin leaves room for punched holes, the others for what a printer cannot
 * reach (common practice, no source). */
static const double margin_left = 18, margin_right = 12, margin_top = 12,
		    margin_foot = 10;
static const double page_words_width = 34, line_gap = 0.6;

const struct pdf_type leaf_plain = { .points = 9 };
const struct pdf_type leaf_bold = { .points = 9, .bold = true };
const struct pdf_type leaf_small = { .points = 7.5 };
const struct pdf_type leaf_small_bold = { .points = 8, .bold = true };

static const struct pdf_type title_type = { .points = 14, .bold = true };
static const struct pdf_type number_type = {
	.points = 9, .bold = true, .align = PDF_RIGHT, .fit = PDF_SHRINK
};
static const struct pdf_pen rule_pen = { .width = 0.3 };

static void set_head(struct leaf *l)
{
	struct pdf_box box = { l->body.x, margin_top, l->body.w, 0 };

	box.y += pdf_text(l->pdf, box, &title_type, l->form->title);
	box.y += pdf_text(l->pdf, box, &leaf_plain, l->form->below) + 1;
	l->y = box.y;
	leaf_rule(l, rule_pen.width);
	l->body.y = l->y + 2;
}

/* From below: the words of the page beside the caution, the legend, a rule. */
static void set_foot(struct leaf *l)
{
	struct pdf_box page = pdf_page(l->pdf);
	double w = l->body.w - page_words_width;
	double caution = pdf_text_height(l->pdf, w, &leaf_small, l->form->caution);
	double number = pdf_text_height(l->pdf, w, &number_type, "1");
	double last = caution > number ? caution : number;
	double y = page.h - margin_foot - last;

	pdf_text(l->pdf, (struct pdf_box){ l->body.x, y, w, 0 }, &leaf_small,
		l->form->caution);
	pdf_text(l->pdf,
		(struct pdf_box){
			l->body.x + w, y + last - number, page_words_width, 0 },
		&number_type, pdf_page_words(l->pdf));
	y -= pdf_text_height(l->pdf, l->body.w, &leaf_small, l->form->legend) +
	     line_gap;
	pdf_text(l->pdf, (struct pdf_box){ l->body.x, y, l->body.w, 0 }, &leaf_small,
		l->form->legend);
	y -= 1;
	pdf_line(l->pdf, (struct pdf_at){ l->body.x, y },
		(struct pdf_at){ l->body.x + l->body.w, y }, &rule_pen);
	l->body.h = y - 1 - l->body.y;
}

static void begin_page(struct leaf *l)
{
	struct pdf_box page = pdf_page(l->pdf);

	pdf_begin_page(l->pdf);
	l->page++;
	l->body.x = margin_left;
	l->body.w = page.w - margin_left - margin_right;
	set_head(l);
	set_foot(l);
	l->y = l->body.y;
	if (l->titles)
		l->titles(l, l->table);
}

void leaf_begin(struct leaf *l, struct pdf *p, const struct leaf_form *form)
{
	*l = (struct leaf){ .pdf = p, .form = form };
	pdf_begin_part(p);
	begin_page(l);
}

double leaf_left(const struct leaf *l)
{
	return l->body.y + l->body.h - l->y;
}

void leaf_need(struct leaf *l, double h)
{
	if (h > leaf_left(l))
		begin_page(l);
}

void leaf_gap(struct leaf *l, double h)
{
	if (l->y > l->body.y)
		l->y += h;
}

void leaf_heading(struct leaf *l, const char *text, double h)
{
	static const struct pdf_type type = { .points = 10.5, .bold = true };

	h += pdf_text_height(l->pdf, l->body.w, &type, text);
	leaf_gap(l, 3);
	leaf_need(l, h);
	l->y += pdf_text(l->pdf, (struct pdf_box){ l->body.x, l->y, l->body.w, 0 },
			&type, text) +
		line_gap;
}

void leaf_words(
	struct leaf *l, double indent, const struct pdf_type *type, const char *text)
{
	double w = l->body.w - indent;

	leaf_need(l, pdf_text_height(l->pdf, w, type, text));
	l->y += pdf_text(l->pdf, (struct pdf_box){ l->body.x + indent, l->y, w, 0 },
			type, text) +
		line_gap;
}

void leaf_rule(struct leaf *l, double width)
{
	const struct pdf_pen pen = { .width = width };

	pdf_line(l->pdf, (struct pdf_at){ l->body.x, l->y },
		(struct pdf_at){ l->body.x + l->body.w, l->y }, &pen);
}

void leaf_table(struct leaf *l, void (*titles)(struct leaf *l, const void *table),
	const void *table)
{
	l->titles = titles;
	l->table = table;
	if (titles)
		titles(l, table);
}
