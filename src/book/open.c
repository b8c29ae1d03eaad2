/* open.c - opens a book, or refuses it without having touched it. */
#include "query.h"
#include "shape.h"

#include "base/mem.h"
#include "base/words.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

enum {
	HEADER_BYTES = 100, /* of an SQLite file; numbers are big-endian */
	HEADER_VERSION = 60,
	HEADER_APPLICATION = 68,
};

static uint32_t big_endian(const unsigned char *at)
{
	return (uint32_t)at[0] << 24 | (uint32_t)at[1] << 16 | (uint32_t)at[2] << 8 |
	       at[3];
}

static bool refuse_newer(const struct book *b, int64_t version, int ours, struct err *e)
{
	return err_set(e, ERR_BOOK,
		_("%s was written by a newer mothtally (book version %d, this program "
		  "knows up to %d); install the newer one"),
		b->path, (int)version, ours);
}

/* Looks at the header through SQLite's own file, before SQLite does: no lock, no
 * journal is played back, and no lock of another handle is lost by closing. */
static bool judge_header(const struct book *b, int ours, struct err *e)
{
	unsigned char header[HEADER_BYTES] = { 0 };
	sqlite3_file *file = NULL;

	sqlite3_file_control(b->db, "main", SQLITE_FCNTL_FILE_POINTER, &file);
	int code = file && file->pMethods
			   ? file->pMethods->xRead(file, header, sizeof header, 0)
			   : SQLITE_CANTOPEN;
	if (code != SQLITE_OK && code != SQLITE_IOERR_SHORT_READ)
		return store_fail(b, code, N_("the book is not opened"), e);
	if (memcmp(header, "SQLite format 3", 16) != 0)
		return err_set(e, ERR_BOOK,
			_("%s is not a book of mothtally; it is left as it is"),
			b->path);
	if (big_endian(header + HEADER_APPLICATION) != STORE_APPLICATION)
		return err_set(e, ERR_BOOK,
			_("%s belongs to another program; it is left as it is"),
			b->path);
	uint32_t version = big_endian(header + HEADER_VERSION);
	return version <= (uint32_t)ours || refuse_newer(b, version, ours, e);
}

/* Looks again every few milliseconds for 2 s. SQLite's own way waits ever longer, and
 * misses the moments that a program which saves without pause leaves. */
static int wait_for_lock(void *arg, int tries)
{
	enum { PAUSE_MS = 2, LIMIT_MS = 2000 };

	(void)arg;
	if (tries >= LIMIT_MS / PAUSE_MS)
		return 0;
	sqlite3_sleep(PAUSE_MS);
	return 1;
}

/* The book may be a stranger's. No view is ours, nothing in a row is longer than some
 * kilobytes; another book is attached for a merge alone. */
static void be_wary(sqlite3 *db)
{
	enum { ROW_BYTES = 1 << 24, ATTACHED = 1, TRIGGERS_DEEP = 8 };

	sqlite3_db_config(db, SQLITE_DBCONFIG_DEFENSIVE, 1, NULL);
	sqlite3_db_config(db, SQLITE_DBCONFIG_ENABLE_VIEW, 0, NULL);
	sqlite3_limit(db, SQLITE_LIMIT_LENGTH, ROW_BYTES);
	sqlite3_limit(db, SQLITE_LIMIT_ATTACHED, ATTACHED);
	sqlite3_limit(db, SQLITE_LIMIT_TRIGGER_DEPTH, TRIGGERS_DEEP);
}

/* One thread alone calls SQLite, and nobody asks how much memory it has: without locks
 * and sums it does the same in nine tenths of the time. It listens before it is first
 * used; later it refuses, and is as it was told. */
static void go_alone(void)
{
	sqlite3_config(SQLITE_CONFIG_SINGLETHREAD);
	sqlite3_config(SQLITE_CONFIG_MEMSTATUS, 0);
	/* A file may be called "file:a?mode=memory". */
	sqlite3_config(SQLITE_CONFIG_URI, 0);
}

bool store_connect(struct book *b, const char *path, int version, struct err *e)
{
	static const char settings[] = "PRAGMA foreign_keys = ON;"
				       "PRAGMA trusted_schema = OFF;"
				       "PRAGMA cell_size_check = ON;"
				       "PRAGMA synchronous = EXTRA;"
				       "PRAGMA cache_size = -4000;";
	int flags = SQLITE_OPEN_NOMUTEX | (b->in_memory ? SQLITE_OPEN_CREATE : 0) |
		    (b->looking ? SQLITE_OPEN_READONLY : SQLITE_OPEN_READWRITE);
	const char *what = N_("the book is not opened");

	go_alone();
	int code = sqlite3_open_v2(path, &b->db, flags, NULL);

	if (code != SQLITE_OK)
		return store_fail(b, code, what, e);
	sqlite3_extended_result_codes(b->db, 1);
	if (version && !judge_header(b, version, e))
		return false;
	sqlite3_busy_handler(b->db, wait_for_lock, NULL);
	be_wary(b->db);
	code = store_add_json(b->db);
	if (code != SQLITE_OK)
		return store_fail(b, code, what, e);
	return store_exec(b, settings, what, e);
}

/* The journal lies beside the book from save to save, with its head cleared when one is
 * done: that asks less of the disk than a file that comes and goes. Another program may
 * have left WAL. */
static const char keep_journal[] = "PRAGMA journal_mode = PERSIST;"
				   "PRAGMA journal_size_limit = 1048576;";

