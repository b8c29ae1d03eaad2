/* record.h - the record of treatments, and a block's season, as plain text. */
#ifndef PAPER_RECORD_H
#define PAPER_RECORD_H

#include "answers/record.h"
#include "base/buf.h"

struct record_form {
	int cols;  /* 40..; no line is wider */
	bool utf8; /* else ASCII */
	/* Paragraphs below it, each list ends with NULL; NULL: they stand elsewhere on
	 * the same paper. */
	const char *const *says; /* of what it is a record */
	const char *const *cautions;
};

void paper_record(
	const struct record *r, const struct record_form *form, struct buf *out);
void paper_block_diary(
	const struct block_diary *d, const struct record_form *form, struct buf *out);

#endif
