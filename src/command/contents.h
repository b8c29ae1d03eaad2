/* contents.h - inside src/command: what a book holds, in words. */
#ifndef COMMAND_CONTENTS_H
#define COMMAND_CONTENTS_H

#include "base/buf.h"
#include "book/backups.h"

/* "3 farms, 42 traps, 1 204 visits from 6 May 2025 to 21 July 2026" */
void contents_say(const struct book_contents *c, struct buf *out);
/* "last changed 2026-07-21 07:42 UTC by JR"; "never changed". */
void contents_say_change(const struct book_contents *c, struct buf *out);

#endif
