/* What a merge leaves alone, what it refuses, and taking it back. */
#include "parted.h"

static void merge_taken_back_gives_the_book_before_it(void **state)
{
	struct merge_report report = { 0 };
	struct merge_undo u;
	struct book *b;
	char kept[96];
	struct two t;

	(void)state;
	part(&t);
	count(t.b, "MB", counted(t.desk.trap, DAY0 + 14, 9));
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	refused(book_merge_undo(b, &u, e), ERR_NOT_FOUND, "no book was merged");
	char *before = book_content(b);
	must(book_merge(b, t.b, &report, e));
	assert_true(*report.kept);
	must(book_merge_undo(b, &u, e));
	book_close(b);
	must(book_restore(t.a, u.kept, kept, sizeof kept, e));
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	char *after = book_content(b);
	assert_string_equal(after, before);
	free(before);
	free(after);
	free(u.kept);
	book_merge_free(&report);
	book_close(b);
	rejoin(&t);
}

static void merge_is_not_taken_back_over_later_changes(void **state)
{
	struct merge_undo u;
	struct book *b;
	struct two t;

	(void)state;
	part(&t);
	count(t.b, "MB", counted(t.desk.trap, DAY0 + 14, 9));
	merge(t.a, t.b);
	count(t.a, "JR", counted(t.desk.trap, DAY0 + 21, 1));
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	refused(book_merge_undo(b, &u, e), ERR_INPUT, "was changed since");
	book_close(b);
	rejoin(&t);
}

static void look_changes_no_byte_of_either_book(void **state)
{
	struct merge_report report = { 0 };
	size_t n_a, n_b;
	struct book *b;
	struct two t;

	(void)state;
	part(&t);
	count(t.b, "MB", counted(t.desk.trap, DAY0 + 14, 9));
	char *a = file_bytes(t.a, &n_a), *other = file_bytes(t.b, &n_b);
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	must(book_merge_look(b, t.b, &report, e));
	assert_int_equal(report.n_counts, 1);
	assert_int_equal(report.counts[0].came, 1);
	book_close(b);
	assert_unchanged(t.a, a, n_a);
	assert_unchanged(t.b, other, n_b);
	free(a);
	free(other);
	book_merge_free(&report);
	rejoin(&t);
}

static void undo_of_ones_own_stays_away_from_what_a_merge_brought(void **state)
{
	struct undone u;
	struct book *b;
	struct two t;

	(void)state;
	part(&t);
	count(t.b, "JR", counted(t.desk.trap, DAY0 + 14, 9));
	merge(t.a, t.b);
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	must(book_undo_visit(b, &(struct undo_reach){ 0, 0, 0, 30000, "JR" }, &u,
		e)); /* its own count of 4 */
	assert_int_equal(u.day, DAY0 + 7);
	book_close(b);
	rejoin(&t);
}

static void book_of_version_1_is_merged_from_a_copy(void **state)
{
	struct merge_report report = { 0 };
	size_t n;
	struct book *b;
	sqlite3 *db;
	struct two t;

	(void)state;
	part(&t);
	char old[96], *sql = file_bytes("tests/book/v1.sql", &n);
	sql[n] = '\0';
	shelf_path(&t.shelf, old);
	assert_int_equal(sqlite3_open(old, &db), SQLITE_OK);
	assert_int_equal(sqlite3_exec(db, sql, NULL, NULL, NULL), SQLITE_OK);
	sqlite3_close(db);
	free(sql);
	char *before = file_bytes(old, &n);
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	must(book_merge(b, old, &report, e));
	book_close(b);
	assert_int_equal(number(t.a, "SELECT count(*) FROM visit"), 5);
	assert_unchanged(old, before, n);
	free(before);
	book_merge_free(&report);
	rejoin(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(merge_taken_back_gives_the_book_before_it),
		cmocka_unit_test(merge_is_not_taken_back_over_later_changes),
		cmocka_unit_test(look_changes_no_byte_of_either_book),
		cmocka_unit_test(undo_of_ones_own_stays_away_from_what_a_merge_brought),
		cmocka_unit_test(book_of_version_1_is_merged_from_a_copy),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
