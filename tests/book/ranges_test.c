/* The file itself refuses what is out of range, whoever writes it: for each CHECK
 * the last good value and the first bad one, put there by plain SQL. */
#include "fixture.h"

struct bound {
	const char *table, *column, *good, *bad;
};

static const struct bound bounds[] = {
	{ "farm", "name", "printf('%.47c', 'x')", "printf('%.48c', 'x')" },
	{ "farm", "name", "'x'", "''" },
	{ "farm", "season_start", "101", "100" },
	{ "farm", "season_start", "1231", "1301" },
	{ "farm", "season_start", "131", "132" },
	{ "farm", "run_weekday", "1", "0" },
	{ "farm", "run_weekday", "7", "8" },
	{ "farm", "run_weekday", "NULL", "'Mon'" },
	{ "farm", "uid", "x'00112233445566778899aabbccddeeff'", "x'00'" },
	{ "farm", "changed_at", "'2026-07-21T07:42:11.123Z'", "'2026-07-21'" },
	{ "block", "farm", "1", "2" },
	{ "block", "name", "'x'", "''" },
	{ "block", "condition", "'disrupted'", "'Disrupted'" },
	{ "block", "condition", "NULL", "''" },
	{ "block", "area_x100", "0", "-1" },
	{ "block", "area_x100", "100000000", "100000001" },
	{ "farm", "retired", "0", "-1" },
	{ "block", "retired", "1", "2" },
	{ "pest", "retired", "1", "NULL" },
	{ "lure", "retired", "1", "2" },
	{ "card", "retired", "1", "2" },
	{ "lure", "stock", "0", "-1" },
	{ "card", "stock", "9999", "10000" },
	{ "lure", "stock", "5", "NULL" }, /* counted on a day */
	{ "lure", "stock_day", "'2024-10-04'", "'2024-10-4'" },
	{ "card", "stock_day", "'2199-12-31'", "'2200-01-01'" },
	{ "lure", "reorder_at", "0", "-1" },
	{ "card", "reorder_at", "9999", "10000" },
	{ "pest", "code", "printf('%.11c', 'x')", "printf('%.12c', 'x')" },
	{ "lure", "life_days", "28", "0" },
	{ "lure", "life_days", "366", "367" },
	{ "lure", "pest", "NULL", "9999" },
	{ "card", "stir_at", "1", "0" },
	{ "card", "stir_at", "30", "31" },
	{ "card", "change_at", "50", "51" },
	{ "card", "floor_at", "9999", "10000" },
	{ "card", "life_days", "366", "367" },
	{ "trap", "place", "'outside'", "'edge'" },
	{ "trap", "driving_order", "1", "0" },
	{ "trap", "driving_order", "1000000", "1000001" },
	{ "trap", "label", "'x'", "''" },
	{ "visit", "count", "0", "-1" },
	{ "visit", "count", "9999", "10000" },
	{ "visit", "count", "0", "NULL" }, /* counted: a blank is not zero */
	{ "visit", "count", "1", "'1.5'" },
	{ "visit", "females", "9999", "10000" },
	{ "visit", "females", "NULL", "-1" },
	{ "visit", "others", "9999", "10000" },
	{ "visit", "others", "0", "-1" },
	{ "visit", "outcome", "'floor'", "'hung'" },
	{ "visit", "outcome", "'spoiled'", "'lost'" },
	{ "visit", "reason", "NULL", "'down'" },
	{ "visit", "stirred", "1", "2" },
	{ "visit", "trap", "1", "2" },
	{ "visit", "day", "'2024-10-04'", "'2024-10-05'" }, /* its id is of the 4th */
	{ "visit", "day", "'2024-10-04'", "'2024-10-4'" },
	{ "visit", "scout", "printf('%.23c', 'x')", "printf('%.24c', 'x')" },
	{ "visit", "note", "printf('%.239c', 'x')", "printf('%.240c', 'x')" },
	{ "visit", "uid", "zeroblob(16)", "zeroblob(15)" },
	{ "threshold", "flight", "9", "10" },
	{ "threshold", "flight", "1", "0" },
	{ "threshold", "span", "8", "9" },
	{ "threshold", "span", "1", "0" },
	{ "threshold", "span", "1", "NULL" },
	{ "threshold", "span_kind", "NULL", "'hung'" },
	{ "threshold", "comparator", "'>'", "'<'" },
	{ "threshold", "measure", "'block-week'", "'week'" },
	{ "threshold", "value_x100", "99999999", "100000000" },
	{ "threshold", "value_x100", "0", "-1" },
	{ "threshold", "until_dd", "99999", "100000" },
	{ "threshold", "from_md", "NULL", "601" }, /* half a window */
	{ "weather", "low", "-150", "-151" },
	{ "weather", "low", "20.5", "20.6" }, /* above the high */
	{ "weather", "high", "150", "151" },
	{ "weather", "unit", "'F'", "'K'" },
	{ "weather", "day", "'2024-02-29'", "'2023-02-29'" },
	{ "weather", "day", "'1900-01-01'", "'1899-12-31'" },
	{ "weather", "day", "'2199-12-31'", "'2200-01-01'" },
	{ "station", "lat", "NULL", "1" }, /* without a longitude */
	{ "biofix", "season", "1900", "1899" },
	{ "biofix", "season", "2199", "2200" },
	{ "place", "kind", "'bins'", "'shed'" },
	{ "treatment", "rei_hours", "0", "-1" },
	{ "treatment", "rei_hours", "8784", "8785" },
	{ "treatment", "phi_days", "366", "367" },
	{ "treatment", "day", "'2024-12-31'", "'2024-12-32'" },
	{ "treatment", "ended_at", "'2024-05-01T09:30Z'", "'2024-05-01T09:30'" },
	{ "treatment", "started_at", "'2024-02-29T23:59Z'", "'2024-05-01 09:30Z'" },
	{ "treatment", "started_east", "-840", "-841" },
	{ "treatment", "ended_east", "840", "841" },
	{ "treatment", "ended_east", "0", "NULL" }, /* with an hour */
	{ "treatment", "border", "1", "2" },
	{ "treatment", "job", "'x'", "''" },
	{ "treatment", "area_x100", "0", "-1" },
	{ "treatment", "unit", "printf('%.47c', 'x')", "printf('%.48c', 'x')" },
	{ "dispensers", "until", "'2024-05-01'",
		"'2024-04-30'" }, /* before they hung */
	{ "dispensers", "per_ha_x100", "1", "0" },
	{ "answer", "decided", "'2024-05-01'", "'2024-04-30'" }, /* before the alert */
	{ "answer", "did", "'treated'", "'sprayed'" },
	{ "pick", "planned", "1", "2" },
	{ "pick", "day", "'2024-12-31'", "'31.12.2024'" },
	{ "fruit_check", "looked_at", "99999", "100000" },
	{ "fruit_check", "looked_at", "1", "0" },
	{ "fruit_check", "entered", "10", "11" }, /* of 10 looked at */
	{ "fruit_check", "stung", "9", "10" },    /* of 10, 1 of which is entered */
	{ "fruit_check", "stung", "0", "-1" },
	{ "fruit_check", "entered", "0", "NULL" },
	{ "fruit_check", "part", "'shoots'", "'leaf'" },
	{ "fruit_check", "tree", "'top'", "'crown'" },
	{ "setting", "name", "'x'", "''" },
	{ "setting", "value", "printf('%.239c', 'x')", "printf('%.240c', 'x')" },
	{ "history", "op", "'update'", "'change'" },
	{ "tombstone", "uid", "zeroblob(16)", "zeroblob(17)" },
};

