/* entry_changes.h - what was changed in one record since it was put in. */
#ifndef ANSWERS_ENTRY_CHANGES_H
#define ANSWERS_ENTRY_CHANGES_H

#include "answers/entry.h"

/* What changed in a record, latest first, a line each: "12 Jun 07:42 JR: lure was
 * CM 1 mg, is CM 10 mg". */
struct entry_changes {
	char (*lines)[SAY_LINE * 2];
	size_t n, cap;
};

/* Replaces what out holds; zero-initialise it. id of a setting: its place, 1.. */
bool entry_changes_read(struct entry_changes *out, struct book *b, enum entry_kind kind,
	int64_t id, struct err *e);
/* The same without the lines that say that it was put in. */
bool treatment_corrections_read(struct entry_changes *out, struct book *b,
	const struct manner *m, int64_t treatment, struct err *e);
void entry_changes_free(struct entry_changes *c);

/* What the form calls a column of the book's table, and how it shows a value there. */
void entry_say_value(const char *table, const struct manner *m, const char *field,
	const char *raw, char label[static SAY_SHORT], char out[static ENTRY_TEXT]);

#endif
