#include "fixture.h"

#include <errno.h>
#include <fcntl.h>

static mode_t mode_of(const char *path)
{
	struct stat st;

	assert_int_equal(stat(path, &st), 0);
	return st.st_mode & 07777;
}

static void assert_absent(const char *path)
{
	struct stat st;

	assert_int_equal(lstat(path, &st), -1);
	assert_int_equal(errno, ENOENT);
}

static int entries(const char *folder)
{
	DIR *dir = opendir(folder);
	int n = 0;

	assert_non_null(dir);
	while (readdir(dir))
		n++;
	closedir(dir);
	return n - 2;
}

static void book_new_one_is_its_owners_alone(void **state)
{
	static const mode_t masks[] = { 0, 022, 0777 };
	char deep[160], folder[128];
	struct desk d;

	(void)state;
	for (size_t i = 0; i < sizeof masks / sizeof *masks; i++) {
		desk_folder(&d);
		snprintf(folder, sizeof folder, "%s/a/b", d.folder);
		snprintf(deep, sizeof deep, "%s/book.db", folder);
		mode_t old = umask(masks[i]);
		must(d.book = book_open(deep, BOOK_CREATE, "", e));
		umask(old);
		assert_int_equal(mode_of(deep), 0600);
		assert_int_equal(mode_of(folder), 0700);
		snprintf(folder, sizeof folder, "%s/a", d.folder);
		assert_int_equal(mode_of(folder), 0700);
		snprintf(folder, sizeof folder, "%s/a/b", d.folder);
		assert_int_equal(entries(folder), 1); /* nothing half-made beside it */
		desk_clear(&d);
	}
}

static void book_is_there_again_after_closing(void **state)
{
	struct desk d;
	struct visit got;

	(void)state;
	desk_disk(&d);
	struct visit v = counted(d.trap, 20000, 7);
	must(book_save_visit(d.book, &v, NULL, e));
	book_close(d.book);
	must(d.book = book_open(d.path, BOOK_EXISTING, "", e));
	must(book_visit(d.book, d.trap, 20000, &got, NULL, e));
	assert_int_equal(got.count, 7);
	desk_clear(&d);
}

static void book_existing_is_not_made(void **state)
{
	struct desk d;

	(void)state;
	desk_folder(&d);
	refused(book_open(d.path, BOOK_EXISTING, "", e), ERR_NOT_FOUND,
		"there is no book at");
	refused(book_open(d.path, BOOK_READ, "", e), ERR_NOT_FOUND,
		"there is no book at");
	assert_absent(d.path);
	refused(book_open(d.folder, BOOK_CREATE, "", e), ERR_BOOK, "is not a file");
	assert_int_equal(entries(d.folder), 0);
	desk_clear(&d);
}

static void book_read_changes_nothing(void **state)
{
	struct desk d;
	struct visit got;
	size_t n;

	(void)state;
	desk_disk(&d);
	struct visit v = counted(d.trap, 20000, 7);
	must(book_save_visit(d.book, &v, NULL, e));
	book_close(d.book);
	char *before = file_bytes(d.path, &n);
	must(d.book = book_open(d.path, BOOK_READ, "", e));
	must(book_visit(d.book, d.trap, 20000, &got, NULL, e));
	v.count = 8;
	refused(book_save_visit(d.book, &v, NULL, e), ERR_BOOK,
		"this count is not saved: the book may only be read");
	assert_unchanged(d.path, before, n);
	assert_int_equal(entries(d.folder), 1);
	free(before);
	desk_clear(&d);
}

/* Writes `bytes` over the book and expects a refusal that leaves every byte. */
static void expect_refusal(
	struct desk *d, const char *bytes, size_t n, const char *words)
{
	static const enum book_open how[] = { BOOK_CREATE, BOOK_EXISTING, BOOK_READ };

	file_write(d->path, bytes, n);
	for (size_t i = 0; i < sizeof how / sizeof *how; i++) {
		refused(book_open(d->path, how[i], "", e), ERR_BOOK, words);
		assert_unchanged(d->path, bytes, n);
		assert_int_equal(entries(d->folder), 1);
	}
}

static void book_refuses_what_is_not_its_own_untouched(void **state)
{
	struct desk d;
	size_t n;

	(void)state;
	desk_disk(&d);
	book_close(d.book);
	d.book = NULL;
	char *good = file_bytes(d.path, &n), *bad = malloc(n);
	assert_non_null(bad);

	expect_refusal(&d, "", 0, "is not a book");
	expect_refusal(&d, "farm,trap,date\n", 15, "is not a book");
	memset(bad, 0, n);
	expect_refusal(&d, bad, n, "is not a book");
	expect_refusal(&d, good, 50, "belongs to another program");
	expect_refusal(&d, good, n / 2, "damaged");
	memcpy(bad, good, n);
	bad[71] ^= 1; /* application_id */
	expect_refusal(&d, bad, n, "belongs to another program");
	memcpy(bad, good, n);
	bad[63] = (char)(STORE_VERSION + 1); /* user_version */
	expect_refusal(&d, bad, n, "newer mothtally");
	memcpy(bad, good, n);
	memset(bad + 100, 0x5a, 3996); /* the page that lists the tables */
	expect_refusal(&d, bad, n, "damaged");
	file_write(d.path, good, n);
	must(d.book = book_open(d.path, BOOK_EXISTING, "", e));
	free(good);
	free(bad);
	desk_clear(&d);
}

