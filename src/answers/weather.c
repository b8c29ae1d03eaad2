#include "answers/weather.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/weather.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const struct station *find_station(const struct log *l, int64_t id)
{
	for (size_t i = 0; i < l->stations.n; i++)
		if (l->stations.items[i].id == id)
			return &l->stations.items[i];
	return NULL;
}

static void say_farms(const struct log *l, struct weather_list *w)
{
	size_t n = 0;

	text_copy(w->farms, sizeof w->farms, "");
	for (size_t i = 0; i < l->farms.n && n < sizeof w->farms - 1; i++) {
		const struct station *s = heat_station(l, l->farms.items[i].id);
		if (s && s->id == w->station.id)
			n += (size_t)snprintf(w->farms + n, sizeof w->farms - n, "%s%s",
				n ? ", " : "", l->farms.items[i].name);
	}
	if (n == 0)
		text_copy(w->farms, sizeof w->farms, _("no farm goes by it yet"));
}

static void say_number(double value, char *out, size_t size)
{
	if (isnan(value))
		text_copy(out, size, "-");
	else
		words_print(out, size, "%.1f", value);
}

static void fill_row(struct weather_row *row, int32_t day, const struct dd_temps *t)
{
	char min[16], max[16];

	*row = (struct weather_row){
		.day = day, .min = t ? t->min : NAN, .max = t ? t->max : NAN
	};
	row->is_read = !isnan(row->min) && !isnan(row->max);
	day_short(day, row->day_text, sizeof row->day_text);
	if (!t) {
		text_copy(row->text, sizeof row->text, _("missing"));
		return;
	}
	say_number(row->min, min, sizeof min);
	say_number(row->max, max, sizeof max);
	snprintf(row->text, sizeof row->text, "%5s  %5s", min, max);
}

/* A row for every day from the latest back; temps are sorted by day. */
static void fill_rows(struct weather_list *w, const struct heat_days *days,
	int32_t first, int32_t last)
{
	size_t at = days->n;

	w->n = 0;
	w->missing = 0;
	for (int32_t day = last; day >= first; day--) {
		const struct dd_temps *t = NULL;
		while (at > 0 && days->items[at - 1].day > day)
			at--;
		if (at > 0 && days->items[at - 1].day == day)
			t = &days->items[at - 1];
		w->rows = mem_grow(w->rows, &w->cap, w->n + 1, sizeof *w->rows);
		struct weather_row *row = &w->rows[w->n++];
		fill_row(row, day, t);
		w->missing += !row->is_read && day < last; /* today isn't over */
	}
}

struct telling { /* where the degree-days of each day go */
	struct weather_list *w;
	int32_t last;
};

static void tell_day(
	void *arg, const struct dd_temps *t, double dd, const struct dd_sum *sum)
{
	const struct telling *to = arg;
	size_t i = (size_t)(to->last - t->day);

	if (t->day > to->last || i >= to->w->n)
		return;
	struct weather_row *row = &to->w->rows[i];
	if (t->filled && !row->is_read)
		text_copy(row->text, sizeof row->text, _("filled"));
	if (!isnan(dd))
		words_print(row->dd, sizeof row->dd, "%.1f", dd);
	words_print(
		row->sum, sizeof row->sum, "%.1f%s", sum->sum, sum->missing ? "+" : "");
}

/* Since biofix; in the pest's unit, whatever the list's. */
static bool fill_heat(struct weather_list *w, struct book *b, const struct log *l,
	const struct weather_ask *ask, struct err *e)
{
	struct heat_sum sum;
	struct heat_days days = { 0 };
	struct dd_rule rule;
	const struct pest *p = log_pest(l, ask->pest);

	text_copy(w->heat, sizeof w->heat, "");
	if (!p)
		return true;
	const struct heat_ask of = {
		.farm = ask->farm, .pest = ask->pest, .day = l->today
	};
	if (!heat_since(&sum, b, l, &of, e))
		return false;
	char text[SAY_LINE];
	say_heat(&sum, text, sizeof text);
	snprintf(w->heat, sizeof w->heat, "%s: %.140s", p->code, text);
	if (sum.state != HEAT_SUM && sum.state != HEAT_AT_LEAST)
		return true;
	sum.station = w->station.id;
	bool ok = heat_rule(p, &rule, e) && heat_read_span(&days, b, l, &sum, e);
	if (ok) {
		struct telling to = { w, l->today };
		const struct dd_span span = { days.items, days.n, sum.from, sum.to };
		dd_total(&rule, &span, tell_day, &to);
	}
	heat_free(&days);
	return ok;
}

/* The unit that the station's latest days were given in. */
static char usual_unit(const struct weather_days *days)
{
	return days->n ? days->items[days->n - 1].unit : 'C';
}

bool weather_list_read(struct weather_list *w, struct book *b, const struct log *l,
	const struct weather_ask *ask, struct err *e)
{
	const struct station *s = ask->station ? find_station(l, ask->station)
					       : heat_station(l, ask->farm);
	const struct farm *f = log_farm(l, ask->farm);
	int32_t first = day_season_start(l->today, f ? f->season_start : 101);
	struct weather_days raw = { 0 };
	struct heat_days days = { 0 };

	w->n = 0;
	w->station = s ? *s : (struct station){ 0 };
	snprintf(w->title, sizeof w->title, _("Weather  %s"), s ? s->name : "");
	say_farms(l, w);
	if (!s)
		return true;
	bool ok = book_weather(b, s->id, first, l->today, &raw, e);
	if (ok && w->unit == 0)
		w->unit = usual_unit(&raw);
	free(raw.items);
	const struct heat_want want = { s->id, first, l->today, w->unit, 0 };
	ok = ok && heat_read(&days, b, &want, e);
	if (ok)
		fill_rows(w, &days, first, l->today);
	heat_free(&days);
	return ok && fill_heat(w, b, l, ask, e);
}

void weather_list_free(struct weather_list *w)
{
	free(w->rows);
	*w = (struct weather_list){ 0 };
}
