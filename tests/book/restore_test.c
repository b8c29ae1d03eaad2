/* Looking into backups and going back to one. */
#include "backed_up.h"

#include <sys/wait.h>

static void book_backups_are_listed_latest_first(void **state)
{
	struct backups all = { 0 };
	char other[128];
	struct desk d;

	(void)state;
	desk_disk(&d);
	must(book_backups(d.path, &all, e));
	assert_int_equal(all.n, 0);
	must(book_daily_backup(d.book, 20000, e));
	must(book_daily_backup(d.book, 20002, e));
	must(book_daily_backup(d.book, 20001, e));
	snprintf(other, sizeof other, "%s/backups/north-2024-10-04.db", d.folder);
	file_write(other, "", 0);
	must(book_backups(d.path, &all, e));
	must(book_backups(d.path, &all, e)); /* anew */
	assert_int_equal(all.n, 3);
	assert_int_equal(all.items[0].day, 20002);
	assert_int_equal(all.items[2].day, 20000);
	snprintf(other, sizeof other, "%s/backups/book-2024-10-06.db", d.folder);
	assert_string_equal(all.items[0].path, other);
	book_backups_free(&all);
	desk_clear(&d);
}

static void book_backups_begin_with_the_books_that_were_replaced(void **state)
{
	static const char *const names[] = { "book-replaced-2024-10-05-074211.db",
		"book-replaced-2024-10-06-074211-2.db",
		"book-replaced-2024-10-06-074211.db",
		"book-replaced-2024-10-06-074211.db-journal",
		"book-replaced-2024-10-06.db", "book-replaced-2024-10-06-07421x.db",
		"book-replaced-2024-13-06-074211.db",
		"north-replaced-2024-10-06-074211.db" };
	struct backups all = { 0 };
	char other[160];
	struct desk d;

	(void)state;
	desk_disk(&d);
	must(book_daily_backup(d.book, 20010, e));
	for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
		snprintf(other, sizeof other, "%s/%s", d.folder, names[i]);
		file_write(other, "", 0);
	}
	must(book_backups(d.path, &all, e));
	assert_int_equal(all.n, 4);
	assert_non_null(strstr(all.items[0].path, names[2]));
	assert_non_null(strstr(all.items[1].path, names[1]));
	assert_non_null(strstr(all.items[2].path, names[0]));
	assert_int_equal(all.items[0].day, 20002);
	assert_int_equal(all.items[2].day, 20001);
	for (size_t i = 0; i < 4; i++)
		assert_int_equal(all.items[i].is_replaced, i < 3);
	book_backups_free(&all);
	desk_clear(&d);
}

static void book_look_into_says_what_a_file_holds(void **state)
{
	struct book_contents in;
	char backup[128];
	struct desk d;
	size_t n;

	(void)state;
	backed_up(&d, backup, sizeof backup);
	char *bytes = file_bytes(backup, &n);
	must(book_look_into(backup, &in, e));
	assert_int_equal(in.version, STORE_VERSION);
	assert_int_equal(in.farms, 1);
	assert_int_equal(in.blocks, 1);
	assert_int_equal(in.traps, 1);
	assert_int_equal(in.visits, 1);
	assert_int_equal(in.thresholds, 0);
	assert_int_equal(in.weather_days, 0);
	assert_int_equal(in.first_visit, THEN);
	assert_int_equal(in.last_visit, THEN);
	assert_int_equal(strlen(in.changed_at), 24);
	assert_string_equal(in.changed_by, "JR");
	assert_unchanged(backup, bytes, n);
	must(book_look_into(d.path, &in, e));
	assert_int_equal(in.last_visit, NOW);
	free(bytes);
	desk_clear(&d);
}

static void book_restore_goes_back_and_keeps_what_it_replaced(void **state)
{
	char backup[128], kept[128], path[256];
	struct stat st;
	struct visit got;
	struct desk d;

	(void)state;
	backed_up(&d, backup, sizeof backup);
	must(book_restore(d.path, backup, kept, sizeof kept, e));
	assert_int_equal(strncmp(kept, "book-replaced-2", 15), 0);
	assert_int_equal(strlen(kept), strlen("book-replaced-2026-07-21-074211.db"));
	snprintf(path, sizeof path, "%s/%s", d.folder, kept);
	assert_int_equal(visits_at(path), 2);
	assert_int_equal(visits_at(backup), 1);
	assert_int_equal(stat(d.path, &st), 0);
	assert_int_equal(st.st_mode & 07777, 0600);
	assert_int_equal(files(d.folder, ""), 5); /* . .. backups and two books */
	must(d.book = book_open(d.path, BOOK_EXISTING, "JR", e));
	must(book_visit(d.book, d.trap, THEN, &got, NULL, e));
	refused(book_visit(d.book, d.trap, NOW, &got, NULL, e), ERR_NOT_FOUND, "no");
	book_close(d.book);
	must(book_restore(d.path, path, kept, sizeof kept, e)); /* and forth */
	must(d.book = book_open(d.path, BOOK_EXISTING, "JR", e));
	must(book_visit(d.book, d.trap, NOW, &got, NULL, e));
	assert_int_equal(got.count, 9);
	desk_clear(&d);
}

