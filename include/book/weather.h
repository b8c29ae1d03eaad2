/* weather.h - stations, daily minimum and maximum, biofix dates. */
#ifndef BOOK_WEATHER_H
#define BOOK_WEATHER_H

#include "book/book.h"

/* Stations by name. */
bool book_stations(struct book *b, struct stations *out, struct err *e);
bool book_put_station(struct book *b, struct station *s, struct err *e);

/* Days of a station from..to, both included, by day. Days not in the book are not in
 * the list. */
bool book_weather(struct book *b, int64_t station, int32_t from, int32_t to,
	struct weather_days *out, struct err *e);
/* Saves a day: new, or in place of the one that is there (whose old form is kept). On
 * the disk when it returns, unless within book_begin. Refused: min above max, numbers
 * out of -150..150, both NAN. */
bool book_save_weather(struct book *b, const struct weather_day *w, struct err *e);
/* The same for files: never replaces. *same is true when the very same day is there
 * already; a different one is refused with both values. */
bool book_add_weather(
	struct book *b, const struct weather_day *w, bool *same, struct err *e);
bool book_remove_weather(struct book *b, int64_t station, int32_t day, struct err *e);
/* First and last day in the book; DAY_NONE when there is none. */
bool book_weather_reach(
	struct book *b, int64_t station, int32_t *first, int32_t *last, struct err *e);

/* Biofix dates of all seasons, by farm, pest and season. One per farm, pest, season:
 * putting another replaces it (the old one is kept in the history). */
bool book_biofixes(struct book *b, struct biofix_dates *out, struct err *e);
bool book_put_biofix(struct book *b, struct biofix_date *d, struct err *e);
bool book_remove_biofix(struct book *b, int64_t id, struct err *e);

#endif
