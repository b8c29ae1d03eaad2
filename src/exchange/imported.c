#include "base/mem.h"
#include "base/words.h"
#include "exchange/exchange.h"

#include <stdlib.h>

void sentences_add(struct sentences *s, const char *text)
{
	s->items = mem_grow(s->items, &s->cap, s->n + 1, sizeof *s->items);
	s->items[s->n++] = mem_text(text);
}

void sentences_free(struct sentences *s)
{
	for (size_t i = 0; i < s->n; i++)
		free(s->items[i]);
	free(s->items);
	*s = (struct sentences){ 0 };
}

void imported_free(struct imported *i)
{
	sentences_free(&i->notes);
	sentences_free(&i->warnings);
	sentences_free(&i->problems);
}

void imported_say(const struct imported *i, struct buf *out)
{
	buf_add_thousands(out, i->n_new);
	buf_add(out, _(" new"));
	if (i->n_changed) {
		buf_add(out, ", ");
		buf_add_thousands(out, i->n_changed);
		buf_add(out, _(" changed"));
	}
	if (i->n_removed) {
		buf_add(out, ", ");
		buf_add_thousands(out, i->n_removed);
		buf_add(out, _(" removed"));
	}
	if (i->n_same) {
		buf_add(out, ", ");
		buf_add_thousands(out, i->n_same);
		buf_add(out, _(" already there"));
	}
}