/* One row in every table, each with the fewest columns. */
static const char rows[] =
	"INSERT INTO farm (name, uid, changed_at, changed_by) VALUES"
	" ('f', randomblob(16), '2026-07-21T07:42:11.123Z', '');"
	"INSERT INTO block (farm, name, uid, changed_at, changed_by) VALUES"
	" (1, 'b', randomblob(16), '2026-07-21T07:42:11.123Z', '');"
	"DELETE FROM lure; DELETE FROM card; DELETE FROM pest; DELETE FROM tombstone;"
	"DELETE FROM history;"
	"INSERT INTO pest (id, code, uid, changed_at, changed_by) VALUES"
	" (1, 'P', randomblob(16), '2026-07-21T07:42:11.123Z', '');"
	"INSERT INTO lure (id, name, life_days, hot_days, hot_from, hot_to, uid,"
	" changed_at, changed_by) VALUES (1, 'l', 28, 14, 601, 831,"
	" randomblob(16), '2026-07-21T07:42:11.123Z', '');"
	"INSERT INTO card (id, name, life_days, stir_at, change_at, floor_at, uid,"
	" changed_at, changed_by) VALUES (1, 'c', 30, 20, 30, 50, randomblob(16),"
	" '2026-07-21T07:42:11.123Z', '');"
	"INSERT INTO trap (id, farm, block, pest, label, driving_order, uid, "
	"changed_at,"
	" changed_by) VALUES (1, 1, 1, 1, 't', 1, randomblob(16),"
	" '2026-07-21T07:42:11.123Z', '');"
	"INSERT INTO visit (id, trap, day, outcome, count, uid, changed_at, changed_by)"
	" VALUES (45567000001, 1, '2024-10-04', 'counted', 3, randomblob(16),"
	" '2026-07-21T07:42:11.123Z', '');"
	"INSERT INTO threshold (pest, measure, span, comparator, value_x100, uid,"
	" changed_at, changed_by) VALUES (1, 'trap-week', 1, '>=', 500, randomblob(16),"
	" '2026-07-21T07:42:11.123Z', '');"
	"UPDATE lure SET stock = 1, stock_day = '2024-10-04';"
	"UPDATE card SET stock = 1, stock_day = '2024-10-04';"
	"INSERT INTO station (name, uid, changed_at, changed_by) VALUES"
	" ('s', randomblob(16), '2026-07-21T07:42:11.123Z', '');"
	"INSERT INTO weather (station, day, low, high, unit, uid, changed_at, "
	"changed_by)"
	" VALUES (1, '2024-10-04', 9.5, 20.5, 'C', randomblob(16),"
	" '2026-07-21T07:42:11.123Z', '');"
	"INSERT INTO biofix (farm, pest, season, day, uid, changed_at, changed_by) "
	"VALUES"
	" (1, 1, 2024, '2024-05-01', randomblob(16), '2026-07-21T07:42:11.123Z', '');"
	"INSERT INTO place (farm, name, kind, uid, changed_at, changed_by) VALUES"
	" (1, 'p', 'wild', randomblob(16), '2026-07-21T07:42:11.123Z', '');"
	"INSERT INTO treatment (block, day, started_at, started_east, ended_at,"
	" ended_east, uid, changed_at, changed_by) VALUES (1, '2024-05-01',"
	" '2024-02-28T20:00Z', 0, '2024-05-01T09:00Z', 0, randomblob(16),"
	" '2026-07-21T07:42:11.123Z', '');"
	"INSERT INTO dispensers (block, day, uid, changed_at, changed_by) VALUES"
	" (1, '2024-05-01', randomblob(16), '2026-07-21T07:42:11.123Z', '');"
	"INSERT INTO answer (block, pest, day, decided, did, uid, changed_at,"
	" changed_by) VALUES (1, 1, '2024-05-01', '2024-05-01', 'left', randomblob(16),"
	" '2026-07-21T07:42:11.123Z', '');"
	"INSERT INTO pick (block, day, uid, changed_at, changed_by) VALUES"
	" (1, '2024-05-01', randomblob(16), '2026-07-21T07:42:11.123Z', '');"
	"INSERT INTO fruit_check (block, day, looked_at, entered, uid, changed_at,"
	" changed_by) VALUES (1, '2024-05-01', 10, 1, randomblob(16),"
	" '2026-07-21T07:42:11.123Z', '');"
	"INSERT INTO setting (name, value, uid, changed_at, changed_by) VALUES"
	" ('n', 'v', randomblob(16), '2026-07-21T07:42:11.123Z', '');"
	"INSERT INTO tombstone (uid, kind, changed_at, changed_by) VALUES"
	" (randomblob(16), 'visit', '2026-07-21T07:42:11.123Z', '');"
	"UPDATE setting SET value = 'w';"
	"DELETE FROM history WHERE op = 'insert';";

