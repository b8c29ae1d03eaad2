#include "season_state.h"

#include "answers/flight.h"
#include "answers/heat.h"
#include "base/mem.h"

#include <stdlib.h>

static bool looks_at_season(const struct rule *r)
{
	return r->flight != 0 || r->until_dd != 0 || r->span_kind == SPAN_BIOFIX ||
	       r->span_kind == SPAN_FLIGHT;
}

/* The rules that do; the caller frees the list. There are few, and mostly none. */
static const struct rule **season_rules(const struct log *l, size_t *n)
{
	const struct rule **list = mem_new(l->rules.n, sizeof *list);

	*n = 0;
	for (size_t i = 0; i < l->rules.n; i++)
		if (looks_at_season(&l->rules.items[i]))
			list[(*n)++] = &l->rules.items[i];
	return list;
}

static bool is_needed(const struct rule **rules, size_t n, int64_t farm, int64_t pest)
{
	for (size_t i = 0; i < n; i++)
		if (rules[i]->pest == pest &&
			(rules[i]->farm == 0 || rules[i]->farm == farm))
			return true;
	return false;
}

/* Diaries of the farm's traps of a pest; the caller frees the list. */
static const struct diary **diaries_of(
	const struct log *l, int64_t farm, int64_t pest, size_t *n)
{
	const struct diary **list = mem_new(l->traps.n, sizeof *list);

	*n = 0;
	for (size_t i = 0; i < l->traps.n; i++)
		if (l->traps.items[i].farm == farm && l->traps.items[i].pest == pest)
			list[(*n)++] = &l->diaries[i];
	return list;
}

/* The flights so far; one with too few moths is none. Since biofix there is one. */
static void fill_flight(const struct log *l, struct season_state *s)
{
	const struct farm *f = log_farm(l, s->farm);
	int32_t start = day_season_start(l->today, f ? f->season_start : 101);
	struct flight_series series = { 0 };
	struct flights found = { 0 };
	size_t n;
	const struct diary **list = diaries_of(l, s->farm, s->pest, &n);

	if (flight_series_of(list, n, start, l->today, &series))
		flights_find(&series, &found);
	free(list);
	for (size_t i = 0; i < found.n; i++) {
		const struct flight *flight = &found.items[i];
		if (flight->flags & FLIGHT_TOO_FEW)
			continue;
		s->flight++;
		s->flight_start = series.first_day + 7 * flight->first_week;
	}
	if (s->biofix == DAY_NONE && found.n > 0 &&
		(found.items[0].flags & FLIGHT_OPEN_START))
		s->flight = 0; /* how many there were before is not known */
	if (s->flight == 0 && s->biofix != DAY_NONE) {
		s->flight = 1;
		s->flight_start = s->biofix;
	}
}

/* Adds a day to those that an earlier verdict may be asked for. */
static void keep_day(
	void *arg, const struct dd_temps *t, double dd, const struct dd_sum *sum)
{
	struct season_state *s = arg;

	(void)dd;
	if (s->n_then == 0)
		s->then_from = t->day;
	s->then = mem_grow(s->then, &s->cap_then, s->n_then + 1, sizeof *s->then);
	s->then[s->n_then++] = (struct dd_then){ (int32_t)sum->sum, sum->missing > 0 };
}

static bool fill_heat(
	const struct log *l, struct book *b, struct season_state *s, struct err *e)
{
	const struct heat_ask ask = { .farm = s->farm,
		.pest = s->pest,
		.day = l->today,
		.each = keep_day,
		.arg = s };
	struct heat_sum sum;

	if (!heat_since(&sum, b, l, &ask, e))
		return false;
	if (sum.state != HEAT_SUM && sum.state != HEAT_AT_LEAST)
		return true;
	s->dd = (int32_t)sum.sum.sum;
	s->dd_at_least = sum.state == HEAT_AT_LEAST || sum.to < l->today - 1;
	return true;
}

static bool add_state(
	struct log *l, struct book *b, int64_t farm, int64_t pest, struct err *e)
{
	const struct biofix_date *biofix =
		heat_biofix(l, farm, pest, log_season(l, farm, l->today));
	struct season_state s = { .farm = farm,
		.pest = pest,
		.biofix = biofix && biofix->day <= l->today ? biofix->day : DAY_NONE,
		.flight_start = DAY_NONE,
		.dd = -1 };

	fill_flight(l, &s);
	if (!fill_heat(l, b, &s, e))
		return false;
	l->seasons.items = mem_grow(l->seasons.items, &l->seasons.cap, l->seasons.n + 1,
		sizeof *l->seasons.items);
	l->seasons.items[l->seasons.n++] = s;
	return true;
}

void season_states_clear(struct season_states *s)
{
	for (size_t i = 0; i < s->n; i++)
		free(s->items[i].then);
	s->n = 0;
}

bool season_states_read(struct log *l, struct book *b, struct err *e)
{
	size_t n = 0;
	const struct rule **rules = season_rules(l, &n);
	bool ok = true;

	season_states_clear(&l->seasons);
	for (size_t f = 0; f < l->farms.n && n > 0; f++)
		for (size_t p = 0; p < l->pests.n && ok; p++) {
			int64_t farm = l->farms.items[f].id,
				pest = l->pests.items[p].id;
			if (is_needed(rules, n, farm, pest))
				ok = add_state(l, b, farm, pest, e);
		}
	free(rules);
	return ok;
}
