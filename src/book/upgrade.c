/* upgrade.c - brings a book of an older version up, one step per version. How to add
 * a step: change share/schema.sql, raise STORE_VERSION and the file's user_version,
 * write share/upgrade-N.sql, add it below and a book of the version before to
 * tests/book. After the last step the shape must be that of schema.sql to the letter
 * (see shape.c): a table that changes is made anew and filled from the old one, not
 * altered. */
#include "shape.h"

#include "base/shipped.h"
#include "base/words.h"

#include <errno.h>
#include <stdio.h>
#include <sys/stat.h>
#include <unistd.h>

static const struct upgrade steps[] = { { .to = 2 } };

const struct upgrades store_upgrades = { STORE_VERSION, steps,
	sizeof steps / sizeof *steps };

/* A free name beside the book: book.db.version-1, book.db.version-1-2 ... */
static bool name_backup(
	const struct book *b, int version, char *out, size_t size, struct err *e)
{
	struct stat st;

	for (int i = 1; i < 1000; i++) {
		int n = i == 1 ? snprintf(out, size, "%s.version-%d", b->path, version)
			       : snprintf(out, size, "%s.version-%d-%d", b->path,
					 version, i);
		if (n < (int)size && lstat(out, &st) != 0 && errno == ENOENT)
			return true;
	}
	return err_set(
		e, ERR_BOOK, _("no name is free for a backup beside %s"), b->path);
}

static bool run_step(
	struct book *b, const struct upgrade *step, const char *what, struct err *e)
{
	const struct shipped *file;
	char name[32], mark[64];

	snprintf(name, sizeof name, "upgrade-%d.sql", step->to);
	snprintf(mark, sizeof mark, "PRAGMA user_version = %d", step->to);
	file = step->sql ? NULL : shipped_find(name);
	if (!step->sql && !file)
		return err_set(e, ERR_BOOK, _("%s: %s is not shipped"), _(what), name);
	return store_exec(b, file ? file->text : step->sql, what, e) &&
	       store_exec(b, mark, what, e);
}

/* Another program may have upgraded it while this one waited for the lock, so the
 * version is read within the transaction. */
static bool run_steps(
	struct book *b, const struct upgrades *u, const char *what, struct err *e)
{
	int64_t version = store_number(b, "PRAGMA user_version", 0);

	for (size_t i = 0; i < u->n; i++)
		if (u->steps[i].to > version && !run_step(b, &u->steps[i], what, e))
			return false;
	return true;
}

/* One step for each version after this one, in order. */
static bool steps_known(const struct upgrades *u, int version)
{
	for (size_t i = 0; i < u->n; i++)
		if (u->steps[i].to == version + 1)
			version++;
	return version == u->version;
}

/* An older book may have triggers that are not ours: none runs, nor do ours, so that a
 * step writes what history it needs; with them it is refused before a byte of it is
 * changed. */
static bool run_unwatched(
	struct book *b, const struct upgrades *u, const char *what, struct err *e)
{
	sqlite3_db_config(b->db, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, NULL);
	bool ok = run_steps(b, u, what, e) && store_shape_is_ours(b, u, e);
	sqlite3_db_config(b->db, SQLITE_DBCONFIG_ENABLE_TRIGGER, 1, NULL);
	return ok;
}

bool store_upgrade(struct book *b, const struct upgrades *u, struct err *e)
{
	const char *what = N_("the book is not brought to the new version");
	char backup[STORE_PATH_BYTES];
	int version = (int)store_number(b, "PRAGMA user_version", 0);

	if (!steps_known(u, version))
		return err_set(e, ERR_BOOK,
			_("%s: its version %d was never released (%s)"), _(what),
			version, b->path);
	if (!b->in_memory && (!name_backup(b, version, backup, sizeof backup, e) ||
				     !book_backup(b, backup, e)))
		return false;
	if (!store_exec(b, "PRAGMA foreign_keys = OFF", what, e) ||
		!store_begin(b, what, e))
		return false;
	b->history = -1;
	bool run = run_unwatched(b, u, what, e);
	bool ok = store_end(b, run, what, e) &&
		  store_exec(b, "PRAGMA foreign_keys = ON", what, e);
	if (!run && !b->in_memory && sqlite3_get_autocommit(b->db))
		unlink(backup); /* the book is as it was */
	return ok;
}
