/* Rows of the lists with values out of their range are refused: table and value are
 * named. */
#include "crafted.h"

#define READER(name, list, call)                                                       \
	static bool name(struct book *b, struct err *e)                                \
	{                                                                              \
		struct list all = { 0 };                                               \
		bool ok = call;                                                        \
                                                                                       \
		free(all.items);                                                       \
		return ok;                                                             \
	}

READER(farms, farms, book_farms(b, &all, e))
READER(blocks, blocks, book_blocks(b, 0, &all, e))
READER(traps, traps, book_traps(b, 0, &all, e))
READER(lures, lure_kinds, book_lures(b, &all, e))
READER(cards, card_kinds, book_cards(b, &all, e))
READER(rules, rules, book_rules(b, &all, e))
READER(treatments, treatments,
	book_treatments(b, 0, CRAFTED_DAY - 9000, CRAFTED_DAY + 9000, &all, e))

struct crafted {
	bool (*read)(struct book *b, struct err *e);
	const char *table, *set, *says;
};

static const struct crafted crafted[] = {
	{ farms, "farm", "season_start = 1331", "season_start is \"1331\"" },
	{ farms, "farm", "season_start = 230", "season_start is \"230\"" },
	{ farms, "farm", "season_start = -101", "season_start is \"-101\"" },
	{ farms, "farm", "run_weekday = 8", "run_weekday is \"8\"" },
	{ farms, "farm", "run_weekday = 4294967297", "run_weekday is" },
	{ blocks, "block", "condition = 'wild'", "condition is \"wild\"" },
	{ blocks, "block", "area_x100 = -1", "area_x100 is \"-1\"" },
	{ blocks, "block", "area_x100 = 100000001", "area_x100 is \"100000001\"" },
	{ traps, "trap", "id = 1000000", "id is \"1000000\"" },
	{ traps, "trap", "id = 0", "id is \"0\"" },
	{ traps, "trap", "place = 'edge'", "place is \"edge\"" },
	{ traps, "trap", "driving_order = 0", "driving_order is \"0\"" },
	{ traps, "trap", "driving_order = 1000001", "driving_order is \"1000001\"" },
	{ traps, "trap", "lat = 91, lon = 0", "lat is \"91.0\"" },
	{ traps, "trap", "lat = -91, lon = 0", "lat is \"-91.0\"" },
	{ traps, "trap", "lat = 9, lon = 9e999", "lon is" },
	{ traps, "trap", "lat = 9, lon = 181", "lon is \"181.0\"" },
	{ traps, "trap", "lat = 9, lon = -181", "lon is \"-181.0\"" },
	{ traps, "trap", "lon = 9", "lon is \"9.0\"" },
	{ traps, "trap", "lat = 9", "lon is \"\"" },
	{ lures, "lure", "life_days = 0", "life_days is \"0\"" },
	{ lures, "lure", "life_days = 367", "life_days is \"367\"" },
	{ lures, "lure", "life_days = 9, hot_days = 10, hot_from = 601, hot_to = 831",
		"hot_days is \"10\"" },
	{ lures, "lure", "life_days = 9, hot_days = 9, hot_from = 632, hot_to = 831",
		"hot_from is \"632\"" },
	{ lures, "lure", "life_days = 9, hot_days = 9, hot_from = 601, hot_to = NULL",
		"hot_to is \"\"" },
	{ lures, "lure", "hot_days = NULL, hot_from = 601", "hot_from is \"601\"" },
	{ farms, "farm", "retired = 2", "retired is \"2\"" },
	{ blocks, "block", "retired = -1", "retired is \"-1\"" },
	{ lures, "lure", "stock = 3", "stock_day is \"\"" },
	{ lures, "lure", "stock = 10000, stock_day = '2024-10-04'",
		"stock is \"10000\"" },
	{ lures, "lure", "stock = 3, stock_day = '2024-10-40'",
		"stock_day is \"2024-10-40\"" },
	{ cards, "card", "reorder_at = 10000", "reorder_at is \"10000\"" },
	{ cards, "card", "retired = 7", "retired is \"7\"" },
	{ cards, "card", "life_days = 367", "life_days is \"367\"" },
	{ cards, "card", "stir_at = 0", "stir_at is \"0\"" },
	{ cards, "card", "change_at = 1, stir_at = 2", "change_at is \"1\"" },
	{ cards, "card", "floor_at = 10000", "floor_at is \"10000\"" },
	{ rules, "threshold", "value_x100 = 100000000", "value_x100 is \"100000000\"" },
	{ rules, "threshold", "value_x100 = 4294967301", "value_x100 is" },
	{ rules, "threshold", "span = 9", "span is \"9\"" },
	{ rules, "threshold", "span = NULL", "span is \"\"" },
	{ rules, "threshold", "span_kind = 'hung'", "span is \"1\"" },
	{ rules, "threshold", "span_kind = 'ever'", "span_kind is \"ever\"" },
	{ rules, "threshold", "measure = 'week'", "measure is \"week\"" },
	{ rules, "threshold", "measure = 'trap-night', span = 367", "span is \"367\"" },
	{ rules, "threshold", "comparator = '<'", "comparator is \"<\"" },
	{ rules, "threshold", "flight = 10", "flight is \"10\"" },
	{ rules, "threshold", "from_md = 1331, to_md = 601", "to_md is \"601\"" },
	{ rules, "threshold", "until_dd = 100000", "until_dd is \"100000\"" },
	{ rules, "threshold", "place = 'edge'", "place is \"edge\"" },
	{ rules, "threshold", "condition = 'x'", "condition is \"x\"" },
	{ treatments, "treatment", "day = '2024-10-40'", "day is \"2024-10-40\"" },
};

static void book_rows_out_of_range_are_refused_by_table_and_value(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof crafted / sizeof *crafted; i++) {
		const struct crafted *c = &crafted[i];
		char sql[256], table[64];
		struct err e = { 0 };
		struct desk d;
		snprintf(sql, sizeof sql,
			"UPDATE %s SET %s WHERE id = (SELECT min(id) FROM %s)",
			c->table, c->set, c->table);
		snprintf(table, sizeof table, "in the table %s, ", c->table);
		craft(&d, "");
		if (!c->read(d.book, &e))
			fail_msg("before %s: %s", sql, e.text);
		desk_clear(&d);
		craft(&d, sql);
		bool read = c->read(d.book, &e);
		assert_damaged(sql, read, &e, c->says);
		assert_damaged(sql, read, &e, table);
		desk_clear(&d);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_rows_out_of_range_are_refused_by_table_and_value),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
