#include "base/text.h"
#include "base/words.h"
#include "screen/frame.h"
#include "screen/list.h"
#include "screen/run_entry.h"
#include "screen/run_page.h"
#include "screen/run_typing.h"

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

static const struct column column[COLUMNS] = {
	[TRAP] = { N_("trap"), .least = 4, .whole = COLUMN_LABEL },
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
enum { LEFT = 3, LEFT_NARROW = 2, STATUS_GAP = 3, PAIR_BYTES = 32 };

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

static void want_visit(struct columns *s, const struct run_trap *t)
{
	char field[SAY_SHORT + 4];

	snprintf(field, sizeof field, "[ %s", t->visit_text);
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
		columns_want(s, steady[i], _(column[steady[i]].head));
}

static void fit(struct columns *s, const struct run *r, int cell, int cols)
{
	*s = (struct columns){ .col = column, .n = COLUMNS };
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
			want_visit(s, t);
	}
	if (cols >= FRAME_WIDE)
		columns_fit(s, LEFT, cols - 1);
	else
		columns_fit(s, LEFT_NARROW, cols);
}

static void draw_heads(const struct columns *s, struct canvas *c, int row)
{
	columns_heads(s, c, row);
	if (s->width[OLDER]) {
		int end = s->at[LATER] + s->width[LATER];

		canvas_text(c, row, s->at[OLDER], s->at[OLDER] - end, INK_QUIET,
			_("last four"));
	} else if (s->width[LATER])
		canvas_text(
			c, row, s->at[LATER], -s->width[LATER], INK_QUIET, _("last"));
}

/* In the room right of today: under the verdict if it fits there. */
static void draw_tail(const struct columns *s, struct canvas *c, int row, int from,
	enum ink ink, const char *text)
{
	int at = s->at[VERDICT], cols = text_cols(text);
	int end = c->cols >= FRAME_WIDE ? c->cols - 1 : c->cols;

