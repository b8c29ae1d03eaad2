#include "season/service.h"

#include "service_parts.h"

/* The lure in a trap after some visits. */
struct lure_in {
	int64_t kind;
	int32_t since; /* DAY_NONE: not known */
	int32_t gone;  /* found gone and not replaced on this day; DAY_NONE */
};

enum service_state service_state_of(int32_t due, int32_t today, int32_t next_run)
{
	if (due == DAY_NONE)
		return SERVICE_NONE;
	if (due < today)
		return SERVICE_OVERDUE;
	if (due == today)
		return SERVICE_DUE;
	return next_run != DAY_NONE && due <= next_run ? SERVICE_NEXT_RUN
						       : SERVICE_FINE;
}

/* Shares of a life are counted in days of the normal times days of the hot life, so
 * that they add up exactly. */
int32_t service_lure_due(const struct lure_kind *kind, int32_t since)
{
	int32_t life = kind->life_days < 1 ? 1 : kind->life_days;
	int32_t hot = kind->hot_days < 1 ? life : kind->hot_days;
	int64_t used = 0, whole = (int64_t)life * hot;
	int32_t day = since;

	while (used < whole) {
		bool is_hot = day_md_within(day_md(day), kind->hot_from, kind->hot_to);
		used += is_hot ? life : hot;
		day++;
	}
	return day;
}

static void lure_take(struct lure_in *in, const struct visit *v)
{
	if (v->new_lure != 0) {
		*in = (struct lure_in){ v->new_lure, v->day, DAY_NONE };
		return;
	}
	if (v->outcome == OUTCOME_MISSING)
		*in = (struct lure_in){ in->kind, DAY_NONE, DAY_NONE };
	if (v->outcome == OUTCOME_SPOILED && v->reason == REASON_LURE_MISSING)
		*in = (struct lure_in){ in->kind, DAY_NONE, v->day };
}

static struct lure_in lure_of(const struct diary *d, int32_t day)
{
	struct lure_in in = { 0, DAY_NONE, DAY_NONE };

	for (size_t i = 0; i < d->n_visits && d->visits[i].day <= day; i++)
		lure_take(&in, &d->visits[i]);
	return in;
}

static const struct lure_kind *lure_kind_of(const struct lure_kinds *kinds, int64_t id)
{
	for (size_t i = 0; i < kinds->n; i++)
		if (kinds->items[i].id == id)
			return &kinds->items[i];
	return NULL;
}

struct lure_state service_lure(const struct diary *d, const struct lure_kinds *kinds,
	int32_t today, int32_t next_run)
{
	struct lure_state s = { .since = DAY_NONE, .due = DAY_NONE };
	struct lure_in in = lure_of(d, today);
	const struct lure_kind *kind = lure_kind_of(kinds, in.kind);

	if (diary_stand(d, today).standing != STANDING_HANGS)
		return s;
	s.kind = in.kind;
	s.since = in.since;
	s.age_days = in.since == DAY_NONE ? 0 : today - in.since;
	s.due = in.gone;
	if (in.since != DAY_NONE && kind != NULL)
		s.due = service_lure_due(kind, in.since);
	s.state = service_state_of(s.due, today, next_run);
	s.overdue_days = s.state == SERVICE_OVERDUE ? today - s.due : 0;
	return s;
}
