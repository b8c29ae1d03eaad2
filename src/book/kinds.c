/* kinds.c - pests, lures and cards put into the book. */
#include "book/places.h"

#include "visit.h"

#include "base/words.h"

#include <math.h>
#include <string.h>

static bool is_word(const char *text, const char *const *words)
{
	for (; *words; words++)
		if (strcmp(*words, text) == 0)
			return true;
	return false;
}

static bool degrees_good(double degrees)
{
	return degrees >= -60 && degrees <= 150;
}

const char *store_heat_fault(const struct heat *h)
{
	static const char *const methods[] = { "average", "average-raised",
		"average-clamped", "average-capped", "triangle", "double-triangle",
		"sine", "double-sine", NULL };
	static const char *const cutoffs[] = { "none", "horizontal", "intermediate",
		"vertical", NULL };

	if (h->unit != 'C' && h->unit != 'F')
		return _("the unit of its degree-days is C or F");
	if (!degrees_good(h->base))
		return _("the base of its degree-days goes from -60 to 150 degrees");
	if (!isnan(h->cap) && !(degrees_good(h->cap) && h->cap > h->base))
		return _("the cap of its degree-days lies above the base, up to 150 "
			 "degrees");
	if (!is_word(h->method, methods) || !is_word(h->cutoff, cutoffs))
		return _("its degree-days need a method and a cutoff, such as sine and "
			 "none");
	return NULL;
}

static bool heat_good(const struct heat *h, const char *what, struct err *e)
{
	const char *fault = h->unit ? store_heat_fault(h) : NULL;

	if (fault)
		return err_set(e, ERR_INPUT, "%s: %s", _(what), fault);
	return store_text_good(h->source, N_("the source"), e);
}

static void bind_heat(struct query *q, const struct heat *h, const char *unit)
{
	bool set = h->unit != 0;

	query_word(q, unit);
	query_real(q, set, h->base);
	query_real(q, set && !isnan(h->cap), h->cap);
	query_word(q, set ? h->method : "");
	query_word(q, set ? h->cutoff : "");
	query_text(q, h->source);
}

bool book_put_pest(struct book *b, struct pest *p, struct err *e)
{
	const char *what = N_("the pest is not saved");
	const char unit[2] = { p->heat.unit };
	struct query q;

	if (!store_name_good(p->code, N_("the pest's code"), e) ||
		!store_text_good(p->name, N_("the pest's name"), e) ||
		!store_text_good(p->latin, N_("the pest's latin name"), e) ||
		!heat_good(&p->heat, what, e) ||
		!store_text_good(p->biofix_rule, N_("the biofix rule"), e) ||
		!store_begin(b, what, e))
		return false;
	query_start(&q, b,
		p->id ? "UPDATE pest SET code = ?1, name = ?2, latin = ?3, dd_unit = "
			"?4, dd_base = ?5, dd_cap = ?6, dd_method = ?7, dd_cutoff = "
			"?8, dd_source = ?9, biofix_rule = ?10, retired = ?11, "
			"changed_at = ?12, changed_by = ?13 WHERE id = ?14"
		      : "INSERT INTO pest (code, name, latin, dd_unit, dd_base, "
			"dd_cap, dd_method, dd_cutoff, dd_source, biofix_rule, "
			"retired, changed_at, changed_by, uid) VALUES (?1, ?2, ?3, ?4, ?5, ?6, "
			"?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14)");
	query_text(&q, p->code);
	query_text(&q, p->name);
	query_text(&q, p->latin);
	bind_heat(&q, &p->heat, unit);
	query_text(&q, p->biofix_rule);
	query_int(&q, p->retired);
	return store_put(&q, &p->id, p->code, what, e);
}

static bool hot_season_good(const struct lure_kind *k, const char *what, struct err *e)
{
	if (k->hot_days == 0 && k->hot_from == 0 && k->hot_to == 0)
		return true;
	if (!store_md_good(k->hot_from) || !store_md_good(k->hot_to))
		return err_set(e, ERR_INPUT,
			_("%s: the hot season needs a first and a last day"), _(what));
	return store_range_good(k->hot_days, 1, k->life_days,
		N_("the life in the hot season, in days"), e);
}

/* A struct that was only zeroed says nothing of the shelf. */
static struct stock stock_given(const struct stock *s)
{
	if (s->n != 0 || s->day != 0)
		return *s;
	return (struct stock){ COUNT_NONE, DAY_NONE,
		s->reorder ? s->reorder : COUNT_NONE };
}

