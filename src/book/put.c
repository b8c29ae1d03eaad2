/* put.c - farms, blocks, traps and kinds put into the book. */
#include "book/places.h"

#include "visit.h"

#include "base/words.h"

#include <string.h>

bool store_put(
	struct query *q, int64_t *id, const char *name, const char *what, struct err *e)
{
	struct book *b = q->book;
	bool ok;

	memset(b->fits, 0, sizeof b->fits); /* a trap or a lure may change its pest */
	query_stamp(q);
	if (*id)
		query_int(q, *id);
	else
		query_uid(q);
	query_row(q);
	if (query_taken(q))
		ok = err_set(e, ERR_INPUT,
			_("%s: there is a %s already; choose another name"), _(what),
			name);
	else if (q->code == SQLITE_CONSTRAINT_FOREIGNKEY)
		ok = err_set(e, ERR_NOT_FOUND,
			_("%s: something it belongs to is not in the book"), _(what));
	else if (q->code == SQLITE_DONE && sqlite3_changes(b->db) == 0)
		ok = err_set(e, ERR_NOT_FOUND, _("%s: it is not in the book any more"),
			_(what));
	else
		ok = query_end(q, what, e);
	if (!ok)
		query_end(q, what, NULL);
	int64_t new_id = *id ? *id : sqlite3_last_insert_rowid(b->db);
	if (!store_end(b, ok, what, e))
		return false;
	*id = new_id;
	return true;
}

bool book_put_farm(struct book *b, struct farm *f, struct err *e)
{
	const char *what = N_("the farm is not saved");
	struct query q;

	if (!store_name_good(f->name, N_("the farm's name"), e) ||
		!store_range_good(
			f->run_weekday, 0, 7, N_("the weekday of the run"), e))
		return false;
	if (!store_md_good(f->season_start))
		return err_set(e, ERR_INPUT,
			_("%s: its season starts on no day of the year"), _(what));
	if (!store_begin(b, what, e))
		return false;
	query_start(&q, b,
		f->id ? "UPDATE farm SET name = ?1, season_start = ?2, station = ?3, "
			"run_weekday = ?4, retired = ?5, changed_at = ?6, changed_by = "
			"?7 WHERE id = ?8"
		      : "INSERT INTO farm (name, season_start, station, run_weekday, "
			"retired, changed_at, changed_by, uid) VALUES (?1, ?2, ?3, ?4, "
			"?5, ?6, ?7, ?8)");
	query_text(&q, f->name);
	query_int(&q, f->season_start);
	query_id(&q, f->station);
	query_id(&q, f->run_weekday);
	query_int(&q, f->retired);
	return store_put(&q, &f->id, f->name, what, e);
}

/* A trap stands in a block of its farm, so that a block with traps stays there too. */
static bool block_good(
	struct book *b, const struct block *r, const char *what, struct err *e)
{
	struct query q;
	bool torn = false;

	query_start(&q, b,
		"SELECT EXISTS (SELECT 1 FROM trap WHERE block = ?1 AND farm <> ?2)");
	query_int(&q, r->id);
	query_int(&q, r->farm);
	if (query_row(&q))
		torn = query_get(&q) != 0;
	if (!query_end(&q, what, e))
		return false;
	return !torn ||
	       err_set(e, ERR_INPUT,
		       _("%s: traps stand in it, so it stays on its farm; make "
			 "a new block on the other one"),
		       _(what));
}

bool book_put_block(struct book *b, struct block *r, struct err *e)
{
	const char *what = N_("the block is not saved");
	struct query q;

	if (!store_name_good(r->name, N_("the block's name"), e) ||
		!store_text_good(r->crop, N_("the crop"), e) ||
		!store_text_good(r->variety, N_("the variety"), e) ||
		!store_range_good(r->area_x100, -1, 100000000,
			N_("the area in hundredths of a hectare"), e) ||
		!store_begin(b, what, e))
		return false;
	if (!block_good(b, r, what, e))
		return store_end(b, false, what, e);
	query_start(&q, b,
		r->id ? "UPDATE block SET farm = ?1, name = ?2, crop = ?3, variety = "
			"?4, condition = ?5, area_x100 = ?6, retired = ?7, changed_at "
			"= ?8, changed_by = ?9 WHERE id = ?10"
		      : "INSERT INTO block (farm, name, crop, variety, condition, "
			"area_x100, retired, changed_at, changed_by, uid) VALUES (?1, "
			"?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)");
	query_int(&q, r->farm);
	query_text(&q, r->name);
	query_text(&q, r->crop);
	query_text(&q, r->variety);
	query_word(&q, condition_word(r->condition));
	query_count(&q, r->area_x100);
	query_int(&q, r->retired);
	return store_put(&q, &r->id, r->name, what, e);
}

