/* flight_season.c - one season of counts, as weeks. */
#include "flight_parts.h"

#include "base/mem.h"
#include "book/diary.h"

#include <stdlib.h>

enum { DAYS_BEFORE = 42 }; /* a trap hung before the season's first day */

bool flight_asks_for(const struct log *l, const struct flight_ask *ask, size_t trap)
{
	const struct trap *t = &l->traps.items[trap];

	return t->pest == ask->pest && (ask->farm == 0 || t->farm == ask->farm) &&
	       (ask->block == 0 || t->block == ask->block) &&
	       (ask->trap == NO_TRAP || (size_t)ask->trap == trap);
}

/* False: the calendar has no such season, or a day before it. */
static bool season_days(const struct log *l, const struct flight_ask *ask, int season,
	struct flight_season *s)
{
	int md = log_season_start(l, ask->farm);
	if (season <= DAY_YEAR_MIN || season >= DAY_YEAR_MAX)
		return false;
	int32_t start = day_from_ymd(season, md / 100, md % 100);
	int32_t next = day_from_ymd(season + 1, md / 100, md % 100);

	s->start = start == DAY_NONE ? day_from_ymd(season, 2, 28) : start;
	s->end = (next == DAY_NONE ? day_from_ymd(season + 1, 2, 28) : next) - 1;
	if (s->end > l->today)
		s->end = l->today;
	return true;
}

/* The visits of one trap, which lie together. */
static void read_diary(struct flight_season *s, int64_t trap)
{
	size_t first = 0, end;

	while (first < s->visits.n && s->visits.items[first].trap != trap)
		first++;
	for (end = first; end < s->visits.n && s->visits.items[end].trap == trap; end++)
		;
	if (first == end)
		return;
	diary_read(&s->diaries[s->n], &s->visits.items[first], end - first);
	s->list[s->n] = &s->diaries[s->n];
	s->n++;
}

bool flight_season_read(struct flight_season *s, struct book *b, const struct log *l,
	const struct flight_ask *ask, int season, struct err *e)
{
	*s = (struct flight_season){ 0 };
	if (!season_days(l, ask, season, s))
		return true;
	if (!book_visits(b, ask->farm, s->start - DAYS_BEFORE, s->end, &s->visits, e))
		return false;
	s->diaries = mem_new(l->traps.n, sizeof *s->diaries);
	s->list = mem_new(l->traps.n, sizeof *s->list);
	for (size_t i = 0; i < l->traps.n; i++)
		if (flight_asks_for(l, ask, i))
			read_diary(s, l->traps.items[i].id);
	if (!flight_series_of(s->list, s->n, s->start, s->end, &s->series))
		s->series.n = 0;
	return true;
}

void flight_season_free(struct flight_season *s)
{
	for (size_t i = 0; i < s->n; i++)
		diary_free(&s->diaries[i]);
	free(s->diaries);
	free(s->list);
	free(s->visits.items);
	*s = (struct flight_season){ 0 };
}

int flight_lead(const struct flight_season *s)
{
	int32_t days = s->series.first_day - s->start;

	return s->series.n > 0 && days > 0 ? days / 7 : 0;
}

/* Whole weeks up to the last day looked at while a trap hangs, read or not; else up to
 * the last reading. */
static size_t weeks_shown(const struct flight_season *s)
{
	size_t n = s->series.n;

	for (size_t i = 0; n > 0 && i < s->n; i++)
		if (diary_stand(s->list[i], s->end).standing == STANDING_HANGS) {
			size_t all = (size_t)((s->end - s->series.first_day) / 7);
			return all > n ? all : n;
		}
	return n;
}

void flight_fill_line(
	struct flight_line *line, const struct flight_season *s, int season, int lead)
{
	size_t first = (size_t)lead, all = weeks_shown(s) + first;

	*line = (struct flight_line){ .season = season,
		.first_day = s->series.first_day - 7 * lead,
		.n = all < FLIGHT_WEEKS_MAX ? all : FLIGHT_WEEKS_MAX };
	for (size_t w = 0; w < line->n; w++) {
		line->rate[w] = line->dd[w] = -1;
		if (w < first || w - first >= s->series.n ||
			s->series.nights[w - first] <= 0)
			continue;
		line->rate[w] =
			7 * s->series.moths[w - first] / s->series.nights[w - first];
		line->at_least[w] = s->series.at_least[w - first];
	}
}
