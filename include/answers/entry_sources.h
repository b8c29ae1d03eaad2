/* entry_sources.h - sources (what moths may come from) as rows; see entry_rows.h. */
#ifndef ANSWERS_ENTRY_SOURCES_H
#define ANSWERS_ENTRY_SOURCES_H

#include "answers/entry_rows.h"
#include "base/source.h"

enum { SOURCE_COLUMNS = 6 };

struct source_row {
	char farm[NAME_BYTES], name[NAME_BYTES];
	int kind;
	double lat, lon;
	char outline[OUTLINE_BYTES]; /* as outline_write has it */
};
extern const struct column source_columns[SOURCE_COLUMNS];
struct source_row source_row_of(const struct known *k, const struct source *s);
/* Puts what the row says over the source, all but its farm; false: it says something
 * wrong, which is heard. */
bool source_over(struct hearing *h, const struct source_row *r, struct source *out);

#endif
