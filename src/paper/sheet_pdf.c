/* sheet_pdf.c - the weekly sheet as a PDF: its pages, and what filled and carried ones
 * share. */
#include "sheet_pdf.h"

#include "base/words.h"
#include "parts.h"

enum { NOTE_LINES = 6, NEED_CELLS = 6 };

static const double below_indent = 4, entry_gap = 0.8, fine_rule = 0.15;
static const double note_height = 9; /* a line to write on with a wet pencil */
static const double whole_entry = 12;

struct job {
	const struct sheet_set *set;
	const struct sheet_form *form;
};

void sheet_pdf_entry(
	const struct ruled *r, struct leaf *l, const struct pdf_entry *entry)
{
	double below = pdf_text_height(
		l->pdf, l->body.w - below_indent, &leaf_small, entry->below);

	leaf_need(l,
		ruled_height(r, l, entry->bold, entry->cells) + below + 2 * entry_gap);
	ruled_row(r, l, entry->bold, entry->cells);
	if (*entry->below)
		leaf_words(l, below_indent, &leaf_small, entry->below);
	leaf_rule(l, fine_rule);
	l->y += entry_gap;
}

void sheet_pdf_clocks(const struct sheet *s, struct leaf *l)
{
	if (s->clocks.n == 0)
		return;
	leaf_heading(l, _("Entry and picks"), whole_entry);
	for (size_t i = 0; i < s->clocks.n; i++) {
		const struct block_clock *c = &s->clocks.items[i];
		bool plain = c->tone == TONE_PLAIN || c->tone == TONE_QUIET;

		leaf_words(l, below_indent, plain ? &leaf_plain : &leaf_bold, c->text);
	}
	leaf_words(l, below_indent, &leaf_small, s->clocks.caution);
}

void sheet_pdf_bring(const struct sheet *s, struct leaf *l)
{
	struct buf text = { 0 };

	sheet_say_bring(s, &text);
	leaf_gap(l, 2);
	leaf_words(l, 0, &leaf_bold, text.text);
	buf_free(&text);
}

/* Returns the number of rows. */
static size_t lay_out_needs(
	const struct sheet *s, bool traps, struct leaf *l, struct ruled *r)
{
	const char *cells[NEED_CELLS];
	size_t n = 0;

	ruled_column(r, _("trap"), PDF_LEFT);
	ruled_column(r, _("block"), PDF_LEFT);
	ruled_column(r, _("pest"), PDF_LEFT);
	ruled_column(r, _("a week"), PDF_RIGHT);
	ruled_column(r, _("thr."), PDF_LEFT);
	ruled_column(r, _("verdict"), PDF_LEFT);
	for (size_t i = 0; traps && i < s->n; i++) {
		sheet_need_trap(&s->traps[i], cells);
		if (s->traps[i].needs_attention)
			ruled_note(r, l->pdf, cells), n++;
	}
	for (size_t i = 0; i < s->n_blocks; i++) {
		sheet_need_block(&s->blocks[i], cells);
		if (s->blocks[i].needs_attention)
			ruled_note(r, l->pdf, cells), n++;
	}
	ruled_fit(r, l);
	return n;
}

static void set_needs(
	const struct sheet *s, bool traps, struct leaf *l, const struct ruled *r)
{
	const char *cells[NEED_CELLS];
	struct buf below = { 0 };

	for (size_t i = 0; traps && i < s->n; i++) {
		const struct sheet_trap *t = &s->traps[i];

		if (!t->needs_attention)
			continue;
		sheet_need_trap(t, cells);
		buf_clear(&below);
		buf_add(&below, "");
		sheet_concerns(t, true, &below);
		sheet_pdf_entry(
			r, l, &(struct pdf_entry){ cells, below.text, t->is_over });
	}
	for (size_t i = 0; i < s->n_blocks; i++) {
		const struct sheet_block *b = &s->blocks[i];

		if (!b->needs_attention)
			continue;
		sheet_need_block(b, cells);
		buf_clear(&below);
		sheet_say_block(b, &below);
		sheet_pdf_entry(
			r, l, &(struct pdf_entry){ cells, below.text, b->is_over });
	}
	buf_free(&below);
}

