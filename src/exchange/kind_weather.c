#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "exchange/kinds.h"
#include "season/temps.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { HOTTEST = 150, SAID_BYTES = 64 };

struct weather_row {
	char station[NAME_BYTES];
	int32_t day;
	double min, max;
	int unit;
};

/* The days of a station that this file has given, a bit each. */
struct days_seen {
	int64_t station;
	unsigned char *bits; /* from the first day that a book has */
};

struct weather_state {
	struct names names; /* index in seen */
	struct days_seen *seen;
	size_t n, cap;
	int64_t n_empty; /* rows without a temperature */
};

#define AT(field) .at = offsetof(struct weather_row, field)

static const struct column columns[] = {
	{ .name = "station",
		AT(station),
		.type = &value_text,
		.hi = NAME_BYTES,
		.needed = true,
		.help = N_("Name of the station; a new one is made.") },
	{ .name = "date",
		AT(day),
		.type = &value_day,
		.needed = true,
		.help = N_("The day; one row each.") },
	{ .name = "min",
		AT(min),
		.type = &value_number,
		.lo = -HOTTEST,
		.hi = HOTTEST,
		.help = N_("Its lowest temperature; empty: not read, never 0.") },
	{ .name = "max",
		AT(max),
		.type = &value_number,
		.lo = -HOTTEST,
		.hi = HOTTEST,
		.help = N_("Its highest temperature; empty: not read, never 0.") },
	{ .name = "unit",
		AT(unit),
		.type = &value_word,
		.lo = 1,
		.hi = 2,
		.needed = true,
		.word = column_unit,
		.help = N_("Degrees Celsius or Fahrenheit; it is never guessed.") },
};

static size_t add_station(struct weather_state *s, const char *name, int64_t id)
{
	s->seen = mem_grow(s->seen, &s->cap, s->n + 1, sizeof *s->seen);
	s->seen[s->n] = (struct days_seen){ .station = id };
	names_add(&s->names, 0, name, (int64_t)s->n);
	return s->n++;
}

static bool weather_begin(struct taking *t, struct err *e)
{
	struct weather_state *s = t->state = mem_new(1, sizeof *s);
	struct stations all = { 0 };
	bool ok = book_stations(t->book, &all, e);

	for (size_t i = 0; ok && i < all.n; i++)
		add_station(s, all.items[i].name, all.items[i].id);
	free(all.items);
	return ok;
}

static void weather_end(struct taking *t)
{
	struct weather_state *s = t->state;

	for (size_t i = 0; i < s->n; i++)
		free(s->seen[i].bits);
	free(s->seen);
	names_free(&s->names);
	free(s);
}

/* Celsius; NAN stays. */
static double celsius(double degrees, char unit)
{
	return unit == 'F' ? (degrees - 32) * 5 / 9 : degrees;
}

static struct dd_temps temps_of(const struct weather_day *w)
{
	return (struct dd_temps){ .day = w->day,
		.min = celsius(w->min, w->unit),
		.max = celsius(w->max, w->unit) };
}

/* The column that a fault of temps_fault lies in. */
static const char *fault_column(const struct dd_temps *c)
{
	if (c->min > c->max || c->min > TEMPS_HIGHEST_C || c->min < TEMPS_LOWEST_C)
		return "min";
	return "max";
}

static bool day_possible(struct taking *t, const struct weather_day *w)
{
	struct dd_temps c = temps_of(w);
	const char *fault = temps_fault(c.min, c.max);
	char today[DAY_ISO_SIZE];

	if (w->day > t->from->today) {
		day_iso(t->from->today, today);
		return !taking_bad(t, "date", _("lies after today, %s"), today);
	}
	if (fault)
		return !taking_bad(t, fault_column(&c), _("cannot be: %s"), fault);
	return true;
}

static void say_day(const struct weather_day *w, char out[static SAID_BYTES])
{
	words_print(out, SAID_BYTES, _("%.5g to %.5g %c"), w->min, w->max, w->unit);
}

/* Against the days before and after it that the book has by now, so that each pair is
 * looked at when the second of the two comes. */
static bool jump_possible(
	struct taking *t, const struct weather_day *w, bool *possible, struct err *e)
{
	struct weather_days near = { 0 };
	struct dd_temps now = temps_of(w);
	bool ok = book_weather(t->book, w->station, w->day - 1, w->day + 1, &near, e);

