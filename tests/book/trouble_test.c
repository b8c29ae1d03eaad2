#include "fixture.h"

#include <fcntl.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/wait.h>

static void book_two_handles_see_each_other(void **state)
{
	struct book *other;
	struct desk d;
	struct visit got;

	(void)state;
	desk_disk(&d);
	must(other = book_open(d.path, BOOK_EXISTING, "Office", e));
	int64_t before = book_data_version(d.book);
	assert_int_equal(book_data_version(d.book), before);
	struct visit v = counted(d.trap, 20000, 7);
	must(book_save_visit(other, &v, NULL, e));
	assert_int_not_equal(book_data_version(d.book), before);
	must(book_visit(d.book, d.trap, 20000, &got, NULL, e));
	assert_int_equal(got.count, 7);
	book_close(other);
	desk_clear(&d);
}

static void book_says_when_another_program_writes(void **state)
{
	struct book *other;
	struct desk d;

	(void)state;
	desk_disk(&d);
	must(other = book_open(d.path, BOOK_EXISTING, "", e));
	must(book_begin(other, e));
	struct visit v = counted(d.trap, 20000, 7);
	refused(book_save_visit(d.book, &v, NULL, e), ERR_BOOK,
		"this count is not saved: another program is using the book");
	book_rollback(other);
	must(book_save_visit(d.book, &v, NULL, e));
	book_close(other);
	desk_clear(&d);
}

static void book_moved_or_deleted_meanwhile_says_so(void **state)
{
	static const char says[] = "this count is not saved: the book was moved or "
				   "deleted meanwhile; start again";
	char elsewhere[128];
	struct desk d;

	(void)state;
	for (int moved = 0; moved < 2; moved++) {
		desk_disk(&d);
		snprintf(elsewhere, sizeof elsewhere, "%s/old.db", d.folder);
		struct visit v = counted(d.trap, 20000, 7);
		assert_int_equal(moved ? rename(d.path, elsewhere) : unlink(d.path), 0);
		refused(book_save_visit(d.book, &v, NULL, e), ERR_BOOK, says);
		desk_clear(&d);
	}
}

static int counts_in(const char *path)
{
	struct visits got = { 0 };
	struct book *b;

	must(b = book_open(path, BOOK_READ, "", e));
	must(book_visits(b, 0, 0, 30000, &got, e));
	free(got.items);
	book_close(b);
	return (int)got.n;
}

/* What lies beside it is not asked for. */
static void book_copied_between_saves_is_whole(void **state)
{
	char copy[128];
	struct desk d;
	size_t n;

	(void)state;
	desk_disk(&d);
	snprintf(copy, sizeof copy, "%s/copy.db", d.folder);
	struct visit v = counted(d.trap, 20000, 7);
	must(book_save_visit(d.book, &v, NULL, e));
	char *bytes = file_bytes(d.path, &n);
	file_write(copy, bytes, n);
	free(bytes);
	assert_int_equal(counts_in(copy), 1);
	desk_clear(&d);
}

static void book_closed_is_one_file(void **state)
{
	char journal[128];
	struct book *other;
	struct desk d;

	(void)state;
	desk_disk(&d);
	snprintf(journal, sizeof journal, "%s-journal", d.path);
	must(other = book_open(d.path, BOOK_EXISTING, "", e));
	struct visit v = counted(d.trap, 20000, 7), later = counted(d.trap, 20007, 3);
	must(book_save_visit(d.book, &v, NULL, e));
	book_close(d.book);
	must(book_save_visit(other, &later, NULL, e)); /* the other one took it away */
	book_close(other);
	assert_int_equal(access(journal, F_OK), -1);
	assert_int_equal(counts_in(d.path), 2);
	must(d.book = book_open(d.path, BOOK_EXISTING, "", e));
	desk_clear(&d);
}

/* In its place is another by now, whose journal may be wanted. */
static void book_moved_away_is_closed_without_a_trace(void **state)
{
	char journal[128], elsewhere[128];
	struct desk d;
	size_t n;

	(void)state;
	desk_disk(&d);
	snprintf(journal, sizeof journal, "%s-journal", d.path);
	snprintf(elsewhere, sizeof elsewhere, "%s/old.db", d.folder);
	char *bytes = file_bytes(d.path, &n);
	assert_int_equal(rename(d.path, elsewhere), 0);
	file_write(d.path, bytes, n);
	file_write(journal, "of the new book", 15);
	book_close(d.book);
	d.book = NULL;
	assert_unchanged(journal, "of the new book", 15);
	free(bytes);
	desk_clear(&d);
}

