/* A book from a stranger: nothing of it runs, and it is refused or read. */
#include "fixture.h"

#include "../../src/book/shape.h"

static void raw_file(const char *path, const char *sql)
{
	char *why = NULL;
	sqlite3 *db;

	assert_int_equal(sqlite3_open(path, &db), SQLITE_OK);
	if (sqlite3_exec(db, sql, NULL, NULL, &why) != SQLITE_OK)
		fail_msg("%.300s: %s", sql, why);
	sqlite3_close(db);
}

static void desk_closed(struct desk *d)
{
	desk_disk(d);
	book_close(d->book);
	d->book = NULL;
}

static void desk_old(struct desk *d)
{
	size_t n;
	char *sql = file_bytes("tests/book/v1.sql", &n);

	sql[n] = '\0';
	desk_folder(d);
	raw_file(d->path, sql);
	free(sql);
}

static void book_is_opened_warily(void **state)
{
	static const enum book_open how[] = { BOOK_EXISTING, BOOK_READ };
	struct desk d;

	(void)state;
	desk_closed(&d);
	for (size_t i = 0; i < 2; i++) {
		int defensive = -1, views = -1, triggers = -1;
		must(d.book = book_open(d.path, how[i], "", e));
		sqlite3 *db = d.book->db;
		sqlite3_db_config(db, SQLITE_DBCONFIG_DEFENSIVE, -1, &defensive);
		sqlite3_db_config(db, SQLITE_DBCONFIG_ENABLE_VIEW, -1, &views);
		sqlite3_db_config(db, SQLITE_DBCONFIG_ENABLE_TRIGGER, -1, &triggers);
		assert_int_equal(defensive, 1);
		assert_int_equal(views, 0);
		assert_int_equal(triggers, 1); /* ours write the history */
		assert_int_equal(store_number(d.book, "PRAGMA trusted_schema", 1), 0);
		assert_int_equal(store_number(d.book, "PRAGMA cell_size_check", 0), 1);
		assert_int_equal(store_number(d.book, "PRAGMA foreign_keys", 0), 1);
		assert_int_equal(store_number(d.book, "PRAGMA query_only", -1),
			how[i] == BOOK_READ);
		assert_true(sqlite3_limit(db, SQLITE_LIMIT_LENGTH, -1) < 1 << 25);
		assert_int_equal(sqlite3_limit(db, SQLITE_LIMIT_ATTACHED, -1), 1);
		assert_int_not_equal(raw(d.book, "PRAGMA writable_schema = ON; UPDATE "
						 "sqlite_schema SET sql = ''"),
			SQLITE_OK);
		assert_int_not_equal(
			raw(d.book, "SELECT load_extension('none')"), SQLITE_OK);
		book_close(d.book);
		d.book = NULL;
	}
	desk_clear(&d);
}

struct strange {
	const char *why, *sql, *says;
};

/* As it was, and no copy of it is left. */
static void assert_alone(const struct desk *d, const char *bytes, size_t n)
{
	DIR *dir = opendir(d->folder);
	int entries = 0;

	assert_unchanged(d->path, bytes, n);
	assert_non_null(dir);
	while (readdir(dir))
		entries++;
	closedir(dir);
	assert_int_equal(entries, 3); /* with . and .. */
}

