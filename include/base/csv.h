/* csv.h - RFC 4180: UTF-8 (a byte order mark is accepted), fields quoted with ",
 * doubled inside, lines ended by LF or CRLF. A text that a spreadsheet would take
 * for a formula (first character = + - @, but no plain number such as -120.5) is
 * written with a leading apostrophe and read back without it; a text that already
 * starts with apostrophes and such a character gets one more. */
#ifndef BASE_CSV_H
#define BASE_CSV_H

#include "base/buf.h"
#include "base/err.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

enum {
	CSV_FIELDS_MAX = 64,
	CSV_ROW_MAX_BYTES = 65536, /* without its line end */
};

struct csv_field {
	const char *text; /* NUL-terminated, no quotes, no guard; until the next row */
	size_t n;
	bool guarded; /* a leading apostrophe was taken off */
};

struct csv {
	FILE *file;       /* borrowed */
	const char *name; /* for messages; borrowed */
	int64_t line;     /* line the current row starts on, from 1 */
	struct csv_field field[CSV_FIELDS_MAX];
	size_t n_fields;
	char *block;       /* owned; freed by csv_close */
	size_t at, filled; /* unread part of block */
	int64_t next_line;
};

void csv_open(struct csv *c, FILE *file, const char *name);
void csv_close(struct csv *c);

enum csv_got {
	CSV_ROW,
	CSV_END,
	CSV_BAD, /* *e says where and what would be right; reading cannot go on */
};

/* Reads the next row, skipping empty lines. Bad: a NUL byte, invalid UTF-8, another
 * control character than tab (and line breaks inside quotes), an unclosed quote,
 * text after a closing quote, a row over the limits above, a read error. */
enum csv_got csv_next(struct csv *c, struct err *e);

/* Adds one field, quoted and guarded where needed. `first` leaves out the comma. */
void csv_add(struct buf *out, const char *text, bool first);
void csv_end_row(struct buf *out); /* CRLF */

#endif
