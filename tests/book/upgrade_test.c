#include "fixture.h"

#include "book/weather.h"

#include <math.h>

/* The book of a released version, written by plain SQLite. */
static void write_book(struct desk *d, const char *dump)
{
	sqlite3 *db;
	char *sql, *why = NULL;
	size_t n;

	desk_folder(d);
	sql = file_bytes(dump, &n);
	sql[n] = '\0';
	assert_int_equal(sqlite3_open(d->path, &db), SQLITE_OK);
	if (sqlite3_exec(db, sql, NULL, NULL, &why) != SQLITE_OK)
		fail_msg("%s: %s", dump, why);
	sqlite3_close(db);
	free(sql);
}

/* What the book of version 1 holds, whatever version it has been brought to. */
static void assert_content(struct book *b)
{
	int32_t day = day_from_ymd(2026, 5, 8);
	struct old_visits old = { 0 };
	struct visits visits = { 0 };
	struct rules rules = { 0 };
	struct weather_days days = { 0 };
	struct biofix_dates biofixes = { 0 };
	struct visit_words w;
	struct visit v;

	must(book_visits(b, 0, 0, 30000, &visits, e));
	assert_int_equal(visits.n, 3);
	assert_int_equal(visits.items[0].outcome, OUTCOME_HUNG);
	assert_int_equal(visits.items[0].new_lure, 1);
	assert_int_equal(visits.items[2].reason, REASON_WEATHER);
	assert_int_equal(visits.items[2].count, COUNT_NONE);
	must(book_visit(b, 1, day, &v, &w, e));
	assert_int_equal(v.count, 14);
	assert_string_equal(w.note, "it's \"wet\"");
	must(book_old_visits(b, 1, day, &old, e));
	assert_int_equal(old.n, 1);
	assert_int_equal(old.items[0].visit.count, 4);
	must(book_rules(b, &rules, e));
	assert_int_equal(rules.n, 1);
	assert_int_equal(rules.items[0].value_x100, 500);
	must(book_weather(b, 1, 0, 30000, &days, e));
	assert_int_equal(days.n, 2);
	assert_true(days.items[0].min == 7.5 && days.items[0].unit == 'C');
	assert_true(isnan(days.items[1].min) && days.items[1].max == 64);
	must(book_biofixes(b, &biofixes, e));
	assert_int_equal(biofixes.n, 1);
	assert_int_equal(biofixes.items[0].day, day);
	free(visits.items);
	free(old.items);
	free(rules.items);
	free(days.items);
	free(biofixes.items);
}

static void book_of_version_1_opens(void **state)
{
	struct undone u;
	struct desk d;
	int found;

	(void)state;
	write_book(&d, "tests/book/v1.sql");
	must(d.book = book_open(d.path, BOOK_EXISTING, "", e));
	assert_content(d.book);
	must(book_check(d.book, 30000, NULL, NULL, &found, e));
	assert_int_equal(found, 0);
	must(book_undo_visit(d.book, 1, 0, 30000, NULL, &u, e));
	assert_int_equal(u.was.count, 14);
	desk_clear(&d);
}

static const struct upgrade made_up_steps[] = {
	{ 2, "ALTER TABLE farm ADD COLUMN phone TEXT; UPDATE farm SET phone = "
	     "'none';" },
	{ 3, "ALTER TABLE farm RENAME COLUMN phone TO radio;" },
};
static const struct upgrades made_up = { 3, made_up_steps, 2 };

static void book_of_an_older_version_is_brought_up_after_a_backup(void **state)
{
	char backup[128];
	struct book *old;
	struct desk d;

	(void)state;
	write_book(&d, "tests/book/v1.sql");
	refused(store_open(d.path, BOOK_READ, "", &made_up, e), ERR_BOOK,
		"older mothtally");
	must(d.book = store_open(d.path, BOOK_EXISTING, "", &made_up, e));
	assert_int_equal(store_number(d.book, "PRAGMA user_version", 0), 3);
	assert_int_equal(store_number(d.book,
				 "SELECT count(*) FROM farm WHERE radio = 'none'", 0),
		1);
	assert_content(d.book);
	snprintf(backup, sizeof backup, "%s.version-1", d.path);
	must(old = book_open(backup, BOOK_READ, "", e));
	assert_content(old);
	book_close(old);
	book_close(d.book);
	must(d.book = store_open(
		     d.path, BOOK_EXISTING, "", &made_up, e)); /* once only */
	snprintf(backup, sizeof backup, "%s.version-3", d.path);
	assert_int_equal(access(backup, F_OK), -1);
	desk_clear(&d);
}

static void book_whose_upgrade_fails_stays_as_it_was(void **state)
{
	static const struct upgrade steps[] = {
		{ 2, "ALTER TABLE farm ADD COLUMN phone TEXT; DELETE FROM visit;" },
		{ 3, "ALTER TABLE no_such_table ADD COLUMN x;" },
	};
	static const struct upgrades failing = { 3, steps, 2 };
	struct desk d;
	size_t n;

	(void)state;
	write_book(&d, "tests/book/v1.sql");
	char *before = file_bytes(d.path, &n);
	refused(store_open(d.path, BOOK_EXISTING, "", &failing, e), ERR_BOOK,
		"not brought to the new version");
	assert_unchanged(d.path, before, n);
	must(d.book = book_open(d.path, BOOK_EXISTING, "", e));
	assert_content(d.book);
	free(before);
	desk_clear(&d);
}

static void book_of_a_version_never_released_is_refused(void **state)
{
	static const struct upgrades gap = { 3, made_up_steps + 1, 1 };
	char backup[128];
	struct desk d;
	size_t n;

	(void)state;
	write_book(&d, "tests/book/v1.sql");
	char *before = file_bytes(d.path, &n);
	refused(store_open(d.path, BOOK_EXISTING, "", &gap, e), ERR_BOOK,
		"never released");
	assert_unchanged(d.path, before, n);
	snprintf(backup, sizeof backup, "%s.version-1", d.path);
	assert_int_equal(access(backup, F_OK), -1);
	free(before);
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_of_version_1_opens),
		cmocka_unit_test(book_of_an_older_version_is_brought_up_after_a_backup),
		cmocka_unit_test(book_whose_upgrade_fails_stays_as_it_was),
		cmocka_unit_test(book_of_a_version_never_released_is_refused),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
