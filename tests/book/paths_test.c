/* Where a book lies and what it is called: by a bare name, without an ending, too deep;
 * and which names beside it are its own. */
#include "backed_up.h"

#include "../../src/book/backup.h"

#include <fcntl.h>

/* In a folder of its own, which is the one that we stand in until desk_leave. */
static int desk_enter(struct desk *d, const char *file)
{
	int before = open(".", O_RDONLY | O_DIRECTORY | O_CLOEXEC);

	assert_true(before >= 0);
	desk_folder(d);
	assert_int_equal(chdir(d->folder), 0);
	snprintf(d->path, sizeof d->path, "%s", file);
	must(d->book = book_open(d->path, BOOK_CREATE, "JR", e));
	desk_fill(d);
	return before;
}

static void desk_leave(struct desk *d, int before)
{
	assert_int_equal(fchdir(before), 0);
	close(before);
	desk_clear(d);
}

static void old_part(const char *path)
{
	struct timespec long_ago[2] = { { 1000000000, 0 }, { 1000000000, 0 } };

	file_write(path, "half", 4);
	assert_int_equal(utimensat(AT_FDCWD, path, long_ago, 0), 0);
}

static void book_of_a_bare_name_has_its_copies_in_the_folder_one_stands_in(void **state)
{
	static const struct {
		const char *file, *backup, *kept, *part;
	} row[] = {
		{ "book.db", "backups/book-2024-10-04.db", "book-replaced-2",
			"book.db.part-Ab3xYz" },
		{ "book", "backups/book-2024-10-04.db", "book-replaced-2",
			"book.part-Ab3xYz" },
		{ ".book", "backups/.book-2024-10-04.db", ".book-replaced-2",
			".book.part-Ab3xYz" },
		{ "a.b.db", "backups/a.b-2024-10-04.db", "a.b-replaced-2",
			"a.b.db.part-Ab3xYz" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct backups all = { 0 };
		char kept[128];
		struct desk d;
		int before = desk_enter(&d, row[i].file);

		old_part(row[i].part);
		must(book_daily_backup(d.book, THEN, e));
		assert_int_equal(access(row[i].backup, F_OK), 0);
		assert_int_not_equal(access(row[i].part, F_OK), 0);
		book_close(d.book);
		d.book = NULL;
		must(book_restore(d.path, row[i].backup, kept, sizeof kept, e));
		if (strncmp(kept, row[i].kept, strlen(row[i].kept)) != 0)
			fail_msg("%s: kept as %s", row[i].file, kept);
		must(book_backups(d.path, &all, e));
		assert_int_equal(all.n, 2);
		assert_true(all.items[0].is_replaced && !all.items[1].is_replaced);
		book_backups_free(&all);
		desk_leave(&d, before);
	}
}

/* "book-" of "book.db": a name is its own to the last letter, or not touched. */
static void backup_kept_day_is_of_the_whole_name(void **state)
{
	static const struct {
		const char *file;
		bool ours;
	} row[] = {
		{ "book-replaced-2024-10-04-074211.db", true },
		{ "book-replaced-2024-10-04-074211-2.db", true },
		{ "book-replaced-2024-10-04-074211-12.db", true },
		{ "book-replaced-2024-10-04-074211-.db", false },
		{ "book-replaced-2024-10-04-074211-x.db", false },
		{ "book-replaced-2024-10-04-0742112.db", false },
		{ "book-replaced-2024-10-04-074211x2.db", false },
		{ "book-replaced-2024-10-04-07421.db", false },
		{ "book-replaced-2024-10-04x074211.db", false },
		{ "book-replaced-2024-10-04.db", false },
		{ "book-replaced-2024-10-34-074211.db", false },
		{ "book-replaced-2024-10-04-074211.dx", false },
		{ "book-replacex-2024-10-04-074211.db", false },
		{ "north-replaced-2024-10-04-074211.db", false },
		{ "book-", false },
		{ "", false },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		int32_t day = backup_kept_day(row[i].file, "book-");
		if (day != (row[i].ours ? THEN : DAY_NONE))
			fail_msg("%s: %d", row[i].file, (int)day);
	}
}

static void book_sweeps_no_file_that_may_not_be_its_own(void **state)
{
	static const struct {
		const char *file;
		bool swept;
	} row[] = {
		{ "book-2024-10-03.db.part-Ab3xYz", true },
		{ "book-2024-10-03.db.part-Ab3xYz-journal", true },
		{ "book-2024-10-03.db.part-Ab3xYz-wal", true },
		{ "book-2024-10-03.db.part-Ab3xYz-shm", true },
		{ "book-2024-10-03.db.part-Ab3xYz-copy", false },
		{ "book-2024-10-03.db.part-Ab3xY", false },
		{ "book-2024-10-03.db.part-Ab3xYz1", false },
		{ "book-2024-10-33.db.part-Ab3xYz", false },
		{ "north-2024-10-03.db.part-Ab3xYz", false },
		{ "book-replaced-2024-10-04-074211.db.part-Ab3xYz", true },
		{ "notes.part-Ab3xYz", false },
		{ "book-2024-10-03.db.sav", false },
	};
	char path[256], folder[128];
	struct desk d;

	(void)state;
	desk_disk(&d);
	snprintf(folder, sizeof folder, "%s/backups", d.folder);
	assert_int_equal(mkdir(folder, 0700), 0);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		snprintf(path, sizeof path, "%s/%s", folder, row[i].file);
		old_part(path);
	}
	snprintf(path, sizeof path, "%s/book-2024-10-02.db.part-Ab3xYz", folder);
	assert_int_equal(mkdir(path, 0700), 0); /* a folder is nobody's half file */
	must(book_daily_backup(d.book, THEN, e));
	assert_int_equal(access(path, F_OK), 0);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		snprintf(path, sizeof path, "%s/%s", folder, row[i].file);
		if ((access(path, F_OK) != 0) != row[i].swept)
			fail_msg("%s: swept: %d", row[i].file, !row[i].swept);
	}
	desk_clear(&d);
}

