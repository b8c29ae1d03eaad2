/* diary_draw.c - the Diary page on its canvas. */
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "diary_parts.h"
#include "screen/frame.h"
#include "screen/list.h"
#include "screen/reader.h"
#include "screen/run_entry.h"
#include "screen/run_say.h"

#include <stdio.h>
#include <stdlib.h>

enum { DAY, VISIT, NIGHTS, WEEK, LURE, CARD, MARK, SCOUT, NOTE, COLUMNS };

static const struct list_column column[COLUMNS] = {
	[DAY] = { N_("day"), .least = 6, .whole = COLUMN_NUMBER },
	[VISIT] = { N_("visit"), .least = 8, .whole = COLUMN_NUMBER },
	[NIGHTS] = { N_("nights"), .least = 4, .drop = 5, .whole = COLUMN_NUMBER,
		.right = true },
	[WEEK] = { N_("a week"), .least = 4, .drop = 7, .whole = COLUMN_NUMBER,
		.right = true },
	[LURE] = { N_("lure"), .least = 4, .drop = 4, .whole = COLUMN_NUMBER,
		.right = true },
	[CARD] = { N_("card"), .least = 4, .drop = 3, .whole = COLUMN_NUMBER,
		.right = true },
	[MARK] = { "", .least = 9, .drop = 6 },
	[SCOUT] = { N_("scout"), .least = 5, .drop = 2 },
	[NOTE] = { N_("note"), .least = 8, .drop = 1 },
};

enum { LEFT = 3, LEFT_NARROW = 2, FIELD_LEAST = 12 };

static const char *mark_of(const struct diary_row *r)
{
	return r->n_old > 0 ? _("corrected") : "";
}

static void fit(struct columns *s, const struct diary_page *p, int cols)
{
	*s = (struct columns){ .col = column, .n = COLUMNS };
	for (size_t i = 0; i < COLUMNS; i++)
		columns_want(s, i, _(column[i].head));
	s->want[VISIT] = FIELD_LEAST;
	for (size_t i = 0; i < p->diary->n; i++) {
		const struct diary_row *r = &p->diary->rows[i];

		columns_want(s, DAY, r->day_text);
		columns_want(s, VISIT, r->visit_text);
		columns_want(s, NIGHTS, r->nights_text);
		columns_want(s, WEEK, r->weekly_text);
		columns_want(s, LURE, r->lure_text);
		columns_want(s, CARD, r->card_text);
		columns_want(s, MARK, mark_of(r));
		columns_want(s, SCOUT, r->words.scout);
		columns_want(s, NOTE, r->words.note);
	}
	columns_fit(s, cols < FRAME_WIDE ? LEFT_NARROW : LEFT, cols - 1);
}

static void draw_visit(const struct columns *s, struct canvas *c, int row,
	const struct diary_row *r, enum ink ink)
{
	enum ink tone = ink == INK_PICKED ? ink : list_ink(r->tone);

	columns_cell(s, c, row, DAY, ink, r->day_text);
	columns_cell(s, c, row, VISIT, tone, r->visit_text);
	columns_cell(s, c, row, NIGHTS, ink, r->nights_text);
	columns_cell(s, c, row, WEEK, ink, r->weekly_text);
	columns_cell(s, c, row, LURE, ink, r->lure_text);
	columns_cell(s, c, row, CARD, ink, r->card_text);
	columns_cell(s, c, row, MARK, ink, mark_of(r));
	columns_cell(s, c, row, SCOUT, ink, r->words.scout);
	columns_cell(s, c, row, NOTE, ink, r->words.note);
}

/* What is typed stands between brackets, over what the row has further right. */
static void draw_field(const struct diary_page *p, const struct columns *s,
	struct canvas *c, int row, const struct diary_row *r)
{
	char text[RUN_ENTRY_TEXT], day[DAY_TEXT_SIZE];
	int at = s->at[VISIT], room = c->cols - at - 5, cols = 0;

