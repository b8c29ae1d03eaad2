/* trials.h - does one thing to a book again and again, each time on a disk that fails
 * at another call, and judges what is left. */
#ifndef TESTS_BOOK_TRIALS_H
#define TESTS_BOOK_TRIALS_H

#include "fixture.h"

#include "../faulty/disk.h"
#include "base/buf.h"

#include <sys/mman.h>
#include <sys/wait.h>
#include <utime.h>

enum { TRIAL_PATH = 256, TRIAL_STATES = 8, TRIAL_DAY = 20000 };

struct trial {
	char folder[96], path[128]; /* the folder at work, the book in it */
	char base[64];              /* what each trial begins with */
	int64_t trap, other, pest;
	int *acknowledged;                 /* seen by parent and child */
	uint64_t states[TRIAL_STATES + 1]; /* what the book holds after so many */
	int n_states;
	bool noting; /* the first time, on a sound disk */
};

struct act {
	const char *name;
	void (*make)(struct trial *t); /* what it begins with, beside the book; NULL */
	bool (*run)(struct trial *t, struct err *e);
	const char *file; /* where the book is; NULL: book.db */
};

/* A row of each table as text, without what differs from one time to the next. */
static inline void trial_rows(sqlite3 *db, const char *table, struct buf *sql)
{
	static const char ask[] =
		"SELECT group_concat('quote(' || CASE name WHEN 'old' THEN "
		"'json_remove(old, ''$.uid'', ''$.changed_at'')' ELSE '\"' || name || "
		"'\"' END || ')', '||'',''||') FROM pragma_table_info(?1) WHERE name "
		"NOT IN ('uid', 'of', 'at', 'changed_at', 'kept', 'ref1', 'ref2', "
		"'ref3', 'ref4')";
	sqlite3_stmt *q = NULL;

	assert_int_equal(sqlite3_prepare_v2(db, ask, -1, &q, NULL), SQLITE_OK);
	sqlite3_bind_text(q, 1, table, -1, SQLITE_STATIC);
	assert_int_equal(sqlite3_step(q), SQLITE_ROW);
	buf_clear(sql);
	buf_addf(sql, "SELECT '%s,' || %s FROM \"%s\" ORDER BY 1", table,
		(const char *)sqlite3_column_text(q, 0), table);
	sqlite3_finalize(q);
}

static inline uint64_t trial_add(uint64_t sum, const char *text)
{
	while (*text)
		sum = (sum ^ (unsigned char)*text++) * UINT64_C(1099511628211);
	return sum;
}

/* All that a book says, as one number; 0: it cannot be read. */
static inline uint64_t trial_state(const char *path)
{
	uint64_t sum = UINT64_C(14695981039346656037);
	sqlite3_stmt *tables = NULL, *rows = NULL;
	struct buf sql = { 0 };
	sqlite3 *db = NULL;
	bool ok =
		sqlite3_open_v2(path, &db, SQLITE_OPEN_READWRITE, NULL) == SQLITE_OK &&
		sqlite3_prepare_v2(db,
			"SELECT name FROM sqlite_schema WHERE type = 'table' AND "
			"name NOT LIKE 'sqlite%' ORDER BY name",
			-1, &tables, NULL) == SQLITE_OK;

	while (ok && sqlite3_step(tables) == SQLITE_ROW) {
		int code = SQLITE_ROW;
		trial_rows(db, (const char *)sqlite3_column_text(tables, 0), &sql);
		ok = sqlite3_prepare_v2(db, sql.text, -1, &rows, NULL) == SQLITE_OK;
		while (ok && (code = sqlite3_step(rows)) == SQLITE_ROW)
			sum = trial_add(
				sum, (const char *)sqlite3_column_text(rows, 0));
		ok = ok && code == SQLITE_DONE;
		sqlite3_finalize(rows);
	}
	sqlite3_finalize(tables);
	sqlite3_close(db);
	buf_free(&sql);
	return ok ? sum : 0;
}

/* What was done so far has been told to the grower as saved. */
static inline bool trial_ack(struct trial *t)
{
	++*t->acknowledged;
	if (t->noting) {
		assert_true(t->n_states < TRIAL_STATES);
		t->states[++t->n_states] = trial_state(t->path);
	}
	return true;
}

/* A day old: what a program that was killed left behind. */
static inline void make_old_part(struct trial *t)
{
	struct utimbuf long_ago = { 1000000000, 1000000000 };
	char part[TRIAL_PATH];

	snprintf(part, sizeof part, "%s/book.db.part-Ab3xYz", t->folder);
	file_write(part, "half", 4);
	assert_int_equal(utime(part, &long_ago), 0);
}

