/* deeds_changes.h - what changes a book. */
#ifndef TESTS_BOOK_DEEDS_CHANGES_H
#define TESTS_BOOK_DEEDS_CHANGES_H

#include "deeds.h"

static bool put_farm(struct desk *d, struct err *e)
{
	struct farm f = { .name = "Drumsorrel", .season_start = 701, .station = FIRST };

	return book_put_farm(d->book, &f, e);
}

static bool put_block(struct desk *d, struct err *e)
{
	struct block b = {
		.id = d->block, .farm = d->farm, .name = "Weir rows", .area_x100 = 90
	};

	return book_put_block(d->book, &b, e);
}

static bool put_trap(struct desk *d, struct err *e)
{
	struct trap t = { .farm = d->farm,
		.block = d->block,
		.pest = d->pest,
		.lure = d->lure,
		.card = d->card,
		.label = "3" };

	return book_put_trap(d->book, &t, e);
}

static bool move_trap(struct desk *d, struct err *e)
{
	struct trap t = { .id = d->trap,
		.farm = d->farm,
		.block = d->block,
		.pest = d->pest,
		.label = "1 b",
		.order = 9 };

	return book_put_trap(d->book, &t, e);
}

static bool put_pest(struct desk *d, struct err *e)
{
	struct pest p = { .id = d->pest, .code = "T3", .name = "third moth" };

	return book_put_pest(d->book, &p, e);
}

static bool put_lure(struct desk *d, struct err *e)
{
	struct lure_kind k = { .name = "T3", .life_days = 14 };

	k.stock = (struct stock){ 12, DEED_DAY, 3 };
	return book_put_lure(d->book, &k, e);
}

static bool put_card(struct desk *d, struct err *e)
{
	struct card_kind k = { .name = "glue",
		.life_days = 14,
		.stir_at = 9,
		.change_at = 9,
		.floor_at = 9 };

	return book_put_card(d->book, &k, e);
}

static bool put_rule(struct desk *d, struct err *e)
{
	struct rule r = { .id = FIRST,
		.pest = d->pest,
		.block = d->block,
		.lure = d->lure,
		.measure = MEASURE_TRAP_WEEK,
		.span = 2 };

	return book_put_rule(d->book, &r, e);
}

static bool put_source(struct desk *d, struct err *e)
{
	struct source s = { .farm = d->farm, .name = "Old rows" };

	return book_put_source(d->book, &s, e);
}

static bool put_station(struct desk *d, struct err *e)
{
	struct station s = { .id = FIRST, .name = "Ford" };

	return book_put_station(d->book, &s, e);
}

static bool put_biofix(struct desk *d, struct err *e)
{
	struct biofix_date b = {
		.farm = d->farm, .pest = d->pest, .season = 2024, .day = DEED_DAY + 1
	};

	return book_put_biofix(d->book, &b, e);
}

static bool put_setting(struct desk *d, struct err *e)
{
	return book_put_setting(d->book, "join_nights", "4", e);
}

static bool put_treatment(struct desk *d, struct err *e)
{
	struct treatment t = deed_treatment(d);

	t.id = FIRST;
	t.rei_hours = 12;
	return book_put_treatment(d->book, &t, e);
}

static bool put_pick(struct desk *d, struct err *e)
{
	struct pick p = { .block = d->block, .day = DEED_DAY + 50 };

	return book_put_pick(d->book, &p, e);
}

static bool put_check(struct desk *d, struct err *e)
{
	struct fruit_check c = fruit_check_blank;

	c.id = FIRST;
	c.block = d->block;
	c.day = DEED_DAY;
	c.looked_at = 200;
	c.entered = 0;
	return book_put_fruit_check(d->book, &c, e);
}

static bool put_dispensers(struct desk *d, struct err *e)
{
	struct disruption u = disruption_blank;

	u.id = FIRST;
	u.block = d->block;
	u.up = DEED_DAY;
	u.down = DEED_DAY + 90;
	return book_put_disruption(d->book, &u, e);
}

static bool put_answer(struct desk *d, struct err *e)
{
	struct answer a = { .id = FIRST,
		.block = d->block,
		.pest = d->pest,
		.trap = d->trap,
		.day = DEED_DAY + 7,
		.on = DEED_DAY + 9,
		.decision = DECISION_LEFT };

	return book_put_answer(d->book, &a, e);
}