	text_copy(text, sizeof text, r ? r->visit_text : "");
	if (p->typed.entry.touched)
		run_entry_text(&p->typed.entry, text);
	else if (r && r->visit.outcome == OUTCOME_HUNG) {
		/* Its row says "hung" alone; here a key takes its card or lure away. */
		const struct run_entry there = run_entry_start(&p->trap);

		run_entry_text(&there, text);
	}
	day_short(p->day, day, sizeof day);
	columns_cell(s, c, row, DAY, INK_PICKED, day);
	cols = text_cols(text) < room ? text_cols(text) : room;
	cols = cols < 2 ? 2 : cols;
	canvas_text(c, row, at, 2, INK_FIELD, "[ ");
	canvas_text(c, row, at + 2, cols, INK_FIELD, text);
	canvas_text(c, row, at + 2 + cols, 2, INK_FIELD, " ]");
	if (r && p->typed.entry.touched)
		canvas_textf(c, row, at + 5 + cols, 0, INK_PICKED, _("was %s"),
			r->visit_text);
	if (p->typed.typing == TYPING_COUNT)
		canvas_cursor(c, row,
			at + 2 + (text_cols(text) < cols ? text_cols(text) : cols));
}

static void draw_picked(
	const struct diary_page *p, const struct columns *s, struct canvas *c, int row)
{
	const struct diary_row *r = diary_row_at(p, diary_place(p));

	canvas_text(c, row, 0, c->cols, INK_PICKED, "");
	canvas_text(c, row, c->cols >= FRAME_WIDE ? 1 : 0, 1, INK_PICKED, ">");
	canvas_cursor(c, row, s->at[VISIT]);
	if (p->mode == DIARY_VISIT)
		draw_field(p, s, c, row, r);
	else if (r)
		draw_visit(s, c, row, r, INK_PICKED);
}

static void draw_none(const struct diary_page *p, struct canvas *c, int row)
{
	canvas_text(c, row, 1, c->cols - 1, INK_PLAIN,
		p->diary->n ? _("Nothing contains it: Esc shows all.")
			    : _("No visit in this season: n adds one."));
	canvas_cursor(c, row, 0);
}

static void draw_list(struct diary_page *p, const struct columns *s, struct canvas *c,
	struct frame *f)
{
	size_t n = diary_count(p), place = diary_place(p);
	int first = f->first;

	if (f->last - first >= 3)
		columns_heads(s, c, first++);
	p->rows = f->last - first + 1;
	page_scroll_near(n, p->rows, &place, &p->top);
	for (int i = 0; i < p->rows && p->top + (size_t)i < n; i++) {
		size_t at = p->top + (size_t)i;
		const struct diary_row *r = diary_row_at(p, at);

		if (at == place)
			draw_picked(p, s, c, first + i);
		else if (r)
			draw_visit(s, c, first + i, r, INK_PLAIN);
	}
	frame_more(c, f, p->top > 0, p->top + (size_t)p->rows < n);
	if (n == 0)
		draw_none(p, c, f->first);
}

/* The kinds that may have been put in, over the last rows of the list. */
static void draw_kinds(
	const struct diary_page *p, struct canvas *c, int first, int last)
{
	enum { KINDS_ROWS = 8 };
	int rows = (int)chooser_matches(&p->kinds) + 1, from = 0;
	char prompt[SAY_LINE];

	if (rows > KINDS_ROWS)
		rows = KINDS_ROWS;
	from = last - rows + 1 > first ? last - rows + 1 : first;
	diary_kind_prompt(p, prompt);
	canvas_textf(c, from, 0, c->cols, INK_TITLE, " %s", prompt);
	canvas_cursor(c, from, 1 + text_cols(prompt));
	for (int row = from + 1; row <= last; row++)
		canvas_text(c, row, 0, c->cols, INK_PLAIN, "");
	chooser_draw(&p->kinds, c, from + 1, last, LEFT);
}

