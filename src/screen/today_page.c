#include "screen/today_page.h"

#include "base/mem.h"
#include "base/words.h"
#include "screen/frame.h"
#include "screen/list.h"
#include "screen/reader.h"

#include <stdio.h>
#include <stdlib.h>

enum {
	TODAY_OPEN = LIST_OTHERS,
	TODAY_WEEK,
	TODAY_PRINT,
	TODAY_STAY,
	TODAY_HELP,
	TODAY_QUIT,
};

static const struct key_row rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, TODAY_OPEN, "Enter", N_("run, or why"),
		N_("on a farm: its run; on a trap or block: what stands behind the "
		   "verdict") },
	LIST_KEYS,
	{ { INPUT_CHAR, 'w' }, { INPUT_NONE, 0 }, TODAY_WEEK, "w", N_("week"),
		N_("the week's answers for all farms") },
	{ { INPUT_CHAR, 'p' }, { INPUT_NONE, 0 }, TODAY_PRINT, "p", N_("print"),
		N_("the weekly sheet of the picked farm, into a file") },
	{ { INPUT_CHAR, 'q' }, { INPUT_NONE, 0 }, TODAY_QUIT, "q", N_("quit"),
		N_("ends the program; everything is saved already") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, TODAY_STAY, "Esc", NULL,
		N_("stays here, on the first page") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, TODAY_HELP, "?", N_("keys"),
		N_("this page") },
};

enum { NAME, TRAPS, LAST, BRING, RUN_COLUMNS };

static const struct column run_column[RUN_COLUMNS] = {
	[NAME] = { "", .least = 10 },
	[TRAPS] = { "", .drop = 2, .whole = COLUMN_NUMBER },
	[LAST] = { "", .drop = 1, .whole = COLUMN_NUMBER },
	[BRING] = { "", .least = 12, .whole = 24 },
};

enum { FARM, BLOCK, PEST, WHERE, SAYS, VERDICT_COLUMNS };

static const struct column verdict_column[VERDICT_COLUMNS] = {
	[FARM] = { "", .least = 8, .drop = 1 },
	[BLOCK] = { "", .least = 8 },
	[PEST] = { "", .drop = 2, .whole = COLUMN_NUMBER },
	[WHERE] = { "", .least = 7, .whole = COLUMN_LABEL },
	[SAYS] = { "", .least = 24 },
};

/* What stands on one row of the page. */
enum line_kind { LINE_BLANK, LINE_HEAD, LINE_TEXT, LINE_RUN, LINE_VERDICT };
struct line {
	enum line_kind kind;
	size_t index;     /* of the run or verdict */
	const char *text; /* of the others, translated */
};
struct lines {
	struct line *items;
	size_t n, cap;
};

struct key_rows today_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

static const struct today_run *picked_run(const struct today_page *p)
{
	return p->picked < p->today->n_runs ? &p->today->runs[p->picked] : NULL;
}

static const struct today_line *picked_line(const struct today_page *p)
{
	size_t at = p->picked - p->today->n_runs;

	if (p->picked < p->today->n_runs || at >= p->today->n_lines)
		return NULL;
	return &p->today->lines[at];
}

static struct wish farm_wish(const struct today_page *p, enum want want)
{
	const struct today_run *run = picked_run(p);
	const struct today_line *line = picked_line(p);
	struct wish w = page_wish(run || line ? want : WANT_NOTHING);

	w.day = p->today->day;
	w.farm = run ? run->farm : line ? line->farm : 0;
	return w;
}

static struct wish open_picked(const struct today_page *p)
{
	const struct today_line *line = picked_line(p);
	struct wish w = farm_wish(p, line ? WANT_WHY : WANT_RUN);

	if (line) {
		w.block = line->block;
		w.pest = line->pest;
		w.trap = line->trap;
	}
	return w;
}

struct wish today_page_key(struct today_page *p, struct input in)
{
	int action = keys_find(today_page_keys(), in);

	if (in.kind == INPUT_NONE || in.kind == INPUT_RESIZE || in.kind == INPUT_LEAVE)
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	if (list_move(
		    action, p->today->n_runs + p->today->n_lines, p->rows, &p->picked))
		return page_wish(WANT_NOTHING);
	if (p->today->n_runs == 0 && (action == TODAY_OPEN || action == TODAY_PRINT)) {
		message_set(&p->message, false,
			_("No trap hangs yet: q leaves, then mothtally import traps "
			  "FILE."));
		return page_wish(WANT_NOTHING);
	}
	switch (action) {
	case TODAY_OPEN:
		return open_picked(p);
	case TODAY_WEEK:
		return page_wish(WANT_WEEK);
	case TODAY_PRINT:
		return farm_wish(p, WANT_SHEET);
	case TODAY_HELP:
		return page_wish(WANT_HELP);
	case TODAY_QUIT:
		return page_wish(WANT_QUIT);
	case TODAY_STAY:
		message_set(&p->message, false, _("This is the first page: q ends."));
		break;
	default:
		page_no_key(&p->message, in);
	}
	return page_wish(WANT_NOTHING);
}

