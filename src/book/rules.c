/* rules.c - the grower's thresholds. */
#include "book/rules.h"

#include "row.h"

#include "base/mem.h"
#include "base/words.h"

#include <string.h>

static void bind_rule(struct query *q, const struct rule *r)
{
	query_int(q, r->pest);
	query_text(q, r->crop);
	query_word(q, condition_word(r->condition));
	query_id(q, r->lure);
	query_word(q, place_word(r->place));
	query_id(q, r->farm);
	query_id(q, r->block);
	query_id(q, r->flight);
	query_id(q, r->from);
	query_id(q, r->to);
	query_id(q, r->until_dd);
	query_text(q, measure_word(r->measure));
	query_word(q, span_word(r->span_kind));
	query_id(q, r->span);
	query_text(q, comparator_word(r->comparator));
	query_int(q, r->value_x100);
	query_text(q, r->note);
	query_text(q, r->source);
}

static bool span_good(const struct rule *r, const char *what, struct err *e)
{
	bool weekly =
		r->measure == MEASURE_TRAP_WEEK || r->measure == MEASURE_BLOCK_WEEK;
	bool total =
		r->measure == MEASURE_TRAP_TOTAL || r->measure == MEASURE_BLOCK_TOTAL;

	if (r->span_kind != SPAN_NUMBER && !total)
		return err_set(e, ERR_INPUT, _("%s: only a total runs since %s"),
			_(what), span_word(r->span_kind));
	if (r->measure == MEASURE_NONE)
		return store_range_good(r->span, 0, 366, N_("the span"), e);
	if (r->span_kind != SPAN_NUMBER)
		return store_range_good(
			r->span, 0, 0, N_("the span beside its word"), e);
	return weekly ? store_range_good(r->span, 1, 8, N_("the span in weeks"), e)
		      : store_range_good(r->span, 1, 366, N_("the span in nights"), e);
}

static bool window_good(const struct rule *r, const char *what, struct err *e)
{
	if (r->from == 0 && r->to == 0)
		return true;
	if (store_md_good(r->from) && store_md_good(r->to))
		return true;
	return err_set(e, ERR_INPUT, _("%s: its window needs a first and a last day"),
		_(what));
}

static void read_rule(struct query *q, struct rule *r)
{
	r->id = query_get(q);
	r->pest = query_get(q);
	query_get_copy(q, r->crop, sizeof r->crop);
	query_require(q, condition_read(query_get_text(q), &r->condition));
	r->lure = query_get(q);
	query_require(q, place_read(query_get_text(q), &r->place));
	r->farm = query_get(q);
	r->block = query_get(q);
	r->flight = query_get_within(q, 0, 9);
	r->from = query_get32(q);
	r->to = query_get32(q);
	query_require(q, window_good(r, "", NULL));
	r->until_dd = query_get_within(q, 0, 99999);
	query_require(q, measure_read(query_get_text(q), &r->measure));
	query_require(q, span_read(query_get_text(q), &r->span_kind));
	r->span = query_get32(q);
	query_require(q, span_good(r, "", NULL));
	query_require(q, comparator_read(query_get_text(q), &r->comparator));
	r->value_x100 = query_get_within(q, 0, 99999999);
	query_get_copy(q, r->note, sizeof r->note);
	query_get_copy(q, r->source, sizeof r->source);
}

bool book_rules(struct book *b, struct rules *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT t.id, t.pest, t.crop, t.condition, t.lure, t.place, t.farm, "
		"t.block, t.flight, t.from_md, t.to_md, t.until_dd, t.measure, "
		"t.span_kind, t.span, t.comparator, t.value_x100, t.note, t.source "
		"FROM threshold t JOIN pest p ON p.id = t.pest ORDER BY p.code COLLATE "
		"NOCASE, p.code, t.id");
	q.table = "threshold";
	while (query_row(&q)) {
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		read_rule(&q, &out->items[out->n++]);
	}
	return query_end(&q, N_("the thresholds cannot be read"), e);
}

bool book_put_rule(struct book *b, struct rule *r, struct err *e)
{
	const char *what = N_("the threshold is not saved");
	struct query q;

	if (!store_text_good(r->crop, N_("the crop"), e) ||
		!store_text_good(r->note, N_("the note"), e) ||
		!store_text_good(r->source, N_("the source"), e) ||
		!store_range_good(r->flight, 0, 9, N_("the flight"), e) ||
		!store_range_good(
			r->until_dd, 0, 99999, N_("the end in degree-days"), e) ||
		!store_range_good(
			r->value_x100, 0, 99999999, N_("the value in hundredths"), e) ||
		!window_good(r, what, e) || !span_good(r, what, e) ||
		!store_begin(b, what, e))
		return false;
	query_start(&q, b,
		r->id ? "UPDATE threshold SET pest = ?1, crop = ?2, condition = ?3, "
			"lure = ?4, place = ?5, farm = ?6, block = ?7, flight = ?8, "
			"from_md = ?9, to_md = ?10, until_dd = ?11, measure = ?12, "
			"span_kind = ?13, span = ?14, comparator = ?15, value_x100 = "
			"?16, note = ?17, source = ?18, changed_at = ?19, changed_by = "
			"?20 WHERE id = ?21"
		      : "INSERT INTO threshold (pest, crop, condition, lure, place, "
			"farm, block, flight, from_md, to_md, until_dd, measure, "
			"span_kind, span, comparator, value_x100, note, source, "
			"changed_at, changed_by, uid) VALUES (?1, ?2, ?3, ?4, ?5, ?6, "
			"?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, "
			"?20, ?21)");
	bind_rule(&q, r);
	return store_put(&q, &r->id, "", what, e);
}

bool book_remove_rule(struct book *b, int64_t id, struct err *e)
{
	const char *what = N_("the threshold is not removed");

	return store_begin(b, what, e) &&
	       store_end(b, row_bury(b, row_kind("threshold"), id, what, e), what, e);
}
