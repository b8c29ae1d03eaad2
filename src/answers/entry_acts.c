/* entry_acts.c - picks and fruit checks as rows. */
#include "base/day.h"
#include "base/text.h"
#include "base/words.h"
#include "entry_acts_parts.h"

bool act_place(struct hearing *h, const struct known *k, const char *farm,
	const char *block, int64_t *id)
{
	int64_t of = 0;

	*id = 0;
	return row_find_farm(h, k, farm, &of) && row_find_block(h, k, of, block, id);
}

bool act_pest(struct hearing *h, const struct known *k, const char *code, int64_t *pest)
{
	return !row_has(h, "pest") || row_find_pest(h, k, code, pest);
}

void act_names(const struct known *k, int64_t block, char *farm, char *name)
{
	const struct block *b = known_block(k, block);

	text_copy(farm, NAME_BYTES, b ? known_farm(k, b->farm) : "");
	text_copy(name, NAME_BYTES, b ? b->name : "");
}

bool act_done_by_today(struct hearing *h, const char *column, int32_t day)
{
	char today[DAY_ISO_SIZE];

	if (day == DAY_NONE || day <= h->today)
		return true;
	day_iso(h->today, today);
	return row_bad(h, column, _("lies after today, %s"), today);
}

#define AT(field) .at = offsetof(struct pick_entry_row, field)

const struct column pick_columns[PICK_COLUMNS] = {
	FARM_COLUMN,
	BLOCK_COLUMN,
	{ .name = "date",
		AT(day),
		.type = &value_day,
		.needed = true,
		.help = N_("The day of the pick."),
		.label = N_("date"),
		.list_cols = 10 },
	{ .name = "done",
		AT(done),
		.type = &value_word,
		.hi = 1,
		.none = -1,
		.word = column_yes_no,
		.help = N_("Whether it was picked, not after today; empty: no, it is "
			   "planned."),
		.label = N_("done"),
		.pick = PICK_WORD,
		.list_cols = 4 },
	NOTE_COLUMN,
};

struct pick_entry_row pick_entry_row_of(const struct known *k, const struct pick *p)
{
	struct pick_entry_row r = { .day = p->day, .done = p->is_done };

	act_names(k, p->block, r.farm, r.block);
	text_copy(r.note, sizeof r.note, p->note);
	return r;
}

bool pick_over(struct hearing *h, const struct known *k, const struct pick_entry_row *r,
	struct pick *out)
{
	if (!act_place(h, k, r->farm, r->block, &out->block))
		return false;
	out->day = r->day;
	if (row_has(h, "done"))
		out->is_done = r->done == 1;
	if (row_has(h, "note"))
		text_copy(out->note, sizeof out->note, r->note);
	return !out->is_done || act_done_by_today(h, "date", r->day);
}

#undef AT
#define AT(field) .at = offsetof(struct fruit_check_row, field)

static const char *part_word(int i)
{
	return fruit_part_word((enum fruit_part)i);
}

static const char *tree_word(int i)
{
	return tree_part_word((enum tree_part)i);
}

const struct column fruit_check_columns[FRUIT_CHECK_COLUMNS] = {
	FARM_COLUMN,
	BLOCK_COLUMN,
	{ NAME_COLUMN("pest", pest, CODE_BYTES,
		  N_("Code of the pest that did it; empty: not told apart.")),
		.label = N_("pest"), .pick = PICK_PEST, .list_cols = 5 },
	{ .name = "date",
		AT(day),
		.type = &value_day,
		.needed = true,
		.help = N_("The day of the check, not after today."),
		.label = N_("date"),
		.list_cols = 10 },
	{ .name = "part",
		AT(part),
		.type = &value_word,
		.hi = PART_COUNT - 1,
		.none = -1,
		.word = part_word,
		.help = N_("What was looked at; empty: fruit."),
		.label = N_("part"),
		.pick = PICK_WORD },
	{ .name = "tree",
		AT(tree),
		.type = &value_word,
		.lo = TREE_TOP,
		.hi = TREE_COUNT - 1,
		.none = TREE_ANY,
		.word = tree_word,
		.help = N_("Where in the tree; empty: all over it."),
		.label = N_("where in the tree"),
		.pick = PICK_WORD },
	{ .name = "looked_at",
		AT(looked_at),
		.type = &value_int,
		.lo = 1,
		.hi = LOOKED_AT_MAX,
		.none = -1,
		.needed = true,
		.help = N_("How many were looked at."),
		.label = N_("looked at"),
		.list_cols = 9 },
	{ .name = "stung",
		AT(stung),
		.type = &value_int,
		.hi = LOOKED_AT_MAX,
		.none = -1,
		.help = N_("How many have a shallow sting and no more; empty: not told "
			   "apart, never 0."),
		.label = N_("stung") },
	{ .name = "entered",
		AT(entered),
		.type = &value_int,
		.hi = LOOKED_AT_MAX,
		.none = -1,
		.needed = true,
		.help = N_(
			"How many were entered (shoots: struck); where stings are not "
			"told apart, all that are hurt."),
		.label = N_("entered"),
		.list_cols = 7 },
	NOTE_COLUMN,
};

struct fruit_check_row fruit_check_row_of(
	const struct known *k, const struct fruit_check *c)
{
	struct fruit_check_row r = { .day = c->day,
		.part = (int)c->part,
		.tree = (int)c->where,
		.looked_at = c->looked_at,
		.stung = c->stung,
		.entered = c->entered };

	act_names(k, c->block, r.farm, r.block);
	text_copy(r.pest, sizeof r.pest, known_pest(k, c->pest));
	text_copy(r.note, sizeof r.note, c->note);
	return r;
}

bool fruit_check_over(struct hearing *h, const struct known *k,
	const struct fruit_check_row *r, struct fruit_check *out)
{
	if (!act_place(h, k, r->farm, r->block, &out->block) ||
		!act_pest(h, k, r->pest, &out->pest) ||
		!act_done_by_today(h, "date", r->day))
		return false;
	out->day = r->day;
	if (row_has(h, "part"))
		out->part = r->part < 0 ? PART_FRUIT : (enum fruit_part)r->part;
	if (row_has(h, "tree"))
		out->where = (enum tree_part)r->tree;
	out->looked_at = r->looked_at;
	out->entered = r->entered;
	if (row_has(h, "stung"))
		out->stung = r->stung;
	if (row_has(h, "note"))
		text_copy(out->note, sizeof out->note, r->note);
	int32_t hurt = out->entered + (out->stung < 0 ? 0 : out->stung);
	return hurt <= out->looked_at ||
	       row_bad(h, "entered",
		       _("makes %d stung or entered, but only %d were looked at; one "
			 "that is both counts as entered"),
		       (int)hurt, (int)out->looked_at);
}
