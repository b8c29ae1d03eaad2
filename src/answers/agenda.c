#include "answers/agenda.h"

#include "agenda_parts.h"
#include "answers/today.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"

#include <stdio.h>
#include <stdlib.h>

struct agenda_item *agenda_add(const struct writing *w, enum agenda_kind kind,
	const char *table, int64_t id, struct err *e)
{
	static const char *const words[AGENDA_KIND_COUNT] = {
		[AGENDA_RUN] = "run",
		[AGENDA_LURE] = "lure",
		[AGENDA_CARD] = "card",
		[AGENDA_ENTRY] = "entry",
		[AGENDA_PICK] = "pick",
		[AGENDA_EARLIEST] = "earliest",
	};
	struct agenda *a = w->out;
	char uid[UID_TEXT];

	if (!book_uid(w->book, table, id, uid, e))
		return NULL;
	a->items = mem_grow(a->items, &a->cap, a->n + 1, sizeof *a->items);
	struct agenda_item *item = &a->items[a->n++];
	*item = (struct agenda_item){ .kind = kind,
		.day = w->log->today,
		.from = { .minute = INSTANT_NONE },
		.until = { .minute = INSTANT_NONE } };
	snprintf(item->uid, sizeof item->uid, "%s-%s", uid, words[kind]);
	return item;
}

/* What was due before today is still to be done. */
static int32_t from_today(const struct log *l, int32_t day)
{
	return day > l->today ? day : l->today;
}

static bool add_run(const struct writing *w, const struct today_run *run, struct err *e)
{
	if (run->traps == 0)
		return true;
	struct agenda_item *item = agenda_add(w, AGENDA_RUN, "farm", run->farm, e);
	if (!item)
		return false;
	item->day = from_today(w->log, run->next_run);
	snprintf(item->title, sizeof item->title, _("Trap run: %s"), run->name);
	snprintf(item->details, sizeof item->details, "%s; %s%s%s", run->traps_text,
		run->bring, *run->barred ? "\n" : "", run->barred);
	return true;
}

static bool add_runs(const struct writing *w, struct err *e)
{
	struct today today = { 0 };
	bool ok = true;

	today_of(w->log, &today);
	for (size_t i = 0; ok && i < today.n_runs; i++)
		if (w->farm == 0 || today.runs[i].farm == w->farm)
			ok = add_run(w, &today.runs[i], e);
	today_free(&today);
	return ok;
}

/* Of one lure or card: what hangs there and since when. */
struct hanging_part {
	enum agenda_kind kind;
	const char *name;
	int32_t since, due; /* DAY_NONE: not known */
};

static void say_part(const struct writing *w, const struct trap *t,
	const struct hanging_part *p, struct agenda_item *item)
{
	const struct farm *f = log_farm(w->log, t->farm);
	const struct block *b = log_block(w->log, t->block);
	char since[SAY_SHORT], due[SAY_SHORT];

	say_day(p->since, since);
	say_day(p->due, due);
	snprintf(item->title, sizeof item->title,
		p->kind == AGENDA_LURE ? _("Lure due: trap %s, %s, %s")
				       : _("Card due: trap %s, %s, %s"),
		t->label, b ? b->name : "", f ? f->name : "");
	if (item->is_off)
		text_copy(item->details, sizeof item->details,
			_("the trap hangs no more"));
	else
		snprintf(item->details, sizeof item->details,
			p->due < w->log->today ? _("%s since %s; it was due on %s")
					       : _("%s since %s; due on %s"),
			p->name, since, due);
}

static bool add_part(const struct writing *w, size_t trap, const struct hanging_part *p,
	struct err *e)
{
	const struct trap *t = &w->log->traps.items[trap];
	bool is_off = !log_hangs(w->log, trap);

	if (p->due == DAY_NONE && !is_off)
		return true;
	struct agenda_item *item = agenda_add(w, p->kind, "trap", t->id, e);
	if (!item)
		return false;
	item->is_off = is_off;
	item->day = from_today(w->log, p->due);
	say_part(w, t, p, item);
	return true;
}

static bool add_trap(const struct writing *w, size_t trap, struct err *e)
{
	const struct log *l = w->log;
	const struct lure_state *lure = &l->lure_states[trap];
	const struct card_state *card = &l->card_states[trap];
	const struct lure_kind *lure_kind = log_lure(l, lure->kind);
	const struct card_kind *card_kind = log_card(l, card->kind);
	const struct hanging_part lure_part = { AGENDA_LURE,
		lure_kind ? words_shipped(lure_kind->name) : _("kind not given"),
		lure->since, lure->due };
	const struct hanging_part card_part = { AGENDA_CARD,
		card_kind ? words_shipped(card_kind->name) : _("kind not given"),
		card->since,
		card->mark >= CARD_CHANGE && card->due > l->today ? l->today
								  : card->due };

	return add_part(w, trap, &lure_part, e) && add_part(w, trap, &card_part, e);
}

static bool add_traps(const struct writing *w, struct err *e)
{
	bool ok = true;

	for (size_t i = 0; ok && i < w->log->traps.n; i++)
		if ((w->farm == 0 || w->log->traps.items[i].farm == w->farm) &&
			log_in_season(w->log, i))
			ok = add_trap(w, i, e);
	return ok;
}

bool agenda_read(const struct log *l, struct book *b, int64_t farm, struct agenda *out,
	struct err *e)
{
	const struct writing w = { l, b, farm, out };

	out->n = 0;
	out->now = log_now(l);
	return add_runs(&w, e) && add_traps(&w, e) && agenda_add_entries(&w, e) &&
	       agenda_add_picks(&w, e);
}

void agenda_free(struct agenda *a)
{
	free(a->items);
	*a = (struct agenda){ 0 };
}
