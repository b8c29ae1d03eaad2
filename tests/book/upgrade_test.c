#include "fixture.h"

#include "../../src/book/shape.h"
#include "book/backups.h"
#include "book/steps.h"
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

static void tell(void *arg, const char *text)
{
	(void)arg;
	print_error("%s\n", text);
}

static void assert_sound(struct book *b)
{
	int found;

	must(book_check(b, 30000, tell, NULL, &found, e));
	assert_int_equal(found, 0);
}

static void book_of_version_1_opens(void **state)
{
	struct undone u;
	struct desk d;

	(void)state;
	write_book(&d, "tests/book/v1.sql");
	must(d.book = book_open(d.path, BOOK_EXISTING, "", e));
	assert_content(d.book);
	assert_sound(d.book);
	assert_int_equal(store_number(d.book, "PRAGMA foreign_keys", 0), 1);
	must(book_undo_visit(
		d.book, &(struct undo_reach){ 1, 0, 0, 30000, NULL }, &u, e));
	assert_int_equal(u.was.count, 14);
	desk_clear(&d);
}

static void book_of_version_1_has_nothing_on_the_shelf_or_put_away(void **state)
{
	struct lure_kinds lures = { 0 };
	struct farms farms = { 0 };
	struct desk d;

	(void)state;
	write_book(&d, "tests/book/v1.sql");
	must(d.book = book_open(d.path, BOOK_EXISTING, "", e));
	must(book_farms(d.book, &farms, e));
	must(book_lures(d.book, &lures, e));
	assert_false(farms.items[0].retired || lures.items[0].retired);
	assert_int_equal(lures.items[0].stock.n, -1);
	assert_int_equal(lures.items[0].stock.reorder, -1);
	free(farms.items);
	free(lures.items);
	desk_clear(&d);
}

static void book_of_version_1_keeps_its_steps(void **state)
{
	struct undone_step u;
	struct visit got;
	struct desk d;

	(void)state;
	write_book(&d, "tests/book/v1.sql");
	must(d.book = book_open(d.path, BOOK_EXISTING, "JR", e));
	struct farm f = { .name = "Drumsorrel", .season_start = 101 };
	must(book_put_farm(d.book, &f, e));
	must(book_undo_step(d.book, NULL, 0, &u, e));
	assert_string_equal(u.name, "farm Drumsorrel");
	refused(book_undo_step(d.book, "Ida", 0, &u, e), ERR_INPUT,
		"was changed since by Office on 2026-05-08 at 18:00 UTC");
	must(book_undo_step(d.book, NULL, 0, &u, e));
	must(book_visit(d.book, 1, day_from_ymd(2026, 5, 8), &got, NULL, e));
	assert_int_equal(got.count, 4);
	must(book_undo_step(d.book, NULL, 0, &u, e));
	assert_true(u.was_new);
	refused(book_undo_step(d.book, NULL, 0, &u, e), ERR_NOT_FOUND, "left");
	desk_clear(&d);
}

/* In the columns that the table had in the older book. */
static void assert_rows_kept(struct book *b, const char *table, const char *columns)
{
	char sql[1024];

	snprintf(sql, sizeof sql,
		"SELECT (SELECT count(*) FROM (SELECT %s FROM old.%s EXCEPT SELECT %s "
		"FROM main.%s)) + (SELECT count(*) FROM main.%s) - (SELECT count(*) "
		"FROM old.%s)",
		columns, table, columns, table, table, table);
	if (store_number(b, sql, -1) != 0)
		fail_msg("rows of %s are lost or changed", table);
}

static void book_of_version_1_keeps_every_row_of_every_table(void **state)
{
	struct query q;
	char sql[160];
	struct desk d;
	int tables = 0;

	(void)state;
	write_book(&d, "tests/book/v1.sql");
	must(d.book = book_open(d.path, BOOK_EXISTING, "", e));
	snprintf(sql, sizeof sql, "ATTACH '%s.version-1' AS old", d.path);
	assert_int_equal(raw(d.book, sql), SQLITE_OK);
	query_start(&q, d.book,
		"SELECT m.name, group_concat('\"' || c.name || '\"') FROM "
		"old.sqlite_schema m JOIN pragma_table_info(m.name, 'old') c WHERE "
		"m.type = 'table' AND m.name NOT LIKE 'sqlite%' GROUP BY m.name");
	while (query_row(&q)) {
		const char *table = query_get_text(&q);
		assert_rows_kept(d.book, table, query_get_text(&q));
		tables++;
	}
	must(query_end(&q, "", e));
	assert_int_equal(tables, 18);
	desk_clear(&d);
}

/* When a treatment ended was no more than text there: what is no time is not known, and
 * what cannot be is refused; neither makes a bar shorter. */
