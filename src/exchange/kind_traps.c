#include "traps_parts.h"

#include "base/mem.h"
#include "base/words.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { ORDER_MAX = 1000000, AREA_MAX_X100 = 100000000 };

#define AT(field) .at = offsetof(struct trap_row, field)
#define NAME .type = &value_text, .hi = NAME_BYTES

static const struct column columns[] = {
	{ .name = "farm",
		AT(farm),
		NAME,
		.needed = true,
		.help = N_("Farm of the trap; one that is not in the book is made.") },
	{ .name = "block",
		AT(block),
		NAME,
		.needed = true,
		.help = N_("Block of the trap; one that the farm lacks is made.") },
	{ .name = "trap",
		AT(trap),
		NAME,
		.needed = true,
		.help = N_("Number or name of the trap, once on a farm.") },
	{ .name = "pest",
		AT(pest),
		.type = &value_text,
		.hi = CODE_BYTES,
		.needed = true,
		.help = N_("Code of its one pest; the book must have it.") },
	{ .name = "lure",
		AT(lure),
		NAME,
		.help = N_("Lure kind that it usually gets; of one that has none it "
			   "is not known when the lure is due.") },
	{ .name = "card",
		AT(card),
		NAME,
		.help = N_("Card kind that it usually gets.") },
	{ .name = "place",
		AT(place),
		.type = &value_word,
		.lo = 1,
		.hi = PLACE_COUNT - 1,
		.word = column_place,
		.help = N_("Where in the block it hangs.") },
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
		.help = N_("What grows in the block; as for condition.") },
	{ .name = "variety",
		AT(variety),
		NAME,
		.help = N_("Which variety; as for condition.") },
	{ .name = "area_ha",
		AT(area_x100),
		.type = &value_x100,
		.hi = AREA_MAX_X100,
		.none = -1,
		.help = N_("The block's hectares; as for condition.") },
	{ .name = "lat",
		AT(lat),
		.type = &value_degree,
		.lo = -90,
		.hi = 90,
		.help = N_("Latitude in degrees, WGS 84, north positive.") },
	{ .name = "lon",
		AT(lon),
		.type = &value_degree,
		.lo = -180,
		.hi = 180,
		.help = N_("Longitude in degrees, east positive.") },
	{ .name = "order",
		AT(order),
		.type = &value_int,
		.lo = 1,
		.hi = ORDER_MAX,
		.help = N_("Its turn on the farm's run; empty: a new trap comes after "
			   "the others.") },
	{ .name = "hung",
		AT(hung),
		.type = &value_day,
		.help = N_("Date on which it was hung: makes such a visit, with a new "
			   "lure and card, unless there is a visit on that date.") },
	{ .name = "pulled",
		AT(pulled),
		.type = &value_day,
		.help = N_("Date on which it was taken down, in the same way.") },
};

static bool read_names(struct taking *t, struct trap_state *s, struct err *e)
{
	struct traps traps = { 0 };
	struct blocks blocks = { 0 };
	bool ok = names_of_farms(t->book, &s->farms, e) &&
		  names_of_pests(t->book, &s->pests, e) &&
		  names_of_cards(t->book, &s->cards, e) &&
		  book_lures(t->book, &s->lure_kinds, e) &&
		  book_blocks(t->book, 0, &blocks, e) &&
		  book_traps(t->book, 0, &traps, e);

	s->block = mem_grow(s->block, &s->cap_blocks, blocks.n, sizeof *s->block);
	for (size_t i = 0; ok && i < blocks.n; i++) {
		const struct block *b = &blocks.items[i];
		names_add(&s->blocks, b->farm, b->name, (int64_t)s->n_blocks);
		s->block[s->n_blocks++].block = *b;
	}
	s->trap = mem_grow(s->trap, &s->cap_traps, traps.n, sizeof *s->trap);
	for (size_t i = 0; ok && i < traps.n; i++) {
		const struct trap *p = &traps.items[i];
		names_add(&s->traps, p->farm, p->label, (int64_t)s->n_traps);
		s->trap[s->n_traps++] = (struct trap_in){ *p, 0, DAY_NONE, DAY_NONE };
	}
	free(blocks.items);
	free(traps.items);
	return ok;
}

