/* prose.h - inside src/screen: paragraphs of a page, which own their texts. */
#ifndef SCREEN_PROSE_H
#define SCREEN_PROSE_H

#include "base/buf.h"
#include "screen/reader.h"

struct prose {
	struct paragraph *items;
	size_t n, cap;
};

/* Takes over what is in *text; leaves out what is empty. */
void prose_take(struct prose *to, enum ink ink, int indent, struct buf *text);
void prose_add(struct prose *to, enum ink ink, int indent, const char *text);
/* An empty line. */
void prose_gap(struct prose *to);
void prose_free(struct prose *p);

#endif
