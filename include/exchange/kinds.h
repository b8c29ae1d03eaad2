/* kinds.h - inside src/exchange: the kinds of files, one file of code each. */
#ifndef EXCHANGE_KINDS_H
#define EXCHANGE_KINDS_H

#include "answers/entry_kinds.h"
#include "answers/entry_rules.h"
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
extern const struct kind kind_places;
extern const struct kind kind_stations;
extern const struct kind kind_weather;
extern const struct kind kind_biofix;
extern const struct kind kind_farms;
extern const struct kind kind_blocks;
extern const struct kind kind_treatments;
extern const struct kind kind_picks;
extern const struct kind kind_fruit_checks;
extern const struct kind kind_dispensers;
extern const struct kind kind_answers;
extern const struct kind kind_settings;

/* The ids of the book by name. */
bool names_of_pests(struct book *b, struct names *out, struct err *e);
bool names_of_farms(struct book *b, struct names *out, struct err *e);
bool names_of_blocks(struct book *b, struct names *out, struct err *e); /* in farms */
bool names_of_cards(struct book *b, struct names *out, struct err *e);

/* As far as a file of places can tell. */
bool places_same(const struct source *a, const struct source *b);

#endif
