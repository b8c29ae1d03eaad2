/* A disk that knows no links, as a stick with FAT: what is made beside the book has its
 * name all the same, and never replaces a file. */
#include "backed_up.h"

#include "../../src/book/file.h"

#include <errno.h>

int __wrap_link(const char *from, const char *to);
int __wrap_link(const char *from, const char *to)
{
	(void)from;
	(void)to;
	errno = EPERM;
	return -1;
}

static void book_is_made_and_copied_where_there_are_no_links(void **state)
{
	char copy[128];
	struct visit v;
	struct desk d;
	size_t n;

	(void)state;
	desk_disk(&d);
	v = counted(d.trap, THEN, 3);
	must(book_save_visit(d.book, &v, NULL, e));
	snprintf(copy, sizeof copy, "%s/copy.db", d.folder);
	must(book_backup(d.book, copy, e));
	assert_int_equal(visits_at(copy), 1);
	must(book_daily_backup(d.book, THEN, e));
	assert_int_equal(files(d.folder, ".part-"), 0);
	char *bytes = file_bytes(copy, &n);
	v.day = NOW;
	must(book_save_visit(d.book, &v, NULL, e));
	refused(book_backup(d.book, copy, e), ERR_BOOK, "copy.db");
	assert_unchanged(copy, bytes, n);
	assert_int_equal(files(d.folder, ".part-"), 0);
	free(bytes);
	desk_clear(&d);
}

/* Another program gave it its name between the first look and the last. */
static void a_name_that_was_taken_meanwhile_is_left_to_its_file(void **state)
{
	char part[128], target[128];
	struct err err = { 0 };
	struct desk d;
	bool taken;

	(void)state;
	desk_folder(&d);
	snprintf(target, sizeof target, "%s/copy.db", d.folder);
	snprintf(part, sizeof part, "%s/copy.db.part-Ab3xYz", d.folder);
	file_write(part, "new", 3);
	file_write(target, "old", 3);
	assert_false(file_publish(part, target, &taken, "nothing is saved", &err));
	assert_true(taken);
	assert_unchanged(target, "old", 3);
	assert_int_equal(unlink(target), 0);
	must(file_publish(part, target, &taken, "nothing is saved", e));
	assert_false(taken);
	assert_unchanged(target, "new", 3);
	desk_clear(&d);
}

static void book_restored_where_there_are_no_links_keeps_the_other(void **state)
{
	char backup[128], kept[128], path[256];
	struct err err = { 0 };
	struct desk d;

	(void)state;
	backed_up(&d, backup, sizeof backup);
	if (!book_restore(d.path, backup, kept, sizeof kept, &err)) {
		assert_int_equal(visits_at(d.path), 2); /* as it was */
		assert_int_equal(files(d.folder, ".part-"), 0);
		fail_msg("%s", err.text);
	}
	assert_int_equal(visits_at(d.path), 1);
	snprintf(path, sizeof path, "%s/%s", d.folder, kept);
	assert_int_equal(visits_at(path), 2);
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_is_made_and_copied_where_there_are_no_links),
		cmocka_unit_test(a_name_that_was_taken_meanwhile_is_left_to_its_file),
		cmocka_unit_test(
			book_restored_where_there_are_no_links_keeps_the_other),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
