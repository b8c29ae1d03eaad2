#include "answers/trap_diary.h"

#include "answers/entry_bar.h"
#include "answers/flight.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/diary.h"
#include "trap_diary_parts.h"

#include <stdio.h>
#include <stdlib.h>

/* The days of the season, up to today. False: the calendar has no such season. */
static bool season_days(struct trap_diary *out, const struct log *l, int64_t farm)
{
	int md = log_season_start(l, farm);
	int32_t middle = day_from_ymd(out->season + 1, md / 100, 1);

	out->last = l->today;
	if (out->season <= DAY_YEAR_MIN || middle == DAY_NONE)
		return false;
	out->first = day_season_start(middle - 1, md);
	int32_t end = day_season_start(middle + 31, md) - 1;
	out->last = end < l->today ? end : l->today;
	return out->first <= l->today;
}

static void say_titles(struct trap_diary *out, const struct log *l, size_t trap)
{
	const struct trap *t = &l->traps.items[trap];
	const struct farm *f = log_farm(l, t->farm);
	const struct block *b = log_block(l, t->block);
	const struct pest *p = log_pest(l, t->pest);

	snprintf(out->brief, sizeof out->brief, _("trap %s \302\267 %s"), t->label,
		p ? p->code : "");
	snprintf(out->title, sizeof out->title, "%.47s \302\267 %.47s \302\267 %.52s",
		f ? f->name : "", b ? b->name : "", out->brief);
	snprintf(
		out->season_text, sizeof out->season_text, _("season %d"), out->season);
}

static void fill_blank(struct run_trap *blank, const struct log *l, size_t trap)
{
	const struct trap *t = &l->traps.items[trap];
	int64_t lure = l->lure_states[trap].kind, card = l->card_states[trap].kind;

	*blank = (struct run_trap){ .trap = t->id, .open = true };
	blank->lure_kind = lure ? lure : t->lure;
	blank->card_kind = card ? card : t->card;
	blank->card_full_at = trap_diary_card_holds(l, blank->card_kind);
	text_copy(blank->label, sizeof blank->label, t->label);
}

/* Whether people may go there now: a visit of today asks. */
static void fill_bar(struct run_trap *blank, const struct log *l, const struct trap *t)
{
	const struct block *block = log_block(l, t->block);
	struct bars bars = { 0 };

	bars_of(l, t->farm, &bars);
	const struct bar *bar = bars_find(&bars, t->block);
	blank->entry = bar ? bar->waiting.state : WAITING_FREE;
	text_copy(blank->barred, sizeof blank->barred, bar ? bar->brief : "");
	text_copy(blank->block, sizeof blank->block, block ? block->name : "");
	bars_free(&bars);
}

/* Where the trap's visits of other years lie. */
static void find_neighbours(struct trap_diary *out, const struct visits *all,
	const struct log *l, int64_t farm)
{
	out->earlier = out->later = 0;
	for (size_t i = 0; i < all->n; i++) {
		int32_t day = all->items[i].day;
		if (day < out->first)
			out->earlier = log_season(l, farm, day);
		else if (day > out->last && day <= l->today && !out->later)
			out->later = log_season(l, farm, day);
	}
}

/* Visits after today are not shown: the page stands on its day. */
static size_t up_to(const struct visits *all, int32_t day)
{
	size_t n = all->n;

	while (n > 0 && all->items[n - 1].day > day)
		n--;
	return n;
}

static bool add_rows(struct trap_diary *out, struct book *b, const struct log *l,
	const struct diary *d, struct err *e)
{
	out->n = 0;
	for (size_t i = d->n_visits; i > 0 && d->visits[i - 1].day >= out->first; i--) {
		out->rows =
			mem_grow(out->rows, &out->cap, out->n + 1, sizeof *out->rows);
		struct diary_row *row = &out->rows[out->n++];
		*row = (struct diary_row){ .lure_kind = out->blank.lure_kind,
			.card_kind = out->blank.card_kind };
		if (!book_visit(b, out->trap, d->visits[i - 1].day, &row->visit,
			    &row->words, e))
			return false;
		trap_diary_say_row(row, l, d, i - 1);
	}
	return true;
}

static bool read_visits(struct trap_diary *out, struct book *b, const struct log *l,
	int64_t farm, struct err *e)
{
	struct visits all = { 0 };
	struct diary d = { 0 };

	if (!book_trap_visits(b, out->trap, &all, e)) {
		free(all.items);
		return false;
	}
	find_neighbours(out, &all, l, farm);
	diary_read(&d, all.items, up_to(&all, out->last));
	out->hangs_over = diary_stand(&d, out->first - 1).standing == STANDING_HANGS;
	bool ok = add_rows(out, b, l, &d, e) && trap_diary_add_olds(out, b, l, e);
	diary_free(&d);
	free(all.items);
	return ok;
}

bool trap_diary_read(struct trap_diary *out, struct book *b, const struct log *l,
	int64_t trap, int season, struct err *e)
{
	size_t at = log_trap(l, trap);

	if (at == SIZE_MAX)
		return err_set(e, ERR_NOT_FOUND, _("this trap is not in the book"));
	int64_t farm = l->traps.items[at].farm;
	out->trap = trap;
	out->today = l->today;
	out->season = season ? season : log_season(l, farm, l->today);
	if (!season_days(out, l, farm))
		return err_set(e, ERR_INPUT, _("there is no season %d"), out->season);
	say_titles(out, l, at);
	fill_blank(&out->blank, l, at);
	fill_bar(&out->blank, l, &l->traps.items[at]);
	trap_diary_list_kinds(out, l, l->traps.items[at].pest);
	return read_visits(out, b, l, farm, e);
}

void trap_diary_free(struct trap_diary *d)
{
	free(d->rows);
	free(d->olds);
	kind_choices_free(&d->lures);
	kind_choices_free(&d->cards);
	*d = (struct trap_diary){ 0 };
}
