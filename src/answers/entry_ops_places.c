/* entry_ops_places.c - farms, blocks and stations on the Book page. */
#include "entry_family.h"

#include "base/text.h"
#include "base/words.h"
#include "book/places.h"
#include "book/weather.h"

#include <stdio.h>
#include <stdlib.h>

static size_t farms_count(const struct shelves *s)
{
	return s->known.farms.n;
}

static int64_t farms_id(const struct shelves *s, size_t i)
{
	return s->known.farms.items[i].id;
}

static bool farms_wanted(const struct shelves *s, size_t i, const struct entry_ask *ask)
{
	return !ask->farm || s->known.farms.items[i].id == ask->farm;
}

static bool farms_retired(const struct shelves *s, size_t i)
{
	return s->known.farms.items[i].retired;
}

static void farms_row(const struct shelves *s, size_t i, void *row)
{
	*(struct farm_row *)row = farm_row_of(&s->known, &s->known.farms.items[i]);
}

static void farms_name(const void *row, char *out, size_t size)
{
	snprintf(out, size, _("farm %s"), ((const struct farm_row *)row)->farm);
}

/* How many traps hang on the farm, or in the block if one is given. */
static int hanging_in(const struct log *l, int64_t farm, int64_t block)
{
	int n = 0;

	for (size_t i = 0; l && i < l->traps.n; i++)
		n += l->traps.items[i].farm == farm &&
		     (!block || l->traps.items[i].block == block) && log_hangs(l, i);
	return n;
}

static void say_hanging(int n, char out[static SAY_LINE])
{
	if (n == 1)
		text_copy(out, SAY_LINE, _("1 trap hangs"));
	else if (n > 1)
		snprintf(out, SAY_LINE, _("%d traps hang"), n);
}

static void farms_note(const struct shelves *s, size_t i, char out[static SAY_LINE])
{
	say_hanging(hanging_in(s->log, s->known.farms.items[i].id, 0), out);
}

/* Its biofix dates go along with a new start of the season. */
static bool move_biofixes(struct putting *p, const struct farm *f, int old_start)
{
	struct biofix_dates all = { 0 };
	bool ok = book_biofixes(p->book, &all, p->e) &&
		  farm_move_biofixes(&p->hear, p->book, &all, f, old_start, p->e);

	free(all.items);
	return ok && p->hear.n_warned == 0;
}

static bool farms_put(struct putting *p, const void *row)
{
	const struct farm_row *r = row;
	const struct known *k = &p->shelves->known;
	struct farm f = p->id ? k->farms.items[p->at] : (struct farm){ 0 };
	int old_start = f.season_start;

	farm_over(&p->hear, r, &f);
	if (!row_find_station(&p->hear, k, r->station, &f.station) ||
		!book_put_farm(p->book, &f, p->e))
		return false;
	if (p->id && !move_biofixes(p, &f, old_start))
		return false;
	p->id = f.id;
	return true;
}

/* "is not put away: 3 traps hang in it" */
static bool none_hangs(const char *name, int n, struct err *e)
{
	if (n == 0)
		return true;
	if (n == 1)
		return err_set(e, ERR_INPUT,
			_("%s is not put away: 1 trap hangs there; pull it first"),
			name);
	return err_set(e, ERR_INPUT,
		_("%s is not put away: %d traps hang there; pull them first"), name, n);
}

static bool farms_retire(
	struct book *b, const struct shelves *s, size_t i, bool retired, struct err *e)
{
	struct farm f = s->known.farms.items[i];

	if (retired && !none_hangs(f.name, hanging_in(s->log, f.id, 0), e))
		return false;
	f.retired = retired;
	return book_put_farm(b, &f, e);
}

const struct family_ops farms_ops = { "farm", sizeof(struct farm_row), farms_count,
	farms_id, farms_wanted, farms_retired, farms_row, farms_name, farms_note, NULL,
	farms_put, farms_retire };

static size_t blocks_count(const struct shelves *s)
{
	return s->known.blocks.n;
}

static int64_t blocks_id(const struct shelves *s, size_t i)
{
	return s->known.blocks.items[i].id;
}

static bool blocks_wanted(
	const struct shelves *s, size_t i, const struct entry_ask *ask)
{
	return !ask->farm || s->known.blocks.items[i].farm == ask->farm;
}

static bool blocks_retired(const struct shelves *s, size_t i)
{
	return s->known.blocks.items[i].retired;
}

