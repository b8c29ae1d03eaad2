/* deeds_files.h - what is done with books as files. */
#ifndef TESTS_BOOK_DEEDS_FILES_H
#define TESTS_BOOK_DEEDS_FILES_H

#include "deeds.h"

static bool open_as(struct desk *d, enum book_open how, struct err *e)
{
	struct book *b = book_open(d->path, how, "JR", e);

	book_close(b);
	return b != NULL;
}

static bool open_it(struct desk *d, struct err *e)
{
	return open_as(d, BOOK_EXISTING, e);
}

static bool open_to_read(struct desk *d, struct err *e)
{
	return open_as(d, BOOK_READ, e);
}

static bool open_new(struct desk *d, struct err *e)
{
	char path[128];

	deed_path(d, "new/book.db", path);
	struct book *b = book_open(path, BOOK_CREATE, "JR", e);
	book_close(b);
	return b != NULL;
}

/* A book of the first version in its place. */
static bool grow_old(struct desk *d, struct err *e)
{
	size_t n;
	char *sql = file_bytes("tests/book/v1.sql", &n);
	sqlite3 *db;

	(void)e;
	sql[n] = '\0';
	bool ok = unlink(d->path) == 0 && sqlite3_open(d->path, &db) == SQLITE_OK &&
		  sqlite3_exec(db, sql, NULL, NULL, NULL) == SQLITE_OK &&
		  sqlite3_close(db) == SQLITE_OK;
	free(sql);
	return ok;
}

static bool look_into(struct desk *d, struct err *e)
{
	struct book_contents in;

	return book_look_into(d->path, &in, e);
}

static bool back_up(struct desk *d, struct err *e)
{
	struct book *b = book_open(d->path, BOOK_EXISTING, "JR", e);
	char path[128];

	deed_path(d, "copy.db", path);
	bool ok = b && book_backup(b, path, e);
	book_close(b);
	return ok;
}

static bool back_up_daily(struct desk *d, struct err *e)
{
	struct book *b = book_open(d->path, BOOK_EXISTING, "JR", e);
	bool ok = b && book_daily_backup(b, DEED_DAY, e);

	book_close(b);
	return ok;
}

static bool restore(struct desk *d, struct err *e)
{
	char from[128], kept[128];

	deed_path(d, "other.db", from);
	return book_restore(d->path, from, kept, sizeof kept, e);
}

static bool merge(struct desk *d, struct err *e)
{
	struct book *b = book_open(d->path, BOOK_EXISTING, "JR", e);
	struct merge_report r = { 0 };
	char from[128];

	deed_path(d, "other.db", from);
	bool ok = b && book_merge(b, from, &r, e);
	book_merge_free(&r);
	book_close(b);
	return ok;
}

static bool merge_look(struct desk *d, struct err *e)
{
	struct book *b = book_open(d->path, BOOK_EXISTING, "JR", e);
	struct merge_report r = { 0 };
	char from[128];

	deed_path(d, "other.db", from);
	bool ok = b && book_merge_look(b, from, &r, e);
	book_merge_free(&r);
	book_close(b);
	return ok;
}

static bool merge_undo(struct desk *d, struct err *e)
{
	struct book *b = book_open(d->path, BOOK_EXISTING, "JR", e);
	struct merge_undo u = { 0 };
	bool ok = b && book_merge_undo(b, &u, e);

	free(u.kept);
	book_close(b);
	return ok;
}

static const struct deed deeds_files[] = {
	{ "opening", open_it, OPENS, NULL },
	{ "opening to read", open_to_read, OPENS, NULL },
	{ "a new book", open_new, OPENS, NULL },
	{ "an older book", open_it, GROWS, grow_old },
	{ "a look into a file", look_into, OPENS, NULL },
	{ "a look into an older one", look_into, OPENS, grow_old },
	{ "a backup", back_up, OPENS, NULL },
	{ "a daily backup", back_up_daily, OPENS, NULL },
	{ "a restore", restore, OPENS, NULL },
	{ "a merge", merge, OPENS, NULL },
	{ "a look at a merge", merge_look, OPENS, NULL },
	{ "a merge to take back", merge_undo, OPENS, NULL },
};

#endif