/* Of version 1, whose shape is not known before it is upgraded. */
static void book_of_an_older_stranger_is_refused_untouched(void **state)
{
	static const struct strange row[] = {
		{ "a trigger on what the upgrade empties",
			"CREATE TRIGGER evil BEFORE DELETE ON visit BEGIN INSERT INTO "
			"no_such_table VALUES (1); END",
			"" },
		{ "a trigger on what it fills",
			"CREATE TRIGGER evil AFTER INSERT ON history BEGIN DELETE FROM "
			"visit; END",
			"" },
		{ "a view", "CREATE VIEW evil AS SELECT * FROM visit",
			"view evil is not ours" },
		{ "a table more", "CREATE TABLE evil (x)", "table evil is not ours" },
		{ "a view in place of a table",
			"DROP TABLE tombstone; CREATE VIEW tombstone AS SELECT 1 AS "
			"uid, 2 AS kind, 3 AS changed_at, 4 AS changed_by",
			"" },
		{ "a column that is worked out",
			"ALTER TABLE tombstone ADD COLUMN evil TEXT AS (hex(uid))",
			"" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct err err = { 0 };
		struct desk d;
		size_t n;

		desk_old(&d);
		raw_file(d.path, row[i].sql);
		char *before = file_bytes(d.path, &n);
		d.book = book_open(d.path, BOOK_EXISTING, "", &err);
		if (d.book) /* what was not ours went with its table, and never ran */
			assert_int_equal(
				store_number(d.book, "SELECT count(*) FROM visit", -1),
				3);
		else if (err.kind != ERR_BOOK || !strstr(err.text, row[i].says))
			fail_msg("%s: %s", row[i].why, err.text);
		else
			assert_alone(&d, before, n);
		free(before);
		desk_clear(&d);
	}
}

static void book_upgrade_runs_no_trigger(void **state)
{
	static const struct upgrade steps[] = { { STORE_VERSION + 1,
		"UPDATE farm SET season_start = 102" } };
	static const struct upgrades later = { STORE_VERSION + 1, steps, 1 };
	struct desk d;

	(void)state;
	desk_closed(&d);
	raw_file(d.path, "CREATE TRIGGER evil AFTER UPDATE ON farm BEGIN DELETE FROM "
			 "trap; END");
	must(d.book = store_open(d.path, BOOK_EXISTING, "", &later, e));
	assert_int_equal(
		store_number(d.book, "SELECT season_start FROM farm", -1), 102);
	assert_int_equal(store_number(d.book, "SELECT count(*) FROM trap", -1), 1);
	desk_clear(&d);
}

/* Past triggers and CHECKs, which stay. */
static void smuggle(struct desk *d, const char *sql)
{
	sqlite3 *db;

	desk_closed(d);
	assert_int_equal(sqlite3_open(d->path, &db), SQLITE_OK);
	sqlite3_db_config(db, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, NULL);
	sqlite3_exec(db, "PRAGMA ignore_check_constraints = ON", NULL, NULL, NULL);
	if (sqlite3_exec(db, sql, NULL, NULL, NULL) != SQLITE_OK)
		fail_msg("%.300s: %s", sql, sqlite3_errmsg(db));
	sqlite3_close(db);
}

static void tell_nobody(void *arg, const char *text)
{
	(void)arg;
	(void)text;
}

static void book_with_a_huge_row_is_refused_where_it_is_met(void **state)
{
	static const char *const row[] = {
		"UPDATE farm SET name = printf('%.*c', 40000000, 'x')",
		"UPDATE pest SET latin = printf('%.*c', 40000000, 'x')",
		"UPDATE farm SET name = (SELECT group_concat(name) FROM farm, (WITH "
		"RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < "
		"3000000) SELECT i FROM n))",
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct farms farms = { 0 };
		struct pests pests = { 0 };
		struct err err = { 0 };
		struct desk d;
		int found = 0;

		smuggle(&d, row[i]);
		must(d.book = book_open(d.path, BOOK_EXISTING, "", e));
		bool read = book_farms(d.book, &farms, &err) &&
			    book_pests(d.book, &pests, &err);
		if (read || err.kind != ERR_BOOK || !strstr(err.text, "too big"))
			fail_msg("%s: %s", row[i], err.text);
		assert_false(
			book_check(d.book, 30000, tell_nobody, NULL, &found, &err) &&
			found == 0);
		free(farms.items);
		free(pests.items);
		desk_clear(&d);
	}
}

/* The planner believes what it is told there: it may be slow, never wrong. */
static void book_with_lying_statistics_answers_the_same(void **state)
{
	static const char *const row[] = {
		"INSERT INTO sqlite_stat1 VALUES ('visit', 'none', '0 0 0')",
		"UPDATE sqlite_stat1 SET stat = '9223372036854775807 1 1'",
		"UPDATE sqlite_stat1 SET stat = '-1 -1 x unordered sz=0'",
		"UPDATE sqlite_stat1 SET stat = zeroblob(100000)",
		"UPDATE sqlite_stat1 SET tbl = 'sqlite_schema', idx = NULL",
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct desk d;
		struct visit v, got;

		desk_closed(&d);
		raw_file(d.path, "ANALYZE");
		raw_file(d.path, row[i]);
		must(d.book = book_open(d.path, BOOK_EXISTING, "", e));
		v = counted(d.trap, 20000, 7);
		must(book_save_visit(d.book, &v, NULL, e));
		must(book_visit(d.book, d.trap, 20000, &got, NULL, e));
		assert_int_equal(got.count, 7);
		desk_clear(&d);
	}
}

/* As deep as SQLite writes one, and deeper than it reads one. */
static void book_with_a_deep_schema_is_refused(void **state)
{
	static const struct strange row[] = {
		{ "as deep as it is written",
			"CREATE VIEW deep AS SELECT ((((((((((1"
			"))))))))))",
			"view deep is not ours" },
		{ "deeper than it is read",
			"CREATE VIEW deep AS SELECT 1; PRAGMA writable_schema = ON; "
			"UPDATE sqlite_schema SET sql = 'CREATE VIEW deep AS SELECT ' "
			"|| replace(printf('%.50000c', ' '), ' ', '(') || '1' || "
			"replace(printf('%.50000c', ' '), ' ', ')') WHERE name = "
			"'deep'",
			"damaged" },
		{ "a name that is SQLite's own",
			"CREATE VIEW deep AS SELECT 1; PRAGMA writable_schema = ON; "
			"UPDATE sqlite_schema SET name = 'sqlite_stat1', tbl_name = "
			"'sqlite_stat1' WHERE name = 'deep'",
			"" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct err err = { 0 };
		struct desk d;

		desk_closed(&d);
		raw_file(d.path, row[i].sql);
		d.book = book_open(d.path, BOOK_EXISTING, "", &err);
		if (d.book || !strstr(err.text, row[i].says))
			fail_msg("%s: %s", row[i].why, err.text);
		desk_clear(&d);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_is_opened_warily),
		cmocka_unit_test(book_of_an_older_stranger_is_refused_untouched),
		cmocka_unit_test(book_upgrade_runs_no_trigger),
		cmocka_unit_test(book_with_a_huge_row_is_refused_where_it_is_met),
		cmocka_unit_test(book_with_lying_statistics_answers_the_same),
		cmocka_unit_test(book_with_a_deep_schema_is_refused),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
