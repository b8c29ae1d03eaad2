#include "fixture.h"

static void book_new_one_holds_the_shipped_kinds(void **state)
{
	struct pests pests = { 0 };
	struct lure_kinds lures = { 0 };
	struct card_kinds cards = { 0 };
	struct rules rules = { 0 };
	struct book *b;

	(void)state;
	must(b = book_open(":memory:", BOOK_CREATE, "", e));
	must(book_pests(b, &pests, e));
	must(book_lures(b, &lures, e));
	must(book_cards(b, &cards, e));
	must(book_rules(b, &rules, e));
	assert_true(pests.n > 0 && lures.n > 0 && cards.n > 0);
	assert_int_equal(rules.n, 0); /* none applies until the grower takes it */
	for (size_t i = 0; i < lures.n; i++)
		assert_true(lures.items[i].life_days >= 1 && *lures.items[i].source);
	free(pests.items);
	free(lures.items);
	free(cards.items);
	free(rules.items);
	book_close(b);
}

/* A hot season has both ends and a life of its own, or there is none. */
static void book_keeps_a_hot_season_whole(void **state)
{
	static const struct {
		const char *why;
		int32_t days;
		int from, to;
		bool good;
	} row[] = {
		{ "none", 0, 0, 0, true },
		{ "whole", 10, 601, 831, true },
		{ "days alone", 10, 0, 0, false },
		{ "its begin alone", 0, 601, 0, false },
		{ "its end alone", 0, 0, 831, false },
		{ "no days", 0, 601, 831, false },
	};
	struct desk d;

	(void)state;
	desk_memory(&d);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct lure_kind k = {
			.id = d.lure, .name = "T1 test", .life_days = 21
		};
		struct err err = { 0 };
		k.pest = d.pest;
		k.hot_days = row[i].days;
		k.hot_from = row[i].from;
		k.hot_to = row[i].to;
		if (book_put_lure(d.book, &k, &err) != row[i].good)
			fail_msg("%s: %s", row[i].why, err.text);
	}
	desk_clear(&d);
}

/* When to order again may be said before anything was counted. */
static void book_keeps_when_to_order_of_a_shelf_not_counted(void **state)
{
	struct card_kinds cards = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct card_kind c = { .name = "glue",
		.life_days = 30,
		.stir_at = 20,
		.change_at = 30,
		.floor_at = 50,
		.stock.reorder = 5 };
	must(book_put_card(d.book, &c, e));
	must(book_cards(d.book, &cards, e));
	for (size_t i = 0; i < cards.n; i++)
		if (cards.items[i].id == c.id) {
			assert_int_equal(cards.items[i].stock.n, COUNT_NONE);
			assert_int_equal(cards.items[i].stock.reorder, 5);
		}
	free(cards.items);
	desk_clear(&d);
}

static void book_keeps_places_as_given(void **state)
{
	struct farms farms = { 0 };
	struct blocks blocks = { 0 };
	struct traps traps = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct block b = { .farm = d.farm,
		.name = "Árbol 'Sur'",
		.crop = "pear",
		.variety = "any",
		.condition = CONDITION_DISRUPTED,
		.area_x100 = 0 };
	must(book_put_block(d.book, &b, e));
	struct trap t = { .farm = d.farm,
		.block = b.id,
		.pest = d.pest,
		.label = "2",
		.place = PLACE_BORDER,
		.has_position = true,
		.lat = -33.25,
		.lon = 0 };
	must(book_put_trap(d.book, &t, e));
	assert_int_equal(t.order, 2); /* the end of the driving order */
	must(book_farms(d.book, &farms, e));
	assert_int_equal(farms.n, 1);
	assert_int_equal(farms.items[0].run_weekday, 0);
	must(book_blocks(d.book, d.farm, &blocks, e));
	assert_int_equal(blocks.n, 2);
	assert_int_equal(blocks.items[0].area_x100, -1); /* not given is not 0 ha */
	assert_int_equal(blocks.items[1].area_x100, 0);
	assert_string_equal(blocks.items[1].name, b.name);
	assert_int_equal(blocks.items[1].condition, CONDITION_DISRUPTED);
	must(book_traps(d.book, 0, &traps, e));
	assert_int_equal(traps.n, 2);
	assert_false(traps.items[0].has_position);
	assert_true(traps.items[1].has_position);
	assert_true(traps.items[1].lat == -33.25 && traps.items[1].lon == 0);
	assert_int_equal(traps.items[1].place, PLACE_BORDER);
	assert_int_equal(traps.items[1].lure, 0);
	free(farms.items);
	free(blocks.items);
	free(traps.items);
	desk_clear(&d);
}

