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

/* Visits on their way into the book, some ten thousand at a time in the order in which
 * the book keeps them: a file that goes trap by trap is as quick as one run by run. */
struct pending {
	struct visit visit;
	uint32_t line;
	uint32_t words; /* offset of scout, NUL, note, NUL; 0: none */
};

struct batch {
	struct pending *items;
	size_t n, cap;
	struct buf words;
};

/* False: the book failed (ERR_BOOK). A visit that it refuses is noted as a problem. */
bool batch_add(struct taking *t, struct batch *b, const struct visit *v,
	const struct visit_row *r, struct err *e);
bool batch_flush(struct taking *t, struct batch *b, struct err *e);
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
