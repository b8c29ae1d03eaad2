/* SQLite refuses the n-th call of everything that the book is asked for: once, or from
 * then on, or once and takes back what was begun. It says so in a sentence, the book is
 * as it was, and the next try works. Of a long deed some are tried, and each that is the
 * first with its statement; FAULTS=all tries every one, FAULTS=5 each fifth. */
#include "deeds_files.h"
#include "deeds_looks.h"
#include "deeds_undo.h"

#include "../faulty/sqlite.h"

#define N(table) (sizeof(table) / sizeof *(table))
/* Calls of a deed that are tried, but for the first ones, unless all are asked for. */
enum { TRIES = 10, TRIES_SANITIZED = 6 };

struct file {
	char *bytes;
	size_t n;
};

struct trial {
	struct desk desk;
	struct file book, other; /* what each begins with */
	bool as_before;          /* and open, if it is to be */
	uint64_t rows;           /* after the deed at hand, when nothing fails */
	long tried, held;
};

static void trial_folder(struct desk *d)
{
	*d = (struct desk){ 0 };
	folder_make(d->folder, sizeof d->folder, "sqlite-faults");
	snprintf(d->path, sizeof d->path, "%s/book.db", d->folder);
}

static void trial_make(struct trial *t)
{
	char other[128];

	*t = (struct trial){ 0 };
	trial_folder(&t->desk);
	must(t->desk.book = book_open(t->desk.path, BOOK_CREATE, "JR", e));
	desk_fill(&t->desk);
	deed_fill(&t->desk);
	deed_part(&t->desk);
	book_close(t->desk.book);
	t->desk.book = NULL;
	deed_path(&t->desk, "other.db", other);
	t->book.bytes = file_bytes(t->desk.path, &t->book.n);
	t->other.bytes = file_bytes(other, &t->other.n);
}

static void trial_drop(struct trial *t)
{
	desk_clear(&t->desk);
	free(t->book.bytes);
	free(t->other.bytes);
}

static void begin(struct trial *t, const struct deed *deed)
{
	struct desk *d = &t->desk;
	char other[128];

	book_close(d->book);
	d->book = NULL;
	drop_folder(d->folder);
	assert_int_equal(mkdir(d->folder, 0700), 0);
	deed_path(d, "other.db", other);
	file_write(d->path, t->book.bytes, t->book.n);
	file_write(other, t->other.bytes, t->other.n);
	if (deed->kind == LOOKS || deed->kind == CHANGES)
		must(d->book = book_open(d->path, BOOK_EXISTING, "JR", e));
	if (deed->first)
		must(deed->first(d, e));
}

static uint64_t add(uint64_t sum, const char *text)
{
	while (text && *text)
		sum = (sum ^ (unsigned char)*text++) * UINT64_C(1099511628211);
	return (sum ^ '|') * UINT64_C(1099511628211);
}

static uint64_t add_rows(
	uint64_t sum, sqlite3 *db, const char *format, const char *table)
{
	char sql[128];
	sqlite3_stmt *q;

	sqlite3_snprintf(sizeof sql, sql, format, table);
	assert_int_equal(sqlite3_prepare_v2(db, sql, -1, &q, NULL), SQLITE_OK);
	while (sqlite3_step(q) == SQLITE_ROW)
		for (int i = 0; i < sqlite3_column_count(q); i++)
			sum = add(sum, (const char *)sqlite3_column_text(q, i));
	assert_int_equal(sqlite3_finalize(q), SQLITE_OK);
	return sum;
}

/* What the format asks of each table of the book on the disk, as a number. */
static uint64_t ask(const struct desk *d, const char *format)
{
	uint64_t sum = UINT64_C(14695981039346656037);
	sqlite3_stmt *q;
	sqlite3 *db;

	assert_int_equal(
		sqlite3_open_v2(d->path, &db, SQLITE_OPEN_READWRITE, NULL), SQLITE_OK);
	assert_int_equal(sqlite3_prepare_v2(db,
				 "SELECT name FROM sqlite_schema WHERE type = 'table'",
				 -1, &q, NULL),
		SQLITE_OK);
	while (sqlite3_step(q) == SQLITE_ROW)
		sum = add_rows(
			sum, db, format, (const char *)sqlite3_column_text(q, 0));
	assert_int_equal(sqlite3_finalize(q), SQLITE_OK);
	sqlite3_close(db);
	return sum;
}

/* All that it says. */
static uint64_t content(const struct desk *d)
{
	return ask(d, "SELECT * FROM \"%w\"");
}

/* How many rows it has, which is what two books have in common to which the same was
 * done. */
static uint64_t rows(const struct desk *d)
{
	return ask(d, "SELECT count(*) FROM \"%w\"");
}

static bool is_grown(const struct desk *d)
{
	struct book_contents in = { 0 };
	struct err err;

	return book_look_into(d->path, &in, &err) && in.version == STORE_VERSION;
}

/* It may do without what it could not look up, say the name of a row in a sentence. */
static bool holds(
	const struct trial *t, const struct deed *deed, bool done, const struct err *e)
{
	const struct desk *d = &t->desk;
	bool same = t->as_before;

	if (!done && (e->kind == ERR_NONE || !*e->text || strchr(e->text, '\n')))
		print_error("no sentence: \"%s\"\n", e->text);
	else if (!done && !same && !(deed->kind == GROWS && is_grown(d)))
		print_error("it is changed: %s\n", e->text);
	else if (done && (rows(d) != t->rows || (same && deed->kind == CHANGES)))
		print_error("not done as a whole, but said to be\n");
	else if (d->book && !sqlite3_get_autocommit(d->book->db))
		print_error("the change is still open: %s\n", e->text);
	else
		return true;
	return false;
}

