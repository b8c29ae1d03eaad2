/* acts.c - picks and fruit checks. */
#include "book/acts.h"

#include "acts_parts.h"
#include "visit.h"

#include "base/mem.h"
#include "base/words.h"

enum { LOOKED_AT_MAX = 99999 };

void acts_ask(struct query *q, int64_t farm, int32_t from, int32_t to)
{
	query_id(q, farm);
	query_limit(q, from);
	query_limit(q, to);
}

void acts_get_place(struct query *q, int64_t *id, int64_t *block)
{
	*id = query_get(q);
	query_require(q, *id != 0); /* a pick of the id 0 is none to the answers */
	int64_t there = query_get(q);
	*block = query_get(q);
	query_require(q, there != 0);
}

int32_t acts_get_day(struct query *q)
{
	int32_t day = query_get_day(q);

	query_require(q, day != DAY_NONE);
	return day;
}

bool acts_day_good(int32_t day, const char *what, struct err *e)
{
	if (day == DAY_NONE)
		return err_set(e, ERR_INPUT, _("%s: it has no date"), _(what));
	if (day < VISIT_DAY_FIRST || day > VISIT_DAY_LAST)
		return err_set(e, ERR_INPUT,
			_("%s: it has no date from 1900-01-01 to 2199-12-31"), _(what));
	return true;
}

static void read_pick(struct query *q, struct pick *p)
{
	*p = pick_blank;
	acts_get_place(q, &p->id, &p->block);
	p->day = acts_get_day(q);
	p->is_done = query_get_within(q, 0, 1) == 0;
	query_get_copy(q, p->note, sizeof p->note);
}

bool book_picks(struct book *b, int64_t farm, int32_t from, int32_t to,
	struct picks *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT x.id, k.id, x.block, x.day, x.planned, x.note FROM pick x LEFT "
		"JOIN block k ON k.id = x.block WHERE " ACTS_IN_SPAN
		" AND " ACTS_OF_FARM " ORDER BY x.block, x.day, x.id");
	acts_ask(&q, farm, from, to);
	q.table = "pick";
	while (query_row(&q)) {
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		read_pick(&q, &out->items[out->n++]);
	}
	return query_end(&q, N_("the picks cannot be read"), e);
}

bool book_put_pick(struct book *b, struct pick *p, struct err *e)
{
	const char *what = N_("the pick is not saved");
	struct query q;

	if (!acts_day_good(p->day, what, e) ||
		!store_text_good(p->note, N_("the note"), e) ||
		!store_begin(b, what, e))
		return false;
	query_start(&q, b,
		p->id ? "UPDATE pick SET block = ?1, day = ?2, planned = ?3, note = "
			"?4, changed_at = ?5, changed_by = ?6 WHERE id = ?7"
		      : "INSERT INTO pick (block, day, planned, note, changed_at, "
			"changed_by, uid) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)");
	query_int(&q, p->block);
	query_day(&q, p->day);
	query_int(&q, !p->is_done);
	query_text(&q, p->note);
	return store_put(&q, &p->id, "", what, e);
}

static void read_fruit_check(struct query *q, struct fruit_check *c)
{
	*c = fruit_check_blank;
	acts_get_place(q, &c->id, &c->block);
	c->pest = query_get(q);
	c->day = acts_get_day(q);
	query_require(q, fruit_part_read(query_get_text(q), &c->part));
	query_require(q, tree_part_read(query_get_text(q), &c->where));
	c->looked_at = query_get_within(q, 1, LOOKED_AT_MAX);
	c->stung = query_get_count(q);
	query_require(q, c->stung <= c->looked_at);
	int32_t stung = c->stung < 0 ? 0 : c->stung;
	c->entered = query_get_within(q, 0, c->looked_at - stung);
	query_get_copy(q, c->note, sizeof c->note);
}

bool book_fruit_checks(struct book *b, int64_t farm, int32_t from, int32_t to,
	struct fruit_checks *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT x.id, k.id, x.block, x.pest, x.day, x.part, x.tree, "
		"x.looked_at, x.stung, x.entered, x.note FROM fruit_check x LEFT JOIN "
		"block k ON k.id = x.block WHERE " ACTS_IN_SPAN " AND " ACTS_OF_FARM
		" ORDER BY x.block, x.day, x.id");
	acts_ask(&q, farm, from, to);
	q.table = "fruit_check";
	while (query_row(&q)) {
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		read_fruit_check(&q, &out->items[out->n++]);
	}
	return query_end(&q, N_("the fruit checks cannot be read"), e);
}

static bool fruit_check_good(
	const struct fruit_check *c, const char *what, struct err *e)
{
	if (!acts_day_good(c->day, what, e) ||
		!store_text_good(c->note, N_("the note"), e) ||
		!store_range_good(c->looked_at, 1, LOOKED_AT_MAX,
			N_("the number looked at"), e) ||
		!store_range_good(
			c->stung, -1, LOOKED_AT_MAX, N_("the number stung"), e) ||
		!store_range_good(
			c->entered, 0, LOOKED_AT_MAX, N_("the number entered"), e))
		return false;
	int32_t hurt = c->entered + (c->stung < 0 ? 0 : c->stung);
	if (hurt > c->looked_at)
		return err_set(e, ERR_INPUT,
			_("%s: %ld are stung or entered, but only %ld were looked at; "
			  "one that is both counts as entered"),
			_(what), (long)hurt, (long)c->looked_at);
	return true;
}

bool book_put_fruit_check(struct book *b, struct fruit_check *c, struct err *e)
{
	const char *what = N_("the fruit check is not saved");
	struct query q;

	if (!fruit_check_good(c, what, e) || !store_begin(b, what, e))
		return false;
	query_start(&q, b,
		c->id ? "UPDATE fruit_check SET block = ?1, pest = ?2, day = ?3, part "
			"= ?4, tree = ?5, looked_at = ?6, stung = ?7, entered = ?8, "
			"note = ?9, changed_at = ?10, changed_by = ?11 WHERE id = ?12"
		      : "INSERT INTO fruit_check (block, pest, day, part, tree, "
			"looked_at, stung, entered, note, changed_at, changed_by, uid) "
			"VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12)");
	query_int(&q, c->block);
	query_id(&q, c->pest);
	query_day(&q, c->day);
	query_text(&q, fruit_part_word(c->part));
	query_word(&q, tree_part_word(c->where));
	query_int(&q, c->looked_at);
	query_count(&q, c->stung);
	query_int(&q, c->entered);
	query_text(&q, c->note);
	return store_put(&q, &c->id, "", what, e);
}
