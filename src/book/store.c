/* store.c - transactions, and what a failure of SQLite means to the grower. */
#include "file.h"
#include "query.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <time.h>

/* Only ENOSPC has a code of its own. The other errors of a write are asked for where
 * SQLite keeps them; the latest one of the process may be from its rollback. */
static bool disk_is_full(const struct book *b, int code)
{
	int kind = code & 0xff, system = 0;

	if (kind == SQLITE_FULL)
		return true;
	if (!b->db || (kind != SQLITE_IOERR && kind != SQLITE_CANTOPEN))
		return false;
	if (file_means_full(sqlite3_system_errno(b->db)))
		return true;
	sqlite3_file_control(b->db, "main", SQLITE_FCNTL_LAST_ERRNO, &system);
	return code == SQLITE_IOERR_WRITE && file_means_full(system);
}

/* SQLite asks the book what rights its journal is to have. */
static bool book_is_gone(const struct book *b, int code)
{
	return code == SQLITE_READONLY_DBMOVED ||
	       (code == SQLITE_IOERR_FSTAT && b->db &&
		       sqlite3_system_errno(b->db) == ENOENT);
}

static const char *reason(const struct book *b, int code)
{
	if (book_is_gone(b, code))
		return _("the book was moved or deleted meanwhile; start again");
	if (disk_is_full(b, code))
		return _("the disk is full");
	switch (code & 0xff) {
	case SQLITE_BUSY:
	case SQLITE_LOCKED:
		return _(
			"another program is using the book; try again when it is done");
	case SQLITE_READONLY:
		return _("the book may only be read");
	case SQLITE_CORRUPT:
		return _("the book is damaged; its backups are in the folder backups "
			 "beside it");
	case SQLITE_NOTADB:
		return _("the file is damaged or is no book");
	case SQLITE_IOERR:
		return code == SQLITE_IOERR_WRITE ? _("the disk is full or failing")
						  : _("the disk failed");
	case SQLITE_CANTOPEN:
		return _("the book or its journal cannot be opened; look at the folder "
			 "and its permissions");
	case SQLITE_NOMEM:
		return _("memory has run out; close other programs and try again");
	case SQLITE_ABORT:
		return _("memory or disk failed half-way; try again");
	default:
		return b->db ? sqlite3_errmsg(b->db) : sqlite3_errstr(code);
	}
}

bool store_fail(const struct book *b, int code, const char *what, struct err *e)
{
	if (!e)
		return false;
	return err_set(e, ERR_BOOK, "%s: %s (%s)", _(what), reason(b, code), b->path);
}

bool store_is_lost(const struct book *b)
{
	return b->changing && sqlite3_get_autocommit(b->db);
}

bool store_exec(struct book *b, const char *sql, const char *what, struct err *e)
{
	int code = store_is_lost(b) ? SQLITE_ABORT
				    : sqlite3_exec(b->db, sql, NULL, NULL, NULL);

	return code == SQLITE_OK || store_fail(b, code, what, e);
}

int64_t store_number(struct book *b, const char *sql, int64_t otherwise)
{
	sqlite3_stmt *s = NULL;
	int64_t number = otherwise;

	if (sqlite3_prepare_v2(b->db, sql, -1, &s, NULL) == SQLITE_OK &&
		sqlite3_step(s) == SQLITE_ROW)
		number = sqlite3_column_int64(s, 0);
	sqlite3_finalize(s);
	return number;
}

void store_time(const struct book *b, char out[static STORE_TIME_SIZE])
{
	struct timespec now;
	struct tm tm;

	if (b->grouped) {
		memcpy(out, b->group_at, STORE_TIME_SIZE);
		return;
	}
	clock_gettime(CLOCK_REALTIME, &now);
	gmtime_r(&now.tv_sec, &tm);
	size_t n = strftime(out, STORE_TIME_SIZE, "%Y-%m-%dT%H:%M:%S", &tm);
	unsigned ms = (unsigned)now.tv_nsec / 1000000u % 1000u;
	snprintf(out + n, STORE_TIME_SIZE - n, ".%03uZ", ms);
}

bool store_group_alive(struct book *b, const char *what, struct err *e)
{
	if (b->grouped && sqlite3_get_autocommit(b->db))
		return err_set(e, ERR_BOOK,
			_("%s: the changes made together with it were lost (%s)"),
			_(what), b->path);
	return true;
}

/* A book in the making has no history yet. */
static bool read_history(struct book *b, const char *what, struct err *e)
{
	sqlite3_stmt *s = NULL;
	int code = sqlite3_prepare_v2(
		b->db, "SELECT coalesce(max(id), 0) FROM history", -1, &s, NULL);

	b->history = -1;
	if (code == SQLITE_OK)
		code = sqlite3_step(s);
	if (code == SQLITE_ROW)
		b->history = sqlite3_column_int64(s, 0);
	sqlite3_finalize(s);
	return code == SQLITE_ROW || code == SQLITE_ERROR ||
	       store_fail(b, code, what, e);
}

