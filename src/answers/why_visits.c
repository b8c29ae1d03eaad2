/* why_visits.c - what stands in a trap's diary, and what hangs in it now. */
#include "why_parts.h"

#include "base/text.h"
#include "base/words.h"

#include <stdio.h>

enum { VISITS_SHOWN = 10 };

static void say_interval(const struct diary *d, size_t visit, char *out, size_t size)
{
	text_copy(out, size, "");
	for (size_t i = 0; i < d->n; i++) {
		const struct interval *in = &d->items[i];
		if (in->visit != visit || d->visits[visit].outcome == OUTCOME_HUNG)
			continue;
		int32_t nights = in->to - in->from;
		if (in->state == CATCH_UNKNOWN)
			snprintf(out, size,
				ngettext("%d night, catch not known",
					"%d nights, catch not known", (unsigned)nights),
				(int)nights);
		else
			words_print(out, size, _("%d nights: %.1f a week"), (int)nights,
				(double)((in->moths * 140 / nights + 1) / 2) / 10);
	}
}

/* The kinds that a visit put in: "new lure CM 1 mg, new card delta". */
static void say_new(const struct log *l, const struct visit *v, char *out, size_t size)
{
	const struct lure_kind *lure = log_lure(l, v->new_lure);
	const struct card_kind *card = log_card(l, v->new_card);

	snprintf(out, size, "%s%s%s%s", lure ? _(", new lure ") : "",
		lure ? words_shipped(lure->name) : "", card ? _(", new card ") : "",
		card ? words_shipped(card->name) : "");
}

static void add_visit(
	struct why *w, const struct log *l, const struct diary *d, size_t i)
{
	const struct visit *v = &d->visits[i];
	char day[DAY_TEXT_SIZE], nights[64], fresh[SAY_LINE], count[16] = "";
	char said[SAY_LINE];

	day_short(v->day, day, sizeof day);
	say_interval(d, i, nights, sizeof nights);
	say_new(l, v, fresh, sizeof fresh);
	if (v->count != COUNT_NONE)
		snprintf(count, sizeof count, " %d", (int)v->count);
	why_add_line(w, TONE_PLAIN, 4, "%s  %s%s%s%s%s%s%s%s", day,
		_(outcome_word(v->outcome)), count, v->reason ? ": " : "",
		v->reason ? _(reason_word(v->reason)) : "", *nights ? "; " : "", nights,
		fresh, v->stirred ? _(", glue stirred") : "");
	log_say_dispute(l, v, said, sizeof said);
	if (*said)
		why_add_line(w, TONE_UNSURE, 6, "%s", said);
}

void why_add_visits(struct why *w, const struct log *l, size_t trap)
{
	const struct diary *d = &l->diaries[trap];
	size_t shown = 0;

	why_add_line(w, TONE_TITLE, 2, "%s", _("Visits, latest first"));
	if (d->n_visits == 0)
		why_add_line(w, TONE_PLAIN, 4, "%s", _("none yet"));
	for (size_t i = d->n_visits; i > 0 && shown < VISITS_SHOWN; i--, shown++)
		add_visit(w, l, d, i - 1);
	if (d->n_visits > shown)
		why_add_line(w, TONE_QUIET, 4, _("and %zu earlier ones this season"),
			d->n_visits - shown);
}

void why_add_service(struct why *w, const struct log *l, size_t trap)
{
	const struct lure_state *lure = &l->lure_states[trap];
	const struct card_state *card = &l->card_states[trap];
	const struct lure_kind *lk = log_lure(l, lure->kind);
	const struct card_kind *ck = log_card(l, card->kind);
	char since[DAY_TEXT_SIZE], due[DAY_TEXT_SIZE];

	why_add_line(w, TONE_TITLE, 2, "%s", _("In the trap now"));
	if (lk && lure->due != DAY_NONE) {
		day_short(lure->since, since, sizeof since);
		day_short(lure->due, due, sizeof due);
		why_add_line(w, lure->overdue_days > 0 ? TONE_UNSURE : TONE_PLAIN, 4,
			_("lure %s since %s, due %s"), words_shipped(lk->name), since,
			due);
	}
	if (ck && card->due != DAY_NONE) {
		day_short(card->since, since, sizeof since);
		day_short(card->due, due, sizeof due);
		why_add_line(w, card->mark >= CARD_CHANGE ? TONE_UNSURE : TONE_PLAIN, 4,
			_("card %s since %s, due %s or at %d moths (full at %d), %d on "
			  "it so far"),
			words_shipped(ck->name), since, due, (int)ck->change_at,
			(int)ck->floor_at, (int)card->moths);
	}
	if (!lk && !ck)
		why_add_line(w, TONE_PLAIN, 4, "%s", _("nothing that is known"));
}
