/* entry_lures.c - lures and cards as rows, and what of them is on the shelf. */
#include "answers/entry_kinds.h"
#include "base/text.h"
#include "base/words.h"
#include "entry_parts.h"

#include <string.h>

enum { STIR_USUAL = 20, CHANGE_USUAL = 30, FLOOR_USUAL = 50 };

#define STOCK_COLUMNS                                                                  \
	{ .name = "stock",                                                             \
		AT(stock.stock),                                                       \
		.type = &value_int,                                                    \
		.hi = STOCK_MAX,                                                       \
		.none = -1,                                                            \
		.help = N_("How many are on the shelf, counted on stock_day; empty: "  \
			   "not kept."),                                               \
		.label = N_("on the shelf"),                                           \
		.list_cols = 12 },                                                     \
		{ .name = "stock_day",                                                 \
			AT(stock.day),                                                 \
			.type = &value_day,                                            \
			.help = N_(                                                    \
				"Day on which the shelf was counted; empty: today."),  \
			.label = N_("counted on") },                                   \
	{                                                                              \
		.name = "reorder_at", AT(stock.reorder), .type = &value_int,           \
		.hi = STOCK_MAX, .none = -1,                                           \
		.help = N_("So many or fewer left: order more; empty: never said."),   \
		.label = N_("reorder at"), .list_cols = 10                             \
	}

#define AT(field) .at = offsetof(struct lure_row, field)

const struct column lure_columns[LURE_COLUMNS] = {
	{ .name = "lure",
		AT(lure),
		.type = &value_text,
		.hi = NAME_BYTES,
		.needed = true,
		.shipped = true,
		.help = N_("Name of the lure kind."),
		.label = N_("name"),
		.list_cols = 22 },
	{ .name = "pest",
		AT(pest),
		.type = &value_text,
		.hi = CODE_BYTES,
		.help = N_("Code of the pest that it draws; empty: of no single pest."),
		.label = N_("pest"),
		.pick = PICK_PEST,
		.list_cols = 6 },
	{ .name = "life_days",
		AT(life_days),
		.type = &value_int,
		.lo = 1,
		.hi = NIGHTS_MAX,
		.needed = true,
		.help = N_("Days that it lasts."),
		.label = N_("lasts, days"),
		.list_cols = 11 },
	{ .name = "hot_days",
		AT(hot_days),
		.type = &value_int,
		.lo = 1,
		.hi = NIGHTS_MAX,
		.help = N_("Days that it lasts in the hot season; empty: the same."),
		.label = N_("hot, days"),
		.list_cols = 9 },
	{ .name = "hot_from",
		AT(hot_from),
		.type = &value_md,
		.help = N_("First day of the hot season, as month-day."),
		.label = N_("hot season from") },
	{ .name = "hot_to",
		AT(hot_to),
		.type = &value_md,
		.help = N_("Last day of the hot season."),
		.label = N_("hot season to") },
	{ .name = "source",
		AT(source),
		.type = &value_text,
		.hi = SOURCE_BYTES,
		.shipped = true,
		.help = N_("Where these numbers come from."),
		.label = N_("source") },
	STOCK_COLUMNS,
	RETIRED_COLUMN,
};

#undef AT
#define AT(field) .at = offsetof(struct card_row, field)
#define MOTHS .type = &value_int, .lo = 1, .hi = COUNT_MAX

const struct column card_columns[CARD_COLUMNS] = {
	{ .name = "card",
		AT(card),
		.type = &value_text,
		.hi = NAME_BYTES,
		.needed = true,
		.shipped = true,
		.help = N_("Name of the card kind."),
		.label = N_("name"),
		.list_cols = 22 },
	{ .name = "life_days",
		AT(life_days),
		.type = &value_int,
		.lo = 1,
		.hi = NIGHTS_MAX,
		.needed = true,
		.help = N_("Days after which it is changed in any case."),
		.label = N_("lasts, days"),
		.list_cols = 11 },
	{ .name = "stir_at",
		AT(stir_at),
		MOTHS,
		.help = N_("Moths after which its glue is stirred; empty: 20."),
		.label = N_("stir at") },
	{ .name = "change_at",
		AT(change_at),
		MOTHS,
		.help = N_("Moths after which it is changed; empty: 30."),
		.label = N_("change at"),
		.list_cols = 9 },
	{ .name = "floor_at",
		AT(floor_at),
		MOTHS,
		.help = N_("Moths from which a count is a floor, at least so many; "
			   "empty: 50."),
		.label = N_("full at"),
		.list_cols = 7 },
	{ .name = "source",
		AT(source),
		.type = &value_text,
		.hi = SOURCE_BYTES,
		.shipped = true,
		.help = N_("Where these numbers come from."),
		.label = N_("source") },
	STOCK_COLUMNS,
	RETIRED_COLUMN,
};

static struct stock_row stock_row_of(const struct stock *s)
{
	return (struct stock_row){ s->n, s->n < 0 ? DAY_NONE : s->day, s->reorder };
}

