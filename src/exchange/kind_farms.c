#include "base/day.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "exchange/kinds.h"

#include <stdlib.h>
#include <string.h>

enum { CALENDAR_YEAR = 101 };

struct farm_row {
	char farm[NAME_BYTES];
	int season_start;
	int run_weekday;
	char station[NAME_BYTES];
};

struct farm_state {
	struct farms there;
	bool *told; /* by index in there: a row of this file is about it */
	size_t told_cap;
	struct names names; /* index in there */
	struct names stations;
	struct biofix_dates biofixes;
};

static const char *weekday(int i)
{
	static const char *const words[] = { "", "Mon", "Tue", "Wed", "Thu", "Fri",
		"Sat", "Sun" };

	return words[i];
}

#define AT(field) .at = offsetof(struct farm_row, field)

static const struct column columns[] = {
	{ .name = "farm",
		AT(farm),
		.type = &value_text,
		.hi = NAME_BYTES,
		.needed = true,
		.help = N_("Name of the farm; a new one is made.") },
	{ .name = "season_start",
		AT(season_start),
		.type = &value_md,
		.help = N_("Day of the year that its season begins on; empty: "
			   "01-01.") },
	{ .name = "run_weekday",
		AT(run_weekday),
		.type = &value_word,
		.lo = 1,
		.hi = 7,
		.word = weekday,
		.help = N_("Day of the week of its runs; empty: a week after the last "
			   "one.") },
	{ .name = "station",
		AT(station),
		.type = &value_text,
		.hi = NAME_BYTES,
		.help = N_("Weather station that it goes by, a new one is made; empty: "
			   "the only one there is.") },
};

static size_t add_farm(struct farm_state *s, const struct farm *f)
{
	s->there.items = mem_grow(
		s->there.items, &s->there.cap, s->there.n + 1, sizeof *s->there.items);
	s->told = mem_grow(s->told, &s->told_cap, s->there.n + 1, sizeof *s->told);
	s->there.items[s->there.n] = *f;
	s->told[s->there.n] = false;
	names_add(&s->names, 0, f->name, (int64_t)s->there.n);
	return s->there.n++;
}

static bool farms_begin(struct taking *t, struct err *e)
{
	struct farm_state *s = t->state = mem_new(1, sizeof *s);
	struct farms all = { 0 };
	struct stations stations = { 0 };
	bool ok = book_farms(t->book, &all, e) &&
		  book_stations(t->book, &stations, e) &&
		  book_biofixes(t->book, &s->biofixes, e);

	for (size_t i = 0; ok && i < all.n; i++)
		add_farm(s, &all.items[i]);
	for (size_t i = 0; ok && i < stations.n; i++)
		names_add(
			&s->stations, 0, stations.items[i].name, stations.items[i].id);
	free(all.items);
	free(stations.items);
	return ok;
}

static void farms_end(struct taking *t)
{
	struct farm_state *s = t->state;

	free(s->there.items);
	free(s->told);
	free(s->biofixes.items);
	names_free(&s->names);
	names_free(&s->stations);
	free(s);
}

/* Finds the station, or makes it and tells: files of a whole book then go into a new
 * one in any order. */
static bool find_station(struct taking *t, const char *name, int64_t *id, struct err *e)
{
	struct farm_state *s = t->state;
	int64_t found = names_find(&s->stations, 0, name);
	struct station one = { 0 };
	struct buf note = { 0 };

	*id = found < 0 ? 0 : found;
	if (found >= 0 || !*name)
		return true;
	text_copy(one.name, sizeof one.name, name);
	if (!book_put_station(t->book, &one, e))
		return false;
	names_add(&s->stations, 0, name, one.id);
	*id = one.id;
	buf_addf(&note, _("a new weather station, without any weather yet: %s"), name);
	sentences_add(&t->out->notes, note.text);
	buf_free(&note);
	return true;
}

/* Puts what the row says over the farm. */
static bool farm_over(
	struct taking *t, const struct farm_row *r, struct farm *f, struct err *e)
{
	memcpy(f->name, r->farm, sizeof f->name);
	if (taking_has(t, "season_start") || f->season_start == 0)
		f->season_start = r->season_start ? r->season_start : CALENDAR_YEAR;
	if (taking_has(t, "run_weekday"))
		f->run_weekday = r->run_weekday;
	return !taking_has(t, "station") || find_station(t, r->station, &f->station, e);
}