	*possible = true;
	for (size_t i = 0; ok && i < near.n && *possible; i++) {
		const struct weather_day *d = &near.items[i];
		char iso[DAY_ISO_SIZE], theirs[SAID_BYTES], ours[SAID_BYTES];
		struct dd_temps other = temps_of(d);
		const char *fault = d->day < w->day ? temps_jump_fault(&other, &now)
						    : temps_jump_fault(&now, &other);
		if (!fault)
			continue;
		day_iso(d->day, iso);
		say_day(d, theirs);
		say_day(w, ours);
		*possible = !taking_bad(t, "date",
			_("with %s does not go with %s on %s: %s"), ours, theirs, iso,
			fault);
	}
	free(near.items);
	return ok;
}

static bool seen_before(struct taking *t, struct days_seen *s, int32_t day)
{
	int32_t first = day_from_ymd(DAY_YEAR_MIN, 1, 1);
	int32_t last = day_from_ymd(DAY_YEAR_MAX, 12, 31);
	size_t at = (size_t)(day - first);

	if (!s->bits)
		s->bits = mem_new((size_t)(last - first) / 8 + 1, 1);
	if (s->bits[at / 8] >> at % 8 & 1)
		return taking_bad(t, "date",
			_("is in this file before; a station has one row a day"));
	s->bits[at / 8] = (unsigned char)(s->bits[at / 8] | 1u << at % 8);
	return false;
}

/* The row's station, made if it is new. */
static struct days_seen *find_station(
	struct taking *t, const struct weather_row *r, struct err *e)
{
	struct weather_state *s = t->state;
	int64_t i = names_find(&s->names, 0, r->station);
	struct station made = { 0 };

	if (i < 0) {
		text_copy(made.name, sizeof made.name, r->station);
		if (!book_put_station(t->book, &made, e))
			return NULL;
		i = (int64_t)add_station(s, made.name, made.id);
	}
	return &s->seen[i];
}

static bool weather_take(struct taking *t, const void *row, struct err *e)
{
	const struct weather_row *r = row;
	struct weather_state *s = t->state;
	struct weather_day w = { .day = r->day, .min = r->min, .max = r->max };
	bool same, possible;

	w.unit = column_unit(r->unit)[0];
	if (!day_possible(t, &w))
		return true;
	struct days_seen *station = find_station(t, r, e);
	if (!station)
		return false;
	if (seen_before(t, station, w.day))
		return true;
	if (isnan(w.min) && isnan(w.max)) {
		s->n_empty++;
		return true;
	}
	w.station = station->station;
	if (!jump_possible(t, &w, &possible, e))
		return false;
	if (!possible)
		return true;
	if (!book_add_weather(t->book, &w, &same, e))
		return false;
	taking_count(t, same ? TOOK_SAME : TOOK_NEW);
	return true;
}

static bool weather_finish(struct taking *t, struct err *e)
{
	const struct weather_state *s = t->state;
	struct buf text = { 0 };

	(void)e;
	if (!s->n_empty)
		return true;
	buf_add(&text, _("days without a minimum and a maximum, which stay missing: "));
	buf_add_thousands(&text, s->n_empty);
	sentences_add(&t->out->notes, text.text);
	buf_free(&text);
	return true;
}

static bool give_station(struct giving *g, const struct station *s, struct err *e)
{
	struct weather_days days = { 0 };
	bool ok = book_weather(g->book, s->id, day_from_ymd(DAY_YEAR_MIN, 1, 1),
		day_from_ymd(DAY_YEAR_MAX, 12, 31), &days, e);

	for (size_t i = 0; ok && i < days.n; i++) {
		const struct weather_day *w = &days.items[i];
		struct weather_row r = { .day = w->day,
			.min = w->min,
			.max = w->max,
			.unit = column_unit_of(w->unit) };
		text_copy(r.station, sizeof r.station, s->name);
		ok = giving_row(g, &r);
	}
	free(days.items);
	return ok;
}

static bool weather_give(struct giving *g, struct err *e)
{
	struct stations all = { 0 };
	bool ok = book_stations(g->book, &all, e);

	for (size_t i = 0; ok && i < all.n; i++)
		ok = give_station(g, &all.items[i], e);
	free(all.items);
	return ok;
}

const struct kind kind_weather = {
	.name = "weather",
	.help = N_("daily minimum and maximum of weather stations"),
	.columns = columns,
	.n_columns = sizeof columns / sizeof *columns,
	.row_bytes = sizeof(struct weather_row),
	.begin = weather_begin,
	.take = weather_take,
	.finish = weather_finish,
	.end = weather_end,
	.give = weather_give,
};
