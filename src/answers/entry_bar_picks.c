/* entry_bar_picks.c - what may be picked when. */
#include "answers/entry_bar.h"

#include "answers/answered.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "entry_bar_parts.h"

#include <stdlib.h>
#include <string.h>

enum { DAYS_LOOKED_BACK = 14 };

static enum tone tone_of(const struct pick_row *row)
{
	switch (row->wait.state) {
	case WAITING_FREE:
		return row->is_done ? TONE_QUIET : TONE_PLAIN;
	case WAITING_BARRED:
		return row->id != 0 ? TONE_OVER : TONE_UNSURE;
	default:
		return TONE_UNSURE;
	}
}

static void say_by(const struct block_part *t, struct pick_row *row)
{
	int at = row->wait.treatment >= 0 ? row->wait.treatment : row->wait.unknown;
	struct buf by = { 0 };

	if (at < 0)
		return;
	bar_say_by(&t->items[at], &by);
	text_copy(row->by, sizeof row->by, by.text);
	buf_free(&by);
}

static void add_row(const struct log *l, const struct pick *p,
	const struct block_part *t, struct pick_rows *out)
{
	const struct block *b = log_block(l, p->block);
	const struct farm *f = log_farm(l, b ? b->farm : 0);
	struct buf says = { 0 }, place = { 0 };

	out->items = mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
	struct pick_row *row = &out->items[out->n++];
	*row = (struct pick_row){ .id = p->id,
		.farm = f ? f->id : 0,
		.block = p->block,
		.day = p->day,
		.is_done = p->is_done };
	row->wait = waiting_pick(t->items, t->n, &l->zone, p->day);
	text_copy(row->block_name, sizeof row->block_name, b ? b->name : "");
	if (b)
		bar_say_place(l, b, &place);
	text_copy(row->place, sizeof row->place, place.text ? place.text : "");
	buf_free(&place);
	text_copy(row->farm_name, sizeof row->farm_name, f ? f->name : "");
	char day[DAY_TEXT_SIZE];
	day_short(p->day, day, sizeof day);
	text_copy(row->day_text, sizeof row->day_text, day);
	if (p->id != 0)
		bar_say_pick(t->items, &row->wait, p->is_done, &says);
	else
		bar_say_earliest(t->items, &row->wait, &says);
	text_copy(row->says, sizeof row->says, says.text);
	say_by(t, row);
	row->tone = tone_of(row);
	buf_free(&says);
}

static bool is_of(const struct log *l, int64_t block, int64_t farm)
{
	const struct block *b = log_block(l, block);

	return b && (farm == 0 || b->farm == farm);
}

static int by_day(const void *a, const void *b)
{
	const struct pick_row *x = a, *y = b;

	if (x->day != y->day)
		return x->day < y->day ? -1 : 1;
	int farms = strcmp(x->farm_name, y->farm_name);
	return farms ? farms : strcmp(x->block_name, y->block_name);
}

static void add_picks(const struct log *l, int64_t farm, struct pick_rows *out)
{
	for (size_t i = 0; i < l->picks.n; i++) {
		const struct pick *p = &l->picks.items[i];
		if (p->day < l->today - DAYS_LOOKED_BACK || !is_of(l, p->block, farm))
			continue;
		struct block_part t = bar_treatments(l, p->block);
		add_row(l, p, &t, out);
	}
	if (out->n > 1)
		qsort(out->items, out->n, sizeof *out->items, by_day);
}

/* Its next pick, if it may not be today. */
static void add_block(const struct log *l, int64_t block, struct pick_rows *out)
{
	struct block_part t = bar_treatments(l, block);
	const struct pick none = { .block = block, .day = l->today };
	struct pick_wait w = waiting_pick(t.items, t.n, &l->zone, l->today);

	if (w.state != WAITING_FREE)
		add_row(l, &none, &t, out);
}

void pick_rows_of(const struct log *l, int64_t farm, struct pick_rows *out)
{
	out->n = 0;
	add_picks(l, farm, out);
	for (size_t f = 0; f < l->farms.n; f++) {
		int64_t id = l->farms.items[f].id;
		if (farm != 0 && farm != id)
			continue;
		for (size_t i = 0; i < l->blocks.n; i++)
			if (l->blocks.items[i].farm == id)
				add_block(l, l->blocks.items[i].id, out);
	}
}

void pick_rows_free(struct pick_rows *p)
{
	free(p->items);
	*p = (struct pick_rows){ 0 };
}

/* The block's treatments as they will be. */
static struct treatments with(const struct log *l, const struct treatment *t)
{
	struct treatments out = { 0 };

	for (size_t i = 0; i < l->treatments.n; i++) {
		const struct treatment *o = &l->treatments.items[i];
		if (o->block != t->block || (t->id != 0 && o->id == t->id) ||
			treatment_is_told_by(t, o))
			continue;
		out.items = mem_grow(out.items, &out.cap, out.n + 1, sizeof *out.items);
		out.items[out.n++] = *o;
	}
	out.items = mem_grow(out.items, &out.cap, out.n + 1, sizeof *out.items);
	out.items[out.n++] = *t;
	return out;
}

static void say_barred(const struct log *l, const struct pick *p,
	const struct treatments *t, char *out)
{
	const struct block *b = log_block(l, p->block);
	struct pick_wait w = waiting_pick(t->items, t->n, &l->zone, p->day);
	char day[DAY_TEXT_SIZE];
	struct buf place = { 0 }, says = { 0 }, text = { 0 };

	day_short(p->day, day, sizeof day);
	buf_add(&place, "");
	if (b)
		bar_say_place(l, b, &place);
	bar_say_pick(t->items, &w, p->is_done, &says);
	buf_addf(&text,
		p->is_done ? _("%s, picked on %s: %s")
			   : _("%s, pick planned for %s: %s"),
		place.text, day, says.text);
	text_copy(out, SAY_LINE * 2, text.text);
	buf_free(&place);
	buf_free(&says);
	buf_free(&text);
}

size_t treatment_bars_picks(const struct log *l, const struct treatment *t,
	char (*out)[SAY_LINE * 2], size_t most)
{
	struct treatments all = with(l, t);
	size_t n = 0;

	for (size_t i = 0; i < l->picks.n; i++) {
		const struct pick *p = &l->picks.items[i];
		if (p->block != t->block ||
			waiting_pick(t, 1, &l->zone, p->day).state == WAITING_FREE)
			continue;
		if (n < most)
			say_barred(l, p, &all, out[n]);
		n++;
	}
	free(all.items);
	return n;
}
