/* Between the look at a name and the moment in which a file gets it, another program is
 * quicker: what it made stays. */
#include "backed_up.h"

static struct {
	const char *bytes; /* what another program calls so a moment before; or NULL */
	size_t n;
} quicker;

int __real_link(const char *from, const char *to);
int __wrap_link(const char *from, const char *to);
int __wrap_link(const char *from, const char *to)
{
	if (quicker.bytes)
		file_write(to, quicker.bytes, quicker.n);
	return __real_link(from, to);
}

/* Until it is called with NULL. */
static void another_is_quicker(const char *bytes, size_t n)
{
	quicker.bytes = bytes;
	quicker.n = n;
}

static void backup_leaves_the_file_that_got_its_name_meanwhile(void **state)
{
	char copy[128];
	struct desk d;

	(void)state;
	desk_disk(&d);
	snprintf(copy, sizeof copy, "%s/copy.db", d.folder);
	another_is_quicker("theirs", 6);
	refused(book_backup(d.book, copy, e), ERR_BOOK, "the backup is not made");
	another_is_quicker(NULL, 0);
	assert_unchanged(copy, "theirs", 6);
	assert_int_equal(files(d.folder, ".part-"), 0);
	desk_clear(&d);
}

/* Two programs begin the day with the same book: one backup is enough. */
static void daily_backup_of_another_program_is_todays(void **state)
{
	struct err err = { 0 };
	char path[128];
	struct desk d;

	(void)state;
	desk_disk(&d);
	snprintf(path, sizeof path, "%s/backups/book-2024-10-04.db", d.folder);
	another_is_quicker("theirs", 6);
	must(book_daily_backup(d.book, THEN, e));
	another_is_quicker(NULL, 0);
	assert_unchanged(path, "theirs", 6);
	assert_true(book_daily_backup(d.book, THEN, &err));
	assert_int_equal(err.kind, ERR_NONE);
	another_is_quicker("theirs", 6); /* and nobody asks why */
	assert_true(book_daily_backup(d.book, NOW, NULL));
	another_is_quicker(NULL, 0);
	desk_clear(&d);
}

static void new_book_that_another_program_made_meanwhile_is_opened(void **state)
{
	struct err err = { 0 };
	struct desk d;
	char path[128];
	size_t n;

	(void)state;
	desk_disk(&d);
	book_close(d.book);
	char *bytes = file_bytes(d.path, &n);
	snprintf(path, sizeof path, "%s/new.db", d.folder);
	another_is_quicker(bytes, n);
	d.book = book_open(path, BOOK_CREATE, "Ida", &err);
	another_is_quicker(NULL, 0);
	if (!d.book)
		fail_msg("%s", err.text);
	assert_int_equal(err.kind, ERR_NONE);
	assert_int_equal(store_number(d.book, "SELECT count(*) FROM trap", 0), 1);
	book_close(d.book);
	assert_int_equal(unlink(path), 0);
	another_is_quicker(bytes, n);
	d.book = book_open(path, BOOK_CREATE, "Ida", NULL);
	another_is_quicker(NULL, 0);
	assert_non_null(d.book);
	free(bytes);
	desk_clear(&d);
}

static void restore_leaves_the_book_that_came_meanwhile(void **state)
{
	char backup[128], kept[128];
	struct desk d;

	(void)state;
	backed_up(&d, backup, sizeof backup);
	assert_int_equal(unlink(d.path), 0);
	another_is_quicker("theirs", 6);
	refused(book_restore(d.path, backup, kept, sizeof kept, e), ERR_BOOK,
		"nothing is restored");
	another_is_quicker(NULL, 0);
	assert_unchanged(d.path, "theirs", 6);
	assert_int_equal(files(d.folder, ".part-"), 0);
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(backup_leaves_the_file_that_got_its_name_meanwhile),
		cmocka_unit_test(daily_backup_of_another_program_is_todays),
		cmocka_unit_test(
			new_book_that_another_program_made_meanwhile_is_opened),
		cmocka_unit_test(restore_leaves_the_book_that_came_meanwhile),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
