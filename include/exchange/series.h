/* series.h - inside src/exchange: whether a trap's diary holds together once the rows
 * of a file are in it. Nothing can be counted in a trap that does not hang. */
#ifndef EXCHANGE_SERIES_H
#define EXCHANGE_SERIES_H

#include "exchange/taking.h"

/* A day of a trap's diary: of the book, of the file (line > 0), or of both. */
struct series_day {
	int32_t day;
	uint32_t line : 28; /* 0: not in the file; the last one stands for more */
	uint32_t outcome : 3;
	uint32_t in_book : 1; /* it was there before the import */
};

struct series {
	int64_t trap;
	const char *farm, *label; /* borrowed */
	struct series_day *items; /* by day */
	size_t n, cap;
};

enum { SERIES_LINE_MAX = (1 << 28) - 1 };

/* The place of the day; a new one (line 0, not in the book) when it is not there. */
struct series_day *series_at(struct series *s, int32_t day);

/* Reads what the book holds before the import. The series are of all of its traps. */
bool series_read(struct book *b, struct series *all, size_t n, struct err *e);

/* Complains of each visit to a trap that does not hang then, as far as the file brings
 * it about, by line; warns of each trap that is hung while it hangs. */
void series_check(struct taking *t, const struct series *all, size_t n);

void series_free(struct series *all, size_t n);

#endif
