#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "screen/list.h"
#include "screen/reader.h"
#include "today_parts.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* What stands on one row of the page. Those that can be picked come last. */
enum line_kind {
	LINE_BLANK,
	LINE_HEAD,
	LINE_TEXT,
	LINE_BARRED,
	LINE_RUN,
	LINE_VERDICT,
	LINE_HOT,
	LINE_NEXT
};
struct line {
	enum line_kind kind;
	size_t index;     /* of the run, verdict, hot block or what comes next */
	const char *text; /* of the others, translated */
	size_t bytes;     /* of it, on a LINE_BARRED */
};
struct lines {
	struct line *items;
	size_t n, cap;
};

enum { BARRED_LEFT = 5, SAID_MOST = 6 };

/* Sentences that are put together for the page. */
struct said {
	char text[SAID_MOST][SAY_LINE * 3];
	char more[SAY_SHORT * 2];
};

size_t today_count(const struct today *t)
{
	return t->n_runs + t->n_lines + t->n_hots + t->n_nexts;
}

const struct today_run *today_picked_run(const struct today_page *p)
{
	return p->picked < p->today->n_runs ? &p->today->runs[p->picked] : NULL;
}

const struct today_line *today_picked_line(const struct today_page *p)
{
	size_t at = p->picked - p->today->n_runs;

	if (p->picked < p->today->n_runs || at >= p->today->n_lines)
		return NULL;
	return &p->today->lines[at];
}

const struct today_hot *today_picked_hot(const struct today_page *p)
{
	size_t before = p->today->n_runs + p->today->n_lines;

	if (p->picked < before || p->picked - before >= p->today->n_hots)
		return NULL;
	return &p->today->hots[p->picked - before];
}

const struct today_next *today_picked_next(const struct today_page *p)
{
	size_t before = p->today->n_runs + p->today->n_lines + p->today->n_hots;

	if (p->picked < before || p->picked - before >= p->today->n_nexts)
		return NULL;
	return &p->today->nexts[p->picked - before];
}

static void add_line(
	struct lines *l, enum line_kind kind, size_t index, const char *text)
{
	l->items = mem_grow(l->items, &l->cap, l->n + 1, sizeof *l->items);
	l->items[l->n++] = (struct line){ kind, index, text, 0 };
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

static void add_runs(struct lines *l, const struct today *t, int cols)
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
		add_barred(l, t->runs[i].barred, cols);
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

/* Picks that are not just allowed; the text of each is in `said`. */
static void add_picks(struct lines *l, const struct today *t, int cols, struct said *s)
{
	size_t shown = 0, others = 0;

	for (size_t i = 0; i < t->picks.n; i++) {
		const struct pick_row *r = &t->picks.items[i];

		if (r->tone == TONE_PLAIN || r->tone == TONE_QUIET)
			continue;
		if (shown == SAID_MOST) {
			others++;
			continue;
		}
		snprintf(s->text[shown], sizeof s->text[shown], "%s%s%s: %s",
			r->id ? r->day_text : "", r->id ? ", " : "", r->block_name,
			r->says);
		if (shown == 0)
			add_line(l, LINE_HEAD, 0, _("Picks"));
		add_barred(l, s->text[shown++], cols);
	}
	if (others == 0)
		return;
	snprintf(s->more, sizeof s->more, _("and %zu more: k"), others);
	add_line(l, LINE_TEXT, 0, s->more);
}

static void add_hots(struct lines *l, const struct today *t)
{
	if (t->n_hots > 0)
		add_line(l, LINE_HEAD, 0, _("Hot spots"));
	for (size_t i = 0; i < t->n_hots; i++)
		add_line(l, LINE_HOT, i, NULL);
}

static void add_nexts(struct lines *l, const struct today *t)
{
	if (t->n_nexts > 0)
		add_line(l, LINE_HEAD, 0, _("Next"));
	for (size_t i = 0; i < t->n_nexts; i++)
		add_line(l, LINE_NEXT, i, NULL);
}

static bool is_picked(const struct today_page *p, const struct line *l)
{
	const struct today *t = p->today;
	size_t before = l->kind == LINE_RUN ? 0 : t->n_runs;

	if (l->kind == LINE_HOT || l->kind == LINE_NEXT)
		before += t->n_lines;
	if (l->kind == LINE_NEXT)
		before += t->n_hots;
	return l->kind >= LINE_RUN && l->index + before == p->picked;
}

static void draw_line(const struct today_page *p, struct canvas *c, int row,
	const struct line *l, const struct today_columns *s)
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
	size_t at = 0, top = 0, end = l->n - 1;

	while (at < l->n && !is_picked(p, &l->items[at]))
		at++;
	if (p->picked == 0)
		page_scroll(l->n, p->rows, &top, &p->top);
	else if (p->picked + 1 == today_count(p->today))
		page_scroll(l->n, p->rows, &end, &p->top);
	page_scroll_near(l->n, p->rows, &at, &p->top);
}

static void say_rest(const struct today *t, char *out, size_t size)
{
	if (t->no_rules)
		snprintf(out, size, "%s",
			_("no threshold set: b, then thresholds, types or takes yours"));
	else
		snprintf(out, size, _("others: %d near, %d under"), t->n_near,
			t->n_under);
}

/* A head in the last row would look as if nothing stood below it: it is left out. */
void today_draw_rows(struct today_page *p, struct canvas *c, const struct frame *f)
{
	char rest[SAY_LINE];
	struct lines l = { 0 };
	struct said said;
	struct today_columns s;

	add_runs(&l, p->today, c->cols);
	add_verdicts(&l, p->today);
	add_picks(&l, p->today, c->cols, &said);
	add_hots(&l, p->today);
	say_rest(p->today, rest, sizeof rest);
	add_line(&l, LINE_BLANK, 0, NULL);
	add_line(&l, LINE_TEXT, 0, rest);
	add_nexts(&l, p->today);
	today_columns_of(p->today, &s, c->cols);
	p->rows = f->last - f->first + 1;
	scroll(p, &l);
	for (int i = 0; i < p->rows && p->top + (size_t)i < l.n; i++) {
		const struct line *line = &l.items[p->top + (size_t)i];

		if (line->kind != LINE_HEAD || i + 1 < p->rows)
			draw_line(p, c, f->first + i, line, &s);
	}
	frame_more(c, f, p->top > 0, p->top + (size_t)p->rows < l.n);
	free(l.items);
}

void today_say_picked(const struct today_page *p, int cols, struct message *m)
{
	const struct today_run *r = today_picked_run(p);
	const struct today_line *v = today_picked_line(p);
	const struct today_hot *h = today_picked_hot(p);
	const struct today_next *n = today_picked_next(p);
	struct today_columns s;

	today_columns_of(p->today, &s, cols);
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
