#include "prose.h"

#include "base/mem.h"

#include <stdlib.h>

static void append(struct prose *to, enum ink ink, int indent, char *text)
{
	to->items = mem_grow(to->items, &to->cap, to->n + 1, sizeof *to->items);
	to->items[to->n++] = (struct paragraph){ ink, indent, NULL, text };
}

void prose_take(struct prose *to, enum ink ink, int indent, struct buf *text)
{
	if (!text->text || !text->text[0]) {
		buf_free(text);
		return;
	}
	append(to, ink, indent, text->text);
	*text = (struct buf){ 0 };
}

void prose_add(struct prose *to, enum ink ink, int indent, const char *text)
{
	if (text[0])
		append(to, ink, indent, mem_text(text));
}

void prose_gap(struct prose *to)
{
	append(to, INK_PLAIN, 0, mem_text(""));
}

void prose_free(struct prose *p)
{
	for (size_t i = 0; i < p->n; i++)
		free((char *)(uintptr_t)p->items[i].text);
	free(p->items);
	*p = (struct prose){ 0 };
}
