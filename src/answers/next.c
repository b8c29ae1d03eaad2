#include "answers/next.h"

#include "answers/flight.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/weather.h"
#include "events.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum {
	YEARS_MAX = 30,
	HORIZON_DAYS = 200, /* later than this is no help */
	PACE_DAYS = 7,
};

/* What the expected days of all events rest on. */
struct outlook {
	struct book *book;
	const struct log *log;
	const struct pest *pest;
	int64_t station;
	int32_t from;  /* first day summed */
	int32_t upto;  /* last day with temperatures, at most today */
	int32_t reach; /* first day of the station's weather */
};

/* The rule of an event: its own base; cap and cutoff its own, else the pest's if the
 * base is the same. */
static bool event_rule(const struct outlook *o, const struct published *p,
	struct dd_rule *out, struct err *e)
{
	struct dd_rule own;

	if (!heat_rule(o->pest, &own, e))
		return false;
	*out = own;
	if (isnan(p->base))
		return true;
	bool same = p->unit == o->pest->heat.unit && p->base == own.base;
	out->base = p->base;
	out->cap = !isnan(p->cap) ? p->cap : same ? own.cap : NAN;
	if (*p->cutoff && !dd_cutoff_read(p->cutoff, &out->cutoff))
		return err_set(e, ERR_INPUT, "phenology.csv: %s", p->cutoff);
	if (isnan(out->cap))
		out->cutoff = DD_NO_CUTOFF;
	if (dd_rule_fault(out) && isnan(out->cap))
		out->method = DD_SINE;
	return true;
}

/* Days after o->upto that `rest` more degree-days took in the year `back` years ago;
 * -1: that year's weather does not tell. */
static int32_t days_in_year(const struct outlook *o, const struct heat_days *all,
	const struct dd_rule *r, double rest, int back)
{
	struct ymd d = day_to_ymd(o->upto);
	int32_t start = day_from_ymd(d.year - back, d.month, d.day);
	int32_t missing = 0;

	if (start == DAY_NONE)
		start = day_from_ymd(d.year - back, d.month, d.day - 1);
	if (start == DAY_NONE || start < o->reach)
		return -1;
	const struct dd_span span = { all->items, all->n, start + 1,
		start + HORIZON_DAYS };
	int32_t day = dd_reaches(r, &span, rest, &missing);
	return day == DAY_NONE || missing > 0 ? -1 : day - start;
}

/* The mean of the last days with temperatures; 0 when there is none. */
static double pace(
	const struct outlook *o, const struct heat_days *all, const struct dd_rule *r)
{
	double sum = 0;
	int32_t days = 0;

	for (int32_t day = o->upto; day > o->upto - 4 * PACE_DAYS && days < PACE_DAYS;
		day--) {
		const struct dd_span span = { all->items, all->n, day, day };
		struct dd_sum s = dd_total(r, &span, NULL, NULL);
		if (s.missing == 0) {
			sum += s.sum;
			days++;
		}
	}
	return days ? sum / days : 0;
}

static void say_range(
	const struct event *ev, const char *how, bool at_least, char *out, size_t size)
{
	char first[DAY_TEXT_SIZE], last[DAY_TEXT_SIZE];
	const char *hedge = at_least ? _(", or earlier") : "";

	day_short(ev->first, first, sizeof first);
	day_short(ev->last, last, sizeof last);
	if (ev->first == ev->last)
		snprintf(out, size, _("about %s%s (%s)"), first, hedge, how);
	else
		snprintf(out, size, _("%s to %s%s (%s)"), first, last, hedge, how);
}

static void expect_by_pace(const struct outlook *o, const struct heat_days *all,
	const struct dd_rule *r, double rest, bool at_least, struct event *ev)
{
	double a_day = pace(o, all, r);

	if (a_day < 0.05 || rest / a_day > HORIZON_DAYS) {
		text_copy(ev->when, sizeof ev->when,
			_("not known: too cold at present to tell"));
		return;
	}
	ev->first = ev->last = o->upto + (int32_t)ceil(rest / a_day);
	say_range(
		ev, _("at the last week's pace"), at_least, ev->when, sizeof ev->when);
}

