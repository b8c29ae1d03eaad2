/* pdf_text.c - text into boxes. */
#include "base/text.h"
#include "pdf_parts.h"

#include <string.h>

static const double shrink_least = 0.5, shrink_step = 0.05;

/* Adds the text with a '?' for what must not be set. */
static void add_clean(const char *text, struct buf *out)
{
	size_t n = strlen(text);

	buf_add(out, "");
	for (size_t at = 0, step; at < n; at += step) {
		uint32_t cp;

		step = text_decode(text + at, n - at, &cp);
		if (cp == 0xFFFD || text_control(cp))
			buf_add(out, "?");
		else
			buf_add_n(out, text + at, step);
	}
}

static void set_font(struct pdf *p, const struct pdf_type *type, double points)
{
	PangoFontDescription *font = pango_font_description_new();

	pango_font_description_set_family(font, type->mono ? "Monospace" : "Sans");
	pango_font_description_set_weight(
		font, type->bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
	pango_font_description_set_absolute_size(font, points * PANGO_SCALE);
	pango_layout_set_font_description(p->layout, font);
	pango_font_description_free(font);
}

/* A name broken between two lines gets no hyphen that it does not have, and no letters
 * are joined, since "flight" would not be found then. */
static void keep_as_written(struct pdf *p)
{
	PangoAttrList *list = pango_attr_list_new();

	pango_attr_list_insert(list, pango_attr_insert_hyphens_new(FALSE));
	pango_attr_list_insert(
		list, pango_attr_font_features_new("liga=0, clig=0, dlig=0"));
	pango_layout_set_attributes(p->layout, list);
	pango_attr_list_unref(list);
}

static int pango_of(double mm)
{
	return (int)(pdf_units(mm) * PANGO_SCALE + 0.5);
}

/* A layout of the text in one line. */
static void begin_text(struct pdf *p, const struct pdf_type *type, const char *text)
{
	static const PangoAlignment align[] = { [PDF_LEFT] = PANGO_ALIGN_LEFT,
		[PDF_CENTRE] = PANGO_ALIGN_CENTER,
		[PDF_RIGHT] = PANGO_ALIGN_RIGHT };
	struct buf clean = { 0 };

	add_clean(text, &clean);
	pango_layout_set_auto_dir(p->layout, FALSE);
	pango_layout_set_width(p->layout, -1);
	pango_layout_set_height(p->layout, -1);
	pango_layout_set_ellipsize(p->layout, PANGO_ELLIPSIZE_NONE);
	pango_layout_set_wrap(p->layout, PANGO_WRAP_WORD_CHAR);
	pango_layout_set_alignment(p->layout, align[type->align]);
	pango_layout_set_text(p->layout, clean.text, (int)clean.n);
	set_font(p, type, type->points);
	keep_as_written(p);
	buf_free(&clean);
}

static double layout_width(struct pdf *p)
{
	int w;

	pango_layout_get_size(p->layout, &w, NULL);
	return pdf_mm(w);
}

static double layout_height(struct pdf *p)
{
	int h;

	pango_layout_get_size(p->layout, NULL, &h);
	return pdf_mm(h);
}

static void shrink(struct pdf *p, double w, const struct pdf_type *type)
{
	for (double part = 1; part > shrink_least && layout_width(p) > w;) {
		part -= shrink_step;
		set_font(p, type, type->points * part);
	}
}

static void fit(struct pdf *p, struct pdf_box box, const struct pdf_type *type)
{
	if (type->fit == PDF_SHRINK)
		shrink(p, box.w, type);
	pango_layout_set_width(p->layout, pango_of(box.w));
	if (type->fit != PDF_WRAP)
		pango_layout_set_height(p->layout, 0); /* one line */
	else if (box.h > 0)
		pango_layout_set_height(p->layout, pango_of(box.h));
	else
		return;
	pango_layout_set_ellipsize(p->layout, PANGO_ELLIPSIZE_END);
}

/* At Cairo's present point of origin. */
static void show(struct pdf *p, const struct pdf_type *type)
{
	cairo_set_source_rgb(p->cairo, type->grey, type->grey, type->grey);
	pango_cairo_update_layout(p->cairo, p->layout);
	pango_cairo_show_layout(p->cairo, p->layout);
	cairo_new_path(p->cairo); /* no line begins where the text does */
	p->without_font += pango_layout_get_unknown_glyphs_count(p->layout);
}

double pdf_text(struct pdf *p, struct pdf_box box, const struct pdf_type *type,
	const char *text)
{
	if (!*text)
		return 0;
	begin_text(p, type, text);
	fit(p, box, type);
	double h = layout_height(p);
	double down = type->middle ? (box.h - h) / 2 : 0;
	cairo_move_to(p->cairo, pdf_units(box.x), pdf_units(box.y + down));
	show(p, type);
	return h;
}

void pdf_text_upward(struct pdf *p, struct pdf_box box, const struct pdf_type *type,
	const char *text)
{
	const struct pdf_box lying = { 0, 0, box.h, box.w };

	cairo_save(p->cairo);
	cairo_translate(p->cairo, pdf_units(box.x), pdf_units(box.y + box.h));
	cairo_rotate(p->cairo, -G_PI / 2);
	pdf_text(p, lying, type, text);
	cairo_restore(p->cairo);
}

double pdf_text_height(
	struct pdf *p, double w, const struct pdf_type *type, const char *text)
{
	if (!*text)
		return 0;
	begin_text(p, type, text);
	fit(p, (struct pdf_box){ .w = w }, type);
	return layout_height(p);
}

double pdf_text_width(struct pdf *p, const struct pdf_type *type, const char *text)
{
	begin_text(p, type, text);
	return layout_width(p);
}
