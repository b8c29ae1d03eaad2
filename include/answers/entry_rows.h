/* entry_rows.h - a record as a row: of its family's file and of its form. What can be
 * told of a row is asked here by the import and by the form, so that both refuse the
 * same in the same words. Rows of farms, blocks and traps; those of kinds, thresholds
 * and the rest stand in entry_kinds.h, entry_rules.h and entry_sources.h. */
#ifndef ANSWERS_ENTRY_ROWS_H
#define ANSWERS_ENTRY_ROWS_H

#include "answers/entry_known.h"
#include "base/column.h"
#include "base/names.h"
#include "base/zone.h"

/* Who hears what is wrong with a row. */
struct hearing {
	/* The value of `column` is wrong: the text goes on after the value, such as "is
	 * longer than life_days, 20"; without a value it is the whole sentence. */
	void (*bad)(void *arg, const char *column, const char *what);
	/* It is taken and likely not meant: a sentence. */
	void (*warn)(void *arg, const char *column, const char *what);
	/* False: what the book has in that column stays. */
	bool (*has)(void *arg, const char *column);
	/* As it was written; "". */
	const char *(*value)(void *arg, const char *column);
	void *arg;
	int32_t today;
	const struct zone *zone; /* of times without an offset; NULL: UTC */
	bool clears; /* an empty value takes away what stood there (of a form) */
	int64_t n_bad, n_warned; /* heard so far */
};
/* Returns false. */
bool row_bad(struct hearing *h, const char *column, const char *fmt, ...)
	__attribute__((format(printf, 3, 4)));
void row_warn(struct hearing *h, const char *column, const char *fmt, ...)
	__attribute__((format(printf, 3, 4)));
bool row_has(const struct hearing *h, const char *column);

/* The name is not in the book, which has `there` within the parent. Returns false. */
bool row_unknown(struct hearing *h, const char *column, const struct names *there,
	int64_t parent);
/* Look a name up: *id is 0 without a name. False: it is not in the book, which is heard
 * with the names that there are (lures: those that draw the pest, 0: all). */
bool row_find_farm(
	struct hearing *h, const struct known *k, const char *name, int64_t *id);
bool row_find_pest(
	struct hearing *h, const struct known *k, const char *code, int64_t *id);
bool row_find_card(
	struct hearing *h, const struct known *k, const char *name, int64_t *id);
bool row_find_station(
	struct hearing *h, const struct known *k, const char *name, int64_t *id);
bool row_find_block(struct hearing *h, const struct known *k, int64_t farm,
	const char *name, int64_t *id);
bool row_find_lure(struct hearing *h, const struct lure_kinds *lures, int64_t pest,
	const char *name, int64_t *id);

/* Words of columns by number. */
const char *column_place(int i);
const char *column_condition(int i);
const char *column_yes_no(int i); /* 0 no, 1 yes */
const char *column_unit(int i);   /* 1 C, 2 F; "" for 0 */
int column_unit_of(char unit);    /* and back; 0: neither */

enum {
	FARM_COLUMNS = 5,
	BLOCK_COLUMNS = 7,
	TRAP_COLUMNS = 16,
	CALENDAR_YEAR = 101,
};

struct farm_row {
	char farm[NAME_BYTES];
	int season_start;
	int run_weekday;
	char station[NAME_BYTES];
	int retired; /* 0, 1; -1: empty, as 0 */
};
extern const struct column farm_columns[FARM_COLUMNS];
struct farm_row farm_row_of(const struct known *k, const struct farm *f);
/* Puts what the row says over the farm, all but its station. */
void farm_over(const struct hearing *h, const struct farm_row *r, struct farm *f);
/* A biofix is kept under the year that its season began in: after a new start of the
 * farm's season they go to the season that they are of now. `all` is changed along. */
bool farm_move_biofixes(struct hearing *h, struct book *b, struct biofix_dates *all,
	const struct farm *f, int old_start, struct err *e);

struct block_row {
	char farm[NAME_BYTES], block[NAME_BYTES];
	char crop[NAME_BYTES], variety[NAME_BYTES];
	int condition;
	int32_t area_x100;
	int retired;
};
extern const struct column block_columns[BLOCK_COLUMNS];
struct block_row block_row_of(const struct known *k, const struct block *b);
/* All but its farm. */
void block_over(const struct hearing *h, const struct block_row *r, struct block *b);

struct trap_row {
	char farm[NAME_BYTES], block[NAME_BYTES], trap[NAME_BYTES];
	char pest[CODE_BYTES], lure[NAME_BYTES], card[NAME_BYTES];
	int place, condition;
	char crop[NAME_BYTES], variety[NAME_BYTES];
	int32_t area_x100;
	double lat, lon;
	int32_t order;
	int32_t hung, pulled;
};
extern const struct column trap_columns[TRAP_COLUMNS];
/* hung and pulled are DAY_NONE unless k has its hangings. */
struct trap_row trap_row_of(const struct known *k, const struct trap *t);
/* What can be told from the row and the kinds; `made` gets its pest, lure, card. */
bool trap_good(struct hearing *h, const struct known *k, const struct trap_row *r,
	struct trap *made);
/* The trap as the row wants it, over `was` (zero for a new one); farm, block, pest,
 * lure and card out of `made`. */
struct trap trap_after(const struct hearing *h, const struct trap_row *r,
	const struct trap *was, const struct trap *made);
#endif