	if (at + cols > end)
		at = end - cols;
	if (at < from)
		at = from;
	canvas_text(c, row, at, cols < end - at ? cols : end - at, ink, text);
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

/* The field where the hand is; returns the column after it. The cursor stands behind
 * what is typed. */
static int draw_field(struct run_page *p, const struct columns *s, struct canvas *c,
	int row, const struct run_trap *t)
{
	char text[ENTRY_TEXT];
	int at = s->at[TODAY], room = c->cols - 5 - at;
	int cols = 0, wide = 0;

	if (p->entry.touched)
		entry_text(&p->entry, text);
	else
		text_copy(text, sizeof text, t->open ? "" : t->visit_text);
	cols = text_cols(text);
	wide = cols < 2 ? 2 : cols > room && room > 0 ? room : cols;
	canvas_text(c, row, at, 2, INK_FIELD, "[ ");
	canvas_text(c, row, at + 2, wide, INK_FIELD, text);
	canvas_text(c, row, at + 2 + wide, 2, INK_FIELD, " ]");
	if (p->typing == TYPING_COUNT)
		canvas_cursor(c, row, at + 2 + (cols < wide ? cols : wide));
	return at + wide + 5;
}

static void draw_names(const struct columns *s, struct canvas *c, int row,
	const struct run_trap *t, int cell, enum ink ink)
{
	char pair[PAIR_BYTES];

	columns_cell(s, c, row, TRAP, ink, t->label);
	columns_cell(s, c, row, BLOCK, ink, t->block);
	columns_cell(s, c, row, MARKS, ink, marks(t));
	columns_cell(s, c, row, PEST, ink, t->pest);
	columns_cell(s, c, row, LURE, ink, t->lure);
	pair_text(t, 0, cell, pair);
	columns_cell(s, c, row, OLDER, ink, pair);
	pair_text(t, 2, cell, pair);
	columns_cell(s, c, row, LATER, ink, pair);
}

static void draw_other(const struct columns *s, struct canvas *c, int row,
	const struct run_trap *t, int cell)
{
	draw_names(s, c, row, t, cell, INK_PLAIN);
	if (t->open) {
		draw_tail(s, c, row, s->at[TODAY],
			t->lure_due || t->card_due || !t->hangs ? INK_UNSURE
								: INK_PLAIN,
			t->service);
		return;
	}
	if (s->width[TODAY])
		canvas_text(c, row, s->at[TODAY] + 2, 0, INK_PLAIN, t->visit_text);
	draw_answer(s, c, row, t, INK_PLAIN);
}

static void draw_picked(struct run_page *p, const struct columns *s, struct canvas *c,
	int row, const struct run_trap *t)
{
	int cell = cell_cols(p->run), after = 0;

	canvas_text(c, row, 0, c->cols, INK_PICKED, "");
	canvas_text(c, row, c->cols >= FRAME_WIDE ? 1 : 0, 1, INK_PICKED, ">");
	draw_names(s, c, row, t, cell, INK_PICKED);
	if (!t->open && !p->entry.touched)
		draw_answer(s, c, row, t, INK_PICKED);
	after = draw_field(p, s, c, row, t);
	if (t->open && after < c->cols)
		draw_tail(s, c, row, after, INK_PICKED, t->service);
	else if (p->entry.touched && after < c->cols)
		canvas_textf(c, row, after, 0, INK_PICKED, _("was %s"), t->visit_text);
}

static void draw_list(struct run_page *p, struct canvas *c, int first, int last)
{
	const struct run *r = p->run;
	int cell = cell_cols(r);
	struct columns s;

	fit(&s, r, cell, c->cols);
	if (last - first >= 3)
		draw_heads(&s, c, first++);
	p->rows = last - first + 1;
	page_scroll(r->n, p->rows, &p->picked, &p->top);
	for (int i = 0; i < p->rows && p->top + (size_t)i < r->n; i++) {
		size_t at = p->top + (size_t)i;

		if (at == p->picked)
			draw_picked(p, &s, c, first + i, &r->traps[at]);
		else
			draw_other(&s, c, first + i, &r->traps[at], cell);
	}
}

static void say_left(const struct run *r, char *out, size_t size)
{
	char lures[32] = "", cards[32] = "";

	if (r->lures_left > 0)
		snprintf(lures, sizeof lures,
			r->lures_left == 1 ? _("%d lure") : _("%d lures"),
			r->lures_left);
	if (r->cards_left > 0)
		snprintf(cards, sizeof cards,
			r->cards_left == 1 ? _("%d card") : _("%d cards"),
			r->cards_left);
	out[0] = '\0';
	if (lures[0] || cards[0])
		snprintf(out, size, _(" \u00b7 left to bring: %s%s%s"), lures,
			lures[0] && cards[0] ? ", " : "", cards);
}

static void say_status(const struct run_page *p, int cols, char *out, size_t size)
{
	const struct run *r = p->run;
	char over[32] = "", left[128];

	say_left(r, left, sizeof left);
	if (r->over > 0)
		snprintf(over, sizeof over, _(" \u00b7 %d OVER"), r->over);
	snprintf(out, size, _("%d of %d done%s%s"), r->done, (int)r->n, over, left);
	if (text_cols(out) + text_cols(p->saved) + STATUS_GAP + 2 > cols)
		snprintf(out, size, _("%d of %d done%s"), r->done, (int)r->n, over);
}

static void say_under(const struct run_page *p, int cols, char *out, size_t size)
{
	char today[DAY_TEXT_SIZE];
	size_t n = 0;

	snprintf(out, size,
		cols >= FRAME_WIDE ? _("scout %s \u00b7 %s") : "%s \u00b7 %s",
		p->scout[0] ? p->scout : "-", p->run->last_text);
	n = strlen(out);
	day_short(p->run->today, today, sizeof today);
	if (p->run->day != p->run->today)
		snprintf(
			out + n, size - n, _(" \u00b7 back entry, today is %s"), today);
}

/* The end of what is typed, behind its prompt, in one line, and behind it what the
 * last key said. Returns the column of the cursor. */
static int say_typed(const struct run_page *p, int cols, struct message *m)
{
	const char *prompt = typing_prompt(p->typing), *tail = p->line;
	int room = cols - 3 - text_cols(prompt);
	uint32_t cp = 0;

	while (*tail && text_cols(tail) > (room > 0 ? room : 0))
		tail += text_decode(tail, strlen(tail), &cp);
	message_set(m, p->message.is_fault, "%s%s%s%s", prompt, tail,
		p->message.text[0] ? "  " : "", p->message.text);
	return 1 + text_cols(prompt) + text_cols(tail);
}

/* On a narrow page: what its row has no room for. */
static void say_picked(const struct run_page *p, struct message *m)
{
	const struct run_trap *t = &p->run->traps[p->picked];

	if (t->open && t->service[0])
		message_set(m, false, _("Trap %s: %s"), t->label, t->service);
	else if (!t->open && strcmp(t->rule_text, "-") == 0)
		message_set(m, false, _("Trap %s: %s a week, %s"), t->label,
			t->week_text, t->verdict_text);
	else if (!t->open)
		message_set(m, false, _("Trap %s: %s a week, threshold %s: %s"),
			t->label, t->week_text, t->rule_text, t->verdict_text);
}

/* The message line; returns the column of the cursor when it belongs there. */
static int say_message(const struct run_page *p, int cols, struct message *m)
{
	*m = p->message;
	if (p->typing != TYPING_COUNT)
		return say_typed(p, cols, m);
	if (!m->text[0] && cols < FRAME_WIDE && p->picked < p->run->n)
		say_picked(p, m);
	return 0;
}

static void draw_content(struct run_page *p, struct canvas *c, const struct frame *f)
{
	draw_list(p, c, f->first, f->last);
	if (p->run->n == 0)
		canvas_text(
			c, f->first, 1, 0, INK_PLAIN, _("No trap hangs on this farm."));
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
		.keys = run_page_keys() };
	int cursor = 0;

	if (!p->run) {
		canvas_clear(c);
		return;
	}
	f.right = c->cols >= FRAME_WIDE ? p->run->title_day : p->run->title_short;
	snprintf(title, sizeof title, _("Run  %s"), p->run->farm_name);
	say_under(p, c->cols, under, sizeof under);
	say_status(p, c->cols, status, sizeof status);
	cursor = say_message(p, c->cols, &m);
	if (!frame_draw(c, &f))
		return;
	draw_content(p, c, &f);
	if (p->typing != TYPING_COUNT)
		canvas_cursor(c, f.message_row, cursor);
}
