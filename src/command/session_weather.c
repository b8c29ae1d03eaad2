/* session_weather.c - the Weather page: days typed in, stations made and chosen. */
#include "session_season.h"

#include "base/text.h"
#include "base/words.h"
#include "book/places.h"
#include "book/weather.h"
#include "season/temps.h"

#include <math.h>
#include <stdio.h>

void session_ask_weather(struct session *s, const struct wish *w)
{
	s->weather.farm = w->farm;
	s->weather.pest = w->pest;
	s->weather.station = 0;
	s->weather.answer.unit = 0;
	if (s->weather.farm == 0 && s->log.farms.n > 0)
		s->weather.farm = s->log.farms.items[0].id;
}

static bool read_list(struct session *s, struct err *e)
{
	const struct weather_ask ask = { s->weather.farm, s->weather.station,
		s->weather.pest };

	return session_read_log(s, e) &&
	       weather_list_read(&s->weather.answer, s->book, &s->log, &ask, e);
}

bool session_read_weather(struct session *s, struct err *e)
{
	if (!read_list(s, e))
		return false;
	weather_page_show(
		&s->weather.page, &s->weather.answer, s->weather.page.list == NULL);
	return true;
}

static void turn_station(struct session *s)
{
	const struct stations *all = &s->log.stations;
	size_t i = 0;

	while (i < all->n && all->items[i].id != s->weather.answer.station.id)
		i++;
	if (all->n > 0)
		s->weather.station = all->items[(i + 1) % all->n].id;
	s->weather.answer.unit = 0;
}

static bool use_for_farm(struct session *s, struct err *e)
{
	const struct farm *f = log_farm(&s->log, s->weather.farm);

	if (!f || s->weather.answer.station.id == 0)
		return err_set(e, ERR_INPUT, _("there is no station yet: n makes one"));
	struct farm changed = *f;
	changed.station = s->weather.answer.station.id;
	return book_put_farm(s->book, &changed, e);
}

void session_turn_weather(struct session *s)
{
	struct weather_page *p = &s->weather.page;
	struct err e = { 0 };
	bool ok = true, farm = p->use_for_farm;

	if (!p->turn_station && !p->turn_unit && !p->use_for_farm)
		return;
	if (p->turn_station)
		turn_station(s);
	if (p->turn_unit)
		s->weather.answer.unit = s->weather.answer.unit == 'F' ? 'C' : 'F';
	if (p->use_for_farm)
		ok = use_for_farm(s, &e);
	p->turn_station = p->turn_unit = p->use_for_farm = false;
	if (ok && read_list(s, &e)) {
		weather_page_show(p, &s->weather.answer, true);
		if (farm)
			message_set(&p->message, false,
				_("Saved: farms that go by it: %s"),
				s->weather.answer.farms);
		return;
	}
	message_set(&p->message, true, "%s", e.text);
}

static double in_c(double value, char unit)
{
	return unit == 'F' ? (value - 32) * 5 / 9 : value;
}

/* What cannot be, by itself or beside the day before and after. */
static const char *fault_of(const struct session *s, const struct weather_day *w)
{
	double min = in_c(w->min, w->unit), max = in_c(w->max, w->unit);
	const char *fault = temps_fault(min, max);
	const struct dd_temps day = { .day = w->day, .min = min, .max = max };

	for (size_t i = 0; i < s->weather.answer.n && !fault; i++) {
		const struct weather_row *row = &s->weather.answer.rows[i];
		const struct dd_temps other = { .day = row->day,
			.min = in_c(row->min, s->weather.answer.unit),
			.max = in_c(row->max, s->weather.answer.unit) };
		if (row->day == w->day + 1 && row->is_read)
			fault = temps_jump_fault(&day, &other);
		if (row->day == w->day - 1 && row->is_read)
			fault = temps_jump_fault(&other, &day);
	}
	return fault;
}

void session_save_weather(struct session *s, const struct wish *w)
{
	struct err e = { 0 };
	struct weather_day day = w->weather;

	day.station = s->weather.answer.station.id;
	day.unit = s->weather.answer.unit;
	const char *fault = fault_of(s, &day);
	session_before_change(s);
	if (fault)
		weather_page_not_saved(&s->weather.page, _(fault));
	else if (!book_save_weather(s->book, &day, &e) || !read_list(s, &e))
		weather_page_not_saved(&s->weather.page, e.text);
	else
		weather_page_saved(&s->weather.page, &s->weather.answer);
}

void session_new_station(struct session *s, const struct wish *w)
{
	struct err e = { 0 };
	struct station st = { 0 };

	text_copy(st.name, sizeof st.name, w->words.note);
	session_before_change(s);
	if (book_put_station(s->book, &st, &e)) {
		s->weather.station = st.id;
		if (read_list(s, &e)) {
			weather_page_show(&s->weather.page, &s->weather.answer, true);
			message_set(&s->weather.page.message, false,
				_("Station %s is made; type the days, latest first."),
				st.name);
			return;
		}
	}
	message_set(&s->weather.page.message, true, "%s", e.text);
}