static bool same_farm(const struct farm *a, const struct farm *b)
{
	return a->season_start == b->season_start && a->run_weekday == b->run_weekday &&
	       a->station == b->station;
}

static int season_of(int32_t day, int start)
{
	return day_to_ymd(day_season_start(day, start)).year;
}

/* Puts a date under the season that it is of now; one that is there stays. */
static bool move_biofix(
	struct taking *t, const struct farm *f, struct biofix_date *d, struct err *e)
{
	struct biofix_date moved = *d;
	struct err why = { 0 };
	char iso[DAY_ISO_SIZE];

	moved.season = season_of(d->day, f->season_start);
	if (book_put_biofix(t->book, &moved, &why)) {
		*d = moved;
		return true;
	}
	if (why.kind == ERR_BOOK)
		return err_set(e, ERR_BOOK, "%s", why.text);
	day_iso(d->day, iso);
	taking_warn(t,
		_("%s: the biofix of %s stays under the season of %d, since that of %d "
		  "has one already"),
		f->name, iso, d->season, moved.season);
	return true;
}

/* A biofix is kept under the year that its season began in. Those that go to an earlier
 * year are taken from the first on, the others from the last on, so that none meets
 * one that is yet to go. */
static bool move_biofixes(
	struct taking *t, const struct farm *f, int old_start, struct err *e)
{
	struct biofix_dates *all = &((struct farm_state *)t->state)->biofixes;
	bool earlier = f->season_start > old_start, ok = true;

	for (size_t k = 0; ok && k < all->n; k++) {
		struct biofix_date *d = &all->items[earlier ? k : all->n - 1 - k];
		if (d->farm == f->id && d->season == season_of(d->day, old_start) &&
			d->season != season_of(d->day, f->season_start))
			ok = move_biofix(t, f, d, e);
	}
	return ok;
}

static bool farms_take(struct taking *t, const void *row, struct err *e)
{
	const struct farm_row *r = row;
	struct farm_state *s = t->state;
	int64_t i = names_find(&s->names, 0, r->farm);
	struct farm f = i < 0 ? (struct farm){ 0 } : s->there.items[i];

	if (i >= 0 && s->told[i])
		return taking_bad(t, "farm", _("is in this file before"));
	if (!farm_over(t, r, &f, e))
		return false;
	bool same = i >= 0 && same_farm(&f, &s->there.items[i]);
	if (!same && !book_put_farm(t->book, &f, e))
		return false;
	taking_count(t, same ? TOOK_SAME : i < 0 ? TOOK_NEW : TOOK_CHANGED);
	if (i < 0)
		i = (int64_t)add_farm(s, &f);
	if (!move_biofixes(t, &f, s->there.items[i].season_start, e))
		return false;
	s->there.items[i] = f;
	s->told[i] = true;
	return true;
}

static bool farms_give(struct giving *g, struct err *e)
{
	struct stations stations = { 0 };
	struct farms all = { 0 };
	bool ok = book_farms(g->book, &all, e) && book_stations(g->book, &stations, e);

	for (size_t i = 0; ok && i < all.n; i++) {
		const struct farm *f = &all.items[i];
		struct farm_row r = { .season_start = f->season_start,
			.run_weekday = f->run_weekday };
		text_copy(r.farm, sizeof r.farm, f->name);
		for (size_t k = 0; k < stations.n; k++)
			if (stations.items[k].id == f->station)
				text_copy(r.station, sizeof r.station,
					stations.items[k].name);
		ok = giving_row(g, &r);
	}
	free(all.items);
	free(stations.items);
	return ok;
}

const struct kind kind_farms = {
	.name = "farms",
	.help = N_("farms, when their season begins and what weather they go by"),
	.columns = columns,
	.n_columns = sizeof columns / sizeof *columns,
	.row_bytes = sizeof(struct farm_row),
	.begin = farms_begin,
	.take = farms_take,
	.end = farms_end,
	.give = farms_give,
};
