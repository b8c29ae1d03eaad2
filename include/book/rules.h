/* rules.h - the grower's thresholds, settings. */
#ifndef BOOK_RULES_H
#define BOOK_RULES_H

#include "book/book.h"

/* All rules, by pest code, then in the order they were made. */
bool book_rules(struct book *b, struct rules *out, struct err *e);
bool book_put_rule(struct book *b, struct rule *r, struct err *e);
bool book_remove_rule(struct book *b, int64_t id, struct err *e);

/* Settings by name: "join_nights" .. (the fields of struct limits), "scout". An unset
 * one gives "". */
bool book_setting(
	struct book *b, const char *name, char *out, size_t size, struct err *e);
/* The row of a setting, for book_stamp and book_row_changes; 0: it is unset. */
bool book_setting_id(struct book *b, const char *name, int64_t *id, struct err *e);
/* Settings that book_setting and book_limits give instead of those in the book while it
 * is open, as "name=value;name=value" (cut to 1023 bytes); "": none. Never stored. */
void book_lay_over(struct book *b, const char *settings);
bool book_put_setting(
	struct book *b, const char *name, const char *value, struct err *e);
/* limits_usual with what the book sets; a set value out of range is an error. */
bool book_limits(struct book *b, struct limits *out, struct err *e);

#endif
