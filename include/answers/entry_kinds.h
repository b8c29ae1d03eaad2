/* entry_kinds.h - pests, lures, cards and stations as rows; see entry_rows.h. */
#ifndef ANSWERS_ENTRY_KINDS_H
#define ANSWERS_ENTRY_KINDS_H

#include "answers/entry_rows.h"
#include "season/degree_days.h"

enum {
	PEST_COLUMNS = 12,
	LURE_COLUMNS = 11,
	CARD_COLUMNS = 10,
	STATION_COLUMNS = 4,
	BIOFIX_RULE_BYTES = sizeof(((struct pest *)0)->biofix_rule),
	HEAT_LEAST = -60, /* degrees of base and cap */
	HEAT_MOST = 150,
	STOCK_MAX = 9999,
};

/* Half a rule of degree-days would take its other half from the book: all that it takes
 * are given together, but for the cap, which many rules go without. */
struct heat_row {
	int unit;           /* column_unit */
	double base, cap;   /* NAN = empty */
	int method, cutoff; /* -1 = empty */
	char source[SOURCE_BYTES];
};
struct pest_row {
	char code[CODE_BYTES], name[NAME_BYTES], latin[NAME_BYTES];
	struct heat_row heat;
	char biofix_rule[BIOFIX_RULE_BYTES];
	char source[SOURCE_BYTES];
	int retired; /* 0, 1; -1: empty, as 0 */
};
extern const struct column pest_columns[PEST_COLUMNS];
struct pest_row pest_row_of(const struct pest *p);
/* Puts what the row says over the record; false: it says something wrong, which is
 * heard, and so below. */
bool pest_over(struct hearing *h, const struct pest_row *r, struct pest *p);
bool heat_same(const struct heat *a, const struct heat *b);
/* Of unit, base, method and cutoff the first that a file lacks though it has one of
 * them or a cap; NULL: none. */
const char *heat_lacks(const struct hearing *h);

struct stock_row {
	int32_t stock, day, reorder; /* as in struct stock */
};
struct lure_row {
	char lure[NAME_BYTES], pest[CODE_BYTES];
	int32_t life_days, hot_days;
	int hot_from, hot_to;
	char source[SOURCE_BYTES];
	struct stock_row stock;
	int retired;
};
extern const struct column lure_columns[LURE_COLUMNS];
struct lure_row lure_row_of(const struct known *k, const struct lure_kind *l);
bool lure_over(struct hearing *h, const struct known *k, const struct lure_row *r,
	struct lure_kind *out);

struct card_row {
	char card[NAME_BYTES];
	int32_t life_days, stir_at, change_at, floor_at;
	char source[SOURCE_BYTES];
	struct stock_row stock;
	int retired;
};
extern const struct column card_columns[CARD_COLUMNS];
struct card_row card_row_of(const struct card_kind *c);
bool card_over(struct hearing *h, const struct card_row *r, struct card_kind *k);

bool stock_same(const struct stock *a, const struct stock *b);

struct station_row {
	char station[NAME_BYTES];
	double lat, lon;
	char farm[NAME_BYTES];
};
extern const struct column station_columns[STATION_COLUMNS];
/* Without a farm. */
struct station_row station_row_of(const struct station *s);
/* `placed`: the file said before where it stands. */
bool station_over(struct hearing *h, const struct station_row *r, bool placed,
	struct station *one);

#endif
