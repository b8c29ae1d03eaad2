/* Where merging ends: at names that are taken, at the book itself, at more differences
 * than anybody reads. */
#include "parted.h"

/* The next number is somebody's name already. */
static void name_that_a_merge_gives_is_nobodys(void **state)
{
	struct two t = { 0 };

	(void)state;
	shelf_make(&t.shelf);
	typed_alone(&t, "JR", t.a, "2", 0);
	typed_alone(&t, "MB", t.b, "2", 1);
	run_sql(t.a, "JR",
		"INSERT INTO trap (farm, block, pest, label, driving_order, uid, "
		"changed_at, changed_by) SELECT farm, block, pest, '2 (2)', 3, "
		"randomblob(16), changed_at, changed_by FROM trap WHERE label = '2'");
	merge(t.a, t.b);
	merge(t.b, t.a);
	assert_alike(t.a, t.b);
	assert_int_equal(
		number(t.a, "SELECT count(*) FROM trap WHERE label = '2 (3)'"), 1);
	rejoin(&t);
}

static void book_is_not_merged_into_itself_nor_amid_changes(void **state)
{
	struct merge_report report = { 0 };
	char path[96], again[96];
	struct book *b;
	struct two t;

	(void)state;
	part(&t);
	shelf_path(&t.shelf, again);
	assert_int_equal(symlink(t.a, again), 0);
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	refused(book_merge(b, t.a, &report, e), ERR_INPUT, "is the book itself");
	refused(book_merge(b, again, &report, e), ERR_INPUT, "is the book itself");
	shelf_path(&t.shelf, path);
	refused(book_merge(b, path, &report, e), ERR_NOT_FOUND, "no book at");
	must(book_begin(b, e));
	refused(book_merge(b, t.b, &report, e), ERR_BOOK, "changes are under way");
	book_rollback(b);
	must(book_merge(b, t.b, &report, e));
	book_merge_free(&report);
	book_close(b);
	rejoin(&t);
}

/* Nobody reads more of them than a page or two; how many there are is told. */
static void differences_are_listed_up_to_a_bound(void **state)
{
	static const char rename[] =
		"UPDATE place SET name = name || '%s', changed_at = "
		"'2024-11-0%dT07:00:00.000Z', changed_by = '%s'";
	struct merge_report report = { 0 };
	struct book *b;
	char sql[256];
	struct two t;

	(void)state;
	part(&t);
	snprintf(sql, sizeof sql,
		"WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n "
		"WHERE i <= %d) INSERT INTO place (farm, name, kind, uid, changed_at, "
		"changed_by) SELECT 1, 'pile ' || i, 'bins', randomblob(16), "
		"'2024-10-11T07:00:00.000Z', 'JR' FROM n",
		MERGE_LISTED);
	run_sql(t.a, "JR", sql);
	merge(t.b, t.a);
	snprintf(sql, sizeof sql, rename, " old", 1, "JR");
	run_sql(t.a, "JR", sql);
	snprintf(sql, sizeof sql, rename, " new", 2, "MB");
	run_sql(t.b, "MB", sql);
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	must(book_merge(b, t.b, &report, e));
	assert_int_equal(report.differences.n, MERGE_LISTED);
	assert_int_equal(report.differences.all, MERGE_LISTED + 1);
	book_merge_free(&report);
	book_close(b);
	rejoin(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(name_that_a_merge_gives_is_nobodys),
		cmocka_unit_test(book_is_not_merged_into_itself_nor_amid_changes),
		cmocka_unit_test(differences_are_listed_up_to_a_bound),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
