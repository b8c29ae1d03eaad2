/* sqlite.c - linked with --wrap for each of these calls. */
#include "sqlite.h"

#include <sqlite3.h>
#include <stddef.h>
#include <string.h>

static struct {
	long n, calls;
	bool on, struck;
	int busy;
} sqlite;

void sqlite_arm(long n, bool on)
{
	sqlite.n = n;
	sqlite.on = on;
	sqlite.calls = 0;
	sqlite.struck = false;
	sqlite.busy = 0;
}

void sqlite_arm_busy(int n)
{
	sqlite_arm(0, false);
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

static bool refuses(void)
{
	long call = ++sqlite.calls;
	bool now = sqlite.n > 0 && (sqlite.on ? call >= sqlite.n : call == sqlite.n);

	sqlite.struck = sqlite.struck || now;
	return now;
}

int __real_sqlite3_open_v2(const char *path, sqlite3 **db, int flags, const char *vfs);
int __wrap_sqlite3_open_v2(const char *path, sqlite3 **db, int flags, const char *vfs);
int __wrap_sqlite3_open_v2(const char *path, sqlite3 **db, int flags, const char *vfs)
{
	if (!refuses())
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
	if (!refuses())
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
	if (!refuses())
		return __real_sqlite3_prepare_v3(db, sql, n, flags, s, rest);
	*s = NULL;
	return SQLITE_NOMEM;
}

int __real_sqlite3_step(sqlite3_stmt *s);
int __wrap_sqlite3_step(sqlite3_stmt *s);
int __wrap_sqlite3_step(sqlite3_stmt *s)
{
	return refuses() ? SQLITE_IOERR_READ : __real_sqlite3_step(s);
}

int __real_sqlite3_exec(sqlite3 *db, const char *sql,
	int (*row)(void *, int, char **, char **), void *arg, char **text);
int __wrap_sqlite3_exec(sqlite3 *db, const char *sql,
	int (*row)(void *, int, char **, char **), void *arg, char **text);
int __wrap_sqlite3_exec(sqlite3 *db, const char *sql,
	int (*row)(void *, int, char **, char **), void *arg, char **text)
{
	/* To take back what was begun it needs nothing that could be missing. */
	bool back = strncmp(sql, "ROLLBACK", 8) == 0;

	return !back && refuses() ? SQLITE_IOERR_WRITE
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
		to, refuses() ? "nowhere" : to_name, from, from_name);
}

int __real_sqlite3_backup_step(sqlite3_backup *copy, int pages);
int __wrap_sqlite3_backup_step(sqlite3_backup *copy, int pages);
int __wrap_sqlite3_backup_step(sqlite3_backup *copy, int pages)
{
	if (sqlite.busy > 0) {
		sqlite.busy--;
		return SQLITE_BUSY;
	}
	return refuses() ? SQLITE_IOERR_READ : __real_sqlite3_backup_step(copy, pages);
}

int __wrap_sqlite3_sleep(int ms);
int __wrap_sqlite3_sleep(int ms)
{
	return ms;
}
