#include "fixture.h"

#include <errno.h>

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
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