static bool stock_good(const struct stock *s, const char *what, struct err *e)
{
	if ((s->n == COUNT_NONE) != (s->day == DAY_NONE))
		return err_set(e, ERR_INPUT,
			_("%s: its stock needs both a number and the day on which it "
			  "was counted"),
			_(what));
	if (s->day != DAY_NONE && (s->day < VISIT_DAY_FIRST || s->day > VISIT_DAY_LAST))
		return err_set(e, ERR_INPUT,
			_("%s: its stock has no date from 1900-01-01 to 2199-12-31"),
			_(what));
	return store_range_good(s->n, COUNT_NONE, COUNT_MAX, N_("the stock"), e) &&
	       store_range_good(s->reorder, COUNT_NONE, COUNT_MAX,
		       N_("the number at which it is ordered again"), e);
}

static void bind_stock(struct query *q, const struct stock *s)
{
	query_count(q, s->n);
	query_day(q, s->day);
	query_count(q, s->reorder);
}

bool book_put_lure(struct book *b, struct lure_kind *k, struct err *e)
{
	const char *what = N_("the lure is not saved");
	const struct stock stock = stock_given(&k->stock);
	struct query q;

	if (!store_name_good(k->name, N_("the lure's name"), e) ||
		!store_text_good(k->source, N_("the source"), e) ||
		!store_range_good(
			k->life_days, 1, 366, N_("the lure's life in days"), e) ||
		!hot_season_good(k, what, e) || !stock_good(&stock, what, e) ||
		!store_begin(b, what, e))
		return false;
	query_start(&q, b,
		k->id ? "UPDATE lure SET name = ?1, pest = ?2, life_days = ?3, "
			"hot_days = ?4, hot_from = ?5, hot_to = ?6, source = ?7, stock "
			"= ?8, stock_day = ?9, reorder_at = ?10, retired = ?11, "
			"changed_at = ?12, changed_by = ?13 WHERE id = ?14"
		      : "INSERT INTO lure (name, pest, life_days, hot_days, hot_from, "
			"hot_to, source, stock, stock_day, reorder_at, retired, "
			"changed_at, changed_by, uid) VALUES (?1, ?2, ?3, ?4, ?5, ?6, "
			"?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14)");
	query_text(&q, k->name);
	query_id(&q, k->pest);
	query_int(&q, k->life_days);
	query_id(&q, k->hot_days);
	query_id(&q, k->hot_from);
	query_id(&q, k->hot_to);
	query_text(&q, k->source);
	bind_stock(&q, &stock);
	query_int(&q, k->retired);
	return store_put(&q, &k->id, k->name, what, e);
}

bool book_put_card(struct book *b, struct card_kind *k, struct err *e)
{
	const char *what = N_("the card is not saved");
	const struct stock stock = stock_given(&k->stock);
	struct query q;

	if (!store_name_good(k->name, N_("the card's name"), e) ||
		!store_text_good(k->source, N_("the source"), e) ||
		!store_range_good(
			k->life_days, 1, 366, N_("the card's life in days"), e) ||
		!store_range_good(k->floor_at, 1, COUNT_MAX,
			N_("the number of moths at which the card is full"), e) ||
		!store_range_good(k->change_at, 1, k->floor_at,
			N_("the number of moths at which the card is changed"), e) ||
		!store_range_good(k->stir_at, 1, k->change_at,
			N_("the number of moths at which the glue is stirred"), e) ||
		!stock_good(&stock, what, e) || !store_begin(b, what, e))
		return false;
	query_start(&q, b,
		k->id ? "UPDATE card SET name = ?1, life_days = ?2, stir_at = ?3, "
			"change_at = ?4, floor_at = ?5, source = ?6, stock = ?7, "
			"stock_day = ?8, reorder_at = ?9, retired = ?10, changed_at = "
			"?11, changed_by = ?12 WHERE id = ?13"
		      : "INSERT INTO card (name, life_days, stir_at, change_at, "
			"floor_at, source, stock, stock_day, reorder_at, retired, "
			"changed_at, changed_by, uid) VALUES (?1, ?2, ?3, ?4, ?5, ?6, "
			"?7, ?8, ?9, ?10, ?11, ?12, ?13)");
	query_text(&q, k->name);
	query_int(&q, k->life_days);
	query_int(&q, k->stir_at);
	query_int(&q, k->change_at);
	query_int(&q, k->floor_at);
	query_text(&q, k->source);
	bind_stock(&q, &stock);
	query_int(&q, k->retired);
	return store_put(&q, &k->id, k->name, what, e);
}
