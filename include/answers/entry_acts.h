/* entry_acts.h - treatments, picks, fruit checks, dispensers and answers as rows; see
 * entry_rows.h. Farm, block, pest and trap of a row are looked up along. */
#ifndef ANSWERS_ENTRY_ACTS_H
#define ANSWERS_ENTRY_ACTS_H

#include "answers/entry_rows.h"
#include "base/acts.h"
#include "base/buf.h"

enum {
	TREATMENT_COLUMNS = 18,
	PICK_COLUMNS = 5,
	FRUIT_CHECK_COLUMNS = 10,
	DISPENSER_COLUMNS = 8,
	ANSWER_COLUMNS = 8,
	PER_HA_X100_MAX = 9999999,
	LOOKED_AT_MAX = 99999,
};

/* A moment as it was typed: with its offset, by local clocks, or an hour alone. */
struct typed_moment {
	enum { MOMENT_NONE, MOMENT_FULL, MOMENT_LOCAL, MOMENT_HOUR } kind;
	struct instant at;          /* MOMENT_FULL */
	int32_t day, minute_of_day; /* MOMENT_LOCAL; the minute alone: MOMENT_HOUR */
};
extern const struct value value_moment;

struct treatment_row {
	char farm[NAME_BYTES], pest[CODE_BYTES];
	char block[NOTE_BYTES]; /* a form may name several */
	int32_t day;
	struct typed_moment from, until;
	int border; /* 0, 1; -1: empty, as 0 */
	char product[NAME_BYTES], registration[NAME_BYTES];
	char amount[NAME_BYTES], amount_unit[NAME_BYTES];
	int32_t area_x100;
	char applicator[NAME_BYTES], certificate[NAME_BYTES];
	int32_t rei_hours, phi_days;
	char job[NAME_BYTES], note[NOTE_BYTES];
};
extern const struct column treatment_columns[TREATMENT_COLUMNS];
struct treatment_row treatment_row_of(const struct known *k, const struct treatment *t);
/* Puts what the row says over the record; false: it says something wrong, which is
 * heard, and so below. A time without an offset is read by h->zone; an hour alone is of
 * the row's date, a begin after the end of the day before. */
bool treatment_over(struct hearing *h, const struct known *k,
	const struct treatment_row *r, struct treatment *out);

struct pick_entry_row {
	char farm[NAME_BYTES], block[NAME_BYTES];
	int32_t day;
	int done; /* 0, 1; -1: empty, as 0 */
	char note[NOTE_BYTES];
};
extern const struct column pick_columns[PICK_COLUMNS];
struct pick_entry_row pick_entry_row_of(const struct known *k, const struct pick *p);
bool pick_over(struct hearing *h, const struct known *k, const struct pick_entry_row *r,
	struct pick *out);

struct fruit_check_row {
	char farm[NAME_BYTES], block[NAME_BYTES], pest[CODE_BYTES];
	int32_t day;
	int part; /* -1: empty, as fruit */
	int tree;
	int32_t looked_at, stung, entered;
	char note[NOTE_BYTES];
};
extern const struct column fruit_check_columns[FRUIT_CHECK_COLUMNS];
struct fruit_check_row fruit_check_row_of(
	const struct known *k, const struct fruit_check *c);
bool fruit_check_over(struct hearing *h, const struct known *k,
	const struct fruit_check_row *r, struct fruit_check *out);

struct dispenser_row {
	char farm[NAME_BYTES], block[NAME_BYTES], pest[CODE_BYTES];
	int32_t up, down;
	int32_t per_ha_x100;
	char type[NAME_BYTES], note[NOTE_BYTES];
};
extern const struct column dispenser_columns[DISPENSER_COLUMNS];
struct dispenser_row dispenser_row_of(
	const struct known *k, const struct disruption *d);
bool dispenser_over(struct hearing *h, const struct known *k,
	const struct dispenser_row *r, struct disruption *out);

struct answer_row {
	char farm[NAME_BYTES], block[NAME_BYTES], pest[CODE_BYTES], trap[NAME_BYTES];
	int32_t day, decided;
	int decision;
	char note[NOTE_BYTES];
};
extern const struct column answer_columns[ANSWER_COLUMNS];
struct answer_row answer_row_of(const struct known *k, const struct answer *a);
bool answer_over(struct hearing *h, const struct known *k, const struct answer_row *r,
	struct answer *out);

/* Those of one block; the items are the caller's to free. */
struct treatments treatments_of_block(const struct treatments *t, int64_t block);

/* "Addermoor, Pond block, pick planned for 2026-08-28: too early: earliest pick Thu 3
 * Sep (14 days after 20 Aug)". False and nothing added when nothing bars it or leaves
 * open whether it is allowed. t: all treatments of its block. z NULL: UTC. */
bool pick_doubt(const struct known *k, const struct pick *p, const struct treatments *t,
	const struct zone *z, struct buf *out);

/* All picks and all treatments of the book, and which of them are asked about, by index
 * (NULL: all). */
struct doubts {
	const struct known *known;
	const struct picks *picks;
	const struct treatments *treatments;
	const bool *picks_asked, *treatments_asked;
	const struct zone *zone;
};
/* Says pick_doubt of each asked pick that an asked treatment bars or leaves open: first
 * those that are too early, then those of which it is not known. */
void picks_doubted(const struct doubts *d, void (*say)(void *arg, const char *sentence),
	void *arg);

#endif