static void book_restore_makes_a_missing_book(void **state)
{
	char backup[128], kept[128];
	struct desk d;

	(void)state;
	backed_up(&d, backup, sizeof backup);
	assert_int_equal(unlink(d.path), 0);
	must(book_restore(d.path, backup, kept, sizeof kept, e));
	assert_string_equal(kept, "");
	assert_int_equal(visits_at(d.path), 1);
	desk_clear(&d);
}

/* Byte for byte, but for the counters of changes in the header. */
static void assert_kept(const char *path, const char *bytes, size_t n)
{
	size_t now, header = n < 100 ? 0 : 100;
	char *kept = file_bytes(path, &now);

	assert_int_equal(now, n);
	assert_memory_equal(kept, bytes, header ? 24 : n);
	assert_memory_equal(kept + header, bytes + header, n - header);
	free(kept);
}

static void book_restore_replaces_a_damaged_book_and_keeps_what_is_left(void **state)
{
	static const struct {
		const char *why;
		size_t from, to; /* in thousandths of the file, wiped; to 0: cut off */
	} row[] = {
		{ "its first page is gone", 0, 10 },
		{ "its middle is gone", 400, 700 },
		{ "its end is cut off", 500, 0 },
		{ "it is empty", 0, 0 },
	};
	char backup[128], kept[128], path[256], journal[128];

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct err err = { 0 };
		struct desk d;
		size_t n;
		backed_up(&d, backup, sizeof backup);
		char *bytes = file_bytes(d.path, &n);
		size_t from = n * row[i].from / 1000, to = n * row[i].to / 1000;
		if (to)
			memset(bytes + from, 0x5a, to - from);
		else
			n = from;
		file_write(d.path, bytes, n);
		snprintf(journal, sizeof journal, "%s-journal", d.path);
		file_write(journal, "left over", 9);
		if (!book_restore(d.path, backup, kept, sizeof kept, &err))
			fail_msg("%s: %s", row[i].why, err.text);
		assert_int_equal(err.kind, ERR_NONE);
		snprintf(path, sizeof path, "%s/%s", d.folder, kept);
		assert_kept(path, bytes, n);
		assert_int_equal(access(journal, F_OK), -1);
		assert_int_equal(visits_at(d.path), 1);
		free(bytes);
		desk_clear(&d);
	}
}

static void book_restore_refuses_and_leaves_every_byte(void **state)
{
	char backup[128], kept[128], bad[128];
	struct desk d;
	size_t n, m;

	(void)state;
	backed_up(&d, backup, sizeof backup);
	char *bytes = file_bytes(d.path, &n), *good = file_bytes(backup, &m);
	snprintf(bad, sizeof bad, "%s/bad.db", d.folder);
	refused(book_restore(d.path, bad, kept, sizeof kept, e), ERR_NOT_FOUND,
		"there is no book at");
	refused(book_restore(d.path, d.path, kept, sizeof kept, e), ERR_INPUT,
		"is the book itself");
	refused(book_restore(d.path, d.folder, kept, sizeof kept, e), ERR_BOOK,
		"is not a file");
	refused(book_restore(d.path, "/dev/null", kept, sizeof kept, e), ERR_BOOK,
		"is not a file");
	file_write(bad, "farm,trap,date\n", 15);
	refused(book_restore(d.path, bad, kept, sizeof kept, e), ERR_BOOK,
		"is not a book");
	file_write(bad, good, m / 2);
	refused(book_restore(d.path, bad, kept, sizeof kept, e), ERR_BOOK, "damaged");
	good[63] = (char)(STORE_VERSION + 1); /* user_version */
	file_write(bad, good, m);
	refused(book_restore(d.path, bad, kept, sizeof kept, e), ERR_BOOK,
		"newer mothtally");
	good[63] = STORE_VERSION;
	good[71] ^= 1; /* application_id */
	file_write(bad, good, m);
	refused(book_restore(d.path, bad, kept, sizeof kept, e), ERR_BOOK,
		"belongs to another program");
	refused(book_restore(bad, backup, kept, sizeof kept, e), ERR_BOOK,
		"belongs to another program");
	assert_unchanged(bad, good, m);
	assert_unchanged(d.path, bytes, n);
	assert_string_equal(kept, "");
	assert_int_equal(files(d.folder, "replaced"), 0);
	assert_int_equal(files(d.folder, "part"), 0);
	free(bytes);
	free(good);
	desk_clear(&d);
}

/* Of a page that is free nobody minds what is in it. */
static void leave_no_page_free(const char *path)
{
	sqlite3 *db;

	assert_int_equal(sqlite3_open(path, &db), SQLITE_OK);
	assert_int_equal(sqlite3_exec(db, "VACUUM", NULL, NULL, NULL), SQLITE_OK);
	sqlite3_close(db);
}

