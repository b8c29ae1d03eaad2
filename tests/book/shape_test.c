/* A book whose tables or triggers are not ours is refused: whoever made it. */
#include "fixture.h"

/* The book on disk, changed by plain SQLite. */
static void change(struct desk *d, const char *sql)
{
	char *why = NULL;
	sqlite3 *db;

	desk_disk(d);
	book_close(d->book);
	d->book = NULL;
	assert_int_equal(sqlite3_open(d->path, &db), SQLITE_OK);
	assert_int_equal(store_add_json(db), SQLITE_OK);
	if (sqlite3_exec(db, sql, NULL, NULL, &why) != SQLITE_OK)
		fail_msg("%s: %s", sql, why);
	sqlite3_close(db);
}

struct shape {
	const char *why, *sql, *says;
};

static void book_of_another_shape_is_refused_untouched(void **state)
{
	static const struct shape row[] = {
		{ "a trigger that takes counts away",
			"CREATE TRIGGER evil AFTER INSERT ON visit BEGIN "
			"DELETE FROM visit WHERE id = new.id; END",
			"trigger evil is not ours" },
		{ "a name before all of ours", "CREATE VIEW a AS SELECT 1",
			"view a is not ours" },
		{ "a name after all of ours", "CREATE TABLE zz (x)",
			"table zz is not ours" },
		{ "an index", "CREATE INDEX quick ON visit (day)",
			"index quick is not ours" },
		{ "a column more", "ALTER TABLE farm ADD COLUMN phone TEXT",
			"table farm is not ours" },
		{ "a trigger gone", "DROP TRIGGER visit_changed",
			"trigger visit_changed is missing" },
		{ "the last thing gone", "DROP TRIGGER weather_removed",
			"trigger weather_removed is missing" },
		{ "a trigger of ours that does something else",
			"DROP TRIGGER visit_changed; CREATE TRIGGER visit_changed "
			"AFTER UPDATE ON visit BEGIN SELECT 1; END",
			"trigger visit_changed is not ours" },
		{ "a trigger of ours on another table",
			"DROP TRIGGER visit_changed; CREATE TRIGGER visit_changed "
			"AFTER UPDATE ON trap BEGIN SELECT 1; END",
			"trigger visit_changed is not ours" },
		{ "a check let loose",
			"PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = "
			"replace(sql, 'BETWEEN 0 AND 9999', 'BETWEEN 0 AND 99999') "
			"WHERE name = 'visit'",
			"table visit is not ours" },
		{ "a name in other quotes",
			"PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = "
			"replace(sql, 'ON visit', 'ON \"visit\"') WHERE name = "
			"'visit_changed'",
			"trigger visit_changed is not ours" },
		{ "a table that says less",
			"PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = "
			"replace(sql, ') STRICT', ')') WHERE name = 'farm'",
			"table farm is not ours" },
		{ "blanks within a word in quotes",
			"PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = "
			"replace(sql, 'card lost', 'card  lost') WHERE name = 'visit'",
			"table visit is not ours" },
	};
	static const enum book_open how[] = { BOOK_CREATE, BOOK_EXISTING, BOOK_READ };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct desk d;
		size_t n;
		change(&d, row[i].sql);
		char *before = file_bytes(d.path, &n);
		for (size_t k = 0; k < 3; k++) {
			struct err err = { 0 };
			d.book = book_open(d.path, how[k], "", &err);
			if (d.book || err.kind != ERR_BOOK ||
				!strstr(err.text, row[i].says) ||
				!strstr(err.text, "changed by another program"))
				fail_msg("%s: %s", row[i].why, err.text);
		}
		assert_unchanged(d.path, before, n);
		free(before);
		desk_clear(&d);
	}
}

static void book_of_our_shape_opens(void **state)
{
	static const struct shape row[] = {
		{ "nothing changed", "", "" },
		{ "statistics", "ANALYZE", "" },
		{ "a vacuum", "VACUUM", "" },
		{ "blanks and comments",
			"PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = "
			"replace(sql, char(9), '   ') || ' -- ours' "
			"WHERE type = 'table' AND name = 'visit'",
			"" },
		{ "lines that end as on another system",
			"PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = "
			"replace(sql, char(10), char(13, 10)) WHERE type = 'table'",
			"" },
		{ "comments at the end of a word",
			"PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = "
			"replace(sql, ' TEXT', ' TEXT-- it is one' || char(10)) WHERE "
			"name = 'farm'",
			"" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct err err = { 0 };
		struct desk d;
		change(&d, row[i].sql);
		d.book = book_open(d.path, BOOK_EXISTING, "", &err);
		if (!d.book)
			fail_msg("%s: %s", row[i].why, err.text);
		desk_clear(&d);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_of_another_shape_is_refused_untouched),
		cmocka_unit_test(book_of_our_shape_opens),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