static bool save_new(struct desk *d, struct err *e)
{
	struct visit v = counted(d->trap, DEED_DAY + 14, 0);

	v.new_lure = d->lure;
	v.new_card = d->card;
	return book_save_visit(d->book, &v, NULL, e);
}

static bool correct(struct desk *d, struct err *e)
{
	struct visit v = counted(d->trap, DEED_DAY + 7, 9);
	struct visit_words w = { "Ida", "it was dry after all" };

	return book_save_visit(d->book, &v, &w, e);
}

static bool add_visit(struct desk *d, struct err *e)
{
	struct visit v = counted(d->trap, DEED_DAY + 14, 0);
	bool same;

	return book_add_visit(d->book, &v, NULL, &same, e);
}

static bool remove_visit(struct desk *d, struct err *e)
{
	return book_remove_visit(d->book, d->trap, DEED_DAY + 7, e);
}

static bool save_weather(struct desk *d, struct err *e)
{
	struct weather_day w = { FIRST, DEED_DAY, 5, 21, 'C' };

	return book_save_weather(d->book, &w, e);
}

static bool save_new_weather(struct desk *d, struct err *e)
{
	struct weather_day w = { FIRST, DEED_DAY + 1, 5, 21, 'F' };

	return book_save_weather(d->book, &w, e);
}

static bool add_weather(struct desk *d, struct err *e)
{
	struct weather_day w = { FIRST, DEED_DAY + 1, 5, 21, 'C' };
	bool same;

	return book_add_weather(d->book, &w, &same, e);
}

static bool remove_weather(struct desk *d, struct err *e)
{
	return book_remove_weather(d->book, FIRST, DEED_DAY, e);
}

static bool remove_biofix(struct desk *d, struct err *e)
{
	return book_remove_biofix(d->book, FIRST, e);
}

static bool remove_rule(struct desk *d, struct err *e)
{
	return book_remove_rule(d->book, FIRST, e);
}

static bool remove_source(struct desk *d, struct err *e)
{
	return book_remove_source(d->book, FIRST + 1, e);
}

static bool remove_pick(struct desk *d, struct err *e)
{
	return book_remove(d->book, "pick", FIRST, e);
}

static bool swap_traps(struct desk *d, struct err *e)
{
	return book_swap_traps(d->book, d->trap, d->trap + 1, e);
}

static bool save_group(struct desk *d, struct err *e)
{
	if (!book_begin(d->book, e))
		return false;
	if (put_farm(d, e) && save_new(d, e))
		return book_commit(d->book, e);
	book_rollback(d->book);
	return false;
}

static const struct deed deeds_changes[] = {
	{ "a farm", put_farm, CHANGES, NULL },
	{ "a block", put_block, CHANGES, NULL },
	{ "a new trap", put_trap, CHANGES, NULL },
	{ "a trap", move_trap, CHANGES, NULL },
	{ "a pest", put_pest, CHANGES, NULL },
	{ "a lure", put_lure, CHANGES, NULL },
	{ "a card", put_card, CHANGES, NULL },
	{ "a threshold", put_rule, CHANGES, NULL },
	{ "a source", put_source, CHANGES, NULL },
	{ "a station", put_station, CHANGES, NULL },
	{ "a biofix", put_biofix, CHANGES, NULL },
	{ "a setting", put_setting, CHANGES, NULL },
	{ "a treatment", put_treatment, CHANGES, NULL },
	{ "a pick", put_pick, CHANGES, NULL },
	{ "a fruit check", put_check, CHANGES, NULL },
	{ "dispensers", put_dispensers, CHANGES, NULL },
	{ "an answer", put_answer, CHANGES, NULL },
	{ "a visit", save_new, CHANGES, NULL },
	{ "a correction", correct, CHANGES, NULL },
	{ "a visit of a file", add_visit, CHANGES, NULL },
	{ "a visit taken out", remove_visit, CHANGES, NULL },
	{ "a day of weather", save_weather, CHANGES, NULL },
	{ "a new day of weather", save_new_weather, CHANGES, NULL },
	{ "a day of a file", add_weather, CHANGES, NULL },
	{ "a day taken out", remove_weather, CHANGES, NULL },
	{ "a biofix taken out", remove_biofix, CHANGES, NULL },
	{ "a threshold taken out", remove_rule, CHANGES, NULL },
	{ "a source taken out", remove_source, CHANGES, NULL },
	{ "a pick taken out", remove_pick, CHANGES, NULL },
	{ "a turn swapped", swap_traps, CHANGES, NULL },
	{ "a group", save_group, CHANGES, NULL },
};

#endif
