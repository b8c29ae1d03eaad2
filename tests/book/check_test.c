#include "fixture.h"

struct told {
	char text[4096];
};

static void tell(void *arg, const char *text)
{
	struct told *t = arg;
	size_t n = strlen(t->text);

	snprintf(t->text + n, sizeof t->text - n, "%s\n", text);
}

static void expect(struct desk *d, int want, const char *words)
{
	struct told told = { "" };
	int found;

	must(book_check(d->book, 20010, tell, &told, &found, e));
	if (found != want || !strstr(told.text, words))
		fail_msg("%d findings, not %d with \"%s\":\n%s", found, want, words,
			told.text);
}

static void hang_and_count(struct desk *d)
{
	struct visit hung = without_count(d->trap, 20000, OUTCOME_HUNG);
	struct visit v = counted(d->trap, 20010, 3);

	must(book_save_visit(d->book, &hung, NULL, e));
	must(book_save_visit(d->book, &v, NULL, e));
}

static void book_check_finds_nothing_in_a_sound_book(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	hang_and_count(&d);
	expect(&d, 0, "");
	desk_clear(&d);
}

static void book_check_finds_what_does_not_hang_together(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	hang_and_count(&d);
	struct visit before = counted(d.trap, 19999, 3),
		     later = counted(d.trap, 20011, 3);
	must(book_save_visit(d.book, &before, NULL, e));
	expect(&d, 1,
		"trap 1 of Hollow Reach has a visit on 2024-10-03, before it was ever "
		"hung");
	must(book_remove_visit(d.book, d.trap, 19999, e));
	must(book_save_visit(d.book, &later, NULL, e));
	expect(&d, 1,
		"trap 1 of Hollow Reach has a visit on 2024-10-15, a day still to "
		"come");
	must(book_remove_visit(d.book, d.trap, 20011, e));
	struct farm f = { .name = "Other slope", .season_start = 101 };
	must(book_put_farm(d.book, &f, e));
	assert_int_equal(
		raw(d.book, "UPDATE block SET farm = 2, name = 'x'"), SQLITE_OK);
	expect(&d, 2, "trap 1 of Hollow Reach is in x, a block of another farm");
	assert_int_equal(raw(d.book, "UPDATE block SET farm = 1"), SQLITE_OK);
	assert_int_equal(
		raw(d.book, "UPDATE trap SET lure = (SELECT id FROM lure WHERE "
			    "name = 'T2 test')"),
		SQLITE_OK);
	expect(&d, 1, "usually gets T2 test, a lure of another pest");
	assert_int_equal(
		raw(d.book, "UPDATE visit SET new_lure = (SELECT lure FROM trap) WHERE "
			    "outcome = 'hung'; UPDATE trap SET lure = NULL"),
		SQLITE_OK);
	expect(&d, 1,
		"trap 1 of Hollow Reach got a lure of another pest on 2024-10-04");
	desk_clear(&d);
}

static void book_check_finds_a_stock_counted_on_a_day_to_come(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	hang_and_count(&d);
	struct lure_kind l = { .id = d.lure,
		.name = "T1 test",
		.pest = d.pest,
		.life_days = 21,
		.stock = { 3, 20010, -1 } };
	must(book_put_lure(d.book, &l, e));
	expect(&d, 0, "");
	l.stock.day = 20011;
	must(book_put_lure(d.book, &l, e));
	expect(&d, 1, "the stock of T1 test was counted on 2024-10-15, a day still to");
	desk_clear(&d);
}

static void book_check_finds_rows_without_their_parent(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	hang_and_count(&d);
	assert_int_equal(
		raw(d.book, "PRAGMA foreign_keys = OFF; DELETE FROM block"), SQLITE_OK);
	expect(&d, 2, "1 rows of trap name a block that is not in the book");
	expect(&d, 2, "the traps cannot be read: the book is damaged");
	desk_clear(&d);
}

