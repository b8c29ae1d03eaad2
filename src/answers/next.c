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
	PACE_LEAST = 4, /* of these with temperatures, else there is no pace */
	STALE_DAYS = 3, /* older temperatures are told of */
	NOT_TOLD = -1,  /* that year's weather does not tell */
	NOT_REACHED = -2,
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
 * NOT_TOLD; NOT_REACHED within HORIZON_DAYS. */
static int32_t days_in_year(const struct outlook *o, const struct heat_days *all,
	const struct dd_rule *r, double rest, int back)
{
	struct ymd d = day_to_ymd(o->upto);
	int32_t start = day_from_ymd(d.year - back, d.month, d.day);
	int32_t missing = 0;

	if (start == DAY_NONE)
		start = day_from_ymd(d.year - back, d.month, d.day - 1);
	if (start == DAY_NONE || start < o->reach)
		return NOT_TOLD;
	const struct dd_span span = { all->items, all->n, start + 1,
		start + HORIZON_DAYS };
	int32_t day = dd_reaches(r, &span, rest, &missing);
	if (missing > 0)
		return NOT_TOLD;
	return day == DAY_NONE ? NOT_REACHED : day - start;
}

/* The mean of the last week's days with temperatures; -1 when they are too few. */
static double pace(
	const struct outlook *o, const struct heat_days *all, const struct dd_rule *r)
{
	const struct dd_span week = { all->items, all->n, o->upto - PACE_DAYS + 1,
		o->upto };
	struct dd_sum sum = dd_total(r, &week, NULL, NULL);

	return sum.days < PACE_LEAST ? -1 : sum.sum / sum.days;
}

/* What makes the days less sure: the sum is a lower bound, temperatures are old. */
static void say_hedge(
	const struct outlook *o, const struct event *ev, char out[static SAY_LINE])
{
	char end[SAY_SHORT];

	say_day(o->upto, end);
	text_copy(out, SAY_LINE, ev->at_least ? _(", or earlier") : "");
	if (o->upto < o->log->today - STALE_DAYS) {
		size_t n = strlen(out);
		snprintf(out + n, SAY_LINE - n, _("; temperatures end %s"), end);
	}
}

static void say_range(const struct outlook *o, struct event *ev, const char *how)
{
	char first[DAY_TEXT_SIZE], last[DAY_TEXT_SIZE], hedge[SAY_LINE];

	day_short(ev->first, first, sizeof first);
	day_short(ev->last, last, sizeof last);
	say_hedge(o, ev, hedge);
	if (ev->last < o->log->today)
		snprintf(ev->when, sizeof ev->when,
			_("should have come by %s%.60s (%.40s)"), last, hedge, how);
	else if (ev->first == ev->last)
		snprintf(ev->when, sizeof ev->when, _("about %s%.60s (%.40s)"), first,
			hedge, how);
	else
		snprintf(ev->when, sizeof ev->when, _("%s to %s%.60s (%.40s)"), first,
			last, hedge, how);
}

static void expect_by_pace(const struct outlook *o, const struct heat_days *all,
	const struct dd_rule *r, double rest, struct event *ev)
{
	double a_day = pace(o, all, r);

	if (a_day < 0)
		text_copy(ev->when, sizeof ev->when,
			_("not known: too few temperatures in the last week"));
	else if (a_day < 0.05 || rest / a_day > HORIZON_DAYS)
		text_copy(ev->when, sizeof ev->when,
			_("not known: too cold at present to tell"));
	else {
		ev->first = ev->last = o->upto + (int32_t)ceil(rest / a_day);
		say_range(o, ev, _("at the last week's pace"));
	}
}

/* From the station's own earlier years; those that never got so far are told of. */
static void expect(const struct outlook *o, const struct heat_days *all,
	const struct dd_rule *r, double rest, struct event *ev)
{
	int reached = 0, told = 0;
	char how[64];

	for (int back = 1; back <= YEARS_MAX; back++) {
		int32_t days = days_in_year(o, all, r, rest, back);
		told += days != NOT_TOLD;
		if (days < 0)
			continue;
		reached++;
		if (ev->first == DAY_NONE || o->upto + days < ev->first)
			ev->first = o->upto + days;
		if (ev->last == DAY_NONE || o->upto + days > ev->last)
			ev->last = o->upto + days;
	}
	if (told == 0) {
		expect_by_pace(o, all, r, rest, ev);
		return;
	}
	if (reached == 0) {
		snprintf(ev->when, sizeof ev->when,
			ngettext("not reached in %d earlier year",
				"not reached in any of %d earlier years",
				(unsigned)told),
			told);
		return;
	}
	if (reached == told)
		snprintf(how, sizeof how,
			ngettext("as in %d earlier year", "as in %d earlier years",
				(unsigned)told),
			told);
	else
		snprintf(how, sizeof how, _("as in %d of %d earlier years"), reached,
			told);
	say_range(o, ev, how);
}

