/* places.c - lists of farms, blocks, traps and kinds. */
#include "book/places.h"

#include "visit.h"

#include "base/mem.h"
#include "base/words.h"

/* Makes room for one more and points at it, zeroed. */
#define NEXT(list)                                                                     \
	((list)->items = mem_grow(                                                     \
		 (list)->items, &(list)->cap, (list)->n + 1, sizeof *(list)->items),   \
		&(list)->items[(list)->n++])

/* Reads what a row belongs to, whose id stands before it once more, as the book has it.
 * The query fails where it has none: left out, or told under another farm than its
 * block, such a row would take what bars that block along. */
static int64_t get_there(struct query *q)
{
	int64_t there = query_get(q), id = query_get(q);

	query_require(q, there != 0);
	return id;
}

bool book_farms(struct book *b, struct farms *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT id, name, season_start, station, run_weekday, retired FROM "
		"farm ORDER BY name COLLATE NOCASE, name");
	q.table = "farm";
	while (query_row(&q)) {
		struct farm *f = NEXT(out);
		f->id = query_get(&q);
		query_get_copy(&q, f->name, sizeof f->name);
		f->season_start = query_get32(&q);
		query_require(&q, store_md_good(f->season_start));
		f->station = query_get(&q);
		f->run_weekday = query_get_within(&q, 0, 7);
		f->retired = query_get_within(&q, 0, 1) != 0;
	}
	return query_end(&q, N_("the farms cannot be read"), e);
}

bool book_blocks(struct book *b, int64_t farm, struct blocks *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT b.id, f.id, b.farm, b.name, b.crop, b.variety, b.condition, "
		"b.area_x100, b.retired FROM block b LEFT JOIN farm f ON f.id = b.farm "
		"WHERE ?1 IS NULL OR b.farm = ?1 OR f.id IS NULL ORDER BY b.name "
		"COLLATE NOCASE, b.name, b.id");
	query_id(&q, farm);
	q.table = "block";
	while (query_row(&q)) {
		struct block *r = NEXT(out);
		r->id = query_get(&q);
		r->farm = get_there(&q);
		query_get_copy(&q, r->name, sizeof r->name);
		query_get_copy(&q, r->crop, sizeof r->crop);
		query_get_copy(&q, r->variety, sizeof r->variety);
		query_require(&q, condition_read(query_get_text(&q), &r->condition));
		r->area_x100 = query_get_count(&q);
		query_require(&q, r->area_x100 <= 100000000);
		r->retired = query_get_within(&q, 0, 1) != 0;
	}
	return query_end(&q, N_("the blocks cannot be read"), e);
}

static void read_trap(struct query *q, struct trap *t)
{
	bool given;

	t->id = query_get_within(q, 1, VISIT_TRAP_MAX);
	t->farm = get_there(q);
	t->block = get_there(q);
	t->pest = query_get(q);
	query_get_copy(q, t->label, sizeof t->label);
	t->lure = query_get(q);
	t->card = query_get(q);
	query_require(q, place_read(query_get_text(q), &t->place));
	t->lat = query_get_real(q, &t->has_position);
	query_require(q, t->lat >= -90 && t->lat <= 90);
	t->lon = query_get_real(q, &given);
	query_require(q, given == t->has_position && t->lon >= -180 && t->lon <= 180);
	t->order = query_get_within(q, 1, 1000000);
}

bool book_traps(struct book *b, int64_t farm, struct traps *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT t.id, f.id, t.farm, k.id, t.block, t.pest, t.label, t.lure, "
		"t.card, t.place, t.lat, t.lon, t.driving_order FROM trap t LEFT JOIN "
		"farm f ON f.id = t.farm LEFT JOIN block k ON k.id = t.block AND "
		"k.farm = t.farm WHERE ?1 IS NULL OR t.farm = ?1 OR f.id IS NULL ORDER "
		"BY f.name COLLATE NOCASE, f.name, t.driving_order, t.id");
	query_id(&q, farm);
	q.table = "trap";
	while (query_row(&q))
		read_trap(&q, NEXT(out));
	return query_end(&q, N_("the traps cannot be read"), e);
}

