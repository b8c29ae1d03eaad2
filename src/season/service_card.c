/* service_card.c - a card as it stands: since when, and how many moths are on it. */
#include "diary_parts.h"
#include "season/service.h"
#include "service_parts.h"

/* The card in a trap after some visits. */
struct card_in {
	int64_t kind;
	int32_t since, gone; /* as for a lure */
	int32_t moths;
	int32_t full; /* day it reached change_at; DAY_NONE */
	bool stirred;
};

static const struct card_in no_card = {
	.since = DAY_NONE, .gone = DAY_NONE, .full = DAY_NONE
};

static const struct card_kind *card_kind_of(const struct card_kinds *kinds, int64_t id)
{
	for (size_t i = 0; i < kinds->n; i++)
		if (kinds->items[i].id == id)
			return &kinds->items[i];
	return NULL;
}

static int32_t load_of(const struct visit *v)
{
	bool looked = v->outcome != OUTCOME_HUNG && v->outcome != OUTCOME_SKIPPED;
	int32_t others = looked && v->others > 0 ? v->others : 0;

	return visit_moths(v) + (others > COUNT_MAX ? COUNT_MAX : others);
}

static struct card_in new_card(const struct visit *v)
{
	struct card_in in = no_card;

	in.kind = v->new_card;
	in.since = v->day;
	return in;
}

/* Moths are counted before the card is changed or its glue stirred. `kind` is that of
 * the card: NULL where it is not known. */
static void card_take(
	struct card_in *in, const struct visit *v, const struct card_kind *kind)
{
	if (v->outcome == OUTCOME_MISSING) {
		*in = no_card;
	} else if (v->outcome == OUTCOME_SPOILED && v->reason == REASON_CARD_LOST) {
		int64_t gone = in->kind;
		*in = no_card;
		in->kind = gone;
		in->gone = v->day;
	}
	in->moths += load_of(v);
	if (kind == NULL || in->since == DAY_NONE)
		return;
	if (in->full == DAY_NONE && in->moths >= kind->change_at)
		in->full = v->day;
	in->stirred = in->stirred || (v->stirred && in->moths >= kind->stir_at);
}

/* Of the visits up to `day`, the place behind the last one that put a card in; 0: none
 * did. What was before it says nothing of the card. */
static size_t behind_last_card(const struct diary *d, int32_t day)
{
	size_t behind = 0;

	for (size_t i = 0; i < d->n_visits && d->visits[i].day <= day; i++)
		if (d->visits[i].new_card != 0)
			behind = i + 1;
	return behind;
}

/* The kind is looked up once: a book may know thousands. */
static struct card_in card_of(
	const struct diary *d, const struct card_kinds *kinds, int32_t day)
{
	size_t i = behind_last_card(d, day);
	struct card_in in = i > 0 ? new_card(&d->visits[i - 1]) : no_card;
	const struct card_kind *kind = card_kind_of(kinds, in.kind);

	for (; i < d->n_visits && d->visits[i].day <= day; i++)
		card_take(&in, &d->visits[i], kind);
	return in;
}

static enum card_mark mark_of(const struct card_kind *kind, int32_t moths)
{
	if (moths >= kind->floor_at)
		return CARD_FLOOR;
	if (moths >= kind->change_at)
		return CARD_CHANGE;
	return moths >= kind->stir_at ? CARD_STIR : CARD_CLEAN;
}

static int32_t due_of(const struct card_in *in, const struct card_kind *kind)
{
	if (in->since == DAY_NONE || kind == NULL)
		return in->gone;
	int32_t by_age = in->since + kind->life_days;
	return in->full != DAY_NONE && in->full < by_age ? in->full : by_age;
}

struct card_state service_card(const struct diary *d, const struct card_kinds *kinds,
	int32_t today, int32_t next_run)
{
	struct card_state s = { .since = DAY_NONE, .due = DAY_NONE };
	struct card_in in = card_of(d, kinds, today);
	const struct card_kind *kind = card_kind_of(kinds, in.kind);

	if (diary_stand(d, today).standing != STANDING_HANGS)
		return s;
	s.kind = in.kind;
	s.since = in.since;
	s.due = due_of(&in, kind);
	s.state = service_state_of(s.due, today, next_run);
	s.overdue_days = s.state == SERVICE_OVERDUE ? today - s.due : 0;
	s.moths = in.since == DAY_NONE ? 0 : in.moths;
	s.mark = kind == NULL ? CARD_CLEAN : mark_of(kind, s.moths);
	s.stirred_since_mark = in.stirred;
	return s;
}
