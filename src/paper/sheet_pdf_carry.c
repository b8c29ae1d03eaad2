/* sheet_pdf_carry.c - the sheet to carry round the traps and write on, as a PDF. */
#include "base/words.h"
#include "parts.h"
#include "sheet_pdf.h"

/* Millimetres. A figure written with a wet pencil, or with a glove on, is about 8 high,
 * and the card of the box must show round it (common practice, no source): 13 high, the
 * count 24 wide, so that "9999+" has room. */
static const double box_height = 13, count_width = 24, tick_width = 12;
static const double label_width = 15, block_width = 54, last_width = 7.8, gap = 2;
static const double row_gap = 0.8, band_height = 4.8, field_height = 10;
static const struct pdf_pen box_pen = { .width = 0.35 }, due_pen = { .width = 0.9 },
			    row_pen = { .width = 0.15 };
static const struct pdf_type name = { .points = 10, .bold = true };
static const struct pdf_type small = { .points = 8 };
static const struct pdf_type small_bold = { .points = 8, .bold = true };

/* Left edges of what stands in a row. */
struct columns {
	double label, block, last, count, card, lure, note, end;
};

static struct columns columns_of(const struct leaf *l)
{
	struct columns c = { .label = l->body.x, .end = l->body.x + l->body.w };

	c.block = c.label + label_width;
	c.last = c.block + block_width;
	c.count = c.last + RUN_LAST * last_width + gap;
	c.card = c.count + count_width;
	c.lure = c.card + tick_width;
	c.note = c.lure + tick_width;
	return c;
}

/* A word and a line to write on, `w` mm together. */
static void set_field(struct leaf *l, double x, double w, const char *word)
{
	const struct pdf_type type = { .points = 9, .fit = PDF_SHRINK };
	double foot = l->y + field_height - 1;
	double high = pdf_text_height(l->pdf, w, &type, word);
	double long_ = pdf_text_width(l->pdf, &type, word) + 1;

	if (long_ > w / 2)
		long_ = w / 2;
	pdf_text(l->pdf, (struct pdf_box){ x, foot - high, long_, 0 }, &type, word);
	pdf_line(l->pdf, (struct pdf_at){ x + long_, foot },
		(struct pdf_at){ x + w - gap, foot }, &box_pen);
}

static void set_fields(struct leaf *l)
{
	double w = l->body.w;

	set_field(l, l->body.x, w * 0.3, _("Scout"));
	set_field(l, l->body.x + w * 0.3, w * 0.26, _("Date"));
	set_field(l, l->body.x + w * 0.56, w * 0.22, _("Start"));
	set_field(l, l->body.x + w * 0.78, w * 0.22, _("Finish"));
	l->y += field_height;
	set_field(l, l->body.x, w * 0.56, _("Weather"));
	set_field(l, l->body.x + w * 0.56, w * 0.44, _("Growth stage"));
	l->y += field_height;
}

static void set_title(
	struct leaf *l, double from, double to, enum pdf_align align, const char *text)
{
	const struct pdf_type type = {
		.points = 8, .bold = true, .align = align, .fit = PDF_SHRINK
	};

	pdf_text(l->pdf, (struct pdf_box){ from, l->y, to - from, 0 }, &type, text);
}

static void set_titles(struct leaf *l, const void *table)
{
	struct columns c = columns_of(l);

	(void)table;
	set_title(l, c.label, c.block, PDF_LEFT, _("trap"));
	set_title(l, c.block, c.last, PDF_LEFT, _("block, pest, what to do"));
	set_title(l, c.last, c.count - gap, PDF_RIGHT, _("last four"));
	set_title(l, c.count, c.card, PDF_CENTRE, _("count"));
	set_title(l, c.card, c.lure, PDF_CENTRE, _("card"));
	set_title(l, c.lure, c.note, PDF_CENTRE, _("lure"));
	set_title(l, c.note, c.end, PDF_CENTRE, _("note"));
	l->y += pdf_text_height(l->pdf, l->body.w, &small_bold, "1");
	leaf_rule(l, box_pen.width);
	l->y += row_gap;
}

/* What stands below block and pest. */
struct words {
	struct buf lure, to_do;
};

static void say(const struct sheet_trap *t, struct words *w)
{
	buf_clear(&w->lure);
	buf_clear(&w->to_do);
	buf_add(&w->to_do, "");
	sheet_say_lure(t, &w->lure);
	if (t->service[0])
		buf_addf(&w->to_do, _("to do: %s"), t->service);
}

/* Of the pest's code and marks, which stand to the right of the block. */
static double pest_width(const struct leaf *l, const struct sheet_trap *t)
{
	double wide = pdf_text_width(l->pdf, &name, t->pest) +
		      pdf_text_width(l->pdf, &name, " bd");

	return wide > block_width / 2 ? block_width / 2 : wide;
}

/* The verdict above it ends where the lure does. */
static double to_do_width(void)
{
	return block_width + RUN_LAST * last_width - gap;
}

static double words_height(
	const struct leaf *l, const struct sheet_trap *t, const struct words *w)
{
	double width = block_width - gap;
	double block = width - pest_width(l, t) - gap;

	return pdf_text_height(l->pdf, block, &name, t->block) +
	       pdf_text_height(l->pdf, width, &small, w->lure.text) +
	       pdf_text_height(l->pdf, to_do_width(), &small_bold, w->to_do.text);
}

