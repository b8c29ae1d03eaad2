/* entry_acts_decided.c - dispensers and answers as rows. */
#include "base/day.h"
#include "base/text.h"
#include "base/words.h"
#include "entry_acts_parts.h"

#define AT(field) .at = offsetof(struct dispenser_row, field)

const struct column dispenser_columns[DISPENSER_COLUMNS] = {
	FARM_COLUMN,
	BLOCK_COLUMN,
	{ NAME_COLUMN("pest", pest, CODE_BYTES,
		  N_("Code of the pest that they disrupt; empty: all.")),
		.label = N_("pest"), .pick = PICK_PEST, .list_cols = 5 },
	{ .name = "up",
		AT(up),
		.type = &value_day,
		.needed = true,
		.help = N_("The day they were put up, not after today."),
		.label = N_("put up on"),
		.list_cols = 10 },
	{ .name = "down",
		AT(down),
		.type = &value_day,
		.none = DAY_NONE,
		.help = N_(
			"The last day on which they work; may lie after today; empty: "
			"they are up."),
		.label = N_("up until"),
		.list_cols = 10 },
	{ .name = "per_ha",
		AT(per_ha_x100),
		.type = &value_x100,
		.lo = 1,
		.hi = PER_HA_X100_MAX,
		.none = -1,
		.help = N_("How many to the hectare; empty: not entered."),
		.label = N_("per hectare") },
	{ NAME_COLUMN("type", type, NAME_BYTES,
		  N_("What they are, in general words: hand-tied, aerosol.")),
		.label = N_("type"), .list_cols = 16 },
	NOTE_COLUMN,
};

struct dispenser_row dispenser_row_of(const struct known *k, const struct disruption *d)
{
	struct dispenser_row r = {
		.up = d->up, .down = d->down, .per_ha_x100 = d->per_ha_x100
	};

	act_names(k, d->block, r.farm, r.block);
	text_copy(r.pest, sizeof r.pest, known_pest(k, d->pest));
	text_copy(r.type, sizeof r.type, d->type);
	text_copy(r.note, sizeof r.note, d->note);
	return r;
}

bool dispenser_over(struct hearing *h, const struct known *k,
	const struct dispenser_row *r, struct disruption *out)
{
	char up[DAY_ISO_SIZE];

	if (!act_place(h, k, r->farm, r->block, &out->block) ||
		!act_pest(h, k, r->pest, &out->pest) ||
		!act_done_by_today(h, "up", r->up))
		return false;
	out->up = r->up;
	if (row_has(h, "down"))
		out->down = r->down;
	if (row_has(h, "per_ha"))
		out->per_ha_x100 = r->per_ha_x100;
	if (row_has(h, "type"))
		text_copy(out->type, sizeof out->type, r->type);
	if (row_has(h, "note"))
		text_copy(out->note, sizeof out->note, r->note);
	if (out->down == DAY_NONE || out->down >= out->up)
		return true;
	day_iso(out->up, up);
	return row_bad(h, "down", _("lies before they were put up, %s"), up);
}

#undef AT
#define AT(field) .at = offsetof(struct answer_row, field)

static const char *word_of_decision(int i)
{
	return decision_word((enum decision)i);
}

const struct column answer_columns[ANSWER_COLUMNS] = {
	FARM_COLUMN,
	BLOCK_COLUMN,
	{ NAME_COLUMN("pest", pest, CODE_BYTES,
		  N_("Code of the pest; the book must have it.")),
		.needed = true, .form_help = N_("The pest of the alert."),
		.label = N_("pest"), .pick = PICK_PEST, .list_cols = 5 },
	{ NAME_COLUMN("trap", trap, NAME_BYTES,
		  N_("Trap that was over its threshold; empty: the block was.")),
		.label = N_("trap"), .list_cols = 6 },
	{ .name = "date",
		AT(day),
		.type = &value_day,
		.needed = true,
		.help = N_("The day of the alert, not after today."),
		.label = N_("alert of"),
		.list_cols = 10 },
	{ .name = "decided",
		AT(decided),
		.type = &value_day,
		.none = DAY_NONE,
		.help = N_(
			"The day on which it was decided, not after today; empty: that "
			"of the alert."),
		.label = N_("decided on") },
	{ .name = "decision",
		AT(decision),
		.type = &value_word,
		.hi = DECISION_COUNT - 1,
		.none = -1,
		.needed = true,
		.word = word_of_decision,
		.help = N_("What was decided."),
		.label = N_("decision"),
		.pick = PICK_WORD,
		.list_cols = 8 },
	NOTE_COLUMN,
};

struct answer_row answer_row_of(const struct known *k, const struct answer *a)
{
	struct answer_row r = {
		.day = a->day, .decided = a->on, .decision = (int)a->decision
	};
	const struct trap *t = known_trap(k, a->trap);

	act_names(k, a->block, r.farm, r.block);
	text_copy(r.pest, sizeof r.pest, known_pest(k, a->pest));
	text_copy(r.trap, sizeof r.trap, t ? t->label : "");
	text_copy(r.note, sizeof r.note, a->note);
	return r;
}

static bool find_trap(struct hearing *h, const struct known *k,
	const struct answer_row *r, struct answer *out)
{
	if (!row_has(h, "trap"))
		return true;
	out->trap =
		*r->trap ? known_find_trap(k, known_find_farm(k, r->farm), r->trap) : 0;
	const struct trap *t = known_trap(k, out->trap);
	if (*r->trap && (!t || t->pest != out->pest))
		return row_bad(h, "trap", _("is no %s trap of %s"), r->pest, r->farm);
	return true;
}

bool answer_over(struct hearing *h, const struct known *k, const struct answer_row *r,
	struct answer *out)
{
	char day[DAY_ISO_SIZE];

	if (!act_place(h, k, r->farm, r->block, &out->block) ||
		!act_pest(h, k, r->pest, &out->pest) || !find_trap(h, k, r, out) ||
		!act_done_by_today(h, "date", r->day) ||
		!act_done_by_today(h, "decided", r->decided))
		return false;
	out->day = r->day;
	if (row_has(h, "decided") || out->on == DAY_NONE)
		out->on = r->decided == DAY_NONE ? r->day : r->decided;
	out->decision = (enum decision)r->decision;
	if (row_has(h, "note"))
		text_copy(out->note, sizeof out->note, r->note);
	if (out->on >= out->day)
		return true;
	day_iso(out->day, day);
	return row_bad(h, "decided", _("lies before the alert, %s"), day);
}
