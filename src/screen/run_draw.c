/* run_draw.c - the Run page on its canvas. */
#include "base/text.h"
#include "base/words.h"
#include "screen/frame.h"
#include "screen/list.h"
#include "screen/reader.h"
#include "screen/run_entry.h"
#include "screen/run_say.h"

#include <stdio.h>
#include <string.h>

enum {
	TRAP,
	BLOCK,
	MARKS,
	PEST,
	LURE,
	OLDER,
	LATER,
	TODAY,
	WEEK,
	RULE,
	VERDICT,
	NOTE,
	COLUMNS
};

static const struct list_column column[COLUMNS] = {
	[TRAP] = { NC_("column", "trap"), .least = 4, .whole = COLUMN_LABEL },
	[BLOCK] = { N_("block"), .least = 8, .drop = 9 },
	[MARKS] = { "", .least = 1, .drop = 7, .whole = COLUMN_NUMBER },
	[PEST] = { N_("pest"), .least = 4, .drop = 5 },
	[LURE] = { N_("lure"), .least = 12, .drop = 2 },
	[OLDER] = { "", .least = 5, .drop = 4, .whole = COLUMN_NUMBER },
	[LATER] = { "", .least = 5, .drop = 8, .whole = COLUMN_NUMBER },
	[TODAY] = { N_(" today"), .least = 8, .whole = COLUMN_NUMBER },
	[WEEK] = { N_("a week"), .least = 6, .drop = 6, .whole = COLUMN_NUMBER,
		.right = true },
	[RULE] = { N_("thr."), .least = 4, .drop = 3, .whole = COLUMN_NUMBER },
	[VERDICT] = { N_("verdict"), .least = 7 },
	[NOTE] = { N_("note"), .least = 12, .drop = 1 },
};

enum { EXTRA_COLS = 96 }; /* from this width there are a lure and a note column */
enum { LEFT = 3, LEFT_NARROW = 2, PAIR_BYTES = 32 };
enum { FIELD_COLS = 4, FIELD_LEAST = 2 }; /* brackets and blanks; what is in them */

/* How the list is set in this frame. */
struct table {
	struct columns s;
	int cell; /* columns of one of the last four */
	int32_t day;
};

static const char *marks(const struct run_trap *t)
{
	if (t->is_border)
		return t->is_disrupted ? "bd" : "b";
	return t->is_disrupted ? "d" : "";
}

/* Two of the last four, each set to the right in `cell` columns. */
static void pair_text(
	const struct run_trap *t, size_t from, int cell, char out[static PAIR_BYTES])
{
	snprintf(out, PAIR_BYTES, "%*s %*s", cell, t->last[from], cell,
		t->last[from + 1]);
}

static int cell_cols(const struct run *r)
{
	int cols = 2;

	for (size_t i = 0; i < r->n; i++)
		for (size_t k = 0; k < RUN_LAST; k++)
			if ((int)strlen(r->traps[i].last[k]) > cols)
				cols = (int)strlen(r->traps[i].last[k]);
	return cols;
}

static void want_visit(struct columns *s, const struct run_trap *t, int32_t day)
{
	char visit[RUN_VISIT], field[RUN_VISIT + 4];

	run_say_visit(t, day, visit);
	snprintf(field, sizeof field, "[ %s", visit);
	columns_want(s, TODAY, field);
	columns_want(s, WEEK, t->week_text);
	columns_want(s, RULE, t->rule_text);
	columns_want(s, VERDICT, t->verdict_text);
}

static void want_extra(struct columns *s, const struct run_trap *t)
{
	columns_want(s, LURE, t->lure);
	if (!t->open)
		columns_want(s, NOTE, t->words.note);
}

static void want_heads(struct columns *s)
{
	static const size_t steady[] = { TRAP, BLOCK, PEST, TODAY, WEEK, RULE,
		VERDICT };

	for (size_t i = 0; i < sizeof steady / sizeof *steady; i++)
		columns_want(s, steady[i], words_in(column[steady[i]].head));
}

static int service_cols(const struct run *r)
{
	int most = 0;

	for (size_t i = 0; i < r->n; i++)
		if (r->traps[i].open && text_cols(run_say_open(&r->traps[i])) > most)
			most = text_cols(run_say_open(&r->traps[i]));
	return most;
}

/* Beside an empty field there should be room for what is to be done at the trap. */
static void fit(struct table *v, const struct run *r, int cols)
{
	struct columns *s = &v->s;
	int cell = cell_cols(r);

	*v = (struct table){ { .col = column, .n = COLUMNS }, cell, r->day };
	want_heads(s);
	s->want[OLDER] = s->want[LATER] = 2 * cell + 1;
	for (size_t i = 0; i < r->n; i++) {
		const struct run_trap *t = &r->traps[i];

		columns_want(s, TRAP, t->label);
		columns_want(s, BLOCK, t->block);
		columns_want(s, MARKS, marks(t));
		columns_want(s, PEST, t->pest);
		if (cols >= EXTRA_COLS)
			want_extra(s, t);
		if (!t->open)
			want_visit(s, t, r->day);
	}
	if (cols < FRAME_WIDE) {
		columns_fit(s, LEFT_NARROW, cols);
		return;
	}
	columns_fit(s, LEFT, cols - 1);
	s->tight = s->at[TODAY] + FIELD_LEAST + FIELD_COLS + 1 + service_cols(r) >
		   cols - 1;
	columns_fit(s, LEFT, cols - 1);
}