static void hours_of_version_1_bar_no_shorter(void **state)
{
	static const struct {
		const char *ended, *read, *says; /* what it reads as, or what is said */
	} row[] = {
		{ "2026-05-10T10:30", "2026-05-10T10:30+00:00", NULL },
		{ "2026-05-10 10:30", "2026-05-10T10:30+00:00", NULL },
		{ "noon", "", NULL },
		{ "2026-05-10T25:30", "", NULL },
		{ "1900-01-01T00:00", NULL, "ended_at is \"1900-01-01T00:00Z\"" },
		{ "2026-05-11T00:00", NULL, "ended_at is \"2026-05-11T00:00Z\"" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char sql[128], read[INSTANT_SIZE] = "";
		struct treatments all = { 0 };
		struct err err = { 0 };
		struct desk d;
		sqlite3 *db;
		write_book(&d, "tests/book/v1.sql");
		assert_int_equal(sqlite3_open(d.path, &db), SQLITE_OK);
		snprintf(sql, sizeof sql, "UPDATE treatment SET ended_at = '%s'",
			row[i].ended);
		assert_int_equal(sqlite3_exec(db, sql, NULL, NULL, NULL), SQLITE_OK);
		sqlite3_close(db);
		must(d.book = book_open(d.path, BOOK_EXISTING, "", e));
		bool ok = book_treatments(d.book, 0, 0, 30000, &all, &err);
		if (ok)
			instant_write(all.items[0].until, read);
		if (ok != !row[i].says || (ok && strcmp(read, row[i].read) != 0) ||
			(!ok && !strstr(err.text, row[i].says)))
			fail_msg("%s: %s%s", row[i].ended, read, err.text);
		free(all.items);
		desk_clear(&d);
	}
}

static void book_of_version_2_opens(void **state)
{
	struct lure_kinds lures = { 0 };
	struct undone_step u;
	struct traps traps = { 0 };
	struct desk d;

	(void)state;
	write_book(&d, "tests/book/v2.sql");
	must(d.book = book_open(d.path, BOOK_EXISTING, "", e));
	assert_sound(d.book);
	must(book_lures(d.book, &lures, e));
	assert_int_equal(lures.items[0].stock.n, 12);
	assert_int_equal(lures.items[0].stock.day, 20580);
	assert_false(lures.items[0].retired);
	must(book_traps(d.book, 0, &traps, e));
	assert_int_equal(traps.n, 2);
	int steps = 0;
	while (book_undo_step(d.book, "Ida", 2, &u, NULL))
		steps++;
	assert_int_equal(steps, 5 + 4); /* five by SQL, the lure, trap, day, farm */
	must(book_traps(d.book, 0, &traps, e));
	assert_int_equal(traps.n, 1);
	free(lures.items);
	free(traps.items);
	desk_clear(&d);
}

static void book_of_version_1_is_looked_into_as_it_is(void **state)
{
	struct book_contents in;
	char elsewhere[128], kept[64];
	struct desk d;
	size_t n;

	(void)state;
	write_book(&d, "tests/book/v1.sql");
	char *before = file_bytes(d.path, &n);
	must(book_look_into(d.path, &in, e));
	assert_int_equal(in.version, 1);
	assert_int_equal(in.visits, 3);
	assert_int_equal(in.weather_days, 2);
	assert_string_equal(in.changed_at, "2026-05-15T08:00:00.000Z");
	snprintf(elsewhere, sizeof elsewhere, "%s/new.db", d.folder);
	must(book_restore(elsewhere, d.path, kept, sizeof kept, e));
	assert_unchanged(d.path, before, n);
	must(d.book = book_open(elsewhere, BOOK_EXISTING, "", e)); /* brought up */
	assert_content(d.book);
	free(before);
	desk_clear(&d);
}

static const struct upgrade made_up_steps[] = {
	{ 2, "ALTER TABLE farm ADD COLUMN phone TEXT; UPDATE farm SET phone = "
	     "'none';" },
	{ 3, "ALTER TABLE farm RENAME COLUMN phone TO radio;" },
};
static const struct upgrades made_up = { 3, made_up_steps, 2 };
static const struct upgrades first = { 1, NULL, 0 };

/* The same of a book that lacks tables of later versions. */
static void assert_visits(struct book *b)
{
	assert_int_equal(store_number(b, "SELECT count(*) FROM visit", 0), 3);
	assert_int_equal(
		store_number(b, "SELECT count FROM visit WHERE note <> ''", 0), 14);
}

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
	assert_visits(d.book);
	snprintf(backup, sizeof backup, "%s.version-1", d.path);
	must(old = store_open(backup, BOOK_READ, "", &first, e));
	assert_visits(old);
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
		cmocka_unit_test(
			book_of_version_1_has_nothing_on_the_shelf_or_put_away),
		cmocka_unit_test(book_of_version_1_keeps_its_steps),
		cmocka_unit_test(book_of_version_1_keeps_every_row_of_every_table),
		cmocka_unit_test(book_of_version_1_is_looked_into_as_it_is),
		cmocka_unit_test(hours_of_version_1_bar_no_shorter),
		cmocka_unit_test(book_of_version_2_opens),
		cmocka_unit_test(book_of_an_older_version_is_brought_up_after_a_backup),
		cmocka_unit_test(book_whose_upgrade_fails_stays_as_it_was),
		cmocka_unit_test(book_of_a_version_never_released_is_refused),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