/* What stands between a trap and the book, as a sentence; NULL when nothing does. */
static const char *trap_fault(struct query *q, const struct trap *t)
{
	query_start(q, q->book,
		"SELECT (SELECT farm FROM block WHERE id = ?1) IS NOT ?2, "
		"EXISTS (SELECT 1 FROM lure WHERE id = ?3 AND pest <> ?4), "
		"EXISTS (SELECT 1 FROM trap WHERE id = ?5 AND pest <> ?4) AND "
		"EXISTS (SELECT 1 FROM visit WHERE id IN " VISIT_IDS(
			"?5") " AND trap = ?5)");
	query_int(q, t->block);
	query_int(q, t->farm);
	query_id(q, t->lure);
	query_int(q, t->pest);
	query_int(q, t->id);
	if (!query_row(q))
		return NULL;
	if (query_get(q))
		return _("its block is not one of its farm");
	if (query_get(q))
		return _("its lure is of another pest; choose a lure of the trap's "
			 "pest");
	if (query_get(q))
		return _("it has visits, so its pest stays: the plastic keeps the "
			 "scent; make a new trap for the other pest");
	return NULL;
}

static bool trap_good(
	struct book *b, const struct trap *t, const char *what, struct err *e)
{
	struct query q = { .book = b };
	const char *fault = trap_fault(&q, t);

	if (!query_end(&q, what, e))
		return false;
	return !fault || err_set(e, ERR_INPUT, "%s: %s", _(what), fault);
}

/* The end of the farm's driving order. */
static bool last_order(
	struct book *b, int64_t farm, int32_t *order, const char *what, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"SELECT coalesce(max(driving_order), 0) + 1 FROM trap WHERE farm = ?1");
	query_int(&q, farm);
	if (query_row(&q))
		*order = query_get32(&q);
	return query_end(&q, what, e);
}

static void bind_trap(struct query *q, const struct trap *t)
{
	query_int(q, t->farm);
	query_int(q, t->block);
	query_int(q, t->pest);
	query_text(q, t->label);
	query_id(q, t->lure);
	query_id(q, t->card);
	query_word(q, place_word(t->place));
	query_real(q, t->has_position, t->lat);
	query_real(q, t->has_position, t->lon);
	query_int(q, t->order);
}

static bool position_good(const struct trap *t, const char *what, struct err *e)
{
	if (!t->has_position ||
		(t->lat >= -90 && t->lat <= 90 && t->lon >= -180 && t->lon <= 180))
		return true;
	return err_set(e, ERR_INPUT,
		_("%s: latitude goes from -90 to 90, longitude from -180 to 180"),
		_(what));
}

bool book_put_trap(struct book *b, struct trap *t, struct err *e)
{
	const char *what = N_("the trap is not saved");
	struct trap full = *t;
	struct query q;

	if (!store_name_good(t->label, N_("the trap's name"), e) ||
		!store_range_good(t->order, t->id ? 1 : 0, 1000000,
			N_("the place in the driving order"), e) ||
		!position_good(t, what, e) || !store_begin(b, what, e))
		return false;
	if (!trap_good(b, t, what, e) ||
		(t->order == 0 && !last_order(b, t->farm, &full.order, what, e)))
		return store_end(b, false, what, e);
	query_start(&q, b,
		t->id ? "UPDATE trap SET farm = ?1, block = ?2, pest = ?3, label = ?4, "
			"lure = ?5, card = ?6, place = ?7, lat = ?8, lon = ?9, "
			"driving_order = ?10, changed_at = ?11, changed_by = ?12 "
			"WHERE id = ?13"
		      : "INSERT INTO trap (farm, block, pest, label, lure, card, "
			"place, lat, lon, driving_order, changed_at, changed_by, uid) "
			"VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, "
			"?13)");
	bind_trap(&q, &full);
	if (!store_put(&q, &full.id, t->label, what, e))
		return false;
	*t = full;
	return true;
}
