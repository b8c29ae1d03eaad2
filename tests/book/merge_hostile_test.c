/* Books of strangers: nothing of them comes in unless all of it may, and neither book
 * is changed by trying. */
#include "merging.h"

/* A book as another program may have left it: past all CHECKs and triggers. */
static void craft_file(struct shelf *s, const char *sql, char out[static 96])
{
	sqlite3 *db;
	struct desk d;

	desk_memory(&d);
	struct visit v = counted(d.trap, DAY0, 7);
	must(book_save_visit(d.book, &v, NULL, e));
	shelf_put(s, d.book, out);
	desk_clear(&d);
	assert_int_equal(sqlite3_open(out, &db), SQLITE_OK);
	sqlite3_exec(db, "PRAGMA ignore_check_constraints = ON", NULL, NULL, NULL);
	if (sqlite3_exec(db, sql, NULL, NULL, NULL) != SQLITE_OK)
		fail_msg("%s: %s", sql, sqlite3_errmsg(db));
	sqlite3_close(db);
}

static void other_book_that_is_not_whole_is_refused(void **state)
{
	static const struct {
		const char *why, *sql, *words;
	} row[] = {
		{ "a newer one", "PRAGMA user_version = 99", "newer mothtally" },
		{ "of another program", "PRAGMA application_id = 1",
			"another program" },
		{ "a trigger of its own",
			"CREATE TRIGGER mine AFTER INSERT ON visit BEGIN DELETE FROM "
			"visit; END",
			"is not ours" },
		{ "a view in place of a table",
			"ALTER TABLE pick RENAME TO p; CREATE VIEW pick AS SELECT * "
			"FROM p",
			"is not ours" },
		{ "a count out of range", "UPDATE visit SET count = 123456",
			"damaged" },
		{ "an outcome that there is none",
			"UPDATE visit SET outcome = 'eaten', count = NULL", "damaged" },
		{ "a visit of no trap", "PRAGMA foreign_keys = OFF; DELETE FROM trap",
			"a visit names a trap" },
		{ "a visit with a card that there is none",
			"PRAGMA foreign_keys = OFF; UPDATE visit SET new_card = 4711",
			"a visit names a trap, a card or a lure" },
		{ "a visit with a lure that there is none",
			"PRAGMA foreign_keys = OFF; UPDATE visit SET new_lure = 4711",
			"a visit names a trap, a card or a lure" },
		{ "an escape in a note",
			"UPDATE visit SET note = 'a' || char(27) || '[2J'",
			"cannot be printed" },
		{ "an escape in a name",
			"UPDATE farm SET name = 'a' || char(27) || '[2J'",
			"cannot be printed" },
		{ "torn letters in a name",
			"UPDATE farm SET name = CAST(x'61ff62' AS TEXT)",
			"cannot be printed" },
		{ "a history that is none",
			"INSERT INTO history (kind, uid, op, old, at, by) VALUES "
			"('farm', randomblob(16), 'update', 'x', "
			"'2024-10-11T07:00:00.000Z', '')",
			"history" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct merge_report report = { 0 };
		struct err err = { 0 };
		struct shelf s;
		struct desk d;
		char other[96];
		size_t n;
		shelf_make(&s);
		craft_file(&s, row[i].sql, other);
		char *bytes = file_bytes(other, &n);
		desk_memory(&d);
		char *before = book_content(d.book);
		if (book_merge(d.book, other, &report, &err))
			fail_msg("%s: not refused", row[i].why);
		if (!strstr(err.text, row[i].words) || strchr(err.text, '\n'))
			fail_msg("%s: \"%s\"", row[i].why, err.text);
		char *after = book_content(d.book);
		assert_string_equal(after, before);
		assert_unchanged(other, bytes, n);
		free(before);
		free(after);
		free(bytes);
		desk_clear(&d);
		drop_folder(s.folder);
	}
}

static void other_file_that_is_no_book_is_refused(void **state)
{
	static const struct {
		const char *why, *bytes, *words;
	} row[] = {
		{ "empty", "", "not a book" },
		{ "a text", "farm,trap,date\n", "not a book" },
	};
	struct merge_report report = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct shelf s;
		struct desk d;
		char other[96];
		shelf_make(&s);
		shelf_path(&s, other);
		file_write(other, row[i].bytes, strlen(row[i].bytes));
		desk_memory(&d);
		refused(book_merge(d.book, other, &report, e), ERR_BOOK, row[i].words);
		refused(book_merge(d.book, s.folder, &report, e), ERR_BOOK,
			"not a file");
		refused(book_merge(d.book, "/dev/null", &report, e), ERR_BOOK,
			"not a file");
		refused(book_merge(d.book, "/nowhere/book.db", &report, e),
			ERR_NOT_FOUND, "no book at");
		desk_clear(&d);
		drop_folder(s.folder);
	}
}

/* Any SQL in a text is a text. */
static void names_that_look_like_sql_come_in_as_they_are(void **state)
{
	struct merge_report report = { 0 };
	struct shelf s;
	struct desk d;
	char other[96];

	(void)state;
	shelf_make(&s);
	craft_file(&s, "UPDATE block SET name = '''; DROP TABLE visit; --\"'", other);
	desk_memory(&d);
	must(book_merge(d.book, other, &report, e));
	assert_int_equal(store_number(d.book,
				 "SELECT count(*) FROM block WHERE name = '''; DROP "
				 "TABLE visit; --\"'",
				 0),
		1);
	book_merge_free(&report);
	desk_clear(&d);
	drop_folder(s.folder);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(other_book_that_is_not_whole_is_refused),
		cmocka_unit_test(other_file_that_is_no_book_is_refused),
		cmocka_unit_test(names_that_look_like_sql_come_in_as_they_are),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