static bool set_journal(struct book *b, const char *what, struct err *e)
{
	b->keeps_journal = store_exec(b, keep_journal, what, e);
	return b->keeps_journal;
}

/* Beside a book that was moved lies the journal of the one that took its place. */
static void clear_journal(struct book *b)
{
	int moved = 0;

	sqlite3_file_control(b->db, "main", SQLITE_FCNTL_HAS_MOVED, &moved);
	if (!moved)
		sqlite3_exec(b->db, "PRAGMA journal_mode = DELETE", NULL, NULL, NULL);
}

/* The same as SQLite sees it, after a save cut short was rolled back. */
static bool judge_content(
	struct book *b, const struct upgrades *u, enum book_open how, struct err *e)
{
	const char *what = N_("the book is not opened");
	bool ok = store_exec(b, "SELECT count(*) FROM sqlite_schema", what, e) &&
		  (how == BOOK_READ || set_journal(b, what, e));
	int64_t version = store_number(b, "PRAGMA user_version", 0);

	if (!ok)
		return false;
	if (version > u->version)
		return refuse_newer(b, version, u->version, e);
	if (version < u->version && how == BOOK_READ)
		return err_set(e, ERR_BOOK,
			_("%s is of an older mothtally; open it once for writing, then "
			  "it can be read"),
			b->path);
	if (version < u->version && !store_upgrade(b, u, e))
		return false;
	if (!store_shape_is_ours(b, u, e))
		return false;
	return how != BOOK_READ || store_exec(b, "PRAGMA query_only = ON", what, e);
}

/* *there is false when nothing has this name. */
static bool judge_path(const char *path, bool *there, struct err *e)
{
	struct stat st;

	*there = stat(path, &st) == 0;
	if (!*there && errno != ENOENT)
		return err_set(e, ERR_BOOK, _("the book %s cannot be opened: %s"), path,
			strerror(errno));
	if (*there && !S_ISREG(st.st_mode))
		return err_set(e, ERR_BOOK,
			_("%s is not a file; name a file for the book"), path);
	return true;
}

static bool open_file(
	struct book *b, enum book_open how, const struct upgrades *u, struct err *e)
{
	bool there;

	if (!judge_path(b->path, &there, e))
		return false;
	if (!there && how != BOOK_CREATE)
		return err_set(e, ERR_NOT_FOUND, _("there is no book at %s"), b->path);
	if (!there && !store_create(b->path, b->who, e))
		return false;
	return store_connect(b, b->path, u->version, e) && judge_content(b, u, how, e);
}

static bool judge_look(struct book *b, struct err *e)
{
	bool there;

	if (!judge_path(b->path, &there, e))
		return false;
	if (!there)
		return err_set(e, ERR_NOT_FOUND, _("there is no book at %s"), b->path);
	if (!store_connect(b, b->path, STORE_VERSION, e) ||
		!store_exec(b, "SELECT count(*) FROM sqlite_schema",
			N_("the book is not opened"), e))
		return false;
	int64_t version = store_number(b, "PRAGMA user_version", 0);
	if (version < 1)
		return err_set(
			e, ERR_BOOK, _("%s is not a book of mothtally"), b->path);
	return version < STORE_VERSION || store_shape_is_ours(b, &store_upgrades, e);
}

struct book *store_look(const char *path, struct err *e)
{
	struct book *b = mem_new(1, sizeof *b);

	b->path = mem_text(path);
	b->looking = true;
	if (judge_look(b, e))
		return b;
	book_close(b);
	return NULL;
}

struct book *store_open(const char *path, enum book_open how, const char *who,
	const struct upgrades *upgrades, struct err *e)
{
	struct book *b = mem_new(1, sizeof *b);

	b->path = mem_text(path);
	book_set_who(b, who);
	b->backed_up = DAY_NONE;
	b->in_memory = strcmp(path, ":memory:") == 0;
	bool ok = b->in_memory ? store_connect(b, path, 0, e) && store_shape(b, e)
			       : open_file(b, how, upgrades, e);
	if (ok)
		return b;
	book_close(b);
	return NULL;
}

struct book *book_open(
	const char *path, enum book_open how, const char *who, struct err *e)
{
	return store_open(path, how, who, &store_upgrades, e);
}

void book_close(struct book *b)
{
	if (!b)
		return;
	for (size_t i = 0; i < b->n_kept; i++)
		sqlite3_finalize(b->kept[i].statement);
	if (b->keeps_journal)
		clear_journal(b);
	sqlite3_close(b->db);
	free(b->own.items);
	free(b->path);
	free(b);
}

static bool given(const char *value)
{
	return value && *value;
}

bool book_path(const char *mothtally_book, const char *xdg_data_home, const char *home,
	char *out, size_t size, struct err *e)
{
	int n;

	if (given(mothtally_book))
		n = snprintf(out, size, "%s", mothtally_book);
	else if (given(xdg_data_home))
		n = snprintf(out, size, "%s/mothtally/book.db", xdg_data_home);
	else if (given(home))
		n = snprintf(out, size, "%s/.local/share/mothtally/book.db", home);
	else
		return err_set(e, ERR_USAGE,
			_("there is no place for the book: HOME is not set; name one "
			  "with --book FILE"));
	if (n < 0 || (size_t)n >= size)
		return err_set(e, ERR_USAGE, _("the path of the book is too long"));
	return true;
}
