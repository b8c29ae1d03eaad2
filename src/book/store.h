/* store.h - inside src/book: the open book, its changes, what its values must be. */
#ifndef BOOK_STORE_H
#define BOOK_STORE_H

#include "book/book.h"

#include <sqlite3.h>
#include <stddef.h>

enum {
	STORE_APPLICATION = 0x4d54484c, /* the same in share/schema.sql */
	STORE_VERSION = 2,
	STORE_STATEMENTS = 256,
	STORE_PATH_BYTES = 4096,
	STORE_UID_BYTES = 16,
	STORE_FITS = 4096,
	STORE_TIME_SIZE = 25, /* 2026-07-21T07:42:11.123Z and its NUL */
};

struct book {
	sqlite3 *db;
	char *path;
	char who[SCOUT_BYTES];
	char over[1024]; /* settings laid over those in the book */
	bool in_memory;
	bool looking; /* opened to be looked at: the file may not be changed */
	bool grouped; /* between book_begin and book_commit or book_rollback */
	char group_at[STORE_TIME_SIZE]; /* all changes of a group have one time */
	bool changing;   /* a transaction was begun, and not ended by us */
	int64_t history; /* its last row before this transaction; -1: no steps here */
	/* Steps that were made through this handle, the latest last: what they changed
	 * may be taken back by now. */
	struct {
		int64_t *items;
		size_t n, cap;
	} own;
	/* Within a group: traps and lures that were found to fit each other. */
	struct {
		int64_t trap, lure;
	} fits[STORE_FITS];
	int32_t backed_up; /* the day known to have its backup */
	/* Prepared once; found by the address of their SQL. */
	struct {
		const char *sql;
		sqlite3_stmt *statement;
	} kept[STORE_STATEMENTS];
	size_t n_kept;
	bool keeps_journal; /* beside the book, until it is closed */
};

/* `what` is a sentence marked with N_(), here and below: it is translated when it is
 * shown. "what: why (path)" of a SQLite result code; returns false. */
bool store_fail(const struct book *b, int code, const char *what, struct err *e);

struct limits;
/* The settings among them that are numbers; ERR_INPUT: they do not fit each other. */
bool store_limits(struct book *b, struct limits *out, struct err *e);

/* Opens a book of this version or an older one without changing a byte of it; what
 * book_open refuses is refused. */
struct book *store_look(const char *path, struct err *e);

/* True when SQLite has taken back by itself what is under way, as it does when memory
 * or the disk fails: what is written from here on would stand alone, and is refused. */
bool store_is_lost(const struct book *b);

/* SQL without values, several statements allowed. */
bool store_exec(struct book *b, const char *sql, const char *what, struct err *e);
/* One number, or `otherwise` when it cannot be had. */
int64_t store_number(struct book *b, const char *sql, int64_t otherwise);

/* All or none of a change: a transaction of its own, or a part of the group. */
bool store_begin(struct book *b, const char *what, struct err *e);
/* Keeps the change if ok, else takes it back; returns whether it is kept. */
bool store_end(struct book *b, bool ok, const char *what, struct err *e);
/* False when the group that the caller believes in was lost to a failure. */
bool store_group_alive(struct book *b, const char *what, struct err *e);

/* Now in UTC, or the time of the group. */
void store_time(const struct book *b, char out[static STORE_TIME_SIZE]);

/* False with a sentence when the text holds control or torn characters. */
bool store_text_good(const char *text, const char *what, struct err *e);
/* The same, and not empty. */
bool store_name_good(const char *name, const char *what, struct err *e);
/* False with a sentence that names the range. */
bool store_range_good(
	int64_t value, int64_t lo, int64_t hi, const char *what, struct err *e);
/* month * 100 + day of a day that some year has. */
bool store_md_good(int md);

/* Gives the connection the json_object() of json.c; SQLite's code. */
int store_add_json(sqlite3 *db);

/* Opens a file that is there (":memory:" makes one). With a version its header is
 * judged first, before SQLite reads the file or plays a journal back; 0: not judged. */
bool store_connect(struct book *b, const char *path, int version, struct err *e);
/* What is wrong with a degree-day rule that is set, or NULL: what the CHECKs of its
 * table say. Whether method, cutoff and cap fit each other is the season's to say
 * (dd_rule_fault). */
const char *store_heat_fault(const struct heat *h);
#endif