static bool traps_begin(struct taking *t, struct err *e)
{
	t->state = mem_new(1, sizeof(struct trap_state));
	return read_names(t, t->state, e);
}

static void traps_end(struct taking *t)
{
	struct trap_state *s = t->state;

	names_free(&s->farms);
	names_free(&s->blocks);
	names_free(&s->traps);
	names_free(&s->pests);
	names_free(&s->cards);
	free(s->lure_kinds.items);
	free(s->block);
	free(s->trap);
	free(s);
}

static int64_t pest_of_lure(const struct trap_state *s, int64_t lure)
{
	for (size_t i = 0; i < s->lure_kinds.n; i++)
		if (s->lure_kinds.items[i].id == lure)
			return s->lure_kinds.items[i].pest;
	return 0;
}

static void check_days(struct taking *t, const struct trap_row *r)
{
	char today[DAY_ISO_SIZE], hung[DAY_ISO_SIZE];

	day_iso(t->from->today, today);
	day_iso(r->hung, hung);
	if (r->hung != DAY_NONE && r->hung > t->from->today)
		taking_bad(t, "hung", _("lies after today, %s"), today);
	if (r->pulled != DAY_NONE && r->pulled > t->from->today)
		taking_bad(t, "pulled", _("lies after today, %s"), today);
	if (r->hung != DAY_NONE && r->pulled != DAY_NONE && r->pulled <= r->hung)
		taking_bad(
			t, "pulled", _("must lie after the day it was hung, %s"), hung);
}

/* What can be told from the row and the kinds alone; true if nothing is wrong. */
static bool check_row(struct taking *t, const struct trap_row *r, struct trap *made)
{
	struct trap_state *s = t->state;
	int64_t problems = t->out->n_problems;

	taking_find(t, &s->pests, "pest", r->pest, &made->pest);
	taking_find_lure(t, &s->lure_kinds, made->pest, r->lure, &made->lure);
	taking_find(t, &s->cards, "card", r->card, &made->card);
	int64_t draws = pest_of_lure(s, made->lure);
	if (draws && made->pest && draws != made->pest)
		taking_bad(t, "lure",
			_("draws another pest than %s; a trap keeps the scent of its "
			  "first lure, so it has one pest for life"),
			r->pest);
	if (isnan(r->lat) != isnan(r->lon))
		taking_bad(t, isnan(r->lat) ? "lat" : "lon",
			_("a position needs both lat and lon, or neither"));
	check_days(t, r);
	return t->out->n_problems == problems;
}

/* The trap as the row wants it, over `was` (zero for a new one): what is empty stays
 * as it was. */
static struct trap trap_after(
	const struct trap_row *r, const struct trap *was, const struct trap *made)
{
	struct trap p = *was;

	p.farm = made->farm;
	p.block = made->block;
	p.pest = made->pest;
	memcpy(p.label, r->trap, sizeof p.label);
	if (made->lure)
		p.lure = made->lure;
	if (made->card)
		p.card = made->card;
	if (r->place)
		p.place = (enum place)r->place;
	if (!isnan(r->lat)) {
		p.has_position = true;
		p.lat = r->lat;
		p.lon = r->lon;
	}
	if (r->order)
		p.order = r->order;
	return p;
}

/* The same position as far as a file can tell. */
static bool same_degree(double a, double b)
{
	char one[VALUE_BYTES], two[VALUE_BYTES];
	const struct column *c = NULL;

	return strcmp(value_degree.write(c, &a, one), value_degree.write(c, &b, two)) ==
	       0;
}

static bool same_trap(const struct trap *a, const struct trap *b)
{
	bool same_spot = a->has_position == b->has_position &&
			 (!a->has_position || (same_degree(a->lat, b->lat) &&
						      same_degree(a->lon, b->lon)));

	return same_spot && a->block == b->block && a->pest == b->pest &&
	       a->lure == b->lure && a->card == b->card && a->place == b->place &&
	       a->order == b->order;
}