/* The book as another program left it in WAL mode: the file, and what lies beside it. */
static void leave_wal(struct desk *d, int application, const char *wal)
{
	char sql[128];
	sqlite3 *db;
	size_t n, m;

	book_close(d->book);
	d->book = NULL;
	snprintf(sql, sizeof sql,
		"PRAGMA journal_mode = WAL; PRAGMA application_id = %d", application);
	assert_int_equal(sqlite3_open(d->path, &db), SQLITE_OK);
	assert_int_equal(sqlite3_exec(db, sql, NULL, NULL, NULL), SQLITE_OK);
	char *bytes = file_bytes(d->path, &n), *beside = file_bytes(wal, &m);
	sqlite3_close(db);
	/* The file says whose it is by itself. */
	for (int i = 0; i < 4; i++)
		bytes[68 + i] = (char)(application >> (24 - 8 * i));
	file_write(d->path, bytes, n);
	file_write(wal, beside, m);
	free(bytes);
	free(beside);
}

static void book_of_another_program_is_left_in_its_mode(void **state)
{
	static const enum book_open how[] = { BOOK_CREATE, BOOK_EXISTING, BOOK_READ };
	char wal[128];

	(void)state;
	for (size_t i = 0; i < sizeof how / sizeof *how; i++) {
		struct desk d;
		size_t n, m;
		desk_disk(&d);
		snprintf(wal, sizeof wal, "%s-wal", d.path);
		leave_wal(&d, 1, wal);
		char *before = file_bytes(d.path, &n), *beside = file_bytes(wal, &m);
		refused(book_open(d.path, how[i], "", e), ERR_BOOK,
			"belongs to another program");
		assert_unchanged(d.path, before, n);
		assert_unchanged(wal, beside, m);
		free(before);
		free(beside);
		desk_clear(&d);
	}
}

static void book_names_damage_met_later(void **state)
{
	struct visits got = { 0 };
	struct err err = { 0 };
	struct desk d;
	size_t n;

	(void)state;
	desk_disk(&d);
	for (int32_t day = 0; day < 500; day++) {
		struct visit v = counted(d.trap, 20000 + day, 1);
		bool same;
		must(book_add_visit(d.book, &v, NULL, &same, e));
	}
	book_close(d.book);
	char *bytes = file_bytes(d.path, &n);
	memset(bytes + n / 2, 0xee, n / 2);
	file_write(d.path, bytes, n);
	d.book = book_open(d.path, BOOK_EXISTING, "", &err);
	if (d.book)
		assert_false(book_visits(d.book, 0, 0, 30000, &got, &err));
	assert_int_equal(err.kind, ERR_BOOK);
	assert_non_null(strstr(err.text, "damaged"));
	free(bytes);
	free(got.items);
	desk_clear(&d);
}

static void book_path_takes_the_first_that_is_set(void **state)
{
	static const struct {
		const char *why, *book, *xdg, *home, *want;
	} row[] = {
		{ "the book named", "b.db", "/x", "/h", "b.db" },
		{ "the data folder", NULL, "/x", "/h", "/x/mothtally/book.db" },
		{ "home", NULL, NULL, "/h", "/h/.local/share/mothtally/book.db" },
		{ "empty is unset", "", "", "/h", "/h/.local/share/mothtally/book.db" },
	};
	char out[64], small[8];

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		must(book_path(
			row[i].book, row[i].xdg, row[i].home, out, sizeof out, e));
		if (strcmp(out, row[i].want) != 0)
			fail_msg("%s: %s", row[i].why, out);
	}
	refused(book_path(NULL, "", NULL, out, sizeof out, e), ERR_USAGE,
		"--book FILE");
	refused(book_path("12345678", NULL, NULL, small, sizeof small, e), ERR_USAGE,
		"long");
	must(book_path("1234567", NULL, NULL, small, sizeof small, e));
}

static void book_file_and_program_agree_on_its_marks(void **state)
{
	struct book *b;

	(void)state;
	must(b = book_open(":memory:", BOOK_CREATE, "", e));
	assert_int_equal(
		store_number(b, "PRAGMA application_id", 0), STORE_APPLICATION);
	assert_int_equal(store_number(b, "PRAGMA user_version", 0), STORE_VERSION);
	assert_int_equal(store_number(b, "PRAGMA foreign_keys", 0), 1);
	assert_int_equal(store_number(b, "PRAGMA trusted_schema", 1), 0);
	assert_int_equal(store_number(b, "PRAGMA synchronous", 0), 3);
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_new_one_is_its_owners_alone),
		cmocka_unit_test(book_is_there_again_after_closing),
		cmocka_unit_test(book_existing_is_not_made),
		cmocka_unit_test(book_read_changes_nothing),
		cmocka_unit_test(book_refuses_what_is_not_its_own_untouched),
		cmocka_unit_test(book_of_another_program_is_left_in_its_mode),
		cmocka_unit_test(book_names_damage_met_later),
		cmocka_unit_test(book_path_takes_the_first_that_is_set),
		cmocka_unit_test(book_file_and_program_agree_on_its_marks),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
