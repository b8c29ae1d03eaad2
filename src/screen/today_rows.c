/* today_rows.c - the lines of the Today page, and what has no room. */
#include "base/text.h"
#include "base/words.h"
#include "screen/list.h"
#include "screen/reader.h"
#include "today_lines.h"

#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Rows of a kind under a heading. */
struct part {
	enum line_kind kind;
	const char *head, *none; /* translated; none NULL: without rows no heading */
	size_t from, to;
};

/* The rows of a kind that are shown, from the index `from` on up to `to` (excluded);
 * how many. */
static size_t add_rows(
	struct lines *l, const struct today_page *p, const struct part *part, int cols)
{
	size_t first = today_first(p->today, (enum today_kind)part->kind), n = 0;
	size_t at = sift_place(&p->sift, first + part->from);

	for (; at + n < p->sift.n && p->sift.rows[at + n] < first + part->to; n++) {
		size_t i = p->sift.rows[at + n] - first;

		today_add_line(l, part->kind, i, NULL);
		if (part->kind == LINE_RUN)
			today_add_said(l, LINE_BARRED, p->today->runs[i].barred, cols);
	}
	return n;
}

/* The same under their heading; without rows that is taken away again, or says so. */
static void add_part(
	struct lines *l, const struct today_page *p, struct part part, int cols)
{
	today_add_line(l, LINE_HEAD, 0, part.head);
	if (add_rows(l, p, &part, cols) > 0)
		return;
	if (part.none && !p->sift.narrow.text[0])
		today_add_said(l, LINE_TEXT, part.none, cols);
	else
		l->n--;
}

static void add_runs(struct lines *l, const struct today_page *p, int cols)
{
	const struct today *t = p->today;
	size_t due = 0;

	while (due < t->n_runs && t->runs[due].due)
		due++;
	add_part(l, p,
		(struct part){
			LINE_RUN, _("To run"), _("nothing is due today"), 0, due },
		cols);
	add_part(l, p, (struct part){ LINE_RUN, _("Later"), NULL, due, t->n_runs },
		cols);
}

static void add_verdicts(struct lines *l, const struct today_page *p, int cols)
{
	const struct today *t = p->today;

	if (!t->no_rules)
		add_part(l, p,
			(struct part){ LINE_VERDICT, _("Over threshold"), _("none"), 0,
				t->n_over },
			cols);
	add_part(l, p,
		(struct part){
			LINE_VERDICT, _("Unknown"), NULL, t->n_over, t->n_lines },
		cols);
}

static bool bars_entry(const struct today *t)
{
	bool told = false;

	for (size_t i = 0; i < t->n_runs; i++)
		told |= t->runs[i].barred[0] != '\0';
	return told;
}

/* Wherever something is told of entry or of a pick. */
static void add_caution(struct lines *l, bool is_told, int cols)
{
	if (is_told)
		today_add_said(
			l, LINE_TEXT, _("the label is the law, not this log"), cols);
}

static bool is_picked(const struct today_page *p, const struct page_line *l)
{
	return l->kind <= LINE_NEXT &&
	       today_first(p->today, (enum today_kind)l->kind) + l->index == p->picked;
}

static void draw_line(const struct today_page *p, struct canvas *c, int row,
	const struct page_line *l, const struct today_columns *s)
{
	enum ink ink = is_picked(p, l) ? INK_PICKED : INK_PLAIN;

	if (ink == INK_PICKED) {
		canvas_text(c, row, 0, c->cols, ink, " >");
		canvas_cursor(c, row, 1);
	}
	if (l->kind == LINE_RUN)
		today_draw_run(&s->runs, c, row, ink, &p->today->runs[l->index]);
	else if (l->kind == LINE_VERDICT)
		today_draw_verdict(
			&s->verdicts, c, row, ink, &p->today->lines[l->index]);
	else if (l->kind == LINE_HOT)
		today_draw_hot(&s->hots, c, row, ink, &p->today->hots[l->index]);
	else if (l->kind == LINE_NEXT)
		today_draw_next(&s->nexts, c, row, ink, &p->today->nexts[l->index]);
	else if (l->kind == LINE_HEAD)
		canvas_text(c, row, 1, 0, INK_TITLE, l->text);
	else if (l->kind != LINE_BLANK)
		canvas_textf(c, row, today_left(l->kind), 0,
			l->kind == LINE_BARRED ? INK_UNSURE : INK_PLAIN, "%.*s",
			l->bytes ? (int)l->bytes : INT_MAX, l->text);
}

/* Scrolls to the picked line; with the first one to what stands above it, with the
 * last one to what stands below. */
static void scroll(struct today_page *p, const struct lines *l)
{
	const struct sift *shown = &p->sift;
	size_t at = 0, top = 0, end = l->n - 1;

	while (at < l->n && !is_picked(p, &l->items[at]))
		at++;
	if (shown->n == 0 || p->picked == shown->rows[0])
		page_scroll(l->n, p->rows, &top, &p->top);
	else if (p->picked == shown->rows[shown->n - 1])
		page_scroll(l->n, p->rows, &end, &p->top);
	page_scroll_near(l->n, p->rows, &at, &p->top);
}

