#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "screen/list.h"
#include "screen/reader.h"
#include "today_parts.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* What stands on one row of the page: one that can be picked, or another. */
enum line_kind {
	LINE_RUN = TODAY_RUN,
	LINE_VERDICT = TODAY_VERDICT,
	LINE_HOT = TODAY_HOT,
	LINE_NEXT = TODAY_NEXT,
	LINE_BLANK,
	LINE_HEAD,
	LINE_TEXT,
	LINE_BARRED,
};
struct page_line {
	enum line_kind kind;
	size_t index;     /* of the run, verdict, hot block or what comes next */
	const char *text; /* of the others, translated */
	size_t bytes;     /* of it, on a LINE_BARRED */
};
struct lines {
	struct page_line *items;
	size_t n, cap;
};

enum { BARRED_LEFT = 5, SAID_MOST = 6 };

/* Sentences that are put together for the page. */
struct said {
	char text[SAID_MOST][SAY_LINE * 3];
	char more[SAY_SHORT * 2], rest[SAY_LINE];
};

/* Rows of a kind under a heading. */
struct part {
	enum line_kind kind;
	const char *head, *none; /* translated; none NULL: without rows no heading */
	size_t from, to;
};

static void add_line(
	struct lines *l, enum line_kind kind, size_t index, const char *text)
{
	l->items = mem_grow(l->items, &l->cap, l->n + 1, sizeof *l->items);
	l->items[l->n++] = (struct page_line){ kind, index, text, 0 };
}

/* What bars entry or a pick, whole: as many rows as it takes. */
static void add_barred(struct lines *l, const char *text, int cols)
{
	while (*text) {
		size_t n = reader_wrap(text, cols - BARRED_LEFT - 1);

		add_line(l, LINE_BARRED, 0, text);
		l->items[l->n - 1].bytes = n;
		text += n + strspn(text + n, " ");
	}
}

/* The rows of a kind that are shown, from the index `from` on up to `to` (excluded);
 * how many. */
static size_t add_rows(
	struct lines *l, const struct today_page *p, const struct part *part, int cols)
{
	size_t first = today_first(p->today, (enum today_kind)part->kind), n = 0;
	size_t at = sift_place(&p->sift, first + part->from);

	for (; at + n < p->sift.n && p->sift.rows[at + n] < first + part->to; n++) {
		size_t i = p->sift.rows[at + n] - first;

		add_line(l, part->kind, i, NULL);
		if (part->kind == LINE_RUN)
			add_barred(l, p->today->runs[i].barred, cols);
	}
	return n;
}

/* The same under their heading; without rows that is taken away again, or says so. */
static void add_part(
	struct lines *l, const struct today_page *p, struct part part, int cols)
{
	add_line(l, LINE_HEAD, 0, part.head);
	if (add_rows(l, p, &part, cols) > 0)
		return;
	if (part.none && !p->sift.narrow.text[0])
		add_line(l, LINE_TEXT, 0, part.none);
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

/* Of a block whose planned pick is told as too early its earliest pick is told there. */
static bool is_told(const struct today *t, const struct pick_row *block)
{
	for (size_t i = 0; block->id == 0 && i < t->picks.n; i++)
		if (t->picks.items[i].id != 0 &&
			t->picks.items[i].block == block->block &&
			t->picks.items[i].tone == TONE_OVER &&
			!t->picks.items[i].is_done)
			return true;
	return false;
}

static bool is_said(const struct pick_row *r)
{
	return r->tone != TONE_PLAIN && r->tone != TONE_QUIET;
}

/* A narrow page has few rows: there k tells the rest. */
static void say_pick(const struct pick_row *r, int cols, char *out, size_t size)
{
	if (r->id == 0)
		snprintf(out, size, "%s: %s", r->place, r->says);
	else if (cols < FRAME_WIDE)
		snprintf(out, size,
			r->tone == TONE_OVER ? _("%s, %s: too early")
					     : _("%s, %s: in doubt"),
			r->day_text, r->place);
	else
		snprintf(out, size,
			r->is_done ? _("%s, picked on %s: %s")
				   : _("%s, pick planned for %s: %s"),
			r->place, r->day_text, r->says);
}

/* Planned picks that are not just allowed, or blocks without one that may not be picked
 * yet; the text of each is in `said`. */
static void add_picks(
	struct lines *l, const struct today *t, int cols, bool planned, struct said *s)
{
	size_t shown = 0, others = 0;