static void add_line(
	struct lines *l, enum line_kind kind, size_t index, const char *text)
{
	l->items = mem_grow(l->items, &l->cap, l->n + 1, sizeof *l->items);
	l->items[l->n++] = (struct line){ kind, index, text };
}

static void add_runs(struct lines *l, const struct today *t)
{
	size_t due = 0;

	while (due < t->n_runs && t->runs[due].due)
		due++;
	add_line(l, LINE_HEAD, 0, _("To run"));
	if (due == 0)
		add_line(l, LINE_TEXT, 0, _("nothing is due today"));
	for (size_t i = 0; i < t->n_runs; i++) {
		if (i == due)
			add_line(l, LINE_HEAD, 0, _("Later"));
		add_line(l, LINE_RUN, i, NULL);
	}
}

static void add_verdicts(struct lines *l, const struct today *t)
{
	if (!t->no_rules)
		add_line(l, LINE_HEAD, 0, _("Over threshold"));
	if (t->n_over == 0 && !t->no_rules)
		add_line(l, LINE_TEXT, 0, _("none"));
	for (size_t i = 0; i < t->n_lines; i++) {
		if (i == t->n_over)
			add_line(l, LINE_HEAD, 0, _("Unknown"));
		add_line(l, LINE_VERDICT, i, NULL);
	}
}

static void columns_of(
	const struct today *t, struct columns *runs, struct columns *verdicts, int cols)
{
	*runs = (struct columns){ .col = run_column, .n = RUN_COLUMNS };
	*verdicts = (struct columns){ .col = verdict_column, .n = VERDICT_COLUMNS };
	for (size_t i = 0; i < t->n_runs; i++) {
		columns_want(runs, NAME, t->runs[i].name);
		columns_want(runs, TRAPS, t->runs[i].traps_text);
		columns_want(runs, LAST, t->runs[i].last_text);
		columns_want(runs, BRING, t->runs[i].bring);
	}
	for (size_t i = 0; i < t->n_lines; i++) {
		columns_want(verdicts, FARM, t->lines[i].farm_name);
		columns_want(verdicts, BLOCK, t->lines[i].block_name);
		columns_want(verdicts, PEST, t->lines[i].pest_code);
		columns_want(verdicts, WHERE, t->lines[i].where);
		columns_want(verdicts, SAYS, t->lines[i].says);
	}
	columns_fit(runs, 3, cols - 1);
	columns_fit(verdicts, 3, cols - 1);
}

static void draw_run(const struct columns *s, struct canvas *c, int row, enum ink ink,
	const struct today_run *r)
{
	columns_cell(s, c, row, NAME, ink, r->name);
	columns_cell(s, c, row, TRAPS, ink, r->traps_text);
	columns_cell(s, c, row, LAST, ink, r->last_text);
	columns_cell(s, c, row, BRING, ink, r->bring);
}

static void draw_verdict(const struct columns *s, struct canvas *c, int row,
	enum ink ink, const struct today_line *v)
{
	enum ink says = ink;

	if (ink == INK_PLAIN)
		says = v->verdict == VERDICT_OVER ? INK_OVER : INK_UNSURE;
	columns_cell(s, c, row, FARM, ink, v->farm_name);
	columns_cell(s, c, row, BLOCK, ink, v->block_name);
	columns_cell(s, c, row, PEST, ink, v->pest_code);
	columns_cell(s, c, row, WHERE, ink, v->where);
	canvas_textf(c, row, s->at[SAYS], 0, says, "%.*s",
		(int)reader_cut(v->says, c->cols - s->at[SAYS]), v->says);
}

static bool is_picked(const struct today_page *p, const struct line *l)
{
	size_t before = l->kind == LINE_RUN ? 0 : p->today->n_runs;

	return (l->kind == LINE_RUN || l->kind == LINE_VERDICT) &&
	       l->index + before == p->picked;
}

static void draw_line(const struct today_page *p, struct canvas *c, int row,
	const struct line *l, const struct columns s[static 2])
{
	enum ink ink = is_picked(p, l) ? INK_PICKED : INK_PLAIN;

	if (ink == INK_PICKED) {
		canvas_text(c, row, 0, c->cols, ink, " >");
		canvas_cursor(c, row, 1);
	}
	if (l->kind == LINE_RUN)
		draw_run(&s[0], c, row, ink, &p->today->runs[l->index]);
	else if (l->kind == LINE_VERDICT)
		draw_verdict(&s[1], c, row, ink, &p->today->lines[l->index]);
	else if (l->kind == LINE_HEAD)
		canvas_text(c, row, 1, 0, INK_TITLE, l->text);
	else if (l->kind == LINE_TEXT)
		canvas_text(c, row, 3, 0, INK_PLAIN, l->text);
}

