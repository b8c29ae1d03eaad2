#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "exchange/kinds.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

struct station_state {
	struct stations there;
	bool *placed; /* by index in there: this file has said where it stands */
	size_t placed_cap;
	struct names names; /* index in there */
	struct farms farms;
	bool *told; /* by index in farms: this file has said what it goes by */
	struct names farm_names; /* index in farms */
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

	if (!station_over(&t->hear, r, i >= 0 && s->placed[i], &one))
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
	struct station_row r = station_row_of(one);
	bool ok = true, any = false;

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
	.columns = station_columns,
	.n_columns = STATION_COLUMNS,
	.row_bytes = sizeof(struct station_row),
	.begin = stations_begin,
	.take = stations_take,
	.look = stations_look,
	.end = stations_end,
	.give = stations_give,
};
