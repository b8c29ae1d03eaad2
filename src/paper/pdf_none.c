/* pdf_none.c - in place of pdf.c, pdf_text.c and pdf_lines.c where this is built
 * without Cairo and Pango: pdf_make says so, and since it calls no `draw`, nothing else
 * is reached. */
#include "base/words.h"
#include "paper/pdf_lines.h"

bool pdf_built_in(void)
{
	return false;
}

bool pdf_make(struct pdf_job *job, struct buf *out, struct err *e)
{
	(void)out;
	job->pages = job->without_font = 0;
	return err_set(e, ERR_USAGE,
		_("this build of mothtally writes text only: it was made without Cairo "
		  "and Pango, which set PDFs"));
}

void pdf_begin_part(struct pdf *p)
{
	(void)p;
}

void pdf_begin_page(struct pdf *p)
{
	(void)p;
}

struct pdf_box pdf_page(const struct pdf *p)
{
	(void)p;
	return (struct pdf_box){ 0, 0, 0, 0 };
}

const char *pdf_page_words(const struct pdf *p)
{
	(void)p;
	return "";
}

double pdf_text(struct pdf *p, struct pdf_box box, const struct pdf_type *type,
	const char *text)
{
	(void)p, (void)box, (void)type, (void)text;
	return 0;
}

void pdf_text_upward(struct pdf *p, struct pdf_box box, const struct pdf_type *type,
	const char *text)
{
	(void)p, (void)box, (void)type, (void)text;
}

double pdf_text_height(
	struct pdf *p, double w, const struct pdf_type *type, const char *text)
{
	(void)p, (void)w, (void)type, (void)text;
	return 0;
}

double pdf_text_width(struct pdf *p, const struct pdf_type *type, const char *text)
{
	(void)p, (void)type, (void)text;
	return 0;
}

void pdf_line(
	struct pdf *p, struct pdf_at from, struct pdf_at to, const struct pdf_pen *pen)
{
	(void)p, (void)from, (void)to, (void)pen;
}

void pdf_lines(
	struct pdf *p, const struct pdf_at *points, size_t n, const struct pdf_pen *pen)
{
	(void)p, (void)points, (void)n, (void)pen;
}

void pdf_frame(struct pdf *p, struct pdf_box box, const struct pdf_pen *pen)
{
	(void)p, (void)box, (void)pen;
}

void pdf_fill(struct pdf *p, struct pdf_box box, enum pdf_fill fill)
{
	(void)p, (void)box, (void)fill;
}

void pdf_area(struct pdf *p, const struct pdf_at *points, size_t n, enum pdf_fill fill)
{
	(void)p, (void)points, (void)n, (void)fill;
}

void pdf_put_mark(struct pdf *p, struct pdf_at at, enum pdf_mark mark, double size)
{
	(void)p, (void)at, (void)mark, (void)size;
}

void pdf_clip(struct pdf *p, struct pdf_box box)
{
	(void)p, (void)box;
}

void pdf_unclip(struct pdf *p)
{
	(void)p;
}
