/* What is known of a row: its stamp, its changes, who refers to it, its turn. */
#include "fixture.h"

#include "book/steps.h"
#include "book/weather.h"

static void book_stamp_tells_a_row_that_somebody_changed(void **state)
{
	struct row_stamp before, after;
	struct desk d;

	(void)state;
	desk_memory(&d);
	must(book_stamp(d.book, "block", d.block, &before, e));
	assert_string_equal(before.changed_by, "JR");
	assert_int_equal(strlen(before.changed_at), 24);
	must(book_stamp(d.book, "block", d.block, &after, e));
	assert_string_equal(after.changed_by, before.changed_by);
	assert_string_equal(after.changed_at, before.changed_at);
	book_set_who(d.book, "Ida");
	struct block b = {
		.id = d.block, .farm = d.farm, .name = "Long rows", .area_x100 = 1
	};
	must(book_put_block(d.book, &b, e));
	must(book_stamp(d.book, "block", d.block, &after, e));
	assert_string_equal(after.changed_by, "Ida");
	refused(book_stamp(d.book, "trap", 4711, &after, e), ERR_NOT_FOUND,
		"the trap is not in the book any more");
	desk_clear(&d);
}

static void expect_change(const struct row_change *c, const char *field,
	const char *before, const char *after, const char *by)
{
	assert_string_equal(c->field, field);
	assert_string_equal(c->before, before);
	assert_string_equal(c->after, after);
	assert_string_equal(c->changed_by, by);
	assert_int_equal(strlen(c->changed_at), 24);
}

static void book_row_changes_tell_field_by_field(void **state)
{
	struct row_changes got = { 0 };
	struct undone_step u;
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct lure_kind l = { .id = d.lure,
		.name = "T1 \"test\"",
		.pest = d.other_pest,
		.life_days = 21 };
	must(book_put_lure(d.book, &l, e));
	must(book_put_lure(d.book, &l, e)); /* the same again */
	book_set_who(d.book, "Ida");
	l.stock = (struct stock){ 12, 20000, 3 };
	must(book_put_lure(d.book, &l, e));
	must(book_row_changes(d.book, "lure", d.lure, &got, e));
	assert_int_equal(got.n, 6);
	expect_change(&got.items[0], "stock", "", "12", "Ida");
	expect_change(&got.items[1], "stock_day", "", "2024-10-04", "Ida");
	expect_change(&got.items[2], "reorder_at", "", "3", "Ida");
	expect_change(&got.items[3], "name", "T1 test", "T1 \"test\"", "JR");
	expect_change(&got.items[4], "pest", "T1", "T2", "JR");
	expect_change(&got.items[5], "", "", "T1 \"test\"", "JR"); /* put in */
	must(book_undo_step(d.book, "Ida", 0, &u, e));
	must(book_row_changes(d.book, "lure", d.lure, &got, e));
	assert_int_equal(got.n, 9);
	expect_change(&got.items[0], "stock", "12", "", "Ida");
	must(book_row_changes(d.book, "lure", 4711, &got, e));
	assert_int_equal(got.n, 0);
	free(got.items);
	desk_clear(&d);
}

static void book_row_changes_name_what_is_gone_by_its_number(void **state)
{
	struct row_changes got = { 0 };
	struct undone_step u;
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct card_kind c = { .name = "thick card",
		.life_days = 30,
		.stir_at = 20,
		.change_at = 30,
		.floor_at = 50 };
	must(book_put_card(d.book, &c, e));
	struct trap t = { .id = d.trap,
		.farm = d.farm,
		.block = d.block,
		.pest = d.pest,
		.label = "1",
		.card = c.id,
		.order = 1 };
	must(book_put_trap(d.book, &t, e));
	t.card = 0;
	must(book_put_trap(d.book, &t, e));
	must(book_remove(d.book, "card", c.id, e));
	must(book_row_changes(d.book, "trap", d.trap, &got, e));
	char number[32];
	snprintf(number, sizeof number, "number %d", (int)c.id);
	expect_change(&got.items[0], "card", number, "", "JR");
	must(book_remove(d.book, "trap", d.trap, e));
	must(book_undo_step(d.book, NULL, 0, &u, e));
	must(book_row_changes(d.book, "trap", d.trap, &got, e));
	expect_change(&got.items[0], "", "", "1", "JR"); /* back */
	expect_change(&got.items[1], "", "1", "", "JR"); /* out */
	free(got.items);
	desk_clear(&d);
}

static void book_remove_keeps_what_something_refers_to(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct visit v = counted(d.trap, 20000, 4);
	v.new_card = d.card;
	must(book_save_visit(d.book, &v, NULL, e));
	v.day++;
	must(book_save_visit(d.book, &v, NULL, e));
	struct station s = { .name = "Low gauge" };
	struct weather_day w = { .day = 20000, .min = 1, .max = 2, .unit = 'C' };
	must(book_put_station(d.book, &s, e));
	w.station = s.id;
	must(book_save_weather(d.book, &w, e));
	struct {
		const char *kind;
		int64_t id;
		const char *says;
	} row[] = {
		{ "trap", d.trap,
			"nothing is removed: trap 1 of Hollow Reach is in use, by 2 "
			"visits; enter it as pulled instead" },
		{ "farm", d.farm,
			"farm Hollow Reach is in use, by 1 block, 1 trap; put it away "
			"instead" },
		{ "block", d.block, "by 1 trap; put it away" },
		{ "pest", d.pest, "pest T1 is in use, by 1 lure, 1 trap; put" },
		{ "lure", d.lure, "by 1 trap; put it away" },
		{ "card", d.card, "by 1 trap, 2 visits; put it away" },
		{ "station", s.id, "station Low gauge is in use, by 1 day of weather" },
	};
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		refused(book_remove(d.book, row[i].kind, row[i].id, e), ERR_INPUT,
			row[i].says);
	struct buf users = { 0 };
	must(book_users(d.book, "farm", d.farm, &users, e));
	assert_string_equal(users.text, "1 block, 1 trap");
	buf_free(&users);
	must(book_put_setting(d.book, "read_den", "9", e));
	must(book_put_setting(d.book, "read_num", "9", e));
	refused(book_remove(d.book, "setting", 1, e), ERR_INPUT,
		"nothing is removed: the settings ask for 9 of 3 traps");
	must(book_remove(d.book, "setting", 2, e));
	must(book_remove(d.book, "lure", d.other_lure, e));
	must(book_remove(d.book, "pest", d.other_pest, e));
	refused(book_remove(d.book, "pest", d.other_pest, e), ERR_NOT_FOUND,
		"the pest is not in the book");
	assert_int_equal(store_number(d.book,
				 "SELECT count(*) FROM tombstone WHERE changed_by = "
				 "'JR' AND kind IN ('lure', 'pest')",
				 0),
		2);
	desk_clear(&d);
}