static void expect(const struct outlook *o, const struct heat_days *all,
	const struct dd_rule *r, double rest, bool at_least, struct event *ev)
{
	int years = 0;
	char how[64];

	for (int back = 1; back <= YEARS_MAX; back++) {
		int32_t days = days_in_year(o, all, r, rest, back);
		if (days < 0)
			continue;
		years++;
		if (ev->first == DAY_NONE || o->upto + days < ev->first)
			ev->first = o->upto + days;
		if (ev->last == DAY_NONE || o->upto + days > ev->last)
			ev->last = o->upto + days;
	}
	if (years == 0) {
		expect_by_pace(o, all, r, rest, at_least, ev);
		return;
	}
	snprintf(how, sizeof how,
		ngettext("as in %d earlier year", "as in %d earlier years",
			(unsigned)years),
		years);
	say_range(ev, how, at_least, ev->when, sizeof ev->when);
}

static void say_event(const struct published *p, struct event *ev)
{
	if (*p->generation)
		snprintf(ev->text, sizeof ev->text, _("%s (generation: %s)"), p->event,
			p->generation);
	else
		text_copy(ev->text, sizeof ev->text, p->event);
	if (p->lo < p->hi)
		snprintf(ev->at, sizeof ev->at, "%.5g-%.5g %c", p->lo, p->hi, p->unit);
	else
		snprintf(ev->at, sizeof ev->at, "%.5g %c", p->lo, p->unit);
	text_copy(ev->source, sizeof ev->source, p->source);
}

static void fill_event(const struct outlook *o, const struct heat_days *all,
	const struct dd_rule *r, const struct published *p, struct event *ev)
{
	const struct dd_span span = { all->items, all->n, o->from, o->upto };
	struct dd_sum sum = dd_total(r, &span, NULL, NULL);
	char day[DAY_TEXT_SIZE];
	int32_t missing = 0;

	*ev = (struct event){ .first = DAY_NONE, .last = DAY_NONE };
	say_event(p, ev);
	if (sum.sum < p->lo) {
		expect(o, all, r, p->lo - sum.sum, sum.missing > 0, ev);
		return;
	}
	ev->passed = true;
	ev->first = ev->last = dd_reaches(r, &span, p->lo, &missing);
	day_short(ev->first, day, sizeof day);
	snprintf(ev->when, sizeof ev->when,
		missing ? _("passed by %s at the latest") : _("passed %s"), day);
}

static bool add_events(struct events *out, const struct outlook *o, struct err *e)
{
	struct published_list list = { 0 };
	struct heat_days all = { 0 };
	char unit = 0;
	bool ok = published_events(o->pest->code, &list, e);

	for (size_t i = 0; ok && i < list.n; i++) {
		const struct published *p = &list.items[i];
		struct dd_rule rule;
		if (p->unit != unit)
			ok = heat_read(&all, o->book, o->station, o->reach, o->upto,
				unit = p->unit, o->log->limits.fill_days, e);
		ok = ok && event_rule(o, p, &rule, e);
		if (!ok)
			break;
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		fill_event(o, &all, &rule, p, &out->items[out->n++]);
	}
	heat_free(&all);
	free(list.items);
	return ok;
}

bool next_events(struct events *out, struct book *b, const struct log *l, int64_t farm,
	int64_t pest, char *why, size_t why_size, struct err *e)
{
	const struct station *station = heat_station(l, farm);
	struct heat_sum sum;
	int32_t last;

	out->n = 0;
	text_copy(why, why_size, "");
	if (!heat_since_biofix(&sum, b, l, farm, pest, l->today, e))
		return false;
	if (sum.state != HEAT_SUM && sum.state != HEAT_AT_LEAST) {
		say_heat(&sum, why, why_size);
		return true;
	}
	struct outlook o = { .book = b,
		.log = l,
		.pest = log_pest(l, pest),
		.station = station->id,
		.from = sum.from,
		.upto = sum.to };
	if (!book_weather_reach(b, o.station, &o.reach, &last, e) ||
		!add_events(out, &o, e))
		return false;
	if (out->n == 0)
		text_copy(why, why_size,
			_("no published event of this pest counts from a catch"));
	return true;
}

void events_free(struct events *ev)
{
	free(ev->items);
	*ev = (struct events){ 0 };
}
