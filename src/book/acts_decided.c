/* acts_decided.c - dispensers of mating disruption, and what was decided about
 * alerts. */
#include "book/acts.h"

#include "acts_parts.h"

#include "base/mem.h"
#include "base/words.h"

enum { PER_HA_MAX = 9999999 };

static void read_disruption(struct query *q, struct disruption *d)
{
	*d = disruption_blank;
	acts_get_place(q, &d->id, &d->block);
	d->pest = query_get(q);
	d->up = acts_get_day(q);
	d->down = query_get_day(q);
	query_require(q, d->down == DAY_NONE || d->down >= d->up);
	d->per_ha_x100 = query_get_count(q);
	query_require(q, d->per_ha_x100 != 0 && d->per_ha_x100 <= PER_HA_MAX);
	query_get_copy(q, d->type, sizeof d->type);
	query_get_copy(q, d->note, sizeof d->note);
}

/* Up on a day of the span; or a day of it is none, as in ACTS_IN_SPAN. */
#define UP_IN_SPAN                                                                     \
	"(x.day <= ?3 AND (x.until IS NULL OR x.until >= ?2) OR " ACTS_NO_DAY(         \
		"x.day") " OR x.until IS NOT NULL AND " ACTS_NO_DAY("x.until") ")"

bool book_disruptions(struct book *b, int64_t farm, int32_t from, int32_t to,
	struct disruptions *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT x.id, k.id, x.block, x.pest, x.day, x.until, x.per_ha_x100, "
		"x.type, x.note FROM dispensers x LEFT JOIN block k ON k.id = x.block "
		"WHERE " UP_IN_SPAN " AND " ACTS_OF_FARM
		" ORDER BY x.block, x.day, x.id");
	acts_ask(&q, farm, from, to);
	q.table = "dispensers";
	while (query_row(&q)) {
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		read_disruption(&q, &out->items[out->n++]);
	}
	return query_end(&q, N_("the dispensers cannot be read"), e);
}

static bool disruption_good(const struct disruption *d, const char *what, struct err *e)
{
	if (!acts_day_good(d->up, what, e) ||
		(d->down != DAY_NONE && !acts_day_good(d->down, what, e)))
		return false;
	if (d->down != DAY_NONE && d->down < d->up)
		return err_set(e, ERR_INPUT,
			_("%s: they came down before they went up"), _(what));
	if (d->per_ha_x100 != -1 &&
		!store_range_good(d->per_ha_x100, 1, PER_HA_MAX,
			N_("the number to the hectare, in hundredths,"), e))
		return false;
	return store_text_good(d->type, N_("the type of dispenser"), e) &&
	       store_text_good(d->note, N_("the note"), e);
}

/* They may come down and others go up on the same day. */
static bool disruption_alone(
	struct book *b, const struct disruption *d, const char *what, struct err *e)
{
	char up[DAY_ISO_SIZE];
	struct query q;
	int32_t other = DAY_NONE;

	query_start(&q, b,
		"SELECT day FROM dispensers WHERE block = ?1 AND pest IS ?2 AND id <> "
		"?3 AND (day = ?4 OR (day < coalesce(?5, '9999') AND ?4 < "
		"coalesce(until, '9999'))) ORDER BY day LIMIT 1");
	query_int(&q, d->block);
	query_id(&q, d->pest);
	query_int(&q, d->id);
	query_day(&q, d->up);
	query_day(&q, d->down);
	if (query_row(&q))
		other = acts_get_day(&q);
	if (!query_end(&q, what, e))
		return false;
	day_iso(other, up);
	return other == DAY_NONE ||
	       err_set(e, ERR_INPUT,
		       _("%s: those that went up on %s in that block, for the same "
			 "pest, are up then; first enter when they came down"),
		       _(what), up);
}