static void draw_heads(const struct columns *s, struct canvas *c, int row)
{
	columns_heads(s, c, row);
	if (s->width[OLDER]) {
		int end = s->at[LATER] + s->width[LATER];

		canvas_text(c, row, s->at[OLDER], s->at[OLDER] - end, INK_QUIET,
			_("last 4/week"));
	} else if (s->width[LATER])
		canvas_text(
			c, row, s->at[LATER], -s->width[LATER], INK_QUIET, _("last"));
}

static int tail_end(const struct canvas *c)
{
	return c->cols >= FRAME_WIDE ? c->cols - 1 : c->cols;
}

/* In the room right of today: under the verdict if it fits there. */
static void draw_tail(const struct columns *s, struct canvas *c, int row, int from,
	enum ink ink, const char *text)
{
	char shown[SAY_LINE];
	int at = s->at[VERDICT], end = tail_end(c);

	snprintf(shown, sizeof shown, "%.*s", (int)reader_cut(text, end - from), text);
	if (at + text_cols(shown) > end)
		at = end - text_cols(shown);
	canvas_text(c, row, at > from ? at : from, 0, ink, shown);
}

static void draw_answer(const struct columns *s, struct canvas *c, int row,
	const struct run_trap *t, enum ink ink)
{
	enum ink tone = list_ink(t->verdict_tone);

	columns_cell(s, c, row, WEEK, ink, t->week_text);
	columns_cell(s, c, row, RULE, ink, t->rule_text);
	columns_cell(s, c, row, NOTE, ink, t->words.note);
	columns_cell(s, c, row, VERDICT, ink, "");
	canvas_text(c, row, s->at[VERDICT],
		text_cols(t->verdict_text) > s->width[VERDICT] ? s->width[VERDICT] : 0,
		tone == INK_PLAIN || tone == INK_QUIET ? ink : tone, t->verdict_text);
}

static void field_text(const struct run_page *p, const struct run_trap *t,
	char out[static RUN_ENTRY_TEXT])
{
	if (p->entry.touched)
		run_entry_text(&p->entry, out);
	else
		text_copy(out, RUN_ENTRY_TEXT, t->open ? "" : t->visit_text);
}

/* Columns between the brackets of a field that starts at `at`. */
static int field_cols(const char *text, int at, int cols)
{
	int room = cols - FIELD_COLS - 1 - at, wide = text_cols(text);

	if (wide > room && room > 0)
		wide = room;
	return wide < FIELD_LEAST ? FIELD_LEAST : wide;
}

/* The field where the hand is; returns the column after it. The cursor stands behind
 * what is typed. */
static int draw_field(struct run_page *p, const struct columns *s, struct canvas *c,
	int row, const struct run_trap *t)
{
	char text[RUN_ENTRY_TEXT];
	int at = s->at[TODAY], cols = 0, wide = 0;

	field_text(p, t, text);
	cols = text_cols(text);
	wide = field_cols(text, at, c->cols);
	canvas_text(c, row, at, 2, INK_FIELD, "[ ");
	canvas_text(c, row, at + 2, wide, INK_FIELD, text);
	canvas_text(c, row, at + 2 + wide, 2, INK_FIELD, " ]");
	if (p->typing == TYPING_COUNT)
		canvas_cursor(c, row, at + 2 + (cols < wide ? cols : wide));
	return at + wide + FIELD_COLS + 1;
}

static void draw_names(const struct table *v, struct canvas *c, int row,
	const struct run_trap *t, enum ink ink)
{
	const struct columns *s = &v->s;
	char pair[PAIR_BYTES];

	columns_cell(s, c, row, TRAP, ink, t->label);
	columns_cell(s, c, row, BLOCK, ink, t->block);
	columns_cell(s, c, row, MARKS, ink, marks(t));
	columns_cell(s, c, row, PEST, ink, t->pest);
	columns_cell(s, c, row, LURE, ink, t->lure);
	pair_text(t, 0, v->cell, pair);
	columns_cell(s, c, row, OLDER, ink, pair);
	pair_text(t, 2, v->cell, pair);
	columns_cell(s, c, row, LATER, ink, pair);
}

/* What is saved there and what it means. */
static void draw_visit(const struct table *v, struct canvas *c, int row,
	const struct run_trap *t, enum ink ink)
{
	char visit[RUN_VISIT];

	run_say_visit(t, v->day, visit);
	if (v->s.width[TODAY])
		canvas_text(c, row, v->s.at[TODAY] + 2, 0, ink, visit);
	draw_answer(&v->s, c, row, t, ink);
}

