/* kinds.h - inside src/exchange: the kinds of files, one file of code each. */
#ifndef EXCHANGE_KINDS_H
#define EXCHANGE_KINDS_H

#include "book/diary.h"
#include "book/places.h"
#include "book/rules.h"
#include "book/weather.h"
#include "exchange/exchange.h"
#include "exchange/taking.h"

extern const struct kind kind_traps;
extern const struct kind kind_visits;
extern const struct kind kind_thresholds;
extern const struct kind kind_pests;
extern const struct kind kind_lures;
extern const struct kind kind_cards;
extern const struct kind kind_stations;
extern const struct kind kind_weather;
extern const struct kind kind_biofix;
extern const struct kind kind_farms;
extern const struct kind kind_settings;

/* Words of the vocabularies by number, for columns. */
const char *column_place(int i);
const char *column_condition(int i);
const char *column_unit(int i); /* 1 C, 2 F; "" for 0 */
int column_unit_of(char unit);  /* and back; 0: neither */

/* What is known of the book by name: id of each. */
bool names_of_pests(struct book *b, struct names *out, struct err *e);
bool names_of_farms(struct book *b, struct names *out, struct err *e);
bool names_of_blocks(struct book *b, struct names *out, struct err *e); /* in farms */
bool names_of_cards(struct book *b, struct names *out, struct err *e);

/* The lists of the book, for giving names. An id of 0 or one that is not there has
 * the name "". */
struct known {
	struct farms farms;
	struct blocks blocks;
	struct traps traps; /* by farm name and driving order */
	struct pests pests;
	struct lure_kinds lures;
	struct card_kinds cards;
};
bool known_read(struct known *k, struct book *b, struct err *e);
void known_free(struct known *k);
const char *known_farm(const struct known *k, int64_t id);
const char *known_pest(const struct known *k, int64_t id);
const char *known_lure(const struct known *k, int64_t id);
const char *known_card(const struct known *k, int64_t id);
const struct block *known_block(const struct known *k, int64_t id); /* NULL: none */

/* What a threshold's row says, for filters (exchange_take_published). */
struct threshold_row {
	char pest[CODE_BYTES], crop[NAME_BYTES];
	int condition;
	char lure[NAME_BYTES];
	int place;
	char farm[NAME_BYTES], block[NAME_BYTES];
	int32_t flight;
	int from, to;
	int32_t until_dd;
	int measure;
	struct span span;
	int comparator;
	int32_t value_x100;
	char note[NOTE_BYTES], source[SOURCE_BYTES];
};

#endif