static void try_bound(struct book *b, const struct bound *row)
{
	char sql[256];

	assert_int_equal(raw(b, "SAVEPOINT try"), SQLITE_OK);
	snprintf(sql, sizeof sql, "UPDATE %s SET %s = %s", row->table, row->column,
		row->good);
	if (raw(b, sql) != SQLITE_OK)
		fail_msg("%s: %s", sql, sqlite3_errmsg(b->db));
	assert_int_equal(raw(b, "ROLLBACK TO try"), SQLITE_OK);
	snprintf(sql, sizeof sql, "UPDATE %s SET %s = %s", row->table, row->column,
		row->bad);
	if ((raw(b, sql) & 0xff) != SQLITE_CONSTRAINT)
		fail_msg("%s: not refused", sql);
	assert_int_equal(raw(b, "ROLLBACK TO try; RELEASE try"), SQLITE_OK);
}

static void book_file_refuses_what_is_out_of_range(void **state)
{
	struct book *b;

	(void)state;
	must(b = book_open(":memory:", BOOK_CREATE, "", e));
	if (raw(b, rows) != SQLITE_OK)
		fail_msg("%s", sqlite3_errmsg(b->db));
	for (size_t i = 0; i < sizeof bounds / sizeof *bounds; i++)
		try_bound(b, &bounds[i]);
	book_close(b);
}