static void draw_changes(struct diary_page *p, struct canvas *c, const struct frame *f)
{
	enum { INDENT = 12 };
	const struct trap_diary *d = p->diary;
	struct paragraph *text = mem_new(d->n_olds + 1, sizeof *text);
	size_t n = 0;

	for (; n < d->n_olds; n++)
		text[n] = (struct paragraph){ INK_PLAIN, INDENT, d->olds[n].day_text,
			d->olds[n].text };
	if (n == 0)
		text[n++] = (struct paragraph){ INK_PLAIN, 0, NULL,
			_("No visit of this season was changed or taken out.") };
	p->rows = f->last - f->first + 1;
	size_t lines = reader_draw(c, f->first, f->last, &p->old_top, text, n);
	free(text);
	canvas_cursor(c, f->first, 0);
	if (p->rows > 0 && lines > p->old_top + (size_t)p->rows)
		reader_more(c, f->last, 1);
}

/* What the picked row has no room for. */
static void say_picked(
	const struct diary_page *p, const struct columns *s, struct message *m)
{
	const struct diary_row *r =
		p->picked < p->diary->n ? &p->diary->rows[p->picked] : NULL;

	if (p->mode != DIARY_LIST || !r)
		return;
	if (!s->dropped) {
		message_set(m, false, "%s", r->kinds_text);
		return;
	}
	message_set(m, false, "%s: %s%s%s%s%s%s%s%s%s%s%s%s%s", r->day_text,
		r->visit_text, r->nights_text[0] ? ", " : "", r->nights_text,
		r->weekly_text[0] ? ", " : "", r->weekly_text,
		r->weekly_text[0] ? _(" a week") : "", r->kinds_text[0] ? ", " : "",
		r->kinds_text, r->n_old > 0 ? _(", corrected") : "",
		r->words.scout[0] ? "; " : "", r->words.scout,
		r->words.note[0] ? ": " : "", r->words.note);
}

/* Returns the column of the cursor when something is typed in the message line; else -1
 * or 0. */
static int fill_message(const struct diary_page *p, const struct columns *s, int cols,
	struct message *m)
{
	int cursor = -1;

	*m = p->message;
	if (p->mode == DIARY_VISIT && p->typed.typing != TYPING_COUNT)
		return run_say_message(&p->typed, cols, false, m);
	if (p->mode == DIARY_DAY) {
		const char *prompt = _("day of the visit: ");

		message_set(m, p->message.is_fault, "%s%s%s%s", prompt, p->line,
			p->message.text[0] ? "  " : "", p->message.text);
		return 1 + text_cols(prompt) + text_cols(p->line);
	}
	if (p->mode == DIARY_LIST && !m->text[0])
		cursor = sift_say(&p->sift, m);
	if (!m->text[0])
		say_picked(p, s, m);
	return cursor;
}

static void say_status(const struct diary_page *p, char *out, size_t size)
{
	const struct trap_diary *d = p->diary;
	bool changes = p->mode == DIARY_CHANGES;
	unsigned n = (unsigned)(changes ? d->n_olds : d->n);

	snprintf(out, size,
		changes ? ngettext("%s \302\267 %u change", "%s \302\267 %u changes", n)
			: ngettext("%s \302\267 %u visit", "%s \302\267 %u visits", n),
		d->season_text, n);
}

void diary_page_draw(struct diary_page *p, struct canvas *c)
{
	const struct trap_diary *d = p->diary;
	char title[sizeof d->title + 64], status[64];
	struct columns s;
	struct message m;
	struct frame f = { .status = status, .status_right = NULL, .message = &m };

	if (!d) {
		canvas_clear(c);
		return;
	}
	diary_find(p);
	snprintf(
		title, sizeof title, "%s", c->cols >= FRAME_WIDE ? d->title : d->brief);
	sift_title(&p->sift, title, sizeof title);
	f.title = title;
	f.right = p->right;
	f.keys = diary_line_keys(p);
	say_status(p, status, sizeof status);
	f.status_right = p->saved;
	fit(&s, p, c->cols);
	int cursor = fill_message(p, &s, c->cols, &m);
	if (!frame_draw(c, &f))
		return;
	if (p->mode == DIARY_CHANGES)
		draw_changes(p, c, &f);
	else
		draw_list(p, &s, c, &f);
	if (p->mode == DIARY_KIND)
		draw_kinds(p, c, f.first, f.last);
	if (cursor > 0)
		canvas_cursor(c, f.message_row, cursor);
}
