#include "answers/season_page.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "season_page_parts.h"

#include <stdio.h>
#include <stdlib.h>

enum { DAYS_OF_SEASON = 364 }; /* weeks that stand under each other a year apart */

struct season_chart *season_chart_of(struct season_page *p, int64_t block, int64_t pest)
{
	for (size_t i = 0; i < p->n_charts; i++)
		if (p->charts[i].block == block && p->charts[i].pest == pest)
			return &p->charts[i];
	return NULL;
}

bool season_is_of(
	const struct season_work *w, const struct season_chart *c, size_t trap)
{
	const struct trap *t = &w->log->traps.items[trap];

	return t->farm == w->farm && t->block == c->block && t->pest == c->pest;
}

int32_t season_page_last_day(const struct log *l, int64_t farm, int season)
{
	int md = log_season_start(l, farm);
	int32_t next = day_from_ymd(season + 1, md / 100, md % 100);

	if (next == DAY_NONE)
		next = day_from_ymd(season + 1, 2, 28);
	return next == DAY_NONE ? DAY_NONE : next - 1;
}

static struct flight_ask ask_of(
	const struct season_work *w, int64_t block, int64_t pest)
{
	return (struct flight_ask){ .farm = w->farm,
		.block = block,
		.pest = pest,
		.trap = NO_TRAP,
		.season = w->page->season,
		.is_brief = true };
}

/* A block that neither season has anything of is left out. */
static bool is_told(const struct season_work *w, const struct season_chart *c)
{
	if (c->flight.now.n > 0 || c->flight.n_earlier > 0)
		return true;
	for (size_t i = 0; i < w->log->traps.n; i++)
		if (season_is_of(w, c, i) && log_in_season(w->log, i))
			return true;
	return false;
}

static int32_t drawn_from(const struct flight_view *v)
{
	if (v->now.n > 0)
		return v->now.first_day;
	return v->n_earlier > 0 ? v->earlier[0].first_day + DAYS_OF_SEASON : DAY_NONE;
}

static bool add_chart(struct season_work *w, const struct trap *t, struct err *e)
{
	struct season_page *p = w->page;
	struct season_chart *c = &p->charts[p->n_charts];
	const struct flight_ask ask = ask_of(w, t->block, t->pest);

	c->block = t->block;
	c->pest = t->pest;
	if (!flight_read(&c->flight, w->book, w->log, &ask, e))
		return false;
	c->first_day = drawn_from(&c->flight);
	if (is_told(w, c)) {
		p->n_charts++;
	} else {
		flight_free(&c->flight);
		*c = (struct season_chart){ 0 };
	}
	return true;
}

/* True if no trap before it is of its block and pest. */
static bool is_first(const struct log *l, size_t trap)
{
	const struct trap *t = &l->traps.items[trap];

	for (size_t i = 0; i < trap; i++)
		if (l->traps.items[i].block == t->block &&
			l->traps.items[i].pest == t->pest)
			return false;
	return true;
}

static bool read_charts(struct season_work *w, int64_t pest, struct err *e)
{
	const struct log *l = w->log;

	for (size_t i = 0; i < l->traps.n; i++) {
		const struct trap *t = &l->traps.items[i];
		if (t->farm == w->farm && t->pest == pest && is_first(l, i) &&
			!add_chart(w, t, e))
			return false;
	}
	return true;
}

/* The pest's charts, and what is told of all of them together. */
static bool read_pest(struct season_work *w, const struct pest *pest, struct err *e)
{
	struct season_page *p = w->page;
	struct season_pest *s = &p->pests[p->n_pests];
	const struct flight_ask ask = ask_of(w, 0, pest->id);
	const struct hot_ask hot = { .farm = w->farm, .pest = pest->id, .earlier = 1 };

	s->pest = pest->id;
	s->first = p->n_charts;
	if (!read_charts(w, pest->id, e))
		return false;
	s->n = p->n_charts - s->first;
	if (s->n == 0)
		return true;
	p->n_pests++;
	snprintf(s->name, sizeof s->name, "%s (%s)", words_shipped(pest->name),
		pest->code);
	return flight_read(&s->all, w->book, w->log, &ask, e) &&
	       hotspots_read(&s->hot, w->book, w->log, &hot, e);
}

static bool read_pests(struct season_work *w, struct err *e)
{
	struct season_page *p = w->page;
	const struct log *l = w->log;

	p->pests = mem_new(l->pests.n, sizeof *p->pests);
	p->charts = mem_new(l->traps.n, sizeof *p->charts);
	for (size_t i = 0; i < l->pests.n; i++)
		if (!read_pest(w, &l->pests.items[i], e))
			return false;
	return true;
}

static void widen(struct season_page *p, const struct flight_line *line, int32_t first)
{
	for (size_t k = 0; k < line->n; k++) {
		int32_t from = first + 7 * (int32_t)k;
		if (line->rate[k] < 0)
			continue;
		if (p->from == DAY_NONE || from < p->from)
			p->from = from;
		if (p->to == DAY_NONE || from + 7 > p->to)
			p->to = from + 7;
	}
}

/* From the first to the last week that was read in either season, and all weeks of this
 * one so far: what was not read of them shows. */
static void find_span(struct season_page *p)
{
	p->from = p->to = p->now_to = DAY_NONE;
	for (size_t i = 0; i < p->n_charts; i++) {
		const struct season_chart *c = &p->charts[i];
		const struct flight_view *v = &c->flight;
		widen(p, &v->now, c->first_day);
		if (v->n_earlier > 0)
			widen(p, &v->earlier[0], c->first_day);
	}
	for (size_t i = 0; i < p->n_charts && p->to != DAY_NONE; i++) {
		const struct flight_line *now = &p->charts[i].flight.now;
		int32_t end = now->first_day + 7 * (int32_t)now->n;
		if (now->n > 0 && end > p->to)
			p->to = end;
		if (now->n > 0 && (p->now_to == DAY_NONE || end > p->now_to))
			p->now_to = end;
	}
}

static bool fill(struct season_work *w, struct err *e)
{
	struct season_page *p = w->page;
	int32_t today = w->log->today;

	p->season = log_season(w->log, w->farm, today);
	p->day = today;
	p->start = day_season_start(today, log_season_start(w->log, w->farm));
	p->end = season_page_last_day(w->log, w->farm, p->season);
	if (!read_pests(w, e))
		return false;
	find_span(p);
	season_fill_catches(w);
	if (!season_fill_acts(w, e))
		return false;
	for (size_t i = 0; i < p->n_charts; i++)
		season_say_chart(w, &p->charts[i]);
	season_say_page(w);
	season_say_sources(w);
	return true;
}

bool season_page_read(struct season_page *p, struct book *b, const struct log *l,
	int64_t farm, struct err *e)
{
	struct season_work w = { p, b, l, farm, l->today };

	season_page_free(p);
	return fill(&w, e);
}

static void free_chart(struct season_chart *c)
{
	flight_free(&c->flight);
	free(c->dots);
	free(c->limits);
	free(c->marks);
	free(c->alerts);
}

void season_page_free(struct season_page *p)
{
	for (size_t i = 0; i < p->n_charts; i++)
		free_chart(&p->charts[i]);
	for (size_t i = 0; i < p->n_pests; i++) {
		flight_free(&p->pests[i].all);
		hotspots_free(&p->pests[i].hot);
	}
	free(p->charts);
	free(p->pests);
	free(p->acts);
	free(p->sources);
	free(p->bare);
	*p = (struct season_page){ 0 };
}