static void book_too_deep_for_a_path_is_refused_with_a_sentence(void **state)
{
	char path[STORE_PATH_BYTES + 16], kept[128];
	struct backups all = { 0 };
	struct desk d;

	(void)state;
	desk_disk(&d);
	memset(path, 'x', sizeof path);
	path[0] = '/';
	for (size_t at = 200; at < sizeof path; at += 200)
		path[at] = '/';
	path[sizeof path - 1] = '\0';
	refused(book_open(path, BOOK_CREATE, "", e), ERR_BOOK, "the book /xxx");
	refused(book_backup(d.book, path, e), ERR_BOOK, "too long");
	refused(book_backups(path, &all, e), ERR_BOOK, "too long");
	refused(book_restore(path, d.path, kept, sizeof kept, e), ERR_BOOK, "too long");
	path[STORE_PATH_BYTES - 4] = '\0'; /* itself it fits, its part does not */
	refused(book_backup(d.book, path, e), ERR_BOOK, "too long");
	desk_clear(&d);
}

static void book_backups_that_cannot_be_listed_say_why(void **state)
{
	struct backups all = { 0 };
	char folder[128];
	struct desk d;

	(void)state;
	desk_disk(&d);
	snprintf(folder, sizeof folder, "%s/backups", d.folder);
	file_write(folder, "a file", 6);
	refused(book_daily_backup(d.book, THEN, e), ERR_BOOK, folder);
	snprintf(folder, sizeof folder, "%s/book.db/book.db", d.folder);
	refused(book_backups(folder, &all, e), ERR_BOOK, "Not a directory");
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			book_of_a_bare_name_has_its_copies_in_the_folder_one_stands_in),
		cmocka_unit_test(backup_kept_day_is_of_the_whole_name),
		cmocka_unit_test(book_sweeps_no_file_that_may_not_be_its_own),
		cmocka_unit_test(book_too_deep_for_a_path_is_refused_with_a_sentence),
		cmocka_unit_test(book_backups_that_cannot_be_listed_say_why),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