static void book_check_finds_a_value_out_of_range(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	hang_and_count(&d);
	assert_int_equal(raw(d.book, "PRAGMA ignore_check_constraints = ON;"
				     "UPDATE visit SET count = -3 WHERE count = 3;"
				     "PRAGMA ignore_check_constraints = OFF"),
		SQLITE_OK);
	expect(&d, 2, "the file is damaged: CHECK constraint failed in visit");
	expect(&d, 2, "a visit cannot be used: in the table visit, count is \"-3\"");
	desk_clear(&d);
}

static void book_check_goes_on_after_a_bad_visit(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	hang_and_count(&d);
	assert_int_equal(raw(d.book, "PRAGMA ignore_check_constraints = ON;"
				     "UPDATE visit SET stirred = 7;"
				     "PRAGMA ignore_check_constraints = OFF"),
		SQLITE_OK);
	expect(&d, 4, "stirred is \"7\"\na visit cannot be used"); /* and the file */
	desk_clear(&d);
}

static void book_check_finds_texts_that_cannot_be_shown(void **state)
{
	static const struct {
		const char *why, *sql, *says;
	} row[] = {
		{ "a control character", "UPDATE farm SET name = 'a' || char(27)",
			"in the table farm, name of row 1 holds" },
		{ "a NUL",
			"UPDATE visit SET note = 'a' || char(0) || 'b' WHERE count = 3",
			"in the table visit, note of row" },
		{ "torn UTF-8", "UPDATE trap SET label = CAST(x'41F09F' AS TEXT)",
			"in the table trap, label of row 1 holds" },
		{ "text turned around", "UPDATE block SET crop = char(8238)",
			"in the table block, crop of row 1 holds" },
		{ "a setting",
			"INSERT INTO setting (name, value, uid, changed_at, changed_by)"
			" VALUES ('scout', char(7), randomblob(16), "
			"'2026-07-21T07:42:11.123Z', '')",
			"in the table setting, value of row 1 holds" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct desk d;
		desk_memory(&d);
		hang_and_count(&d);
		if (raw(d.book, row[i].sql) != SQLITE_OK)
			fail_msg("%s: %s", row[i].why, sqlite3_errmsg(d.book->db));
		expect(&d, 1, row[i].says);
		desk_clear(&d);
	}
}

static void book_check_finds_rows_and_settings_out_of_range(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	hang_and_count(&d);
	assert_int_equal(raw(d.book, "UPDATE farm SET season_start = 231;"
				     "INSERT INTO setting (name, value, uid, "
				     "changed_at, changed_by) VALUES ('open_days', "
				     "'70', randomblob(16), "
				     "'2026-07-21T07:42:11.123Z', '')"),
		SQLITE_OK);
	expect(&d, 2, "in the table farm, season_start is \"231\"");
	expect(&d, 2, "in the table setting, the setting open_days is \"70\"");
	desk_clear(&d);
}

static void book_check_finds_a_trigger_that_is_not_ours(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	hang_and_count(&d);
	assert_int_equal(raw(d.book, "CREATE TRIGGER evil AFTER INSERT ON visit BEGIN "
				     "DELETE FROM visit WHERE id = new.id; END"),
		SQLITE_OK);
	expect(&d, 1, "changed by another program: trigger evil is not ours");
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_check_finds_nothing_in_a_sound_book),
		cmocka_unit_test(book_check_finds_what_does_not_hang_together),
		cmocka_unit_test(book_check_finds_a_stock_counted_on_a_day_to_come),
		cmocka_unit_test(book_check_finds_rows_without_their_parent),
		cmocka_unit_test(book_check_finds_a_value_out_of_range),
		cmocka_unit_test(book_check_goes_on_after_a_bad_visit),
		cmocka_unit_test(book_check_finds_texts_that_cannot_be_shown),
		cmocka_unit_test(book_check_finds_rows_and_settings_out_of_range),
		cmocka_unit_test(book_check_finds_a_trigger_that_is_not_ours),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
