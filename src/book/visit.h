/* visit.h - inside src/book: a visit as a row. */
#ifndef BOOK_VISIT_H
#define BOOK_VISIT_H

#include "query.h"

/* The columns in the order that they are read and bound. */
#define VISIT_COLUMNS                                                                  \
	"visit.id, trap, day, outcome, reason, count, females, others, new_card, "     \
	"new_lure, stirred, scout, note"

/* SQL: ids that the visits of a trap can have, one for each day on which any trap was
 * visited. They are found one by one, so that no question of a trap reads the visits of
 * all of them. */
#define VISIT_IDS(trap)                                                                \
	"(WITH RECURSIVE days (n) AS (SELECT min(id) / 1000000 FROM visit UNION ALL "  \
	"SELECT (SELECT min(id) / 1000000 FROM visit WHERE id >= (n + 1) * 1000000) "  \
	"FROM days WHERE n IS NOT NULL) SELECT n * 1000000 + " trap " FROM days)"

/* The row of a trap's visit on a day. Days before 1900 and after 2199, which no visit
 * has, give rows before and after all. Trap 0 and VISIT_TRAP_MAX bound a day. */
enum {
	VISIT_TRAP_MAX = 999999,
	VISIT_DAY_FIRST = -25567, /* 1900-01-01 */
	VISIT_DAY_LAST = 84005,   /* 2199-12-31 */
};
int64_t visit_id(int64_t trap, int32_t day);

/* Fails the query unless the row is one that the program writes: its words are known
 * and fit each other, its numbers are in range, its id is that of its trap and day. */
void visit_read(struct query *q, struct visit *v, struct visit_words *w);

/* A new row: with this uid, or with one of its own when NULL. */
void visit_insert(struct query *q, struct book *b, const struct visit *v,
	const struct visit_words *w, const unsigned char *uid);
/* In place of the row of the same trap and day. */
void visit_update(struct query *q, struct book *b, const struct visit *v,
	const struct visit_words *w);
/* Writes the step of a row just inserted into the history. */
bool visit_log_insert(
	struct book *b, int64_t trap, int32_t day, const char *what, struct err *e);
/* Lays the tombstone and deletes; *found is false when there is no such row. */
bool visit_bury(struct book *b, int64_t trap, int32_t day, bool *found,
	const char *what, struct err *e);
/* *found, and what stands there with its uid. */
bool visit_find(struct book *b, struct visit *v, struct visit_words *w,
	unsigned char uid[static STORE_UID_BYTES], bool *found, struct err *e);

/* What a merge found beside the visit of that day is settled by a change of it: the
 * versions that say what `old` says, or all of them when NULL. */
bool visit_settle_rivals(struct book *b, int64_t trap, int32_t day,
	const struct visit *old, const char *what, struct err *e);

/* Sets is_disputed, least and most of visits that merges found another version of.
 * Sorted by trap and day; of the farm, 0: of any. */
bool visits_mark_disputed(
	struct book *b, int64_t farm, struct visits *all, struct err *e);

/* "trap 3 of <farm>", or "trap number 17" for one that the book does not hold. */
void visit_name_trap(struct book *b, int64_t trap, char *out, size_t size);

#endif
