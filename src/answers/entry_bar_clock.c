/* entry_bar_clock.c - entry and picks of each block, in sentences. */
#include "answers/entry_bar.h"

#include "base/buf.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "entry_bar_parts.h"

#include <stdlib.h>

static void add(const struct block *b, enum tone tone, const char *text,
	struct block_clocks *out)
{
	out->items = mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
	struct block_clock *c = &out->items[out->n++];

	*c = (struct block_clock){ .farm = b->farm, .block = b->id, .tone = tone };
	text_copy(c->text, sizeof c->text, text);
}

static void add_bar(
	const struct block *b, const struct bars *bars, struct block_clocks *out)
{
	const struct bar *bar = bars_find(bars, b->id);
	struct buf text = { 0 };

	if (!bar)
		return;
	buf_addf(&text, "%s: %s", bar->place, bar->text);
	add(b, bar->waiting.state == WAITING_BARRED ? TONE_OVER : TONE_UNSURE,
		text.text, out);
	buf_free(&text);
}

/* Of a mix one is enough. */
static bool was_told(const struct log *l, const struct block_part *t, size_t i)
{
	for (size_t k = 0; k < i; k++)
		if (bar_begin(l, &t->items[k]).minute ==
			bar_begin(l, &t->items[i]).minute)
			return true;
	return false;
}

static void say_after(
	const struct block_part *t, const struct waiting *w, size_t i, struct buf *out)
{
	if (w->state == WAITING_BARRED) {
		bar_say_until(t->items, w, out);
	} else {
		buf_add(out, _("whether it may be entered is not known: "));
		bar_say_lacking(&t->items[i], true, false, out);
	}
}

static void add_coming(const struct log *l, const struct block *b,
	const struct block_part *t, size_t i, struct block_clocks *out)
{
	struct instant begin = bar_begin(l, &t->items[i]);
	struct waiting w = waiting_entry(t->items, t->n, &l->zone, begin);
	struct buf place = { 0 }, from = { 0 }, says = { 0 }, text = { 0 };

	bar_say_place(l, b, &place);
	bar_say_instant(begin, l->today, &from);
	say_after(t, &w, i, &says);
	buf_addf(&text, _("%s: from %s on, %s"), place.text, from.text, says.text);
	add(b, TONE_UNSURE, text.text, out);
	buf_free(&place);
	buf_free(&from);
	buf_free(&says);
	buf_free(&text);
}

/* Treatments of the next days: a sheet is carried for longer than a morning. */
static void add_all_coming(
	const struct log *l, const struct block *b, struct block_clocks *out)
{
	struct block_part t = bar_treatments(l, b->id);

	for (size_t i = 0; log_now(l).minute != INSTANT_NONE && i < t.n; i++)
		if (bar_is_coming(l, &t.items[i]) && !was_told(l, &t, i))
			add_coming(l, b, &t, i, out);
}

static void add_pick(
	const struct block *b, const struct pick_row *row, struct block_clocks *out)
{
	struct buf text = { 0 };

	if (row->id == 0)
		buf_addf(&text, "%s: %s", row->place, row->says);
	else
		buf_addf(&text,
			row->is_done ? _("%s, picked on %s: %s")
				     : _("%s, pick planned for %s: %s"),
			row->place, row->day_text, row->says);
	add(b, row->tone, text.text, out);
	buf_free(&text);
}

static bool is_told(const struct pick_row *row)
{
	return !row->is_done || row->wait.state != WAITING_FREE;
}

/* The earliest pick first, then the picks by day. */
static void add_picks(
	const struct block *b, const struct pick_rows *rows, struct block_clocks *out)
{
	for (int planned = 0; planned < 2; planned++)
		for (size_t i = 0; i < rows->n; i++)
			if (rows->items[i].block == b->id &&
				(rows->items[i].id != 0) == planned &&
				is_told(&rows->items[i]))
				add_pick(b, &rows->items[i], out);
}

void block_clocks_of(const struct log *l, int64_t farm, struct block_clocks *out)
{
	struct bars bars = { 0 };
	struct pick_rows picks = { 0 };

	out->n = 0;
	bars_of(l, farm, &bars);
	pick_rows_of(l, farm, &picks);
	for (size_t f = 0; f < l->farms.n; f++)
		for (size_t i = 0; i < l->blocks.n; i++) {
			const struct block *b = &l->blocks.items[i];
			if (b->farm != l->farms.items[f].id)
				continue;
			add_bar(b, &bars, out);
			add_all_coming(l, b, out);
			add_picks(b, &picks, out);
		}
	out->caution = out->n > 0 ? say_caution_acts() : "";
	bars_free(&bars);
	pick_rows_free(&picks);
}

void block_clocks_free(struct block_clocks *c)
{
	free(c->items);
	*c = (struct block_clocks){ 0 };
}