static void say_event(const struct published *p, struct event *ev)
{
	if (*p->generation)
		snprintf(ev->text, sizeof ev->text, _("%s (generation: %s)"),
			words_shipped(p->event), words_shipped(p->generation));
	else
		text_copy(ev->text, sizeof ev->text, words_shipped(p->event));
	if (p->lo < p->hi)
		words_print(
			ev->at, sizeof ev->at, "%.5g-%.5g %c", p->lo, p->hi, p->unit);
	else
		words_print(ev->at, sizeof ev->at, "%.5g %c", p->lo, p->unit);
	text_copy(ev->source, sizeof ev->source, words_shipped(p->source));
}

/* The day on which a sum was reached, and whether it may have been earlier. */
static int32_t day_of_sum(const struct dd_rule *r, const struct dd_span *span,
	double target, char text[static DAY_TEXT_SIZE], bool *at_latest)
{
	int32_t missing = 0;
	int32_t day = dd_reaches(r, span, target, &missing);

	*at_latest = missing > 0;
	day_short(day, text, DAY_TEXT_SIZE);
	return day;
}

static void say_passed(
	struct event *ev, const char *from, const char *to, bool at_latest)
{
	if (strcmp(from, to) == 0)
		snprintf(ev->when, sizeof ev->when,
			at_latest ? _("passed by %s at the latest") : _("passed %s"),
			to);
	else
		snprintf(ev->when, sizeof ev->when,
			at_latest ? _("passed, %s to %s at the latest")
				  : _("passed, %s to %s"),
			from, to);
}

/* It has begun: what is still to come is its end. */
static void fill_under_way(const struct outlook *o, const struct heat_days *all,
	const struct dd_rule *r, double rest, const char *since, struct event *ev)
{
	char end[SAY_LINE];

	ev->under_way = true;
	expect(o, all, r, rest, ev);
	text_copy(end, sizeof end, ev->when);
	snprintf(ev->when, sizeof ev->when, _("since %.24s; its end: %.120s"), since,
		end);
}

static void fill_event(const struct outlook *o, const struct heat_days *all,
	const struct dd_rule *r, const struct published *p, struct event *ev)
{
	const struct dd_span span = { all->items, all->n, o->from, o->upto };
	struct dd_sum sum = dd_total(r, &span, NULL, NULL);
	char from[DAY_TEXT_SIZE], to[DAY_TEXT_SIZE];
	bool at_latest;

	*ev = (struct event){
		.first = DAY_NONE, .last = DAY_NONE, .at_least = sum.missing > 0
	};
	say_event(p, ev);
	if (sum.sum < p->lo) {
		expect(o, all, r, p->lo - sum.sum, ev);
		return;
	}
	int32_t first = day_of_sum(r, &span, p->lo, from, &at_latest);
	if (sum.sum < p->hi) {
		fill_under_way(o, all, r, p->hi - sum.sum, from, ev);
		return;
	}
	ev->passed = true;
	ev->first = first;
	ev->last = day_of_sum(r, &span, p->hi, to, &at_latest);
	say_passed(ev, from, to, at_latest);
}

static bool add_events(struct events *out, const struct outlook *o, struct err *e)
{
	struct published_list list = { 0 };
	struct heat_days all = { 0 };
	struct heat_want want = { o->station, o->reach, o->upto, 0,
		o->log->limits.fill_days };
	bool ok = published_events(o->pest->code, &list, e);

	for (size_t i = 0; ok && i < list.n; i++) {
		const struct published *p = &list.items[i];
		struct dd_rule rule;
		if (p->unit != want.unit) {
			want.unit = p->unit;
			ok = heat_read(&all, o->book, &want, e);
		}
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

bool next_events(struct events *out, struct book *b, const struct log *l,
	const struct heat_ask *ask, struct err *e)
{
	struct heat_sum sum;
	int32_t last;

	out->n = 0;
	text_copy(out->none, sizeof out->none, "");
	if (!heat_since(&sum, b, l, ask, e))
		return false;
	if (sum.state != HEAT_SUM && sum.state != HEAT_AT_LEAST) {
		say_heat(&sum, out->none, sizeof out->none);
		return true;
	}
	struct outlook o = { .book = b,
		.log = l,
		.pest = log_pest(l, ask->pest),
		.station = sum.station,
		.from = sum.from,
		.upto = sum.to };
	if (!book_weather_reach(b, o.station, &o.reach, &last, e) ||
		!add_events(out, &o, e))
		return false;
	if (out->n == 0)
		text_copy(out->none, sizeof out->none,
			_("no published event of this pest counts from a catch"));
	return true;
}

void events_free(struct events *ev)
{
	free(ev->items);
	*ev = (struct events){ 0 };
}
