#include "answers/heat.h"

#include "answers/flight.h"
#include "base/buf.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/weather.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

bool heat_rule(const struct pest *p, struct dd_rule *out, struct err *e)
{
	const struct heat *h = &p->heat;

	if (h->unit == 0)
		return err_set(e, ERR_NOT_FOUND,
			_("%s has no base for degree-days yet"), p->code);
	*out = (struct dd_rule){ .base = h->base, .cap = h->cap };
	if (!dd_method_read(h->method, &out->method) ||
		!dd_cutoff_read(h->cutoff, &out->cutoff))
		return err_set(e, ERR_INPUT,
			_("%s has the method \"%s\" with the cutoff \"%s\" for its "
			  "degree-days, and one of them is not known"),
			p->code, h->method, h->cutoff);
	const char *fault = dd_rule_fault(out);
	return fault ? err_set(e, ERR_INPUT, "%s: %s", p->code, _(fault)) : true;
}

const struct station *heat_station(const struct log *l, int64_t farm)
{
	const struct farm *f = log_farm(l, farm);
	int64_t id = f ? f->station : 0;

	if (id == 0)
		return l->stations.n == 1 ? &l->stations.items[0] : NULL;
	for (size_t i = 0; i < l->stations.n; i++)
		if (l->stations.items[i].id == id)
			return &l->stations.items[i];
	return NULL;
}

int log_season_start(const struct log *l, int64_t farm)
{
	const struct farm *f = log_farm(l, farm);

	if (f)
		return f->season_start ? f->season_start : 101;
	for (size_t i = 1; i < l->farms.n; i++)
		if (l->farms.items[i].season_start != l->farms.items[0].season_start)
			return 101;
	return l->farms.n > 0 && l->farms.items[0].season_start
		       ? l->farms.items[0].season_start
		       : 101;
}

int log_season(const struct log *l, int64_t farm, int32_t day)
{
	return day_to_ymd(day_season_start(day, log_season_start(l, farm))).year;
}

const struct biofix_date *heat_biofix(
	const struct log *l, int64_t farm, int64_t pest, int season)
{
	for (size_t i = 0; i < l->biofixes.n; i++) {
		const struct biofix_date *d = &l->biofixes.items[i];
		if (d->farm == farm && d->pest == pest && d->season == season)
			return d;
	}
	return NULL;
}

static double in_unit(double value, char from, char to)
{
	if (from == to)
		return value;
	return to == 'F' ? value * 9 / 5 + 32 : (value - 32) * 5 / 9;
}

static void fill_gaps(struct heat_days *out, int32_t max_days)
{
	struct heat_days all = { 0 };

	if (max_days <= 0 || out->n == 0)
		return;
	size_t room = (size_t)(out->items[out->n - 1].day - out->items[0].day + 1);
	all.items = mem_grow(NULL, &all.cap, room, sizeof *all.items);
	dd_fill(out->items, out->n, max_days, all.items, &all.n);
	free(out->items);
	*out = all;
}

bool heat_read(struct heat_days *out, struct book *b, const struct heat_want *want,
	struct err *e)
{
	struct weather_days days = { 0 };
	bool ok = book_weather(b, want->station, want->from, want->to, &days, e);

	out->n = 0;
	for (size_t i = 0; ok && i < days.n; i++) {
		const struct weather_day *d = &days.items[i];
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		out->items[out->n++] = (struct dd_temps){ .day = d->day,
			.min = in_unit(d->min, d->unit, want->unit),
			.max = in_unit(d->max, d->unit, want->unit) };
	}
	free(days.items);
	if (ok)
		fill_gaps(out, want->fill_days);
	return ok;
}

void heat_free(struct heat_days *h)
{
	free(h->items);
	*h = (struct heat_days){ 0 };
}

static int32_t last_known(const struct heat_days *days)
{
	for (size_t i = days->n; i > 0; i--)
		if (!isnan(days->items[i - 1].min) && !isnan(days->items[i - 1].max))
			return days->items[i - 1].day;
	return DAY_NONE;
}

bool heat_read_span(struct heat_days *out, struct book *b, const struct log *l,
	const struct heat_sum *span, struct err *e)
{
	int32_t around = l->limits.fill_days + 1;
	int32_t last = span->to + around < l->today ? span->to + around : l->today;
	const struct heat_want want = { span->station, span->from - around, last,
		span->unit, l->limits.fill_days };

	return heat_read(out, b, &want, e);
}

