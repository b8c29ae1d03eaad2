/* today_picks.c - sentences on the Today page, and those of picks. */
#include "base/mem.h"
#include "base/words.h"
#include "screen/reader.h"
#include "today_lines.h"

#include <stdio.h>
#include <string.h>

enum { TEXT_LEFT = 3, SAID_LEFT = 5, SOON_DAYS = 7 };

void today_add_line(
	struct lines *l, enum line_kind kind, size_t index, const char *text)
{
	l->items = mem_grow(l->items, &l->cap, l->n + 1, sizeof *l->items);
	l->items[l->n++] = (struct page_line){ kind, index, text, 0 };
}

int today_left(enum line_kind kind)
{
	return kind == LINE_TEXT ? TEXT_LEFT : SAID_LEFT;
}

void today_add_said(struct lines *l, enum line_kind kind, const char *text, int cols)
{
	while (*text) {
		size_t n = reader_wrap(text, cols - today_left(kind) - 1);

		today_add_line(l, kind, 0, text);
		l->items[l->n - 1].bytes = n;
		text += n + strspn(text + n, " ");
	}
}

/* Where a planned pick is told as too early, the block's earliest one stands there. */
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
			r->tone == TONE_OVER    ? _("%s, %s: too early")
			: r->tone == TONE_PLAIN ? _("%s, %s: not barred")
						: _("%s, %s: in doubt"),
			r->day_text, r->place);
	else
		snprintf(out, size,
			r->is_done ? _("%s, picked on %s: %s")
				   : _("%s, pick planned for %s: %s"),
			r->place, r->day_text, r->says);
}

static bool is_planned(const struct today *t, const struct pick_row *r)
{
	(void)t;
	return r->id != 0 && is_said(r);
}

static bool is_block(const struct today *t, const struct pick_row *r)
{
	return r->id == 0 && is_said(r) && !is_told(t, r);
}

/* Planned for the days to come, and nothing bars it. */
static bool is_soon(const struct today *t, const struct pick_row *r)
{
	return r->id != 0 && !r->is_done && !is_said(r) && r->day >= t->day &&
	       r->day <= t->day + SOON_DAYS;
}

/* Those that `takes` them, under a heading; the text of each is in `said`. */
static void add_picks(struct lines *l, const struct today *t, int cols,
	bool (*takes)(const struct today *t, const struct pick_row *r), struct said *s)
{
	for (size_t i = 0; i < t->picks.n; i++) {
		const struct pick_row *r = &t->picks.items[i];

		if (!takes(t, r))
			continue;
		if (s->n == SAID_MOST) {
			s->others++;
			continue;
		}
		say_pick(r, cols, s->text[s->n], sizeof s->text[s->n]);
		if (s->n == 0)
			today_add_line(l, LINE_HEAD, 0,
				r->id ? _("Picks") : _("Not to be picked yet"));
		today_add_said(l, takes == is_soon ? LINE_FREE : LINE_BARRED,
			s->text[s->n++], cols);
	}
}

static void add_more(struct lines *l, struct said *s)
{
	if (s->others == 0)
		return;
	snprintf(s->more, sizeof s->more, _("and %zu more: k"), s->others);
	today_add_line(l, LINE_TEXT, 0, s->more);
}

void today_add_planned(
	struct lines *l, const struct today_page *p, int cols, struct said *s)
{
	add_picks(l, p->today, cols, is_planned, s);
	if (!p->sift.narrow.text[0])
		add_picks(l, p->today, cols, is_soon, s);
	add_more(l, s);
}

void today_add_blocks(struct lines *l, const struct today *t, int cols, struct said *s)
{
	add_picks(l, t, cols, is_block, s);
	add_more(l, s);
}

bool today_tells_of_pick(const struct today_page *p)
{
	const struct today *t = p->today;
	bool all = !p->sift.narrow.text[0], told = false;

	for (size_t i = 0; i < t->picks.n; i++)
		told |= is_said(&t->picks.items[i]) ||
			(all && is_soon(t, &t->picks.items[i]));
	return told;
}
