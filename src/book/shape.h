/* shape.h - inside src/book: how the tables of a book are made, compared with the
 * shipped ones, and brought up to date. */
#ifndef BOOK_SHAPE_H
#define BOOK_SHAPE_H

#include "store.h"

#include "base/csv.h"

/* One step of an upgrade: the SQL that takes a book of the version before to `to`, run
 * with foreign keys off. A released step is never edited. */
struct upgrade {
	int to;
	const char *sql; /* NULL: the shipped upgrade-<to>.sql */
};

struct upgrades {
	int version; /* what this program writes */
	const struct upgrade *steps;
	size_t n;
};

extern const struct upgrades store_upgrades;

/* book_open with other upgrade steps, for tests. */
struct book *store_open(const char *path, enum book_open how, const char *who,
	const struct upgrades *upgrades, struct err *e);

/* Makes a new book at path with its missing folders; fine if one appears meanwhile. */
bool store_create(const char *path, const char *who, struct err *e);

/* Shapes an empty database as a new book with the shipped kinds. */
bool store_shape(struct book *b, struct err *e);
/* Gives `row` each row of a shipped table below its head, up to the first that it
 * refuses; a row of another number of columns is refused. True without such a table. */
bool seed_rows(const char *name, size_t columns,
	bool (*row)(void *arg, const struct csv *c, struct err *e), void *arg,
	struct err *e);
/* The degree-day rule that comes with the program for a pest; left as it is when there
 * is none. */
bool store_seed_heat(const char *pest, struct heat *out, struct err *e);

/* The first table, index, trigger or view that the shipped schema does not have like
 * this, or that is missing, in a sentence; "": all are ours. Blanks and comments do
 * not count, nor what SQLite keeps for itself (ANALYZE). */
bool store_shape_fault(struct book *b, char *out, size_t size, struct err *e);
/* The same as a refusal. The shipped schema is the shape of its own version: true of
 * any other that `upgrades` lead to. */
bool store_shape_is_ours(
	struct book *b, const struct upgrades *upgrades, struct err *e);

/* Brings an older book to upgrades->version; one in memory without a backup. */
bool store_upgrade(struct book *b, const struct upgrades *upgrades, struct err *e);

#endif
