/* weather.c - stations and their days. */
#include "book/weather.h"

#include "visit.h"

#include "base/mem.h"
#include "base/words.h"

#include <math.h>
#include <stdio.h>

enum { HOTTEST = 150, SAID_BYTES = 64 };

bool book_stations(struct book *b, struct stations *out, struct err *e)
{
	struct query q;
	bool given;

	out->n = 0;
	query_start(&q, b,
		"SELECT id, name, lat, lon FROM station ORDER BY name COLLATE NOCASE, "
		"name");
	q.table = "station";
	while (query_row(&q)) {
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		struct station *s = &out->items[out->n++];
		s->id = query_get(&q);
		query_get_copy(&q, s->name, sizeof s->name);
		s->lat = query_get_real(&q, &s->has_position);
		query_require(&q, fabs(s->lat) <= 90);
		s->lon = query_get_real(&q, &given);
		query_require(&q, given == s->has_position && fabs(s->lon) <= 180);
	}
	return query_end(&q, N_("the stations cannot be read"), e);
}

bool book_put_station(struct book *b, struct station *s, struct err *e)
{
	const char *what = N_("the station is not saved");
	struct query q;

	if (!store_name_good(s->name, N_("the station's name"), e))
		return false;
	if (s->has_position &&
		!(fabs(s->lat) <= 90 && fabs(s->lon) <= 180)) /* NAN too */
		return err_set(e, ERR_INPUT,
			_("%s: latitude goes from -90 to 90, longitude from -180 to "
			  "180"),
			_(what));
	if (!store_begin(b, what, e))
		return false;
	query_start(&q, b,
		s->id ? "UPDATE station SET name = ?1, lat = ?2, lon = ?3, changed_at "
			"= ?4, changed_by = ?5 WHERE id = ?6"
		      : "INSERT INTO station (name, lat, lon, changed_at, changed_by, "
			"uid) VALUES (?1, ?2, ?3, ?4, ?5, ?6)");
	query_text(&q, s->name);
	query_real(&q, s->has_position, s->lat);
	query_real(&q, s->has_position, s->lon);
	return store_put(&q, &s->id, s->name, what, e);
}

static void read_day(struct query *q, struct weather_day *w)
{
	w->station = query_get(q);
	w->day = query_get_day(q);
	query_require(q, w->day != DAY_NONE);
	w->min = query_get_degrees(q);
	w->max = query_get_degrees(q);
	query_require(q, !(w->min > w->max));
	w->unit = query_get_unit(q);
	query_require(q, w->unit != 0);
}

bool book_weather(struct book *b, int64_t station, int32_t from, int32_t to,
	struct weather_days *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT station, day, low, high, unit FROM weather WHERE station = ?1 "
		"AND day BETWEEN ?2 AND ?3 ORDER BY day");
	query_int(&q, station);
	query_limit(&q, from);
	query_limit(&q, to);
	q.table = "weather";
	while (from <= to && query_row(&q)) {
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		read_day(&q, &out->items[out->n++]);
	}
	return query_end(&q, N_("the weather cannot be read"), e);
}

bool book_weather_reach(
	struct book *b, int64_t station, int32_t *first, int32_t *last, struct err *e)
{
	struct query q;

	*first = *last = DAY_NONE;
	query_start(&q, b,
		"SELECT (SELECT min(day) FROM weather WHERE station = ?1), "
		"(SELECT max(day) FROM weather WHERE station = ?1)");
	query_int(&q, station);
	q.table = "weather";
	if (query_row(&q)) {
		*first = query_get_day(&q);
		*last = query_get_day(&q);
	}
	return query_end(&q, N_("the weather cannot be read"), e);
}

/* A comparison with NAN is false. */
static bool out_of_range(double degrees)
{
	return degrees < -HOTTEST || degrees > HOTTEST;
}

static const char *weather_fault(const struct weather_day *w)
{
	if (w->day < VISIT_DAY_FIRST || w->day > VISIT_DAY_LAST)
		return _("it has no date from 1900-01-01 to 2199-12-31");
	if (w->unit != 'C' && w->unit != 'F')
		return _("its unit is C or F");
	if (isnan(w->min) && isnan(w->max))
		return _("it has neither a minimum nor a maximum");
	if (out_of_range(w->min) || out_of_range(w->max))
		return _("temperatures go from -150 to 150");
	if (w->min > w->max)
		return _("the minimum is above the maximum");
	return NULL;
}

static bool day_good(const struct weather_day *w, const char *what, struct err *e)
{
	const char *fault = weather_fault(w);

	return !fault || err_set(e, ERR_INPUT, "%s: %s", _(what), fault);
}

/* As far as a file can tell, which has four decimals. */
static bool same_degrees(double a, double b)
{
	return fabs(a - b) <= 0.000051 || (isnan(a) && isnan(b));
}

static bool same_day(const struct weather_day *a, const struct weather_day *b)
{
	return a->unit == b->unit && same_degrees(a->min, b->min) &&
	       same_degrees(a->max, b->max);
}

static bool find_day(struct book *b, const struct weather_day *w,
	struct weather_day *old, bool *found, const char *what, struct err *e)
{
	struct query q;

	*found = false;
	query_start(&q, b,
		"SELECT station, day, low, high, unit FROM weather "
		"WHERE station = ?1 AND day = ?2");
	q.table = "weather";
	query_int(&q, w->station);
	query_day(&q, w->day);
	if (query_row(&q)) {
		*found = true;
		read_day(&q, old);
	}
	return query_end(&q, what, e);
}

static void bind_day(struct query *q, const struct weather_day *w, const char *unit)
{
	query_int(q, w->station);
	query_day(q, w->day);
	query_real(q, !isnan(w->min), w->min);
	query_real(q, !isnan(w->max), w->max);
	query_text(q, unit);
	query_stamp(q);
}

