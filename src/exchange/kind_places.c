#include "answers/entry_sources.h"
#include "answers/far.h"
#include "base/mem.h"
#include "base/words.h"
#include "book/sources.h"
#include "exchange/kinds.h"

#include <stdlib.h>
#include <string.h>

struct place_state {
	struct sources there;
	bool *told; /* by index in there: this file has a row about it */
	size_t told_cap;
	struct names names; /* in a farm: index in there */
	struct names farms; /* id */
	struct traps traps;
};

static size_t add_place(struct place_state *s, const struct source *one)
{
	s->there.items = mem_grow(
		s->there.items, &s->there.cap, s->there.n + 1, sizeof *s->there.items);
	s->told = mem_grow(s->told, &s->told_cap, s->there.n + 1, sizeof *s->told);
	s->there.items[s->there.n] = *one;
	s->told[s->there.n] = false;
	names_add(&s->names, one->farm, one->name, (int64_t)s->there.n);
	return s->there.n++;
}

static bool places_begin(struct taking *t, struct err *e)
{
	struct place_state *s = t->state = mem_new(1, sizeof *s);
	struct sources all = { 0 };
	bool ok = book_sources(t->book, 0, &all, e) &&
		  names_of_farms(t->book, &s->farms, e) &&
		  book_traps(t->book, 0, &s->traps, e);

	for (size_t i = 0; ok && i < all.n; i++)
		add_place(s, &all.items[i]);
	free(all.items);
	return ok;
}

static void places_end(struct taking *t)
{
	struct place_state *s = t->state;

	free(s->there.items);
	free(s->told);
	free(s->traps.items);
	names_free(&s->names);
	names_free(&s->farms);
	free(s);
}

static void places_look(struct taking *t, const void *row)
{
	const struct source_row *r = row;
	const struct place_state *s = t->state;
	int64_t farm;

	taking_find(t, &s->farms, "farm", r->farm, &farm);
}

static bool same_degree(double a, double b)
{
	char one[VALUE_BYTES], two[VALUE_BYTES];

	return strcmp(value_degree.write(NULL, &a, one),
		       value_degree.write(NULL, &b, two)) == 0;
}

bool places_same(const struct source *a, const struct source *b)
{
	char one[OUTLINE_BYTES], two[OUTLINE_BYTES];

	outline_write(a, one);
	outline_write(b, two);
	return a->kind == b->kind && a->has_position == b->has_position &&
	       same_degree(a->lat, b->lat) && same_degree(a->lon, b->lon) &&
	       strcmp(one, two) == 0;
}

static void ask_if_far(
	struct taking *t, const struct source_row *r, const struct source *one)
{
	const struct place_state *s = t->state;
	struct far_farm traps = { 0 };
	struct buf says = { 0 };

	for (size_t i = 0; i < s->traps.n; i++)
		if (s->traps.items[i].farm == one->farm &&
			s->traps.items[i].has_position)
			far_add(&traps, s->traps.items[i].lat, s->traps.items[i].lon);
	if (far_source_says(&traps, one, r->farm, &says))
		taking_warn(t, _("%s, line %lld: %s"), t->from->name,
			(long long)t->csv.line, says.text);
	buf_free(&says);
	far_free(&traps);
}

static bool put_place(
	struct taking *t, const struct source_row *r, int64_t farm, struct err *e)
{
	struct place_state *s = t->state;
	int64_t i = names_find(&s->names, farm, r->name);
	struct source one = i < 0 ? (struct source){ .farm = farm } : s->there.items[i];

	if (i >= 0 && s->told[i])
		return taking_bad(
			t, "name", _("is in the file twice; a farm has it once"));
	if (!source_over(&t->hear, r, &one))
		return true;
	bool same = i >= 0 && places_same(&one, &s->there.items[i]);
	if (!same && !book_put_source(t->book, &one, e))
		return false;
	taking_count(t, i < 0 ? TOOK_NEW : same ? TOOK_SAME : TOOK_CHANGED);
	if (i < 0)
		i = (int64_t)add_place(s, &one);
	s->told[i] = true;
	if (!same)
		ask_if_far(t, r, &one);
	return true;
}

static bool places_take(struct taking *t, const void *row, struct err *e)
{
	const struct source_row *r = row;
	const struct place_state *s = t->state;
	int64_t farm;

	if (!taking_find(t, &s->farms, "farm", r->farm, &farm))
		return true;
	return put_place(t, r, farm, e);
}

static bool places_give(struct giving *g, struct err *e)
{
	struct sources all = { 0 };
	struct known known = { 0 };
	bool ok = book_sources(g->book, 0, &all, e) && known_read(&known, g->book, e);

	for (size_t i = 0; ok && i < all.n; i++) {
		struct source_row r = source_row_of(&known, &all.items[i]);

		ok = giving_row(g, &r);
	}
	free(all.items);
	known_free(&known);
	return ok;
}

const struct kind kind_places = {
	.name = "places",
	.help = N_("what moths may come from: neglected orchards, wild trees, bins"),
	.columns = source_columns,
	.n_columns = SOURCE_COLUMNS,
	.row_bytes = sizeof(struct source_row),
	.begin = places_begin,
	.take = places_take,
	.look = places_look,
	.end = places_end,
	.give = places_give,
};