static const char rollback[] = "ROLLBACK";

static bool begin(struct book *b, const char *what, struct err *e)
{
	struct query q;

	query_start(&q, b, rollback); /* kept: it may be wanted when memory is out */
	if (q.code != SQLITE_OK)
		return store_fail(b, q.code, what, e);
	if (!store_exec(b, "BEGIN IMMEDIATE", what, e))
		return false;
	b->changing = true;
	return read_history(b, what, e) || store_end(b, false, what, NULL);
}

bool store_begin(struct book *b, const char *what, struct err *e)
{
	if (!store_group_alive(b, what, e))
		return false;
	if (b->grouped)
		return store_exec(b, "SAVEPOINT change", what, e);
	return begin(b, what, e);
}

/* All that the transaction changed becomes one step; 0: that was nothing. */
static bool number_step(struct book *b, int64_t *step, const char *what, struct err *e)
{
	struct query q;

	*step = 0;
	if (b->grouped || b->history < 0)
		return true;
	query_start(&q, b, "UPDATE history SET step = ?1 + 1 WHERE id > ?1");
	query_int(&q, b->history);
	if (!query_end(&q, what, e))
		return false;
	if (sqlite3_changes(b->db) > 0)
		*step = b->history + 1;
	return true;
}

/* It is ours to take back; a program that shares the book and the name has its own. */
static void keep_own(struct book *b, int64_t step)
{
	if (step == 0)
		return;
	b->own.items =
		mem_grow(b->own.items, &b->own.cap, b->own.n + 1, sizeof *b->own.items);
	b->own.items[b->own.n++] = step;
}

static bool keep(struct book *b, const char *what, struct err *e)
{
	int64_t step = 0;

	if (!number_step(b, &step, what, e) ||
		!store_exec(b, b->grouped ? "RELEASE change" : "COMMIT", what, e))
		return false;
	keep_own(b, step);
	return true;
}

static void take_all_back(struct book *b)
{
	struct query q;

	query_start(&q, b, rollback);
	query_end(&q, "", NULL);
}

bool store_end(struct book *b, bool ok, const char *what, struct err *e)
{
	bool kept = ok && keep(b, what, e);

	if (!kept && !sqlite3_get_autocommit(b->db) &&
		(!b->grouped || !store_exec(b, "ROLLBACK TO change; RELEASE change",
					what, NULL)))
		take_all_back(b);
	b->changing = b->grouped;
	return kept;
}

bool book_begin(struct book *b, struct err *e)
{
	char now[STORE_TIME_SIZE];

	if (!begin(b, N_("nothing is saved"), e))
		return false;
	store_time(b, now);
	memcpy(b->group_at, now, sizeof now);
	memset(b->fits, 0, sizeof b->fits);
	b->grouped = true;
	return true;
}

bool book_commit(struct book *b, struct err *e)
{
	const char *what = N_("nothing is saved");
	bool alive = store_group_alive(b, what, e);

	b->grouped = false;
	return store_end(b, alive, what, e);
}

void book_rollback(struct book *b)
{
	b->grouped = b->changing = false;
	if (!sqlite3_get_autocommit(b->db))
		take_all_back(b);
}

int64_t book_data_version(struct book *b)
{
	struct query q;
	int64_t version = 0;

	query_start(&q, b, "PRAGMA data_version");
	if (query_row(&q))
		version = query_get(&q);
	query_end(&q, "", NULL);
	return version;
}

void book_set_who(struct book *b, const char *who)
{
	text_copy(b->who, sizeof b->who, who);
}

bool store_text_good(const char *text, const char *what, struct err *e)
{
	size_t n = strlen(text);

	for (size_t at = 0; at < n;) {
		uint32_t cp;
		size_t bytes = text_decode(text + at, n - at, &cp);
		if (text_control(cp) || (cp == 0xFFFD && bytes == 1))
			return err_set(e, ERR_INPUT,
				_("%s holds a character that cannot be printed, at "
				  "byte %zu; use letters, digits and signs on one "
				  "line"),
				_(what), at + 1);
		at += bytes;
	}
	return true;
}

bool store_name_good(const char *name, const char *what, struct err *e)
{
	if (name[strspn(name, " \t")] == '\0')
		return err_set(e, ERR_INPUT, _("%s is empty; give it a name"), _(what));
	return store_text_good(name, what, e);
}

bool store_md_good(int md)
{
	return md > 0 && day_from_ymd(2000, md / 100, md % 100) != DAY_NONE;
}

bool store_range_good(
	int64_t value, int64_t lo, int64_t hi, const char *what, struct err *e)
{
	if (value >= lo && value <= hi)
		return true;
	return err_set(e, ERR_INPUT, _("%s is %lld; it goes from %lld to %lld"),
		_(what), (long long)value, (long long)lo, (long long)hi);
}