/* The n-th call fails; false: it was not made, since an open book keeps its statements,
 * and `deed` was done. When all after it fail as well, SQLite cannot even take back
 * what was begun; the handle is closed then. */
static bool try_call(
	struct trial *t, const struct deed *deed, long n, enum sqlite_way way)
{
	static const char *const says[] = { "", " and all after it", " for good" };
	struct err err = { 0 };
	struct desk *d = &t->desk;
	uint64_t before = content(d);

	sqlite_arm(n, way);
	bool done = deed->run(d, &err), struck = sqlite_struck();
	sqlite_arm(0, REFUSES_ONCE);
	if (!struck) {
		t->as_before = false;
		assert_true(done);
		return false;
	}
	if (way == REFUSES_ON) {
		book_close(d->book);
		d->book = NULL;
	}
	t->as_before = content(d) == before;
	bool held = holds(t, deed, done, &err);
	if (!held)
		print_error("%s, call %ld%s: NOT HELD\n", deed->name, n, says[way]);
	t->tried++;
	t->held += held;
	return true;
}

static long calls_of(struct trial *t, const struct deed *deed, struct sqlite_news *news)
{
	begin(t, deed);
	sqlite_arm(0, REFUSES_ONCE);
	sqlite_note(news);
	struct err err = { 0 };
	if (!deed->run(&t->desk, &err))
		fail_msg("%s: %s", deed->name, err.text);
	sqlite_note(NULL);
	long calls = sqlite_calls(); /* those that follow are the test's own */
	t->rows = rows(&t->desk);
	return calls;
}

static long pace(long calls)
{
	const char *given = getenv("FAULTS");
	long tries = getenv("SANITIZED") ? TRIES_SANITIZED : TRIES;

	if (given && strcmp(given, "all") == 0)
		return 1;
	return given && atol(given) > 0 ? atol(given) : calls / (tries + 1) + 1;
}

/* False: the deed makes fewer calls than that. */
static bool try_afresh(
	struct trial *t, const struct deed *deed, long n, enum sqlite_way way)
{
	if (!t->as_before || !t->desk.book)
		begin(t, deed);
	if (try_call(t, deed, n, way))
		return true;
	begin(t, deed);
	return try_call(t, deed, n, way); /* a few calls go by the clock */
}

static void try_deed(struct trial *t, const struct deed *deed)
{
	struct sqlite_news news = { 0 };
	long calls = calls_of(t, deed, &news), each = pace(calls);

	for (int way = 0; way < SQLITE_WAYS; way++)
		for (long n = 1;
			n <= calls && try_afresh(t, deed, n, (enum sqlite_way)way);)
			n += each;
	for (size_t i = 0; each > 1 && !getenv("SANITIZED") && i < news.n; i++)
		try_afresh(t, deed, news.calls[i], GIVES_UP);
	t->as_before = false;
}

static void try_deeds(const struct deed *deeds, size_t n)
{
	struct trial t;

	trial_make(&t);
	sqlite_forget();
	for (size_t i = 0; i < n; i++)
		try_deed(&t, &deeds[i]);
	trial_drop(&t);
	printf("%ld tried, %ld held\n", t.tried, t.held);
	assert_int_equal(t.held, t.tried);
}

static void book_says_so_when_it_cannot_be_asked(void **state)
{
	(void)state;
	try_deeds(deeds_looks, N(deeds_looks));
}

static void book_is_as_it_was_when_a_change_cannot_be_made(void **state)
{
	(void)state;
	try_deeds(deeds_changes, N(deeds_changes));
}

static void book_is_as_it_was_when_nothing_can_be_taken_back(void **state)
{
	(void)state;
	try_deeds(deeds_undo, N(deeds_undo));
}

static void book_is_as_it_was_when_its_file_cannot_be_worked_on(void **state)
{
	(void)state;
	try_deeds(deeds_files, N(deeds_files));
}

/* A copy is tried once and 20 times more, two seconds in all. */
static void book_is_copied_when_the_other_program_is_done_with_it(void **state)
{
	static const struct {
		bool (*run)(struct desk *d, struct err *e);
		int busy;
		bool good;
	} row[] = {
		{ back_up, 20, true },
		{ back_up, 21, false },
		{ merge, 20, true },
		{ merge, 21, false },
	};
	static const struct deed opens = { .kind = OPENS };
	struct trial t;

	(void)state;
	trial_make(&t);
	for (size_t i = 0; i < N(row); i++) {
		struct err err = { 0 };
		begin(&t, &opens);
		sqlite_arm_busy(row[i].busy);
		if (row[i].run(&t.desk, &err) != row[i].good ||
			(!row[i].good && !strstr(err.text, "another program is using")))
			fail_msg("%zu: %s", i, err.text);
	}
	sqlite_arm(0, REFUSES_ONCE);
	trial_drop(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_says_so_when_it_cannot_be_asked),
		cmocka_unit_test(book_is_as_it_was_when_a_change_cannot_be_made),
		cmocka_unit_test(book_is_as_it_was_when_nothing_can_be_taken_back),
		cmocka_unit_test(book_is_as_it_was_when_its_file_cannot_be_worked_on),
		cmocka_unit_test(book_is_copied_when_the_other_program_is_done_with_it),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
