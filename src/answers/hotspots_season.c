/* hotspots_season.c - the readings of one season, and the window that is looked at. */
#include "hotspots_parts.h"

#include "base/mem.h"

#include <stdlib.h>
#include <string.h>

static struct flight_ask flight_ask_of(const struct hot_ask *ask)
{
	return (struct flight_ask){
		.farm = ask->farm, .pest = ask->pest, .trap = NO_TRAP
	};
}

/* The log has the present season, and what hung over from the one before. */
static void take_present(
	struct hot_season *s, const struct log *l, const struct hot_ask *ask)
{
	const struct flight_ask of = flight_ask_of(ask);
	const struct diary **list = mem_new(l->traps.n, sizeof *list);
	size_t n = 0;

	s->start = day_season_start(l->today, log_season_start(l, ask->farm));
	s->end = l->today;
	for (size_t i = 0; i < l->traps.n; i++)
		if (flight_asks_for(l, &of, i) && l->diaries[i].n_visits > 0)
			s->of[i] = list[n++] = &l->diaries[i];
	if (!flight_series_of(list, n, s->start, s->end, &s->series))
		s->series.n = 0;
	free(list);
}

static void take_earlier(struct hot_season *s, const struct log *l)
{
	s->start = s->read.start;
	s->end = s->read.end;
	s->series = s->read.series;
	for (size_t i = 0; i < s->read.n; i++) {
		size_t trap = log_trap(l, s->read.list[i]->visits[0].trap);
		if (trap != SIZE_MAX)
			s->of[trap] = s->read.list[i];
	}
}

bool hot_season_read(struct hot_season *s, struct book *b, const struct log *l,
	const struct hot_ask *ask, struct err *e)
{
	const struct flight_ask of = flight_ask_of(ask);
	int present = log_season(l, ask->farm, l->today);

	*s = (struct hot_season){ .year = ask->season ? ask->season : present };
	s->of = mem_new(l->traps.n, sizeof *s->of);
	if (s->year == present)
		take_present(s, l, ask);
	else if (flight_season_read(&s->read, b, l, &of, s->year, e))
		take_earlier(s, l);
	else
		return false;
	if (s->series.n > 0)
		flights_find(&s->series, &s->found);
	return true;
}

void hot_season_free(struct hot_season *s)
{
	free(s->of);
	flight_season_free(&s->read);
	*s = (struct hot_season){ 0 };
}

struct hot_window hot_window_of(const struct hot_season *s, int flight)
{
	if (flight < 1 || (size_t)flight > s->found.n)
		return (struct hot_window){ s->start, s->end + 1 };
	const struct flight *f = &s->found.items[flight - 1];
	return (struct hot_window){ s->series.first_day + 7 * f->first_week,
		s->series.first_day + 7 * (f->last_week + 1) };
}