static void read_heat(struct query *q, struct heat *h)
{
	h->unit = query_get_unit(q);
	h->base = query_get_degrees(q);
	h->cap = query_get_degrees(q);
	query_get_copy(q, h->method, sizeof h->method);
	query_get_copy(q, h->cutoff, sizeof h->cutoff);
	query_require(q, !h->unit || !store_heat_fault(h));
	query_get_copy(q, h->source, sizeof h->source);
}

bool book_pests(struct book *b, struct pests *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT id, code, name, latin, dd_unit, dd_base, dd_cap, dd_method, "
		"dd_cutoff, dd_source, biofix_rule, retired FROM pest ORDER BY code "
		"COLLATE NOCASE, code");
	q.table = "pest";
	while (query_row(&q)) {
		struct pest *p = NEXT(out);
		p->id = query_get(&q);
		query_get_copy(&q, p->code, sizeof p->code);
		query_get_copy(&q, p->name, sizeof p->name);
		query_get_copy(&q, p->latin, sizeof p->latin);
		read_heat(&q, &p->heat);
		query_get_copy(&q, p->biofix_rule, sizeof p->biofix_rule);
		p->retired = query_get_within(&q, 0, 1) != 0;
	}
	return query_end(&q, N_("the pests cannot be read"), e);
}

static void read_stock(struct query *q, struct stock *s)
{
	s->n = query_get_count(q);
	query_require(q, s->n <= COUNT_MAX);
	s->day = query_get_day(q);
	query_require(q, (s->day == DAY_NONE) == (s->n == COUNT_NONE));
	s->reorder = query_get_count(q);
	query_require(q, s->reorder <= COUNT_MAX);
}

static void read_lure(struct query *q, struct lure_kind *k)
{
	k->id = query_get(q);
	query_get_copy(q, k->name, sizeof k->name);
	k->pest = query_get(q);
	k->life_days = query_get_within(q, 1, 366);
	k->hot_days = query_get_within(q, 0, k->life_days);
	k->hot_from = query_get32(q);
	query_require(q, k->hot_days ? store_md_good(k->hot_from) : !k->hot_from);
	k->hot_to = query_get32(q);
	query_require(q, k->hot_days ? store_md_good(k->hot_to) : !k->hot_to);
	query_get_copy(q, k->source, sizeof k->source);
	read_stock(q, &k->stock);
	k->retired = query_get_within(q, 0, 1) != 0;
}

bool book_lures(struct book *b, struct lure_kinds *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT id, name, pest, life_days, hot_days, hot_from, hot_to, source, "
		"stock, stock_day, reorder_at, retired FROM lure ORDER BY name COLLATE "
		"NOCASE, name");
	q.table = "lure";
	while (query_row(&q))
		read_lure(&q, NEXT(out));
	return query_end(&q, N_("the lures cannot be read"), e);
}

bool book_cards(struct book *b, struct card_kinds *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT id, name, life_days, stir_at, change_at, floor_at, source, "
		"stock, stock_day, reorder_at, retired FROM card ORDER BY name COLLATE "
		"NOCASE, name");
	q.table = "card";
	while (query_row(&q)) {
		struct card_kind *k = NEXT(out);
		k->id = query_get(&q);
		query_get_copy(&q, k->name, sizeof k->name);
		k->life_days = query_get_within(&q, 1, 366);
		k->stir_at = query_get_within(&q, 1, COUNT_MAX);
		k->change_at = query_get_within(&q, k->stir_at, COUNT_MAX);
		k->floor_at = query_get_within(&q, k->change_at, COUNT_MAX);
		query_get_copy(&q, k->source, sizeof k->source);
		read_stock(&q, &k->stock);
		k->retired = query_get_within(&q, 0, 1) != 0;
	}
	return query_end(&q, N_("the cards cannot be read"), e);
}
