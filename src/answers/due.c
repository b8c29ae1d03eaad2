#include "answers/due.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "today_parts.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct worked { /* one lure or card, whichever */
	bool is_lure, is_full;
	int64_t kind;
	enum service_state state;
	int32_t due, overdue_days, moths;
};

static const char *const state_words[SERVICE_STATE_COUNT] = {
	[SERVICE_NONE] = "none",
	[SERVICE_FINE] = "fine",
	[SERVICE_NEXT_RUN] = "next-run",
	[SERVICE_DUE] = "due",
	[SERVICE_OVERDUE] = "overdue",
};

static void say_state(const struct worked *w, int32_t next_run, struct due_item *item)
{
	char *out = item->state_text;
	size_t size = sizeof item->state_text;

	if (w->is_full)
		snprintf(out, size, _("%d moths on it"), (int)w->moths);
	else if (w->state == SERVICE_OVERDUE)
		snprintf(out, size, _("%d d overdue"), (int)w->overdue_days);
	else
		text_copy(out, size,
			w->state == SERVICE_DUE ? _("due today")
			: w->due <= next_run    ? _("by next run")
						: _("change on next run"));
	item->tone = w->state == SERVICE_OVERDUE ? TONE_UNSURE : TONE_PLAIN;
	item->state_word = state_words[w->state];
}

static void fill_entry(const struct bar *bar, struct due_item *item)
{
	if (!bar)
		return;
	text_copy(item->barred, sizeof item->barred, bar->brief);
	if (bar->waiting.state == WAITING_BARRED && bar->waiting.unknown < 0)
		instant_write(bar->waiting.until, item->no_entry_until);
	else
		text_copy(item->no_entry_until, sizeof item->no_entry_until, "unknown");
}

/* Of a farm: looked up once, since they are found by all of its visits. */
struct coming {
	int32_t run; /* the next one */
	int32_t by;  /* what is due until then is changed on it */
};

static void add_item(const struct log *l, size_t trap, const struct worked *w,
	const struct coming *next, struct due *out)
{
	const struct trap *t = &l->traps.items[trap];
	const struct farm *f = log_farm(l, t->farm);
	const struct block *b = log_block(l, t->block);
	const struct lure_kind *lure = w->is_lure ? log_lure(l, w->kind) : NULL;
	const struct card_kind *card = w->is_lure ? NULL : log_card(l, w->kind);

	if (w->state < SERVICE_NEXT_RUN)
		return;
	out->items = mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
	struct due_item *item = &out->items[out->n++];
	*item = (struct due_item){ .farm = t->farm,
		.trap = (int)trap,
		.is_lure = w->is_lure,
		.kind = w->kind,
		.due = w->due,
		.state = w->state };
	text_copy(item->farm_name, sizeof item->farm_name, f ? f->name : "");
	text_copy(item->block_name, sizeof item->block_name, b ? b->name : "");
	text_copy(item->label, sizeof item->label, t->label);
	text_copy(item->kind_name, sizeof item->kind_name,
		lure   ? lure->name
		: card ? card->name
		       : "");
	say_state(w, next->run, item);
	fill_entry(bars_find(&out->today.bars, t->block), item);
}

/* What is due before the run after the next one would not last until then. */
static struct coming coming_of(const struct log *l, int64_t farm)
{
	int32_t run = log_next_run(l, farm);
	int32_t after =
		log_run_after(log_farm(l, farm), run > l->today ? run : l->today);

	return (struct coming){ .run = run, .by = after - 1 };
}

static void add_items(
	const struct log *l, size_t trap, const struct coming *next, struct due *out)
{
	struct lure_state lure =
		service_lure(&l->diaries[trap], &l->lures, l->today, next->by);
	struct card_state card =
		service_card(&l->diaries[trap], &l->cards, l->today, next->by);
	struct worked one = { .is_lure = true,
		.kind = lure.kind,
		.state = lure.state,
		.due = lure.due,
		.overdue_days = lure.overdue_days };

	add_item(l, trap, &one, next, out);
	one = (struct worked){ .is_full = card.mark >= CARD_CHANGE,
		.kind = card.kind,
		.state = card.state,
		.due = card.due,
		.overdue_days = card.overdue_days,
		.moths = card.moths };
	add_item(l, trap, &one, next, out);
}

static int by_due_day(const void *a, const void *b)
{
	const struct due_item *x = a, *y = b;

	if (x->due != y->due)
		return x->due < y->due ? -1 : 1;
	return x->trap != y->trap ? (x->trap < y->trap ? -1 : 1)
				  : x->is_lure - y->is_lure;
}

