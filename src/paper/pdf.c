/* pdf.c - a PDF from its first byte to its last. */
#include "base/day.h"
#include "base/mem.h"
#include "base/words.h"
#include "pdf_parts.h"

#include <cairo-pdf.h>
#include <stdio.h>
#include <stdlib.h>

static const double points_an_inch = 72, mm_an_inch = 25.4;

double pdf_units(double mm)
{
	return mm * points_an_inch / mm_an_inch;
}

double pdf_mm(int pango)
{
	return (double)pango / PANGO_SCALE * mm_an_inch / points_an_inch;
}

bool pdf_built_in(void)
{
	return true;
}

static struct pdf_box page_of(const struct pdf_job *job)
{
	static const struct pdf_box pages[] = {
		[PAPER_A4] = { 0, 0, 210, 297 },
		[PAPER_LETTER] = { 0, 0, 215.9, 279.4 },
	};
	struct pdf_box page = pages[job->paper];

	if (job->landscape)
		return (struct pdf_box){ 0, 0, page.h, page.w };
	return page;
}

struct pdf_box pdf_page(const struct pdf *p)
{
	return p->page;
}

void pdf_begin_part(struct pdf *p)
{
	if (p->part_page == 0)
		return;
	p->part++;
	p->part_page = 0;
}

static void end_page(struct pdf *p)
{
	if (p->pages)
		cairo_show_page(p->cairo);
}

static void count_page(struct pdf *p)
{
	p->pages++;
	p->part_page++;
	if (p->has_counts)
		return;
	p->part_pages = mem_grow(
		p->part_pages, &p->parts_cap, p->part + 1, sizeof *p->part_pages);
	p->part_pages[p->part] = p->part_page;
	p->parts = p->part + 1;
}

void pdf_begin_page(struct pdf *p)
{
	end_page(p);
	count_page(p);
	snprintf(p->words, sizeof p->words, _("page %d of %d"), p->part_page,
		p->part < p->parts ? p->part_pages[p->part] : p->part_page);
}

const char *pdf_page_words(const struct pdf *p)
{
	return p->words;
}

static cairo_status_t add_bytes(void *out, const unsigned char *bytes, unsigned n)
{
	buf_add_n(out, (const char *)bytes, n);
	return CAIRO_STATUS_SUCCESS;
}

/* Cairo would tell the clock's time unless it is told one. */
static void describe(cairo_surface_t *surface, const struct pdf_job *job)
{
	char date[DAY_ISO_SIZE], when[DAY_ISO_SIZE + 10];

	day_iso(job->day, date);
	snprintf(when, sizeof when, "%sT12:00:00Z", date);
	cairo_pdf_surface_restrict_to_version(surface, CAIRO_PDF_VERSION_1_4);
	cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, when);
	cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, job->title);
	cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_AUTHOR, job->author);
	cairo_pdf_surface_set_metadata(
		surface, CAIRO_PDF_METADATA_CREATOR, "mothtally " VERSION);
}

/* Letters keep their shape and place at every scale. The fonts taken for a script do
 * not depend on whose machine speaks which language. */
static void choose_manner(struct pdf *p)
{
	cairo_font_options_t *options = cairo_font_options_create();

	cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
	cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
	pango_cairo_context_set_font_options(p->context, options);
	pango_cairo_context_set_resolution(p->context, points_an_inch);
	pango_context_set_round_glyph_positions(p->context, FALSE);
	pango_context_set_base_dir(p->context, PANGO_DIRECTION_LTR);
	pango_context_set_language(p->context, pango_language_from_string("en"));
	cairo_font_options_destroy(options);
}

/* Draws all pages once. False: Cairo gave up. */
static bool draw_round(struct pdf *p, PangoFontMap *fonts, struct buf *out)
{
	cairo_surface_t *surface = cairo_pdf_surface_create_for_stream(
		add_bytes, out, pdf_units(p->page.w), pdf_units(p->page.h));

	describe(surface, p->job);
	p->cairo = cairo_create(surface);
	p->context = pango_font_map_create_context(fonts);
	choose_manner(p);
	p->layout = pango_layout_new(p->context);
	p->part = 0;
	p->part_page = p->pages = p->without_font = 0;
	p->job->draw(p, p->job->what);
	end_page(p);
	g_object_unref(p->layout);
	g_object_unref(p->context);
	bool ok = cairo_status(p->cairo) == CAIRO_STATUS_SUCCESS;
	cairo_destroy(p->cairo);
	cairo_surface_finish(surface);
	ok = ok && cairo_surface_status(surface) == CAIRO_STATUS_SUCCESS;
	cairo_surface_destroy(surface);
	return ok;
}

/* The families listed are no sign: generic ones are among them even without a file. */
static bool has_font(PangoFontMap *fonts)
{
	PangoContext *context = pango_font_map_create_context(fonts);
	PangoFontDescription *sans = pango_font_description_from_string("Sans 10");
	PangoFont *font = pango_font_map_load_font(fonts, context, sans);

	pango_font_description_free(sans);
	g_object_unref(context);
	if (font)
		g_object_unref(font);
	return font != NULL;
}

static bool draw_twice(
	struct pdf *p, PangoFontMap *fonts, struct buf *out, struct err *e)
{
	struct buf thrown = { 0 };

	if (!has_font(fonts))
		return err_set(e, ERR_BOOK,
			_("this machine has no font, so that no PDF can be set; "
			  "install one, or take the page as text"));
	bool ok = draw_round(p, fonts, &thrown);
	p->has_counts = true;
	ok = ok && draw_round(p, fonts, out);
	buf_free(&thrown);
	return ok || err_set(e, ERR_BOOK,
			     _("the PDF could not be drawn: its library gave up"));
}

bool pdf_make(struct pdf_job *job, struct buf *out, struct err *e)
{
	PangoFontMap *fonts = pango_cairo_font_map_new();
	struct pdf p = { .job = job, .page = page_of(job) };
	struct buf bytes = { 0 };
	bool ok = draw_twice(&p, fonts, &bytes, e);

	if (ok)
		buf_add_n(out, bytes.text, bytes.n);
	job->pages = p.pages;
	job->without_font = p.without_font;
	buf_free(&bytes);
	free(p.part_pages);
	g_object_unref(fonts);
	return ok;
}