	for (size_t i = 0; i < t->picks.n; i++) {
		const struct pick_row *r = &t->picks.items[i];

		if ((r->id != 0) != planned || !is_said(r) || is_told(t, r))
			continue;
		if (shown == SAID_MOST) {
			others++;
			continue;
		}
		say_pick(r, cols, s->text[shown], sizeof s->text[shown]);
		if (shown == 0)
			add_line(l, LINE_HEAD, 0,
				planned ? _("Picks") : _("Not to be picked yet"));
		add_barred(l, s->text[shown++], cols);
	}
	if (others == 0)
		return;
	snprintf(s->more, sizeof s->more, _("and %zu more: k"), others);
	add_line(l, LINE_TEXT, 0, s->more);
}

static bool bars_entry(const struct today *t)
{
	bool told = false;

	for (size_t i = 0; i < t->n_runs; i++)
		told |= t->runs[i].barred[0] != '\0';
	return told;
}

static bool bars_pick(const struct today *t)
{
	bool told = false;

	for (size_t i = 0; i < t->picks.n; i++)
		told |= is_said(&t->picks.items[i]);
	return told;
}

/* Wherever entry or a pick is barred. */
static void add_caution(struct lines *l, bool is_barred)
{
	if (is_barred)
		add_line(l, LINE_TEXT, 0, _("the label is the law, not this log"));
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
	else if (l->kind == LINE_BARRED)
		canvas_textf(c, row, BARRED_LEFT, 0, INK_UNSURE, "%.*s", (int)l->bytes,
			l->text);
	else if (l->kind == LINE_HEAD)
		canvas_text(c, row, 1, 0, INK_TITLE, l->text);
	else if (l->kind == LINE_TEXT)
		canvas_text(c, row, 3, 0, INK_PLAIN, l->text);
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
		add_line(l, LINE_TEXT, 0, t->runs[i].name);
		add_barred(l, t->runs[i].barred, cols);
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
	bool all = !p->sift.narrow.text[0], no_pick = bars_pick(t);
	bool over_first = cols < FRAME_WIDE && t->n_over > 0;

	add_runs(l, p, cols);
	if (p->sift.n == 0)
		add_line(l, LINE_TEXT, 0,
			_("Nothing contains it: Esc shows all again."));
	add_hidden_bars(l, p, cols);
	if (!over_first)
		add_picks(l, t, cols, true, planned);
	add_caution(l, bars_entry(t) || (!over_first && no_pick));
	add_verdicts(l, p, cols);
	if (over_first)
		add_picks(l, t, cols, true, planned);
	add_picks(l, t, cols, false, blocks);
	add_caution(l, over_first && !bars_entry(t) && no_pick);
	add_part(l, p, (struct part){ LINE_HOT, _("Hot spots"), NULL, 0, t->n_hots },
		cols);
	if (all)
		say_rest(t, planned->rest, sizeof planned->rest);
	else
		say_hidden(p, planned->rest, sizeof planned->rest);
	if (planned->rest[0]) {
		add_line(l, LINE_BLANK, 0, NULL);
		add_line(l, LINE_TEXT, 0, planned->rest);
	}
	add_barred(l, t->no_threshold, cols);
	add_part(
		l, p, (struct part){ LINE_NEXT, _("Next"), NULL, 0, t->n_nexts }, cols);
}

/* A head in the last row would look as if nothing stood below it: it is left out. */
void today_draw_rows(struct today_page *p, struct canvas *c, const struct frame *f)
{
	const struct today_columns s = today_columns_of(p, c->cols);
	struct said planned, blocks;
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

	if (r && s.runs.dropped)
		message_set(m, false, "%s: %s, %s, %s", r->name, r->traps_text,
			r->last_text, r->bring);
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