static void set_words(
	const struct leaf *l, const struct sheet_trap *t, const struct words *w)
{
	struct pdf_type one_line = name;
	double wide = pest_width(l, t);
	struct pdf_box box = { columns_of(l).last - gap - wide, l->y, wide, 0 };
	struct buf pest = { 0 };

	one_line.fit = PDF_SHRINK;
	buf_addf(&pest, "%s %s", t->pest, sheet_marks(t));
	pdf_text(l->pdf, box, &one_line, pest.text);
	box.x = columns_of(l).block;
	box.w = block_width - gap - wide - gap;
	box.y += pdf_text(l->pdf, box, &name, t->block);
	box.w = block_width - gap;
	box.y += pdf_text(l->pdf, box, &small, w->lure.text);
	box.w = to_do_width();
	pdf_text(l->pdf, box, &small_bold, w->to_do.text);
	buf_free(&pest);
}

/* The catches, and how the last reading stands to the threshold. */
static void set_last(const struct leaf *l, const struct sheet_trap *t)
{
	const struct pdf_type figure = {
		.points = 10, .bold = true, .align = PDF_RIGHT, .fit = PDF_SHRINK
	};
	struct pdf_type verdict = {
		.points = 8, .bold = t->is_over, .align = PDF_RIGHT, .fit = PDF_SHRINK
	};
	const struct columns c = columns_of(l);
	double line = pdf_text_height(l->pdf, last_width, &figure, "1");
	struct pdf_box box = { c.last, l->y, last_width - 0.5, 0 };
	struct buf text = { 0 };

	for (int i = 0; i < RUN_LAST; i++, box.x += last_width)
		pdf_text(l->pdf, box, &figure, t->last[i]);
	sheet_say_verdict(t, &text);
	box = (struct pdf_box){ c.last, l->y + line, RUN_LAST * last_width, 0 };
	pdf_text(l->pdf, box, &verdict, text.text);
	buf_free(&text);
}

static void set_tick(const struct leaf *l, double x, bool due)
{
	const struct pdf_type type = {
		.points = 7, .bold = true, .align = PDF_CENTRE, .fit = PDF_SHRINK
	};
	double inset = due ? due_pen.width / 2 : 0;

	pdf_frame(l->pdf,
		(struct pdf_box){ x + inset, l->y + inset, tick_width - 2 * inset,
			box_height - 2 * inset },
		due ? &due_pen : &box_pen);
	if (due)
		pdf_text(l->pdf, (struct pdf_box){ x, l->y + 1, tick_width, 0 }, &type,
			_("due"));
}

static void set_boxes(const struct leaf *l, const struct sheet_trap *t)
{
	const struct columns c = columns_of(l);

	pdf_frame(l->pdf, (struct pdf_box){ c.count, l->y, count_width, box_height },
		&box_pen);
	set_tick(l, c.card, t->card_due);
	set_tick(l, c.lure, t->lure_due);
	pdf_frame(l->pdf, (struct pdf_box){ c.note, l->y, c.end - c.note, box_height },
		&box_pen);
}

/* White on black, right across: nobody drives past it. */
static void set_band(struct leaf *l, const char *barred)
{
	const struct pdf_type type = { .points = 9.5,
		.bold = true,
		.grey = 1,
		.fit = PDF_SHRINK,
		.middle = true };
	const struct pdf_box box = { l->body.x, l->y, l->body.w, band_height };

	pdf_fill(l->pdf, box, PDF_BLACK);
	pdf_text(l->pdf,
		(struct pdf_box){
			box.x + label_width, box.y, box.w - label_width, box.h },
		&type, barred);
	l->y += band_height + row_gap;
}

/* In one large line, or in as many small ones as it takes. */
static const struct pdf_type label_lines = { .points = 7, .bold = true };

static bool is_long_label(const struct leaf *l, const char *text)
{
	return pdf_text_width(l->pdf, &label_lines, text) > label_width - gap;
}

static void set_label(struct leaf *l, const char *text)
{
	const struct pdf_type large = {
		.points = 14, .bold = true, .fit = PDF_SHRINK, .middle = true
	};
	bool is_long = is_long_label(l, text);

	pdf_text(l->pdf,
		(struct pdf_box){
			l->body.x, l->y, label_width - gap, is_long ? 0 : box_height },
		is_long ? &label_lines : &large, text);
}

static double row_height(
	const struct leaf *l, const struct sheet_trap *t, const struct words *w)
{
	double words = words_height(l, t, w);
	double label = is_long_label(l, t->label)
			       ? pdf_text_height(l->pdf, label_width - gap,
					 &label_lines, t->label)
			       : 0;
	double most = words > label ? words : label;

	return most > box_height ? most : box_height;
}

static void set_trap(struct leaf *l, const struct sheet_trap *t, struct words *w)
{
	say(t, w);
	double h = row_height(l, t, w);
	leaf_need(l, h + 2 * row_gap + (t->barred[0] ? band_height + row_gap : 0));
	if (t->barred[0])
		set_band(l, t->barred);
	set_label(l, t->label);
	set_words(l, t, w);
	set_last(l, t);
	set_boxes(l, t);
	l->y += h + row_gap;
	leaf_rule(l, row_pen.width);
	l->y += row_gap;
}

void sheet_pdf_carry(const struct sheet *s, struct leaf *l)
{
	struct words w = { { 0 }, { 0 } };

	set_fields(l);
	sheet_pdf_clocks(s, l);
	sheet_pdf_needs(s, false, l);
	sheet_pdf_bring(s, l);
	leaf_gap(l, 2);
	if (s->n == 0) {
		leaf_words(l, 0, &leaf_plain, sheet_no_traps());
		return;
	}
	leaf_need(l, 3 * box_height);
	leaf_table(l, set_titles, NULL);
	for (size_t i = 0; i < s->n; i++)
		set_trap(l, &s->traps[i], &w);
	leaf_table(l, NULL, NULL);
	buf_free(&w.lure);
	buf_free(&w.to_do);
}
