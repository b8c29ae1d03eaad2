/* ghcn_parts.h - what the two layouts of GHCN-Daily share. */
#ifndef GHCN_PARTS_H
#define GHCN_PARTS_H

#include "exchange/ghcn.h"

#include <stdbool.h>

struct ghcn_value {
	char station[GHCN_STATION_BYTES];
	int32_t day;
	int32_t x10; /* tenths of a degree C */
	bool is_max;
	int64_t line;
};

struct ghcn_taking {
	const struct ghcn_from *from;
	struct ghcn *out;
	struct ghcn_value *items; /* owned; of any order */
	size_t n, cap;
	int64_t line; /* the present one, from 1 */
};

/* Notes what is wrong with the present line: the rest of the sentence. */
void ghcn_problem(struct ghcn_taking *t, const char *fmt, ...)
	__attribute__((format(printf, 2, 3)));

/* True if the n characters make a station's name (letters, digits, _ and -) of 11; else
 * a problem is noted. */
bool ghcn_station(struct ghcn_taking *t, const char *text, size_t n,
	char out[static GHCN_STATION_BYTES]);
bool ghcn_is_wanted(const struct ghcn_taking *t, const char *station);
/* True for TMIN and TMAX, of 4 characters. */
bool ghcn_element(const char *element, bool *is_max);

/* Reads n digits. */
bool ghcn_digits(const char *text, size_t n, int *out);

/* A value as it stands in the file, n characters. */
struct ghcn_written {
	const char *value;
	size_t n;
	char quality; /* ' ' = passed */
};
/* Takes it, or counts or notes why not. v: all but its x10; its day is DAY_NONE if the
 * calendar has no such day, and `date` is how the file says it. */
void ghcn_take(struct ghcn_taking *t, struct ghcn_value *v, struct ghcn_written w,
	const char *date);
/* False and *e if more was taken than there is room for. */
bool ghcn_fits(const struct ghcn_taking *t, struct err *e);

/* Puts the values together as days. `ok`: whether the file was read to its end (*e says
 * why not). Frees the values. */
bool ghcn_finish(struct ghcn_taking *t, bool ok, struct err *e);

#endif