/* Also of those pages that opening it does not look at. */
static void book_restore_refuses_a_backup_with_a_damaged_page(void **state)
{
	enum { PAGE = 8192, STRIDE = 2 };
	char backup[128], kept[128], bad[128];
	struct desk d;
	size_t n, m;

	(void)state;
	backed_up(&d, backup, sizeof backup);
	leave_no_page_free(backup);
	char *bytes = file_bytes(d.path, &n), *good = file_bytes(backup, &m);
	snprintf(bad, sizeof bad, "%s/bad.db", d.folder);
	assert_int_equal(good[16] << 8 | good[17], PAGE);
	assert_true(m > 30 * PAGE);
	for (size_t at = PAGE; at + PAGE <= m; at += STRIDE * PAGE) {
		struct err err = { 0 };
		char was[PAGE];

		memcpy(was, good + at, PAGE);
		memset(good + at, 0x5a, PAGE);
		file_write(bad, good, m);
		memcpy(good + at, was, PAGE);
		if (book_restore(d.path, bad, kept, sizeof kept, &err))
			fail_msg("page %zu is gone, and it was taken", at / PAGE + 1);
		assert_int_equal(err.kind, ERR_BOOK);
		assert_non_null(strstr(err.text, "damaged"));
		assert_null(strchr(err.text, '\n'));
		assert_unchanged(d.path, bytes, n);
		assert_int_equal(files(d.folder, "replaced"), 0);
		assert_int_equal(files(d.folder, "part"), 0);
	}
	free(bytes);
	free(good);
	desk_clear(&d);
}

static void book_restore_waits_for_no_program_that_writes(void **state)
{
	char backup[128], kept[128];
	struct desk d;

	(void)state;
	backed_up(&d, backup, sizeof backup);
	must(d.book = book_open(d.path, BOOK_EXISTING, "JR", e));
	must(book_begin(d.book, e));
	refused(book_restore(d.path, backup, kept, sizeof kept, e), ERR_BOOK,
		"nothing is restored: another program is using the book");
	struct visit v = counted(d.trap, NOW + 7, 1);
	must(book_save_visit(d.book, &v, NULL, e));
	must(book_commit(d.book, e));
	assert_int_equal(visits_at(d.path), 3);
	assert_int_equal(files(d.folder, "part"), 0);
	/* It is idle now, and finds the book moved when it writes the next time. */
	must(book_restore(d.path, backup, kept, sizeof kept, e));
	v.day++;
	refused(book_save_visit(d.book, &v, NULL, e), ERR_BOOK, "moved or deleted");
	assert_int_equal(visits_at(d.path), 1);
	desk_clear(&d);
}

/* In a child: a save that is cut short while its journal is on the disk. */
static void leave_hot_journal(struct desk *d)
{
	int status;
	pid_t child = fork();

	if (child == 0) {
		struct visit v = counted(d->trap, NOW + 1, 1);
		struct err err;
		bool same;
		if (!book_begin(d->book, &err))
			_exit(1);
		raw(d->book, "PRAGMA cache_size = 1; PRAGMA cache_spill = 1");
		for (; v.day < NOW + 1000; v.day++)
			if (!book_add_visit(d->book, &v, NULL, &same, &err))
				_exit(2);
		_exit(0);
	}
	assert_int_equal(waitpid(child, &status, 0), child);
	assert_int_equal(status, 0);
}

static void book_restore_plays_no_old_journal_into_the_new_book(void **state)
{
	char backup[128], kept[128], path[256], journal[128];
	struct desk d;
	int found;

	(void)state;
	backed_up(&d, backup, sizeof backup);
	must(d.book = book_open(d.path, BOOK_EXISTING, "JR", e));
	leave_hot_journal(&d);
	snprintf(journal, sizeof journal, "%s-journal", d.path);
	assert_int_equal(access(journal, F_OK), 0);
	book_close(d.book);
	must(book_restore(d.path, backup, kept, sizeof kept, e));
	assert_int_equal(access(journal, F_OK), -1);
	snprintf(path, sizeof path, "%s/%s", d.folder, kept);
	assert_int_equal(visits_at(path), 2); /* as it was before the save */
	assert_int_equal(visits_at(d.path), 1);
	must(d.book = book_open(d.path, BOOK_EXISTING, "JR", e));
	must(book_check(d.book, 30000, tell_nobody, NULL, &found, e));
	assert_int_equal(found, 1); /* a visit before it was hung, as it was */
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_backups_are_listed_latest_first),
		cmocka_unit_test(book_backups_begin_with_the_books_that_were_replaced),
		cmocka_unit_test(book_look_into_says_what_a_file_holds),
		cmocka_unit_test(book_restore_goes_back_and_keeps_what_it_replaced),
		cmocka_unit_test(book_restore_makes_a_missing_book),
		cmocka_unit_test(
			book_restore_replaces_a_damaged_book_and_keeps_what_is_left),
		cmocka_unit_test(book_restore_refuses_and_leaves_every_byte),
		cmocka_unit_test(book_restore_refuses_a_backup_with_a_damaged_page),
		cmocka_unit_test(book_restore_waits_for_no_program_that_writes),
		cmocka_unit_test(book_restore_plays_no_old_journal_into_the_new_book),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