static inline void trial_copy(const char *from, const char *to)
{
	struct dirent *entry;
	DIR *dir = opendir(from);

	assert_non_null(dir);
	assert_int_equal(mkdir(to, 0700), 0);
	while ((entry = readdir(dir))) {
		char a[TRIAL_PATH * 2], b[TRIAL_PATH * 2];
		struct stat st;
		size_t n;

		if (strcmp(entry->d_name, ".") == 0 || strcmp(entry->d_name, "..") == 0)
			continue;
		snprintf(a, sizeof a, "%s/%s", from, entry->d_name);
		snprintf(b, sizeof b, "%s/%s", to, entry->d_name);
		assert_int_equal(stat(a, &st), 0);
		if (S_ISDIR(st.st_mode)) {
			trial_copy(a, b);
			continue;
		}
		char *bytes = file_bytes(a, &n);
		struct utimbuf times = { st.st_atime, st.st_mtime };
		file_write(b, bytes, n);
		utime(b, &times);
		free(bytes);
	}
	closedir(dir);
}

static inline void trial_tell(void *arg, const char *text)
{
	(void)arg;
	print_error("%s\n", text);
}

static inline bool trial_sound(const char *path, enum book_open how)
{
	struct err err = { 0 };
	struct book *b = book_open(path, how, "", &err);
	int found = 1;
	bool ok = b && book_check(b, 30000, trial_tell, NULL, &found, &err);

	if (!ok)
		print_error("%s: %s\n", path, err.text);
	book_close(b);
	return ok && found == 0;
}

/* Copies that have their name are whole: each holds what a book held at some time. */
static inline bool trial_copies_whole(const struct trial *t, const char *folder)
{
	struct dirent *entry;
	DIR *dir = opendir(folder);
	bool ok = true;

	while (ok && dir && (entry = readdir(dir))) {
		char path[TRIAL_PATH * 2];
		size_t n = strlen(entry->d_name);
		bool copy = n > 3 && strcmp(entry->d_name + n - 3, ".db") == 0;
		bool old = strstr(entry->d_name, ".version-") != NULL &&
			   !strstr(entry->d_name, ".part-");

		snprintf(path, sizeof path, "%s/%s", folder, entry->d_name);
		if ((!copy && !old) || strcmp(path, t->path) == 0)
			continue;
		uint64_t state = trial_state(path);
		ok = old ? state != 0 : trial_sound(path, BOOK_READ);
		if (!ok)
			print_error("%s is not whole\n", path);
	}
	if (dir)
		closedir(dir);
	return ok;
}

static inline bool trial_one_sentence(const struct err *e)
{
	return *e->text && !strchr(e->text, '\n');
}

/* Runs it in a process of its own; its exit status, and the calls that it made. */
static inline int trial_run(struct trial *t, const struct act *act,
	enum disk_fault fault, long n, long *calls)
{
	int status;
	pid_t child = fork();

