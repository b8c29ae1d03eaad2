/* visits_parts.h - the visits file in pieces: its row, taking in, giving out. */
#ifndef VISITS_PARTS_H
#define VISITS_PARTS_H

#include "exchange/kinds.h"
#include "exchange/series.h"

struct visit_row {
	char farm[NAME_BYTES], trap[NAME_BYTES];
	int32_t day;
	int outcome; /* -1: empty */
	int reason;
	int32_t count, females, others;
	char card[NAME_BYTES], lure[NAME_BYTES];
	int stirred;
	char scout[SCOUT_BYTES], note[NOTE_BYTES];
};

/* In the columns card and lure: the old one stays, though the trap was hung. */
#define VISIT_KEPT "kept"

/* A visit on its way into the book; small, since many wait. */
struct pending {
	int32_t day;
	uint32_t trap;
	int64_t new_card, new_lure;
	uint32_t line;
	uint32_t words; /* offset of scout, NUL, note, NUL */
	int16_t count, females, others;
	unsigned outcome : 4, reason : 4, stirred : 1;
	unsigned
		again : 1; /* in a sorted pile: the words are those of the one before */
};

struct pending pending_of(const struct visit *v, uint32_t line);
struct visit pending_visit(const struct pending *p);
/* Below 0: p comes first. The book keeps all traps' visits of a day together. */
int pending_order(const struct pending *p, const struct pending *q);

enum {
	PILE_VISITS = 110000, /* in 4.4 MB */
	PILE_WORDS = 1 << 20, /* bytes */
};

/* Visits that wait, and their words. Zero-initialise. */
struct pile {
	struct pending *items;
	size_t n;
	struct buf words;
	uint32_t plain; /* words of the latest visit without a note */
};

void pile_put(struct pile *pile, struct pending p, const char *scout, const char *note);
bool pile_is_full(const struct pile *pile);
/* The words of visit i of a sorted pile, into w unless it has those of the one before:
 * then false. */
bool pile_tell(const struct pile *pile, size_t i, struct visit_words *w);
void pile_sort(struct pile *pile);
void pile_sort_by_line(struct pile *pile);
void pile_clear(struct pile *pile);
void pile_free(struct pile *pile);

enum { RUN_BLOCK = 128 };

/* A pile that was sorted and laid aside, in a file without a name. */
struct run {
	FILE *file; /* NULL: it is through */
	struct pending block[RUN_BLOCK];
	size_t at, n;             /* the present visit, in the block */
	size_t left;              /* behind the block */
	struct visit_words words; /* of the present visit */
};

struct runs {
	struct run *items;
	size_t n, cap;
};

/* False: there is no room for such a file; nothing has happened. */
bool runs_add(struct runs *all, const struct pile *pile);
/* Goes to the next visit of the run, at first to its first. False: it cannot be
 * read. */
bool run_next(struct run *r, const char *name, struct err *e);
const struct pending *run_now(const struct run *r);
/* The run whose visit comes first, and the visit of another *until which it goes on
 * alone (NULL: to its end). NULL: all are through. */
struct run *runs_first(const struct runs *all, const struct pending **until);
void runs_free(struct runs *all);

/* The visits of a file on their way into the book in the order in which the book keeps
 * them: a file that goes trap by trap is as quick as one run by run. */
struct batch {
	struct pile coming, refused;
	struct runs runs;
};

/* False: the book failed (ERR_BOOK). A visit that it refuses is noted as a problem. */
bool batch_add(struct taking *t, struct batch *b, const struct visit *v,
	const struct visit_row *r, struct err *e);
bool batch_finish(struct taking *t, struct batch *b, struct err *e);
void batch_free(struct batch *b);

/* Warns of each visit of the file on a day that was barred from its first minute to its
 * last. The series are of traps that k knows. */
bool visits_barred(struct taking *t, const struct known *k, const struct series *series,
	size_t n, struct err *e);

bool visits_begin(struct taking *t, struct err *e);
bool visits_take(struct taking *t, const void *row, struct err *e);
void visits_look(struct taking *t, const void *row);
bool visits_finish(struct taking *t, struct err *e);
void visits_end(struct taking *t);

#endif