/* The trap's place in the state: found, or added when new. */
static struct trap_in *find_trap(struct trap_state *s, int64_t farm, const char *label)
{
	int64_t i = names_find(&s->traps, farm, label);

	if (i >= 0)
		return &s->trap[i];
	s->trap = mem_grow(s->trap, &s->cap_traps, s->n_traps + 1, sizeof *s->trap);
	s->trap[s->n_traps] = (struct trap_in){ .hung = DAY_NONE, .pulled = DAY_NONE };
	names_add(&s->traps, farm, label, (int64_t)s->n_traps);
	return &s->trap[s->n_traps++];
}

static bool put_trap(struct taking *t, const struct trap_row *r,
	const struct trap *made, struct err *e)
{
	struct trap_state *s = t->state;
	struct trap_in *in = find_trap(s, made->farm, r->trap);
	bool is_new = in->trap.id == 0;

	if (in->line)
		return taking_bad(t, "trap",
			_("is in the file twice, in line %lld too; a farm has it once"),
			(long long)in->line);
	in->line = t->csv.line;
	struct trap p = trap_after(r, &in->trap, made);
	bool same = !is_new && same_trap(&p, &in->trap);
	if (!same && !book_put_trap(t->book, &p, e))
		return false;
	if (!same)
		in->trap = p;
	if (!traps_diary(t, r, in, e))
		return false;
	bool added = in->hung != DAY_NONE || in->pulled != DAY_NONE;
	if (!in->trap.lure && s->no_lure++ == 0)
		s->no_lure_line = t->csv.line;
	taking_count(t, is_new ? TOOK_NEW : same && !added ? TOOK_SAME : TOOK_CHANGED);
	return true;
}

static void traps_look(struct taking *t, const void *row)
{
	const struct trap_row *r = row;
	struct trap_state *s = t->state;
	int64_t pest, id;

	taking_find(t, &s->pests, "pest", r->pest, &pest);
	taking_find_lure(t, &s->lure_kinds, pest, r->lure, &id);
	taking_find(t, &s->cards, "card", r->card, &id);
}

static bool traps_take(struct taking *t, const void *row, struct err *e)
{
	const struct trap_row *r = row;
	struct trap made = { 0 };
	bool good = check_row(t, r, &made);
	const struct block_in *in = traps_block(t, r, e);

	if (!in && e->kind != ERR_NONE)
		return false;
	if (!in || !good)
		return true;
	made.farm = in->block.farm;
	made.block = in->block.id;
	return put_trap(t, r, &made, e);
}

static void tell(struct taking *t)
{
	struct trap_state *s = t->state;
	struct buf note = { 0 };

	if (s->new_farms || s->new_blocks) {
		buf_addf(&note, _("new farms: %d; new blocks: %d"), s->new_farms,
			s->new_blocks);
		sentences_add(&t->out->notes, note.text);
		buf_clear(&note);
	}
	if (s->no_lure == 1)
		buf_addf(&note,
			_("1 trap without a lure kind (line %lld): when its "
			  "lure is due is not known"),
			(long long)s->no_lure_line);
	else if (s->no_lure)
		buf_addf(&note,
			_("%d traps without a lure kind (the first in line %lld): when "
			  "their lures are due is not known"),
			s->no_lure, (long long)s->no_lure_line);
	if (s->no_lure)
		sentences_add(&t->out->notes, note.text);
	buf_free(&note);
}

static bool traps_finish(struct taking *t, struct err *e)
{
	if (!traps_blocks_finish(t, e) || !traps_diary_finish(t, e))
		return false;
	tell(t);
	return true;
}

const struct kind kind_traps = {
	.name = "traps",
	.help = N_("traps with their farms and blocks"),
	.columns = columns,
	.n_columns = sizeof columns / sizeof *columns,
	.row_bytes = sizeof(struct trap_row),
	.begin = traps_begin,
	.take = traps_take,
	.look = traps_look,
	.finish = traps_finish,
	.end = traps_end,
	.give = traps_give,
};
