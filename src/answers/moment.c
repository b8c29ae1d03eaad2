/* moment.c - what is known of a block and pest on a day: biofix, flight, degree-days,
 * treatments, mating disruption. */
#include "answers/verdicts.h"

#include "answers/answered.h"
#include "entry_bar_parts.h"

/* Degree-days at the end of an earlier day; none before the first one that was summed.
 * As today, one day more may lack behind the last one. */
static void dd_of(const struct season_state *s, struct moment *m)
{
	int32_t last = s->then_from + (int32_t)s->n_then - 1;
	int32_t day = m->day < last ? m->day : last;

	m->dd = s->n_then > 0 ? 0 : -1;
	m->dd_at_least = false;
	if (s->n_then == 0 || day < s->then_from)
		return;
	m->dd = s->then[day - s->then_from].dd;
	m->dd_at_least = s->then[day - s->then_from].at_least || m->day > last + 1;
}

/* The log knows how far the season has come today: of an earlier day the biofix and the
 * flight, if they had begun. */
static void look_back(const struct season_state *s, struct moment *m)
{
	bool had_biofix = m->biofix != DAY_NONE && m->biofix <= m->day;

	if (m->flight_start == DAY_NONE || m->flight_start > m->day) {
		m->flight = m->flight == 2 && had_biofix ? 1 : 0;
		m->flight_start = m->flight == 1 ? m->biofix : DAY_NONE;
	}
	dd_of(s, m);
	if (had_biofix)
		return;
	m->biofix = DAY_NONE;
	m->dd = -1;
}

static void fill_season(
	const struct log *l, int64_t farm, int64_t pest, struct moment *m)
{
	for (size_t i = 0; i < l->seasons.n; i++) {
		const struct season_state *s = &l->seasons.items[i];
		if (s->farm != farm || s->pest != pest)
			continue;
		m->biofix = s->biofix;
		m->flight = s->flight;
		m->flight_start = s->flight_start;
		m->dd = s->dd;
		m->dd_at_least = s->dd_at_least;
		if (m->day < l->today)
			look_back(s, m);
	}
}

/* A treatment of the border alone says nothing of the traps inside, nor of the
 * block. One that was not entered may have been of the border alone. */
static bool restarts(const struct treatment *t, int64_t pest, enum place place)
{
	return t->id != TREATMENT_ANSWERED && (t->pest == 0 || t->pest == pest) &&
	       (!t->border || place == PLACE_BORDER);
}

struct moment log_moment_at(
	const struct log *l, int64_t block, int64_t pest, enum place place, int32_t day)
{
	struct block_part of = bar_treatments(l, block);
	const struct block *b = log_block(l, block);
	struct moment m = { .day = day,
		.biofix = DAY_NONE,
		.flight_start = DAY_NONE,
		.dd = -1,
		.treated = DAY_NONE };

	if (b)
		fill_season(l, b->farm, pest, &m);
	for (size_t i = 0; i < of.n; i++) {
		const struct treatment *t = &of.items[i];
		if (restarts(t, pest, place) && t->day >= l->first_day &&
			t->day <= day && t->day > m.treated)
			m.treated = t->day;
	}
	return m;
}

struct moment log_moment(const struct log *l, int64_t block, int64_t pest, int32_t day)
{
	return log_moment_at(l, block, pest, PLACE_NONE, day);
}

enum condition log_condition(
	const struct log *l, int64_t block, int64_t pest, int32_t day)
{
	const struct block *b = log_block(l, block);
	bool any = false;

	for (size_t i = 0; i < l->disruptions.n; i++) {
		const struct disruption *d = &l->disruptions.items[i];
		if (d->block != block || (d->pest != 0 && d->pest != pest))
			continue;
		any = true;
		if (d->up <= day && (d->down == DAY_NONE || d->down >= day))
			return CONDITION_DISRUPTED;
	}
	if (any)
		return CONDITION_CONVENTIONAL;
	return b ? b->condition : CONDITION_NONE;
}
