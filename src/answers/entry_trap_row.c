/* entry_trap_row.c - traps as rows. */
#include "answers/entry_rows.h"
#include "base/text.h"
#include "base/words.h"

#include <math.h>
#include <string.h>

enum { ORDER_MAX = 1000000, AREA_MAX_X100 = 100000000 };

#define AT(field) .at = offsetof(struct trap_row, field)
#define NAME .type = &value_text, .hi = NAME_BYTES

const struct column trap_columns[TRAP_COLUMNS] = {
	{ .name = "farm",
		AT(farm),
		NAME,
		.needed = true,
		.help = N_("Farm of the trap; one that is not in the book is made."),
		.form_help = N_("Farm of the trap, one of those in the book."),
		.label = N_("farm"),
		.pick = PICK_FARM,
		.list_cols = 16 },
	{ .name = "block",
		AT(block),
		NAME,
		.needed = true,
		.help = N_("Block of the trap; one that the farm lacks is made."),
		.form_help = N_("Block of the trap, one of those that the farm has."),
		.label = N_("block"),
		.pick = PICK_BLOCK,
		.list_cols = 18 },
	{ .name = "trap",
		AT(trap),
		NAME,
		.needed = true,
		.help = N_("Number or name of the trap, once on a farm."),
		.label = N_("label"),
		.list_cols = 8 },
	{ .name = "pest",
		AT(pest),
		.type = &value_text,
		.hi = CODE_BYTES,
		.needed = true,
		.help = N_("Code of its one pest; the book must have it."),
		.form_help = N_("Its one pest, for as long as it hangs."),
		.label = N_("pest"),
		.pick = PICK_PEST,
		.list_cols = 6 },
	{ .name = "lure",
		AT(lure),
		NAME,
		.shipped = true,
		.help = N_("Lure kind that it usually gets; of one that has none it "
			   "is not known when the lure is due."),
		.form_help = N_("The lure kind that it usually gets; with none nobody "
				"is told when it is due."),
		.label = N_("lure"),
		.pick = PICK_LURE,
		.list_cols = 14 },
	{ .name = "card",
		AT(card),
		NAME,
		.shipped = true,
		.help = N_("Card kind that it usually gets."),
		.label = N_("card"),
		.pick = PICK_CARD },
	{ .name = "place",
		AT(place),
		.type = &value_word,
		.lo = 1,
		.hi = PLACE_COUNT - 1,
		.word = column_place,
		.help = N_("Where in the block it hangs."),
		.label = N_("place"),
		.pick = PICK_WORD,
		.list_cols = 9 },
	{ .name = "condition",
		AT(condition),
		.type = &value_word,
		.lo = 1,
		.hi = CONDITION_COUNT - 1,
		.word = column_condition,
		.help = N_("Whether the block's mating is disrupted; all rows of a "
			   "block agree, or say nothing.") },
	{ .name = "crop",
		AT(crop),
		NAME,
		.shipped = true,
		.help = N_("What grows in the block; as for condition.") },
	{ .name = "variety",
		AT(variety),
		NAME,
		.help = N_("Which variety; as for condition.") },
	{ .name = "area_ha",
		AT(area_x100),
		.type = &value_area,
		.hi = AREA_MAX_X100,
		.none = -1,
		.help = N_("The block's hectares; as for condition.") },
	{ .name = "lat",
		AT(lat),
		.type = &value_degree,
		.lo = -90,
		.hi = 90,
		.help = N_("Latitude in degrees, WGS 84, north positive."),
		.label = N_("latitude") },
	{ .name = "lon",
		AT(lon),
		.type = &value_degree,
		.lo = -180,
		.hi = 180,
		.help = N_("Longitude in degrees, east positive."),
		.label = N_("longitude") },
	{ .name = "order",
		AT(order),
		.type = &value_int,
		.lo = 1,
		.hi = ORDER_MAX,
		.help = N_("Its turn on the farm's run; empty: a new trap comes after "
			   "the others."),
		.label = N_("turn on the run") },
	{ .name = "hung",
		AT(hung),
		.type = &value_day,
		.help = N_("Date on which it was hung: makes such a visit, with a new "
			   "lure and card, unless there is a visit on that date."),
		.form_help = N_(
			"Date on which it was first hung, with a new lure and card."),
		.label = N_("first hung on") },
	{ .name = "pulled",
		AT(pulled),
		.type = &value_day,
		.help = N_("Date on which it was taken down, in the same way."),
		.form_help = N_("Date on which it was taken down; empty: it hangs."),
		.label = N_("pulled on") },
};