static void book_refuses_taken_and_empty_names(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct farm same = { .name = "Hollow Reach", .season_start = 101 };
	struct farm empty = { .name = " ", .season_start = 101 };
	struct farm bent = { .name = "a\tb", .season_start = 101 };
	struct farm other = {
		.name = "Other slope", .season_start = 701, .run_weekday = 7
	};
	refused(book_put_farm(d.book, &same, e), ERR_INPUT,
		"there is a Hollow Reach already");
	assert_int_equal(same.id, 0);
	refused(book_put_farm(d.book, &empty, e), ERR_INPUT, "name is empty");
	refused(book_put_farm(d.book, &bent, e), ERR_INPUT, "cannot be printed");
	must(book_put_farm(d.book, &other, e));
	struct block b = { .farm = d.farm, .name = "Long rows", .area_x100 = -1 };
	refused(book_put_block(d.book, &b, e), ERR_INPUT,
		"there is a Long rows already");
	b.farm = other.id;
	must(book_put_block(d.book, &b, e)); /* unique within its farm */
	struct pest p = { .code = "T1" };
	refused(book_put_pest(d.book, &p, e), ERR_INPUT, "there is a T1 already");
	strcpy(other.name, "Hollow Reach");
	refused(book_put_farm(d.book, &other, e), ERR_INPUT, "already");
	other.id = 4711;
	strcpy(other.name, "Nowhere");
	refused(book_put_farm(d.book, &other, e), ERR_NOT_FOUND,
		"not in the book any more");
	b = (struct block){ .farm = 4711, .name = "x", .area_x100 = -1 };
	refused(book_put_block(d.book, &b, e), ERR_NOT_FOUND, "not in the book");
	desk_clear(&d);
}

static void book_trap_keeps_its_pest_for_life(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct trap t = { .id = d.trap,
		.farm = d.farm,
		.block = d.block,
		.pest = d.pest,
		.label = "1",
		.order = 1 };
	t.pest = d.other_pest;
	must(book_put_trap(d.book, &t, e)); /* never visited: a slip of the pen */
	t.pest = d.pest;
	must(book_put_trap(d.book, &t, e));
	struct visit v = counted(d.trap, 20000, 1);
	must(book_save_visit(d.book, &v, NULL, e));
	t.pest = d.other_pest;
	refused(book_put_trap(d.book, &t, e), ERR_INPUT, "the plastic keeps the scent");
	t.pest = d.pest;
	t.lure = d.other_lure;
	refused(book_put_trap(d.book, &t, e), ERR_INPUT, "its lure is of another pest");
	t.lure = d.lure;
	strcpy(t.label, "1b");
	must(book_put_trap(d.book, &t, e)); /* the rest may change */
	desk_clear(&d);
}

static void book_trap_stands_in_a_block_of_its_farm(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct farm f = { .name = "Other slope", .season_start = 101 };
	must(book_put_farm(d.book, &f, e));
	struct trap t = {
		.farm = f.id, .block = d.block, .pest = d.pest, .label = "1"
	};
	refused(book_put_trap(d.book, &t, e), ERR_INPUT, "not one of its farm");
	t.has_position = true;
	t.lat = 90.01;
	refused(book_put_trap(d.book, &t, e), ERR_INPUT, "latitude");
	desk_clear(&d);
}

static void book_changed_places_leave_their_old_form(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct block b = {
		.id = d.block, .farm = d.farm, .name = "Rows \"B\"\\", .area_x100 = 150
	};
	must(book_put_block(d.book, &b, e));
	must(book_put_block(d.book, &b, e));
	assert_int_equal(
		store_number(d.book,
			"SELECT count(*) FROM history WHERE kind = 'block' AND "
			"json_extract(old, '$.name') = 'Long rows' AND "
			"json_extract(old, '$.area_x100') IS NULL",
			0),
		1);
	assert_int_equal(
		store_number(d.book,
			"SELECT count(*) FROM history WHERE kind = 'block' AND "
			"json_extract(old, '$.name') = 'Rows \"B\"\\'",
			0),
		1);
	desk_clear(&d);
}

static void book_kinds_stay_in_their_ranges(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct lure_kind l = { .name = "n",
		.life_days = 366,
		.hot_days = 366,
		.hot_from = 1201,
		.hot_to = 229 };
	must(book_put_lure(d.book, &l, e)); /* wraps the new year */
	l.life_days = 367;
	refused(book_put_lure(d.book, &l, e), ERR_INPUT, "1 to 366");
	l.life_days = 0;
	refused(book_put_lure(d.book, &l, e), ERR_INPUT, "1 to 366");
	l.life_days = 21;
	l.hot_days = 22;
	refused(book_put_lure(d.book, &l, e), ERR_INPUT, "1 to 21");
	l.hot_days = 14;
	l.hot_to = 230;
	refused(book_put_lure(d.book, &l, e), ERR_INPUT, "first and a last day");
	struct card_kind c = {
		.name = "n", .life_days = 1, .stir_at = 5, .change_at = 5, .floor_at = 5
	};
	must(book_put_card(d.book, &c, e));
	c.stir_at = 6;
	refused(book_put_card(d.book, &c, e), ERR_INPUT, "1 to 5");
	c.stir_at = 0;
	refused(book_put_card(d.book, &c, e), ERR_INPUT, "1 to 5");
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_new_one_holds_the_shipped_kinds),
		cmocka_unit_test(book_keeps_a_hot_season_whole),
		cmocka_unit_test(book_keeps_when_to_order_of_a_shelf_not_counted),
		cmocka_unit_test(book_keeps_places_as_given),
		cmocka_unit_test(book_refuses_taken_and_empty_names),
		cmocka_unit_test(book_trap_keeps_its_pest_for_life),
		cmocka_unit_test(book_trap_stands_in_a_block_of_its_farm),
		cmocka_unit_test(book_changed_places_leave_their_old_form),
		cmocka_unit_test(book_kinds_stay_in_their_ranges),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
