#include "fixture.h"

#include "../../src/book/backup.h"

#include <errno.h>
#include <sys/time.h>
#include <sys/wait.h>
#include <time.h>

static bool there(const char *path)
{
	struct stat st;

	return lstat(path, &st) == 0;
}

static void book_backup_is_a_whole_book(void **state)
{
	char target[128];
	struct book *copy;
	struct stat st;
	struct desk d;
	struct visit got;

	(void)state;
	desk_disk(&d);
	snprintf(target, sizeof target, "%s/copy.db", d.folder);
	struct visit v = counted(d.trap, 20000, 7);
	must(book_save_visit(d.book, &v, NULL, e));
	must(book_backup(d.book, target, e));
	assert_int_equal(stat(target, &st), 0);
	assert_int_equal(st.st_mode & 07777, 0600);
	must(copy = book_open(target, BOOK_EXISTING, "", e));
	must(book_visit(copy, d.trap, 20000, &got, NULL, e));
	assert_int_equal(got.count, 7);
	book_close(copy);
	desk_clear(&d);
}

static void book_backup_never_replaces(void **state)
{
	char target[128], elsewhere[128];
	struct desk d;

	(void)state;
	desk_disk(&d);
	snprintf(target, sizeof target, "%s/copy.db", d.folder);
	snprintf(elsewhere, sizeof elsewhere, "%s/elsewhere.db", d.folder);
	file_write(target, "mine", 4);
	refused(book_backup(d.book, target, e), ERR_BOOK, "choose another name");
	assert_unchanged(target, "mine", 4);
	assert_int_equal(unlink(target), 0);
	assert_int_equal(symlink(elsewhere, target), 0);
	refused(book_backup(d.book, target, e), ERR_BOOK, "choose another name");
	assert_false(there(elsewhere)); /* the link is not followed */
	assert_int_equal(unlink(target), 0);
	snprintf(target, sizeof target, "%s/no/copy.db", d.folder);
	refused(book_backup(d.book, target, e), ERR_BOOK, "the backup is not made");
	must(book_begin(d.book, e));
	refused(book_backup(d.book, elsewhere, e), ERR_BOOK, "under way");
	book_rollback(d.book);
	desk_clear(&d);
}

static void book_backs_up_while_another_program_reads_and_writes(void **state)
{
	char target[128];
	struct book *other;
	struct desk d;

	(void)state;
	desk_disk(&d);
	snprintf(target, sizeof target, "%s/copy.db", d.folder);
	must(other = book_open(d.path, BOOK_EXISTING, "", e));
	must(book_begin(other, e));
	must(book_backup(d.book, target, e));
	book_rollback(other);
	book_close(other);
	desk_clear(&d);
}

static void backup_of(const struct desk *d, int32_t day, char *out, size_t size)
{
	char iso[DAY_ISO_SIZE];

	day_iso(day, iso);
	snprintf(out, size, "%s/backups/book-%s.db", d->folder, iso);
}

static void book_daily_backup_is_made_once_a_day(void **state)
{
	char path[160];
	struct desk d;
	size_t n;

	(void)state;
	desk_disk(&d);
	must(book_daily_backup(d.book, 20000, e));
	backup_of(&d, 20000, path, sizeof path);
	char *first = file_bytes(path, &n);
	struct visit v = counted(d.trap, 20000, 7);
	must(book_save_visit(d.book, &v, NULL, e));
	must(book_daily_backup(d.book, 20000, e));
	book_close(d.book);
	must(d.book = book_open(d.path, BOOK_EXISTING, "", e));
	must(book_daily_backup(d.book, 20000, e));
	assert_unchanged(path, first, n);
	must(book_daily_backup(d.book, 20001, e));
	backup_of(&d, 20001, path, sizeof path);
	assert_true(there(path));
	free(first);
	desk_clear(&d);
	desk_memory(&d);
	must(book_daily_backup(d.book, 20000, e)); /* nothing to do */
	desk_clear(&d);
}

static void book_daily_backups_are_thinned_out(void **state)
{
	char path[160], mine[160];
	struct desk d;
	int left = 0;

	(void)state;
	desk_disk(&d);
	must(book_daily_backup(d.book, 19000, e)); /* long ago */
	snprintf(mine, sizeof mine, "%s/backups/book-of-the-year.db", d.folder);
	file_write(mine, "mine", 4);
	for (int32_t day = 20000; day < 20100; day++)
		must(book_daily_backup(d.book, day, e));
	for (int32_t day = 18990; day < 20100; day++) {
		backup_of(&d, day, path, sizeof path);
		left += there(path);
	}
	assert_int_equal(left, 7 + 8);
	for (int32_t day = 20093; day < 20100; day++) {
		backup_of(&d, day, path, sizeof path);
		assert_true(there(path));
	}
	assert_true(there(mine));
	desk_clear(&d);
}

static void backups_kept_are_seven_days_and_eight_weeks(void **state)
{
	int32_t days[200];
	bool keep[200];
	int kept = 0;

	(void)state;
	int32_t sunday = day_from_ymd(2026, 7, 26);
	for (int i = 0; i < 200; i++)
		days[i] = sunday - i;
	store_backups_kept(days, 200, keep);
	for (int i = 0; i < 200; i++) {
		bool daily = i < 7, weekly = i % 7 == 0 && i / 7 >= 1 && i / 7 <= 8;
		if (keep[i] != (daily || weekly))
			fail_msg("day %d back is %s", i, keep[i] ? "kept" : "dropped");
		kept += keep[i];
	}
	assert_int_equal(kept, 15);
	for (int i = 0; i < 7; i++) /* once a year: seven as days, eight as weeks */
		days[i] = sunday - 365 * i;
	for (int i = 7; i < 20; i++)
		days[i] = sunday - 365 * i;
	store_backups_kept(days, 20, keep);
	for (int i = 0; i < 20; i++)
		assert_int_equal(keep[i], i < 15);
	store_backups_kept(days, 0, keep);
}

