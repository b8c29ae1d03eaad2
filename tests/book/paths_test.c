/* Where a book lies and what it is called: by a bare name, without an ending, too deep;
 * and which names beside it are its own. */
#include "backed_up.h"

#include "../../src/book/backup.h"
#include "../../src/book/file.h"
#include "book/merge.h"

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

/* A book of a bare name into the one that we stand beside: the copy that is kept is
 * found again. */
static void merge_beside(struct desk *d, const char *backup)
{
	struct merge_report report = { 0 };
	struct merge_undo undo = { 0 };
	struct visit v = counted(d->trap, NOW + 7, 4);
	struct book *other;
	size_t n;
	char *bytes = file_bytes(backup, &n);

	file_write("theirs.db", bytes, n);
	must(other = book_open("theirs.db", BOOK_EXISTING, "Ida", e));
	must(book_save_visit(other, &v, NULL, e));
	book_close(other);
	must(d->book = book_open(d->path, BOOK_EXISTING, "JR", e));
	must(book_merge(d->book, "theirs.db", &report, e));
	must(book_merge_undo(d->book, &undo, e));
	assert_string_equal(undo.file, "theirs.db");
	assert_int_equal(access(undo.kept, F_OK), 0);
	book_merge_free(&report);
	free(undo.kept);
	free(bytes);
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
		must(book_backups("another.db", &all, e));
		assert_int_equal(all.n, 0);
		merge_beside(&d, row[i].backup);
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
		{ "book-2024-10-03.sv", false },
		{ "nook-2024-10-03.db", false },
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

/* Nothing is wrong with a book that was never backed up. */
static void book_without_backups_has_none(void **state)
{
	struct backups all = { 0 };
	char path[128], folder[128];
	struct desk d;

	(void)state;
	desk_disk(&d);
	must(book_backups(d.path, &all, e)); /* no folder */
	assert_int_equal(all.n, 0);
	snprintf(folder, sizeof folder, "%s/backups", d.folder);
	assert_int_equal(mkdir(folder, 0700), 0);
	must(book_backups(d.path, &all, e)); /* an empty one */
	assert_int_equal(all.n, 0);
	snprintf(path, sizeof path, "%s/gone/book.db", d.folder);
	must(book_backups(path, &all, e));
	assert_int_equal(all.n, 0);
	desk_clear(&d);
}

/* In place of the book: one of the first version. */
static void make_old(const char *path)
{
	sqlite3 *db;
	size_t n;
	char *sql = file_bytes("tests/book/v1.sql", &n);

	sql[n] = '\0';
	assert_int_equal(sqlite3_open(path, &db), SQLITE_OK);
	assert_int_equal(sqlite3_exec(db, sql, NULL, NULL, NULL), SQLITE_OK);
	sqlite3_close(db);
	free(sql);
}

static void older_book_of_too_long_a_name_is_left_as_it_is(void **state)
{
	enum { FITS = 247 }; /* with the ending of a journal, not with a version */
	char path[128 + 256];
	struct desk d;
	size_t n;

	(void)state;
	desk_folder(&d);
	size_t folder = (size_t)snprintf(path, sizeof path, "%s/", d.folder);
	memset(path + folder, 'n', FITS);
	path[folder + FITS] = '\0';
	make_old(path);
	char *bytes = file_bytes(path, &n);
	refused(book_open(path, BOOK_EXISTING, "JR", e), ERR_BOOK,
		"no name is free for a backup beside");
	assert_unchanged(path, bytes, n);
	free(bytes);
	desk_clear(&d);
}

/* 255 bytes is the longest name of a file; what lies beside the book is called after
 * it. */
static void book_of_too_long_a_name_is_not_touched_without_a_copy(void **state)
{
	enum { FITS = 235 }; /* and a part with its journal, but no date */
	char backup[128], path[128 + 256], kept[256];
	struct merge_report report = { 0 };
	size_t n, folder;
	struct desk d;

	(void)state;
	backed_up(&d, backup, sizeof backup);
	folder = (size_t)snprintf(path, sizeof path, "%s/", d.folder);
	memset(path + folder, 'n', FITS);
	strcpy(path + folder + FITS - 3, ".db");
	assert_int_equal(rename(d.path, path), 0);
	char *bytes = file_bytes(path, &n);
	refused(book_restore(path, backup, kept, sizeof kept, e), ERR_BOOK,
		"no name is free beside");
	assert_unchanged(path, bytes, n);
	must(d.book = book_open(path, BOOK_EXISTING, "JR", e));
	refused(book_merge(d.book, backup, &report, e), ERR_BOOK,
		"no name is free beside");
	refused(book_daily_backup(d.book, NOW, e), ERR_BOOK, "name too long");
	must(book_save_visit(d.book,
		&(struct visit){ .trap = d.trap,
			.day = NOW + 7,
			.count = 1,
			.females = COUNT_NONE,
			.others = COUNT_NONE,
			.outcome = OUTCOME_COUNTED },
		NULL, e));
	assert_int_equal(files(d.folder, ".part-"), 0);
	book_merge_free(&report);
	free(bytes);
	desk_clear(&d);
}

/* What another program swept away gives its name to nothing. */
static void half_file_that_is_gone_replaces_nothing(void **state)
{
	static const char what[] = "nothing is saved";
	char part[128], target[128], below[160];
	struct desk d;
	bool taken;

	(void)state;
	desk_folder(&d);
	snprintf(part, sizeof part, "%s/book.db.part-Ab3xYz", d.folder);
	snprintf(target, sizeof target, "%s/book.db", d.folder);
	refused(file_publish(part, target, &taken, what, e), ERR_BOOK, target);
	assert_false(taken);
	file_write(target, "old", 3);
	refused(file_replace(part, target, what, e), ERR_BOOK, target);
	assert_unchanged(target, "old", 3);
	snprintf(below, sizeof below, "%s/farm/book.db", target);
	refused(file_folders(below, what, e), ERR_BOOK, "Not a directory");
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
		cmocka_unit_test(book_without_backups_has_none),
		cmocka_unit_test(book_of_too_long_a_name_is_not_touched_without_a_copy),
		cmocka_unit_test(older_book_of_too_long_a_name_is_left_as_it_is),
		cmocka_unit_test(half_file_that_is_gone_replaces_nothing),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
