/* trap_diary_say.c - a visit of the diary in words: what it was worth, what was changed
 * in it. */
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/diary.h"
#include "say_parts.h"
#include "trap_diary_parts.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* "12 cl", "skipped, weather", "spoiled, trap down 3+ c" */
static void say_whole(const struct visit *v, char *out, size_t size)
{
	char brief[SAY_SHORT];
	bool worded = v->outcome == OUTCOME_SKIPPED || v->outcome == OUTCOME_SPOILED;

	say_visit(v, brief);
	if (visit_is_service(v)) {
		text_copy(out, size, _("lure changed"));
		return;
	}
	if (!worded) {
		text_copy(out, size, brief);
		return;
	}
	text_copy(out, size, _(outcome_word(v->outcome)));
	if (v->reason != REASON_NONE)
		say_add(out, size, _(reason_word(v->reason)));
	const char *rest = strchr(brief, ' ');
	size_t n = strlen(out);
	if (rest)
		snprintf(out + n, size - n, "%s", rest);
}

static void say_age(int32_t since, int32_t day, char out[static SAY_SHORT])
{
	if (since != DAY_NONE)
		snprintf(out, SAY_SHORT, _("%d d"), (int)(day - since));
}

static void say_interval(struct diary_row *row, const struct interval *in)
{
	struct weekly w = { .unread = UNREAD_NO,
		.at_least = in->state == CATCH_FLOOR,
		.is_disputed = in->is_disputed,
		.moths = in->moths,
		.nights = in->to - in->from,
		.from = in->from,
		.to = in->to };

	snprintf(row->nights_text, sizeof row->nights_text, _("%d n"), (int)w.nights);
	if (in->state == CATCH_UNKNOWN)
		w.unread = UNREAD_SPOILED;
	say_weekly(&w, row->weekly_text);
}

void trap_diary_say_row(
	struct diary_row *row, const struct log *l, const struct diary *d, size_t i)
{
	const struct visit *v = &d->visits[i];
	struct lure_state lure = service_lure(d, &l->lures, v->day - 1, DAY_NONE);
	struct card_state card = service_card(d, &l->cards, v->day - 1, DAY_NONE);

	if (lure.kind)
		row->lure_kind = lure.kind;
	if (card.kind)
		row->card_kind = card.kind;
	row->card_full_at = trap_diary_card_holds(l, row->card_kind);
	trap_diary_say_kinds(l, v, row->kinds_text);
	day_short(v->day, row->day_text, sizeof row->day_text);
	say_whole(v, row->visit_text, sizeof row->visit_text);
	say_age(lure.since, v->day, row->lure_text);
	say_age(card.since, v->day, row->card_text);
	for (size_t k = 0; k < d->n; k++)
		if (d->items[k].visit == i && v->outcome != OUTCOME_HUNG)
			say_interval(row, &d->items[k]);
	if (v->outcome == OUTCOME_SKIPPED || v->outcome == OUTCOME_SPOILED ||
		v->outcome == OUTCOME_MISSING)
		row->tone = visit_is_service(v) ? TONE_PLAIN : TONE_UNSURE;
}

/* What stands on that day after the change: an older form that came later, else the
 * row; NULL: it was taken out. */
static const struct visit *what_came(const struct trap_diary *d, int32_t day)
{
	for (size_t i = d->n_olds; i > 0; i--)
		if (d->olds[i - 1].day == day)
			return &d->olds[i - 1].visit;
	for (size_t i = 0; i < d->n; i++)
		if (d->rows[i].visit.day == day)
			return &d->rows[i].visit;
	return NULL;
}

static void say_old(const struct old_visit *v, const struct log *l,
	const struct trap_diary *d, struct diary_old *out)
{
	char was[SAY_SHORT * 2], when[SAY_SHORT], kinds[SAY_LINE];

	trap_diary_say_other_kinds(l, &v->visit, what_came(d, v->visit.day), kinds);
	out->day = v->visit.day;
	out->visit = v->visit;
	day_short(out->day, out->day_text, sizeof out->day_text);
	say_whole(&v->visit, was, sizeof was);
	say_time(v->changed_at, when);
	snprintf(out->text, sizeof out->text,
		v->removed ? _("was %s%s%s, taken out %s%s%s%s")
			   : _("was %s%s%s, changed %s%s%s%s"),
		was, *v->words.scout ? _(" from ") : "", v->words.scout, when,
		*v->changed_by ? _(" by ") : "", v->changed_by, kinds);
}

/* What was taken out and put back just so is no correction. */
static void count_old(struct trap_diary *d, const struct old_visit *v)
{
	for (size_t i = 0; i < d->n; i++) {
		struct diary_row *r = &d->rows[i];
		bool same = visit_same(&r->visit, &v->visit) &&
			    strcmp(r->words.scout, v->words.scout) == 0 &&
			    strcmp(r->words.note, v->words.note) == 0;
		r->n_old += r->visit.day == v->visit.day && !same;
	}
}

/* First of all: what is not settled. */
static void add_dispute(
	struct trap_diary *out, const struct log *l, struct diary_row *row)
{
	char text[SAY_LINE];

	log_say_dispute(l, &row->visit, text, sizeof text);
	if (!*text)
		return;
	out->olds =
		mem_grow(out->olds, &out->cap_olds, out->n_olds + 1, sizeof *out->olds);
	struct diary_old *old = &out->olds[out->n_olds++];
	*old = (struct diary_old){ .day = row->visit.day };
	day_short(old->day, old->day_text, sizeof old->day_text);
	text_copy(old->text, sizeof old->text, text);
	row->n_old++;
}

bool trap_diary_add_olds(
	struct trap_diary *out, struct book *b, const struct log *l, struct err *e)
{
	struct old_visits all = { 0 };
	bool ok = book_old_visits_of(b, out->trap, out->first, out->last, &all, e);

	out->n_olds = 0;
	for (size_t i = 0; i < out->n; i++)
		add_dispute(out, l, &out->rows[i]);
	for (size_t i = 0; ok && i < all.n; i++) {
		out->olds = mem_grow(
			out->olds, &out->cap_olds, out->n_olds + 1, sizeof *out->olds);
		say_old(&all.items[i], l, out, &out->olds[out->n_olds]);
		out->n_olds++;
		count_old(out, &all.items[i]);
	}
	free(all.items);
	return ok;
}