/* Scrolls to the picked line; with the first one to what stands above it, with the
 * last one to what stands below. */
static void scroll(struct today_page *p, const struct lines *l)
{
	size_t at = 0, top = 0, end = l->n - 1;

	while (at < l->n && !is_picked(p, &l->items[at]))
		at++;
	if (p->picked == 0)
		page_scroll(l->n, p->rows, &top, &p->top);
	else if (p->picked + 1 == p->today->n_runs + p->today->n_lines)
		page_scroll(l->n, p->rows, &end, &p->top);
	page_scroll_near(l->n, p->rows, &at, &p->top);
}

static void say_rest(const struct today *t, char *out, size_t size)
{
	if (t->no_rules)
		snprintf(out, size, "%s",
			_("no threshold set: mothtally import thresholds FILE sets "
			  "yours"));
	else
		snprintf(out, size, _("others: %d near, %d under"), t->n_near,
			t->n_under);
}

static void draw_empty(struct canvas *c, int first, int last)
{
	const struct paragraph text[] = {
		{ INK_TITLE, 0, NULL, _("No trap hangs yet.") },
		{ INK_PLAIN, 0, NULL, "" },
		{ INK_PLAIN, 0, NULL,
			_("Your farms, blocks and traps come in from one CSV file, a "
			  "row a trap. Leave with q, then type:") },
		{ INK_TITLE, 4, NULL, "mothtally import traps FILE" },
		{ INK_PLAIN, 0, NULL, "" },
		{ INK_PLAIN, 0, NULL,
			_("To look around in an invented season first:") },
		{ INK_TITLE, 4, NULL, "mothtally demo" },
		{ INK_PLAIN, 0, NULL, "" },
		{ INK_PLAIN, 0, NULL,
			_("The columns of the file stand in the manual: man 5 "
			  "mothtally.") },
	};
	size_t top = 0;

	reader_draw(c, first, last, &top, text, sizeof text / sizeof *text);
}

/* A head in the last row would look as if nothing stood below it: it is left out. */
static void draw_lines(struct today_page *p, struct canvas *c, const struct frame *f)
{
	char rest[SAY_LINE];
	struct lines l = { 0 };
	struct columns s[2];

	add_runs(&l, p->today);
	add_verdicts(&l, p->today);
	say_rest(p->today, rest, sizeof rest);
	add_line(&l, LINE_BLANK, 0, NULL);
	add_line(&l, LINE_TEXT, 0, rest);
	columns_of(p->today, &s[0], &s[1], c->cols);
	p->rows = f->last - f->first + 1;
	scroll(p, &l);
	for (int i = 0; i < p->rows && p->top + (size_t)i < l.n; i++) {
		const struct line *line = &l.items[p->top + (size_t)i];

		if (line->kind != LINE_HEAD || i + 1 < p->rows)
			draw_line(p, c, f->first + i, line, s);
	}
	frame_more(c, f, p->top > 0, p->top + (size_t)p->rows < l.n);
	free(l.items);
}

/* The picked one in full, where its row may be cut. */
static void say_picked(const struct today_page *p, int cols, struct message *m)
{
	const struct today_run *r = picked_run(p);
	const struct today_line *v = picked_line(p);
	struct columns s[2];

	columns_of(p->today, &s[0], &s[1], cols);
	if (r && s[0].dropped)
		message_set(m, false, "%s: %s, %s, %s", r->name, r->traps_text,
			r->last_text, r->bring);
	else if (v && s[1].dropped)
		message_set(m, false, "%s, %s, %s, %s: %s", v->farm_name, v->block_name,
			v->pest_code, v->where, v->says);
}

void today_page_draw(struct today_page *p, struct canvas *c)
{
	const struct today *t = p->today;
	struct message m = p->message;
	struct frame f = {
		.title = "mothtally", .message = &m, .keys = today_page_keys()
	};
	size_t n = t->n_runs + t->n_lines;

	f.right = c->cols >= FRAME_WIDE ? t->title : t->title_short;
	if (p->picked >= n)
		p->picked = n ? n - 1 : 0;
	if (!m.text[0])
		say_picked(p, c->cols, &m);
	if (!frame_draw(c, &f))
		return;
	if (n == 0)
		draw_empty(c, f.first, f.last);
	else
		draw_lines(p, c, &f);
}
