/* dd_table.h - degree-days of a station day by day, with their running sum. */
#ifndef ANSWERS_DD_TABLE_H
#define ANSWERS_DD_TABLE_H

#include "base/weather.h"
#include "book/book.h"
#include "season/degree_days.h"

/* What is asked. */
struct dd_ask {
	struct station station;
	struct dd_rule rule;
	char unit;        /* of base, cap and sums: 'C' or 'F' */
	int32_t from, to; /* both included; to = DAY_NONE: the station's last day */
	int32_t today;    /* nothing later is looked at */
};

struct dd_line {
	int32_t day;
	double min, max; /* in the unit asked; NAN = not read */
	bool filled;     /* what is not read was put in from its neighbours: */
	double used_min, used_max;
	double dd;       /* NAN: the day is missing */
	double sum;      /* so far */
	int32_t missing; /* days so far: if any, the sum is a lower bound */
};

struct dd_table {
	struct dd_ask ask;   /* with `to` filled in */
	char rule_text[160]; /* "base 50 F, cap 88 F, method sine, cutoff none" */
	struct dd_line *lines;
	size_t n, cap;
	struct dd_sum total;
};

/* False with ERR_NOT_FOUND when the station has no weather up to the last day asked,
 * ERR_INPUT when the first day asked is after the last. Gaps are filled as the book's
 * settings say. Zero-initialise t; free it in any case. */
bool dd_table_read(
	struct dd_table *t, struct book *b, const struct dd_ask *ask, struct err *e);
void dd_table_free(struct dd_table *t);

#endif