struct trap_row trap_row_of(const struct known *k, const struct trap *t)
{
	const struct block *b = known_block(k, t->block);
	struct trap_row r = {
		.place = (int)t->place,
		.condition = b ? (int)b->condition : 0,
		.area_x100 = b ? b->area_x100 : -1,
		.lat = t->has_position ? t->lat : (double)NAN,
		.lon = t->has_position ? t->lon : (double)NAN,
		.order = t->order,
		.hung = DAY_NONE,
		.pulled = DAY_NONE,
	};

	text_copy(r.farm, sizeof r.farm, known_farm(k, t->farm));
	text_copy(r.block, sizeof r.block, b ? b->name : "");
	text_copy(r.trap, sizeof r.trap, t->label);
	text_copy(r.pest, sizeof r.pest, known_pest(k, t->pest));
	text_copy(r.lure, sizeof r.lure, known_lure(k, t->lure));
	text_copy(r.card, sizeof r.card, known_card(k, t->card));
	text_copy(r.crop, sizeof r.crop, b ? b->crop : "");
	text_copy(r.variety, sizeof r.variety, b ? b->variety : "");
	for (size_t i = 0; k->hangings && i < k->traps.n; i++)
		if (k->traps.items[i].id == t->id) {
			r.hung = k->hangings[i].hung;
			r.pulled = k->hangings[i].pulled;
		}
	return r;
}

static void check_days(struct hearing *h, const struct trap_row *r)
{
	char today[DAY_ISO_SIZE], hung[DAY_ISO_SIZE];

	day_iso(h->today, today);
	day_iso(r->hung, hung);
	if (r->hung != DAY_NONE && r->hung > h->today)
		row_bad(h, "hung", _("lies after today, %s"), today);
	if (r->pulled != DAY_NONE && r->pulled > h->today)
		row_bad(h, "pulled", _("lies after today, %s"), today);
	if (r->hung != DAY_NONE && r->pulled != DAY_NONE && r->pulled <= r->hung)
		row_bad(h, "pulled", _("must lie after the day it was hung, %s"), hung);
}

bool trap_good(struct hearing *h, const struct known *k, const struct trap_row *r,
	struct trap *made)
{
	int64_t before = h->n_bad;

	row_find_pest(h, k, r->pest, &made->pest);
	row_find_lure(h, &k->lures, made->pest, r->lure, &made->lure);
	row_find_card(h, k, r->card, &made->card);
	const struct lure_kind *lure = known_kind(k, made->lure);
	if (lure && lure->pest && made->pest && lure->pest != made->pest)
		row_bad(h, "lure",
			_("draws another pest than %s; a trap keeps the scent of its "
			  "first lure, so it has one pest for life"),
			r->pest);
	if (isnan(r->lat) != isnan(r->lon))
		row_bad(h, isnan(r->lat) ? "lat" : "lon",
			_("a position needs both lat and lon, or neither"));
	check_days(h, r);
	return h->n_bad == before;
}

static void put_position(
	const struct hearing *h, const struct trap_row *r, struct trap *p)
{
	if (isnan(r->lat) && !h->clears)
		return;
	p->has_position = !isnan(r->lat);
	p->lat = p->has_position ? r->lat : 0;
	p->lon = p->has_position ? r->lon : 0;
}

struct trap trap_after(const struct hearing *h, const struct trap_row *r,
	const struct trap *was, const struct trap *made)
{
	struct trap p = *was;

	p.farm = made->farm;
	p.block = made->block;
	p.pest = made->pest;
	memcpy(p.label, r->trap, sizeof p.label);
	if (made->lure || h->clears)
		p.lure = made->lure;
	if (made->card || h->clears)
		p.card = made->card;
	if (r->place || h->clears)
		p.place = (enum place)r->place;
	put_position(h, r, &p);
	if (r->order)
		p.order = r->order;
	return p;
}