static void insert_day(
	struct query *q, struct book *b, const struct weather_day *w, const char *unit)
{
	query_start(q, b,
		"INSERT INTO weather (station, day, low, high, unit, changed_at, "
		"changed_by, uid) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)");
	bind_day(q, w, unit);
	query_uid(q);
}

static void update_day(
	struct query *q, struct book *b, const struct weather_day *w, const char *unit)
{
	query_start(q, b,
		"UPDATE weather SET low = ?3, high = ?4, unit = ?5, changed_at = ?6, "
		"changed_by = ?7 WHERE station = ?1 AND day = ?2");
	bind_day(q, w, unit);
}

static bool end_write(struct query *q, const char *what, struct err *e)
{
	query_row(q);
	bool unknown = q->code == SQLITE_CONSTRAINT_FOREIGNKEY;
	bool ok = query_end(q, what, e);

	if (unknown)
		err_set(e, ERR_NOT_FOUND, _("%s: its station is not in the book"),
			_(what));
	return ok;
}

/* Writes the step of a day just put in into the history. */
static bool log_insert(
	struct book *b, const struct weather_day *w, const char *what, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"INSERT INTO history (kind, uid, op, station, day, at, by) "
		"SELECT 'weather', uid, 'insert', station, day, changed_at, changed_by "
		"FROM weather WHERE station = ?1 AND day = ?2");
	query_int(&q, w->station);
	query_day(&q, w->day);
	return query_end(&q, what, e);
}

static bool save(
	struct book *b, const struct weather_day *w, const char *what, struct err *e)
{
	const char unit[2] = { w->unit };
	struct weather_day old;
	struct query q;
	bool found;

	if (!find_day(b, w, &old, &found, what, e))
		return false;
	if (found && same_day(w, &old))
		return true;
	if (found)
		update_day(&q, b, w, unit);
	else
		insert_day(&q, b, w, unit);
	return end_write(&q, what, e) && (found || log_insert(b, w, what, e));
}

bool book_save_weather(struct book *b, const struct weather_day *w, struct err *e)
{
	const char *what = N_("this day's weather is not saved");

	return day_good(w, what, e) && store_begin(b, what, e) &&
	       store_end(b, save(b, w, what, e), what, e);
}

/* "7.5 to 19 C" */
static void say_day(const struct weather_day *w, char out[static SAID_BYTES])
{
	if (isnan(w->min))
		words_print(out, SAID_BYTES, _("maximum %.7g %c"), w->max, w->unit);
	else if (isnan(w->max))
		words_print(out, SAID_BYTES, _("minimum %.7g %c"), w->min, w->unit);
	else
		words_print(
			out, SAID_BYTES, _("%.7g to %.7g %c"), w->min, w->max, w->unit);
}

static void name_station(struct book *b, int64_t id, char *out, size_t size)
{
	struct query q;

	snprintf(out, size, _("station number %lld"), (long long)id);
	query_start(&q, b, "SELECT name FROM station WHERE id = ?1");
	query_int(&q, id);
	if (query_row(&q))
		query_get_copy(&q, out, size);
	query_end(&q, "", NULL);
}

static bool compare(struct book *b, const struct weather_day *w, bool *same,
	const char *what, struct err *e)
{
	char name[NAME_BYTES], iso[DAY_ISO_SIZE], ours[SAID_BYTES], theirs[SAID_BYTES];
	struct weather_day old;
	bool found;

	if (!find_day(b, w, &old, &found, what, e))
		return false;
	*same = found && same_day(w, &old);
	if (*same)
		return true;
	name_station(b, w->station, name, sizeof name);
	day_iso(w->day, iso);
	say_day(&old, ours);
	say_day(w, theirs);
	return err_set(e, ERR_INPUT,
		_("%s has the weather of %s already: \"%s\", not \"%s\""), name, iso,
		ours, theirs);
}

bool book_add_weather(
	struct book *b, const struct weather_day *w, bool *same, struct err *e)
{
	const char *what = N_("the day's weather is not added");
	const char unit[2] = { w->unit };
	struct query q;

	*same = false;
	if (!day_good(w, what, e) || !store_group_alive(b, what, e))
		return false;
	insert_day(&q, b, w, unit);
	query_row(&q);
	if (!query_taken(&q))
		return end_write(&q, what, e);
	query_end(&q, what, NULL);
	return compare(b, w, same, what, e);
}

static bool bury_day(
	struct book *b, int64_t station, int32_t day, const char *what, struct err *e)
{
	char name[NAME_BYTES], iso[DAY_ISO_SIZE];
	struct query q;

	query_start(&q, b,
		"INSERT OR REPLACE INTO tombstone (changed_at, changed_by, kind, uid) "
		"SELECT ?1, ?2, 'weather', uid FROM weather WHERE station = ?3 AND "
		"day = ?4");
	query_stamp(&q);
	query_int(&q, station);
	query_day(&q, day);
	if (!query_end(&q, what, e))
		return false;
	if (sqlite3_changes(b->db) == 0) {
		day_iso(day, iso);
		name_station(b, station, name, sizeof name);
		return err_set(
			e, ERR_NOT_FOUND, _("%s has no weather of %s"), name, iso);
	}
	query_start(&q, b, "DELETE FROM weather WHERE station = ?1 AND day = ?2");
	query_int(&q, station);
	query_day(&q, day);
	return query_end(&q, what, e);
}

bool book_remove_weather(struct book *b, int64_t station, int32_t day, struct err *e)
{
	const char *what = N_("the day's weather is not removed");

	return store_begin(b, what, e) &&
	       store_end(b, bury_day(b, station, day, what, e), what, e);
}
