/* entry_thresholds.c - thresholds as rows. */
#include "answers/entry_rules.h"
#include "base/text.h"
#include "base/words.h"

enum { FLIGHT_MAX = 9, UNTIL_MAX = 99999, VALUE_MAX_X100 = 99999999 };

#define AT(field) .at = offsetof(struct threshold_row, field)
#define NAME .type = &value_text, .hi = NAME_BYTES

static const char *word_of_measure(int i)
{
	return measure_word((enum measure)i);
}

static const char *word_of_comparator(int i)
{
	return comparator_word((enum comparator)i);
}

const struct column threshold_columns[THRESHOLD_COLUMNS] = {
	{ .name = "pest",
		AT(pest),
		.type = &value_text,
		.hi = CODE_BYTES,
		.needed = true,
		.help = N_("Code of the pest; the book must have it."),
		.form_help = N_("The pest that it is for."),
		.label = N_("pest"),
		.pick = PICK_PEST,
		.list_cols = 6 },
	{ .name = "crop",
		AT(crop),
		NAME,
		.shipped = true,
		.help = N_(
			"Only for blocks of this crop; this and the next ones: empty "
			"holds for all."),
		.label = N_("crop"),
		.pick = PICK_CROP,
		.list_cols = 10 },
	{ .name = "condition",
		AT(condition),
		.type = &value_word,
		.lo = 1,
		.hi = CONDITION_COUNT - 1,
		.word = column_condition,
		.help = N_("Only for such blocks."),
		.label = N_("condition"),
		.pick = PICK_WORD,
		.list_cols = 12 },
	{ .name = "lure",
		AT(lure),
		NAME,
		.shipped = true,
		.help = N_("Only for traps with this lure kind."),
		.label = N_("lure"),
		.pick = PICK_LURE },
	{ .name = "place",
		AT(place),
		.type = &value_word,
		.lo = 1,
		.hi = PLACE_COUNT - 1,
		.word = column_place,
		.help = N_("Only for traps hanging there."),
		.label = N_("place"),
		.pick = PICK_WORD },
	{ .name = "farm",
		AT(farm),
		NAME,
		.help = N_("Only for this farm."),
		.label = N_("farm"),
		.pick = PICK_FARM },
	{ .name = "block",
		AT(block),
		NAME,
		.help = N_("Only for this block of the farm."),
		.label = N_("block"),
		.pick = PICK_BLOCK },
	{ .name = "flight",
		AT(flight),
		.type = &value_int,
		.lo = 1,
		.hi = FLIGHT_MAX,
		.help = N_("Only in this flight of the season."),
		.label = N_("flight") },
	{ .name = "from",
		AT(from),
		.type = &value_md,
		.help = N_("Only from this day of the year on, as month-day."),
		.label = N_("from") },
	{ .name = "to",
		AT(to),
		.type = &value_md,
		.help = N_("Only up to this day; may lie in the next year."),
		.label = N_("to") },
	{ .name = "until_dd",
		AT(until_dd),
		.type = &value_int,
		.lo = 1,
		.hi = UNTIL_MAX,
		.help = N_("Only until so many degree-days after biofix."),
		.label = N_("until degree-days") },
	{ .name = "measure",
		AT(measure),
		.type = &value_word,
		.hi = MEASURE_COUNT - 1,
		.none = -1,
		.needed = true,
		.word = word_of_measure,
		.help = N_(
			"What is compared; none: these traps time the work and never "
			"decide it."),
		.label = N_("measure"),
		.pick = PICK_WORD,
		.list_cols = 11 },
	{ .name = "span",
		AT(span),
		.type = &value_span,
		.lo = 1,
		.hi = NIGHTS_MAX,
		.help = N_("Weeks running, nights, or since what; empty: one week."),
		.label = N_("span"),
		.list_cols = 9 },
	{ .name = "comparator",
		AT(comparator),
		.type = &value_word,
		.hi = COMPARATOR_COUNT - 1,
		.none = -1,
		.word = word_of_comparator,
		.help = N_("Whether the value itself is over (>=) or not (>)."),
		.label = N_("over when"),
		.pick = PICK_WORD },
	{ .name = "value",
		AT(value_x100),
		.type = &value_x100,
		.hi = VALUE_MAX_X100,
		.none = -1,
		.help = N_("The threshold, in moths."),
		.label = N_("value"),
		.list_cols = 8 },
	{ .name = "note",
		AT(note),
		.type = &value_text,
		.hi = NOTE_BYTES,
		.shipped = true,
		.help = N_("Anything else, in one line."),
		.label = N_("note") },
	{ .name = "source",
		AT(source),
		.type = &value_text,
		.hi = SOURCE_BYTES,
		.shipped = true,
		.help = N_("Who says so, and where."),
		.label = N_("source") },
};

struct threshold_row threshold_row_of(const struct known *k, const struct rule *r)
{
	const struct block *block = known_block(k, r->block);
	bool decides = r->measure != MEASURE_NONE;
	struct threshold_row row = {
		.condition = (int)r->condition,
		.place = (int)r->place,
		.flight = r->flight,
		.from = r->from,
		.to = r->to,
		.until_dd = r->until_dd,
		.measure = (int)r->measure,
		.comparator = decides ? (int)r->comparator : -1,
		.value_x100 = decides ? r->value_x100 : -1,
	};

	if (decides)
		row.span = (struct span){ (int)r->span_kind, r->span };
	text_copy(row.pest, sizeof row.pest, known_pest(k, r->pest));
	text_copy(row.crop, sizeof row.crop, r->crop);
	text_copy(row.lure, sizeof row.lure, known_lure(k, r->lure));
	text_copy(row.farm, sizeof row.farm,
		known_farm(k, r->farm || !block ? r->farm : block->farm));
	text_copy(row.block, sizeof row.block, block ? block->name : "");
	text_copy(row.note, sizeof row.note, r->note);
	text_copy(row.source, sizeof row.source, r->source);
	return row;
}
