/* rules.h - the grower's thresholds, the treatments that restart totals, settings. */
#ifndef BOOK_RULES_H
#define BOOK_RULES_H

#include "book/book.h"

/* All rules, by pest code, then in the order they were made. */
bool book_rules(struct book *b, struct rules *out, struct err *e);
bool book_put_rule(struct book *b, struct rule *r, struct err *e);
bool book_remove_rule(struct book *b, int64_t id, struct err *e);

/* Treatments of the farm's blocks (0 = all) from..to, by block and day. */
bool book_treatments(struct book *b, int64_t farm, int32_t from, int32_t to,
	struct treatments *out, struct err *e);
bool book_put_treatment(struct book *b, struct treatment *t, struct err *e);

/* Settings by name: "join_nights" .. (the fields of struct limits), "scout". An unset
 * one gives "". */
bool book_setting(
	struct book *b, const char *name, char *out, size_t size, struct err *e);
bool book_put_setting(
	struct book *b, const char *name, const char *value, struct err *e);
/* limits_usual with what the book sets; a set value out of range is an error. */
bool book_limits(struct book *b, struct limits *out, struct err *e);

#endif
