#include "base/day.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "exchange/kinds.h"

#include <stdlib.h>
#include <string.h>

struct farm_state {
	struct farms there;
	bool *told; /* by index in there: a row of this file is about it */
	size_t told_cap;
	struct names names; /* index in there */
	struct names stations;
	struct biofix_dates biofixes;
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
static bool read_farm(
	struct taking *t, const struct farm_row *r, struct farm *f, struct err *e)
{
	farm_over(&t->hear, r, f);
	return !taking_has(t, "station") || find_station(t, r->station, &f->station, e);
}

static bool same_farm(const struct farm *a, const struct farm *b)
{
	return a->season_start == b->season_start && a->run_weekday == b->run_weekday &&
	       a->station == b->station && a->retired == b->retired;
}

static bool farms_take(struct taking *t, const void *row, struct err *e)
{
	const struct farm_row *r = row;
	struct farm_state *s = t->state;
	int64_t i = names_find(&s->names, 0, r->farm);
	struct farm f = i < 0 ? (struct farm){ 0 } : s->there.items[i];

	if (i >= 0 && s->told[i])
		return taking_bad(t, "farm", _("is in this file before"));
	if (!read_farm(t, r, &f, e))
		return false;
	bool same = i >= 0 && same_farm(&f, &s->there.items[i]);
	if (!same && !book_put_farm(t->book, &f, e))
		return false;
	taking_count(t, same ? TOOK_SAME : i < 0 ? TOOK_NEW : TOOK_CHANGED);
	if (i < 0)
		i = (int64_t)add_farm(s, &f);
	if (!farm_move_biofixes(&t->hear, t->book, &s->biofixes, &f,
		    s->there.items[i].season_start, e))
		return false;
	s->there.items[i] = f;
	s->told[i] = true;
	return true;
}

static bool farms_give(struct giving *g, struct err *e)
{
	struct known k = { 0 };
	bool ok = known_read_all(&k, g->book, e);

	for (size_t i = 0; ok && i < k.farms.n; i++) {
		struct farm_row r = farm_row_of(&k, &k.farms.items[i]);
		ok = giving_row(g, &r);
	}
	known_free(&k);
	return ok;
}

const struct kind kind_farms = {
	.name = "farms",
	.help = N_("farms, when their season begins and what weather they go by"),
	.columns = farm_columns,
	.n_columns = FARM_COLUMNS,
	.row_bytes = sizeof(struct farm_row),
	.begin = farms_begin,
	.take = farms_take,
	.end = farms_end,
	.give = farms_give,
};