static bool sum_since(struct heat_sum *out, struct book *b, const struct log *l,
	const struct heat_ask *ask, struct err *e)
{
	struct heat_days days = { 0 };
	struct dd_rule rule;

	out->to = ask->day;
	if (!heat_rule(log_pest(l, ask->pest), &rule, e) ||
		!heat_read_span(&days, b, l, out, e)) {
		heat_free(&days);
		return false;
	}
	out->last_day = last_known(&days);
	if (out->last_day == DAY_NONE || out->last_day < out->from) {
		out->state = HEAT_NO_WEATHER;
	} else {
		out->to = out->last_day < ask->day ? out->last_day : ask->day;
		const struct dd_span span = { days.items, days.n, out->from, out->to };
		out->sum = dd_total(&rule, &span, ask->each, ask->arg);
		out->state = out->sum.missing ? HEAT_AT_LEAST : HEAT_SUM;
	}
	heat_free(&days);
	return true;
}

bool heat_since(struct heat_sum *out, struct book *b, const struct log *l,
	const struct heat_ask *ask, struct err *e)
{
	const struct biofix_date *biofix = heat_biofix(
		l, ask->farm, ask->pest, log_season(l, ask->farm, ask->day));
	const struct station *station = heat_station(l, ask->farm);
	const struct pest *p = log_pest(l, ask->pest);

	*out = (struct heat_sum){ .state = HEAT_NO_BIOFIX,
		.from = DAY_NONE,
		.to = DAY_NONE,
		.last_day = DAY_NONE };
	if (!biofix || biofix->day > ask->day)
		return true;
	out->state = HEAT_NO_RULE;
	if (!p || p->heat.unit == 0)
		return true;
	out->state = HEAT_NO_STATION;
	if (!station)
		return true;
	out->station = station->id;
	out->unit = p->heat.unit;
	out->skips_biofix = l->limits.skip_biofix_day != 0;
	out->from = biofix->day + (out->skips_biofix ? 1 : 0);
	return sum_since(out, b, l, ask, e);
}

/* Whole degree-days. No blank between thousands: "at least 1 539" is two numbers. */
static void say_sum(double sum, char *out, size_t size)
{
	snprintf(out, size, "%ld", (long)(sum + 0.5));
}

/* Why there is no sum; NULL: there is one. */
static const char *why_none(enum heat_state state)
{
	switch (state) {
	case HEAT_NO_BIOFIX:
		return _("biofix not set");
	case HEAT_NO_RULE:
		return _("no base for degree-days is set for this pest");
	case HEAT_NO_STATION:
		return _("no weather station is chosen for this farm");
	case HEAT_NO_WEATHER:
		return _("no temperatures since biofix");
	default:
		return NULL;
	}
}

/* What was done that is not usual, and what is missing. */
static void say_reserves(const struct heat_sum *h, struct buf *out)
{
	if (h->state == HEAT_AT_LEAST)
		buf_addf(out,
			ngettext(", %d day missing", ", %d days missing",
				(unsigned)h->sum.missing),
			(int)h->sum.missing);
	if (h->sum.filled)
		buf_addf(out,
			ngettext(", %d day filled", ", %d days filled",
				(unsigned)h->sum.filled),
			(int)h->sum.filled);
	if (h->skips_biofix)
		buf_add(out, _(", from the day after biofix"));
}

void say_heat(const struct heat_sum *h, char *out, size_t size)
{
	char sum[32], from[DAY_TEXT_SIZE], to[DAY_TEXT_SIZE];
	const char *why = why_none(h->state);
	struct buf text = { 0 };

	if (why) {
		text_copy(out, size, why);
		return;
	}
	say_sum(h->sum.sum, sum, sizeof sum);
	day_short(h->from, from, sizeof from);
	day_short(h->to, to, sizeof to);
	buf_addf(&text,
		h->state == HEAT_AT_LEAST ? _("at least %s %c degree-days, %s to %s")
					  : _("%s %c degree-days, %s to %s"),
		sum, h->unit, from, to);
	say_reserves(h, &text);
	text_copy(out, size, text.text);
	buf_free(&text);
}