static void book_locked_one_is_refused_untouched(void **state)
{
	struct desk d;
	size_t n;

	(void)state;
	desk_disk(&d);
	char *bytes = file_bytes(d.path, &n);
	assert_int_equal(raw(d.book, "BEGIN EXCLUSIVE"), SQLITE_OK);
	refused(book_open(d.path, BOOK_EXISTING, "", e), ERR_BOOK,
		"another program is using the book");
	assert_int_equal(raw(d.book, "ROLLBACK"), SQLITE_OK);
	assert_unchanged(d.path, bytes, n);
	free(bytes);
	desk_clear(&d);
}

/* Runs `work` in a process whose files may not grow beyond `limit` bytes. */
static int with_small_disk(struct desk *d, rlim_t limit, int (*work)(struct desk *d))
{
	int status;
	pid_t child = fork();

	if (child == 0) {
		struct rlimit r = { limit, limit };
		signal(SIGXFSZ, SIG_IGN);
		_exit(setrlimit(RLIMIT_FSIZE, &r) == 0 ? work(d) : 99);
	}
	assert_true(child > 0);
	assert_int_equal(waitpid(child, &status, 0), child);
	assert_true(WIFEXITED(status));
	return WEXITSTATUS(status);
}

static int fill_until_full(struct desk *d)
{
	struct err err = { 0 };
	struct visit v = counted(d->trap, 20001, 7), got;
	struct visit_words w = { "", "" };

	memset(w.note, 'x', sizeof w.note - 1);
	while (v.day < 29999 && book_save_visit(d->book, &v, &w, &err))
		v.day++;
	if (err.kind != ERR_BOOK ||
		!strstr(err.text, "this count is not saved: the disk is full (") ||
		!strstr(err.text, "/book.db)"))
		return 1;
	/* The refused one is not there, the one before it is, and reading goes on. */
	if (book_visit(d->book, d->trap, v.day, &got, NULL, &err))
		return 2;
	return book_visit(d->book, d->trap, v.day - 1, &got, NULL, &err) ? 0 : 3;
}

static void book_full_disk_loses_nothing_shown_as_saved(void **state)
{
	struct desk d;
	struct visit got;
	struct stat st;

	(void)state;
	desk_disk(&d);
	struct visit v = counted(d.trap, 20000, 7);
	must(book_save_visit(d.book, &v, NULL, e));
	book_close(d.book);
	d.book = NULL;
	assert_int_equal(stat(d.path, &st), 0);
	must(d.book = book_open(d.path, BOOK_EXISTING, "", e));
	assert_int_equal(
		with_small_disk(&d, (rlim_t)st.st_size + 16384, fill_until_full), 0);
	book_close(d.book);
	must(d.book = book_open(d.path, BOOK_EXISTING, "", e));
	must(book_visit(d.book, d.trap, 20000, &got, NULL, e));
	must(book_visit(d.book, d.trap, 20001, &got, NULL, e));
	assert_int_equal(store_number(d.book,
				 "SELECT count(*) FROM pragma_integrity_check "
				 "WHERE integrity_check <> 'ok'",
				 -1),
		0);
	desk_clear(&d);
}

static int create_and_fail(struct desk *d)
{
	struct err err = { 0 };

	if (book_open(d->path, BOOK_CREATE, "", &err))
		return 1;
	return strstr(err.text, "the book is not made: the disk is full") ? 0 : 2;
}

static void book_full_disk_leaves_no_half_made_book(void **state)
{
	struct desk d;
	struct err err;

	(void)state;
	desk_folder(&d);
	assert_int_equal(with_small_disk(&d, 40960, create_and_fail), 0);
	assert_false(book_open(d.path, BOOK_EXISTING, "", &err));
	assert_int_equal(err.kind, ERR_NOT_FOUND);
	assert_int_equal(rmdir(d.folder), 0); /* empty */
	desk_clear(&d);
}