bool book_put_disruption(struct book *b, struct disruption *d, struct err *e)
{
	const char *what = N_("the dispensers are not saved");
	struct query q;

	if (!disruption_good(d, what, e) || !store_begin(b, what, e))
		return false;
	if (!disruption_alone(b, d, what, e))
		return store_end(b, false, what, e);
	query_start(&q, b,
		d->id ? "UPDATE dispensers SET block = ?1, pest = ?2, day = ?3, until "
			"= ?4, per_ha_x100 = ?5, type = ?6, note = ?7, changed_at = "
			"?8, changed_by = ?9 WHERE id = ?10"
		      : "INSERT INTO dispensers (block, pest, day, until, "
			"per_ha_x100, type, note, changed_at, changed_by, uid) VALUES "
			"(?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)");
	query_int(&q, d->block);
	query_id(&q, d->pest);
	query_day(&q, d->up);
	query_day(&q, d->down);
	query_count(&q, d->per_ha_x100);
	query_text(&q, d->type);
	query_text(&q, d->note);
	return store_put(&q, &d->id, "", what, e);
}

static void read_answer(struct query *q, struct answer *a)
{
	*a = answer_blank;
	acts_get_place(q, &a->id, &a->block);
	a->pest = query_get(q);
	a->trap = query_get(q);
	a->day = acts_get_day(q);
	a->on = acts_get_day(q);
	query_require(q, a->on >= a->day);
	query_require(q, decision_read(query_get_text(q), &a->decision));
	query_get_copy(q, a->note, sizeof a->note);
}

bool book_answers(struct book *b, int64_t farm, int32_t from, int32_t to,
	struct answers *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT x.id, k.id, x.block, x.pest, x.trap, x.day, x.decided, x.did, "
		"x.note FROM answer x LEFT JOIN block k ON k.id = x.block "
		"WHERE " ACTS_IN_SPAN " AND " ACTS_OF_FARM
		" ORDER BY x.block, x.day, x.decided, x.id");
	acts_ask(&q, farm, from, to);
	q.table = "answer";
	while (query_row(&q)) {
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		read_answer(&q, &out->items[out->n++]);
	}
	return query_end(&q, N_("the answers cannot be read"), e);
}

static bool answer_good(const struct answer *a, const char *what, struct err *e)
{
	if (!acts_day_good(a->day, what, e) || !acts_day_good(a->on, what, e) ||
		!store_text_good(a->note, N_("the note"), e))
		return false;
	return a->on >= a->day ||
	       err_set(e, ERR_INPUT, _("%s: it was decided before the alert came"),
		       _(what));
}

/* Of the block's farm: a trap that was moved meanwhile answers for the block that it
 * stood in, also when the answer is taken in from a file. */
static bool answer_of_trap(
	struct book *b, const struct answer *a, const char *what, struct err *e)
{
	struct query q;
	bool ours = false;

	query_start(&q, b,
		"SELECT EXISTS (SELECT 1 FROM trap t JOIN block k ON k.farm = t.farm "
		"WHERE t.id = ?1 AND k.id = ?2 AND t.pest = ?3) OR EXISTS (SELECT 1 "
		"FROM answer WHERE id = ?4 AND trap = ?1 AND block = ?2 AND pest = "
		"?3)");
	query_int(&q, a->trap);
	query_int(&q, a->block);
	query_int(&q, a->pest);
	query_int(&q, a->id);
	if (query_row(&q))
		ours = query_get(&q) != 0;
	if (!query_end(&q, what, e))
		return false;
	return ours ||
	       err_set(e, ERR_INPUT, _("%s: its trap is no trap of that farm and pest"),
		       _(what));
}

bool book_put_answer(struct book *b, struct answer *a, struct err *e)
{
	const char *what = N_("the answer is not saved");
	struct query q;

	if (!answer_good(a, what, e) || !store_begin(b, what, e))
		return false;
	if (a->trap != 0 && !answer_of_trap(b, a, what, e))
		return store_end(b, false, what, e);
	query_start(&q, b,
		a->id ? "UPDATE answer SET block = ?1, pest = ?2, trap = ?3, day = ?4, "
			"decided = ?5, did = ?6, note = ?7, changed_at = ?8, "
			"changed_by = ?9 WHERE id = ?10"
		      : "INSERT INTO answer (block, pest, trap, day, decided, did, "
			"note, changed_at, changed_by, uid) VALUES (?1, ?2, ?3, ?4, "
			"?5, ?6, ?7, ?8, ?9, ?10)");
	query_int(&q, a->block);
	query_int(&q, a->pest);
	query_id(&q, a->trap);
	query_day(&q, a->day);
	query_day(&q, a->on);
	query_text(&q, decision_word(a->decision));
	query_text(&q, a->note);
	return store_put(&q, &a->id, "", what, e);
}