static void draw_other(
	const struct table *v, struct canvas *c, int row, const struct run_trap *t)
{
	bool due = t->lure_due || t->card_due || !t->hangs;

	draw_names(v, c, row, t, INK_PLAIN);
	if (t->open)
		draw_tail(&v->s, c, row, v->s.at[TODAY], due ? INK_UNSURE : INK_PLAIN,
			run_say_open(t));
	else
		draw_visit(v, c, row, t, INK_PLAIN);
}

/* What a key would change stands between brackets, what it would not does not. */
static bool has_field(const struct run_page *p, const struct run_trap *t)
{
	return t->open || p->entry.touched ||
	       (run_entry_corrects(t, p->run->day) && !p->at_rest);
}

/* Behind what is typed: what is saved there. */
static void draw_saved(const struct table *v, struct canvas *c, int row, int col,
	const struct run_trap *t)
{
	char visit[RUN_VISIT], text[RUN_VISIT + 16];

	run_say_visit(t, v->day, visit);
	snprintf(text, sizeof text,
		run_entry_corrects(t, v->day) ? _("was %s") : _("after %s"), visit);
	if (col < tail_end(c))
		canvas_textf(c, row, col, 0, INK_PICKED, "%.*s",
			(int)reader_cut(text, tail_end(c) - col), text);
}

/* Not in "lure 3" of "lure 3 d late": beside a field it would read as a number of
 * lures. */
static bool has_part(const char *service, int cols)
{
	size_t cut = cols > 0 ? reader_cut(service, cols) : 0;

	return cut > 0 && (service[cut] == '\0' || service[cut] == ',');
}

static void draw_picked(struct run_page *p, const struct table *v, struct canvas *c,
	int row, const struct run_trap *t)
{
	int after = 0;

	canvas_text(c, row, 0, c->cols, INK_PICKED, "");
	canvas_text(c, row, c->cols >= FRAME_WIDE ? 1 : 0, 1, INK_PICKED, ">");
	draw_names(v, c, row, t, INK_PICKED);
	if (!has_field(p, t)) {
		draw_visit(v, c, row, t, INK_PICKED);
		canvas_cursor(c, row, v->s.at[TODAY] + 2);
		return;
	}
	if (!t->open && !p->entry.touched)
		draw_answer(&v->s, c, row, t, INK_PICKED);
	after = draw_field(p, &v->s, c, row, t);
	if (!t->open && p->entry.touched)
		draw_saved(v, c, row, after, t);
	else if (t->open && has_part(run_say_open(t), tail_end(c) - after))
		draw_tail(&v->s, c, row, after, INK_PICKED, run_say_open(t));
}

static void draw_list(struct run_page *p, const struct table *v, struct canvas *c,
	const struct frame *f)
{
	const struct run *r = p->run;
	int first = f->first;

	if (f->last - first >= 3 && r->n > 0)
		draw_heads(&v->s, c, first++);
	p->rows = f->last - first + 1;
	page_scroll_near(r->n, p->rows, &p->picked, &p->top);
	for (int i = 0; i < p->rows && p->top + (size_t)i < r->n; i++) {
		size_t at = p->top + (size_t)i;

		if (at == p->picked)
			draw_picked(p, v, c, first + i, &r->traps[at]);
		else
			draw_other(v, c, first + i, &r->traps[at]);
	}
	frame_more(c, f, p->top > 0, p->top + (size_t)p->rows < r->n);
	if (r->n == 0)
		canvas_text(
			c, f->first, 1, 0, INK_PLAIN, _("No trap hangs on this farm."));
}

/* True if the picked row has no room for all that the page knows of its trap. */
static bool is_cut(
	const struct run_page *p, const struct table *v, const struct canvas *c)
{
	const struct run_trap *t = NULL;
	char text[RUN_ENTRY_TEXT];
	int at = v->s.at[TODAY];

	if (p->picked >= p->run->n)
		return false;
	t = &p->run->traps[p->picked];
	if (!t->open)
		return c->cols < FRAME_WIDE;
	field_text(p, t, text);
	at += field_cols(text, at, c->cols) + FIELD_COLS + 1;
	return text_cols(run_say_open(t)) > tail_end(c) - at;
}

void run_page_draw(struct run_page *p, struct canvas *c)
{
	char title[NAME_BYTES + 16], under[256], status[256];
	struct message m;
	struct frame f = { .title = title,
		.under = under,
		.status = status,
		.status_right = p->saved,
		.message = &m,
		.keys = run_line_keys(p) };
	struct table v;
	int cursor = 0;

	if (!p->run) {
		canvas_clear(c);
		return;
	}
	p->cols = c->cols;
	f.right = c->cols >= FRAME_WIDE ? p->run->title_day : p->run->title_short;
	snprintf(title, sizeof title, _("Run  %s"), p->run->farm_name);
	run_say_under(p, c->cols, under, sizeof under);
	run_say_status(p, c->cols, status, sizeof status);
	fit(&v, p->run, c->cols);
	cursor = run_say_message(p, c->cols, is_cut(p, &v, c), &m);
	if (!frame_draw(c, &f))
		return;
	draw_list(p, &v, c, &f);
	if (p->typing != TYPING_COUNT)
		canvas_cursor(c, f.message_row, cursor);
}
