#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "exchange/kinds.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

struct station_row {
	char station[NAME_BYTES];
	double lat, lon;
	char farm[NAME_BYTES];
};

struct station_state {
	struct stations there;
	bool *placed; /* by index in there: this file has said where it stands */
	size_t placed_cap;
	struct names names; /* index in there */
	struct farms farms;
	bool *told; /* by index in farms: this file has said what it goes by */
	struct names farm_names; /* index in farms */
};

#define AT(field) .at = offsetof(struct station_row, field)

static const struct column columns[] = {
	{ .name = "station",
		AT(station),
		.type = &value_text,
		.hi = NAME_BYTES,
		.needed = true,
		.help = N_("Name of the station; a new one is made.") },
	{ .name = "lat",
		AT(lat),
		.type = &value_degree,
		.lo = -90,
		.hi = 90,
		.help = N_("Where it stands: degrees north; empty: as it was.") },
	{ .name = "lon",
		AT(lon),
		.type = &value_degree,
		.lo = -180,
		.hi = 180,
		.help = N_("Where it stands: degrees east; empty: as it was.") },
	{ .name = "farm",
		AT(farm),
		.type = &value_text,
		.hi = NAME_BYTES,
		.help = N_("A farm that goes by it; one row for each such farm.") },
};

static size_t add_station(struct station_state *s, const struct station *one)
{
	s->there.items = mem_grow(
		s->there.items, &s->there.cap, s->there.n + 1, sizeof *s->there.items);
	s->placed =
		mem_grow(s->placed, &s->placed_cap, s->there.n + 1, sizeof *s->placed);
	s->there.items[s->there.n] = *one;
	s->placed[s->there.n] = false;
	names_add(&s->names, 0, one->name, (int64_t)s->there.n);
	return s->there.n++;
}

static bool stations_begin(struct taking *t, struct err *e)
{
	struct station_state *s = t->state = mem_new(1, sizeof *s);
	struct stations all = { 0 };
	bool ok = book_stations(t->book, &all, e) && book_farms(t->book, &s->farms, e);

	for (size_t i = 0; ok && i < all.n; i++)
		add_station(s, &all.items[i]);
	s->told = mem_new(s->farms.n + 1, sizeof *s->told);
	for (size_t i = 0; ok && i < s->farms.n; i++)
		names_add(&s->farm_names, 0, s->farms.items[i].name, (int64_t)i);
	free(all.items);
	return ok;
}

static void stations_end(struct taking *t)
{
	struct station_state *s = t->state;

	free(s->there.items);
	free(s->placed);
	free(s->farms.items);
	free(s->told);
	names_free(&s->names);
	names_free(&s->farm_names);
	free(s);
}

static void stations_look(struct taking *t, const void *row)
{
	const struct station_row *r = row;
	const struct station_state *s = t->state;
	int64_t i;

	taking_find(t, &s->farm_names, "farm", r->farm, &i);
}

/* As far as a file can tell, which has six decimals. */
static bool stands_there(const struct station *one, const struct station_row *r)
{
	return one->has_position && fabs(one->lat - r->lat) <= 0.00000051 &&
	       fabs(one->lon - r->lon) <= 0.00000051;
}

/* Puts what the row says over the station; false: it says something wrong. */
static bool station_over(
	struct taking *t, const struct station_row *r, struct station *one, bool placed)
{
	if (isnan(r->lat) != isnan(r->lon))
		return !taking_bad(t, isnan(r->lat) ? "lat" : "lon",
			_("is missing; lat and lon go together"));
	memcpy(one->name, r->station, sizeof one->name);
	if (isnan(r->lat) || stands_there(one, r))
		return true;
	if (placed)
		return !taking_bad(t, "lat",
			_("and its lon are another place than this file has said "
			  "before"));
	one->has_position = true;
	one->lat = r->lat;
	one->lon = r->lon;
	return true;
}

static bool same_station(const struct station *a, const struct station *b)
{
	return a->has_position == b->has_position && a->lat == b->lat &&
	       a->lon == b->lon;
}

/* Lets the farm go by the station; *what rises to TOOK_CHANGED if it did not. */
static bool join_farm(struct taking *t, const struct station_row *r, int64_t station,
	enum took *what, struct err *e)
{
	struct station_state *s = t->state;
	int64_t i;

	if (!*r->farm || !taking_find(t, &s->farm_names, "farm", r->farm, &i))
		return true;
	struct farm *f = &s->farms.items[i];
	if (f->station == station) {
		s->told[i] = true;
		return true;
	}
	if (s->told[i])
		return taking_bad(t, "farm",
			_("goes by another station in this file; a farm goes by one"));
	s->told[i] = true;
	f->station = station;
	if (*what == TOOK_SAME)
		*what = TOOK_CHANGED;
	return book_put_farm(t->book, f, e);
}

static bool stations_take(struct taking *t, const void *row, struct err *e)
{
	const struct station_row *r = row;
	struct station_state *s = t->state;
	int64_t i = names_find(&s->names, 0, r->station);
	struct station one = i < 0 ? (struct station){ 0 } : s->there.items[i];
	enum took what = i < 0 ? TOOK_NEW : TOOK_SAME;

	if (!station_over(t, r, &one, i >= 0 && s->placed[i]))
		return true;
	if (i >= 0 && !same_station(&one, &s->there.items[i]))
		what = TOOK_CHANGED;
	if (what != TOOK_SAME && !book_put_station(t->book, &one, e))
		return false;
	if (i < 0)
		i = (int64_t)add_station(s, &one);
	s->there.items[i] = one;
	s->placed[i] |= !isnan(r->lat);
	if (!join_farm(t, r, one.id, &what, e))
		return false;
	taking_count(t, what);
	return true;
}

/* A row for each farm that goes by it, one without a farm if none does. */
static bool give_station(
	struct giving *g, const struct station *one, const struct farms *farms)
{
	struct station_row r = { .lat = (double)NAN, .lon = (double)NAN };
	bool ok = true, any = false;

	text_copy(r.station, sizeof r.station, one->name);
	if (one->has_position) {
		r.lat = one->lat;
		r.lon = one->lon;
	}
	for (size_t i = 0; ok && i < farms->n; i++) {
		if (farms->items[i].station != one->id)
			continue;
		any = true;
		text_copy(r.farm, sizeof r.farm, farms->items[i].name);
		ok = giving_row(g, &r);
	}
	return ok && (any || giving_row(g, &r));
}

static bool stations_give(struct giving *g, struct err *e)
{
	struct stations all = { 0 };
	struct farms farms = { 0 };
	bool ok = book_stations(g->book, &all, e) && book_farms(g->book, &farms, e);

	for (size_t i = 0; ok && i < all.n; i++)
		ok = give_station(g, &all.items[i], &farms);
	free(all.items);
	free(farms.items);
	return ok;
}

const struct kind kind_stations = {
	.name = "stations",
	.help = N_("weather stations and the farms that go by them"),
	.columns = columns,
	.n_columns = sizeof columns / sizeof *columns,
	.row_bytes = sizeof(struct station_row),
	.begin = stations_begin,
	.take = stations_take,
	.look = stations_look,
	.end = stations_end,
	.give = stations_give,
};