static int lose_a_group(struct desk *d)
{
	struct err err = { 0 };
	struct visit v = counted(d->trap, 20001, 7);
	struct visit_words w = { "", "" };
	bool same;

	memset(w.note, 'x', sizeof w.note - 1);
	sqlite3_exec(d->book->db, "PRAGMA cache_size = 10", NULL, NULL, NULL);
	if (!book_begin(d->book, &err))
		return 1;
	while (v.day < 29999 && book_add_visit(d->book, &v, &w, &same, &err))
		v.day++;
	if (!strstr(err.text, "the disk is full"))
		return 2;
	v.day = 20001; /* whatever the caller does now, nothing may be saved alone */
	if (sqlite3_get_autocommit(d->book->db) &&
		book_save_visit(d->book, &v, &w, &err))
		return 3;
	book_rollback(d->book);
	return store_number(d->book, "SELECT count(*) FROM visit", -1) == 0 ? 0 : 4;
}

static void book_full_disk_in_a_group_saves_none_of_it(void **state)
{
	struct desk d;
	struct stat st;

	(void)state;
	desk_disk(&d);
	assert_int_equal(stat(d.path, &st), 0);
	assert_int_equal(
		with_small_disk(&d, (rlim_t)st.st_size + 65536, lose_a_group), 0);
	desk_clear(&d);
}

static void book_without_a_journal_saves_nothing(void **state)
{
	char journal[128];
	struct desk d;

	(void)state;
	desk_disk(&d);
	snprintf(journal, sizeof journal, "%s-journal", d.path);
	assert_int_equal(unlink(journal), 0);      /* it is made anew if it is gone */
	assert_int_equal(mkdir(journal, 0700), 0); /* in its place */
	struct visit v = counted(d.trap, 20000, 7);
	refused(book_save_visit(d.book, &v, NULL, e), ERR_BOOK,
		"this count is not saved");
	assert_int_equal(rmdir(journal), 0);
	must(book_save_visit(d.book, &v, NULL, e));
	desk_clear(&d);
}

static int save_and_die(struct desk *d)
{
	struct visit v = counted(d->trap, 20000, 7), cut = counted(d->trap, 20001, 8);
	struct err err;
	bool same;

	if (!book_save_visit(d->book, &v, NULL, &err) || !book_begin(d->book, &err))
		return 1;
	sqlite3_exec(d->book->db, "PRAGMA cache_size = 1; PRAGMA cache_spill = 1", NULL,
		NULL, NULL);
	for (; cut.day < 21000; cut.day++)
		if (!book_add_visit(d->book, &cut, NULL, &same, &err))
			return 2;
	raise(SIGKILL);
	return 3;
}

static void book_killed_while_saving_keeps_what_was_saved(void **state)
{
	struct visits got = { 0 };
	struct desk d;
	int status;

	(void)state;
	desk_disk(&d);
	pid_t child = fork();
	if (child == 0)
		_exit(save_and_die(&d));
	assert_int_equal(waitpid(child, &status, 0), child);
	assert_true(WIFSIGNALED(status));
	book_close(d.book);
	must(d.book = book_open(d.path, BOOK_EXISTING, "", e));
	must(book_visits(d.book, 0, 0, 30000, &got, e));
	assert_int_equal(got.n, 1);
	assert_int_equal(got.items[0].count, 7);
	free(got.items);
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_two_handles_see_each_other),
		cmocka_unit_test(book_says_when_another_program_writes),
		cmocka_unit_test(book_moved_or_deleted_meanwhile_says_so),
		cmocka_unit_test(book_copied_between_saves_is_whole),
		cmocka_unit_test(book_closed_is_one_file),
		cmocka_unit_test(book_moved_away_is_closed_without_a_trace),
		cmocka_unit_test(book_locked_one_is_refused_untouched),
		cmocka_unit_test(book_full_disk_loses_nothing_shown_as_saved),
		cmocka_unit_test(book_full_disk_leaves_no_half_made_book),
		cmocka_unit_test(book_full_disk_in_a_group_saves_none_of_it),
		cmocka_unit_test(book_without_a_journal_saves_nothing),
		cmocka_unit_test(book_killed_while_saving_keeps_what_was_saved),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
