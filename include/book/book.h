/* book.h - the log on disk: one SQLite file. Nothing of SQLite shows here.
 * Every function that can fail returns false (or NULL) and fills *e; the book is then
 * as it was before the call. Texts are UTF-8, cut to the sizes of base/records.h. */
#ifndef BOOK_BOOK_H
#define BOOK_BOOK_H

#include "base/err.h"
#include "base/records.h"

#include <stdbool.h>
#include <stdint.h>

struct book;

enum book_open {
	BOOK_CREATE,   /* make a new book if there is none */
	BOOK_EXISTING, /* ERR_NOT_FOUND if there is none */
	BOOK_READ,     /* the same, and nothing can be changed through it */
};

/* Opens the book at `path` (":memory:" for tests). A new one gets mode 0600 and its
 * missing folders 0700, and holds the shipped pests, lures and cards, no thresholds.
 * Refused, untouched: a file of another program, of a newer mothtally, a damaged one,
 * one whose tables or triggers are not ours (another program may have put them there,
 * and they could change what is saved), one locked by another program for over 2 s. An
 * older book is upgraded, one step per version in one transaction, after a backup
 * beside it.
 * `who` (may be "") is written beside every change; borrowed until book_close. */
struct book *book_open(
	const char *path, enum book_open how, const char *who, struct err *e);
/* NULL is fine. While the book is open for writing a journal may lie beside it, called
 * like the book with -journal; it goes with the last that closes the book. */
void book_close(struct book *b);

/* Sets the name that is written beside changes from now on. */
void book_set_who(struct book *b, const char *who);

/* The usual path: $MOTHTALLY_BOOK, else $XDG_DATA_HOME/mothtally/book.db, else
 * under $HOME/.local/share; an empty variable counts as unset. The values are passed
 * in (NULL = unset). False: no home either. */
bool book_path(const char *mothtally_book, const char *xdg_data_home, const char *home,
	char *out, size_t size, struct err *e);

/* Groups changes: all or none. Do not nest. A function that fails inside leaves the
 * group open and valid; the caller decides to roll back. */
bool book_begin(struct book *b, struct err *e);
bool book_commit(struct book *b, struct err *e);
void book_rollback(struct book *b);

/* A number that changes whenever another connection changed the book. */
int64_t book_data_version(struct book *b);

/* Looks whether the file is sound: SQLite's integrity and foreign keys, its tables and
 * triggers, rows that cannot be used, texts that cannot be shown, then what no CHECK
 * can say (a visit before its trap was ever hung, a trap in a block of another farm,
 * counts in the future of `today`). Calls `tell` with one sentence per finding.
 * *found is their number. */
bool book_check(struct book *b, int32_t today,
	void (*tell)(void *arg, const char *text), void *arg, int *found,
	struct err *e);

/* A copy that is safe while the book is in use (SQLite's backup API), written beside
 * its target, synced and renamed; mode 0600. An existing target is refused. */
bool book_backup(struct book *b, const char *target, struct err *e);

/* Takes the day's backup into `backups/` beside the book unless today's is there or
 * the book is in memory: book-YYYY-MM-DD.db; keeps the last 7 days' and, of older
 * ones, the last 8 weeks' (the newest of each ISO week). Several programs may do it at
 * once; what one that was killed left half done goes after a day. To be called before
 * the first change of a day. */
bool book_daily_backup(struct book *b, int32_t today, struct err *e);

#endif
