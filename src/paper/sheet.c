#include "paper/sheet.h"

#include "base/text.h"
#include "base/words.h"
#include "grid.h"
#include "paper/ascii.h"
#include "parts.h"

enum {
	HEAD_LINES = 4,
	NOTE_LINES = 6,
	NOTE_LINES_LEAST = 1, /* of a sheet to write on; a filled one has 0 */
	LINES_A_NOTE = 2,     /* of paper: room for a hand */
	NOTES_BESIDE = 2,     /* their heading, a blank */
};

void sheet_rule(struct buf *out)
{
	for (int i = 0; i < SHEET_COLS; i++)
		buf_add(out, "\u2500");
	buf_add(out, "\n");
}

void sheet_bring(const struct sheet *s, struct pager *p)
{
	struct buf chunk = { 0 }, text = { 0 };

	sheet_say_bring(s, &text);
	paper_wrap(&chunk, text.text, 0, SHEET_COLS);
	buf_add(&chunk, "\n");
	pager_add(p, &chunk);
	buf_free(&chunk);
	buf_free(&text);
}

void sheet_clocks(const struct sheet *s, struct pager *p)
{
	struct buf chunk = { 0 };

	if (s->clocks.n == 0)
		return;
	buf_addf(&chunk, "%s\n", _("Entry and picks"));
	for (size_t i = 0; i < s->clocks.n; i++) {
		paper_wrap(&chunk, s->clocks.items[i].text, SHEET_BELOW, SHEET_COLS);
		pager_add(p, &chunk);
	}
	paper_wrap(&chunk, s->clocks.caution, SHEET_BELOW, SHEET_COLS);
	buf_add(&chunk, "\n");
	pager_add(p, &chunk);
	buf_free(&chunk);
}

void sheet_none(struct pager *p)
{
	struct buf chunk = { 0 };

	paper_wrap(&chunk, sheet_no_traps(), 0, SHEET_COLS);
	buf_add(&chunk, "\n");
	pager_add(p, &chunk);
	buf_free(&chunk);
}

static void add_notes(int lines, struct buf *out)
{
	buf_addf(out, "%s\n", _("Notes"));
	for (int i = 0; i < lines; i++) {
		buf_add(out, "\n");
		for (int k = 0; k < SHEET_COLS; k++)
			buf_add(out, "_");
		buf_add(out, "\n");
	}
	buf_add(out, "\n");
}

/* Fewer where all that comes last then stays on the page. */
static int note_lines(const struct pager *p, int caution_lines, int least)
{
	int left = pager_left(p) - caution_lines;
	int fit = left < NOTES_BESIDE ? 0 : (left - NOTES_BESIDE) / LINES_A_NOTE;

	return left < 0 || fit < least || fit > NOTE_LINES ? NOTE_LINES : fit;
}

/* One chunk: the cautions never go to a page of their own. */
static void add_end(const struct sheet_form *form, struct pager *p)
{
	struct buf cautions = { 0 }, chunk = { 0 };

	buf_addf(&cautions, "%s\n", _("Cautions"));
	for (const char *const *c = form->cautions; *c; c++)
		paper_wrap(&cautions, *c, 2, SHEET_COLS);
	int lines = note_lines(
		p, pager_lines(cautions.text), form->blank ? NOTE_LINES_LEAST : 0);
	if (lines)
		add_notes(lines, &chunk);
	buf_add(&chunk, cautions.text);
	pager_add(p, &chunk);
	buf_free(&cautions);
	buf_free(&chunk);
}

/* Two lines of what the page is, a rule, an empty line: HEAD_LINES. */
static void add_head(const struct sheet *s, const struct sheet_form *form, size_t page,
	size_t n, struct buf *out)
{
	struct buf text = { 0 }, number = { 0 };

	sheet_say_title(s, form->blank, &text);
	buf_addf(&number, _("page %d of %d"), (int)page, (int)n);
	int cols = text_cols(number.text) + 1;
	paper_cell(out, text.text, SHEET_COLS - cols);
	paper_cell(out, number.text, -cols);
	buf_add(out, "\n");
	buf_clear(&text);
	sheet_say_day(s, form, &text);
	paper_cell(out, text.text, SHEET_COLS);
	grid_end_line(out);
	sheet_rule(out);
	buf_add(out, "\n");
	buf_free(&text);
	buf_free(&number);
}

static void add_foot(const struct sheet_form *form, struct buf *out)
{
	sheet_rule(out);
	paper_wrap(out, sheet_legend(form->blank), 0, SHEET_COLS);
	paper_wrap(out, form->caution_short, 0, SHEET_COLS);
}

static void add_pages(const struct sheet *s, const struct sheet_form *form,
	const struct pager *p, struct buf *out)
{
	struct buf foot = { 0 };

	add_foot(form, &foot);
	for (size_t i = 0; i < p->n; i++) {
		if (i)
			buf_add(out, "\f");
		add_head(s, form, i + 1, p->n, out);
		buf_add(out, p->pages[i].text);
		for (int n = pager_lines(p->pages[i].text); n < p->room; n++)
			buf_add(out, "\n");
		buf_add(out, foot.text);
	}
	buf_free(&foot);
}

static int room_for_chunks(const struct sheet_form *form)
{
	struct buf foot = { 0 };

	add_foot(form, &foot);
	int lines = form->paper == PAPER_A4 ? SHEET_LINES_A4 : SHEET_LINES_LETTER;
	lines -= HEAD_LINES + pager_lines(foot.text);
	buf_free(&foot);
	return lines;
}

void paper_sheet(const struct sheet *s, const struct sheet_form *form, struct buf *out)
{
	struct pager p = { .room = room_for_chunks(form) };
	struct buf text = { 0 };

	if (form->blank)
		sheet_blank(s, &p);
	else
		sheet_filled(s, &p);
	add_end(form, &p);
	add_pages(s, form, &p, &text);
	if (form->utf8)
		buf_add(out, text.text);
	else
		paper_ascii(text.text, out);
	buf_free(&text);
	pager_free(&p);
}