/* A column that a trigger forgets would be lost by a correction. */
static void book_history_keeps_every_column(void **state)
{
	struct query q;
	struct book *b;
	char sql[256];
	int n = 0;

	(void)state;
	must(b = book_open(":memory:", BOOK_CREATE, "", e));
	assert_int_equal(raw(b, rows), SQLITE_OK);
	query_start(&q, b,
		"SELECT m.name, c.name FROM sqlite_schema m, pragma_table_info(m.name) "
		"c "
		"WHERE m.type = 'table' AND m.name NOT IN ('history', 'tombstone', "
		"'origin', 'rival', 'aside', 'renamed', 'merged') AND m.name NOT LIKE "
		"'sqlite%' ORDER BY 1");
	while (query_row(&q)) {
		const char *table = query_get_text(&q), *column = query_get_text(&q);
		snprintf(sql, sizeof sql, "UPDATE %s SET changed_by = 'x'", table);
		assert_int_equal(raw(b, sql), SQLITE_OK);
		snprintf(sql, sizeof sql,
			"SELECT count(*) FROM history, json_each(old) "
			"WHERE kind = '%s' AND op = 'update' AND key = '%s'",
			table, column);
		if (store_number(b, sql, 0) < 1)
			fail_msg("the history of %s has no %s", table, column);
		n++;
	}
	query_end(&q, "", NULL);
	assert_true(n > 150);
	book_close(b);
}

static void book_history_keeps_removals_by_other_programs(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	assert_int_equal(raw(d.book, "DELETE FROM trap"), SQLITE_OK);
	assert_int_equal(
		store_number(d.book,
			"SELECT count(*) FROM history h JOIN tombstone t "
			"ON t.uid = h.uid WHERE h.kind = 'trap' AND "
			"h.op = 'delete' AND json_extract(old, '$.label') = '1' "
			"AND json_extract(old, '$.uid') = hex(h.uid)",
			0),
		1);
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_file_refuses_what_is_out_of_range),
		cmocka_unit_test(book_history_keeps_every_column),
		cmocka_unit_test(book_history_keeps_removals_by_other_programs),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
