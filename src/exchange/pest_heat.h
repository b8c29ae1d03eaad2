/* pest_heat.h - inside src/exchange: the columns of pests that degree-days and biofix
 * go by. */
#ifndef PEST_HEAT_H
#define PEST_HEAT_H

#include "base/kinds.h"
#include "exchange/taking.h"
#include "season/degree_days.h"

enum {
	BIOFIX_RULE_BYTES = sizeof(((struct pest *)0)->biofix_rule),
	HEAT_LEAST = -60, /* degrees of base and cap */
	HEAT_MOST = 150,
};

struct heat_row {
	int unit;           /* column_unit */
	double base, cap;   /* NAN = empty */
	int method, cutoff; /* -1 = empty */
	char source[SOURCE_BYTES];
};

/* Words by number, for columns. */
const char *column_method(int i);
const char *column_cutoff(int i);

/* False if the file has some of unit, base, cap, method and cutoff but not all that it
 * takes: half a rule would take its other half from the book. */
bool heat_columns_good(const struct taking *t, struct err *e);
/* Puts what the row says over the pest's; false: it says something wrong, noted. */
bool heat_over(struct taking *t, const struct heat_row *r, struct heat *h);
bool heat_same(const struct heat *a, const struct heat *b);
struct heat_row heat_row_of(const struct heat *h);

/* False and noted if it is no rule of season/biofix.h; "" is good. */
bool biofix_rule_good(struct taking *t, const char *word);

#endif
