/* pager.h - chunks of lines put on pages; a chunk is never split between two. */
#ifndef PAPER_PAGER_H
#define PAPER_PAGER_H

#include "base/buf.h"

#include <stddef.h>

struct pager {
	int room;          /* lines of a page for chunks */
	struct buf *pages; /* owned */
	size_t n, cap;
	int used;          /* lines on the last page */
	struct buf titles; /* set on top of a new page while a table goes on */
};

/* Adds the whole lines of *chunk, on a new page where they do not fit any more, and
 * empties it. What is longer than a page is divided at line ends. */
void pager_add(struct pager *p, struct buf *chunk);
/* From the next chunk on, a table with these title lines goes on (NULL: none does). */
void pager_titles(struct pager *p, const char *titles);
/* Lines that still fit on the page begun last. */
int pager_left(const struct pager *p);
void pager_free(struct pager *p);

int pager_lines(const char *text);

#endif