/* A kind that is new has none. */
static bool stock_over(
	struct hearing *h, const struct stock_row *r, bool is_new, struct stock *s)
{
	char today[DAY_ISO_SIZE];

	if (is_new)
		*s = (struct stock){ -1, DAY_NONE, -1 };
	if (row_has(h, "reorder_at"))
		s->reorder = r->reorder;
	if (row_has(h, "stock")) {
		s->n = r->stock;
		s->day = s->n < 0 ? DAY_NONE : h->today;
	}
	if (!row_has(h, "stock_day") || r->day == DAY_NONE)
		return true;
	if (s->n < 0)
		return row_bad(h, "stock_day",
			_("stands without a stock; write how many there were on that "
			  "day, or leave it empty"));
	day_iso(h->today, today);
	if (r->day > h->today)
		return row_bad(h, "stock_day", _("lies after today, %s"), today);
	s->day = r->day;
	return true;
}

bool stock_same(const struct stock *a, const struct stock *b)
{
	return a->n == b->n && a->reorder == b->reorder &&
	       (a->n < 0 || a->day == b->day);
}

bool lure_over(struct hearing *h, const struct known *k, const struct lure_row *r,
	struct lure_kind *out)
{
	if (strcmp(r->lure, "kept") == 0)
		return row_bad(h, "lure",
			_("cannot name a lure: in a file of visits it means that the "
			  "old one stays"));
	memcpy(out->name, r->lure, sizeof out->name);
	if (row_has(h, "pest") && !row_find_pest(h, k, r->pest, &out->pest))
		return false;
	out->life_days = r->life_days;
	if (row_has(h, "hot_days"))
		out->hot_days = r->hot_days;
	if (row_has(h, "hot_from"))
		out->hot_from = r->hot_from;
	if (row_has(h, "hot_to"))
		out->hot_to = r->hot_to;
	if (row_has(h, "source"))
		memcpy(out->source, r->source, sizeof out->source);
	if (row_has(h, "retired"))
		out->retired = r->retired == 1;
	if ((out->hot_days == 0) != (out->hot_from == 0) ||
		(out->hot_days == 0) != (out->hot_to == 0))
		return row_bad(h, "hot_days",
			_("goes together with hot_from and hot_to: all three or none"));
	if (out->hot_days > out->life_days)
		return row_bad(h, "hot_days",
			_("is longer than life_days, %d; heat shortens a lure's life"),
			(int)out->life_days);
	return stock_over(h, &r->stock, !out->id, &out->stock);
}

struct lure_row lure_row_of(const struct known *k, const struct lure_kind *l)
{
	struct lure_row r = {
		.life_days = l->life_days,
		.hot_days = l->hot_days,
		.hot_from = l->hot_from,
		.hot_to = l->hot_to,
		.stock = stock_row_of(&l->stock),
		.retired = l->retired,
	};

	text_copy(r.lure, sizeof r.lure, l->name);
	text_copy(r.pest, sizeof r.pest, known_pest(k, l->pest));
	text_copy(r.source, sizeof r.source, l->source);
	return r;
}

struct card_row card_row_of(const struct card_kind *k)
{
	struct card_row r = {
		.life_days = k->life_days,
		.stir_at = k->stir_at,
		.change_at = k->change_at,
		.floor_at = k->floor_at,
		.stock = stock_row_of(&k->stock),
		.retired = k->retired,
	};

	text_copy(r.card, sizeof r.card, k->name);
	text_copy(r.source, sizeof r.source, k->source);
	return r;
}

/* The marks that the row leaves out: the usual ones, as far as they keep the order. */
static void usual_marks(
	const struct hearing *h, const struct card_row *r, struct card_kind *k)
{
	if (row_has(h, "change_at") || !k->id)
		k->change_at = r->change_at ? r->change_at : CHANGE_USUAL;
	if (row_has(h, "stir_at") || !k->id)
		k->stir_at = r->stir_at                  ? r->stir_at
			     : k->change_at < STIR_USUAL ? k->change_at
							 : STIR_USUAL;
	if (row_has(h, "floor_at") || !k->id)
		k->floor_at = r->floor_at                  ? r->floor_at
			      : k->change_at > FLOOR_USUAL ? k->change_at
							   : FLOOR_USUAL;
}

bool card_over(struct hearing *h, const struct card_row *r, struct card_kind *k)
{
	if (strcmp(r->card, "kept") == 0)
		return row_bad(h, "card",
			_("cannot name a card: in a file of visits it means that the "
			  "old one stays"));
	memcpy(k->name, r->card, sizeof k->name);
	k->life_days = r->life_days;
	usual_marks(h, r, k);
	if (row_has(h, "source"))
		memcpy(k->source, r->source, sizeof k->source);
	if (row_has(h, "retired"))
		k->retired = r->retired == 1;
	if (k->stir_at > k->change_at || k->change_at > k->floor_at)
		return row_bad(h, "change_at",
			_("does not fit: stir_at %d, change_at %d and floor_at %d must "
			  "rise in this order"),
			(int)k->stir_at, (int)k->change_at, (int)k->floor_at);
	return stock_over(h, &r->stock, !k->id, &k->stock);
}
