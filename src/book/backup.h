/* backup.h - inside src/book: copies of a book, and the names of the daily ones. */
#ifndef BOOK_BACKUP_H
#define BOOK_BACKUP_H

#include "store.h"

struct backup_days {
	int32_t *items;
	size_t n, cap;
};

/* Copies the book into the empty file `part`, which is not synced. */
bool backup_copy(struct book *b, const char *part, const char *what, struct err *e);

/* Copies its pages into another handle's schema, waiting a little for a program that
 * writes; SQLite's code. */
int backup_pages(struct book *b, sqlite3 *to, const char *schema);

/* ".../backups/book-" for a book ".../book.db": the start of its backups' paths, and in
 * *name where the file's own name begins in it. */
bool backup_start(
	const char *path, char *out, size_t size, size_t *name, struct err *e);
/* The day on which a book was kept under a file name such as
 * "book-replaced-2026-07-21-074211.db", in UTC; DAY_NONE for any other name. stem:
 * "book-". */
int32_t backup_kept_day(const char *file, const char *stem);
/* Such a name beside the book, one that is free. */
bool backup_name_replaced(
	const struct book *b, char *out, size_t size, const char *what, struct err *e);
/* The folder of the book itself, "" for the one that one stands in, of a start. */
void backup_folder(const char *start, size_t name, char out[static STORE_PATH_BYTES]);
/* The whole path of the backup of a day. */
void backup_path(const char *start, int32_t day, char *out, size_t size);
/* The days up to `upto` that have a backup, newest first. Freed by the caller. */
void backup_list(const char *start, size_t name, int32_t upto, struct backup_days *out);

/* Which of n backups stay: `days` newest first; the newest `daily`, then the newest
 * of each of the next `weekly` ISO weeks. */
void store_backups_kept(const int32_t *days, size_t n, bool *keep);

#endif