static struct due_bring bring_of(
	const struct log *l, int64_t farm, const struct bring *b)
{
	const struct lure_kind *lure = b->is_lure ? log_lure(l, b->kind) : NULL;
	const struct card_kind *card = b->is_lure ? NULL : log_card(l, b->kind);
	struct due_bring to = {
		.farm = farm, .is_lure = b->is_lure, .n = (int)b->n, .kind = b->kind
	};

	text_copy(to.kind_name, sizeof to.kind_name,
		lure   ? lure->name
		: card ? card->name
		       : _("kind not given"));
	return to;
}

static void add_bring(
	const struct log *l, int64_t farm, const struct bring *b, struct due *out)
{
	out->brings = mem_grow(
		out->brings, &out->cap_brings, out->n_brings + 1, sizeof *out->brings);
	out->brings[out->n_brings++] = bring_of(l, farm, b);
}

static void add_brings(const struct log *l, int64_t farm, struct due *out)
{
	struct brings all = { 0 };

	today_brings(l, farm, &all);
	for (size_t i = 0; i < all.n; i++)
		if (all.items[i].is_lure)
			add_bring(l, farm, &all.items[i], out);
	for (size_t i = 0; i < all.n; i++)
		if (!all.items[i].is_lure)
			add_bring(l, farm, &all.items[i], out);
	free(all.items);
}

static void add_total(const struct log *l, const struct bring *b, struct due *out)
{
	size_t at = 0;

	for (size_t i = 0; i < out->n_totals; i++) {
		struct due_bring *t = &out->totals[i];
		if (t->is_lure == b->is_lure && t->kind == b->kind) {
			t->n += (int)b->n;
			return;
		}
	}
	out->totals = mem_grow(
		out->totals, &out->cap_totals, out->n_totals + 1, sizeof *out->totals);
	while (at < out->n_totals && (out->totals[at].is_lure || !b->is_lure))
		at++;
	memmove(out->totals + at + 1, out->totals + at,
		(out->n_totals - at) * sizeof *out->totals);
	out->totals[at] = bring_of(l, 0, b);
	out->n_totals++;
}

static void add_totals(const struct log *l, struct due *out)
{
	struct brings all = { 0 };
	int32_t unknown = 0;

	for (size_t f = 0; f < l->farms.n; f++) {
		all.n = 0;
		today_brings(l, l->farms.items[f].id, &all);
		for (size_t i = 0; i < all.n; i++)
			add_total(l, &all.items[i], out);
		unknown += all.unknown;
	}
	today_say_unknown(unknown, out->unknown_text);
	free(all.items);
}

static void keep_runs_of(struct today *t, int64_t farm)
{
	size_t n = 0;

	for (size_t i = 0; i < t->n_runs; i++)
		if (t->runs[i].farm == farm)
			t->runs[n++] = t->runs[i];
	t->n_runs = n;
}

static void add_farm(const struct log *l, int64_t farm, struct due *out)
{
	const struct coming next = coming_of(l, farm);
	size_t first = out->n;

	for (size_t i = 0; i < l->traps.n; i++)
		if (l->traps.items[i].farm == farm)
			add_items(l, i, &next, out);
	if (out->n > first + 1)
		qsort(out->items + first, out->n - first, sizeof *out->items,
			by_due_day);
	add_brings(l, farm, out);
}

static bool has_unknown(const struct today *t)
{
	bool has = false;

	for (size_t i = 0; i < t->n_runs; i++)
		has |= t->runs[i].unknown_text[0] != '\0';
	return has;
}

void due_of(const struct log *l, int64_t farm, struct due *out)
{
	out->n = out->n_brings = out->n_totals = 0;
	today_of(l, &out->today);
	if (farm != 0)
		keep_runs_of(&out->today, farm);
	out->has_unknown = has_unknown(&out->today);
	block_clocks_of(l, farm, &out->clocks);
	for (size_t f = 0; f < l->farms.n; f++) {
		int64_t id = l->farms.items[f].id;
		if (farm == 0 || farm == id)
			add_farm(l, id, out);
	}
	add_totals(l, out);
}

void due_by_day(struct due *d)
{
	if (d->n > 1)
		qsort(d->items, d->n, sizeof *d->items, by_due_day);
}

void due_free(struct due *d)
{
	today_free(&d->today);
	free(d->items);
	block_clocks_free(&d->clocks);
	free(d->brings);
	free(d->totals);
	*d = (struct due){ 0 };
}
