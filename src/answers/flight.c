#include "answers/flight.h"

#include "answers/answered.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/weather.h"
#include "flight_parts.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

void flight_add_mark(struct flight_view *v, enum flight_mark_kind kind, int32_t day)
{
	int week = (int)((day - v->now.first_day) / 7);

	if (day < v->now.first_day || week >= (int)v->now.n ||
		v->n_marks == FLIGHT_MARKS_MAX)
		return;
	for (size_t i = 0; i < v->n_marks; i++)
		if (v->marks[i].kind == kind && v->marks[i].week == week)
			return;
	v->marks[v->n_marks++] = (struct flight_mark){ kind, week };
}

static void say_title(struct flight_view *v, const struct log *l)
{
	const struct flight_ask *a = &v->ask;
	const struct farm *f = log_farm(l, a->farm);
	const struct block *b = log_block(l, a->block);
	const struct pest *p = log_pest(l, a->pest);
	char trap[NAME_BYTES + 16] = "";

	if (a->trap != NO_TRAP)
		snprintf(trap, sizeof trap, _(" trap %s"),
			l->traps.items[a->trap].label);
	snprintf(v->title, sizeof v->title, _("Flight  %s  %s%s%s%s"), p ? p->code : "",
		f ? f->name : _("all farms"), b ? "  " : "", b ? b->name : "", trap);
	snprintf(v->right, sizeof v->right, _("season %d"), a->season);
}

/* Lures changed and blocks treated, as far as they are asked about. */
static void add_work_marks(
	struct flight_view *v, const struct log *l, const struct flight_season *s)
{
	for (size_t i = 0; i < s->n; i++)
		for (size_t k = 0; k < s->list[i]->n_visits; k++) {
			const struct visit *visit = &s->list[i]->visits[k];
			if (visit->new_lure && visit->outcome != OUTCOME_HUNG)
				flight_add_mark(v, FLIGHT_LURE, visit->day);
		}
	for (size_t i = 0; i < l->treatments.n; i++) {
		const struct treatment *t = &l->treatments.items[i];
		const struct block *b = log_block(l, t->block);
		if (t->id != TREATMENT_ANSWERED && b &&
			(v->ask.farm == 0 || b->farm == v->ask.farm) &&
			(v->ask.block == 0 || b->id == v->ask.block) &&
			(t->pest == 0 || t->pest == v->ask.pest))
			flight_add_mark(v, FLIGHT_TREATMENT, t->day);
	}
}

/* The weekly threshold in force for the traps asked about: a line across the chart. */
static void fill_threshold(struct flight_view *v, const struct log *l)
{
	struct verdict_rows rows = { 0 };

	v->threshold = -1;
	if (v->ask.season != log_season(l, v->ask.farm, l->today))
		return;
	verdicts_of(l, v->ask.farm, v->ask.pest, l->today, &rows);
	for (size_t i = 0; i < rows.n && v->threshold < 0; i++) {
		const struct verdict_row *row = &rows.items[i];
		if (row->rule == NO_RULE ||
			(v->ask.block && row->block != v->ask.block))
			continue;
		const struct rule *r = &l->rules.items[row->rule];
		if ((r->measure == MEASURE_TRAP_WEEK ||
			    r->measure == MEASURE_BLOCK_WEEK) &&
			r->span == 1)
			v->threshold = r->value_x100 / 100.0;
	}
	free(rows.items);
}

static bool fill_earlier(struct flight_view *v, struct book *b, const struct log *l,
	int *lead, struct err *e)
{
	struct flight_season *all = mem_new(FLIGHT_SEASONS, sizeof *all);
	int most = v->ask.is_brief ? 1 : FLIGHT_SEASONS;
	int leads[FLIGHT_SEASONS];
	bool ok = true;

	v->n_earlier = 0;
	for (int k = 0; ok && k < most; k++) {
		ok = flight_season_read(
			&all[k], b, l, &v->ask, v->ask.season - 1 - k, e);
		if (!ok || all[k].series.n == 0)
			break;
		leads[k] = flight_lead(&all[k]);
		*lead = leads[k] < *lead ? leads[k] : *lead;
		v->n_earlier++;
	}
	for (size_t k = 0; ok && k < v->n_earlier; k++) {
		flight_fill_line(&v->earlier[k], &all[k], v->ask.season - 1 - (int)k,
			leads[k] - *lead);
		ok = flight_fill_line_heat(
			&v->earlier[k], b, l, &v->ask, all[k].end, e);
	}
	for (int k = 0; k < FLIGHT_SEASONS; k++)
		flight_season_free(&all[k]);
	free(all);
	return ok;
}

static void say_found(struct flight_view *v, const struct flight_season *s)
{
	text_copy(v->says, sizeof v->says, "");
	if (s->n == 0)
		text_copy(v->says, sizeof v->says,
			_("no trap for this pest was visited in this season"));
	else if (s->series.n == 0)
		text_copy(v->says, sizeof v->says, _("nothing has been read yet"));
	else if (v->n_rows == 0)
		text_copy(v->says, sizeof v->says, _("nothing caught so far"));
}

/* Of the season that is on; of one that is over nothing comes next. */
static bool fill_events(
	struct flight_view *v, struct book *b, const struct log *l, struct err *e)
{
	const struct heat_ask of = {
		.farm = v->ask.farm, .pest = v->ask.pest, .day = l->today
	};

	if (!v->ask.is_brief && v->ask.season == log_season(l, v->ask.farm, l->today))
		return next_events(&v->events, b, l, &of, e);
	v->events.n = 0;
	text_copy(v->events.none, sizeof v->events.none,
		_("told of the present season only"));
	return true;
}

static bool fill_view(struct flight_view *v, struct book *b, const struct log *l,
	const struct flight_season *s, struct err *e)
{
	int lead = flight_lead(s);
	int own = lead;

	if (!fill_earlier(v, b, l, &lead, e))
		return false;
	flight_fill_line(&v->now, s, v->ask.season, own - lead);
	v->n_marks = 0;
	v->found = (struct flights){ 0 };
	if (s->series.n > 0)
		flights_find(&s->series, &v->found);
	flight_fill_rows(v, s);
	flight_fill_biofix(v, l, s);
	add_work_marks(v, l, s);
	fill_threshold(v, l);
	say_found(v, s);
	return flight_fill_heat(v, b, l, s, e) && fill_events(v, b, l, e);
}

bool flight_read(struct flight_view *v, struct book *b, const struct log *l,
	const struct flight_ask *ask, struct err *e)
{
	struct flight_season now;

	v->ask = *ask;
	say_title(v, l);
	if (!flight_season_read(&now, b, l, ask, ask->season, e))
		return false;
	bool ok = fill_view(v, b, l, &now, e);
	flight_season_free(&now);
	return ok;
}

void flight_free(struct flight_view *v)
{
	events_free(&v->events);
	*v = (struct flight_view){ 0 };
}
