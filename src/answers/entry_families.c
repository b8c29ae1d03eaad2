/* entry_families.c - the families of records, and what each can do. */
#include "entry_family.h"

#include "answers/entry_forms.h"
#include "answers/entry_sources.h"
#include "base/text.h"
#include "base/words.h"
#include "book/sources.h"

#include <stdlib.h>
#include <string.h>

#define COLUMNS(table) .columns = table, .n_columns = sizeof table / sizeof *table

const struct entry_family entry_families[ENTRY_KINDS] = {
	[ENTRY_FARMS] = { N_("farms"), N_("farm"),
		N_("Farms, their season and the day of their run."),
		COLUMNS(farm_columns), .can_add = true, .can_retire = true },
	[ENTRY_BLOCKS] = { N_("blocks"), N_("block"),
		N_("What grows where, and what is disrupted."), COLUMNS(block_columns),
		.can_add = true, .can_retire = true },
	[ENTRY_TRAPS] = { N_("traps"), N_("trap"),
		N_("Traps in their turn: hung, moved, replaced."),
		COLUMNS(trap_columns), .can_add = true, .can_move = true },
	[ENTRY_PESTS] = { N_("pests"), N_("pest"),
		N_("Pests, and how their degree-days are summed."),
		COLUMNS(pest_columns), .can_add = true, .can_retire = true },
	[ENTRY_LURES] = { N_("lures"), N_("lure"),
		N_("Lure kinds: how long they last, how many left."),
		COLUMNS(lure_columns), .can_add = true, .can_retire = true },
	[ENTRY_CARDS] = { N_("cards"), N_("card"),
		N_("Card kinds: how much they hold, how many left."),
		COLUMNS(card_columns), .can_add = true, .can_retire = true },
	[ENTRY_THRESHOLDS] = { N_("thresholds"), N_("threshold"),
		N_("The thresholds that catches are compared with."),
		COLUMNS(threshold_columns), .can_add = true },
	[ENTRY_STATIONS] = { N_("stations"), N_("station"),
		N_("Weather stations that farms go by."), COLUMNS(station_columns),
		.can_add = true },
	[ENTRY_SOURCES] = { N_("sources"), N_("source"),
		N_("What moths may come from: wild hosts, bins."),
		COLUMNS(source_columns), .can_add = true },
	[ENTRY_TREATMENTS] = { N_("treatments"), N_("treatment"),
		N_("What was applied, and how long it bars entry."),
		COLUMNS(treatment_columns), .can_add = true, .is_act = true },
	[ENTRY_PICKS] = { N_("picks"), N_("pick"),
		N_("When a block is to be picked, and when it was."),
		COLUMNS(pick_columns), .can_add = true, .is_act = true },
	[ENTRY_CHECKS] = { N_("fruit checks"), N_("fruit check"),
		N_("Fruit looked at, and how many were hurt."),
		COLUMNS(fruit_check_columns), .can_add = true },
	[ENTRY_DISPENSERS] = { N_("dispensers"), N_("dispensers of a block"),
		N_("Since when a block is disrupted, until when."),
		COLUMNS(dispenser_columns), .can_add = true, .is_act = true },
	[ENTRY_SETTINGS] = { N_("settings"), N_("setting"),
		N_("The scout, units, dates, and limits."), COLUMNS(setting_columns) },
};

const struct family_ops *const family_ops[ENTRY_KINDS] = {
	[ENTRY_FARMS] = &farms_ops,
	[ENTRY_BLOCKS] = &blocks_ops,
	[ENTRY_TRAPS] = &traps_ops,
	[ENTRY_PESTS] = &pests_ops,
	[ENTRY_LURES] = &lures_ops,
	[ENTRY_CARDS] = &cards_ops,
	[ENTRY_THRESHOLDS] = &thresholds_ops,
	[ENTRY_STATIONS] = &stations_ops,
	[ENTRY_SOURCES] = &sources_ops,
	[ENTRY_TREATMENTS] = &treatments_ops,
	[ENTRY_PICKS] = &picks_ops,
	[ENTRY_CHECKS] = &checks_ops,
	[ENTRY_DISPENSERS] = &dispensers_ops,
	[ENTRY_SETTINGS] = &settings_ops,
};

bool shelves_read(struct shelves *s, struct book *b, enum entry_kind kind,
	const struct log *l, struct err *e)
{
	s->log = l;
	return known_read_all(&s->known, b, e) &&
	       (kind != ENTRY_SOURCES || book_sources(b, 0, &s->sources, e)) &&
	       (kind != ENTRY_SETTINGS || settings_read(&s->settings, b, e)) &&
	       shelves_read_acts(s, b, kind, e);
}

void shelves_free(struct shelves *s)
{
	known_free(&s->known);
	free(s->sources.items);
	free(s->treatments.items);
	free(s->picks.items);
	free(s->checks.items);
	free(s->dispensers.items);
	*s = (struct shelves){ 0 };
}

size_t family_find(enum entry_kind kind, const struct shelves *s, int64_t id)
{
	const struct family_ops *o = family_ops[kind];

	for (size_t i = 0; i < o->count(s); i++)
		if (o->id(s, i) == id)
			return i;
	return SIZE_MAX;
}

const struct farm *shelves_farm(const struct shelves *s, const struct entry_ask *ask)
{
	const struct farms *all = &s->known.farms;
	const struct farm *only = NULL;
	int n = 0;

	for (size_t i = 0; i < all->n; i++) {
		if (ask->farm && all->items[i].id == ask->farm)
			return &all->items[i];
		if (!all->items[i].retired) {
			only = &all->items[i];
			n++;
		}
	}
	return n == 1 && !ask->farm ? only : NULL;
}

bool putting_touched(const struct putting *p, const char *column)
{
	for (size_t i = 0; i < p->family->n_columns; i++)
		if (strcmp(p->family->columns[i].name, column) == 0)
			return p->touched[i];
	return false;
}

void row_clear(const struct entry_family *f, void *row)
{
	for (size_t i = 0; i < f->n_columns; i++)
		f->columns[i].type->clear(
			&f->columns[i], (char *)row + f->columns[i].at);
}
