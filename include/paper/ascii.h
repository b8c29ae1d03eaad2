/* ascii.h - plain text for terminals and printers: ASCII where UTF-8 does not show,
 * paragraphs wrapped to a width. */
#ifndef PAPER_ASCII_H
#define PAPER_ASCII_H

#include "base/buf.h"

#include <stdbool.h>

/* Adds `text` to *out with ASCII characters only: flight-line blocks become digits
 * 1..8, lines '-', the middle dot '.', an ellipsis '~', others '?' for each column.
 * Returns out->text. */
const char *paper_ascii(const char *text, struct buf *out);

/* Adds text as lines of at most `cols` columns, each begun with `indent` blanks and
 * ended with a newline; broken at blanks, in a longer word only where it must be.
 * Control characters show as '?'. 0 <= indent < cols. An empty text adds nothing. */
void paper_wrap(struct buf *out, const char *text, int indent, int cols);

/* Adds text in a field of `cols` columns (negative: set to the right); a text that is
 * cut ends with an ellipsis. */
void paper_cell(struct buf *out, const char *text, int cols);

#endif
