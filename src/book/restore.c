/* restore.c - goes back to a backup. The book that is replaced is copied under a name
 * of its own first; then the copy of the backup takes its place in one rename, while
 * the lock keeps every other program from writing. */
#include "book/backups.h"

#include "backup.h"
#include "check.h"
#include "file.h"

#include "base/mem.h"
#include "base/words.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static const char *const what = N_("nothing is restored");

/* What the journal was set to: "delete", unless another program has the book open in a
 * way that does not let go of its own. */
static bool journal_is_ours(struct book *b, struct err *e)
{
	struct query q;
	bool ours = false;

	query_start_once(&q, b, "PRAGMA journal_mode = DELETE");
	if (query_row(&q))
		ours = strcmp(query_get_text(&q), "delete") == 0;
	if (!query_end(&q, what, e))
		return false;
	return ours || store_fail(b, SQLITE_BUSY, what, e);
}

static bool is_damage(int code)
{
	return code == SQLITE_NOTADB || code == SQLITE_CORRUPT;
}

/* Takes the book at b->path from every other program until it is closed; a save that
 * was cut short is rolled back by it. What SQLite cannot read nobody can hold, nor
 * write: *held is false then. */
static bool hold(struct book *b, bool *held, struct err *e)
{
	static const char lock[] = "PRAGMA locking_mode = EXCLUSIVE;"
				   "BEGIN EXCLUSIVE; COMMIT";
	struct stat st;
	int code;

	*held = false;
	if (stat(b->path, &st) == 0 && st.st_size == 0)
		return true; /* SQLite would make it a database */
	*held = store_connect(b, b->path, 0, e) && journal_is_ours(b, e) &&
		store_exec(b, lock, what, e);
	code = b->db ? sqlite3_errcode(b->db) & 0xff : SQLITE_CANTOPEN;
	if (!*held)
		return is_damage(code);
	int64_t mark = store_number(b, "PRAGMA application_id", 0);
	return mark == STORE_APPLICATION ||
	       err_set(e, ERR_BOOK,
		       _("%s belongs to another program; it is left as it is"),
		       b->path);
}

static bool keep_copy(struct book *b, const char *kept, struct err *e)
{
	char part[STORE_PATH_BYTES];
	bool taken;

	if (!file_part(kept, part, sizeof part, what, e))
		return false;
	bool ok = backup_copy(b, part, what, e) &&
		  file_publish(part, kept, &taken, what, e);
	if (!ok)
		unlink(part);
	return ok;
}

/* A damaged book is kept byte by byte, together with what lies beside it. */
static bool keep(struct book *b, bool held, const char *kept, struct err *e)
{
	if (held && keep_copy(b, kept, e))
		return true;
	if (held && !is_damage(sqlite3_errcode(b->db) & 0xff))
		return false;
	return link(b->path, kept) == 0 ||
	       err_set(e, ERR_BOOK, "%s: %s (%s)", _(what), strerror(errno), kept);
}

/* A journal that is left beside the book would be played into the new one. That of a
 * book that is held is over: another program keeps it for its next save. */
static bool move_journals(struct book *b, bool held, const char *kept, struct err *e)
{
	static const char *const ends[] = { "-journal", "-wal", "-shm" };
	char from[STORE_PATH_BYTES + 16], to[STORE_PATH_BYTES + 16];

	for (size_t i = 0; i < sizeof ends / sizeof *ends; i++) {
		snprintf(from, sizeof from, "%s%s", b->path, ends[i]);
		snprintf(to, sizeof to, "%s%s", kept, ends[i]);
		if ((held ? unlink(from) : rename(from, to)) != 0 && errno != ENOENT)
			return err_set(e, ERR_BOOK, "%s: %s (%s)", _(what),
				strerror(errno), from);
	}
	return true;
}

static bool replace(
	struct book *b, const char *part, char *kept, size_t size, struct err *e)
{
	char path[STORE_PATH_BYTES];
	bool held = false;

	if (!hold(b, &held, e) ||
		!backup_name_replaced(b, path, sizeof path, what, e) ||
		!keep(b, held, path, e) || !move_journals(b, held, path, e) ||
		!file_replace(part, b->path, what, e))
		return false;
	const char *slash = strrchr(path, '/');
	snprintf(kept, size, "%s", slash ? slash + 1 : path);
	return true;
}

static void keep_first(void *arg, const char *text)
{
	struct err *first = arg;

	if (first->kind == ERR_NONE)
		err_set(first, ERR_BOOK, "%s", text);
}

/* All pages of the copy: opening it looks at some of them. What is wrong is said of
 * the backup. */
static bool is_whole(const char *part, const char *backup, struct err *e)
{
	struct book *b = mem_new(1, sizeof *b);
	struct err first = { 0 };
	int found = 0;
	struct finder f = { b, keep_first, &first, &found, NULL };

	b->path = mem_text(backup);
	b->looking = true;
	bool ok = store_connect(b, part, 0, e) && check_file(&f, what, e);
	book_close(b);
	if (!ok || found == 0)
		return ok;
	return err_set(e, ERR_BOOK, _("%s: %s: %s"), _(what), backup, first.text);
}

/* A copy of the backup beside the book. */
static bool copy_backup(
	const char *path, const char *backup, char *part, size_t size, struct err *e)
{
	struct book *from = store_look(backup, e);

	if (!from)
		return false;
	bool ok = file_folders(path, what, e) && file_part(path, part, size, what, e);
	if (ok && (!backup_copy(from, part, what, e) || !is_whole(part, backup, e))) {
		unlink(part);
		ok = false;
	}
	book_close(from);
	return ok;
}

static bool put_in_place(
	const char *path, const char *part, char *kept, size_t size, struct err *e)
{
	struct stat st;
	bool taken;

	if (lstat(path, &st) != 0 && errno == ENOENT)
		return file_publish(part, path, &taken, what, e);
	struct book *b = mem_new(1, sizeof *b);
	b->path = mem_text(path);
	bool ok = replace(b, part, kept, size, e);
	book_close(b); /* lets go of it */
	return ok;
}

bool book_restore(
	const char *path, const char *backup, char *kept, size_t size, struct err *e)
{
	struct book_contents contents;
	char part[STORE_PATH_BYTES];

	*kept = '\0';
	if (file_same(path, backup))
		return err_set(
			e, ERR_INPUT, _("%s: %s is the book itself"), _(what), backup);
	if (!book_look_into(backup, &contents, e))
		return false;
	char *real = realpath(path, NULL); /* a link stays one */
	path = real ? real : path;
	bool ok = copy_backup(path, backup, part, sizeof part, e);
	if (ok && !put_in_place(path, part, kept, size, e)) {
		unlink(part);
		ok = false;
	}
	if (ok && e)
		*e = (struct err){ 0 };
	free(real);
	return ok;
}