static void blocks_row(const struct shelves *s, size_t i, void *row)
{
	*(struct block_row *)row = block_row_of(&s->known, &s->known.blocks.items[i]);
}

static void blocks_name(const void *row, char *out, size_t size)
{
	const struct block_row *r = row;

	snprintf(out, size, _("block %s of %s"), r->block, r->farm);
}

static void blocks_note(const struct shelves *s, size_t i, char out[static SAY_LINE])
{
	const struct block *b = &s->known.blocks.items[i];

	say_hanging(hanging_in(s->log, b->farm, b->id), out);
}

static void blocks_guess(
	const struct shelves *s, const struct entry_ask *ask, void *row)
{
	const struct farm *f = shelves_farm(s, ask);
	struct block_row *r = row;

	text_copy(r->farm, sizeof r->farm, f ? f->name : "");
}

/* Its traps are of the farm that it is of. */
static bool may_leave(struct putting *p, int64_t block)
{
	const struct traps *traps = &p->shelves->known.traps;
	int n = 0;

	for (size_t i = 0; i < traps->n; i++)
		n += traps->items[i].block == block;
	return n == 0 ||
	       row_bad(&p->hear, "farm",
		       _("cannot be another one: the block has traps, and they are of "
			 "its farm"));
}

static bool blocks_put(struct putting *p, const void *row)
{
	const struct block_row *r = row;
	const struct known *k = &p->shelves->known;
	struct block b =
		p->id ? k->blocks.items[p->at] : (struct block){ .area_x100 = -1 };
	int64_t farm;

	if (!row_find_farm(&p->hear, k, r->farm, &farm) ||
		(p->id && farm != b.farm && !may_leave(p, b.id)))
		return false;
	block_over(&p->hear, r, &b);
	b.farm = farm;
	if (!book_put_block(p->book, &b, p->e))
		return false;
	p->id = b.id;
	return true;
}

static bool blocks_retire(
	struct book *b, const struct shelves *s, size_t i, bool retired, struct err *e)
{
	struct block k = s->known.blocks.items[i];

	if (retired && !none_hangs(k.name, hanging_in(s->log, k.farm, k.id), e))
		return false;
	k.retired = retired;
	return book_put_block(b, &k, e);
}

const struct family_ops blocks_ops = { "block", sizeof(struct block_row), blocks_count,
	blocks_id, blocks_wanted, blocks_retired, blocks_row, blocks_name, blocks_note,
	blocks_guess, blocks_put, blocks_retire };

static size_t stations_count(const struct shelves *s)
{
	return s->known.stations.n;
}

static int64_t stations_id(const struct shelves *s, size_t i)
{
	return s->known.stations.items[i].id;
}

static bool stations_wanted(
	const struct shelves *s, size_t i, const struct entry_ask *ask)
{
	(void)s;
	(void)i;
	(void)ask;
	return true;
}

static void stations_row(const struct shelves *s, size_t i, void *row)
{
	*(struct station_row *)row = station_row_of(&s->known.stations.items[i]);
}

static void stations_name(const void *row, char *out, size_t size)
{
	snprintf(
		out, size, _("station %s"), ((const struct station_row *)row)->station);
}

/* The farms that go by it. */
static void stations_note(const struct shelves *s, size_t i, char out[static SAY_LINE])
{
	const struct farms *farms = &s->known.farms;
	struct names by = { 0 };
	struct buf list = { 0 };

	for (size_t f = 0; f < farms->n; f++)
		if (farms->items[f].station == s->known.stations.items[i].id)
			names_add(&by, 0, farms->items[f].name, 0);
	names_list(&by, 0, SAY_LINE / 2, &list);
	if (list.n)
		snprintf(out, SAY_LINE, _("of %s"), list.text);
	buf_free(&list);
	names_free(&by);
}

static bool stations_put(struct putting *p, const void *row)
{
	const struct stations *all = &p->shelves->known.stations;
	struct station one = p->id ? all->items[p->at] : (struct station){ 0 };

	if (!station_over(&p->hear, row, false, &one) ||
		!book_put_station(p->book, &one, p->e))
		return false;
	p->id = one.id;
	return true;
}

const struct family_ops stations_ops = { "station", sizeof(struct station_row),
	stations_count, stations_id, stations_wanted, NULL, stations_row, stations_name,
	stations_note, NULL, stations_put, NULL };
