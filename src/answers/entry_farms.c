/* entry_farms.c - farms and blocks as rows. */
#include "answers/entry_rows.h"
#include "base/text.h"
#include "base/words.h"
#include "book/weather.h"
#include "entry_parts.h"

#include <string.h>

static const char *weekday(int i)
{
	static const char *const words[] = { "", "Mon", "Tue", "Wed", "Thu", "Fri",
		"Sat", "Sun" };

	return words[i];
}

#define AT(field) .at = offsetof(struct farm_row, field)

const struct column farm_columns[FARM_COLUMNS] = {
	{ .name = "farm",
		AT(farm),
		.type = &value_text,
		.hi = NAME_BYTES,
		.needed = true,
		.help = N_("Name of the farm; a new one is made."),
		.form_help = N_("Name of the farm."),
		.label = N_("name"),
		.list_cols = 24 },
	{ .name = "season_start",
		AT(season_start),
		.type = &value_md,
		.help = N_("Day of the year that its season begins on; empty: "
			   "01-01."),
		.label = N_("season begins"),
		.list_cols = 13 },
	{ .name = "run_weekday",
		AT(run_weekday),
		.type = &value_word,
		.lo = 1,
		.hi = 7,
		.word = weekday,
		.help = N_("Day of the week of its runs; empty: a week after the last "
			   "one."),
		.label = N_("run on"),
		.pick = PICK_WORD,
		.list_cols = 6 },
	{ .name = "station",
		AT(station),
		.type = &value_text,
		.hi = NAME_BYTES,
		.help = N_("Weather station that it goes by, a new one is made; empty: "
			   "the only one there is."),
		.form_help = N_("Weather station that it goes by; empty: the only one "
				"there is."),
		.label = N_("weather of"),
		.pick = PICK_STATION,
		.list_cols = 16 },
	RETIRED_COLUMN,
};

struct farm_row farm_row_of(const struct known *k, const struct farm *f)
{
	struct farm_row r = { .season_start = f->season_start,
		.run_weekday = f->run_weekday,
		.retired = f->retired };

	text_copy(r.farm, sizeof r.farm, f->name);
	text_copy(r.station, sizeof r.station, known_station(k, f->station));
	return r;
}

void farm_over(const struct hearing *h, const struct farm_row *r, struct farm *f)
{
	memcpy(f->name, r->farm, sizeof f->name);
	if (row_has(h, "season_start") || f->season_start == 0)
		f->season_start = r->season_start ? r->season_start : CALENDAR_YEAR;
	if (row_has(h, "run_weekday"))
		f->run_weekday = r->run_weekday;
	if (row_has(h, "retired"))
		f->retired = r->retired == 1;
}

static int season_of(int32_t day, int start)
{
	return day_to_ymd(day_season_start(day, start)).year;
}

/* Puts a date under the season that it is of now; one that is there stays. */
static bool move_biofix(struct hearing *h, struct book *b, const struct farm *f,
	struct biofix_date *d, struct err *e)
{
	struct biofix_date moved = *d;
	struct err why = { 0 };
	char iso[DAY_ISO_SIZE];

	moved.season = season_of(d->day, f->season_start);
	if (book_put_biofix(b, &moved, &why)) {
		*d = moved;
		return true;
	}
	if (why.kind == ERR_BOOK)
		return err_set(e, ERR_BOOK, "%s", why.text);
	day_iso(d->day, iso);
	row_warn(h, "season_start",
		_("%s: the biofix of %s stays under the season of %d, since that of %d "
		  "has one already"),
		f->name, iso, d->season, moved.season);
	return true;
}

/* Those that go to an earlier year are taken from the first on, the others from the
 * last on, so that none meets one that is yet to go. */
bool farm_move_biofixes(struct hearing *h, struct book *b, struct biofix_dates *all,
	const struct farm *f, int old_start, struct err *e)
{
	bool earlier = f->season_start > old_start, ok = true;

	for (size_t k = 0; ok && k < all->n; k++) {
		struct biofix_date *d = &all->items[earlier ? k : all->n - 1 - k];
		if (d->farm == f->id && d->season == season_of(d->day, old_start) &&
			d->season != season_of(d->day, f->season_start))
			ok = move_biofix(h, b, f, d, e);
	}
	return ok;
}

#undef AT
#define AT(field) .at = offsetof(struct block_row, field)
#define NAME .type = &value_text, .hi = NAME_BYTES

enum { AREA_MAX_X100 = 100000000 };

const struct column block_columns[BLOCK_COLUMNS] = {
	{ .name = "farm",
		AT(farm),
		NAME,
		.needed = true,
		.help = N_("Farm of the block; one that is not in the book is made."),
		.form_help = N_("Farm of the block, one of those in the book."),
		.label = N_("farm"),
		.pick = PICK_FARM,
		.list_cols = 16 },
	{ .name = "block",
		AT(block),
		NAME,
		.needed = true,
		.help = N_("Name of the block, once on a farm."),
		.label = N_("name"),
		.list_cols = 20 },
	{ .name = "crop",
		AT(crop),
		NAME,
		.shipped = true,
		.help = N_("What grows in it; thresholds go by it."),
		.label = N_("crop"),
		.pick = PICK_CROP,
		.list_cols = 10 },
	{ .name = "variety",
		AT(variety),
		NAME,
		.help = N_("Which variety."),
		.label = N_("variety"),
		.list_cols = 12 },
	{ .name = "condition",
		AT(condition),
		.type = &value_word,
		.lo = 1,
		.hi = CONDITION_COUNT - 1,
		.word = column_condition,
		.help = N_("Whether its mating is disrupted."),
		.label = N_("condition"),
		.pick = PICK_WORD,
		.list_cols = 12 },
	{ .name = "area_ha",
		AT(area_x100),
		.type = &value_area,
		.hi = AREA_MAX_X100,
		.none = -1,
		.help = N_("Its area; in a file in hectares."),
		.form_help = N_("Its area with the unit: 5 ha, 12.5 acres."),
		.label = N_("area"),
		.list_cols = 12 },
	RETIRED_COLUMN,
};

struct block_row block_row_of(const struct known *k, const struct block *b)
{
	struct block_row r = { .condition = (int)b->condition,
		.area_x100 = b->area_x100,
		.retired = b->retired };

	text_copy(r.farm, sizeof r.farm, known_farm(k, b->farm));
	text_copy(r.block, sizeof r.block, b->name);
	text_copy(r.crop, sizeof r.crop, b->crop);
	text_copy(r.variety, sizeof r.variety, b->variety);
	return r;
}

void block_over(const struct hearing *h, const struct block_row *r, struct block *b)
{
	memcpy(b->name, r->block, sizeof b->name);
	if (row_has(h, "crop"))
		memcpy(b->crop, r->crop, sizeof b->crop);
	if (row_has(h, "variety"))
		memcpy(b->variety, r->variety, sizeof b->variety);
	if (row_has(h, "condition"))
		b->condition = (enum condition)r->condition;
	if (row_has(h, "area_ha"))
		b->area_x100 = r->area_x100;
	if (row_has(h, "retired"))
		b->retired = r->retired == 1;
}