void sheet_pdf_needs(const struct sheet *s, bool traps, struct leaf *l)
{
	struct ruled r = { 0 };
	struct buf line = { 0 };
	size_t rows = lay_out_needs(s, traps, l, &r);

	if (rows == 0 && s->hot.n == 0 && !traps)
		return;
	leaf_heading(l, _("Needing attention"), 2 * whole_entry);
	if (rows) {
		ruled_begin(&r, l, whole_entry);
		set_needs(s, traps, l, &r);
		ruled_end(l);
	} else if (s->hot.n == 0)
		leaf_words(l, below_indent, &leaf_plain, _("none"));
	for (size_t i = 0; i < s->hot.n; i++) {
		buf_clear(&line);
		sheet_say_hot(&s->hot.items[i], &line);
		leaf_words(l, 0, &leaf_bold, line.text);
	}
	buf_free(&line);
}

static double cautions_height(const struct sheet_form *form, struct leaf *l)
{
	double h = whole_entry;

	for (const char *const *c = form->cautions; *c; c++)
		h += 1 +
		     pdf_text_height(l->pdf, l->body.w - below_indent, &leaf_small, *c);
	return h;
}

/* As many as stay on the page with the cautions, or on a new one all. */
static int note_lines(const struct leaf *l, double cautions, int least)
{
	int fit = (int)((leaf_left(l) - cautions - whole_entry) / note_height);

	return fit < least || fit > NOTE_LINES ? NOTE_LINES : fit;
}

static void set_notes(struct leaf *l, int lines)
{
	leaf_heading(l, _("Notes"), 0);
	for (int i = 0; i < lines; i++) {
		l->y += note_height;
		leaf_rule(l, fine_rule);
	}
}

static void set_end(const struct sheet_form *form, struct leaf *l)
{
	double cautions = cautions_height(form, l);
	int lines = note_lines(l, cautions, form->blank ? 1 : 0);

	leaf_need(l, cautions + lines * note_height + (lines ? whole_entry : 0));
	if (lines)
		set_notes(l, lines);
	leaf_heading(l, _("Cautions"), 0);
	for (const char *const *c = form->cautions; *c; c++)
		leaf_words(l, below_indent, &leaf_small, *c);
}

static void set_sheet(
	struct pdf *p, const struct sheet *s, const struct sheet_form *form)
{
	struct buf title = { 0 }, day = { 0 };
	struct leaf l;

	sheet_say_title(s, form->blank, &title);
	sheet_say_day(s, form, &day);
	const struct leaf_form pages = { title.text, day.text,
		sheet_legend(form->blank), form->caution_short };
	leaf_begin(&l, p, &pages);
	if (form->blank)
		sheet_pdf_carry(s, &l);
	else
		sheet_pdf_filled(s, &l);
	set_end(form, &l);
	buf_free(&title);
	buf_free(&day);
}

static void draw(struct pdf *p, const void *what)
{
	const struct job *job = what;

	for (size_t i = 0; i < job->set->n; i++)
		set_sheet(p, &job->set->items[i], job->form);
}

bool paper_sheets_pdf(struct sheet_set *set, const struct sheet_form *form,
	struct buf *out, struct err *e)
{
	const struct job what = { set, form };
	struct buf title = { 0 };

	if (set->n == 1)
		sheet_say_title(&set->items[0], form->blank, &title);
	else
		buf_add(&title, _("Scouting sheets"));
	struct pdf_job job = { .title = title.text,
		.author = set->n == 1 ? set->items[0].scout : "",
		.day = set->day,
		.paper = form->paper,
		.draw = draw,
		.what = &what };
	bool ok = pdf_make(&job, out, e);
	set->without_font = job.without_font;
	buf_free(&title);
	return ok;
}
