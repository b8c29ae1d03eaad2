/* sqlite.c - linked with --wrap for each of these calls. */
#include "sqlite.h"

#include <sqlite3.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

enum { KNOWN = 8192 };

static struct {
	long n, calls;
	enum sqlite_way way;
	bool struck;
	int busy;
	struct sqlite_news *news;
	uint64_t known[KNOWN]; /* by what they end up at; 0: free */
} sqlite;

void sqlite_arm(long n, enum sqlite_way way)
{
	sqlite.n = n;
	sqlite.way = way;
	sqlite.calls = 0;
	sqlite.struck = false;
	sqlite.busy = 0;
}

void sqlite_arm_busy(int n)
{
	sqlite_arm(0, REFUSES_ONCE);
	sqlite.busy = n;
}

long sqlite_calls(void)
{
	return sqlite.calls;
}

bool sqlite_struck(void)
{
	return sqlite.struck;
}

void sqlite_note(struct sqlite_news *news)
{
	sqlite.news = news;
}

void sqlite_forget(void)
{
	memset(sqlite.known, 0, sizeof sqlite.known);
}

static uint64_t add(uint64_t sum, const char *text)
{
	while (text && *text)
		sum = (sum ^ (unsigned char)*text++) * UINT64_C(1099511628211);
	return sum;
}

static void note(const char *function, const char *sql)
{
	uint64_t sum = add(add(UINT64_C(14695981039346656037), function), sql);
	size_t at = (size_t)(sum >> 32) % KNOWN;

	for (size_t i = 0; i < KNOWN && sqlite.known[at] && sqlite.known[at] != sum;
		i++)
		at = (at + 1) % KNOWN;
	if (sqlite.known[at] != 0 || sqlite.news->n == SQLITE_NEWS)
		return;
	sqlite.known[at] = sum;
	sqlite.news->calls[sqlite.news->n++] = sqlite.calls;
}

int __real_sqlite3_exec(sqlite3 *db, const char *sql,
	int (*row)(void *, int, char **, char **), void *arg, char **text);

static bool refuses(sqlite3 *db, const char *function, const char *sql)
{
	long call = ++sqlite.calls;
	if (sqlite.news)
		note(function, sql);
	bool now = sqlite.n > 0 &&
		   (call == sqlite.n || (sqlite.way == REFUSES_ON && call > sqlite.n));

	sqlite.struck = sqlite.struck || now;
	if (now && sqlite.way == GIVES_UP && db && !sqlite3_get_autocommit(db))
		__real_sqlite3_exec(db, "ROLLBACK", NULL, NULL, NULL);
	return now;
}

int __real_sqlite3_open_v2(const char *path, sqlite3 **db, int flags, const char *vfs);
int __wrap_sqlite3_open_v2(const char *path, sqlite3 **db, int flags, const char *vfs);
int __wrap_sqlite3_open_v2(const char *path, sqlite3 **db, int flags, const char *vfs)
{
	if (!refuses(NULL, "open", NULL))
		return __real_sqlite3_open_v2(path, db, flags, vfs);
	*db = NULL;
	return SQLITE_NOMEM;
}

int __real_sqlite3_prepare_v2(
	sqlite3 *db, const char *sql, int n, sqlite3_stmt **s, const char **rest);
int __wrap_sqlite3_prepare_v2(
	sqlite3 *db, const char *sql, int n, sqlite3_stmt **s, const char **rest);
int __wrap_sqlite3_prepare_v2(
	sqlite3 *db, const char *sql, int n, sqlite3_stmt **s, const char **rest)
{
	if (!refuses(db, "prepare", sql))
		return __real_sqlite3_prepare_v2(db, sql, n, s, rest);
	*s = NULL;
	return SQLITE_NOMEM;
}

int __real_sqlite3_prepare_v3(sqlite3 *db, const char *sql, int n, unsigned flags,
	sqlite3_stmt **s, const char **rest);
int __wrap_sqlite3_prepare_v3(sqlite3 *db, const char *sql, int n, unsigned flags,
	sqlite3_stmt **s, const char **rest);
int __wrap_sqlite3_prepare_v3(sqlite3 *db, const char *sql, int n, unsigned flags,
	sqlite3_stmt **s, const char **rest)
{
	if (!refuses(db, "prepare", sql))
		return __real_sqlite3_prepare_v3(db, sql, n, flags, s, rest);
	*s = NULL;
	return SQLITE_NOMEM;
}

int __real_sqlite3_step(sqlite3_stmt *s);
int __wrap_sqlite3_step(sqlite3_stmt *s);
int __wrap_sqlite3_step(sqlite3_stmt *s)
{
	/* A statement that is there takes back what was begun, whatever is missing. */
	if (strcmp(sqlite3_sql(s), "ROLLBACK") == 0)
		return __real_sqlite3_step(s);
	return refuses(sqlite3_db_handle(s), "step", sqlite3_sql(s))
		       ? SQLITE_IOERR_READ
		       : __real_sqlite3_step(s);
}

int __wrap_sqlite3_exec(sqlite3 *db, const char *sql,
	int (*row)(void *, int, char **, char **), void *arg, char **text);
int __wrap_sqlite3_exec(sqlite3 *db, const char *sql,
	int (*row)(void *, int, char **, char **), void *arg, char **text)
{
	return refuses(db, "exec", sql) ? SQLITE_IOERR_WRITE
					: __real_sqlite3_exec(db, sql, row, arg, text);
}

sqlite3_backup *__real_sqlite3_backup_init(
	sqlite3 *to, const char *to_name, sqlite3 *from, const char *from_name);
sqlite3_backup *__wrap_sqlite3_backup_init(
	sqlite3 *to, const char *to_name, sqlite3 *from, const char *from_name);
sqlite3_backup *__wrap_sqlite3_backup_init(
	sqlite3 *to, const char *to_name, sqlite3 *from, const char *from_name)
{
	/* A schema that is not there leaves a code with `to`, as any failure does. */
	return __real_sqlite3_backup_init(
		to, refuses(NULL, "copy", NULL) ? "nowhere" : to_name, from, from_name);
}

int __real_sqlite3_backup_step(sqlite3_backup *copy, int pages);
int __wrap_sqlite3_backup_step(sqlite3_backup *copy, int pages);
int __wrap_sqlite3_backup_step(sqlite3_backup *copy, int pages)
{
	if (sqlite.busy > 0) {
		sqlite.busy--;
		return SQLITE_BUSY;
	}
	return refuses(NULL, "copies", NULL) ? SQLITE_IOERR_READ
					     : __real_sqlite3_backup_step(copy, pages);
}

int __wrap_sqlite3_sleep(int ms);
int __wrap_sqlite3_sleep(int ms)
{
	return ms;
}