	assert_true(child >= 0);
	if (child == 0) {
		struct err err = { 0 };
		disk_arm(fault, n, (unsigned)n);
		bool ok = act->run(t, &err);
		*calls = disk_calls();
		disk_end();
		_exit(ok ? 0 : trial_one_sentence(&err) ? 1 : 2);
	}
	assert_int_equal(waitpid(child, &status, 0), child);
	return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

static inline bool trial_state_fits(const struct trial *t, int status)
{
	uint64_t state = trial_state(t->path);
	int at = *t->acknowledged;

	/* What was under way when it failed may be there as a whole; what was told as
	 * done is. */
	bool fits = state == t->states[at] ||
		    (status != 0 && at < t->n_states && state == t->states[at + 1]);
	if (!fits)
		print_error("the book holds something else than after %d\n", at);
	return fits;
}

/* A book that was not there yet may not be there now. */
static inline bool trial_held(const struct trial *t, int status)
{
	char folder[TRIAL_PATH];
	enum book_open how = t->states[0] ? BOOK_EXISTING : BOOK_CREATE;

	if (status != 0 && status != 1 && status != DISK_CUT) {
		print_error("ended with %d\n", status);
		return false;
	}
	if (*t->acknowledged > 0)
		how = BOOK_EXISTING;
	snprintf(folder, sizeof folder, "%s/backups", t->folder);
	return trial_sound(t->path, how) &&
	       (how == BOOK_CREATE || trial_state_fits(t, status)) &&
	       trial_copies_whole(t, t->folder) && trial_copies_whole(t, folder);
}

static inline void trial_begin(struct trial *t)
{
	drop_folder(t->folder);
	trial_copy(t->base, t->folder);
	*t->acknowledged = 0;
}

/* The book of all trials: two traps hung, one read twice. */
static inline void trial_make(struct trial *t, const struct act *act)
{
	struct desk d;

	*t = (struct trial){ 0 };
	folder_make(t->base, sizeof t->base, "faults-test");
	snprintf(t->folder, sizeof t->folder, "%s", t->base);
	snprintf(t->path, sizeof t->path, "%s/book.db", t->folder);
	d = (struct desk){ 0 };
	must(d.book = book_open(t->path, BOOK_CREATE, "JR", e));
	desk_fill(&d);
	t->trap = d.trap;
	t->other = desk_add_trap(&d, "2");
	t->pest = d.pest;
	struct visit v = without_count(t->trap, TRIAL_DAY, OUTCOME_HUNG);
	struct visit w = without_count(t->other, TRIAL_DAY, OUTCOME_HUNG);
	struct visit c = counted(t->trap, TRIAL_DAY + 7, 4);
	must(book_save_visit(d.book, &v, NULL, e));
	must(book_save_visit(d.book, &w, NULL, e));
	must(book_save_visit(d.book, &c, NULL, e));
	book_close(d.book);
	if (act->make)
		act->make(t);
	snprintf(t->folder, sizeof t->folder, "%s-at", t->base);
	snprintf(t->path, sizeof t->path, "%s/%s", t->folder,
		act->file ? act->file : "book.db");
}

static inline void trial_note_states(struct trial *t, const struct act *act)
{
	trial_begin(t);
	t->states[0] = access(t->path, F_OK) == 0 ? trial_state(t->path) : 0;
	t->noting = true;
	must(act->run(t, e));
	t->noting = false;
}

/* From one call that is tried to the next: every one when asked for, else some. */
static inline long trial_pace(long calls)
{
	const char *all = getenv("FAULTS");

	if (all && strcmp(all, "all") == 0)
		return 1;
	if (all && atol(all) > 0)
		return atol(all);
	return getenv("SANITIZED") ? calls : calls / 6 + 1;
}

static inline void trial_fault(struct trial *t, const struct act *act,
	enum disk_fault fault, const char *word, long sums[2])
{
	long *calls = mmap(NULL, sizeof *calls, PROT_READ | PROT_WRITE,
		MAP_SHARED | MAP_ANONYMOUS, -1, 0);
	long tried = 0, held = 0;

	trial_begin(t);
	assert_int_equal(trial_run(t, act, DISK_SOUND, 1, calls), 0);
	long all = *calls, pace = trial_pace(all);
	for (long n = 1 + ((long)fault * 7) % pace; n <= all + 1;
		n = n <= all && n + pace > all ? all + 1 : n + pace) {
		trial_begin(t);
		int status = trial_run(t, act, fault, n, calls);
		tried++;
		if (trial_held(t, status))
			held++;
		else
			print_error("%s: %s at call %ld of %ld: NOT HELD\n", act->name,
				word, n, all);
	}
	munmap(calls, sizeof *calls);
	printf("%-16s %6ld  %-17s %6ld %6ld\n", act->name, all, word, tried, held);
	fflush(stdout);
	sums[0] += tried;
	sums[1] += held;
}

static inline void trial_act(const struct act *act, long *tried, long *held)
{
	static const char *const words[] = {
		[DISK_CUT_KEPT] = "cut, kept",
		[DISK_CUT_LOST] = "cut, lost",
		[DISK_CUT_TORN] = "cut, torn",
		[DISK_FULL] = "full",
		[DISK_ERROR] = "one error",
		[DISK_GONE] = "gone",
		[DISK_LIES] = "no room after all",
	};
	long sums[2] = { *tried, *held };
	struct trial t;

	trial_make(&t, act);
	t.acknowledged = mmap(NULL, sizeof(int), PROT_READ | PROT_WRITE,
		MAP_SHARED | MAP_ANONYMOUS, -1, 0);
	trial_note_states(&t, act);
	for (int f = DISK_CUT_KEPT; f <= DISK_LIES; f++)
		trial_fault(&t, act, (enum disk_fault)f, words[f], sums);
	*tried = sums[0];
	*held = sums[1];
	munmap(t.acknowledged, sizeof(int));
	drop_folder(t.folder);
	drop_folder(t.base);
}

#endif