static void expect_order(struct book *b, const char *want)
{
	struct traps traps = { 0 };
	char got[64] = "";

	must(book_traps(b, 0, &traps, e));
	for (size_t i = 0; i < traps.n; i++)
		strcat(got, traps.items[i].label);
	assert_string_equal(got, want);
	free(traps.items);
}

static void book_swapped_traps_take_each_others_turn(void **state)
{
	struct undone_step u;
	struct desk d;

	(void)state;
	desk_memory(&d);
	int64_t b = desk_add_trap(&d, "b"), c = desk_add_trap(&d, "c");
	expect_order(d.book, "1bc");
	must(book_swap_traps(d.book, d.trap, c, e));
	expect_order(d.book, "cb1");
	must(book_undo_step(d.book, NULL, 0, &u, e));
	assert_int_equal(u.rows, 2);
	expect_order(d.book, "1bc");
	assert_int_equal(raw(d.book, "UPDATE trap SET driving_order = 3"), SQLITE_OK);
	must(book_swap_traps(d.book, b, c, e)); /* all had the same place */
	expect_order(d.book, "1cb");
	must(book_swap_traps(d.book, d.trap, c, e));
	expect_order(d.book, "c1b");
	refused(book_swap_traps(d.book, b, b, e), ERR_NOT_FOUND, "not two traps");
	refused(book_swap_traps(d.book, b, 4711, e), ERR_NOT_FOUND, "not two traps");
	struct farm f = { .name = "Other slope", .season_start = 101 };
	must(book_put_farm(d.book, &f, e));
	struct block k = { .farm = f.id, .name = "x", .area_x100 = -1 };
	must(book_put_block(d.book, &k, e));
	struct trap t = { .farm = f.id, .block = k.id, .pest = d.pest, .label = "x" };
	must(book_put_trap(d.book, &t, e));
	refused(book_swap_traps(d.book, b, t.id, e), ERR_NOT_FOUND,
		"the traps stay in their order: they are not two traps of one farm");
	expect_order(d.book, "c1bx");
	desk_clear(&d);
}

static void book_keeps_what_is_put_away_and_what_is_on_the_shelf(void **state)
{
	struct farms farms = { 0 };
	struct blocks blocks = { 0 };
	struct card_kinds cards = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct farm f = {
		.id = d.farm, .name = "a", .season_start = 101, .retired = true
	};
	struct block b = { .id = d.block,
		.farm = d.farm,
		.name = "b",
		.area_x100 = -1,
		.retired = true };
	must(book_put_farm(d.book, &f, e));
	must(book_put_block(d.book, &b, e));
	must(book_farms(d.book, &farms, e));
	must(book_blocks(d.book, 0, &blocks, e));
	assert_true(farms.items[0].retired && blocks.items[0].retired);
	struct card_kind c = { .id = d.card,
		.name = "test card",
		.life_days = 30,
		.stir_at = 20,
		.change_at = 30,
		.floor_at = 50,
		.stock = { 0, 20000, 0 } };
	must(book_put_card(d.book, &c, e)); /* none left is not "not kept" */
	must(book_cards(d.book, &cards, e));
	for (size_t i = 0; i < cards.n; i++)
		if (cards.items[i].id == d.card)
			assert_memory_equal(
				&cards.items[i].stock, &c.stock, sizeof c.stock);
		else
			assert_int_equal(cards.items[i].stock.n, -1);
	c.stock.n = 10000;
	refused(book_put_card(d.book, &c, e), ERR_INPUT, "the stock is 10000");
	c.stock = (struct stock){ -1, 20000, -1 };
	refused(book_put_card(d.book, &c, e), ERR_INPUT, "a number and the day");
	c.stock = (struct stock){ 3, DAY_NONE, -1 };
	refused(book_put_card(d.book, &c, e), ERR_INPUT, "a number and the day");
	c.stock = (struct stock){ 3, 200000, -1 };
	refused(book_put_card(d.book, &c, e), ERR_INPUT, "no date from 1900");
	c.stock = (struct stock){ 3, 20000, 10000 };
	refused(book_put_card(d.book, &c, e), ERR_INPUT, "ordered again is 10000");
	free(farms.items);
	free(blocks.items);
	free(cards.items);
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_stamp_tells_a_row_that_somebody_changed),
		cmocka_unit_test(book_row_changes_tell_field_by_field),
		cmocka_unit_test(book_row_changes_name_what_is_gone_by_its_number),
		cmocka_unit_test(book_remove_keeps_what_something_refers_to),
		cmocka_unit_test(book_swapped_traps_take_each_others_turn),
		cmocka_unit_test(book_keeps_what_is_put_away_and_what_is_on_the_shelf),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
