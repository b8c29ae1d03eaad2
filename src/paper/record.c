#include "paper/record.h"

#include "base/words.h"
#include "paper/ascii.h"

#include <string.h>

enum { INDENT = 2, BELOW = 4, DAY_COLS = 12 };

static void add_field(struct buf *line, const char *word, const char *value)
{
	if (*value)
		buf_addf(line, "%s%s %s", line->n ? "; " : "", word, value);
}

static void end_line(struct buf *line, int indent, int cols, struct buf *out)
{
	paper_wrap(out, line->text ? line->text : "", indent, cols);
	buf_clear(line);
}

static void add_head(const struct record_row *r, struct buf *line)
{
	buf_addf(line, "%s: %s", r->when, r->block);
	if (*r->crop)
		buf_addf(line, " (%s)", words_shipped(r->crop));
	buf_addf(line, ", %s", *r->pest ? r->pest : _("all pests"));
}

static void add_product(const struct record_row *r, struct buf *line)
{
	const struct treatment *t = r->treatment;

	add_field(line, _("product"), t->product);
	add_field(line, _("registration number"), t->registration);
	if (*t->amount)
		buf_addf(line, _("%s%s %s in all"), line->n ? "; " : "", t->amount,
			t->amount_unit);
	add_field(line, _("area"), r->area);
}

static void add_person(const struct record_row *r, struct buf *line)
{
	add_field(line, _("applicator"), r->treatment->applicator);
	add_field(line, _("certificate number"), r->treatment->certificate);
}

static void add_row(const struct record_row *r, int cols, struct buf *out)
{
	struct buf line = { 0 };

	add_head(r, &line);
	end_line(&line, INDENT, cols, out);
	buf_add(&line, r->answered);
	end_line(&line, BELOW, cols, out);
	add_product(r, &line);
	end_line(&line, BELOW, cols, out);
	add_person(r, &line);
	end_line(&line, BELOW, cols, out);
	buf_addf(&line, _("by itself: %s; %s"), r->entry, r->pick);
	end_line(&line, BELOW, cols, out);
	if (*r->missing)
		buf_addf(&line, _("not entered: %s"), r->missing);
	end_line(&line, BELOW, cols, out);
	add_field(&line, _("note:"), r->treatment->note);
	end_line(&line, BELOW, cols, out);
	for (size_t i = 0; i < r->corrected.n; i++) {
		buf_addf(&line, _("corrected %s"), r->corrected.lines[i]);
		end_line(&line, BELOW, cols, out);
	}
	buf_free(&line);
}

static void add_rows(const struct record *r, int cols, struct buf *out)
{
	const char *farm = NULL;

	for (size_t i = 0; i < r->n; i++) {
		if (!farm || strcmp(farm, r->rows[i].farm) != 0) {
			buf_add(out, "\n");
			paper_wrap(out, r->rows[i].farm, 0, cols);
		}
		farm = r->rows[i].farm;
		add_row(&r->rows[i], cols, out);
	}
	if (r->n == 0) {
		buf_add(out, "\n");
		paper_wrap(
			out, _("no treatment was entered for this span"), INDENT, cols);
	}
}

static void add_paragraphs(const char *const *text, int cols, struct buf *out)
{
	for (; *text; text++)
		paper_wrap(out, *text, INDENT, cols);
}

static void add_end(const struct record_form *form, struct buf *out)
{
	if (form->says) {
		buf_add(out, "\n");
		add_paragraphs(form->says, form->cols, out);
	}
	if (!form->cautions)
		return;
	buf_addf(out, "\n%s\n", _("Cautions"));
	add_paragraphs(form->cautions, form->cols, out);
}

static void finish(struct buf *text, bool utf8, struct buf *out)
{
	if (utf8)
		buf_add(out, text->text);
	else
		paper_ascii(text->text, out);
	buf_free(text);
}

void paper_record(
	const struct record *r, const struct record_form *form, struct buf *out)
{
	struct buf text = { 0 }, title = { 0 };

	buf_addf(&title, _("Record of treatments, %s"), r->title);
	paper_wrap(&text, title.text, 0, form->cols);
	buf_free(&title);
	add_rows(r, form->cols, &text);
	add_end(form, &text);
	finish(&text, form->utf8, out);
}

/* The day in a column of its own, the text beside it. */
static void add_line(const struct block_line *l, int cols, struct buf *out)
{
	struct buf text = { 0 };

	paper_wrap(&text, l->text, INDENT + DAY_COLS, cols);
	buf_add_field(out, "", INDENT);
	paper_cell(out, l->day_text, DAY_COLS);
	buf_add(out, text.n > INDENT + DAY_COLS ? text.text + INDENT + DAY_COLS : "\n");
	buf_free(&text);
}

void paper_block_diary(
	const struct block_diary *d, const struct record_form *form, struct buf *out)
{
	struct buf text = { 0 }, title = { 0 };

	buf_addf(&title, _("Season of a block, %s"), d->title);
	paper_wrap(&text, title.text, 0, form->cols);
	buf_free(&title);
	buf_add(&text, "\n");
	for (size_t i = 0; i < d->n; i++)
		add_line(&d->lines[i], form->cols, &text);
	if (d->n == 0)
		paper_wrap(&text, _("nothing was entered for this span"), INDENT,
			form->cols);
	if (d->n > 0) {
		buf_add(&text, "\n");
		paper_wrap(&text, d->says, INDENT, form->cols);
	}
	add_end(form, &text);
	finish(&text, form->utf8, out);
}
