/* typed.h - forms filled in for the tests of exchange. Include it first. */
#ifndef TESTS_EXCHANGE_TYPED_H
#define TESTS_EXCHANGE_TYPED_H

#include "desk.h"

#include "answers/forms.h"

static inline void read_log(struct book *b, struct log *l)
{
	struct err e = { 0 };

	if (!log_read(l, b, 0, day_of(TODAY), &e))
		fail_msg("%s", e.text);
}

/* An empty form with these values, "column=value;column=value". */
static inline struct entry *typed(
	struct book *b, const struct log *l, enum entry_kind kind, const char *pairs)
{
	struct entry *r = form_new(b, l, kind);
	char copy[1000], *rest = copy, *pair;

	for (size_t i = 0; i < ENTRY_FIELDS_MAX; i++)
		r->text[i][0] = '\0';
	text_copy(copy, sizeof copy, pairs);
	while ((pair = strsep(&rest, ";"))) {
		char *value = strchr(pair, '=');
		*value++ = '\0';
		form_type(r, pair, value);
	}
	return r;
}

#endif
