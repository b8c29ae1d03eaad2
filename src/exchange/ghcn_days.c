#include "base/day.h"
#include "base/mem.h"
#include "base/words.h"
#include "ghcn_parts.h"
#include "season/temps.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { SAID_BYTES = 64 };

static int by_station_and_day(const void *pa, const void *pb)
{
	const struct ghcn_value *a = pa, *b = pb;
	int order = strcmp(a->station, b->station);

	if (order == 0)
		order = (a->day > b->day) - (a->day < b->day);
	if (order == 0)
		order = a->is_max - b->is_max;
	return order != 0 ? order : (a->line > b->line) - (a->line < b->line);
}

static bool same_day(const struct ghcn_value *a, const struct ghcn_value *b)
{
	return a->day == b->day && strcmp(a->station, b->station) == 0;
}

/* The first value of a day's minimum or maximum is kept; others must be like it. */
static void keep(struct ghcn_taking *t, const struct ghcn_value *v, double *field)
{
	double had = *field, now = v->x10 / 10.0;
	char iso[DAY_ISO_SIZE];

	if (isnan(had)) {
		*field = now;
		return;
	}
	if (had == now) {
		t->out->n_repeated++;
		return;
	}
	day_iso(v->day, iso);
	t->line = v->line;
	ghcn_problem(t,
		v->is_max ? _("station %s, %s: the maximum %.1f is here a second time; "
			      "before, it was %.1f")
			  : _("station %s, %s: the minimum %.1f is here a second time; "
			      "before, it was %.1f"),
		v->station, iso, now, had);
}

static void say_day(const struct ghcn_day *d, char out[static SAID_BYTES])
{
	if (isnan(d->min))
		words_print(out, SAID_BYTES, _("maximum %.1f C"), d->max);
	else if (isnan(d->max))
		words_print(out, SAID_BYTES, _("minimum %.1f C"), d->min);
	else
		words_print(out, SAID_BYTES, _("%.1f to %.1f C"), d->min, d->max);
}

static struct dd_temps temps_of(const struct ghcn_day *d)
{
	return (struct dd_temps){ .day = d->day, .min = d->min, .max = d->max };
}

/* What is wrong with the last day, by itself or after the one before it. */
static void check_last(struct ghcn_taking *t)
{
	const struct ghcn *g = t->out;
	const struct ghcn_day *last = &g->items[g->n - 1];
	const char *fault = temps_fault(last->min, last->max);
	char iso[DAY_ISO_SIZE], said[SAID_BYTES], before[SAID_BYTES];

	day_iso(last->day, iso);
	say_day(last, said);
	if (fault != NULL) {
		ghcn_problem(t, _("station %s, %s, %s: %s"), last->station, iso, said,
			fault);
		return;
	}
	if (g->n < 2 || strcmp(last[-1].station, last->station) != 0)
		return;
	struct dd_temps now = temps_of(last), then = temps_of(last - 1);
	fault = temps_jump_fault(&then, &now);
	if (fault == NULL || temps_fault(then.min, then.max) != NULL)
		return;
	say_day(last - 1, before);
	ghcn_problem(t, _("station %s, %s, %s after %s the day before: %s"),
		last->station, iso, said, before, fault);
}

/* One day's values, n >= 1. */
static void add_day(struct ghcn_taking *t, const struct ghcn_value *v, size_t n)
{
	struct ghcn *g = t->out;
	struct ghcn_day day = { .day = v->day, .min = NAN, .max = NAN };

	memcpy(day.station, v->station, sizeof day.station);
	for (size_t i = 0; i < n; i++)
		keep(t, &v[i], v[i].is_max ? &day.max : &day.min);
	g->items = mem_grow(g->items, &g->cap, g->n + 1, sizeof *g->items);
	g->items[g->n++] = day;
	t->line = v[n - 1].line;
	check_last(t);
}

static bool nothing_there(const struct ghcn_taking *t, struct err *e)
{
	if (t->from->station != NULL)
		return err_set(e, ERR_INPUT,
			_("%s has no TMIN or TMAX of the station %s that counts"),
			t->from->name, t->from->station);
	return err_set(
		e, ERR_INPUT, _("%s has no TMIN or TMAX that counts"), t->from->name);
}

static bool say_problems(const struct ghcn_taking *t, struct err *e)
{
	if (t->out->n_problems == 1)
		return err_set(e, ERR_INPUT,
			_("%s: one thing is wrong, so nothing was taken in"),
			t->from->name);
	return err_set(e, ERR_INPUT,
		_("%s: %lld things are wrong, so nothing was taken in"), t->from->name,
		(long long)t->out->n_problems);
}

bool ghcn_finish(struct ghcn_taking *t, bool ok, struct err *e)
{
	if (ok && t->n > 0)
		qsort(t->items, t->n, sizeof *t->items, by_station_and_day);
	for (size_t i = 0, n; ok && i < t->n; i += n) {
		for (n = 1; i + n < t->n && same_day(&t->items[i], &t->items[i + n]);)
			n++;
		add_day(t, &t->items[i], n);
	}
	if (ok && t->out->n_problems > 0)
		ok = say_problems(t, e);
	else if (ok && t->n == 0)
		ok = nothing_there(t, e);
	if (!ok)
		t->out->n = 0;
	free(t->items);
	return ok;
}

void ghcn_free(struct ghcn *g)
{
	free(g->items);
	sentences_free(&g->problems);
	*g = (struct ghcn){ 0 };
}
