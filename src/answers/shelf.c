#include "answers/shelf.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/diary.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int32_t needed_of(const struct due *d, bool is_lure, int64_t kind)
{
	for (size_t i = 0; i < d->n_totals; i++)
		if (d->totals[i].is_lure == is_lure && d->totals[i].kind == kind)
			return d->totals[i].n;
	return 0;
}

static int32_t used_since(
	const struct visits *v, const struct shelf_row *row, int32_t day)
{
	int32_t used = 0;

	for (size_t i = 0; i < v->n; i++) {
		const struct visit *one = &v->items[i];
		int64_t put_in = row->is_lure ? one->new_lure : one->new_card;
		used += one->day > day && put_in == row->kind;
	}
	return used;
}

static void say_row(struct shelf_row *row)
{
	char bring[SAY_SHORT] = "", more[SAY_SHORT * 2] = "";

	if (row->needed > 0)
		snprintf(bring, sizeof bring, _(", %d to bring"), (int)row->needed);
	if (row->left < 0) {
		snprintf(row->text, sizeof row->text, _("stock not kept%s"), bring);
		return;
	}
	if (row->needed > row->left)
		snprintf(more, sizeof more, _(": %d too few"),
			(int)(row->needed - row->left));
	else if (row->reorder >= 0 && row->left <= row->reorder)
		snprintf(more, sizeof more, _(": reorder (at %d)"), (int)row->reorder);
	else if (row->reorder >= 0)
		snprintf(more, sizeof more, _(", reorder at %d"), (int)row->reorder);
	row->tone = more[0] == ':' ? TONE_UNSURE : TONE_PLAIN;
	snprintf(row->text, sizeof row->text, _("%d left%s%s"), (int)row->left, bring,
		more);
}

/* What the rows are made of. */
struct counts {
	const struct due *due;
	const struct visits *visits;
};

static void add_row(struct shelf *out, const struct counts *from, struct shelf_row row,
	const struct stock *stock)
{
	bool kept = stock->n >= 0 && stock->day != DAY_NONE;

	row.left = row.reorder = -1;
	row.needed = needed_of(from->due, row.is_lure, row.kind);
	if (!kept && row.needed == 0)
		return;
	if (kept) {
		int32_t left = stock->n - used_since(from->visits, &row, stock->day);
		row.left = left > 0 ? left : 0;
		row.reorder = stock->reorder;
		out->is_kept = true;
	}
	say_row(&row);
	out->items = mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
	out->items[out->n++] = row;
}

static void add_rows(struct shelf *out, const struct counts *from, const struct log *l)
{
	for (size_t i = 0; i < l->lures.n; i++) {
		const struct lure_kind *k = &l->lures.items[i];
		struct shelf_row row = { .is_lure = true, .kind = k->id };
		text_copy(row.name, sizeof row.name, words_shipped(k->name));
		add_row(out, from, row, &k->stock);
	}
	for (size_t i = 0; i < l->cards.n; i++) {
		const struct card_kind *k = &l->cards.items[i];
		struct shelf_row row = { .kind = k->id };
		text_copy(row.name, sizeof row.name, words_shipped(k->name));
		add_row(out, from, row, &k->stock);
	}
}

static void look_back(int32_t *first, const struct stock *stock)
{
	if (stock->n >= 0 && stock->day != DAY_NONE && stock->day < *first)
		*first = stock->day;
}

bool shelf_read(struct shelf *out, struct book *b, const struct log *l,
	const struct due *d, struct err *e)
{
	struct visits visits = { 0 };
	int32_t first = l->today;

	out->n = 0;
	out->is_kept = false;
	for (size_t i = 0; i < l->lures.n; i++)
		look_back(&first, &l->lures.items[i].stock);
	for (size_t i = 0; i < l->cards.n; i++)
		look_back(&first, &l->cards.items[i].stock);
	bool ok = book_visits(b, 0, first + 1, l->today, &visits, e);
	if (ok)
		add_rows(out, &(struct counts){ d, &visits }, l);
	free(visits.items);
	return ok;
}

void shelf_free(struct shelf *s)
{
	free(s->items);
	*s = (struct shelf){ 0 };
}