static void book_beside_another_has_backups_of_its_own(void **state)
{
	char second[128], path[160];
	struct book *other;
	struct desk d;

	(void)state;
	desk_disk(&d);
	snprintf(second, sizeof second, "%s/north.db", d.folder);
	must(other = book_open(second, BOOK_CREATE, "", e));
	must(book_daily_backup(d.book, 20000, e));
	must(book_daily_backup(other, 20000, e));
	snprintf(path, sizeof path, "%s/backups/north-2024-10-04.db", d.folder);
	assert_true(there(path));
	backup_of(&d, 20000, path, sizeof path);
	assert_true(there(path));
	book_close(other);
	desk_clear(&d);
}

/* In a child: at the word, the backup of each day; its exit status says how it went. */
static int back_up_at_once(const struct desk *d, int word)
{
	struct err e = { 0 };
	struct book *b = book_open(d->path, BOOK_EXISTING, "", &e);
	char go;
	bool ok = b && read(word, &go, 1) == 0; /* the end of the pipe */

	for (int32_t day = 20000; ok && day < 20005; day++)
		ok = book_daily_backup(b, day, &e) && e.kind == ERR_NONE;
	if (!ok)
		fprintf(stderr, "%s\n", e.text);
	book_close(b);
	return ok ? 0 : 1;
}

static void book_daily_backup_by_many_programs_at_once_is_one(void **state)
{
	enum { PROGRAMS = 8 };
	int word[2], status, failed = 0;
	char path[160];
	struct desk d;

	(void)state;
	desk_disk(&d);
	assert_int_equal(pipe(word), 0);
	for (int i = 0; i < PROGRAMS; i++) {
		if (fork() != 0)
			continue;
		close(word[1]);
		_exit(back_up_at_once(&d, word[0]));
	}
	close(word[0]);
	close(word[1]);
	for (int i = 0; i < PROGRAMS; i++) {
		assert_true(wait(&status) > 0);
		failed += status != 0;
	}
	assert_int_equal(failed, 0);
	for (int32_t day = 20000; day < 20005; day++) {
		backup_of(&d, day, path, sizeof path);
		assert_true(there(path));
	}
	desk_clear(&d);
}

static void book_daily_backup_sweeps_what_was_left_half_done(void **state)
{
	static const struct {
		const char *name;
		int hours; /* since it was written */
		bool stays;
	} row[] = {
		{ "book-2024-10-01.db.part-Ab3xYz", 25, false },
		{ "book-2024-10-01.db.part-Ab3xYz-journal", 25, false },
		{ "book-2024-10-01.db.part-Ab3xYz-wal", 25, false },
		{ "book-2024-10-01.db.part-Ab3xYy", 23, true },
		{ "book-2024-10-01.db.part-Ab3xYy-journal", 23, true },
		{ "north-2024-10-01.db.part-Ab3xYz", 25, true },
		{ "book-2024-10-01.db.part-Ab3xYz.bak", 25, true },
		{ "book-2024-10-01.db.part-Ab3", 25, true },
		{ "book-of-mine.db.part-Ab3xYz", 25, true },
		{ "book-2024-10-01.db", 25, true },
		{ "../book.db.part-Ab3xYz", 25, false },
		{ "../book.db.part-Ab3xYz-journal", 25, false },
		{ "../book.db.part-Ab3xYy", 23, true },
		{ "../book-replaced-2024-10-01-074211.db.part-Ab3xYz", 25, false },
		{ "../book-replaced-2024-10-01-074211-2.db.part-Ab3xYz", 25, false },
		{ "../book-replaced-2024-10-01-0742.db.part-Ab3xYz", 25, true },
		{ "../book-replaced-2024-10-01-074211.db", 25, true },
		{ "../north.db.part-Ab3xYz", 25, true },
	};
	enum { N = sizeof row / sizeof *row };
	char path[160];
	struct desk d;

	(void)state;
	desk_disk(&d);
	must(book_daily_backup(d.book, 19999, e));
	for (size_t i = 0; i < N; i++) {
		struct timeval then = { time(NULL) - row[i].hours * 3600, 0 };
		snprintf(path, sizeof path, "%s/backups/%s", d.folder, row[i].name);
		file_write(path, "half", 4);
		assert_int_equal(utimes(path, (struct timeval[]){ then, then }), 0);
	}
	must(book_daily_backup(d.book, 20000, e));
	for (size_t i = 0; i < N; i++) {
		snprintf(path, sizeof path, "%s/backups/%s", d.folder, row[i].name);
		if (there(path) != row[i].stays)
			fail_msg("%s is %s", row[i].name,
				row[i].stays ? "gone" : "left");
	}
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_backup_is_a_whole_book),
		cmocka_unit_test(book_backup_never_replaces),
		cmocka_unit_test(book_backs_up_while_another_program_reads_and_writes),
		cmocka_unit_test(book_daily_backup_is_made_once_a_day),
		cmocka_unit_test(book_daily_backups_are_thinned_out),
		cmocka_unit_test(backups_kept_are_seven_days_and_eight_weeks),
		cmocka_unit_test(book_beside_another_has_backups_of_its_own),
		cmocka_unit_test(book_daily_backup_by_many_programs_at_once_is_one),
		cmocka_unit_test(book_daily_backup_sweeps_what_was_left_half_done),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