static void say_rest(const struct today *t, char *out, size_t size)
{
	if (t->no_rules)
		snprintf(out, size, "%s",
			_("no threshold set: b, then thresholds, types or takes yours"));
	else
		snprintf(out, size, _("others: %d near, %d under%s"), t->n_near,
			t->n_under, t->doubted_text);
}

/* What a run that is hidden would tell of its farm is no row to be found: it stays. */
static void add_hidden_bars(struct lines *l, const struct today_page *p, int cols)
{
	const struct today *t = p->today;

	for (size_t i = 0; i < t->n_runs; i++) {
		if (!t->runs[i].barred[0] || sift_shows(&p->sift, i))
			continue;
		today_add_line(l, LINE_TEXT, 0, t->runs[i].name);
		today_add_said(l, LINE_BARRED, t->runs[i].barred, cols);
	}
}

static void say_hidden(const struct today_page *p, char *out, size_t size)
{
	const struct today *t = p->today;
	size_t from = sift_place(&p->sift, t->n_runs);
	size_t middle = sift_place(&p->sift, t->n_runs + t->n_over);
	size_t to = sift_place(&p->sift, t->n_runs + t->n_lines);
	size_t over = t->n_over - (middle - from);
	size_t unknown = t->n_lines - t->n_over - (to - middle);

	text_copy(out, size, "");
	if (over + unknown > 0)
		snprintf(out, size,
			_("hidden: %zu over, %zu unknown; Esc shows all again"), over,
			unknown);
}

/* What bars entry or a pick is told whatever is looked for. A narrow page has few rows:
 * what is over comes before the picks, so that the first screen shows it. */
static void lay_all(struct lines *l, const struct today_page *p, int cols,
	struct said *planned, struct said *blocks)
{
	const struct today *t = p->today;
	bool all = !p->sift.narrow.text[0], pick = today_tells_of_pick(p);
	bool over_first = cols < FRAME_WIDE && t->n_over > 0;

	add_runs(l, p, cols);
	if (p->sift.n == 0)
		today_add_said(
			l, LINE_TEXT, _("Nothing contains it: Esc shows all."), cols);
	add_hidden_bars(l, p, cols);
	if (!over_first)
		today_add_planned(l, p, cols, planned);
	add_caution(l, bars_entry(t) || (!over_first && pick), cols);
	add_verdicts(l, p, cols);
	if (over_first)
		today_add_planned(l, p, cols, planned);
	today_add_blocks(l, t, cols, blocks);
	add_caution(l, over_first && !bars_entry(t) && pick, cols);
	add_part(l, p, (struct part){ LINE_HOT, _("Hot spots"), NULL, 0, t->n_hots },
		cols);
	if (all)
		say_rest(t, planned->rest, sizeof planned->rest);
	else
		say_hidden(p, planned->rest, sizeof planned->rest);
	if (planned->rest[0]) {
		today_add_line(l, LINE_BLANK, 0, NULL);
		today_add_said(l, LINE_TEXT, planned->rest, cols);
	}
	today_add_said(l, LINE_BARRED, t->no_threshold, cols);
	add_part(
		l, p, (struct part){ LINE_NEXT, _("Next"), NULL, 0, t->n_nexts }, cols);
}

/* A head in the last row would look as if nothing stood below it: it is left out. */
void today_draw_rows(struct today_page *p, struct canvas *c, const struct frame *f)
{
	const struct today_columns s = today_columns_of(p, c->cols);
	struct said planned = { .n = 0 }, blocks = { .n = 0 };
	struct lines l = { 0 };

	lay_all(&l, p, c->cols, &planned, &blocks);
	p->rows = f->last - f->first + 1;
	scroll(p, &l);
	for (int i = 0; i < p->rows && p->top + (size_t)i < l.n; i++) {
		const struct page_line *line = &l.items[p->top + (size_t)i];

		if (line->kind != LINE_HEAD || i + 1 < p->rows)
			draw_line(p, c, f->first + i, line, &s);
	}
	if (p->sift.n == 0)
		canvas_cursor(c, f->first, 0);
	frame_more(c, f, p->top > 0, p->top + (size_t)p->rows < l.n);
	free(l.items);
}

void today_say_picked(struct today_page *p, int cols, struct message *m)
{
	const struct today_run *r = today_picked_run(p);
	const struct today_line *v = today_picked_line(p);
	const struct today_hot *h = today_picked_hot(p);
	const struct today_next *n = today_picked_next(p);
	const struct today_columns s = today_columns_of(p, cols);

	if (r && (s.runs.dropped || r->unknown_text[0]))
		message_set(m, false, "%s: %s, %s, %s%s", r->name, r->traps_text,
			r->last_text, r->bring, r->unknown_text);
	else if (v && s.verdicts.dropped)
		message_set(m, false, "%s, %s, %s, %s: %s", v->farm_name, v->block_name,
			v->pest_code, v->where, v->says);
	else if (h &&
		 (s.hots.dropped || text_cols(h->says) > cols - s.hots.at[SPOT_SAYS]))
		message_set(m, false, "%s, %s", h->name, h->says);
	else if (n &&
		 (s.nexts.dropped || text_cols(n->says) > cols - s.nexts.at[NEXT_SAYS]))
		message_set(m, false, "%s, %s: %s", n->name, n->pest_code, n->says);
}
