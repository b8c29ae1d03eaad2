#include "answers/entry_known.h"

#include "base/mem.h"
#include "book/diary.h"
#include "book/places.h"
#include "book/rules.h"
#include "book/weather.h"

#include <stdlib.h>
#include <string.h>

bool known_read(struct known *k, struct book *b, struct err *e)
{
	return book_farms(b, &k->farms, e) && book_blocks(b, 0, &k->blocks, e) &&
	       book_traps(b, 0, &k->traps, e) && book_pests(b, &k->pests, e) &&
	       book_lures(b, &k->lures, e) && book_cards(b, &k->cards, e);
}

bool known_read_all(struct known *k, struct book *b, struct err *e)
{
	return known_read(k, b, e) && book_stations(b, &k->stations, e) &&
	       book_rules(b, &k->rules, e);
}

void known_free(struct known *k)
{
	free(k->farms.items);
	free(k->blocks.items);
	free(k->traps.items);
	free(k->pests.items);
	free(k->lures.items);
	free(k->cards.items);
	free(k->stations.items);
	free(k->rules.items);
	free(k->hangings);
	*k = (struct known){ 0 };
}

void known_clear_hangings(struct known *k)
{
	free(k->hangings);
	k->hangings = mem_new(k->traps.n, sizeof *k->hangings);
	for (size_t i = 0; i < k->traps.n; i++)
		k->hangings[i] = (struct hanging){ DAY_NONE, DAY_NONE, DAY_NONE };
}

/* Visits of one trap come by day. */
static void hanging_take(struct hanging *h, const struct visit *v)
{
	if (v->outcome == OUTCOME_HUNG && h->hung == DAY_NONE)
		h->hung = v->day;
	h->pulled = v->outcome == OUTCOME_PULLED ? v->day : DAY_NONE;
	h->last = v->day;
}

struct hangings_walk {
	struct known *known;
	size_t at;
};

/* Visits of one trap come together, traps in the order of the list. */
static bool take_visit(void *arg, const struct visit *v, const struct visit_words *w)
{
	struct hangings_walk *walk = arg;
	const struct traps *traps = &walk->known->traps;
	size_t n = traps->n, i = 0;

	(void)w;
	while (i < n && traps->items[(walk->at + i) % n].id != v->trap)
		i++;
	if (i == n)
		return true;
	walk->at = (walk->at + i) % n;
	hanging_take(&walk->known->hangings[walk->at], v);
	return true;
}

bool known_read_hangings(struct known *k, struct book *b, int64_t farm, struct err *e)
{
	struct hangings_walk walk = { .known = k };

	known_clear_hangings(k);
	return book_each_visit(b, farm, day_from_ymd(DAY_YEAR_MIN, 1, 1),
		day_from_ymd(DAY_YEAR_MAX, 12, 31), take_visit, &walk, e);
}

bool known_read_hanging(struct known *k, struct book *b, size_t trap, struct err *e)
{
	struct visits all = { 0 };
	bool ok = book_trap_visits(b, k->traps.items[trap].id, &all, e);

	known_clear_hangings(k);
	for (size_t i = 0; ok && i < all.n; i++)
		hanging_take(&k->hangings[trap], &all.items[i]);
	free(all.items);
	return ok;
}

/* A list whose records begin with their id, and where their name stands. */
struct view {
	const char *items;
	size_t n, size, name;
};
#define VIEW(list, type, field)                                                        \
	(struct view)                                                                  \
	{                                                                              \
		(const char *)(list).items, (list).n, sizeof(type),                    \
			offsetof(type, field)                                          \
	}

static int64_t id_at(struct view v, size_t i)
{
	int64_t id;

	memcpy(&id, v.items + i * v.size, sizeof id);
	return id;
}

/* NULL: none. */
static const void *by_id(struct view v, int64_t id)
{
	for (size_t i = 0; i < v.n; i++)
		if (id_at(v, i) == id)
			return v.items + i * v.size;
	return NULL;
}

static const char *name_by_id(struct view v, int64_t id)
{
	const char *found = by_id(v, id);

	return found ? found + v.name : "";
}

static int64_t id_by_name(struct view v, const char *name)
{
	for (size_t i = 0; i < v.n; i++)
		if (strcmp(v.items + i * v.size + v.name, name) == 0)
			return id_at(v, i);
	return 0;
}

const char *known_farm(const struct known *k, int64_t id)
{
	return name_by_id(VIEW(k->farms, struct farm, name), id);
}

const char *known_pest(const struct known *k, int64_t id)
{
	return name_by_id(VIEW(k->pests, struct pest, code), id);
}

const char *known_lure(const struct known *k, int64_t id)
{
	return name_by_id(VIEW(k->lures, struct lure_kind, name), id);
}

const char *known_card(const struct known *k, int64_t id)
{
	return name_by_id(VIEW(k->cards, struct card_kind, name), id);
}

const char *known_station(const struct known *k, int64_t id)
{
	return name_by_id(VIEW(k->stations, struct station, name), id);
}

const struct block *known_block(const struct known *k, int64_t id)
{
	return by_id(VIEW(k->blocks, struct block, name), id);
}

const struct lure_kind *known_kind(const struct known *k, int64_t id)
{
	return by_id(VIEW(k->lures, struct lure_kind, name), id);
}

const struct trap *known_trap(const struct known *k, int64_t id)
{
	return by_id(VIEW(k->traps, struct trap, label), id);
}

int64_t known_find_farm(const struct known *k, const char *name)
{
	return id_by_name(VIEW(k->farms, struct farm, name), name);
}

int64_t known_find_pest(const struct known *k, const char *code)
{
	return id_by_name(VIEW(k->pests, struct pest, code), code);
}

int64_t known_find_lure(const struct known *k, const char *name)
{
	return id_by_name(VIEW(k->lures, struct lure_kind, name), name);
}

int64_t known_find_card(const struct known *k, const char *name)
{
	return id_by_name(VIEW(k->cards, struct card_kind, name), name);
}

int64_t known_find_station(const struct known *k, const char *name)
{
	return id_by_name(VIEW(k->stations, struct station, name), name);
}

int64_t known_find_block(const struct known *k, int64_t farm, const char *name)
{
	for (size_t i = 0; i < k->blocks.n; i++)
		if (k->blocks.items[i].farm == farm &&
			strcmp(k->blocks.items[i].name, name) == 0)
			return k->blocks.items[i].id;
	return 0;
}

int64_t known_find_trap(const struct known *k, int64_t farm, const char *label)
{
	for (size_t i = 0; i < k->traps.n; i++)
		if (k->traps.items[i].farm == farm &&
			strcmp(k->traps.items[i].label, label) == 0)
			return k->traps.items[i].id;
	return 0;
}
